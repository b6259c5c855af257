"""Styles of type, and text made into the markup of paragraphs."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from html import escape, unescape
from math import fsum

from reportlab.lib.enums import TA_RIGHT
from reportlab.lib.styles import ParagraphStyle

from buildplan.document.paragraphs import OrderedParagraph
from buildplan.drawing.fonts import BOLD, REGULAR, register_fonts, text_width
from buildplan.drawing.typeset.clusters import clusters
from buildplan.language.isolates import isolated

INK = "#1A1A1A"
QUIET = "#595959"  # 7.0:1 on white, so small print stays readable
RULE = "#9A9A9A"
TINT = "#F1F0EC"

BODY = ParagraphStyle("body", fontName=REGULAR, fontSize=10, leading=14, textColor=INK)
SMALL = ParagraphStyle("small", parent=BODY, fontSize=10, leading=13, textColor=QUIET)
STRONG = ParagraphStyle("strong", parent=BODY, fontName=BOLD)
LEAD = ParagraphStyle("lead", parent=BODY, fontSize=12, leading=17)
HEADING = ParagraphStyle("heading", parent=BODY, fontName=BOLD, fontSize=13, leading=17)
TITLE = ParagraphStyle("title", parent=BODY, fontName=BOLD, fontSize=20, leading=26)
LINKED = ParagraphStyle("linked", parent=BODY, underlineWidth=0.5, underlineOffset=-1.6)
NUMBER = ParagraphStyle("number", parent=BODY, alignment=TA_RIGHT)
DISPLAY = ParagraphStyle("display", parent=BODY, fontName=BOLD, fontSize=34, leading=40)

LEAST_READ = 7.0  # points: of what a page says elsewhere too
CUT = "\u2026"
# A word wider than this is parted sooner than others are for its sake: a name of one long word.
LONGEST_WORD = 210.0

# Words that no line end parts: a number from its fraction or its unit, a dash from what it
# follows, a joint that ends a text from the word before it.
_KEPT = re.compile(
    r"(?<=\d) (?=\d+/\d|(?:in|ft|cu|mm|cm|m|km|mi|kg|lb|h|min|mph)\b)| (?=– )| (?=[A-Z]+\d+$)"
    r"|(?<=\bft) (?=\d)|(?<=\bcu) (?=ft\b)|(?<=\bh) (?=\d)"
)


def plain(text: str) -> str:
    """Text as paragraph markup: everything that would be read as markup escaped; somebody's words
    keep their own direction, alone as in a sentence of ours."""
    return escape(_KEPT.sub("\N{NO-BREAK SPACE}", isolated(text)), quote=False)


def unbroken(text: str) -> str:
    """Text that stays on one line."""
    return text.replace(" ", "\N{NO-BREAK SPACE}")


def strong(text: str) -> str:
    """Text in bold, as paragraph markup."""
    return f'<font name="{BOLD}">{plain(text)}</font>'


def underlined(text: str) -> str:
    """Text underlined, as links are, as paragraph markup."""
    return f"<u>{escape(isolated(text), quote=False)}</u>"


def fitting_size(words: str, room: float, size: float, *, bold: bool = False) -> float:
    """The size at which words have room on one line, `size` at most: a long name is set smaller
    rather than cut."""
    wide = text_width(words, size, bold=bold)
    return size * min(1.0, room / wide) if wide else size


def fitted(words: str, room: float, size: float, *, bold: bool = False) -> tuple[str, float]:
    """Words that stand elsewhere in full, and their size, so that they have room on one line: not
    below the least that is read, and then cut after a sign that they have room to."""
    least = min(size, LEAST_READ)
    fitting = fitting_size(words, room, size, bold=bold)
    if fitting >= least:
        return words, fitting
    signs = clusters(words)
    kept = next(
        (
            found
            for number in range(len(signs) - 1, 0, -1)
            if text_width(found := "".join(signs[:number]).rstrip(" ,") + CUT, least, bold=bold)
            <= room
        ),
        CUT,
    )
    return kept, least


@lru_cache(maxsize=4096)
def paragraph_height(markup: str, style: ParagraphStyle, width: float) -> float:
    """Height of a paragraph set to `width`."""
    register_fonts()
    _, height = OrderedParagraph(markup, style).wrap(width, 10_000)
    return float(height)


def least_widths(rows: Sequence[Sequence[str]], pad: float) -> list[float]:
    """Widths at which a table's columns break none of their words, set in bold, that are not as
    long as none is but a name. Cells are markup, with `pad` points about them."""
    register_fonts()
    words = (
        re.sub("<[^>]*>", "", " ".join(column)).split(" ") for column in zip(*rows, strict=True)
    )
    return [
        max(
            (
                min(text_width(unescape(word), BODY.fontSize, bold=True), LONGEST_WORD)
                for word in column
            ),
            default=0,
        )
        + 2 * pad
        + 0.1
        for column in words
    ]


def column_widths(wanted: Sequence[float], least: Sequence[float]) -> list[float]:
    """Widths as wanted, but none below its least where the others can give way; where not even
    that leaves room for every word, the widest alone give way."""
    short = fsum(max(0.0, low - width) for low, width in zip(least, wanted, strict=True))
    spare = fsum(max(0.0, width - low) for low, width in zip(least, wanted, strict=True))
    if not short:
        return list(wanted)
    if spare <= short:
        return _levelled(least, fsum(wanted))
    kept = 1 - short / spare
    return [
        low if width < low else low + (width - low) * kept
        for low, width in zip(least, wanted, strict=True)
    ]


def _levelled(widths: Sequence[float], room: float) -> list[float]:
    """Widths that fill a room smaller than they are: the widest are as wide as one another."""
    left, most = room, 0.0
    for number, width in enumerate(sorted(widths)):
        most = left / (len(widths) - number)
        if width >= most:
            break
        left -= width
    return [min(width, most) for width in widths]
