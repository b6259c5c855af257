"""The cells that a course can be made of, as the eye sees them: where each leads, and the piece
of outer edge that it brings.

Each is laid from a section at the origin that heads along +x, its outer joint at +i width / 2; the
laying is that of `shape.plan`. Links of two sizes, long and short, make a straight cell a
trapezoid.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import fsum

import numpy as np

from buildplan.fitting.outline import ComplexArray
from buildplan.framework.cells import CELL_KINDS
from buildplan.shape.plan import bulge

# How far outside the line of outer joints the edge lies, in body radii: at the middle of a
# balloon, at a knot, where the brace from front to back is seen end on, and at that of a tip, where
# a single is.
EDGE_AT_BODY, EDGE_AT_KNOT, EDGE_AT_PEAK = 0.97, 1.0, 1.0
# Turns that a rhombus (tip, dip) is tried at, degrees: crowding holds it near a right angle.
RHOMBUS_TURNS_DEG = (81.0, 90.0, 99.0)
# One on a mirror axis is what gives so that the course closes, and is tried at more.
AXIS_TURNS_DEG = (54.0, 63.0, 72.0, 81.0, 90.0, 99.0, 108.0, 117.0, 126.0)
BENT_COST = 0.4  # of a rhombus that is a tenth more or less than a square
# A spur gives to what lies beside it: fans press it narrower.
SPUR_TURNS_DEG = (50.0, 70.0, 90.0)
SPUR_COST = 0.3  # of every rung


@dataclass(frozen=True)
class Sizes:
    """The links of a piece: gauges and tie-to-tie lengths, metres. Braces are long links."""

    long_gauge_m: float
    short_gauge_m: float
    long_m: float
    short_m: float

    def length_m(self, key: str) -> float:
        """Tie-to-tie length of a long (`L`) or short (`s`) link."""
        return self.long_m if key == "L" else self.short_m


@dataclass(frozen=True)
class CellShape:
    """A kind of cell: its outer and inner links, each `L` or `s`.

    `rungs` are those of a spur: balloons across it, from its base out, each between two outer
    joints that are as far from either end of the cell.
    """

    outer: str
    inner: str
    rungs: str = ""

    @property
    def item(self) -> str | list[int]:
        """The cell as a design file has it: its name, or its advances."""
        advance = (len(self.outer), len(self.inner))
        named = {kind.advances: kind.name for kind in CELL_KINDS.values()}
        return named.get(advance, list(advance))

    @property
    def cost(self) -> float:
        """What the kind costs in the search."""
        if self.rungs:
            return SPUR_COST * len(self.rungs)
        return COST[f"{self.outer}/{self.inner}"]

    @property
    def free(self) -> bool:
        """Whether its turn is free: two links or more on the one side of it."""
        return max(len(self.outer), len(self.inner)) > 1


_SIDES = (
    ("L/L", "L/s", "s/L", "s/s", "L/", "s/", "/L", "/s", "LL/", "ss/", "/LL", "/ss", "LLL/")
)  # fmt: skip
# Spurs: the outer chain runs out and back again, with rungs across. Four links with a short rung
# are a sharp point, others an arm half as wide as a tube, pointed where their links are even.
_SPURS = (("LLLL", "s"), ("LLLLL", "L"), ("LLLLLL", "Ls"), ("LLLLLLL", "LL"), ("LLLLLLLL", "LLs"))
KINDS: tuple[CellShape, ...] = (
    *(CellShape(*sides.split("/")) for sides in _SIDES),
    *(CellShape(outer, "", rungs) for outer, rungs in _SPURS),
)
# what a kind that is no spur costs in the search: plain cells are preferred when the fit is alike
COST = {
    "L/L": 0.0, "L/s": 0.2, "s/L": 0.3, "s/s": 0.4, "L/": 0.2, "s/": 0.5, "/L": 0.3, "/s": 0.6,
    "LL/": 0.3, "ss/": 0.6, "/LL": 0.4, "/ss": 0.7, "LLL/": 0.8,
}  # fmt: skip


@dataclass(frozen=True)
class Laid:
    """A kind of cell laid with a turn: where the next section is, the middle of the cell on
    its own axis, and its edge as points."""

    kind: int
    turn: float
    move: complex
    edge: ComplexArray
    crown: complex
    cost: float


def spur_joints(
    start: complex, finish: complex, lengths_m: Sequence[float], rungs_m: Sequence[float]
) -> list[complex]:
    """The joints of a spur between the two at its base; each rung keeps two of them apart."""
    across = (finish - start) / max(abs(finish - start), 1e-9)
    last = [] if len(lengths_m) % 2 == 0 else [lengths_m[len(rungs_m) + 1] / 2]
    halves = [abs(finish - start) / 2, *(rung / 2 for rung in rungs_m), *(last or [0.0])]
    rises = [
        max(link**2 - (two - one) ** 2, 0.0) ** 0.5
        for link, (one, two) in zip(lengths_m, pairwise(halves), strict=False)
    ]
    out = (start + finish) / 2 + 1j * across * np.cumsum(rises)
    sides = np.array(halves[1:]) * across
    peak = len(rises) - (0 if last else 1)
    return [*(out - sides)[:peak], *(out if not last else [])[-1:], *(out + sides)[:peak][::-1]]


def bulged_edge(
    start: complex,
    finish: complex,
    lengths_m: Sequence[float],
    radius_m: float,
    rungs_m: Sequence[float] = (),
) -> list[complex]:
    """The edge of a run of links that bows out between two outer joints, or stands out as a spur:
    the middle of each body, and the knots between them. Two links are of one length."""
    if rungs_m:
        peaks = spur_joints(start, finish, lengths_m, rungs_m)
    elif len(lengths_m) == 2:
        half = abs(finish - start) / 2
        out = 1j * (finish - start) / max(2 * half, 1e-9)
        peaks = [(start + finish) / 2 + max(lengths_m[0] ** 2 - half**2, 0.0) ** 0.5 * out]
    else:
        peaks = list(bulge(start, finish, np.array(lengths_m), 1)) if len(lengths_m) > 2 else []
    joints = [start, *peaks, finish]
    chord_out = 1j * (finish - start) / max(abs(finish - start), 1e-9)
    edge: list[complex] = []
    for one, other in pairwise(joints):
        across = 1j * (other - one) / max(abs(other - one), 1e-9)
        edge += [(one + other) / 2 + EDGE_AT_BODY * radius_m * across]
        edge += [other + EDGE_AT_PEAK * radius_m * chord_out]
    return edge[:-1]


def _lay(number: int, kind: CellShape, turn: float, sizes: Sizes, bent_cost: float) -> Laid:
    width, radius = sizes.long_m, sizes.long_gauge_m / 2
    outer = fsum(sizes.length_m(key) for key in kind.outer)
    inner = fsum(sizes.length_m(key) for key in kind.inner)
    gain = width * np.sin(turn / 2)
    advance = inner + gain if outer >= inner else outer - gain
    move = advance * np.exp(-0.5j * turn)
    up = 1j * np.exp(-0.5j * turn)  # outward on the cell's own axis
    start, finish = 0.5j * width, move + 0.5j * width * np.exp(-1j * turn)
    middle = (start + finish) / 2
    knot = EDGE_AT_KNOT * radius
    last = finish + knot * 1j * np.exp(-1j * turn)
    if len(kind.outer) == 0:
        crown = start + knot * up
        edge = [crown, last]
    elif len(kind.outer) == 1:
        crown = middle + EDGE_AT_BODY * radius * up
        edge = [start + 1j * knot, crown, last]
    else:
        lengths, rungs = (
            [sizes.length_m(key) for key in keys] for keys in (kind.outer, kind.rungs)
        )
        edge = bulged_edge(start, finish, lengths, radius, rungs)
        edge = [start + 1j * knot, *edge, last]
        crown = edge[len(edge) // 2]
    cost = kind.cost
    if kind.free and not kind.rungs:
        cost += bent_cost * abs(abs(turn) - np.pi / 2) / np.radians(9)
    return Laid(number, turn, complex(move), np.array(edge), complex(crown), cost)


def laid_cells(
    sizes: Sizes,
    rhombus_turns_deg: Sequence[float] = RHOMBUS_TURNS_DEG,
    bent_cost: float = BENT_COST,
) -> tuple[Laid, ...]:
    """Every kind of cell in every turn that it is tried at."""
    found = []
    for number, kind in enumerate(KINDS):
        outer = fsum(sizes.length_m(key) for key in kind.outer)
        inner = fsum(sizes.length_m(key) for key in kind.inner)
        if kind.free:
            most = 2 * np.arcsin(min(1.0, max(outer, inner) / (2 * sizes.long_m)) * 0.98)
            tried_deg = SPUR_TURNS_DEG if kind.rungs else rhombus_turns_deg
            turns = {min(np.radians(turn), most) for turn in tried_deg}
            signed = [np.copysign(turn, outer - inner) for turn in sorted(turns)]
        else:
            signed = [2 * np.arcsin((outer - inner) / (2 * sizes.long_m))]
        found += [_lay(number, kind, float(turn), sizes, bent_cost) for turn in signed]
    return tuple(found)
