"""Named places of a document, and what leads to them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable

from buildplan.document.blocks import Shown, Words
from buildplan.document.layout import Columns
from buildplan.document.paragraphs import OrderedParagraph
from buildplan.document.tagged import Role
from buildplan.document.text import LINKED, NUMBER
from buildplan.drawing.fonts import register_fonts
from buildplan.drawing.marks import Box

NUMBER_SHARES = (0.86, 0.14)


class Anchor(Flowable):  # type: ignore[misc]
    """A place that links lead to, with a line of its own among the bookmarks if it has an
    `entry`, so many levels deep. `progress` says how far the work has come: done of how many."""

    _ZEROSIZE = True

    def __init__(
        self, name: str, entry: str = "", progress: tuple[int, int] | None = None, level: int = 1
    ) -> None:
        super().__init__()
        self._name, self._entry, self._progress, self._level = name, entry, progress, level
        self.keepWithNext = True

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self.height = width, 0.0
        return 0.0, 0.0

    def draw(self) -> None:
        self.canv.name_place(self._name, self._entry, self._progress, self._level)


@dataclass(frozen=True)
class Spots:
    """Boxes on a picture, in its own points, that lead where a link does."""

    shown: Shown
    boxes: Sequence[Box]

    def on_sheet(self) -> list[Box]:
        """Where they are on the sheet, once the picture was drawn."""
        x, y, scale = self.shown.on_sheet
        return [
            (x + left * scale, y + low * scale, x + right * scale, y + high * scale)
            for left, low, right, high in self.boxes
        ]


class PageLink(Flowable):  # type: ignore[misc]
    """A paragraph that leads to a named place. `markup` and `words` (where it leads, for who
    cannot see it) are said with the number of that page; `within` are the roles of the elements
    that it stands in. `here` is said instead where the place is on the same page."""

    def __init__(
        self,
        place: str,
        markup: Callable[[int], str],
        words: Callable[[int], str],
        style: ParagraphStyle = LINKED,
        *,
        within: Sequence[Role] = ("P",),
        after: float = 0.0,
        spots: Spots | None = None,
        here: str = "",
    ) -> None:
        super().__init__()
        register_fonts()
        self._place, self._markup, self._words, self._style = place, markup, words, style
        self._within, self.spaceAfter, self._spots = tuple(within), after, spots
        self._here = here
        self._set_to: tuple[int, float] | None = None

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        page = self.canv.pages.of(self._place)
        if (page, width) != self._set_to:
            self._paragraph = OrderedParagraph(self._markup(page), self._style)
            _, self.height = self._paragraph.wrapOn(self.canv, width, room)
            self.width, self._page = width, page
            self._set_to = (page, width)
        return width, self.height

    def draw(self) -> None:
        if self._here and self._page == self.canv.getPageNumber():
            self._paragraph = OrderedParagraph(self._here, self._style)
            self._paragraph.wrapOn(self.canv, self.width, self.height)
            self._set_to = None
        self._draw_within(self._within)

    def _draw_within(self, roles: Sequence[Role]) -> None:
        if roles:
            with self.canv.element(roles[0]):
                self._draw_within(roles[1:])
            return
        canvas = self.canv
        with canvas.element("Link"):
            with canvas.content():
                if not canvas.draft:
                    self._paragraph.drawOn(canvas, 0, 0)
            boxes = [canvas.on_sheet((0, 0, self.width, self.height))]
            boxes += self._spots.on_sheet() if self._spots else []
            for box in boxes:
                canvas.hotspot(box, self._place, self._words(self._page))


class PageNumber(Flowable):  # type: ignore[misc]
    """The number of a named place's page, at the right."""

    def __init__(self, place: str) -> None:
        super().__init__()
        self._place = place

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self._number = Words(f"{self.canv.pages.of(self._place)}", NUMBER)
        self.width = width
        _, self.height = self._number.wrapOn(self.canv, width, room)
        return width, self.height

    def draw(self) -> None:
        self._number.drawOn(self.canv, 0, 0)


class ContentsLine(Columns):
    """A line of the contents: what leads to a place, and its page."""

    def __init__(
        self, place: str, markup: Callable[[int], str], words: Callable[[int], str]
    ) -> None:
        link = PageLink(place, markup, words, within=("Reference",))
        super().__init__([[link], [PageNumber(place)]], NUMBER_SHARES, gap=4.0, after=3.0)

    def draw(self) -> None:
        with self.canv.element("TOCI"):
            super().draw()
