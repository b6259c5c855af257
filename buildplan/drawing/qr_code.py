"""A QR code as a picture (ISO/IEC 18004, made by segno), for a phone's camera."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from buildplan.drawing.marks import Ink, Picture, Polyline

# Light modules all round a code, by the standard; the share of it that may be spoilt and still
# be read is that of level M, 15 per cent.
QUIET = 4
LEVEL = "m"
DARK, LIGHT = Ink("#000000"), Ink("#FFFFFF")


def qr_picture(text: str, width: float, alt: str) -> Picture:
    """The code of a text, so wide (in points) with the quiet zone round it.

    Raises segno.DataOverflowError for more than a code can hold, 2,331 bytes at this level.
    """
    import segno  # brings Python's web client with it, and most booklets have no code

    rows = [list(map(bool, row)) for row in segno.make(text, error=LEVEL, micro=False).matrix]
    size = width / (len(rows) + 2 * QUIET)
    ground = _rectangle(0.0, 0.0, width, width, LIGHT)
    return Picture(width, width, (ground, *_dark(rows, size, width)), alt, (("picture", "code"),))


def _dark(rows: Sequence[Sequence[bool]], size: float, width: float) -> Iterator[Polyline]:
    """The dark modules, those side by side in one."""
    for number, row in enumerate(rows):
        top = width - (QUIET + number) * size
        at = QUIET
        for is_dark, run in groupby(row):
            count = len(list(run))
            if is_dark:
                yield _rectangle(at * size, top - size, (at + count) * size, top, DARK)
            at += count


def _rectangle(left: float, low: float, right: float, high: float, ink: Ink) -> Polyline:
    return Polyline(((left, low), (right, low), (right, high), (left, high)), ink, closed=True)
