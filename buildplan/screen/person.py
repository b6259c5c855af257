"""The person who stands beside the piece on a screen, for scale: the figure of the printed views,
at true size."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from buildplan.booklet.common.book import Book
from buildplan.design.measures import size_words
from buildplan.drawing.dimensions import PERSON_M, person_marks
from buildplan.drawing.marks import Circle, Curve
from buildplan.language.voice import Voice

# From the piece's edge to the middle of the person, and half as wide as that is; metres, by eye.
BESIDE_M, HALF_WIDE_M = 0.5, 0.3


def person_data(book: Book, voices: Sequence[Voice]) -> dict[str, Any]:
    """The person beside the piece of a book; see `person_outline`."""
    return person_outline(book.facts.width_m, voices)


def person_outline(width_m: float, voices: Sequence[Voice]) -> dict[str, Any]:
    """A person beside a piece so wide. An outline in metres, upright, its feet at (0, 0): `body`
    as cubic Bezier curves (`start`, and six numbers a piece: control, control, end), `head` as the
    middle and radius of a circle; `foot_x` where it stands, `tall` how tall it is in words."""
    body: dict[str, Any] = {}
    head: list[float] = []
    for mark in person_marks((0.0, 0.0), PERSON_M):
        if isinstance(mark, Curve):
            pieces = [[value for point in piece for value in point] for piece in mark.pieces]
            body = {"start": list(mark.start), "pieces": pieces}
        elif isinstance(mark, Circle):
            head = [round(value, 4) for value in (*mark.centre, mark.radius)]
    tall = {
        voice.language: f"{voice.tell(size_words(PERSON_M, 'cm'))}"
        f" ({voice.tell(size_words(PERSON_M, 'in'))})"
        for voice in voices
    }
    x = round(width_m / 2 + BESIDE_M, 4)
    return {"foot_x": x, "height_m": PERSON_M, "body": body, "head": head, "tall": tall}
