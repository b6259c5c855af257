"""Flowables that hold others side by side, within a line, or about a picture that fills a page."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import fsum

from reportlab.platypus import Flowable

from buildplan.document.blocks import Shown, Stack
from buildplan.document.paper import Paper
from buildplan.document.stacking import NEARLY, Blocks, draw_stack, split_stack, stack_height
from buildplan.document.text import INK
from buildplan.drawing.marks import Picture

COLUMN_GAP = 20.0
TWO_COLUMNS_FROM = 420.0
LEAST_FILLED = 150.0
LINE = 3.0


class Columns(Flowable):  # type: ignore[misc]
    """Columns of blocks side by side; `shares` of the width go to them.

    With `whole` they go to the next page rather than be parted, if a page has room for them and no
    more than `most_empty` of this one stays free; so they do, whole or not, where one of them could
    not begin here.
    """

    def __init__(
        self,
        columns: Sequence[Blocks],
        shares: Sequence[float] = (),
        *,
        gap: float = COLUMN_GAP,
        after: float = 10.0,
        whole: bool = True,
        most_empty: float = 1.0,
    ) -> None:
        super().__init__()
        self._most_empty = most_empty
        self.columns = [list(column) for column in columns]
        self._shares = tuple(shares) or (1.0,) * len(columns)
        self._gap, self._whole, self.spaceAfter = gap, whole, after

    def _widths(self, width: float) -> list[float]:
        room = width - self._gap * (len(self.columns) - 1)
        return [room * share / fsum(self._shares) for share in self._shares]

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self._room = width, room
        self.height = max(
            stack_height(column, wide, room, self.canv)
            for column, wide in zip(self.columns, self._widths(width), strict=True)
        )
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        page = self.canv.room_below
        self.wrap(width, page)
        waits = room < page and self.height <= page
        if self._whole and waits and room <= page * self._most_empty:
            return []
        parts = [
            split_stack(column, wide, room, self.canv)
            for column, wide in zip(self.columns, self._widths(width), strict=True)
        ]
        fits, rest = [part[0] for part in parts], [part[1] for part in parts]
        if not any(fits) or not any(rest):
            return []
        if waits and any(one and not fit for one, fit in zip(self.columns, fits, strict=True)):
            return []
        kept = {"gap": self._gap, "after": self.spaceAfter}
        return [
            Columns(fits, self._shares, **kept, whole=self._whole),
            Columns(rest, self._shares, **kept, whole=self._whole),
        ]

    def draw(self) -> None:
        x = 0.0
        for column, wide in zip(self.columns, self._widths(self.width), strict=True):
            draw_stack(column, self.canv, x, self.height, wide, self._room)
            x += wide + self._gap


class Either(Flowable):  # type: ignore[misc]
    """A block that stays whole, if a page has room for it; other blocks that hold the same, and can
    be parted, where the rest of a page has not."""

    def __init__(self, whole: Flowable, parted: Blocks) -> None:
        super().__init__()
        self._whole, self._parted = whole, list(parted)
        self.spaceAfter = whole.getSpaceAfter()

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self._room = width, room
        _, self.height = self._whole.wrapOn(self.canv, width, room)
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        fits, rest = split_stack(self._parted, width, room, self.canv)
        return [Stack(fits), *rest] if fits else []

    def draw(self) -> None:
        draw_stack([self._whole], self.canv, 0, self.height, self.width, self._room)


class Boxed(Flowable):  # type: ignore[misc]
    """Blocks within a strong line, as the regulation's warning stands, or on a ground."""

    def __init__(
        self,
        blocks: Blocks,
        pad: float = 10.0,
        after: float = 10.0,
        *,
        line: str | None = INK,
        fill: str | None = None,
        side: float | None = None,
    ) -> None:
        super().__init__()
        self._blocks, self._pad, self.spaceAfter = list(blocks), pad, after
        self._line, self._fill = line, fill
        self._side = pad if side is None else side

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        inner = width - 2 * self._side
        self.width, self._room = width, room - 2 * self._pad
        self.height = stack_height(self._blocks, inner, self._room, self.canv) + 2 * self._pad
        return width, self.height

    def draw(self) -> None:
        canvas = self.canv
        with canvas.artifact():
            canvas.setStrokeColor(self._line or INK)
            canvas.setFillColor(self._fill or INK)
            canvas.setLineWidth(1.6)
            canvas.rect(
                0, 0, self.width, self.height, stroke=self._line is not None, fill=bool(self._fill)
            )
        inner = self.width - 2 * self._side
        draw_stack(self._blocks, canvas, self._side, self.height - self._pad, inner, self._room)


