"""No message has a unit of length of its own: what is said of a piece is in the reader's units."""

from __future__ import annotations

import csv
import re
from pathlib import Path
from shutil import copyfile

import pytest
from babel.messages.pofile import read_po
from conftest import Call
from page_words import words_of

import buildplan
from buildplan.design.measures import Units, load_words
from buildplan.language.voice import Voice
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.placing import cannot_meet, told_in
from buildplan.source.problems import Problem

TEMPLATE = Path(buildplan.__file__).parent / "language" / "catalogues" / "buildplan.pot"
# what says a number of the reader's units, or both, or what is the same for all readers
OF_UNITS = {
    "{length} cm",
    "{gauge} in are {cm} cm: write {cm}",
    "{cm} cm are {inches} in: write {inches}",
    "{size} ({mm} mm)",
}
METRIC_LENGTH = re.compile(r"\} (?:cm|mm|centimetres?|metres?)\b")


def test_no_message_puts_a_length_in_metric_units_for_all_readers() -> None:
    with TEMPLATE.open("rb") as file:
        ids = [message.id for message in read_po(file) if message.id]
    texts = [text for one in ids for text in ([one] if isinstance(one, str) else one)]
    assert len(texts) > 2000
    assert {text for text in texts if METRIC_LENGTH.search(text)} == OF_UNITS


@pytest.mark.parametrize(
    ("units", "said"), [("in", "stay 16 in apart"), ("cm", "stay 41 cm apart")]
)
def test_ties_that_cannot_meet_are_told_in_the_reader_s_units(units: Units, said: str) -> None:
    found = Problem(ShapeKind.TIES_CANNOT_MEET, cannot_meet(0.4064, "cm"))  # 16 in, exact
    (told,) = told_in(units, [found])
    assert Voice().tell(told.message).endswith(said)
    assert told.data == found.data == {"distance": 40.64}


@pytest.mark.parametrize(
    ("kg", "said"),
    # international avoirdupois pound, 0.45359237 kg exactly; hardly less than the kilograms are
    [
        (5.0, "5 kg (11 lb)"),  # 11.02
        (8.0, "8 kg (18 lb)"),
        (13.5, "13.5 kg (30 lb)"),
        (1.5, "1.5 kg (3.3 lb)"),
        (6.0, "6 kg (14 lb)"),  # 13.23: 13 would be too little
        (37.5, "37.5 kg (83 lb)"),  # 82.67
        (150.0, "150 kg (331 lb)"),  # 330.69
    ],
)
def test_a_load_is_told_in_both_units_of_weight(kg: float, said: str) -> None:
    assert Voice().tell(load_words(kg)) == said


def test_equal_loads_add_up_in_pounds_as_in_kilograms() -> None:
    """Six times 1.5 kg (3.3 lb) is 9 kg, and six times 3.3 is 19.8 (arithmetic)."""
    assert Voice().tell(load_words(9.0, 6)) == "9 kg (19.8 lb)"
    assert Voice().tell(load_words(8.0, 8)) == "8 kg (17.6 lb)"


FRAME = Path(__file__).parents[2] / "designs" / "picture_frame.yaml"  # a file in inches
IMPERIAL, METRIC = re.compile(r"\d (?:in|ft)\b"), re.compile(r"\d (?:cm|m)\b")


@pytest.mark.parametrize(
    "command",
    [
        ("shopping",),
        ("quote",),
        ("steps",),
        ("course", "--count", "1"),
        ("measure", "--pdf", "made.pdf"),
        ("quote", "--pdf", "made.pdf"),
        ("shopping", "--pdf", "made.pdf"),
        ("booklet", "--edition", "crew", "--out", "."),
        ("gallery", "--out", "made.pdf"),
    ],
    ids=" ".join,
)
@pytest.mark.parametrize("language", ["en", "de", "pt"])
def test_what_is_told_in_a_language_is_in_the_units_that_its_readers_use(
    call: Call, command: tuple[str, ...], language: str
) -> None:
    """Unicode CLDR, measurementData: metric in all but English, which keeps to the file's."""
    name, *options = command
    copyfile(FRAME, "frame.yaml")
    named = "." if name == "gallery" else "frame.yaml"
    status, out, messages = call(name, named, *options, "--language", language)
    assert status == 0, messages
    told = out + "".join(words_of(file) for file in Path().glob("*.pdf"))
    told = told.replace("100 mm", "").replace("4 in", "")  # beside the rulers that gauges have
    assert bool(IMPERIAL.search(told)) == (language == "en")
    assert bool(METRIC.search(told)) == (language != "en")


@pytest.mark.parametrize(("language", "unit"), [("en", "in"), ("fr", "cm")])
def test_a_sheet_of_what_to_measure_has_the_units_of_its_readers(
    call: Call, language: str, unit: str
) -> None:
    assert call("measure", str(FRAME), "--out", "log.csv", "--language", language)[0] == 0
    with Path("log.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    lengths = {row["which"]: float(row["expected"]) for row in rows if row["expected"]}
    assert {row["unit"] for row in rows if row["what"] != "work"} == {unit}
    # ten links of 8 in at 1.15 of the gauge between their knots, as README has it
    assert lengths["frame"] == pytest.approx(92.0 if unit == "in" else 233.7)
