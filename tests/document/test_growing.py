"""Pictures grow into the room that pages have left, and nothing comes on another page for it."""

from __future__ import annotations

import io

import pypdf
import pytest
from reportlab.platypus import Flowable

from buildplan.document.blocks import Shown, Words
from buildplan.document.growing import Grower, Growing, shares
from buildplan.document.links import Anchor, PageLink
from buildplan.document.paper import PAPERS
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.undrawn import Undrawn
from buildplan.drawing.marks import Picture
from buildplan.language.voice import Voice

PAPER = PAPERS["a4"]
ROOM = PAPER.top - PAPER.bottom


def test_room_is_shared_out_evenly_up_to_what_each_can_take() -> None:
    growers = [Grower("a", 10.0), Grower("b", 500.0), Grower("c", 500.0)]
    found = shares(growers, 112.0)
    assert found["a"] == 10.0
    assert found["b"] == found["c"] == pytest.approx(50.0)
    assert sum(found.values()) <= 112.0
    assert not shares(growers, 5.0)
    assert not shares([], 300.0)


def _growing(name: str, heights: dict[str, float], tall: float, most: float) -> Flowable:
    def make(more: float) -> list[Flowable]:
        heights[name] = tall + more
        picture = Picture(100.0, tall + more, (), f"Picture {name}.")
        return [Anchor(name), Shown(picture, after=0.0)]

    return Growing(name, make, most)


def test_pictures_fill_their_page_and_stay_on_it() -> None:
    """Three of two fifths of a page: two on the first page, as high as half of it, the third on the
    second no higher than it can be."""
    heights: dict[str, float] = {}
    blocks = [_growing(name, heights, 0.4 * ROOM, 0.3 * ROOM) for name in "abc"]
    data = print_document(Document([Section("All", blocks)], PAPER, Voice(), "Trial"))
    assert len(pypdf.PdfReader(io.BytesIO(data)).pages) == 2
    assert heights["a"] == heights["b"] == pytest.approx(0.5 * ROOM, rel=0.01)
    assert heights["c"] == pytest.approx(0.7 * ROOM)


def test_a_picture_is_drawn_once_as_large_as_its_page_lets_it_be() -> None:
    drawn: list[float] = []

    def make(more: float) -> list[Flowable]:
        tall = 0.4 * ROOM + more

        def draw() -> Picture:
            drawn.append(tall)
            return Picture(100.0, tall, (), "A picture.")

        return [Anchor("a"), Shown(Undrawn(100.0, tall, draw), after=0.0)]

    blocks = [Growing("a", make, 0.3 * ROOM)]
    print_document(Document([Section("All", blocks)], PAPER, Voice(), "Trial"))
    assert drawn == [pytest.approx(0.7 * ROOM)]


def test_what_would_move_does_not_grow() -> None:
    """Blocks that come out higher than they said would push the last words to a third page: that
    page stays as it was."""
    heights: dict[str, float] = {}

    def make(more: float) -> list[Flowable]:
        heights["b"] = more
        return [Shown(Picture(100.0, 0.3 * ROOM + 3 * more, (), "b"), after=0.0)]

    blocks: list[Flowable] = [
        _growing("a", heights, 0.8 * ROOM, 0.1 * ROOM),
        Growing("b", make, 0.5 * ROOM),
        Words("Last words."),
    ]
    data = print_document(Document([Section("All", blocks)], PAPER, Voice(), "Trial"))
    assert len(pypdf.PdfReader(io.BytesIO(data)).pages) == 2
    assert heights["a"] == pytest.approx(0.9 * ROOM)
    assert heights["b"] == 0.0


def test_pages_grow_though_links_were_wider_at_first() -> None:
    """A link whose words take a page more while its page is unknown: what follows it grows as it
    does where the link is short from the start."""
    heights: dict[str, float] = {}

    def words(page: int) -> str:
        return "page " * 500 if page > 100 else f"page {page}"

    blocks: list[Flowable] = [
        PageLink("b", words, words),
        *(_growing(name, heights, 0.8 * ROOM, 0.1 * ROOM) for name in "ab"),
    ]
    data = print_document(Document([Section("All", blocks)], PAPER, Voice(), "Trial"))
    assert len(pypdf.PdfReader(io.BytesIO(data)).pages) == 2
    assert heights["a"] == heights["b"] == pytest.approx(0.9 * ROOM)