def beside(paper: Paper, first: Blocks, second: Blocks, share: float = 0.5) -> tuple[Flowable, ...]:
    """Two columns where the paper is wide enough for them, else one after the other."""
    if not is_wide(paper):
        return (*first, *second)
    return (Columns((first, second), (share, 1 - share)),)


def is_wide(paper: Paper) -> bool:
    """Whether two columns fit."""
    return paper.measure >= TWO_COLUMNS_FROM


def in_pairs(paper: Paper, told: Sequence[Blocks]) -> list[Flowable]:
    """What is told in turn, two by two beside one another where the paper is wide enough, each
    row on one page; the last has the width to itself where it is alone."""
    across = 2 if is_wide(paper) else 1
    rows = [list(told[at : at + across]) for at in range(0, len(told), across)]
    return [Columns(row) for row in rows]


class Filled(Flowable):  # type: ignore[misc]
    """The rest of a page: a picture as large as there is room for between blocks above it and
    below it. `make` draws it for a width and a height; it may come out lower.

    Where less than `least` is left to it, the picture goes to a page of its own. It may stand on a
    `ground`, of a colour and that of a line below it, with so much free at either `side`.
    """

    def __init__(
        self,
        above: Blocks,
        make: Callable[[float, float], Picture],
        below: Blocks = (),
        *,
        least: float = LEAST_FILLED,
        gap: float = 8.0,
        enlarged: float = 1.0,
        ground: tuple[str, str] | None = None,
        side: float = 0.0,
    ) -> None:
        super().__init__()
        self._above, self._make, self._below = list(above), make, list(below)
        self._least, self._gap, self._enlarged = least, gap, enlarged
        self._ground, self._side = ground, side
        self._made: dict[tuple[float, float], Picture] = {}

    def _words_height(self, width: float, room: float) -> float:
        """Height of all but the picture."""
        parts = [part for part in (self._above, self._below) if part]
        heights = [stack_height(part, width, room, self.canv) + self._gap for part in parts]
        return fsum(heights)

    def _picture(self, width: float, tall: float) -> Picture:
        size = (round(width / self._enlarged, 2), round(tall / self._enlarged - 0.01, 2))
        if size not in self._made:
            self._made[size] = self._make(*size)
        return self._made[size]

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        words = self._words_height(width, room)
        left = max(room - words, self._least)
        self.width, self._room = width, room
        inner = width - 2 * self._side
        self._shown = Shown(self._picture(inner, left), self._enlarged)
        _, tall = self._shown.wrapOn(self.canv, inner, left)
        self.height = words + tall
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        if room < self.canv.room_below - NEARLY:
            return []
        if self._above:
            fits, rest = split_stack(self._above, width, room, self.canv)
            return [Stack(fits), *rest, self._alone(self._below)] if fits else []
        return [self._alone(()), *self._below] if self._below else []

    def _alone(self, below: Blocks) -> Filled:
        """The picture with what is `below` it, and nothing above."""
        kept = {"least": self._least, "gap": self._gap, "enlarged": self._enlarged}
        return Filled([], self._make, below, ground=self._ground, side=self._side, **kept)

    def draw(self) -> None:
        top, width = self.height, self.width - 2 * self._side
        if self._above:
            top = draw_stack(self._above, self.canv, 0, top, self.width, self._room) - self._gap
        _, tall = self._shown.wrapOn(self.canv, width, self._room)
        if self._ground is not None:
            self._draw_ground(top - tall, tall, *self._ground)
        self._shown.drawOn(self.canv, self._side, top - tall)
        if self._below:
            draw_stack(self._below, self.canv, 0, top - tall - self._gap, self.width, self._room)

    def _draw_ground(self, low: float, tall: float, fill: str, line: str) -> None:
        low, tall = low - self._gap / 2, tall + self._gap
        with self.canv.artifact():
            self.canv.setFillColor(fill)
            self.canv.rect(0, low, self.width, tall, stroke=0, fill=1)
            self.canv.setFillColor(line)
            self.canv.rect(0, low - LINE, self.width, LINE, stroke=0, fill=1)
