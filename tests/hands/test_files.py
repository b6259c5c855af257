"""The sheet, the log that comes back, and the file that measurements gather in."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest

from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import Evaluation, evaluate
from buildplan.hands.file import gathered, hands_text, read_hands
from buildplan.hands.model import ChainOfTen, RingAcross, StandingHeight, Work
from buildplan.hands.sheet import LogError, read_log, sheet_rows
from buildplan.sequence.model import Kind

DESIGNS = Path(__file__).parents[2] / "designs"


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


@pytest.mark.parametrize(("delimiter", "comma"), [(",", "."), (";", ","), ("\t", ",")])
def test_a_filled_sheet_comes_back_as_it_was_measured(
    frame: Evaluation, delimiter: str, comma: str
) -> None:
    found = read_log("\ufeff" + filled(frame, delimiter, comma), lambda name: frame)
    kinds = {type(one) for one in found}
    assert kinds == {ChainOfTen, RingAcross, StandingHeight, Work}
    chain = next(one for one in found if isinstance(one, ChainOfTen))
    # ten links of 8 in at 1.15 of the gauge, to a tenth of an inch
    assert chain.length_m == pytest.approx(10 * 8 * 0.0254 * 1.15, abs=0.05 * 0.0254)
    timed = {one.kind: one for one in found if isinstance(one, Work)}
    braces = len(frame.framework.braces)
    assert timed[Kind.BRACE] == Work(Kind.BRACE, braces, 12.5)


def test_the_file_gives_back_what_was_written(frame: Evaluation, tmp_path: Path) -> None:
    found = read_log(filled(frame), lambda name: frame)
    path = tmp_path / "hands.yaml"
    path.write_text(hands_text(found), "utf-8")
    again = read_hands(path)
    assert len(again) == len(found)
    assert hands_text(again) == hands_text(found)
    assert gathered(again, found) == list(again), "nothing is counted twice"


def test_a_log_of_times_is_read_too() -> None:
    found = read_log("kind;count;minutes;note\nbrace;12;20,5;slow\n\nlock;4;2\n", never_asked)
    assert found == (Work(Kind.BRACE, 12, 20.5), Work(Kind.LOCK, 4, 2))


@pytest.mark.parametrize(
    ("row", "says"),
    [
        ("f.yaml,ring,Z,1,,cm,300", "nothing that can be measured"),
        ("f.yaml,ring,A,1,,furlong,300", "unit is to be"),
        ("f.yaml,ring,A,1,,cm,-3", "above 0"),
        ("f.yaml,ring,A,1,,cm,nan", "above 0"),
        ("f.yaml,work,lok,1,,min,3", "kinds of work"),
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
