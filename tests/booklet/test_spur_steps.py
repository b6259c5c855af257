"""Spurs: their rungs are one step after the brace, told, drawn and read back.

That what is tied into a joint is tied before its lock is common practice, no source.
"""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET
from functools import cache
from itertools import combinations

import pytest
from random_tubes import BALLOONS

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.spurs import spur_of_step, spur_pictures
from buildplan.booklet.common.step_drawings import drawings_from
from buildplan.design.model import Design
from buildplan.document.paper import PAPERS
from buildplan.drawing.map_style import joint_radius
from buildplan.drawing.marks import Label
from buildplan.drawing.svg import picture_svg
from buildplan.sequence.model import Kind, Step


@cache
def book_of(links: int, chains: int = 4) -> Book:
    """A tube with one spur of so many balloons, and two further balloons across its rails."""
    balloons = {
        key: {"kind": kind, "nominal": size, "inflate_to": gauge, "colour": colour, "label": key}
        for key, (kind, size, gauge, colour) in BALLOONS.items()
    }
    back = "D" if chains == 4 else "C"
    tube = {
        "closed": False,
        "chains": chains,
        "long": "long",
        "brace": "cross",
        "single": "cross",
        "lock": "lock",
        "course": ["straight", [links, 0], "straight"],
        "extra": [
            ["A3", f"A{links + 1}"],
            {"joints": [f"{back}3", f"{back}{links + 1}"], "balloon": "long"},
        ],
    }
    data = {"buildplan": 1, "name": "spur", "units": "in", "balloons": balloons}
    design = Design.model_validate(data | {"build": {"tube": tube}})
    return gather_book(design, PAPERS["a4"], "in", "training")


def step_of(book: Book) -> Step:
    (step,) = (step for step in book.steps if spur_of_step(book, step) is not None)
    return step


SPURS = [(4, 4), (5, 4), (8, 4), (6, 3)]


@pytest.mark.parametrize(("links", "chains"), SPURS)
def test_a_spur_is_tied_at_once_after_its_brace_and_locked_last(links: int, chains: int) -> None:
    book = book_of(links, chains)
    step = step_of(book)
    (cell,) = (cell for cell in book.framework.cells if cell.kind.is_spur)
    before = book.steps[step.number - 2]
    assert before.kind is Kind.BRACE
    assert {op.brace for op in before.of_kind(Kind.BRACE)} == {cell.second}
    tied = [op.links[0] for op in step.of_kind(Kind.SINGLE)]
    rungs = [link for link in tied if link not in book.framework.extras]
    assert {*tied[len(rungs) :]} == book.framework.extras
    assert tied[: len(rungs)] == rungs
    assert len(rungs) == links - 1
    assert sorted(step.locks) == sorted(cell.skipped)
    kinds = [op.kind for op in step.operations]
    assert kinds.index(Kind.LOCK) == len(tied)


@pytest.mark.parametrize(("links", "chains"), SPURS)
def test_the_pictures_of_a_spur_number_every_single_in_its_order(links: int, chains: int) -> None:
    book = book_of(links, chains)
    step = step_of(book)
    _, drawn = next(iter(drawings_from(book, step.number)))
    found: dict[int, tuple[str, str]] = {}
    for group in ET.fromstring(picture_svg(drawn)).iter():
        if group.attrib.get("data-picture", "").startswith("spur"):
            for mark in group.iter():
                at = mark.attrib
                if "data-from" in at:
                    found[int(at["data-order"])] = (at["data-from"], at["data-to"])
    tied = [op.joints for op in step.of_kind(Kind.SINGLE)]
    assert [found[number] for number in sorted(found)] == tied
    assert sorted(found) == list(range(1, len(tied) + 1))


@pytest.mark.parametrize(("links", "chains"), [*SPURS, (12, 4)])
def test_no_joint_of_a_spur_is_drawn_over_another(links: int, chains: int) -> None:
    book = book_of(links, chains)
    apart = 2 * joint_radius(book.framework)
    for picture in spur_pictures(book, step_of(book)):
        labels = [mark for mark in picture.marks if isinstance(mark, Label)]
        spots = [label.at for label in labels if label.text in book.framework.joints]
        assert len(spots) > links
        assert all(math.dist(*pair) >= apart - 0.1 for pair in combinations(spots, 2))


def test_the_brace_before_a_spur_is_shown_without_the_joints_of_the_spur() -> None:
    book = book_of(8)
    step = book.steps[step_of(book).number - 2]
    (closeup,) = plan_views(book).of(step)
    assert not closeup.panel.skipped
    assert len(closeup.panel.joints) == 4
