"""The flowables that pages are made of, each tagged as what it is.

They keep to platypus's protocol (wrap, split, draw). `canv` is the canvas of tags; `keepWithNext`
holds a heading to what it stands over.
"""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import nullcontext
from math import fsum

from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable

from buildplan.document.paragraphs import OrderedParagraph
from buildplan.document.stacking import Blocks, draw_stack, keep_company, split_stack, stack_height
from buildplan.document.tagged import Role
from buildplan.document.text import BODY, HEADING, INK, RULE, TITLE, plain, strong
from buildplan.document.undrawn import Showable, drawn
from buildplan.drawing.fonts import BOLD, register_fonts
from buildplan.drawing.marks import Picture
from buildplan.drawing.pdf import draw_picture
from buildplan.language.isolates import begins_from_right

TURNED = ParagraphStyle("turned", parent=BODY, alignment=TA_RIGHT)
TICK_INDENT, DASH_INDENT = 17.0, 14.0
TICK_SIDE = 9.5


class Words(Flowable):  # type: ignore[misc]
    """A paragraph, as markup; `after` is the space below it."""

    def __init__(
        self,
        markup: str,
        style: ParagraphStyle = BODY,
        role: Role = "P",
        after: float = 4.0,
        *,
        keep: bool = False,
    ) -> None:
        super().__init__()
        register_fonts()
        self._paragraph = OrderedParagraph(markup, style)
        self._set_to: float | None = None
        self._role: Role = role
        self.spaceAfter, self.keepWithNext = after, keep

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        if width != self._set_to:  # a document is set again and again, mostly to the same width
            _, self.height = self._paragraph.wrapOn(self.canv, width, room)
            self.width = self._set_to = width
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        found = []
        self._set_to = None  # platypus forgets a paragraph's lines where it cannot part them
        for part in self._paragraph.splitOn(self.canv, width, room):
            words = Words("", role=self._role, after=self.spaceAfter)
            words._paragraph = part
            found.append(words)
        return found if len(found) > 1 else []

    def draw(self) -> None:
        if self.canv.draft:
            return
        with self.canv.element(self._role), self.canv.content():
            self._paragraph.drawOn(self.canv, 0, 0)


def title(text: str) -> Words:
    """The title of a page, or of what begins on it."""
    words = Words(strong(text), TITLE, "H1", after=7.0, keep=True)
    words.spaceBefore = 8.0
    return words


def heading(text: str) -> Words:
    """A heading within a page; it stays with what follows."""
    return Words(plain(text), HEADING, "H2", after=5.0, keep=True)


def paragraph_of_own(text: str, after: float = 4.0) -> Words:
    """A paragraph that somebody has written, from the right if it begins so."""
    style = TURNED if begins_from_right(text) else BODY
    return Words(plain(text), style, after=after)


class Rule(Flowable):  # type: ignore[misc]
    """A thin line across, kept with what follows; at the top of a page there is none."""

    def __init__(self, before: float = 4.0, after: float = 8.0) -> None:
        super().__init__()
        self.spaceBefore, self.spaceAfter = before, after
        self.keepWithNext = True

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self.height = width, 0.5
        return width, self.height

    def draw(self) -> None:
        if self.canv.at_top():
            return
        with self.canv.artifact():
            self.canv.setStrokeColor(RULE)
            self.canv.setLineWidth(0.5)
            self.canv.line(0, 0, self.width, 0)


class Stack(Flowable):  # type: ignore[misc]
    """Blocks one below another as one, an element of the structure where they have a role.

    With `whole` they stay on one page if a page has room for them; with no more than a title
    `below_title` points high above them they are parted all the same, for that does not stand
    alone, and rather than leave more than `most_empty` of a page free.
    """

    def __init__(
        self,
        blocks: Blocks,
        role: Role | None = None,
        *,
        whole: bool = False,
        below_title: float = 0.0,
        most_empty: float = 1.0,
        after: float | None = None,
    ) -> None:
        super().__init__()
        self.blocks, self._role, self._whole = list(blocks), role, whole
        self._below_title, self._most_empty = below_title, most_empty
        last = self.blocks[-1].getSpaceAfter() if self.blocks else 0.0
        self.spaceAfter = last if after is None else after
        self.keepWithNext = bool(self.blocks) and all(b.getKeepWithNext() for b in self.blocks)

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self._room = width, room
        self.height = stack_height(self.blocks, width, room, self.canv)
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        page = self.canv.room_below
        if (
            self._whole
            and room < page - self._below_title
            and room <= page * self._most_empty
            and stack_height(self.blocks, width, page, self.canv) <= page
        ):
            return []
        fits, rest = split_stack(self.blocks, width, room, self.canv)
        if self._role == "L" and room < page:
            keep_company(fits, rest, self.blocks)
        if fits and rest:
            later = Stack(rest, self._role, whole=self._whole, after=self.spaceAfter)
            return [Stack(fits, self._role), later]
        if (
            rest and len(self.blocks) > 1 and room >= self.canv.room
        ):  # parted where it should not be
            return list(self.blocks) if self._role is None else []
        return []

    def draw(self) -> None:
        opened = self.canv.element(self._role) if self._role and self.blocks else nullcontext()
        with opened:
            draw_stack(self.blocks, self.canv, 0, self.height, self.width, self._room)


