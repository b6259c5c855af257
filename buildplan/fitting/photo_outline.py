"""An outline from a picture: the silhouette of a drawing or of a cut-out.

What is piece and what is ground is told by the alpha channel where the picture has one; else by
brightness, at the level between the two that Otsu's method gives (N. Otsu, "A Threshold Selection
Method from Gray-Level Histograms", IEEE Trans. SMC 9(1), 1979), what touches the border least
being the piece. A line drawing is filled. The edge is traced by contourpy.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from io import BytesIO
from pathlib import Path

import numpy as np
import numpy.typing as npt
from contourpy import contour_generator
from PIL import Image, ImageDraw, ImageFont
from scipy.ndimage import binary_fill_holes, distance_transform_edt, gaussian_filter, label
from shapely import Polygon

from buildplan.fitting.outline import Drawn, FloatArray, OutlineError, ring_points
from buildplan.language.messages import message
from buildplan.source.bounded import bytes_within

PHOTOS = (".png", ".jpg", ".jpeg")
LONGEST_PX = 640  # of the sides of the picture that is looked at
MOST_BYTES = 64 * 1024 * 1024
MOST_PIXELS = 60_000_000
BLUR_PX, SIMPLER_PX = 1.2, 0.7
# Of the picture: what is smaller is a speck; of the largest piece: what is larger is one more.
SPECK, ANOTHER = 0.002, 0.1
CLEAR = 0.12  # how far apart dark and light are at least, of the whole range
A_HOLE = 0.02  # of the piece: smaller holes are filled
PIECE_RGB = (0.12, 0.37, 0.56)

BoolArray = npt.NDArray[np.bool_]


@dataclass(frozen=True)
class Silhouettes:
    """What was taken of a picture: the grey picture that was looked at, 0 to 1, (rows, columns),
    and where in it each piece is, from left to right."""

    grey: FloatArray
    pieces: tuple[BoolArray, ...]


def photo_outline(file: Path) -> Drawn:
    """The outline of the largest piece in a picture, with its holes, y up, in pixels; and how many
    others there are. Raises OutlineError; OSError passes through."""
    found = silhouettes_in(file).pieces
    largest = max(found, key=lambda piece: int(piece.sum()))
    return replace(_traced(largest, file), left_out=len(found) - 1)


def photo_outlines(file: Path) -> tuple[Drawn, ...]:
    """The outlines of the pieces in a picture, from left to right, in the same pixels. Raises as
    `photo_outline` does."""
    return tuple(_traced(piece, file) for piece in silhouettes_in(file).pieces)


def silhouettes_in(file: Path) -> Silhouettes:
    """The pieces in a picture: the largest, and what is not much smaller. Raises OutlineError when
    there is none."""
    grey, alpha = _opened(file)
    inside = _by_alpha(alpha) if alpha is not None else _by_brightness(grey, file)
    parts, count = label(inside)
    sizes = np.bincount(parts.ravel(), minlength=count + 1)[1:]
    least = max(SPECK * inside.size, ANOTHER * int(sizes.max(initial=0)))
    pieces = [parts == number for number, size in enumerate(sizes, start=1) if size >= least]
    if not pieces:
        raise _no_piece(file)
    return Silhouettes(grey, tuple(sorted(pieces, key=_left)))


def _left(piece: BoolArray) -> int:
    """The first column of a picture in which a piece is."""
    return int(piece.any(axis=0).argmax())


def _no_piece(file: Path) -> OutlineError:
    return OutlineError(
        message("no piece stands out from the ground in {file}", file=str(file)),
        message("give a dark drawing on light paper, or a cut-out with a transparent ground"),
    )


def _too_large(file: Path) -> OutlineError:
    return OutlineError(
        message("{file} is too large a picture", file=str(file)),
        message("save it smaller; some 1000 pixels across are plenty"),
    )


def _opened(file: Path) -> tuple[FloatArray, FloatArray | None]:
    """The picture in grey, and its alpha where anything in it is transparent, 0 to 1."""
    held = bytes_within(file, MOST_BYTES)
    try:
        with Image.open(BytesIO(held)) as opened:
            if opened.width * opened.height > MOST_PIXELS:
                raise _too_large(file)
            picture = opened.convert("RGBA")
    except OutlineError:
        raise
    except Image.DecompressionBombError:
        raise _too_large(file) from None
    except Exception as error:  # the picture library raises errors of many kinds
        raise OutlineError(
            message("{file} cannot be read as a picture", file=str(file)),
            message("save it again as PNG or JPEG"),
        ) from error
    picture.thumbnail((LONGEST_PX, LONGEST_PX))
    data = np.asarray(picture, dtype=float) / 255
    alpha = data[..., 3]
    grey = data[..., :3] @ [0.299, 0.587, 0.114]  # luma, ITU-R BT.601
    grey = grey * alpha + (1 - alpha)
    return gaussian_filter(grey, BLUR_PX), alpha if alpha.min() < 0.5 else None


def _by_alpha(alpha: FloatArray) -> BoolArray:
    return np.asarray(gaussian_filter(alpha, BLUR_PX) > 0.5)


def _by_brightness(grey: FloatArray, file: Path) -> BoolArray:
    """What is unlike the ground, which is what most of the border is; lines that close are filled
    where they are thin."""
    level, apart = _otsu(grey)
    if apart < CLEAR:
        raise _no_piece(file)
    dark = grey < level
    border = np.concatenate([dark[0], dark[-1], dark[:, 0], dark[:, -1]])
    inside = ~dark if border.mean() > 0.5 else dark
    filled = binary_fill_holes(inside)
    line_drawing = inside.sum() < 0.35 * filled.sum()
    return np.asarray(filled if line_drawing else inside)


def _otsu(grey: FloatArray) -> tuple[float, float]:
    """The level that parts dark from light, and how far apart their means are."""
    counts, edges = np.histogram(grey, bins=256, range=(0.0, 1.0))
    middles = (edges[:-1] + edges[1:]) / 2
    below, above = np.cumsum(counts), np.cumsum(counts[::-1])[::-1]
    low = np.cumsum(counts * middles) / np.maximum(below, 1)
    high = (np.cumsum((counts * middles)[::-1]) / np.maximum(np.cumsum(counts[::-1]), 1))[::-1]
    between = below[:-1] * above[1:] * (low[:-1] - high[1:]) ** 2
    best = int(between.argmax())
    return float(edges[best + 1]), float(high[best + 1] - low[best])


def _traced(inside: BoolArray, file: Path) -> Drawn:
    """The edge of a region of pixels, smoothed to less than a pixel, and its holes."""
    padded = np.pad(inside.astype(float), 3)
    lines = contour_generator(z=gaussian_filter(padded, 1.0)).lines(0.5)
    rings = [Polygon(line).buffer(0) for line in lines if len(line) > 8]
    rings = [ring.simplify(SIMPLER_PX) for ring in rings if ring.geom_type == "Polygon"]
    if not rings:
        raise _no_piece(file)
    whole = max(rings, key=lambda ring: ring.area)
    holes = [
        ring
        for ring in rings
        if ring is not whole and ring.area >= A_HOLE * whole.area and whole.contains(ring)
    ]
    # rows of a picture run down
    return Drawn(ring_points(whole).conj(), tuple(ring_points(ring).conj() for ring in holes))


def taken_picture(found: Silhouettes) -> bytes:
    """A PNG of what was taken: the picture pale, the pieces in colour, numbered from the left where
    there are several; the same bytes each time."""
    pale = 0.6 + 0.4 * found.grey[..., None].repeat(3, axis=2)
    coloured = np.array(PIECE_RGB) * (0.6 + 0.4 * found.grey[..., None])
    inside = np.logical_or.reduce(found.pieces)
    shown = np.where(inside[..., None], coloured, pale)
    picture = Image.fromarray(np.round(shown * 255).astype(np.uint8))
    if len(found.pieces) > 1:
        drawn = ImageDraw.Draw(picture)
        font = ImageFont.load_default(max(12, picture.width // 16))
        for number, piece in enumerate(found.pieces, start=1):
            drawn.text(_deepest(piece), str(number), fill="white", font=font, anchor="mm")
    stream = BytesIO()
    picture.save(stream, "PNG")
    return stream.getvalue()


def _deepest(piece: BoolArray) -> tuple[int, int]:
    """The column and the row of a piece that are farthest from its edge."""
    row, column = np.unravel_index(int(distance_transform_edt(piece).argmax()), piece.shape)
    return int(column), int(row)
