"""Lengths with their units, colours by name, and slips of typing."""

from __future__ import annotations

from fractions import Fraction

import pytest
import yaml
from design_texts import RING, changed, problems, read
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from matplotlib.colors import CSS4_COLORS

from buildplan.design.schema import design_schema
from buildplan.source.colour_names import OWN, hex_of
from buildplan.source.file_changes import changed_text
from buildplan.source.kinds import FileKind
from buildplan.source.problems import Problem, UnreadableDesignError
from buildplan.source.trade_words import length_in

VALIDATOR = Draft202012Validator(design_schema())
CELLS = "        cells: [straight, fan]\n"
METRIC = ("units: in", "units: cm")


def test_colours_of_css_are_those_of_another_library() -> None:
    # matplotlib's table of the colours of CSS Color Module Level 4
    for name, value in CSS4_COLORS.items():
        assert hex_of(name) == str(value).upper()
    assert hex_of("Light Sea Green") == str(CSS4_COLORS["lightseagreen"]).upper()
    assert not set(OWN) & set(CSS4_COLORS)
    assert hex_of("no colour") is None


@given(st.integers(0, 40), st.sampled_from(["", "1/2", "1/4", "3/4", "7/8"]))
def test_inches_in_words_are_inches(whole: int, part: str) -> None:
    if not whole and not part:
        return
    text = " ".join(filter(None, (str(whole) if whole or not part else "", part)))
    inches = float(whole + Fraction(part or 0))
    for sign in (" in", "in", '"', " inches"):
        assert length_in(text + sign, "in") == pytest.approx(inches, abs=1e-4)
        # the international inch is 25.4 mm exactly (NIST Special Publication 811, appendix B)
        assert length_in(text + sign, "cm") == pytest.approx(2.54 * inches, abs=1e-4)


@pytest.mark.parametrize(
    ("words", "cm"),
    [
        ("8in", 20.32),
        ("30 cm", 30),
        ("30,5 cm", 30.5),
        ("305 mm", 30.5),
        ("0.3 m", 30),
        ("1 ft", 30.48),
        ("'1 ft 0.5 in'", 31.75),
        ("0'12\"", 30.48),
    ],
)
def test_a_length_with_its_unit_is_read_in_the_file_s_own(words: str, cm: float) -> None:
    sized = ("inflate_to: 8", f"inflate_to: {words}")
    text = changed(RING, METRIC, ("nominal: 12", "nominal: 40"), sized, ("d: true", "d: false"))
    assert read(text).balloons["long"].inflate_to == pytest.approx(cm)
    VALIDATOR.validate(yaml.safe_load(text))


def test_colours_by_name_and_by_a_label_of_the_file() -> None:
    text = changed(
        RING,
        ('"#1F5F8B"', "Dark Orange"),
        ('colour: "#F7F3E8", label: ivory}', "colour: cream, label: shell}"),
        (
            'kind: round, nominal: 5,  inflate_to: 3.5, colour: "#F7F3E8"',
            'kind: round, nominal: 5,  inflate_to: 3.5, colour: "#F7F3E9"',
        ),
    )
    balloons = read(text).balloons
    assert balloons["long"].colour == "#FF8C00"  # CSS Color Module Level 4
    assert balloons["cross"].colour == OWN["cream"]
    by_label = changed(text, ("colour: cream", "colour: Ivory"))
    assert read(by_label).balloons["cross"].colour == "#F7F3E9", "the file's own ivory"
    VALIDATOR.validate(yaml.safe_load(by_label))


def test_a_balloon_without_a_label_is_called_by_its_colours_name() -> None:
    text = changed(RING, ('"#1F5F8B"', "dark  Orange"), ("    label: deep blue\n", ""))
    assert read(text).balloons["long"].label == "dark Orange"
    VALIDATOR.validate(yaml.safe_load(text))
    for colour in ('"#1F5F8B"', '" #1F5F8B"'):
        digits = changed(RING, ('"#1F5F8B"', colour), ("    label: deep blue\n", ""))
        missing = [one for one in problems(digits) if one.path == "balloons.long.label"]
        assert [one.kind for one in missing] == [FileKind.KEY_MISSING]
        assert not VALIDATOR.is_valid(yaml.safe_load(digits))
    (nameless,) = problems(changed(text, ("dark  Orange", "darc orange")))
    assert nameless.path == "balloons.long.colour"


def test_a_group_without_repeat_is_laid_once() -> None:
    text = changed(RING, (CELLS, CELLS + "      - cells: [straight]\n"))
    assert read(text)
    VALIDATOR.validate(yaml.safe_load(text))


def told(text: str) -> list[Problem]:
    try:
        return list(problems(text))
    except UnreadableDesignError as error:
        return [error.problem]


SLIPS = [
    (CELLS, "        cells:\n          - straight\n          -fan\n", 24),
    (CELLS, "        cells:\n          - fan\n          -tip\n          - fan\n", 24),
    (CELLS, "        cells:\n          -straight\n          - fan\n", 23),
    (CELLS, "        cells:\n          - straight\n            -tip\n", 24),
    ("name: Ring", 'name: "Ring', 2),
    ("    label: deep blue", '    label: "deep blue', 10),
    ("label: ivory}", 'label: "ivory}', 11),
    ("name: Ring", "name: \u201cRing\u201d", 2),
    ('"#1F5F8B"', "\u201c#1F5F8B\u201d", 9),
    ("    kind: link", "\tkind: link", 6),
    ("units: in", "units:\tin", 3),
    ("inflate_to: 3.5", "inflate_to: 3,5", 12),
    ("inflate_to: 8\n", "inflate_to: 7,5\n", 8),
]


@pytest.mark.parametrize(("old", "new", "line"), SLIPS)
def test_a_slip_of_typing_is_told_where_it_stands(old: str, new: str, line: int) -> None:
    first = told(changed(RING, (old, new)))[0]
    assert first.line == line
    assert first.suggestion


@pytest.mark.parametrize("called", ["inch", "Inches", "in.", "Zoll", "pulgadas", "IN"])
def test_the_file_s_units_may_be_called_otherwise(called: str) -> None:
    assert read(changed(RING, ("units: in", f"units: {called}"))) == read(RING)


def test_spaces_that_look_like_one_are_read_as_one() -> None:
    for space in "\u00a0\u2007\u202f":
        text = changed(RING, ("name: Ring", f"name:{space}Ring"), ("    kind", f"{space * 4}kind"))
        assert read(text) == read(RING)
    assert read("\ufeff" + RING) == read(RING)
    assert read(("\ufeff" + RING).replace("\n", "\r\n").encode()) == read(RING)


@pytest.mark.parametrize(
    ("old", "new", "right"),
    [
        ("spare: 0.05", "colours: {A: [long]}", "colour_pattern"),
        ("spare: 0.05", "colors: {A: [long]}", "colour_pattern"),
        ('    colour: "#1F5F8B"', '    color: "#1F5F8B"', "colour"),
        ("    inflate_to: 8", "    gauge: 8", "inflate_to"),
    ],
)
def test_a_key_of_another_name_leads_to_ours(old: str, new: str, right: str) -> None:
    text = changed(RING, (old, new))
    (way,) = told(text)[0].suggestion.ways
    mended, _ = changed_text(text, way.changes)
    assert not problems(mended)
    assert right in mended
