"""The forms in which a picture can be kept, by the ending of its file's name."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from buildplan.drawing.marks import Picture
from buildplan.drawing.pdf import picture_pdf
from buildplan.drawing.png import picture_png
from buildplan.drawing.svg import picture_svg


def _svg_bytes(picture: Picture) -> bytes:
    return picture_svg(picture).encode("utf-8")


FORMS: Mapping[str, Callable[[Picture], bytes]] = {
    ".pdf": picture_pdf,
    ".svg": _svg_bytes,
    ".png": picture_png,
}
