"""What a designer can begin with: from a size to the lines under `build` of a first file.

How large a piece comes out is told by lines fitted to solved shapes of the program's own, in
tie-to-tie lengths: good enough to choose a number of cells by. What the piece then measures,
`buildplan check` says.
"""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from textwrap import wrap
from types import MappingProxyType

from buildplan.design.measures import Units
from buildplan.framework.naming import letters
from buildplan.language.grammar import decimal
from buildplan.language.speaking import mark, say
from buildplan.patterns.lettering import HEIGHTS, can_draw

USUAL_COLOURS = ("deep blue", "ivory", "ivory")
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
# An entrance: two columns of four around with an arch on top. Height in tie-to-tie lengths with no
# ring in the columns and for each; the rings are odd, so that the upper lies as the lowest.
ENTRANCE_RINGS = (3, 5, 7, 9)
ENTRANCE_AT = (3.03, 0.846)
ENTRANCE_LEG, ENTRANCE_SPAN = 2, 4
# Height of letters so many cells high, in tie-to-tie lengths.
SIGN_OVER = 0.83
COMMENT_WIDTH = 84
MOST_LETTERS = 12
# Pieces whose size is their height.
TALL = ("arch", "column", "entrance", "sign")


class WishError(ValueError):
    """What is wished for cannot be had; `about` is the field of the wish that is at fault."""

    def __init__(self, words: str, about: str) -> None:
        super().__init__(words)
        self.about = about


@dataclass(frozen=True)
class Wish:
    """What a designer starts from. `size` is the width of the piece (its height, if it is one of
    TALL) and `gauge` what the links are sized to, in `units`; `points` are those of a star.
    `colours` name those of the long chains, the braces and the locks: names, or #
    and six hex digits. `size` and `gauge` may be None for the usual."""

    name: str
    piece: str
    units: Units = "in"
    points: int = 5
    size: float | None = None
    gauge: float | None = None
    colours: tuple[str, ...] = USUAL_COLOURS


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
        f"true     # {say('the chains are tied into rings')}"
        if closed
        else f"false    # {say('the chains stay open')}"
    )
    chains = say("A outer front, B inner front, C inner back, D outer back")
    cells = say(
        "Cells between neighbouring braces: straight goes on, fan turns inward by about 60 "
        "degrees, tip is a sharp corner on the outside, dip a sharp notch on the inside."
    )
    long = "long" if inner_gauge is None else "{A: long, B: inner, C: inner, D: long}"
    return Plan(
        (
            "tube:",
            f"  closed: {closes}",
            f"  chains: 4       # {chains}",
            f"  long: {long}",
            f"  brace: cross    # {say('tied across the long chains, holding them apart')}",
            f"  single: cross   # {say('ties joints that no brace reaches, front to back')}",
            _lock(),
            *(f"  # {line}" for line in wrap(cells, COMMENT_WIDTH)),
            "  course:",
            *(f"    {line}" for line in course),
        ),
        inner_gauge,
        stand_on=stand_on,
    )


def _lock() -> str:
    return f"  lock: lock      # {say('a pair of rounds at every joint')}"


def a_piece(piece: str) -> str:
    """What a piece is, by its key in PIECES: `a star`, `an arch`."""
    return say(_A_PIECE[piece])


_A_PIECE: Mapping[str, str] = {
    "star": mark("a star"),
    "ring": mark("a ring"),
    "frame": mark("a frame"),
    "arch": mark("an arch"),
    "wall": mark("a wall"),
    "column": mark("a column"),
    "globe": mark("a globe"),
    "entrance": mark("an entrance"),
    "sign": mark("a sign"),
}


def to_gauge(length: float, units: Units) -> float:
    """The nearest that a gauge can show."""
    step = GAUGE_STEP[units]
    return max(step, round(length / step) * step)


def _star(wish: Wish, size: float | None) -> Plan:
    if wish.points not in STAR_WIDTH:
        raise WishError(say("a star has 4 to 8 points"), "points")
    at_none, for_each, most = STAR_WIDTH[wish.points]
    straight = _count(
        wish, size, min(3, most), range(2, most + 1), lambda cells: at_none + for_each * cells
    )
    side = f"{{repeat: {straight}, cells: [straight]}}"
    return _tube(
        True,
        (
            f"- repeat: {wish.points}        # {say('once for each point')}",
            f"  cells: [{side}, tip, {side}, dip]",
        ),
    )


