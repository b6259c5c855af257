"""The sheet, the log that comes back, and the file that measurements gather in."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pdfua
import pikepdf
import pytest
from conftest import Call
from page_words import words_of
from typer.testing import CliRunner

from buildplan.booklet.office.measure_page import print_sheet
from buildplan.cli import app
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.evaluation.evaluating import Evaluation, evaluate
from buildplan.hands.applying import learned_for, with_hands
from buildplan.hands.file import gathered, hands_text, read_hands
from buildplan.hands.log import LogError, minutes_learned, read_log
from buildplan.hands.model import ChainOfTen, RingAcross, Size, StandingHeight, TimedWork
from buildplan.hands.sheet import sheet_rows
from buildplan.instructions.timetables import labour_lines
from buildplan.language.voice import LOCALES, Voice
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Kind
from buildplan.sequence.timetable import crew_of, timetable

DESIGNS = Path(__file__).parents[2] / "designs"


COLUMN = """\
buildplan: 1
name: Column
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: navy, label: blue}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: gold, label: gold}
build:
  column: {around: 4, rings: 5, ring: a, between: a, lock: k}
"""


@pytest.fixture(scope="module")
def frame() -> Evaluation:
    design = read_design(DESIGNS / "picture_frame.yaml")
    return evaluate(design, design.units, 12)


def never_asked(name: str) -> Evaluation:
    raise AssertionError(f"{name} is not needed")


def filled(frame: Evaluation, delimiter: str = ",", comma: str = ".") -> str:
    """The sheet with all that was expected measured, as a spreadsheet saves it."""
    head, *rows = sheet_rows(frame, "picture_frame.yaml")
    text = io.StringIO()
    out = csv.writer(text, delimiter=delimiter)
    out.writerow(head)
    for row in rows:
        value = row[4] or "12.5"
        out.writerow([*row[:4], row[4].replace(".", comma), row[5], value.replace(".", comma)])
    return text.getvalue()


@pytest.mark.parametrize("key", ["=1+1", "-2;=3", "@a", "'=1", "+44", "\u05db\u05d7\u05d5\u05dc 3"])
@pytest.mark.parametrize("name", ["=piece.yaml", "-piece.yaml", "piece.yaml"])
def test_a_sheet_knows_balloons_and_files_again_whatever_they_are_called(
    call: Call, key: str, name: str
) -> None:
    quoted = json.dumps(key)
    text = COLUMN.replace("  a: ", f"  {quoted}: ").replace("g: a", f"g: {quoted}")
    text = text.replace("between: a", f"between: {quoted}")
    Path(name).write_text(text, "utf-8")
    assert call("measure", f"./{name}", "--out", "log.csv")[0] == 0
    with Path("log.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = [[*row[:-1], row[-1] or row[4]] for row in csv.reader(file) if row[1] != "work"]
    with Path("log.csv").open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(rows)
    status, _, messages = call("learn", "log.csv")
    assert status == 0, messages


@pytest.mark.parametrize(("delimiter", "comma"), [(",", "."), (";", ","), ("\t", ",")])
def test_a_filled_sheet_comes_back_as_it_was_measured(
    frame: Evaluation, delimiter: str, comma: str
) -> None:
    found = read_log("\ufeff" + filled(frame, delimiter, comma), lambda name: frame)
    kinds = {type(one) for one in found}
    assert kinds == {ChainOfTen, RingAcross, StandingHeight, TimedWork}
    chain = next(one for one in found if isinstance(one, ChainOfTen))
    # ten links of 8 in at 1.15 of the gauge, to a tenth of an inch
    assert chain.length_m == pytest.approx(10 * 8 * 0.0254 * 1.15, abs=0.05 * 0.0254)
    timed = {one.kind: one for one in found if isinstance(one, TimedWork)}
    braces = len(frame.framework.braces)
    assert timed[Kind.BRACE] == TimedWork(Kind.BRACE, braces, 12.5)


def test_the_file_gives_back_what_was_written(frame: Evaluation, tmp_path: Path) -> None:
    found = read_log(filled(frame), lambda name: frame)
    path = tmp_path / "hands.yaml"
    path.write_text(hands_text(found), "utf-8")
    again = read_hands(path)
    assert len(again) == len(found)
    assert hands_text(again) == hands_text(found)
    assert gathered(again, found) == list(again), "nothing is counted twice"


def test_a_piece_made_higher_and_its_steps_are_those_of_the_hands(tmp_path: Path) -> None:
    """Ten links measured a tenth longer than is taken for granted (1.15 of the gauge) make the
    piece a tenth higher before it is resized, and work that was timed long is planned long."""
    column, hands = tmp_path / "column.yaml", tmp_path / "measured.yaml"
    column.write_text(COLUMN, "utf-8")
    chain = ChainOfTen(Size(12 * 0.0254, 8 * 0.0254), 1.1 * 10 * 1.15 * 8 * 0.0254)
    hands.write_text(hands_text([chain, TimedWork(Kind.CHAIN, 10, 500.0)]), "utf-8")

    def told(*command: str) -> list[str]:
        found = []
        for more in ([], ["--hands", str(hands)]):
            result = CliRunner().invoke(app, [command[0], str(column), *command[1:], *more])
            assert result.exit_code == 0, result.output
            found.append(result.stdout)
        return found

    heights = [
        float(row.split()[3])
        for text in told("resize", "--height", "150cm", "--by", "cells")
        for row in text.splitlines()
        if row.startswith("as it is")
    ]
    assert heights[1] == pytest.approx(1.1 * heights[0], abs=0.03)
    usual, slow = (json.loads(text) for text in told("steps", "--crew", "1", "--json"))
    assert [one["text"] for one in usual] == [one["text"] for one in slow]
    assert slow != usual


def test_a_log_of_times_is_read_too() -> None:
    found = read_log("kind;count;minutes;note\nbrace;12;20,5;slow\n\nlock;4;2\n", never_asked)
    assert found == (TimedWork(Kind.BRACE, 12, 20.5), TimedWork(Kind.LOCK, 4, 2))


def test_the_head_of_a_log_says_what_its_times_are_in() -> None:
    for head, value in (("minutes", "90"), ("hours", "1,5"), ("seconds", "5400")):
        (found,) = read_log(f"kind;count;{head}\nbrace;12;{value}\n", never_asked)
        assert isinstance(found, TimedWork)
        assert (found.kind, found.count) == (Kind.BRACE, 12)
        assert found.minutes == pytest.approx(90)


def test_minutes_are_told_from_all_rows_together() -> None:
    log = "Kind,count,minutes,note\nlock,10,5,\nlock,30,6,after lunch\n\npair,100,25,\n"
    learned = minutes_learned(read_log(log, never_asked))
    assert learned[Kind.LOCK].minutes == pytest.approx(11 / 40)
    assert (learned[Kind.LOCK].count, learned[Kind.LOCK].rows) == (40, 2)
    lines = labour_lines(Voice(), learned)
    assert lines[0] == "labour:"
    assert lines[1].startswith("  pair: 0.25  # ")
    assert lines[2].startswith("  lock: 0.275  # ")


def test_a_log_makes_every_later_plan_its_own(frame: Evaluation) -> None:
    """A brace that took three times as long as is taken for granted: the timetable is longer, by
    what the braces are longer, for one pair of hands."""
    log = f"kind;count;minutes\nbrace;40;{3 * 40 * MINUTES[Kind.BRACE]:.1f}".replace(".", ",")
    measured = read_log(log, never_asked)
    own = with_hands(frame.design, learned_for(frame.design, measured))
    slower = own.labour["brace"]
    assert slower > 2 * MINUTES[Kind.BRACE]
    learned = {str(kind): minutes for kind, minutes in own.labour.items()}
    alone = [timetable(frame.steps, crew_of(1), minutes) for minutes in ({}, learned)]
    assert alone[1].minutes > alone[0].minutes + 0.9 * len(frame.framework.braces) * (
        slower - MINUTES[Kind.BRACE]
    )


@pytest.mark.parametrize(
    ("log", "line", "says"),
    [
        ("kind,count,minutes\nsizing,3,4\n", 2, "close ring"),
        ("kind,count,minutes\nbraces,3,4\n", 2, "did you mean brace?"),
        ("kind,count,minutes\nlock,none,2\n", 2, "count is to be a number"),
        ("kind,count,minutes\nlock,ten,2\n", 2, "write 10"),
        ("kind,count,minutes\nlock,10,12 min\n", 2, "write 12"),
        ("kind,count,hours\nlock,10,1:30\n", 2, "write 1.5"),
        ("kind,count,minutes\nlock,10,2027-05-01\n", 2, "a number above 0"),
        ("kind,count,minutes\nlock,10,12,5\n", 2, "semicolons"),
        ("kind,count,minutes\nlock,4,2\npair,5\n", 3, "has 2 cells"),
        ("kind,number\n", 1, "minutes, hours or seconds"),
        ("", 1, "kind, count and minutes"),
    ],
)
def test_mistakes_of_a_log_of_times_are_told_with_their_line(
    log: str, line: int, says: str
) -> None:
    with pytest.raises(LogError) as refused:
        read_log(log, never_asked)
    (row,) = refused.value.rows
    assert row.line == line
    assert says in Voice().tell(row.why)


@pytest.mark.parametrize(
    ("row", "says"),
    [
        ("f.yaml,ring,Z,1,,cm,300", "nothing that can be measured"),
        ("f.yaml,ring,A,1,,furlong,300", "unit is to be"),
        ("f.yaml,ring,A,1,,cm,-3", "above 0"),
        ("f.yaml,ring,A,1,,cm,nan", "above 0"),
        ("f.yaml,work,lok,1,,min,3", "kinds of work"),
        # a frame is about two metres high: a point slipped, and inches called centimetres
        ("f.yaml,height,,1,,cm,18.5", "cannot be right where about"),
        ("f.yaml,height,,1,,in,185", "cannot be right where about"),
    ],
)
def test_a_bad_row_is_told_with_its_line(frame: Evaluation, row: str, says: str) -> None:
    text = f"design,what,which,count,expected,unit,measured\nf.yaml,work,lock,1,,min,3\n{row}\n"
    with pytest.raises(LogError) as told:
        read_log(text, lambda name: frame)
    (bad,) = told.value.rows
    assert bad.line == 3
    assert says in bad.why.text


def test_a_log_without_its_columns_is_refused() -> None:
    with pytest.raises(LogError):
        read_log("what,minutes\n", never_asked)


@pytest.mark.parametrize("language", LOCALES)
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_page_has_a_box_for_each_measurement_of_the_sheet(
    frame: Evaluation, paper: str, language: str, tmp_path: Path
) -> None:
    voice = Voice(language)
    data = print_sheet(frame, "log.csv", PAPERS[paper], voice)
    assert data == print_sheet(frame, "log.csv", PAPERS[paper], voice)
    path = tmp_path / "sheet.pdf"
    path.write_bytes(data)
    assert not pdfua.validate(str(path)).findings
    lengths = [row for row in sheet_rows(frame, "f.yaml")[1:] if row[1] != "work"]
    works = [row for row in sheet_rows(frame, "f.yaml")[1:] if row[1] == "work"]
    box = voice.say("box to write in, {unit}", unit="in")
    with pikepdf.open(path) as pdf:
        boxes = [
            str(one.get("/Alt", "")) for one in pdf.objects if isinstance(one, pikepdf.Dictionary)
        ]
    assert boxes.count(box) == len(lengths)
    assert boxes.count(voice.say("box to write in, {unit}", unit="min")) == len(works)
    text = words_of(path)
    for row in lengths:
        assert f"{voice.decimal(float(row[4]), 1)} in" in text
