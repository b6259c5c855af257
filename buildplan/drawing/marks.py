"""What a picture is made of: a handful of marks, as frozen data.

Drawing code says what is to be seen by listing marks; a backend (PDF, SVG) puts them on
paper. Lengths are points (1/72 inch), x to the right and y up from the picture's lower left
corner; colours are `#RRGGBB`.
"""

from __future__ import annotations

from dataclasses import dataclass

Point = tuple[float, float]
Box = tuple[float, float, float, float]  # left, foot, right, top
# What a program may read of a mark or a picture: names and values, as SVG's data- attributes.
MarkData = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Ink:
    """How a mark is inked; `None` leaves fill or stroke out."""

    fill: str | None = None
    stroke: str | None = None
    width: float = 0.5
    dash: tuple[float, ...] = ()


@dataclass(frozen=True)
class Polyline:
    """Straight lines through points; closed, a polygon."""

    points: tuple[Point, ...]
    ink: Ink
    closed: bool = False
    data: MarkData = ()


@dataclass(frozen=True)
class Curve:
    """Cubic Bezier curves from `start`; each piece is (control, control, end)."""

    start: Point
    pieces: tuple[tuple[Point, Point, Point], ...]
    ink: Ink
    closed: bool = False
    data: MarkData = ()


@dataclass(frozen=True)
class Circle:
    """A circle."""

    centre: Point
    radius: float
    ink: Ink


@dataclass(frozen=True)
class Label:
    """A line of text. `anchor` is start, middle or end; `at` is on the baseline. A halo is a
    pale outline that keeps the letters readable over the picture."""

    at: Point
    text: str
    size: float
    colour: str = "#1A1A1A"
    anchor: str = "middle"
    bold: bool = False
    halo: str | None = None
    data: MarkData = ()


@dataclass(frozen=True)
class Look:
    """How one part of a balloon looks: drawn once in each document, stamped wherever needed.

    Its unit is the body's diameter, its origin the body's centre. Forms:

    - "link": the outline of a link balloon along x, from its far knot at `-aspect / 2` to
      its near knot at `aspect / 2`. `length` is the true length between the knots and
      `aspect` the drawn, foreshortened one, both over the body's diameter. `near` says
      which end is the near one, "neck" or "tail"; empty, the ends are drawn alike.
    - "end": the near end of a link that points at the viewer, its knot at the origin.
    - "round": the outline of a round, its knot towards +x.
    - "body": light and shade of a body, always stamped upright.
    - "pattern": the sign that tells colours apart without colour (`pattern` 0 is none).

    `state` is "new", "done" (pale), "far" (paler and flat) or "outline" (no fill); `tone` dims
    what lies deep, from 0 (near) to 3; `line` is the outline's width; `finish` is one of
    shading.FINISHES.
    """

    form: str
    colour: str
    state: str
    aspect: float = 1.0
    pattern: int = 0
    length: float = 1.15
    near: str = ""
    tone: int = 0
    line: float = 0.03
    finish: str = "standard"


@dataclass(frozen=True)
class Stamp:
    """A look placed by the matrix that takes its own (x, y) to
    (a x + c y + e, b x + d y + f)."""

    look: Look
    matrix: tuple[float, float, float, float, float, float]


@dataclass(frozen=True)
class Inset:
    """A picture within a picture, its lower left corner at `at`. Nothing of it is drawn
    outside its own box."""

    picture: Picture
    at: Point


PathMark = Polyline | Curve | Circle
Mark = PathMark | Label | Stamp | Inset


@dataclass(frozen=True)
class Picture:
    """A finished picture: its size, its marks from back to front, its words for those who
    cannot see it, and what a program may read of it ("picture" says of which kind it is)."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    alt: str
    data: MarkData = ()
