"""What joint labels look like: dots, tags with leader lines, and where a picture's texts are."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import (
    Box,
    Circle,
    Curve,
    Ink,
    Inset,
    Label,
    Mark,
    Picture,
    Point,
    Polyline,
)

PAD_X, PAD_Y = 2.4, 1.7
DOT_RADIUS = 2.2
TIE_RADIUS = 3.2
DARK = "#16202A"


@dataclass(frozen=True)
class Tag:
    """A placed label: its words, the joint's place, and its box (left, low, right, high)."""

    text: str
    spot: Point
    box: Box
    size: float


def joint_dot(spot: Point, tied: bool = False, hidden: bool = False) -> tuple[Circle, Circle]:
    """The dot that marks a joint: dark in a white ring, larger where ends are tied.

    A joint that lies behind something new has a broken ring and a hollow middle.
    """
    radius = TIE_RADIUS if tied else DOT_RADIUS
    if hidden:
        broken = Ink(fill="#FFFFFF", stroke=DARK, width=0.6, dash=(1.3, 1.3))
        return Circle(spot, radius, broken), Circle(spot, radius * 0.5, Ink(stroke=DARK, width=0.6))
    whole = Ink(fill="#FFFFFF", stroke=DARK, width=0.5)
    return Circle(spot, radius, whole), Circle(spot, radius * 0.55, Ink(fill=DARK))


def tag_size(text: str, size: float) -> tuple[float, float]:
    """Width and height of a tag."""
    return text_width(text, size, bold=True) + 2 * PAD_X, size * 0.74 + 2 * PAD_Y


def rounded_box(box: Box, radius: float, ink: Ink) -> Curve:
    """A box with rounded corners."""
    left, low, right, high = box
    k = radius * 0.4477  # what is left of the radius for a quarter circle as a cubic curve
    p = [(left + radius, low), (right - radius, low), (right, low + radius)]
    p += [(right, high - radius), (right - radius, high), (left + radius, high)]
    p += [(left, high - radius), (left, low + radius)]
    pieces = (
        (p[0], p[1], p[1]),
        ((right - k, low), (right, low + k), p[2]),
        (p[2], p[3], p[3]),
        ((right, high - k), (right - k, high), p[4]),
        (p[4], p[5], p[5]),
        ((left + k, high), (left, high - k), p[6]),
        (p[6], p[7], p[7]),
        ((left, low + k), (left + k, low), p[0]),
    )
    return Curve(p[0], pieces, ink, closed=True)


def leaders(tags: Iterable[Tag]) -> list[Mark]:
    """The lines from joints to their tags, to be drawn under both."""
    inks = (Ink(stroke="#FFFFFF", width=2.0), Ink(stroke=DARK, width=0.7))
    return [Polyline((tag.spot, _middle(tag.box)), ink) for ink in inks for tag in tags]


def joint_tags(tags: Iterable[Tag]) -> list[Mark]:
    """The tags with their words."""
    marks: list[Mark] = []
    for tag in tags:
        left, low, right, _ = tag.box
        marks.append(rounded_box(tag.box, 2.6, Ink(fill="#FFFFFF", stroke=DARK, width=0.6)))
        at = ((left + right) / 2, low + PAD_Y)
        marks.append(Label(at, tag.text, tag.size, colour=DARK, bold=True))
    return marks


def _middle(box: Box) -> Point:
    return ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def label_boxes(picture: Picture) -> dict[str, list[Box]]:
    """Where each text of a picture, and of those set into it, is: boxes by its words."""
    found: dict[str, list[Box]] = {}
    for mark in picture.marks:
        if isinstance(mark, Inset):
            x, y = mark.at
            for text, boxes in label_boxes(mark.picture).items():
                moved = [(box[0] + x, box[1] + y, box[2] + x, box[3] + y) for box in boxes]
                found.setdefault(text, []).extend(moved)
        elif isinstance(mark, Label):
            wide = text_width(mark.text, mark.size, mark.bold)
            left = mark.at[0] - {"start": 0.0, "middle": wide / 2, "end": wide}[mark.anchor]
            low, high = mark.at[1] - 0.24 * mark.size, mark.at[1] + 0.76 * mark.size
            found.setdefault(mark.text, []).append((left, low, left + wide, high))
    return found
