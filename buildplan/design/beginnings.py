"""What a designer can begin with: from a size to the lines under `build` of a first file.

How large a piece comes out is told by lines fitted to solved shapes of the program's own, in
tie-to-tie lengths: good enough to choose a number of cells by. What the piece then measures,
`buildplan check` says.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from buildplan.design.measures import Units

USUAL_GAUGE: Mapping[Units, float] = {"in": 8, "cm": 20}
GAUGE_STEP: Mapping[Units, float] = {"in": 0.25, "cm": 0.5}

# Width of a star of so many points in tie-to-tie lengths, at no straight cell and for each
# straight cell on a side: fitted. Then the most straight cells with which it still held itself
# up when it was solved; the ranges below are of that kind too.
STAR_WIDTH: Mapping[int, tuple[float, float, int]] = {
    4: (3.58, 1.86, 5),
    5: (4.31, 2.92, 3),
    6: (5.12, 3.51, 2),
    7: (5.59, 3.85, 3),
    8: (5.84, 4.06, 2),
}
FRAME_STRAIGHTS = range(2, 14)
RING_SECTIONS = range(20, 51)
ARCH_LEGS = range(2, 19)
WALL_CELLS = range(3, 13)
COLUMN_RINGS = range(3, 17)
# Height of a column of six around, in tie-to-tie lengths: with no ring, and for each ring.
COLUMN_AT = (0.01, 0.861)
GLOBE_ACROSS = 3.84
# Pieces whose size is their height.
TALL = ("arch", "column")


@dataclass(frozen=True)
class Wish:
    """What a designer starts from. `size` is the width of the piece (its height, if it is one of
    TALL) and `gauge` what the links are sized to, in `units`; `points` are those of a star.
    `colours` name those of the long chains, the braces and the locks: names of COLOURS, or #
    and six hex digits. `size` and `gauge` may be None for the usual."""

    name: str
    piece: str
    units: Units = "in"
    points: int = 5
    size: float | None = None
    gauge: float | None = None
    colours: tuple[str, ...] = ("deep blue", "ivory", "ivory")


@dataclass(frozen=True)
class Plan:
    """What stands under `build` in a first file, line by line. `inner_gauge` and `cross_gauge`
    are those of the balloons inner and cross where they are their own, `stand_on` the joints
    of the foot where they have to be named."""

    build: tuple[str, ...]
    inner_gauge: float | None = None
    cross_gauge: float | None = None
    stand_on: tuple[str, ...] = ()


def _tube(
    closed: bool,
    course: tuple[str, ...],
    inner_gauge: float | None = None,
    stand_on: tuple[str, ...] = (),
) -> Plan:
    """A tube of four chains along a course."""
    closes = (
        "true     # the chains are tied into rings" if closed else "false    # the chains stay open"
    )
    long = "long" if inner_gauge is None else "{A: long, B: inner, C: inner, D: long}"
    return Plan(
        (
            "tube:",
            f"  closed: {closes}",
            "  chains: 4       # A outer front, B inner front, C inner back, D outer back",
            f"  long: {long}",
            "  brace: cross    # tied across the long chains, holding them apart",
            "  single: cross   # ties joints that no brace reaches, front to back",
            "  lock: lock      # a pair of rounds at every joint",
            "  # Cells between neighbouring braces: straight goes on, fan turns inward by about 60",
            "  # degrees, tip is a sharp corner on the outside, dip a sharp notch on the inside.",
            "  course:",
            *(f"    {line}" for line in course),
        ),
        inner_gauge,
        stand_on=stand_on,
    )


def article(piece: str) -> str:
    """`a star`, `an arch`."""
    return f"an {piece}" if piece[0] in "aeiou" else f"a {piece}"


def to_gauge(length: float, units: Units) -> float:
    """The nearest that a gauge can show."""
    step = GAUGE_STEP[units]
    return max(step, round(length / step) * step)


def _star(wish: Wish, size: float | None) -> Plan:
    if wish.points not in STAR_WIDTH:
        raise ValueError("a star has 4 to 8 points")
    at_none, for_each, most = STAR_WIDTH[wish.points]
    straight = _count(
        wish, size, min(3, most), range(2, most + 1), lambda cells: at_none + for_each * cells
    )
    side = f"{{repeat: {straight}, cells: [straight]}}"
    return _tube(
        True,
        (
            f"- repeat: {wish.points}        # once for each point",
            f"  cells: [{side}, tip, {side}, dip]",
        ),
    )


def _frame(wish: Wish, size: float | None) -> Plan:
    straight = _count(wish, size, 6, FRAME_STRAIGHTS, lambda cells: 2.87 + cells)
    return _tube(
        True,
        (
            "- repeat: 4        # once for each side, with the corner after it",
            f"  cells: [{{repeat: {straight}, cells: [straight]}}, tip]",
        ),
    )


def _ring(wish: Wish, size: float | None) -> Plan:
    gauge = USUAL_GAUGE[wish.units] if wish.gauge is None else wish.gauge
    step = GAUGE_STEP[wish.units]
    # Inner and outer chain are a brace apart, so their lengths differ by 2 pi times that. A
    # gauge has steps: a ring closes where a whole number of sections meets one of them.
    smaller = {
        round(2 * math.pi * gauge / (step * steps)): step * steps
        for steps in range(1, round(gauge / step))
    }
    sections = _count(
        wish,
        size,
        25,
        [count for count in sorted(smaller) if count in RING_SECTIONS],
        lambda count: 0.86 + count / math.pi,
    )
    return _tube(True, (f"- {{repeat: {sections}, cells: [straight]}}",), gauge - smaller[sections])


def _arch(wish: Wish, size: float | None) -> Plan:
    slope = 4 if size is None else min(8, max(2, round(size / 3)))
    leg = _count(wish, size, 7, ARCH_LEGS, lambda cells: 1.74 + slope / 2 + cells)
    outer, inner = 2 * leg + 2 * slope + 3 + 1, 2 * leg + 2 * slope + 1
    up = f"- {{repeat: {leg}, cells: [straight]}}"
    over = f"- {{repeat: {slope}, cells: [straight]}}"
    return _tube(
        False,
        (f"{up}     # up one leg", "- fan", over, "- fan", over, "- fan", f"{up}     # and down"),
        stand_on=("A1", "B1", "C1", "D1", f"A{outer}", f"B{inner}", f"C{inner}", f"D{outer}"),
    )


def _wall(wish: Wish, size: float | None) -> Plan:
    cells = _count(wish, size, 7, WALL_CELLS, lambda count: 0.87 + count)
    return Plan(
        (
            "wall:",
            f"  across: {cells}       # square cells from side to side",
            f"  up: {cells}           # and from the floor up",
            "  layers: 2",
            "  row: long       # the level rows",
            "  upright: cross",
            "  between: cross  # from the front layer to the back",
            "  lock: lock      # a pair of rounds at every joint",
            "  # What is left out, in cells; up: 0 makes a doorway of it.",
            "  # openings: [{along: 2, up: 3, wide: 3, high: 2}]",
        )
    )


def _column(wish: Wish, size: float | None) -> Plan:
    rings = _count(wish, size, 9, COLUMN_RINGS, lambda count: COLUMN_AT[0] + COLUMN_AT[1] * count)
    return Plan(
        (
            "column:",
            "  around: 6       # balloons in each ring",
            f"  rings: {rings}        # stacked, the lowest on the floor",
            "  ring: long",
            "  between: cross  # zigzags between two rings",
            "  lock: lock      # a pair of rounds at every joint",
        )
    )


def _globe(wish: Wish, size: float | None) -> Plan:
    gauge = USUAL_GAUGE[wish.units] if wish.gauge is None else wish.gauge
    _count(wish, size, 1, (1,), lambda _: GLOBE_ACROSS)
    return Plan(
        (
            "globe:           # 80 triangles",
            "  long: long",
            "  short: cross    # sized smaller, about the points where five balloons meet",
            "  lock: lock      # a pair of rounds at every joint",
        ),
        cross_gauge=to_gauge(gauge * 7 / 8, wish.units),
    )


def _count(
    wish: Wish,
    size: float | None,
    usual: int,
    allowed: Sequence[int],
    size_at: Callable[[int], float],
) -> int:
    """The number of cells, of those allowed, that makes a piece of about `size` (in tie-to-tie
    lengths, as `size_at` gives it)."""
    wanted = size_at(usual) if size is None else size
    least, most = size_at(allowed[0]), size_at(allowed[-1])
    if not 0.95 * least <= wanted <= 1.05 * most:
        link = (wish.size or 0) / wanted
        what = "high" if wish.piece in TALL else "wide"
        raise ValueError(
            f"{article(wish.piece)} of these balloons can be begun about {least * link:.0f} to "
            f"{most * link:.0f} {wish.units} {what}, not {wish.size:g}; another gauge makes it "
            "smaller or larger"
        )
    return min(allowed, key=lambda count: abs(size_at(count) - wanted))


PIECES: Mapping[str, Callable[[Wish, float | None], Plan]] = MappingProxyType(
    {
        "star": _star,
        "ring": _ring,
        "frame": _frame,
        "arch": _arch,
        "wall": _wall,
        "column": _column,
        "globe": _globe,
    }
)
