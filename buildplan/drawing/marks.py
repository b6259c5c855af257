"""What a picture is made of: a handful of marks, as frozen data.

Drawing code says what is to be seen by listing marks; a backend (PDF, SVG) puts them on
paper. Lengths are points (1/72 inch), x to the right and y up from the picture's lower left
corner; colours are `#RRGGBB`.
"""

from __future__ import annotations

from dataclasses import dataclass

Point = tuple[float, float]


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


@dataclass(frozen=True)
class Curve:
    """Cubic Bezier curves from `start`; each piece is (control, control, end)."""

    start: Point
    pieces: tuple[tuple[Point, Point, Point], ...]
    ink: Ink
    closed: bool = False


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


@dataclass(frozen=True)
class Look:
    """How one balloon looks: drawn once in each document and stamped wherever it is needed.

    `form` is "link", "round" or "highlight"; `aspect` the drawn length between knots over
    the body's diameter (foreshortened, in steps); `state` is "new", "done" (pale) or
    "outline". `pattern` tells colours apart without colour (0 is none).
    """

    form: str
    colour: str
    state: str
    aspect: float = 1.0
    pattern: int = 0


@dataclass(frozen=True)
class Stamp:
    """A look placed by the matrix that takes its own (x, y) to
    (a x + c y + e, b x + d y + f)."""

    look: Look
    matrix: tuple[float, float, float, float, float, float]


Mark = Polyline | Curve | Circle | Label | Stamp


@dataclass(frozen=True)
class Picture:
    """A finished picture: its size, its marks from back to front, and its words for those
    who cannot see it."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    alt: str