def together(*blocks: Flowable) -> Stack:
    """Blocks that stay on one page."""
    return Stack(blocks, whole=True)


class ListItem(Flowable):  # type: ignore[misc]
    """An entry of a list, markup, with a box to tick or a dash before it."""

    def __init__(self, markup: str, *, ticked: bool, after: float) -> None:
        super().__init__()
        self._ticked, self.spaceAfter = ticked, after
        self._words = Words(markup, BODY, "LBody")
        self._indent = TICK_INDENT if ticked else DASH_INDENT

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width = width
        _, self.height = self._words.wrapOn(self.canv, width - self._indent, room)
        return width, self.height

    def draw(self) -> None:
        canvas = self.canv
        if canvas.draft:
            return
        with canvas.element("LI"):
            alt = canvas.voice.say("box to tick") if self._ticked else ""
            with canvas.element("Lbl", alt=alt), canvas.content():
                if self._ticked:
                    canvas.setStrokeColor(INK)
                    canvas.setLineWidth(0.9)
                    canvas.rect(0, self.height - 11.5, TICK_SIDE, TICK_SIDE, stroke=1, fill=0)
                else:
                    canvas.setFillColor(INK)
                    canvas.setFont(BOLD, BODY.fontSize)
                    canvas.drawString(0, self.height - 11, "–")
            self._words.drawOn(canvas, self._indent, 0)


class Items(Stack):
    """A list of paragraphs (markup), each with a box to tick or a dash before it."""

    def __init__(
        self, items: Sequence[str], ticked: bool = False, gap: float = 4.0, after: float = 10.0
    ) -> None:
        entries = [ListItem(item, ticked=ticked, after=gap) for item in items]
        super().__init__(entries, "L", after=after)


class Shown(Flowable):  # type: ignore[misc]
    """A picture, `scale` times its own size or as much smaller as its place asks for.

    `on_sheet` is where it was drawn: its lower left corner on the sheet, and its scale there.
    """

    def __init__(
        self, picture: Showable, scale: float = 1.0, after: float = 8.0, *, align: str = "left"
    ) -> None:
        super().__init__()
        self.picture, self._wanted, self._align = picture, scale, align
        self.spaceAfter = after
        self.on_sheet = (0.0, 0.0, 1.0)

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        page = max(room, self.canv.room)
        self._scale = min(self._wanted, width / self.picture.width, page / self.picture.height)
        self.width, self.height = width, self.picture.height * self._scale
        return width, self.height

    def draw(self) -> None:
        canvas, wide = self.canv, self.picture.width * self._scale
        x = 0.0 if self._align == "left" else self.width - wide
        self.on_sheet = (*canvas.absolutePosition(x, 0), self._scale * canvas.enlarged)
        box = (x, 0.0, x + wide, self.height)
        if canvas.draft:
            return
        self.picture = picture = drawn(self.picture)
        with canvas.element("Figure", alt=picture.alt, box=box), canvas.content():
            draw_picture(canvas, picture, x, 0, self._scale)


class PictureRow(Flowable):  # type: ignore[misc]
    """Pictures side by side at their own sizes, or all as much smaller as the width asks for."""

    def __init__(self, pictures: Sequence[Picture], gap: float = 10.0, after: float = 8.0) -> None:
        super().__init__()
        self._pictures, self._gap, self.spaceAfter = list(pictures), gap, after

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        gaps = self._gap * (len(self._pictures) - 1)
        wide = fsum(picture.width for picture in self._pictures)
        self._scale = min(1.0, (width - gaps) / wide)
        self._shown = [Shown(picture, self._scale) for picture in self._pictures]
        self.width = width
        self.height = max(
            shown.wrapOn(self.canv, shown.picture.width * self._scale, room)[1]
            for shown in self._shown
        )
        return width, self.height

    def draw(self) -> None:
        x = 0.0
        for shown in self._shown:
            wide = shown.picture.width * self._scale
            _, tall = shown.wrapOn(self.canv, wide, self.height)
            shown.drawOn(self.canv, x, self.height - tall)
            x += wide + self._gap
