"""What a new design can be begun with, and the text of one that is begun at once."""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Collection, Mapping
from functools import cache
from urllib.parse import quote

import numpy as np

from buildplan import __version__
from buildplan.design.measures import Units, units_read
from buildplan.design.starting import design_text
from buildplan.design.wishes import Wish
from buildplan.desk.begun_pieces import begun_piece, begun_pieces
from buildplan.desk.folder import Folder
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import FORM
from buildplan.desk.titles import titled
from buildplan.drawing.marks import Ink, Picture, Polyline
from buildplan.drawing.svg import picture_svg
from buildplan.fitting.outlines import NAMED, named_outline
from buildplan.fitting.sources import METRES, parse_height, units_of
from buildplan.language.messages import mark, message
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice

SIDE_POINTS, EDGE_POINTS = 120.0, 8.0
OUTLINE_INK = Ink(fill="#DCE6EE", stroke="#1F5F8F", width=2.5)
SIGN = "sign"  # that is begun with its words
# what a new design is called as long as nobody calls it anything else
CALLED: Mapping[str, str] = {
    "star": mark("star"),
    "ring": mark("ring"),
    "frame": mark("frame"),
    "drop": mark("drop"),
    "crescent": mark("crescent"),
    "arch": mark("arch"),
    "wall": mark("wall"),
    "column": mark("column"),
    "globe": mark("globe"),
    "entrance": mark("entrance"),
}


@cache
def drawn_from() -> str:
    """What the pictures of patterns are drawn from, as a short digest: another program or another
    usual piece draws others."""
    told = hashlib.sha256(f"{FORM} {__version__}\n".encode())
    for key in CALLED:
        told.update(pattern_design(key, key, Voice()))
    return told.hexdigest()[:16]


def beginnings(folder: Folder, drawn: Collection[str], voice: Voice) -> list[dict[str, object]]:
    """Patterns with their usual pieces, whole pieces of the folders within, then outlines that have
    a name. `drawn` are the patterns whose picture is there."""
    patterns: list[dict[str, object]] = [
        {
            "kind": "pattern",
            "key": key,
            "title": _capital(voice.say(called)),
            "about": "",
            "picture": f"/api/beginnings/{key}.png?of={drawn_from()}" if key in drawn else None,
        }
        for key, called in CALLED.items()
    ]
    pieces: list[dict[str, object]] = [
        {
            "kind": "gallery",
            "key": piece.key,
            "title": piece.title,
            "about": "",
            "picture": f"/api/beginnings/{quote(piece.key)}.png" if piece.picture else None,
        }
        for piece in begun_pieces(folder)
    ]
    outlines: list[dict[str, object]] = [
        {
            "kind": "outline",
            "key": key,
            "title": _capital(voice.say(key)),
            "about": "",
            "picture": outline_picture(key, voice.say(key)),
        }
        for key in NAMED
    ]
    return [*patterns, *pieces, *outlines]


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def outline_picture(key: str, alt: str) -> str:
    """A named outline as a picture in an address (RFC 2397)."""
    points = named_outline(key, 1.0).points
    high, wide = float(np.ptp(points.imag)), float(np.ptp(points.real))
    scale = (SIDE_POINTS - 2 * EDGE_POINTS) / max(high, wide)
    middle = complex(points.real.min() + wide / 2, points.imag.min() + high / 2)
    placed = (points - middle) * scale + complex(SIDE_POINTS, SIDE_POINTS) / 2
    corners = tuple((float(point.real), float(point.imag)) for point in placed)
    marks = (Polyline(corners, OUTLINE_INK, closed=True),)
    drawn = picture_svg(Picture(SIDE_POINTS, SIDE_POINTS, marks, alt))
    data = base64.b64encode(drawn.encode()).decode("ascii")
    return f"data:image/svg+xml;base64,{data}"


def pattern_design(key: str, title: str, voice: Voice) -> bytes:
    """The design of a pattern's usual piece, in the units that are usual in the language. Raises
    RefusedError for a key that is none."""
    if key not in CALLED:
        raise RefusedError(404, message("there is no such piece to begin with"))
    return _text(Wish(title, key, units_read(voice, "in")), voice).encode()


def piece_design(folder: Folder, key: str, title: str) -> bytes:
    """A whole piece under another title. Raises RefusedError for a key that is none."""
    piece = begun_piece(folder, key)
    if piece is None:
        raise RefusedError(404, message("there is no such piece to begin with"))
    return titled(piece.data, title)


def sign_design(title: str, text: str, height: str, voice: Voice) -> bytes:
    """The design of a text in letters, so high (`1.5 m`) or of the usual height."""
    units: Units = units_of(height) if height.strip() else units_read(voice, "in")
    try:
        size = parse_height(height) / METRES[units] if height.strip() else None
    except ToldError as error:
        raise RefusedError(422, error.told) from error
    made = _text(Wish(text, SIGN, units, size=size, gauge=None), voice)
    return titled(made.encode(), title)


def _text(wish: Wish, voice: Voice) -> str:
    try:
        return design_text(wish, voice)
    except ToldError as error:
        raise RefusedError(422, error.told) from error
