"""The page references of a booklet as it was printed, and those that lead to a page where what they
name is not."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from unittest import mock

from buildplan.booklet.common.book import Book
from buildplan.document.blocks import Shown
from buildplan.document.links import PageLink
from buildplan.document.undrawn import drawn
from buildplan.drawing.maps.blocks import joints_shown, ties_shown
from buildplan.drawing.marks import Picture
from buildplan.instructions.setting_up import is_tying
from buildplan.sequence.model import Kind, Step


@dataclass(frozen=True)
class OnPage:
    """A picture as it was printed: page number from 1, lower left corner, size factor."""

    page: int
    picture: Picture
    x: float
    y: float
    scale: float


@dataclass(frozen=True)
class Reference:
    """What leads from a page to a named place: the page that it names, and what it says."""

    start: int
    place: str
    page: int
    words: str


@dataclass(frozen=True)
class Record:
    """Pictures and references, in the order of printing."""

    pictures: list[OnPage] = field(default_factory=list)
    references: list[Reference] = field(default_factory=list)


@contextmanager
def recorded() -> Iterator[Record]:
    """What is printed meanwhile."""
    record, draw, lead = Record(), Shown.draw, PageLink.draw

    def placing(shown: Shown) -> None:
        page, draft = shown.canv.getPageNumber(), shown.canv.draft
        draw(shown)
        if not draft:
            record.pictures.append(OnPage(page, drawn(shown.picture), *shown.on_sheet))

    def led(link: PageLink) -> None:
        lead(link)
        if not link.canv.draft:
            page = link.canv.pages.of(link._place)
            start = link.canv.getPageNumber()
            record.references.append(Reference(start, link._place, page, link._words(page)))

    with mock.patch.object(Shown, "draw", placing), mock.patch.object(PageLink, "draw", led):
        yield record


def astray(book: Book, record: Record, texts: Sequence[str]) -> list[str]:
    """The references to pages that have not what is named. What leads to a step finds its number
    and title there; what leads from a step to the map finds, on all the sheets together, its
    joints, and of a step that ties parts each pair; any other finds the heading or picture."""
    found: list[str] = []
    sheets: dict[str, set[int]] = defaultdict(set)
    for one in record.references:
        if f"{one.page}" not in re.findall(r"\d+", one.words):
            found.append(f"says another page: {one}")
        kind, _, name = one.place.partition(" ")
        text = texts[one.page - 1]
        if kind == "step":
            number, *table = name.split()  # of a course, where its joints are listed
            step = book.steps[int(number) - 1]
            joined = [operation.joints[0] for operation in step.of_kind(Kind.JOIN)]
            if table and not any(joint in text for joint in joined):
                found.append(f"no joints of step {number}: {one}")
            elif not table and not any(head in text for head in _heads(book, step)):
                found.append(f"no step {name}: {one}")
        elif kind == "section" and name not in text:
            found.append(f"no {name}: {one}")
        elif kind == "joint":
            sheets[one.words.split()[2]].add(one.page)
        elif kind == "practice" and "practice" not in " ".join(texts[one.page - 2 : one.page]):
            found.append(f"no practice piece: {one}")
    shown: dict[int, frozenset[str]] = defaultdict(frozenset)
    tied: dict[int, frozenset[str]] = defaultdict(frozenset)
    for picture in record.pictures:
        shown[picture.page] |= joints_shown(picture.picture)
        tied[picture.page] |= ties_shown(picture.picture)
    for number, pages in sheets.items():
        step = book.steps[int(number) - 1]
        joints = {joint for turn in step.turns for joint in turn.joints}
        seen = tied if is_tying(step) else shown
        there = frozenset().union(*(seen[page] for page in pages))
        if step.kind in (Kind.JOIN, Kind.BRACE) and not joints <= there:
            found.append(f"step {number}, pages {sorted(pages)}: {sorted(joints - there)}")
    return found


def _heads(book: Book, step: Step) -> list[str]:
    """How a step may be headed: by itself, or within a run of steps that do what others did."""
    return [f"{step.number} {book.told(step).title}", f"{step.number} – ", f"– {step.number} "]
