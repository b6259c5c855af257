"""What the technique pictures are set with: balloons, necks and tails, signs, a palette.

All pictures are 220 x 140 points. Balloons are stamped from the same looks as in the step
pictures; necks and tails are bands whose crossings show which goes over.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.drawing.colours import luminance, mix, shade
from buildplan.drawing.line_art import INK, PAPER, TYPE, arrow, between, rope, smooth
from buildplan.drawing.marks import Circle, Ink, Label, Look, Mark, Picture, Point, Polyline
from buildplan.drawing.signs import balloon_signs
from buildplan.drawing.stamps import link_stamps, round_stamps
from buildplan.drawing.symbols import quantised_line
from buildplan.framework.model import Framework, Role

WIDTH, HEIGHT = 220.0, 140.0
FINE = Ink(stroke=INK, width=0.6)
WAY = Ink(stroke=INK, width=1.1)  # arrows that say how a hand moves


@dataclass(frozen=True)
class Palette:
    """Colours of the piece's own balloons, and the signs on those of chains and braces."""

    chain: str
    brace: str
    lock: str
    chain_sign: int
    brace_sign: int


def palette(framework: Framework) -> Palette:
    """The colours that the piece's chains, braces and locks are most easily known by."""
    balloons = framework.balloons

    def first(*roles: Role) -> str:
        found = next((link for link in framework.links if link.role in roles), framework.links[0])
        return found.balloon

    chain, brace = first(Role.CHAIN), first(Role.BRACE, Role.SINGLE)
    colour, other = balloons[chain].colour, balloons[brace].colour
    lock = balloons[framework.locks[0].balloon].colour if framework.locks else colour
    sign = signs(framework)
    return Palette(colour, other, lock, sign[chain], sign[brace])


def told_apart(colour: str, other: str) -> str:
    """A colour for the second of two necks or tails: its balloon's, unless both are alike; then
    lighter or darker, so that a knot's two strands can be told apart."""
    if colour != other:
        return other
    return mix(colour, PAPER, 0.45) if luminance(colour) < 0.45 else shade(colour, -0.22)


def picture(marks: Sequence[Mark], alt: str) -> Picture:
    """A technique picture."""
    return Picture(WIDTH, HEIGHT, tuple(marks), alt)


def link(
    start: Point,
    finish: Point,
    diameter: float,
    colour: str,
    state: str = "new",
    sign: int = 0,
) -> list[Mark]:
    """A link balloon from knot to knot, with the sign of its colour."""
    length = math.dist(start, finish)
    diameter = min(diameter, length / 1.12)  # no stouter than a built link is drawn
    look = Look("link", colour, state, line=quantised_line(1.0 / diameter))
    ends = np.array(start, dtype=float), np.array(finish, dtype=float)
    return link_stamps(look, *ends, length, diameter, round(length / diameter, 2), pattern=sign)


def round_(centre: Point, knot: Point, diameter: float, colour: str, sign: int = 0) -> list[Mark]:
    """A round balloon, its knot towards `knot`, with the sign of its colour."""
    look = Look("round", colour, "new", line=quantised_line(0.9 / diameter))
    ends = np.array(knot, dtype=float), np.array(centre, dtype=float)
    return round_stamps(look, *ends, diameter, sign)


def signs(framework: Framework) -> Mapping[str, int]:
    """The sign of each balloon, as in all pictures of the piece: also in those of one of its parts,
    and of a practice piece, which use fewer of them."""
    return balloon_signs(framework, framework.balloons)


@dataclass(frozen=True)
class Strand:
    """A neck or tail: points along it, each (x, y, level). Where strands cross, the higher
    level goes over."""

    points: tuple[tuple[float, float, int], ...]
    colour: str
    width: float = 7.0


def neck_colour(colour: str) -> str:
    """A balloon's neck: thicker rubber, so a little deeper in colour."""
    return mix(colour, INK, 0.12 if luminance(colour) > 0.4 else 0.0)


def sampled(strand: Strand, steps: int = 8) -> list[tuple[float, float, int]]:
    """The strand as a dense line (Catmull-Rom), each point with its level."""
    points = strand.points
    last = len(points) - 1
    found = []
    for i in range(last):
        corners = [points[min(max(i + k, 0), last)] for k in (-1, 0, 1, 2)]
        for step in range(steps):
            t = step / steps
            x, y = (_between([float(corner[k]) for corner in corners], t) for k in (0, 1))
            found.append((x, y, points[i if t < 0.5 else i + 1][2]))
    return [*found, points[-1]]


def _between(p: Sequence[float], t: float) -> float:
    """The coordinate at the share `t` of the way from the second to the third of four points."""
    return 0.5 * (
        2 * p[1]
        + (p[2] - p[0]) * t
        + (2 * p[0] - 5 * p[1] + 4 * p[2] - p[3]) * t**2
        + (3 * p[1] - p[0] - 3 * p[2] + p[3]) * t**3
    )


