"""The printed booklet's own pictures for the page: the joint map, and the hand moves of each step.

They are the SVG of `drawing/svg.py`, made small: what balloons look like is held once for all
pictures, coordinates are rounded to what a screen shows, and words are kept apart from the
drawing, which most languages share.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import Any
from xml.sax.saxutils import unescape

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.step_moves import first_moves
from buildplan.drawing.maps.joint_map import joint_map
from buildplan.drawing.marks import Picture
from buildplan.drawing.svg import picture_svg
from buildplan.language.voice import Voice

# Points: as wide as a phone shows with type that can be read, and as high as it comes.
MAP_WIDTH, MAP_HEIGHT = 280.0, 1500.0
MOVE_HEIGHT = 200.0
# Decimals kept of what is drawn in points, and of looks, whose unit is a balloon's diameter.
IN_POINTS, IN_LOOKS = 1, 3
NUMBERS_KEPT = 1 << 16  # a picture has the same numbers in every language
LOOK = re.compile(r'<g id="(look\d+)">(.*)</g>')
LONG_NUMBER = re.compile(r"-?\d+\.\d+")
WORDS = re.compile(r">([^<]*)</text>")
NO_WORDS = "></text>"


@dataclass
class _Store:
    """The looks and drawings met so far, each once."""

    looks: dict[str, int] = field(default_factory=dict)
    drawings: dict[str, int] = field(default_factory=dict)


def page_pictures(book: Book, voices: Sequence[Voice]) -> dict[str, Any]:
    """The pictures as plain data.

    `looks` and `drawings` are pieces of SVG; a drawing uses looks as `#k` and their number. `map`
    are the sheets of the joint map, `moves` the hand moves by step number: each a picture with its
    `width` and `height` in points and, by language, the number of its `drawing`, the `words` in it
    in their order, and its `alt`.
    """
    store = _Store()
    sheets = {v: joint_map(book.framework, MAP_WIDTH, MAP_HEIGHT, v, book.shape.at) for v in voices}
    told = {v: _moves(book, v) for v in voices}
    some = next(iter(voices))
    moves = {
        number: _gathered(store, {v: told[v][number] for v in voices})
        for number, pictures in told[some].items()
        if pictures
    }
    return {
        "map": _gathered(store, sheets),
        "moves": moves,
        "looks": list(store.looks),
        "drawings": list(store.drawings),
    }


def _moves(book: Book, voice: Voice) -> Mapping[int, tuple[Picture, ...]]:
    said = replace(book, language=voice.language)
    return {step.number: first_moves(said, step, MOVE_HEIGHT) for step in book.steps}


def _gathered(store: _Store, told: Mapping[Voice, Sequence[Picture]]) -> list[dict[str, Any]]:
    """Pictures that are the same in every language but for their words, side by side."""
    found = []
    for pictures in zip(*told.values(), strict=True):
        said = {v.language: _said(store, each) for v, each in zip(told, pictures, strict=True)}
        size = {"width": round(pictures[0].width, 1), "height": round(pictures[0].height, 1)}
        found.append(size | said)
    return found


def _said(store: _Store, picture: Picture) -> dict[str, Any]:
    before, _, rest = picture_svg(picture).partition("</defs>\n")
    numbers = dict(_looks(store, before))
    body = rest.rpartition("</svg>")[0].replace("\n", "")
    words = [unescape(found) for found in WORDS.findall(body)]
    drawing = _rounded(WORDS.sub(NO_WORDS, body), IN_POINTS)
    drawing = re.sub(r'"#(look\d+)"', lambda found: f'"#k{numbers[found[1]]}"', drawing)
    number = store.drawings.setdefault(drawing, len(store.drawings))
    return {"drawing": number, "words": words, "alt": picture.alt}


def _looks(store: _Store, defined: str) -> Iterator[tuple[str, int]]:
    """The number of each look that a picture defines, by its name there."""
    for name, shapes in LOOK.findall(defined):
        small = _rounded(shapes, IN_LOOKS)
        yield name, store.looks.setdefault(small, len(store.looks))


def _rounded(text: str, places: int) -> str:
    return LONG_NUMBER.sub(lambda found: _short(found[0], places), text)


@lru_cache(maxsize=NUMBERS_KEPT)
def _short(number: str, places: int) -> str:
    text = f"{float(number):.{places}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
