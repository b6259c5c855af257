"""Putting text, tables and pictures on tagged pages.

A booklet is a list of leaves, each exactly one page; the press draws them in order, with
the running head and foot, bookmarks and structure tags.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from xml.sax.saxutils import escape, unescape

from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph

from buildplan.document.paper import Paper
from buildplan.document.tagged import Box, TaggedCanvas, finish
from buildplan.drawing.fonts import BOLD, REGULAR, register_fonts, text_width
from buildplan.drawing.marks import Picture
from buildplan.drawing.pdf import draw_picture
from buildplan.language.speaking import language_tag, say

INK = "#1A1A1A"
QUIET = "#595959"  # 7.0:1 on white, so small print stays readable
RULE = "#9A9A9A"
TINT = "#F1F0EC"
HEAD_BASELINE = 40.0
PROGRESS_WIDTH = 120.0
PAGE_NUMBER_WIDTH = 90.0

BODY = ParagraphStyle("body", fontName=REGULAR, fontSize=10, leading=14, textColor=INK)
SMALL = ParagraphStyle("small", parent=BODY, fontSize=10, leading=13, textColor=QUIET)
STRONG = ParagraphStyle("strong", parent=BODY, fontName=BOLD)
LEAD = ParagraphStyle("lead", parent=BODY, fontSize=12, leading=17)
HEADING = ParagraphStyle("heading", parent=BODY, fontName=BOLD, fontSize=13, leading=17)
TITLE = ParagraphStyle("title", parent=BODY, fontName=BOLD, fontSize=20, leading=26)
LINKED = ParagraphStyle("linked", parent=BODY, underlineWidth=0.5, underlineOffset=-1.6)
NUMBER = ParagraphStyle("number", parent=BODY, alignment=TA_RIGHT)
DISPLAY = ParagraphStyle("display", parent=BODY, fontName=BOLD, fontSize=34, leading=40)


# Words that no line end parts: a number from its fraction or its unit, a dash from what it
# follows, a joint that ends a text from the word before it.
_KEPT = re.compile(
    r"(?<=\d) (?=\d+/\d|(?:in|ft|cu|mm|cm|m|km|mi|kg|lb|h|min|mph)\b)| (?=– )| (?=[A-Z]+\d+$)"
    r"|(?<=\bft) (?=\d)|(?<=\bcu) (?=ft\b)|(?<=\bh) (?=\d)"
)


def plain(text: str) -> str:
    """Text as paragraph markup: everything that would be read as markup escaped."""
    return escape(_KEPT.sub("\N{NO-BREAK SPACE}", text))


def unbroken(text: str) -> str:
    """Text that stays on one line."""
    return text.replace(" ", "\N{NO-BREAK SPACE}")


def strong(text: str) -> str:
    """Text in bold, as paragraph markup."""
    return f'<font name="{BOLD}">{plain(text)}</font>'


def underlined(text: str) -> str:
    """Text underlined, as links are, as paragraph markup."""
    return f"<u>{escape(text)}</u>"


def page_name(number: int) -> str:
    """The name of a page, counted from 1, as a place for links to lead to."""
    return f"page {number}"


@lru_cache(maxsize=4096)
def paragraph_height(markup: str, style: ParagraphStyle, width: float) -> float:
    """Height of a paragraph set to `width`."""
    register_fonts()
    _, height = Paragraph(markup, style).wrap(width, 10_000)
    return float(height)


def least_widths(rows: Sequence[Sequence[str]], pad: float) -> list[float]:
    """Widths at which a table's columns break none of their words, set in bold. Cells are
    markup, with `pad` points about them."""
    register_fonts()
    words = (
        re.sub("<[^>]*>", "", " ".join(column)).split(" ") for column in zip(*rows, strict=True)
    )
    return [
        max((text_width(unescape(word), BODY.fontSize, bold=True) for word in column), default=0)
        + 2 * pad
        + 0.1
        for column in words
    ]


def column_widths(wanted: Sequence[float], least: Sequence[float]) -> list[float]:
    """Widths as wanted, but none below its least where the others can give way."""
    short = sum(max(0.0, low - width) for low, width in zip(least, wanted, strict=True))
    spare = sum(max(0.0, width - low) for low, width in zip(least, wanted, strict=True))
    if not short or spare <= short:
        return list(wanted)
    kept = 1 - short / spare
    return [
        low if width < low else low + (width - low) * kept
        for low, width in zip(least, wanted, strict=True)
    ]


@dataclass(frozen=True)
class Leaf:
    """One page: its title (for bookmarks and contents), the stage shown in the running head,
    how far the work is (`done` of `total`, or None), and what draws it.

    A leaf whose `listed` is false goes under the one before it in the contents. One that is
    `headed` has its running head for a title. `holds` names what can be found on it, for
    pages that send the reader there (`Press.page_of`). `paper` is its own, when it is not the
    booklet's.
    """

    title: str
    draw: Callable[[Press], None]
    running: str = ""
    progress: tuple[int, int] | None = None
    listed: bool = True
    headed: bool = False
    holds: tuple[str, ...] = ()
    paper: Paper | None = None


class Press:
    """Draws leaves onto a tagged canvas. The foot may have a second line."""

    def __init__(self, paper: Paper, foot: str) -> None:
        register_fonts()
        self.paper = self._usual_paper = paper
        self._foot = foot
        self._target = io.BytesIO()
        self.canvas = TaggedCanvas(self._target, paper.sheet, REGULAR)
        self.page_of: dict[str, int] = {}
        self.contents: tuple[tuple[str, int], ...] = ()

    def print(self, leaves: Sequence[Leaf], *, title: str, author: str) -> bytes:
        """Draw every leaf on a page of its own and return the finished document."""
        self.canvas.setTitle(title)
        self.canvas.setAuthor(author)
        self.canvas.setCreator("buildplan")
        pages = list(enumerate(leaves, start=1))
        self.page_of = {name: number for number, leaf in pages for name in leaf.holds}
        self.contents = tuple((leaf.title, number) for number, leaf in pages if leaf.listed)
        for number, leaf in pages:
            self.paper = leaf.paper or self._usual_paper
            self.canvas.setPageSize(self.paper.sheet)
            self.canvas.scale(self.paper.scale, self.paper.scale)
            self.canvas.place(page_name(number), self.paper.height)
            self.canvas.bookmarkPage(page_name(number))
            level = 0 if leaf.listed else 1
            self.canvas.addOutlineEntry(leaf.title, page_name(number), level=level)
            with self.canvas.element("Sect"):
                if number > 1:
                    self._running_head(leaf)
                    self._head_and_foot(leaf, number, len(leaves))
                leaf.draw(self)
            self.canvas.showPage()
        self.canvas.save()
        return finish(self._target.getvalue(), self.canvas, title=title, language=language_tag())

    def _running_head(self, leaf: Leaf) -> None:
        canvas, paper = self.canvas, self.paper
        words = leaf.running or leaf.title
        at = (paper.left, paper.height - HEAD_BASELINE)
        if leaf.headed:
            with canvas.element("H1"), canvas.content():
                canvas.setFillColor(INK)
                canvas.setFont(BOLD, HEADING.fontSize)
                canvas.drawString(*at, words)
        else:
            with canvas.artifact():
                canvas.setFillColor(QUIET)
                canvas.setFont(REGULAR, SMALL.fontSize)
                canvas.drawString(*at, words)

    def _head_and_foot(self, leaf: Leaf, number: int, total: int) -> None:
        canvas, paper = self.canvas, self.paper
        with canvas.artifact():
            baseline = paper.height - HEAD_BASELINE
            canvas.setFillColor(QUIET)
            canvas.setFont(REGULAR, SMALL.fontSize)
            if leaf.progress is not None:
                done, of = leaf.progress
                words = say("step {number} of {total}", number=done, total=of)
                canvas.drawRightString(paper.right, baseline, words)
                left = paper.right - PROGRESS_WIDTH - text_width(words, SMALL.fontSize) - 10
                canvas.setFillColor("#DCDAD3")
                canvas.rect(left, baseline, PROGRESS_WIDTH, 5, stroke=0, fill=1)
                canvas.setFillColor(INK)
                canvas.rect(left, baseline, PROGRESS_WIDTH * done / of, 5, stroke=0, fill=1)
            canvas.setStrokeColor(RULE)
            canvas.setLineWidth(0.5)
            canvas.line(paper.left, baseline - 8, paper.right, baseline - 8)
            canvas.setFillColor(QUIET)
            for line, words in enumerate(self._foot.split("\n")):
                size = SMALL.fontSize
                # a long name is set smaller rather than cut
                room = paper.measure - (0 if line else PAGE_NUMBER_WIDTH)
                canvas.setFont(REGULAR, min(size, size * room / text_width(words, size)))
                canvas.drawString(paper.left, 32 - line * 13, words)
            canvas.setFont(REGULAR, SMALL.fontSize)
            words = say("page {number} of {total}", number=number, total=total)
            canvas.drawRightString(paper.right, 32, words)

    def paragraph(
        self,
        markup: str,
        x: float,
        top: float,
        width: float,
        style: ParagraphStyle = BODY,
        role: str = "P",
    ) -> float:
        """Set a paragraph with its top at `top`; returns the y of its bottom."""
        flowable = Paragraph(markup, style)
        _, height = flowable.wrap(width, 10_000)
        with self.canvas.element(role), self.canvas.content():
            flowable.drawOn(self.canvas, x, top - height)
        return float(top - height)

    def link(
        self,
        markup: str,
        target: str,
        x: float,
        top: float,
        width: float,
        style: ParagraphStyle = BODY,
        *,
        words: str,
        also: Sequence[Box] = (),
    ) -> float:
        """Set a paragraph that leads to a named place (`TaggedCanvas.place`), as a Link within
        the open element; returns the y of its bottom.

        `words` say where it leads. The boxes of `also` (left, low, right, high) lead there too.
        """
        flowable = Paragraph(markup, style)
        _, height = flowable.wrap(width, 10_000)
        with self.canvas.element("Link"):
            with self.canvas.content():
                flowable.drawOn(self.canvas, x, top - height)
            wide = min(width, max(flowable.getActualLineWidths0()))
            for box in ((x, top - height, x + wide, top), *also):
                self.canvas.hotspot(box, target, words)
        return float(top - height)

    def numbered_heading(
        self, number: int, markup: str, x: float, top: float, width: float, indent: float
    ) -> float:
        """Set a number and, `indent` to its right and `width` wide, a title as one second-level
        heading; returns the y of its bottom."""
        flowable = Paragraph(markup, HEADING)
        _, height = flowable.wrap(width, 10_000)
        with self.canvas.element("H2"), self.canvas.content():
            self.canvas.setFillColor(INK)
            self.canvas.setFont(BOLD, HEADING.fontSize)
            self.canvas.drawString(x, top - HEADING.fontSize, f"{number}")
            flowable.drawOn(self.canvas, x + indent, top - height)
        return float(top - height)

    def title(self, text: str) -> float:
        """Set the page's title; returns the y below it."""
        paper = self.paper
        return self.paragraph(plain(text), paper.left, paper.top, paper.measure, TITLE, "H1") - 8

    def bullets(
        self, items: Sequence[str], x: float, top: float, width: float, gap: float = 4
    ) -> float:
        """Set a list of paragraphs (markup) with a dash before each."""
        with self.canvas.element("L"):
            for item in items:
                with self.canvas.element("LI"):
                    with self.canvas.element("Lbl"), self.canvas.content():
                        self.canvas.setFillColor(INK)
                        self.canvas.setFont(BOLD, BODY.fontSize)
                        self.canvas.drawString(x, top - 11, "–")
                    top = self.paragraph(item, x + 14, top, width - 14, BODY, "LBody") - gap
        return top

    def tick_list(
        self, items: Sequence[str], x: float, top: float, width: float, gap: float = 6
    ) -> float:
        """Set a list of paragraphs (markup) with a box to tick before each."""
        if not items:
            return top
        with self.canvas.element("L"):
            for item in items:
                with self.canvas.element("LI"):
                    with self.canvas.element("Lbl", alt=say("box to tick")), self.canvas.content():
                        self._box(x, top - 11.5)
                    top = self.paragraph(item, x + 17, top, width - 17, BODY, "LBody") - gap
        return top

    def _box(self, x: float, y: float, side: float = 9.5) -> None:
        self.canvas.setStrokeColor(INK)
        self.canvas.setLineWidth(0.9)
        self.canvas.rect(x, y, side, side, stroke=1, fill=0)

    def table(
        self,
        rows: Sequence[Sequence[str]],
        x: float,
        top: float,
        widths: Sequence[float],
        right_aligned: frozenset[int] = frozenset(),
        pictures: Mapping[int, Picture] | None = None,
        pad: float = 4.0,
    ) -> float:
        """Set a table; the first row is its head. Cells are paragraph markup, with `pad` points
        about them. A column is made wide enough for its longest word.

        `pictures`, by row, stand at the right of the row's first cell.
        """
        pictures = pictures or {}
        widths = column_widths(widths, least_widths(rows, pad))
        with self.canvas.element("Table"):
            for number, row in enumerate(rows):
                style = STRONG if number == 0 else BODY
                heights = [
                    paragraph_height(cell, style, width - 2 * pad)
                    for cell, width in zip(row, widths, strict=True)
                ]
                height = max(heights) + 2 * pad
                with self.canvas.artifact():
                    if number == 0:
                        self.canvas.setFillColor(TINT)
                        self.canvas.rect(x, top - height, sum(widths), height, stroke=0, fill=1)
                    self.canvas.setStrokeColor(RULE)
                    self.canvas.setLineWidth(0.5)
                    self.canvas.line(x, top - height, x + sum(widths), top - height)
                left = x
                with self.canvas.element("TR"):
                    for column, (cell, width) in enumerate(zip(row, widths, strict=True)):
                        aligned = ParagraphStyle(
                            f"{style.name}-{column}",
                            parent=style,
                            alignment=2 if column in right_aligned else 0,
                        )
                        with self.canvas.element("TH" if number == 0 else "TD"):
                            self.paragraph(cell, left + pad, top - pad, width - 2 * pad, aligned)
                            if column == 0 and number in pictures:
                                picture = pictures[number]
                                at = left + width - picture.width - pad
                                self.picture(picture, at, top - (height + picture.height) / 2)
                        left += width
                top -= height
        return top

    def picture(self, picture: Picture, x: float, y: float, scale: float = 1.0) -> None:
        """Place a picture with its lower left corner at (x, y)."""
        box = (x, y, x + picture.width * scale, y + picture.height * scale)
        with self.canvas.element("Figure", alt=picture.alt, box=box), self.canvas.content():
            draw_picture(self.canvas, picture, x, y, scale)

    @contextmanager
    def decoration(self) -> Iterator[TaggedCanvas]:
        """Draw lines and tints that need not be read out."""
        with self.canvas.artifact():
            yield self.canvas

    def tint(self, x: float, y: float, width: float, height: float, colour: str = TINT) -> None:
        """A quiet ground behind text."""
        with self.canvas.artifact():
            self.canvas.setFillColor(colour)
            self.canvas.rect(x, y, width, height, stroke=0, fill=1)

    def rule(self, x: float, y: float, width: float) -> None:
        """A thin line across."""
        with self.canvas.artifact():
            self.canvas.setStrokeColor(RULE)
            self.canvas.setLineWidth(0.5)
            self.canvas.line(x, y, x + width, y)
