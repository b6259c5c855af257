"""Event files: what they say, each mistake with its line, and the schema of one mind."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from design_texts import ROOT
from jsonschema import Draft202012Validator

from buildplan.design.event import read_event
from buildplan.design.reading import read_design
from buildplan.design.schema import event_schema
from buildplan.design.translating import translated_event
from buildplan.language.voice import Voice
from buildplan.source.file_changes import changed_text
from buildplan.source.kinds import FileKind
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError
from buildplan.source.suggestions import suggestion_words

SHIPPED = ROOT / "designs" / "reopening.event.yaml"
EVENT = """\
event: 1
name: Reopening
designs:
  - design: star.yaml
  - {design: frame.yaml, count: 2}
crew: 3
opening: "10:00"
"""
VALIDATOR = Draft202012Validator(event_schema())


@pytest.fixture
def event(tmp_path: Path) -> Path:
    for name in ("star.yaml", "frame.yaml"):
        (tmp_path / name).write_text("")
    path = tmp_path / "reopening.event.yaml"
    path.write_text(EVENT)
    return path


def test_an_event_is_read(event: Path) -> None:
    read = read_event(event)
    assert [(piece.design, piece.count) for piece in read.designs] == [
        ("star.yaml", 1),
        ("frame.yaml", 2),
    ]
    assert (read.crew, read.opening) == (3, "10:00")


def test_the_shipped_event_and_its_designs_are_read() -> None:
    shipped = read_event(SHIPPED)
    for piece in shipped.designs:
        assert read_design(SHIPPED.parent / piece.design)
    for language in shipped.translations:  # each word of it is another there
        told = translated_event(shipped, language)
        named = [one.name for event in (shipped, told) for one in event.vehicles]
        named += [one.name for event in (shipped, told) for one in event.doors]
        named += [told.name, shipped.name, told.place or "", shipped.place or ""]
        assert len(set(named)) == len(named)


@pytest.mark.parametrize("text", [SHIPPED.read_text("utf-8"), EVENT], ids=["shipped", "small"])
def test_events_that_are_read_are_valid_by_the_schema(text: str) -> None:
    VALIDATOR.validate(yaml.safe_load(text))


# old text, new text, line, path, words of the message, words of the suggestion
FORM = [
    ("event: 1", "event: 2", 1, "event", "must be 1", "version"),
    ("name: Reopening\n", "", 1, "name", "missing", "first page"),
    ("count: 2", "count: 0", 5, "designs[1].count", "at least 1", "how many"),
    ("count: 2", "cuont: 2", 5, "designs[1].cuont", "unknown key", "count"),
    ("  - design: star.yaml", "  - star.yaml", 4, "designs[0]", "a set of keys", "design"),
    ("crew: 3", "crew: 0", 6, "crew", "at least 1", "people"),
    ("crew: 3", "labour: {sizing: 1}", 7, "labour.sizing", "unknown key", "size"),
    ('"10:00"', '"25:00"', 7, "opening", "not a time of day", '"10:00"'),
    ('"10:00"', "10", 7, "opening", "must be text", "quotes"),
    # in quotes these would be times of day no more than without
    ('"10:00"', "600", 7, "opening", "must be text", "the time of day by which all stands"),
    ('"10:00"', ".inf", 7, "opening", "must be text", "the time of day by which all stands"),
    ("count: 2", "travels: by air", 5, "designs[1].travels", "by air", "built"),
    ("crew: 3", "crew: 3\nloading: -5", 7, "loading", "at least 0", "minutes"),
]

VAN = "vehicles:\n  - {name: van, length: 2.4 m, width: 1.7 m, height: 140 cm}\n"
DOORS = "doors:\n  - {name: front door, width: 90 cm, height: 2.1 m}\n"
# what stands below, the path of the mistake, words of the message, words of the suggestion
BELOW = [
    (VAN.replace("2.4 m", "240"), "vehicles[0].length", "nothing says what 240 is in", "240 cm"),
    (DOORS.replace("90 cm", "900 cm cm"), "doors[0].width", "number", "clear width"),
    (DOORS.replace("width", "wide"), "doors[0].wide", "unknown key", "width"),
    (VAN.replace("140 cm", "140 cm, carries: 2000 lb"), "vehicles[0].carries", "number", "907"),
    ("doors: [90x205cm]\n", "doors[0]", "a door must be a set of keys", "front door"),
    ("vehicles: van\n", "vehicles", "must be a list", "a list of {name: van"),
    ("loading: 1 h\n", "loading", "number", "loading: 60"),
    ("travel: 1:30\n", "travel", "number", "travel: 90"),
    (DOORS + DOORS[7:], "doors[1].name", "listed twice", "name of its own"),
    (VAN.replace("name: van, ", ""), "vehicles[0].name", "missing", "called"),
    ("bag: {length: 60 cm, width: 60 cm}\n", "bag.height", "missing", "full bag"),
    ("units: metres\n", "units", "metres", "cm"),
    (
        VAN + "translations: {es: {name: Reapertura, names: {vna: Furgoneta}}}\n",
        "translations.es.names.vna",
        'no vehicle or door is called "vna"',
        "van",
    ),
]


@pytest.mark.parametrize(("below", "path", "message", "suggestion"), BELOW)
def test_each_mistake_in_vehicles_doors_and_bags(
    event: Path, below: str, path: str, message: str, suggestion: str
) -> None:
    event.write_text(EVENT + below)
    with pytest.raises(DesignProblemsError) as found:
        read_event(event)
    (problem,) = [p for p in found.value.problems if p.path == path]
    assert message in Voice().tell(problem.message)
    assert suggestion in suggestion_words(problem.suggestion, Voice())


def test_lengths_are_read_in_any_units(event: Path) -> None:
    event.write_text(EVENT + VAN + DOORS)
    read = read_event(event)
    assert (read.vehicles[0].length, read.vehicles[0].height) == (240, 140)
    assert (read.doors[0].width, read.doors[0].height) == (90, 210)
    bare = "units: inches\n" + VAN.replace("2.4 m", "100").replace("140 cm", "5 ft 3 in")
    event.write_text(EVENT + bare)
    # the international inch is 25.4 mm
    (van,) = read_event(event).vehicles
    assert [van.length, van.height] == pytest.approx([254, 63 * 2.54])


@pytest.mark.parametrize(("old", "new", "line", "path", "message", "suggestion"), FORM)
def test_each_mistake_of_form(
    event: Path, old: str, new: str, line: int, path: str, message: str, suggestion: str
) -> None:
    text = EVENT.replace(old, new, 1)
    event.write_text(text)
    with pytest.raises(DesignProblemsError) as found:
        read_event(event)
    (problem,) = [p for p in found.value.problems if p.path == path]
    assert problem.line == line or "missing" in message or "labour" in path
    assert message in Voice().tell(problem.message)
    assert suggestion in suggestion_words(problem.suggestion, Voice())
    assert not VALIDATOR.is_valid(yaml.safe_load(text))


@pytest.mark.parametrize(
    ("new", "message"),
    [
        ("other.yaml", 'no design file "other.yaml"'),
        ("star", 'no design file "star"'),
        ("star.yaml", "listed twice"),
        ("other.event.yaml", "an event file"),
    ],
)
def test_each_design_must_be_there_once(event: Path, new: str, message: str) -> None:
    event.write_text(EVENT.replace("frame.yaml", new))
    with pytest.raises(DesignProblemsError) as found:
        read_event(event)
    (problem,) = found.value.problems
    assert (problem.line, problem.path) == (5, "designs[1].design")
    assert message in Voice().tell(problem.message)


def test_all_mistakes_are_told_at_once_in_the_order_of_the_file(event: Path) -> None:
    text = EVENT
    for old, new in (("event: 1", "event: 2"), ("star", "stra"), ("crew: 3", "crew: many")):
        text = text.replace(old, new, 1)
    event.write_text(text)
    with pytest.raises(DesignProblemsError) as found:
        read_event(event)
    assert [problem.line for problem in found.value.problems] == [1, 4, 6]


def test_what_is_no_event_is_refused(event: Path) -> None:
    event.write_text("- star.yaml\n")
    with pytest.raises(UnreadableDesignError) as refused:
        read_event(event)
    assert "event: 1" in suggestion_words(refused.value.problem.suggestion, Voice())


@pytest.mark.parametrize(
    ("written", "right"),
    [
        ("10", "10:00"),
        ("9.30", "09:30"),
        ("10h", "10:00"),
        ("9 am", "09:00"),
        ("5:30 pm", "17:30"),
        ("12 pm", "12:00"),
    ],
)
def test_a_time_of_day_written_otherwise_is_told_as_it_has_to_be(
    event: Path, written: str, right: str
) -> None:
    event.write_text(EVENT.replace('"10:00"', written))
    with pytest.raises(DesignProblemsError) as found:
        read_event(event)
    (problem,) = found.value.problems
    (way,) = problem.suggestion.ways
    mended, _ = changed_text(event.read_text(), way.changes)
    event.write_text(mended)
    assert read_event(event).opening == right


def test_lengths_with_decimal_commas_are_told_as_that_alone(event: Path) -> None:
    event.write_text(EVENT + "doors: [{name: Side, width: 1,2 m, height: 2,05 m}]\n")
    with pytest.raises(DesignProblemsError) as found:
        read_event(event)
    assert [p.kind for p in found.value.problems] == [FileKind.COMMA_IN_NUMBER] * 2
    text = event.read_text()
    for problem in found.value.problems:
        text, _ = changed_text(text, problem.suggestion.ways[0].changes)
    event.write_text(text)
    (door,) = read_event(event).doors
    assert (door.width, door.height) == (120, 205)


def test_a_design_whose_name_is_written_wrong_is_told_the_one_that_is_there(event: Path) -> None:
    event.write_text(EVENT.replace("frame.yaml", "frmae.yaml"))
    with pytest.raises(DesignProblemsError) as found:
        read_event(event)
    (problem,) = found.value.problems
    mended, _ = changed_text(event.read_text(), problem.suggestion.ways[0].changes)
    event.write_text(mended)
    assert read_event(event).designs[1].design == "frame.yaml"