def weave(strands: Sequence[Strand]) -> list[Mark]:
    """Strands drawn so that each crossing shows which of them goes over."""
    runs: list[tuple[int, list[Point], Strand]] = []
    for strand in strands:
        line = sampled(strand)
        first = 0
        for i in range(1, len(line) + 1):
            if i == len(line) or line[i][2] != line[first][2]:
                # a run reaches into its neighbours, so that no seam shows
                part = line[max(first - 2, 0) : min(i + 2, len(line))]
                runs.append((line[first][2], [(x, y) for x, y, _ in part], strand))
                first = i
    marks: list[Mark] = []
    for level, points, strand in sorted(runs, key=lambda run: run[0]):
        gap = 1.8 if level > min(run[0] for run in runs) else 0.0
        marks += rope(points, strand.width, neck_colour(strand.colour), INK, gap)
    return marks


def lip(strand: Strand) -> list[Mark]:
    """The rolled rim at a neck's free end."""
    (x0, y0, _), (x1, y1, _) = sampled(strand)[-2:]
    length = math.hypot(x1 - x0, y1 - y0) or 1.0
    nx, ny = -(y1 - y0) / length, (x1 - x0) / length
    half = strand.width / 2 + 1.8
    band = ((x1 - nx * half, y1 - ny * half), (x1 + nx * half, y1 + ny * half))
    fill = neck_colour(strand.colour)
    return [
        Polyline(band, Ink(stroke=INK, width=4.6)),
        Polyline(band, Ink(stroke=fill, width=3.0)),
    ]


def tail_end(strand: Strand) -> list[Mark]:
    """The closed, rounded tip of a tail."""
    x, y, _ = sampled(strand)[-1]
    fill = neck_colour(strand.colour)
    return [Circle((x, y), strand.width / 2 + 0.6, Ink(fill, INK, 0.9))]


def knot(at: Point, along_deg: float, colour: str, size: float = 3.2) -> list[Mark]:
    """A tied knot seen small: the ends' wrap, and two short ends that stand out of it."""
    turn = math.radians(along_deg)
    c, s = math.cos(turn), math.sin(turn)

    def at_(u: float, v: float) -> Point:
        return (at[0] + u * c - v * s, at[1] + u * s + v * c)

    fill = neck_colour(colour)
    marks: list[Mark] = []
    for side in (-1, 1):
        end = at_(side * 1.05 * size, 1.55 * size)
        marks += rope([at_(0, 0), between(at_(0, 0), end), end], size * 0.75, fill, ends=True)
    oval = [
        at_(1.15 * size * math.cos(k * math.pi / 4), 0.9 * size * math.sin(k * math.pi / 4))
        for k in range(8)
    ]
    marks.append(smooth(oval, Ink(fill, INK, 0.9), closed=True))
    marks.append(Polyline((at_(-size * 0.5, -size * 0.6), at_(size * 0.5, size * 0.6)), FINE))
    return marks


def badge(at: Point, text: str) -> list[Mark]:
    """A number in a small ring."""
    return [
        Circle(at, 7.0, Ink(PAPER, INK, 0.8)),
        Label((at[0], at[1] - TYPE * 0.36), text, TYPE, INK, bold=True),
    ]


def words(at: Point, text: str, anchor: str = "middle") -> Label:
    """A short caption inside a picture."""
    return Label(at, text, TYPE, INK, anchor=anchor, halo=PAPER)


def tick(at: Point, size: float = 5.0) -> list[Mark]:
    """A tick: right."""
    x, y = at
    line = ((x - size, y), (x - size * 0.3, y - size * 0.7), (x + size, y + size * 0.9))
    return [Polyline(line, Ink(stroke=INK, width=1.8))]


def cross(at: Point, size: float = 4.5) -> list[Mark]:
    """A cross: wrong."""
    x, y = at
    ink = Ink(stroke=INK, width=1.8)
    return [
        Polyline(((x - size, y - size), (x + size, y + size)), ink),
        Polyline(((x - size, y + size), (x + size, y - size)), ink),
    ]


def move(points: Sequence[Point]) -> list[Mark]:
    """An arrow for a hand's move, with paper left bare round it."""
    (x0, y0), (x1, y1) = points[-2:]
    length = math.hypot(x1 - x0, y1 - y0) or 1.0
    short = (x1 - (x1 - x0) / length, y1 - (y1 - y0) / length)
    bare = smooth([*points[:-1], short], Ink(stroke=PAPER, width=WAY.width + 3))
    return [bare, *arrow(points, WAY)]
