"""The booklet of a wall in two layers, which is built lying on its back: words and pictures agree.

What is told is our own; the counts are those of a grid of 8 x 8 joints with a window of 3 x 2 cells
in two layers: 2 * (64 - 2) joints, and as many pairs of joints that face one another as in one
layer (from the drawing of the wall, no source).
"""

from __future__ import annotations

import pytest
from shipped import DESIGNS

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.closeups import plan_views
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.sequence.model import Kind

BETWEEN_LAYERS = 64 - 2


@pytest.fixture(scope="module")
def book() -> Book:
    design = read_design(DESIGNS / "gallery" / "story_wall.yaml")
    return gather_book(design, PAPERS["a4"], design.units, "training")


def test_it_is_said_once_which_side_is_up(book: Book) -> None:
    texts = [book.told(step).text for step in book.steps]
    assert sum("lying on its back, front up" in text for text in texts) == 1
    titles = [book.told(step).title for step in book.steps]
    assert not any(title.startswith("Set chain") for title in titles)
    assert "turn the piece up on its foot" in texts[-1]


def test_every_close_up_looks_down_on_its_front(book: Book) -> None:
    views = plan_views(book)
    joined = [step for step in book.steps if step.kind is Kind.JOIN]
    toward = [view.panel.camera.axes[2] for step in joined for view in views.of(step)]
    assert toward
    assert all(axis[2] > 0.8 for axis in toward)


def test_balloons_between_the_layers_are_no_chains(book: Book) -> None:
    told = next(book.told(s).text for s in book.steps if s.kind is Kind.TIE_OFF)
    assert f"{BETWEEN_LAYERS} are tied in between two joints as they are" in told
    assert "16 end chains" in told
