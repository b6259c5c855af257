"""The canvas that pages are set on: tags, and what their flowables must know of the document."""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import dataclass, field

from buildplan.document.growing import Grower
from buildplan.document.tagged import TaggedCanvas
from buildplan.drawing.fonts import REGULAR
from buildplan.language.voice import Voice

UNKNOWN_PAGE = 88  # as wide as most page numbers: what is set with it is mostly set right
WIDEST_PAGE = 888
AT_TOP = 2.0  # points of the grid


@dataclass(frozen=True)
class Pages:
    """What an earlier setting of the same document found: the page of each named place, how many
    pages there are, and how much higher what can grow is made, by its name."""

    page_of: Mapping[str, int] = field(default_factory=dict)
    total: int = UNKNOWN_PAGE
    grown: Mapping[str, float] = field(default_factory=dict)

    def of(self, place: str) -> int:
        """The page of a named place, from 1."""
        return self.page_of.get(place, UNKNOWN_PAGE)


class PageCanvas(TaggedCanvas):
    """A canvas for one setting of a document.

    `voice` says what the pages themselves have to say, `pages` what was found before. A `draft`
    is set to find out where things come to stand: it draws neither pictures nor words. `room` is
    the height that a page has for what is set on it, and `top` the upper edge of that on the
    sheet; `enlarged` the points of the sheet to one of its grid, and `progress` how far the work
    has come on the page. `running` is what its head says; `running_next` and `progress_next` are
    those of the next pages, unless more is named there. `growing` is what can grow on the page.
    """

    def __init__(
        self, sheet: tuple[float, float], voice: Voice, pages: Pages, *, draft: bool
    ) -> None:
        self.target = io.BytesIO()
        super().__init__(self.target, sheet, REGULAR)
        self.voice, self.pages, self.draft = voice, pages, draft
        self.enlarged = 1.0
        self.top = sheet[1]
        self.progress: tuple[int, int] | None = None
        self.progress_next: tuple[int, int] | None = None
        self.running = self.running_next = ""
        self.growing: list[Grower] = []

    def name_place(
        self, name: str, entry: str = "", progress: tuple[int, int] | None = None, level: int = 1
    ) -> None:
        """Name the place where the canvas's origin is; an `entry` is bookmarked at a level."""
        if name not in self.places:
            self.place(name, 0.0)
        if entry:
            self.bookmarkPage(f"{name}, place")
            self.addOutlineEntry(entry, f"{name}, place", level=level)
        if progress is not None:
            self.progress = self.progress_next = progress

    def at_top(self) -> bool:
        """Whether the canvas's origin is at the upper edge of what is set on the page."""
        return float(self.absolutePosition(0, 0)[1]) > self.top - AT_TOP * self.enlarged
