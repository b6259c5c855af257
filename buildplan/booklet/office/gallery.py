"""The gallery: every design of a folder on contact sheets, after an index."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.design.measures import size_words
from buildplan.document.blocks import Shown, Words
from buildplan.document.layout import Columns
from buildplan.document.links import PageNumber
from buildplan.document.paper import Paper
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.tables import Cell, Grid
from buildplan.document.text import BODY, SMALL, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.language.voice import Voice
from buildplan.source.bounded import bytes_within
from buildplan.source.file_text import MOST_BYTES

ACROSS, DOWN = 2, 3
INDEX_SHARES = (22.5, 30.5, 10.0, 29.5, 7.5)
GAP, CAPTION, TITLE_ROOM = 18.0, 46.0, 40.0


@dataclass(frozen=True)
class Exhibit:
    """A design of the gallery: the name of its file, and its book."""

    file: str
    book: Book


def is_design_file(file: Path) -> bool:
    """Whether a .yaml file is a design, not an event or a brand: designs say so at their start.
    What is larger than any design, a folder, a device or a pipe is none."""
    try:
        data = bytes_within(file, MOST_BYTES)
    except OSError:
        return False
    return any(line.startswith(b"buildplan:") for line in data.splitlines())


def print_gallery(exhibits: Sequence[Exhibit], paper: Paper, title: str, voice: Voice) -> bytes:
    """The index and the contact sheets as one tagged PDF. The same designs give the same bytes."""
    each = ACROSS * DOWN
    sheets = [
        _sheet(exhibits[start : start + each], 1 + start // each, paper, voice)
        for start in range(0, len(exhibits), each)
    ]
    sections = [_index(exhibits, sheets, title, voice), *sheets]
    return print_document(Document(sections, paper, voice, title, foot=title))


def _size(book: Book, voice: Voice) -> str:
    facts = book.facts
    width, height = (size_words(side, book.units) for side in (facts.width_m, facts.height_m))
    return voice.say("{width} x {height}", width=width, height=height)


def _index(
    exhibits: Sequence[Exhibit], sheets: Sequence[Section], title: str, voice: Voice
) -> Section:
    """Every design, and the sheet that shows it."""
    rows: list[tuple[Cell, ...]] = []
    for number, exhibit in enumerate(exhibits):
        facts = exhibit.book.facts
        name = (
            voice.say("{piece} (has problems)", piece=facts.name) if facts.problems else facts.name
        )
        rows.append(
            (
                plain(name),
                plain(exhibit.file),
                voice.whole(facts.total),
                _size(exhibit.book, voice),
                PageNumber(sheets[number // (ACROSS * DOWN)].place),
            )
        )
    head = (
        voice.say("Piece"),
        voice.say("File"),
        voice.say("Balloons"),
        voice.say("Width x height"),
        voice.say("Page"),
    )
    words = voice.say_count(
        "{number} design, {balloons} balloons in all. Sizes are estimates.",
        "{number} designs, {balloons} balloons in all. Sizes are estimates.",
        len(exhibits),
        balloons=sum(exhibit.book.facts.total for exhibit in exhibits),
    )
    table = Grid(head, tuple(rows), INDEX_SHARES, frozenset({2, 4}), after=8)
    return Section(title, [table, Words(plain(words), SMALL)], titled=True)


def _sheet(exhibits: Sequence[Exhibit], number: int, paper: Paper, voice: Voice) -> Section:
    title = voice.say("Contact sheet {number}", number=number)
    width = (paper.measure - GAP * (ACROSS - 1)) / ACROSS
    height = (paper.top - paper.bottom - TITLE_ROOM) / DOWN - CAPTION
    shown = [_exhibit(exhibit, width, height, voice) for exhibit in exhibits]
    shown += [[]] * (-len(shown) % ACROSS)
    rows = [
        Columns(shown[start : start + ACROSS], gap=GAP, after=6.0)
        for start in range(0, len(shown), ACROSS)
    ]
    return Section(title, rows, titled=True)


def _exhibit(exhibit: Exhibit, width: float, height: float, voice: Voice) -> list[Flowable]:
    book = exhibit.book
    picture = finished_picture(
        book.framework,
        book.shape,
        CAMERAS["corner"],
        width,
        height,
        alt=voice.say("{piece}, finished, seen from a corner.", piece=book.facts.name),
    )
    words = voice.say("{count} balloons, {size}", count=book.facts.total, size=_size(book, voice))
    return [
        Shown(picture, after=2),
        Words(strong(book.facts.name), BODY, "H2", after=1),
        Words(plain(words), SMALL, after=0),
    ]
