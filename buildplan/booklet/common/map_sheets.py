"""The joint map's sheets, and which steps belong to which sheet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from buildplan.booklet.common.book import Book
from buildplan.document.renderer import BODY, paragraph_height, plain
from buildplan.drawing.joint_map import joint_map
from buildplan.drawing.labels import Box, label_boxes
from buildplan.drawing.marks import Picture
from buildplan.language.speaking import say
from buildplan.sequence.model import Kind, Step

# What a map page holds beside the map: its title and the words below that.
HEAD_ROOM = 70.0
INDEX_COLUMNS = 2
INDEX_GAP = 8.0
WIDE_PAGE = 888  # as wide as any page number

# Steps whose joints a builder looks up on the map, and those that the map leads back to.
LOOKED_UP = frozenset({Kind.CLOSE_RING, Kind.TAG, Kind.LAY, Kind.BRACE, Kind.SINGLE, Kind.JOIN})
LED_BACK_TO = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN})


@dataclass(frozen=True)
class MapSheets:
    """The sheets of a piece's joint map; `sheet_of` gives the number (from 0) of the sheet
    that shows most of a step's joints, by step number."""

    pictures: tuple[Picture, ...]
    sheet_of: dict[int, int]

    def steps_on(self, book: Book, sheet: int) -> tuple[Step, ...]:
        """The steps that a sheet leads back to, in order."""
        return tuple(
            step
            for step in book.steps
            if step.kind in LED_BACK_TO and self.sheet_of.get(step.number) == sheet
        )


def map_place(sheet: int) -> str:
    """The name of a sheet's page, as a place for links to lead to."""
    return f"joint map {sheet + 1}"


def step_place(step: Step) -> str:
    """The name of a step's block, as a place for links to lead to."""
    return f"step {step.number}"


def map_sheets(book: Book) -> MapSheets:
    """The joint map on as few sheets as are readable, each with room for its index of steps."""
    room = book.paper.top - book.paper.bottom - HEAD_ROOM
    lines = 0
    while True:
        index = INDEX_GAP + lines * BODY.leading
        pictures = joint_map(book.framework, book.paper.measure, room - index)
        sheets = MapSheets(pictures, _sheet_of(book, pictures))
        indexes = [index_columns(book, sheets.steps_on(book, n)) for n in range(len(pictures))]
        needed = max(sum(index_lines(book, s) for s in steps) for c in indexes for steps in c)
        if needed <= lines:
            return sheets
        lines = needed


def index_width(book: Book) -> float:
    """Width of an entry in a sheet's index."""
    return book.paper.measure / INDEX_COLUMNS - INDEX_GAP


def index_lines(book: Book, step: Step) -> int:
    """Lines that a step's entry takes there."""
    found = say("step {number}, page {page}", number=step.number, page=WIDE_PAGE)
    height = paragraph_height(plain(f"{step.title}: {found}"), BODY, index_width(book))
    return int(height / BODY.leading + 0.5)


def index_columns(book: Book, steps: Sequence[Step]) -> tuple[Sequence[Step], Sequence[Step]]:
    """A sheet's index in two columns, the second as long as the first or shorter."""
    lines = list(accumulate(index_lines(book, step) for step in steps))
    first = next((n for n, used in enumerate(lines, start=1) if 2 * used >= lines[-1]), 0)
    return steps[:first], steps[first:]


def _sheet_of(book: Book, pictures: tuple[Picture, ...]) -> dict[int, int]:
    named = [label_boxes(picture).keys() for picture in pictures]
    found = {}
    for step in book.steps:
        if step.kind in LOOKED_UP:
            joints = {joint for turn in step.turns for joint in turn.joints}
            shown = [len(joints & labels) for labels in named]
            found[step.number] = shown.index(max(shown))
    return found


def brace_flags(book: Book, picture: Picture, step: Step) -> list[Box]:
    """Where a sheet shows the numbers of the braces that a step ties."""
    links = set(step.links) if step.kind is Kind.BRACE else set()
    boxes = label_boxes(picture)
    return [
        box
        for brace in book.framework.braces
        if links & set(brace.links)
        for box in boxes.get(str(brace.number), ())
    ]
