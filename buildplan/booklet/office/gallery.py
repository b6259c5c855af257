"""The gallery: every design of a folder on contact sheets, after an index."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from buildplan.booklet.common.book import Book
from buildplan.design.measures import size_words
from buildplan.document.flow import Grid, Words, leaves_of
from buildplan.document.paper import Paper
from buildplan.document.renderer import BODY, SMALL, Leaf, Press, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.language.speaking import say, say_count, whole

ACROSS, DOWN = 2, 3
INDEX_SHARES = (22.5, 30.5, 10.0, 29.5, 7.5)
GAP, CAPTION = 18.0, 46.0


@dataclass(frozen=True)
class Exhibit:
    """A design of the gallery: the name of its file, and its book."""

    file: str
    book: Book


def is_design_file(file: Path) -> bool:
    """Whether a .yaml file is a design, not an event or a brand: designs say so at their start."""
    with file.open(encoding="utf-8", errors="replace") as lines:
        return any(line.startswith("buildplan:") for line in lines)


def print_gallery(exhibits: Sequence[Exhibit], paper: Paper, title: str) -> bytes:
    """The index and the contact sheets as one tagged PDF. The same designs give the same bytes."""
    each = ACROSS * DOWN
    indexes = len(_index(exhibits, paper, title, 0))
    leaves = _index(exhibits, paper, title, indexes)
    leaves += [
        _sheet(exhibits[start : start + each], 1 + start // each)
        for start in range(0, len(exhibits), each)
    ]
    return Press(paper, title).print(leaves, title=title, author="buildplan")


def _size(book: Book) -> str:
    facts = book.facts
    width, height = (size_words(side, book.units) for side in (facts.width_m, facts.height_m))
    return say("{width} x {height}", width=width, height=height)


def _index(exhibits: Sequence[Exhibit], paper: Paper, title: str, before: int) -> list[Leaf]:
    """The index, which takes `before` pages."""
    rows = []
    for number, exhibit in enumerate(exhibits):
        facts = exhibit.book.facts
        name = say("{piece} (has problems)", piece=facts.name) if facts.problems else facts.name
        rows.append(
            (
                plain(name),
                plain(exhibit.file),
                whole(facts.total),
                _size(exhibit.book),
                whole(before + 1 + number // (ACROSS * DOWN)),
            )
        )
    head = (say("Piece"), say("File"), say("Balloons"), say("Width x height"), say("Page"))
    words = say_count(
        "{number} design, {balloons} balloons in all. Sizes are estimates.",
        "{number} designs, {balloons} balloons in all. Sizes are estimates.",
        len(exhibits),
        balloons=sum(exhibit.book.facts.total for exhibit in exhibits),
    )
    table = Grid(head, tuple(rows), INDEX_SHARES, frozenset({2, 4}), after=8)
    return leaves_of(paper, title, [table, Words(plain(words), SMALL)])


def _sheet(exhibits: Sequence[Exhibit], number: int) -> Leaf:
    title = say("Contact sheet {number}", number=number)

    def draw(press: Press) -> None:
        paper = press.paper
        top = press.title(title)
        width = (paper.measure - GAP * (ACROSS - 1)) / ACROSS
        height = (top - paper.bottom) / DOWN
        for place, exhibit in enumerate(exhibits):
            row, column = divmod(place, ACROSS)
            left, high = paper.left + column * (width + GAP), top - row * height
            book = exhibit.book
            picture = finished_picture(
                book.framework,
                book.shape,
                CAMERAS["corner"],
                width,
                height - CAPTION,
                patterns=book.patterns,
                alt=say("{piece}, finished, seen from a corner.", piece=book.facts.name),
            )
            press.picture(picture, left, high - picture.height)
            y = press.paragraph(
                strong(book.facts.name), left, high - picture.height - 2, width, BODY, "H2"
            )
            words = say("{count} balloons, {size}", count=book.facts.total, size=_size(book))
            press.paragraph(plain(words), left, y, width, SMALL)

    return Leaf(title, draw)
