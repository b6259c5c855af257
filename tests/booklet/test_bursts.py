"""The crew's page for bursts: every way of repair the piece has, with a picture of each."""

from __future__ import annotations

from pathlib import Path

import pytest
from page_words import words_of

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.crew.bursts import best_seen, burst_picture
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.drawing.marks import Inset, Label
from buildplan.instructions.repairs import act_told
from buildplan.sequence.repair import Deed, repairs, ways_of

DESIGN = Path(__file__).parents[2] / "designs" / "gallery" / "letter_o.yaml"


@pytest.fixture(scope="module")
def book() -> Book:
    design = read_design(DESIGN)
    return gather_book(design, PAPERS["a4"], design.units, "crew")


def test_each_way_is_told_act_by_act_with_its_picture(book: Book) -> None:
    text = words_of(print_booklet(book))
    found = repairs(book.framework, book.steps)
    ways = ways_of(found)
    assert len(ways) == 3
    for way in ways:
        acts = found[best_seen(book, way)]
        deeds = [act.deed for act in acts]
        own = [act for act in acts if act.deed in (Deed.CLOSE, Deed.TIE)]
        for number, act in enumerate(own, start=1):
            assert f"{number}. {book.voice.tell(act_told(act))}" in text
        # what is told once, before all ways, is first and last in each of them
        assert deeds[:2] == [Deed.OPEN, Deed.OPEN]
        assert deeds[-2:] == [Deed.LOCK, Deed.LOCK]
        assert deeds.count(Deed.SIZE) == 1
        assert Deed.UNDO not in deeds[deeds.index(Deed.SIZE) :]
    told = [
        text.index("First open the locks at its two joints"),
        text.index("Undo no knot: with blunt scissors"),
        text.index("Size a new one"),
        text.index("When it is tied in, lock both"),
        text.index(f"Like {best_seen(book, ways[0])}"),
    ]
    assert told == sorted(told)
    for way in ways[1:]:
        assert ", ".join(way.links) in text


def test_the_picture_names_the_joints_of_the_balloon_and_of_its_neighbours(book: Book) -> None:
    picture = burst_picture(book, "A3-A4", repairs(book.framework, book.steps)["A3-A4"])
    labels = {
        mark.text
        for each in [picture, *(m.picture for m in picture.marks if isinstance(m, Inset))]
        for mark in each.marks
        if isinstance(mark, Label)
    }
    assert {"A2", "A3", "A4", "A5"} <= labels
    assert "A2-A3" in picture.alt
    assert "A4-A5" in picture.alt