def _frame(wish: Wish, size: float | None) -> Plan:
    straight = _count(wish, size, 6, FRAME_STRAIGHTS, lambda cells: 2.87 + cells)
    return _tube(
        True,
        (
            f"- repeat: 4        # {say('once for each side, with the corner after it')}",
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
    one_leg, other_leg = say("up one leg"), say("and down")
    return _tube(
        False,
        (
            f"{up}     # {one_leg}",
            "- fan",
            over,
            "- fan",
            over,
            "- fan",
            f"{up}     # {other_leg}",
        ),
        stand_on=("A1", "B1", "C1", "D1", f"A{outer}", f"B{inner}", f"C{inner}", f"D{outer}"),
    )


def _wall(wish: Wish, size: float | None) -> Plan:
    cells = _count(wish, size, 7, WALL_CELLS, lambda count: 0.87 + count)
    return Plan(
        (
            "wall:",
            f"  across: {cells}       # {say('square cells from side to side')}",
            f"  up: {cells}           # {say('and from the floor up')}",
            "  layers: 2",
            f"  row: long       # {say('the level rows')}",
            "  upright: cross",
            f"  between: cross  # {say('from the front layer to the back')}",
            _lock(),
            f"  # {say('What is left out, in cells; up: 0 makes a doorway of it.')}",
            "  # openings: [{along: 2, up: 3, wide: 3, high: 2}]",
        )
    )


def _column(wish: Wish, size: float | None) -> Plan:
    rings = _count(wish, size, 9, COLUMN_RINGS, lambda count: COLUMN_AT[0] + COLUMN_AT[1] * count)
    return Plan(
        (
            "column:",
            f"  around: 6       # {say('balloons in each ring')}",
            f"  rings: {rings}        # {say('stacked, the lowest on the floor')}",
            "  ring: long",
            f"  between: cross  # {say('zigzags between two rings')}",
            _lock(),
        )
    )


def _globe(wish: Wish, size: float | None) -> Plan:
    gauge = USUAL_GAUGE[wish.units] if wish.gauge is None else wish.gauge
    _count(wish, size, 1, (1,), lambda _: GLOBE_ACROSS)
    short = say("sized smaller, about the points where five balloons meet")
    return Plan(
        (
            f"globe:           # {say('80 triangles')}",
            "  long: long",
            f"  short: cross    # {short}",
            _lock(),
        ),
        cross_gauge=to_gauge(gauge * 7 / 8, wish.units),
    )


def _entrance(wish: Wish, size: float | None) -> Plan:
    rings = _count(
        wish, size, 5, ENTRANCE_RINGS, lambda count: ENTRANCE_AT[0] + ENTRANCE_AT[1] * count
    )
    top = letters(rings - 1)
    outer, inner = 2 * ENTRANCE_LEG + ENTRANCE_SPAN + 5, 2 * ENTRANCE_LEG + ENTRANCE_SPAN + 1
    column = f"{{column: {{around: 4, rings: {rings}, ring: long, between: cross, lock: lock}}}}"
    arch = (
        f"{{arch: {{kind: square, leg: {ENTRANCE_LEG}, span: {ENTRANCE_SPAN}, long: long, "
        "brace: cross, lock: lock}}"
    )
    feet = zip(
        ("L", "L", "L", "L", "R", "R", "R", "R"),
        (1, 4, 3, 2, 1, 2, 3, 4),
        ("A1", "B1", "C1", "D1", f"A{outer}", f"B{inner}", f"C{inner}", f"D{outer}"),
        strict=True,
    )
    return Plan(
        (
            "assembly:",
            "  parts:",
            f"    # {say('the left column, the right one, and the arch on top of them')}",
            f"    - {{name: L, build: {column}}}",
            f"    - {{name: R, build: {column}}}",
            f"    - {{name: T, build: {arch}}}",
            _lock(),
            f"  # {say('the upper ring of each column and a foot of the arch, joint by joint')}",
            "  ties:",
            *(f"    - [{part}.{top}{joint}, T.{foot}]" for part, joint, foot in feet),
        )
    )


def _sign(wish: Wish, size: float | None) -> Plan:
    plain = unicodedata.normalize("NFKD", wish.name).encode("ascii", "ignore").decode().upper()
    text = " ".join(re.findall(r"[A-Z0-9]+", plain))[:MOST_LETTERS].strip()
    if not text:
        raise WishError(say("a sign says its name, in letters from A to Z and digits"), "name")
    heights = [
        cells for cells in HEIGHTS if all(can_draw(one, cells) for one in text if one != " ")
    ]
    cells = _count(wish, size, heights[min(1, len(heights) - 1)], heights, lambda n: SIGN_OVER + n)
    return Plan(
        (
            "letters:",
            f'  text: "{text}"',
            f"  cells: {cells}        # {say('how many cells high')}",
            "  long: long",
            "  brace: cross",
            f"  bar: cross      # {say('low bars between the letters keep a word one piece')}",
            _lock(),
        )
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
        message = (
            mark(
                "{a_piece} of these balloons can be begun about {least} to {most} {units} high, "
                "not {size}; another gauge makes it smaller or larger"
            )
            if wish.piece in TALL
            else mark(
                "{a_piece} of these balloons can be begun about {least} to {most} {units} wide, "
                "not {size}; another gauge makes it smaller or larger"
            )
        )
        raise WishError(
            say(
                message,
                a_piece=a_piece(wish.piece),
                least=decimal(least * link, 0),
                most=decimal(most * link, 0),
                units=wish.units,
                size=f"{wish.size:g}",
            ),
            "size",
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
        "entrance": _entrance,
        "sign": _sign,
    }
)
