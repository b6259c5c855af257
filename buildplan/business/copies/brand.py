"""The seller's brand: its words and colours, and its logo as something that can be drawn."""

from __future__ import annotations

import io
import re
from collections.abc import Iterable
from dataclasses import dataclass
from enum import auto
from pathlib import Path
from typing import Any

from PIL import Image
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from buildplan.design.model import Brand, Design
from buildplan.drawing.colours import luminance
from buildplan.drawing.typeset.font_files import FontFile, UnfitFontError, read_font
from buildplan.language.messages import Value, mark, message
from buildplan.source.bounded import UnfitFileError, bytes_within, why_not_read
from buildplan.source.problems import DesignProblemsError, Problem, ProblemKind
from buildplan.source.suggestions import by_hand
from buildplan.source.svg_size import drawn_elements

LARGEST_LOGO = 4 * 1024 * 1024
MOST_PIXELS = 16_000_000
MOST_ELEMENTS = 20_000
LEAST_SIDE, MOST_SIDE = 0.01, 100_000.0  # points
PNG_MAGIC = b"\x89PNG\r\n\x1a\n"
# What an SVG logo may not hold, and what would be right.
NOT_IN_SVG = (
    (
        rb"<!(DOCTYPE[^>]*\[|ENTITY)",
        mark("the logo {file} holds definitions of its own"),
        mark("save it as plain SVG"),
    ),
    (
        rb"<(\w+:)?text\b",
        mark("the logo {file} holds letters as text"),
        mark("turn its letters into outlines (paths)"),
    ),
    (
        rb"<(\w+:)?image\b",
        mark("the logo {file} holds a picture inside it"),
        mark("draw it as shapes, or use a .png"),
    ),
    (
        rb"<(\w+:)?(script|foreignObject)\b",
        mark("the logo {file} holds more than shapes"),
        mark("save it as plain SVG"),
    ),
)
WHITE, DARK = "#FFFFFF", "#1A1A1A"


class BrandKind(ProblemKind):
    """What is wrong with a brand."""

    UNUSABLE_LOGO = auto()
    UNUSABLE_FONT = auto()


@dataclass(frozen=True)
class Logo:
    """A logo's file, `kind` png or svg, and how wide it is for its height."""

    kind: str
    data: bytes
    aspect: float


@dataclass(frozen=True)
class Branding:
    """A brand with its logo and its font read."""

    brand: Brand
    logo: Logo | None = None
    fonts: tuple[FontFile, ...] = ()

    @property
    def name(self) -> str:
        """The seller's name."""
        return self.brand.name

    @property
    def on_colour(self) -> str:
        """White or dark, whichever is read better on the brand's colour (contrast as of WCAG
        2.2, 1.4.3: (L1 + 0.05) / (L2 + 0.05))."""
        ground = luminance(self.brand.colour)
        with_white = 1.05 / (ground + 0.05)
        with_dark = (ground + 0.05) / (luminance(DARK) + 0.05)
        return WHITE if with_white >= with_dark else DARK


def branding(brand: Brand, file: Path) -> Branding:
    """The brand that `file` names, with its logo and its font, found from the folder of that file.

    Raises DesignProblemsError when the logo or the font cannot be used.
    """
    fonts = fonts_of(brand, file)
    if brand.logo is None:
        return Branding(brand, fonts=fonts)
    path = file.parent / brand.logo
    try:
        return Branding(brand, _logo(path), fonts)
    except _LogoError as error:
        problem = Problem(
            BrandKind.UNUSABLE_LOGO,
            message(error.message, file=brand.logo, why=error.why),
            by_hand(message(error.right)),
            path="brand: logo",
        )
        raise DesignProblemsError(str(file), [problem], brand.name) from None


def fonts_of(brand: Brand | None, file: Path) -> tuple[FontFile, ...]:
    """The font that a brand of `file` names, none if it does not. Raises DesignProblemsError."""
    if brand is None or brand.font is None:
        return ()
    try:
        return (read_font(file.parent / brand.font),)
    except UnfitFontError as error:
        told = error.told
    except OSError as error:
        told = message("{file} cannot be read ({why})", file=brand.font, why=why_not_read(error))
    right = by_hand(message("name a .ttf, .otf or .ttc file beside this one"))
    problem = Problem(BrandKind.UNUSABLE_FONT, told, right, path="brand: font")
    raise DesignProblemsError(str(file), [problem], brand.name)


