"""Shopping lists: several designs on one list, read back from its CSV."""

from __future__ import annotations

import csv
import io
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from buildplan.business.buying.shopping import (
    ShoppedFor,
    shopping_lines,
    shopping_list,
    shopping_rows,
)
from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.language.voice import Voice
from buildplan.source.csv_text import FORMULA_SIGNS, csv_bytes, read_cell
from buildplan.source.problems import DesignProblemsError

DESIGNS = Path(__file__).parent.parent.parent / "designs"
NAMES = ("reading_star", "walk_through_gate", "picture_frame")


def asked(name: str, times: int = 1, **changes: Any) -> ShoppedFor:
    design = read_design(DESIGNS / f"{name}.yaml").model_copy(update=changes)
    return ShoppedFor(f"{name}.yaml", design, build_framework(design), times)


def read_back(data: bytes) -> list[dict[str, str]]:
    """By the standard library's reader, as a script would."""
    return list(csv.DictReader(io.StringIO(data.decode("utf-8-sig"), newline="")))


def test_the_same_balloon_of_two_designs_is_one_line() -> None:
    found = shopping_list([asked(name) for name in NAMES])
    # the gate's braces and stripes and the frame's braces are one cream: 119 and 112 balloons
    cream = [p for p in found.purchases if p.label == "cream" and p.balloon.kind.name == "link"]
    assert [p.needed for p in cream] == [119 + 112]


def test_the_table_reads_back_as_the_list() -> None:
    found = shopping_list([asked("reading_star"), asked("picture_frame", 2)])
    rows = read_back(csv_bytes(shopping_rows(found, Voice())))
    assert [int(row["needed"]) for row in rows] == [p.needed for p in found.purchases]
    assert [int(row["packs"]) * int(row["pack size"]) for row in rows] == [
        p.to_buy for p in found.purchases
    ]
    assert sum(Decimal(row["cost"]) for row in rows) == found.total
    for row in rows:
        assert Decimal(row["packs"]) * Decimal(row["price"]) == Decimal(row["cost"])
        assert row["currency"] == "GBP"
    assert found.total is not None
    assert f"£{found.total}" in "\n".join(shopping_lines(found, Voice()))


def test_rows_have_the_form_of_rfc_4180() -> None:
    """RFC 4180 (from memory): lines end in CR LF, a field with a comma, a quote or a line break
    stands in double quotes, and a double quote in it is doubled."""
    assert csv_bytes([["a", 'say "b"', "c,d", "e\nf"], [1, None, Decimal("1.50"), ""]]) == (
        b'\xef\xbb\xbfa,"say ""b""","c,d","e\nf"\r\n1,,1.50,\r\n'
    )


@given(st.lists(st.text(st.characters(codec="utf-8", exclude_characters="\0")), min_size=2))
@settings(max_examples=150)
def test_no_cell_is_run_as_a_formula(cells: list[str]) -> None:
    data = csv_bytes([cells])
    (row,) = csv.reader(io.StringIO(data.decode("utf-8-sig"), newline=""))
    assert [cell.replace("'", "") for cell in row] == [cell.replace("'", "") for cell in cells]
    assert not any(cell.lstrip(" ").startswith(FORMULA_SIGNS) for cell in row)


@given(st.lists(st.text(st.characters(codec="utf-8", exclude_characters="\0")), min_size=2))
@example(["'=1", "''=1", "' =1", "a;'=1", "\n'=", "\r\n\t=", "-", "'"])
@settings(max_examples=150)
def test_what_is_written_is_read_back_as_it_was(cells: list[str]) -> None:
    data = csv_bytes([cells]).decode("utf-8-sig")
    (row,) = csv.reader(io.StringIO(data, newline=""))
    assert [read_cell(cell) for cell in row] == cells


@given(st.lists(st.text("';=- \t\n\r+@a", max_size=6), min_size=2))
def test_signs_of_formulas_are_read_back_whatever_stands_beside_them(cells: list[str]) -> None:
    data = csv_bytes([cells]).decode("utf-8-sig")
    (row,) = csv.reader(io.StringIO(data, newline=""))
    assert [read_cell(cell) for cell in row] == cells


def test_a_number_below_nothing_stays_a_number() -> None:
    text = csv_bytes([[-1, Decimal("-2.50"), -0.5]]).decode("utf-8-sig")
    (row,) = csv.reader(io.StringIO(text))
    assert [float(cell) for cell in row] == [-1.0, -2.5, -0.5]


@pytest.mark.parametrize(
    "name", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", " =1", "\xa0=1", "\uff1d1"]
)
def test_a_label_that_looks_like_a_formula_is_text(name: str) -> None:
    (row,) = csv.reader(io.StringIO(csv_bytes([[name, "x"]]).decode("utf-8-sig")))
    assert row[0].startswith("'")
    assert row[0].replace("'", "") == name


def test_a_semicolon_does_not_make_a_cell_of_what_follows_it() -> None:
    """In countries that write 1,5 spreadsheets part cells at semicolons (common practice, no
    source)."""
    data = csv_bytes([["x", "gold;=1+1", "a\t=1", "b; -2"]]).decode("utf-8-sig")
    for delimiter in ";\t":
        (row,) = csv.reader(io.StringIO(data, newline=""), delimiter=delimiter)
        assert len(row) > 1
        assert not any(cell.strip().startswith(FORMULA_SIGNS) for cell in row)


def test_no_sum_is_told_when_a_price_is_missing() -> None:
    found = shopping_list([asked("reading_star", pack_prices={})])
    assert found.total is None
    assert "no price for deep blue 12 in link" in "\n".join(shopping_lines(found, Voice()))
    assert shopping_list([asked("reading_star", currency=None)]).total is None


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"pack_sizes": {"across": 100}, "pack_prices": {}}, "holds 50 or 100"),
        ({"pack_prices": {"across": Decimal("16.10")}}, "costs 15.9 or 16.1"),
        ({"currency": "EUR"}, "GBP in walk_through_gate.yaml and EUR in picture_frame.yaml"),
    ],
)
def test_designs_that_disagree_are_told_apart(changes: dict[str, Any], words: str) -> None:
    with pytest.raises(DesignProblemsError) as found:
        shopping_list([asked("walk_through_gate"), asked("picture_frame", **changes)])
    (problem,) = found.value.problems
    assert words in Voice().tell(problem.message)


def test_air_of_several_pieces_adds_up() -> None:
    one, two = (shopping_list([asked("picture_frame", times)]) for times in (1, 2))
    assert two.air_m3 == pytest.approx(2 * one.air_m3)
    assert two.pump_minutes == pytest.approx(2 * one.pump_minutes)
