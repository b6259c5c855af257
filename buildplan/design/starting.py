"""The first file of a design: from a few wishes to a commented file that passes the check.

How large a piece comes out is told by lines fitted to solved shapes of the program's own (the
stars, frames, rings and arches that it writes, in tie-to-tie lengths): good enough to choose a
number of cells by. What the piece then measures, `buildplan check` says.
"""

from __future__ import annotations

import json
import math
import re
import unicodedata
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from buildplan.design.lengths import TIE_TO_TIE_PER_GAUGE
from buildplan.design.measures import Units

# Names to choose colours by; the hexadecimal values are our own.
COLOURS: Mapping[str, str] = MappingProxyType(
    {
        "ivory": "#F7F3E8",
        "white": "#FFFFFF",
        "cream": "#F3E9CF",
        "gold": "#C9A227",
        "orange": "#E07B27",
        "red": "#B3262E",
        "pink": "#E39AB4",
        "purple": "#6B4A86",
        "deep blue": "#1F5F8B",
        "sky blue": "#7FB7DA",
        "leaf green": "#3F7F4C",
        "grey": "#8C9196",
        "black": "#1A1A1A",
    }
)
# Link balloons and rounds by the size printed on their bags, and what a round of a lock is
# sized to (common practice, no source): inches, centimetres.
LINK_SIZES: Mapping[Units, tuple[float, ...]] = {"in": (6, 12), "cm": (15, 30)}
LOCK: Mapping[Units, tuple[float, float]] = {"in": (5, 3.5), "cm": (12, 9)}
USUAL_GAUGE: Mapping[Units, float] = {"in": 8, "cm": 20}
# A lock's round over the gauge of the links that it holds.
LOCK_PER_GAUGE = 3.5 / 8
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


@dataclass(frozen=True)
class Wish:
    """What a designer starts from. `size` is the width of the piece (of an arch: its height) and
    `gauge` what the links are sized to, in `units`; `points` are those of a star. `colours` name
    those of the long chains, the braces and the locks: names of COLOURS, or # and six hex
    digits. `size` and `gauge` may be None for the usual."""

    name: str
    piece: str
    units: Units = "in"
    points: int = 5
    size: float | None = None
    gauge: float | None = None
    colours: tuple[str, ...] = ("deep blue", "ivory", "ivory")


@dataclass(frozen=True)
class Plan:
    """A course in words of the file: whether it closes, its lines, the inner chains' gauge where
    it is their own, and the joints of the foot where they have to be named."""

    closed: bool
    course: tuple[str, ...]
    inner_gauge: float | None = None
    stand_on: tuple[str, ...] = ()


def design_text(wish: Wish) -> str:
    """The file that `wish` asks for. Raises ValueError, with a sentence that says what can be
    had, when it asks for something else."""
    if wish.piece not in PIECES:
        raise ValueError(f"there is no {wish.piece} to start from: {', '.join(PIECES)}")
    if not wish.name.strip() or len(wish.name) > 80 or not wish.name.isprintable():
        raise ValueError("a name is one line of 1 to 80 characters")
    gauge = USUAL_GAUGE[wish.units] if wish.gauge is None else wish.gauge
    nominal = _nominal(gauge, wish.units)
    link = gauge * TIE_TO_TIE_PER_GAUGE
    if wish.size is not None and not 0 < wish.size < math.inf:
        raise ValueError("a size is a number more than 0")
    plan = PIECES[wish.piece](wish, None if wish.size is None else wish.size / link)
    long, cross, lock = (_colour(name) for name in _three(wish.colours))
    lock_nominal, lock_gauge = LOCK[wish.units]
    if gauge != USUAL_GAUGE[wish.units]:
        lock_gauge = min(lock_nominal, _to_gauge(gauge * LOCK_PER_GAUGE, wish.units))

    def balloon(kind: str, size: float, to: float, colour: tuple[str, str]) -> str:
        return (
            f"{{kind: {kind}, nominal: {size:g}, inflate_to: {to:g}, "
            f"colour: {json.dumps(colour[1])}, label: {json.dumps(colour[0])}}}"
        )

    balloons = [f"  long:  {balloon('link', nominal, gauge, long)}"]
    if plan.inner_gauge is not None:
        balloons.append("  # sized smaller, so that straight cells bend into a round course")
        balloons.append(f"  inner: {balloon('link', nominal, plan.inner_gauge, long)}")
    balloons.append(f"  cross: {balloon('link', nominal, gauge, cross)}")
    balloons.append(f"  lock:  {balloon('round', lock_nominal, lock_gauge, lock)}")
    chains = "{A: long, B: inner, C: inner, D: long}" if plan.inner_gauge is not None else "long"
    closes = "the chains are tied into rings" if plan.closed else "the chains stay open"
    stand_on = (
        f"\n# The joints that it stands on: the ends of its chains.\n"
        f"stand_on: [{', '.join(plan.stand_on)}]\n"
        if plan.stand_on
        else ""
    )
    return (
        f"# {wish.name}: {_article(wish.piece)}, begun with buildplan new. Change what you like, "
        "and see what it does:\n"
        "# buildplan check --watch THIS_FILE\n"
        "buildplan: 1\n"
        f"name: {json.dumps(wish.name, ensure_ascii=False)}\n"
        f"units: {wish.units}           # of every length below\n"
        "\n"
        "# One entry for each kind of balloon; the rest of the file calls them by these keys.\n"
        "# nominal is printed on the bag, inflate_to is the gauge that it is sized against.\n"
        "balloons:\n" + "\n".join(balloons) + "\n"
        "\n"
        "build:\n"
        "  tube:\n"
        f"    closed: {'true' if plan.closed else 'false'}    # {closes}\n"
        "    chains: 4       # A outer front, B inner front, C inner back, D outer back\n"
        f"    long: {chains}\n"
        "    brace: cross    # tied across the long chains, holding them apart\n"
        "    single: cross   # ties joints that no brace reaches, front to back\n"
        "    lock: lock      # a pair of rounds at every joint\n"
        "    # Cells between neighbouring braces: straight goes on, fan turns inward by about 60\n"
        "    # degrees, tip is a sharp corner on the outside, dip a sharp notch on the inside.\n"
        "    course:\n" + "".join(f"      {line}\n" for line in plan.course) + stand_on + "\n"
        "# All that follows can be left out: take away the # before what you want.\n"
        "# crew: 2                    # how many people build it\n"
        "spare: 0.05                  # extra balloons to take: 5 in a hundred\n"
        "# pack_sizes: {long: 50, cross: 50, lock: 100}\n"
        "# prices: {long: 0.00, cross: 0.00, lock: 0.00}      # what you pay for one balloon\n"
        "# currency: GBP\n"
        "# rates: {hour: 0.00, margin: 0.0}      # for buildplan quote\n"
    )