def fonts_of_designs(designs: Iterable[tuple[Design, Path]]) -> tuple[FontFile, ...]:
    """The fonts that the brands of designs name, each once, of designs with their files. Raises
    DesignProblemsError."""
    found = [font for design, file in designs for font in fonts_of(design.brand, file)]
    return tuple(dict.fromkeys(found))


class _LogoError(Exception):
    """What is wrong with a logo, and what would be right, as marked messages."""

    def __init__(self, message: str, right: str, why: Value = "") -> None:
        super().__init__(message)
        self.message, self.right, self.why = message, right, why


def _logo(path: Path) -> Logo:
    try:
        data = bytes_within(path, LARGEST_LOGO)
    except UnfitFileError:
        raise _LogoError(
            mark("the logo {file} is no file, or larger than 4 MiB"), mark("save a smaller one")
        ) from None
    except OSError as error:
        raise _LogoError(
            mark("the logo {file} cannot be read ({why})"),
            mark("check its name"),
            why_not_read(error),
        ) from None
    if path.suffix.lower() == ".png":
        return _png(data)
    if path.suffix.lower() == ".svg":
        return _svg(data)
    raise _LogoError(
        mark("the logo {file} is neither .png nor .svg"), mark("save it as one of these")
    )


def _png(data: bytes) -> Logo:
    if not data.startswith(PNG_MAGIC):
        raise _LogoError(
            mark("the logo {file} is no PNG picture, whatever its name"), mark("save it as PNG")
        )
    try:
        width, height = Image.open(io.BytesIO(data)).size
        if width * height > MOST_PIXELS:
            raise _LogoError(
                mark("the logo {file} has too many pixels"), mark("save a smaller one")
            )
        reader = ImageReader(io.BytesIO(data))
        Canvas(io.BytesIO()).drawImage(reader, 0, 0, mask="auto")
    except _LogoError:
        raise
    except Image.DecompressionBombError:  # of so many that the library does not open it
        raise _LogoError(
            mark("the logo {file} has too many pixels"), mark("save a smaller one")
        ) from None
    except Exception:  # noqa: BLE001 - the picture library raises many kinds
        raise _LogoError(
            mark("the logo {file} is a broken PNG picture"), mark("save it again as PNG")
        ) from None
    return Logo("png", data, width / height)


def svg_drawing(data: bytes) -> Any:
    """An SVG logo as a drawing of reportlab's, or None. Its reader raises errors of many kinds."""
    from svglib.svglib import svg2rlg  # long to import, and few designs have a logo

    return svg2rlg(io.BytesIO(data))


def _svg(data: bytes) -> Logo:
    from reportlab.graphics import renderPDF  # long to import, and few designs have a logo

    try:
        data.decode("utf-8")
    except UnicodeDecodeError:  # what is written in another way would pass the patterns
        raise _LogoError(
            mark("the logo {file} is not UTF-8 text"), mark("save it as plain SVG")
        ) from None
    for pattern, what, right in NOT_IN_SVG:
        if re.search(pattern, data, re.IGNORECASE):
            raise _LogoError(what, right)
    try:
        small = drawn_elements(data.decode("utf-8"), MOST_ELEMENTS) <= MOST_ELEMENTS
        drawing = svg_drawing(data) if small else None
        if drawing is not None:
            renderPDF.drawToString(drawing)  # what it holds may be refused only when it is drawn
    except Exception:  # noqa: BLE001 - the reader of SVG raises many kinds
        drawing = None
    sizes = (0.0, 0.0) if drawing is None else (float(drawing.width), float(drawing.height))
    if not all(LEAST_SIDE <= size <= MOST_SIDE for size in sizes):
        raise _LogoError(
            mark("the logo {file} is no SVG that can be drawn"),
            mark("save it as plain SVG with a size"),
        )
    return Logo("svg", data, sizes[0] / sizes[1])
