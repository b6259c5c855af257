"""Plain figures in pictures of the whole piece: people who stand or kneel, bags of ballast."""

from __future__ import annotations

from buildplan.drawing.labels import DARK
from buildplan.drawing.line_art import smooth
from buildplan.drawing.marks import Circle, Ink, Mark, Point, Polyline
from buildplan.drawing.way_round import PAPER

BAG_PT = 5.0
SAND = Ink(fill="#D8CDB4", stroke=DARK, width=0.8)


def standing_person(foot: Point, head: Point) -> list[Mark]:
    """A plain figure, from the floor to the top of the head."""
    tall = head[1] - foot[1]
    radius = tall * 0.075
    x, y = foot
    body = [
        (x - tall * 0.1, y),
        (x - tall * 0.12, y + tall * 0.55),
        (x - tall * 0.11, y + tall * 0.8),
    ]
    body += [
        (x + tall * 0.11, y + tall * 0.8),
        (x + tall * 0.12, y + tall * 0.55),
        (x + tall * 0.1, y),
    ]
    ink = Ink(fill=PAPER, stroke=DARK, width=1.0)
    return [
        Polyline(tuple(body), ink, closed=True),
        Circle((x, y + tall * 0.8 + radius * 1.15), radius, ink),
    ]


def kneeling_person(foot: Point, head: Point) -> list[Mark]:
    """The same on its knees, as large as one whose head would be there if it stood."""
    tall = head[1] - foot[1]
    x, y = foot
    legs = [(-0.2, 0.0), (0.15, 0.0), (0.15, 0.1), (0.1, 0.14), (-0.1, 0.14), (-0.2, 0.08)]
    torso = [(-0.1, 0.12), (-0.12, 0.3), (-0.1, 0.45), (0.1, 0.45), (0.12, 0.3), (0.1, 0.12)]
    ink = Ink(fill=PAPER, stroke=DARK, width=1.0)
    radius = tall * 0.075
    shapes = [tuple((x + u * tall, y + v * tall) for u, v in form) for form in (legs, torso)]
    return [
        *(Polyline(shape, ink, closed=True) for shape in shapes),
        Circle((x, y + tall * 0.45 + radius * 1.15), radius, ink),
    ]


def bag_marks(at: Point) -> list[Mark]:
    """A bag of ballast on the floor."""
    x, y = at
    r = BAG_PT
    outline = [(x - r, y - r * 0.6), (x + r, y - r * 0.6), (x + r * 0.9, y + r * 0.2)]
    outline += [(x + r * 0.25, y + r * 0.5), (x, y + r), (x - r * 0.25, y + r * 0.5)]
    outline.append((x - r * 0.9, y + r * 0.2))
    return [smooth(outline, SAND, closed=True)]