def file_stem(name: str) -> str:
    """A file's name for a piece: `Reading Star` goes into reading_star.yaml."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return "_".join(re.findall(r"[a-z0-9]+", plain)) or "design"


def _article(piece: str) -> str:
    return f"an {piece}" if piece[0] in "aeiou" else f"a {piece}"


def _nominal(gauge: float, units: Units) -> float:
    """The smallest link that is sized to `gauge`: to about two thirds of what it could be."""
    sizes = LINK_SIZES[units]
    if not sizes[0] / 3 <= gauge <= sizes[-1]:
        raise ValueError(
            f"links are sized to between {sizes[0] / 3:g} and {sizes[-1]:g} {units}, not {gauge:g}"
        )
    return next((size for size in sizes if gauge <= 0.75 * size), sizes[-1])


def _to_gauge(length: float, units: Units) -> float:
    step = GAUGE_STEP[units]
    return max(step, round(length / step) * step)


def _three(colours: tuple[str, ...]) -> tuple[str, str, str]:
    """Colours of long chains, braces and locks: what is left out is as the one before."""
    if not 1 <= len(colours) <= 3:
        raise ValueError("give one to three colours: long chains, braces, locks")
    filled = (*colours, colours[-1], colours[-1])
    return filled[0], filled[1], filled[2]


def _colour(name: str) -> tuple[str, str]:
    """A colour's label and its hexadecimal value."""
    name = name.strip()
    if re.fullmatch(r"#[0-9A-Fa-f]{6}", name):
        return name, name
    if name.lower() not in COLOURS:
        raise ValueError(
            f"there is no colour {json.dumps(name)} here: # and six hex digits, or one of "
            f"{', '.join(COLOURS)}"
        )
    return name.lower(), COLOURS[name.lower()]


# --- courses, from a size in tie-to-tie lengths --------------------------------------------


def _star(wish: Wish, size: float | None) -> Plan:
    if wish.points not in STAR_WIDTH:
        raise ValueError("a star has 4 to 8 points")
    at_none, for_each, most = STAR_WIDTH[wish.points]
    straight = _count(
        wish, size, min(3, most), range(2, most + 1), lambda cells: at_none + for_each * cells
    )
    side = f"{{repeat: {straight}, cells: [straight]}}"
    return Plan(
        True,
        (
            f"- repeat: {wish.points}        # once for each point",
            f"  cells: [{side}, tip, {side}, dip]",
        ),
    )


def _frame(wish: Wish, size: float | None) -> Plan:
    straight = _count(wish, size, 6, FRAME_STRAIGHTS, lambda cells: 2.87 + cells)
    return Plan(
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
    return Plan(True, (f"- {{repeat: {sections}, cells: [straight]}}",), gauge - smaller[sections])


def _arch(wish: Wish, size: float | None) -> Plan:
    slope = 4 if size is None else min(8, max(2, round(size / 3)))
    leg = _count(wish, size, 7, ARCH_LEGS, lambda cells: 1.74 + slope / 2 + cells)
    outer, inner = 2 * leg + 2 * slope + 3 + 1, 2 * leg + 2 * slope + 1
    up = f"- {{repeat: {leg}, cells: [straight]}}"
    over = f"- {{repeat: {slope}, cells: [straight]}}"
    return Plan(
        False,
        (f"{up}     # up one leg", "- fan", over, "- fan", over, "- fan", f"{up}     # and down"),
        stand_on=("A1", "B1", "C1", "D1", f"A{outer}", f"B{inner}", f"C{inner}", f"D{outer}"),
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
        what = "high" if wish.piece == "arch" else "wide"
        raise ValueError(
            f"{_article(wish.piece)} of these balloons can be begun about {least * link:.0f} to "
            f"{most * link:.0f} {wish.units} {what}, not {wish.size:g}; another gauge makes it "
            "smaller or larger"
        )
    return min(allowed, key=lambda count: abs(size_at(count) - wanted))


PIECES: Mapping[str, Callable[[Wish, float | None], Plan]] = MappingProxyType(
    {"star": _star, "ring": _ring, "frame": _frame, "arch": _arch}
)
