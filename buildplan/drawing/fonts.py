"""The type that pictures and pages are set in: DejaVu Sans, which comes with matplotlib; for signs
that it has not, fonts that are named or found (`typeset/`)."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path

from reportlab.pdfbase import pdfmetrics

from buildplan.drawing.typeset.face import Typeface

REGULAR = "DejaVuSans"
BOLD = "DejaVuSans-Bold"
FAMILY = "DejaVu Sans"

# Of the em, from the font's own OS/2 table.
CAP_HEIGHT = 0.729


@lru_cache(maxsize=1)
def register_fonts() -> None:
    """Make both faces known to reportlab, to be embedded in the documents that use them."""
    for name in (REGULAR, BOLD):
        pdfmetrics.registerFont(Typeface(name, _file(name), bold=name == BOLD))


@lru_cache(maxsize=2)
def face_from_right(bold: bool) -> str:
    """The name by which reportlab knows the same face for lines that are written from the right,
    whatever they begin with."""
    name = BOLD if bold else REGULAR
    turned = f"{name}-FromRight"
    pdfmetrics.registerFont(Typeface(turned, _file(name), bold=bold, from_right=True))
    return turned


def _file(name: str) -> Path:
    spec = find_spec("matplotlib")
    assert spec is not None, "matplotlib is one of the project's dependencies"
    assert spec.origin is not None
    return Path(spec.origin).parent / "mpl-data" / "fonts" / "ttf" / f"{name}.ttf"


def face(bold: bool) -> str:
    """The name by which reportlab knows the face."""
    register_fonts()
    return BOLD if bold else REGULAR


def text_width(text: str, size: float, bold: bool = False) -> float:
    """Exact width of a line of text in points."""
    return float(pdfmetrics.stringWidth(text, face(bold), size))


def refuse_unprintable(text: str) -> None:
    """Raise NoSignError if a text has signs that no font has."""
    text_width(text, 1.0)


def our_own(sign: str) -> bool:
    """Whether the type itself has a letter for a character."""
    register_fonts()
    return ord(sign) in pdfmetrics.getFont(REGULAR).face.charToGlyph


def wrapped(text: str, width: float, size: float) -> Iterator[str]:
    """Lines of whole words, at most `width` points wide where words are."""
    line = ""
    for word in text.split(" "):
        longer = f"{line} {word}".strip()
        if line and text_width(longer, size) > width:
            yield line
            line = word
        else:
            line = longer
    yield line
