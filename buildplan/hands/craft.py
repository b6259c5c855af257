"""Every number that stands for the craft: its value, its range, where it comes from, and which
figures of a piece it moves.

The README's table is this one (`tests/hands/test_craft.py` compares them). A range holds the true
value nine times in ten.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from math import exp

from buildplan.hands.learning import SPREADS
from buildplan.hands.model import NINETY_PER_CENT
from buildplan.sequence.labour import MINUTES, PER
from buildplan.shape.constants import CONSTANTS, FROM_MEMORY
from buildplan.source.lengths import ESTIMATED_WITHIN, TIE_TO_TIE_PER_GAUGE


class Moved(StrEnum):
    """What a number can move: figures of a piece that `check` states; how hands get at it, how many
    lift it, what is cautioned of it, what holds it down, and how it goes through doors."""

    HEIGHT = "height"
    WIDTH = "width"
    DEPTH = "depth"
    WEIGHT = "weight"
    TIP = "tip"
    SAG = "sag"
    WIND = "wind"
    AIR = "air"
    PUMP = "pump"
    MINUTES = "minutes"
    REACH = "reach"
    PEOPLE = "people"
    CAUTIONS = "cautions"
    BALLAST = "ballast"
    BASE = "base"
    DOORS = "doors"
    BEGINNERS = "beginners"


@dataclass(frozen=True)
class CraftNumber:
    """A number with its unit and range, where it comes from, and what it moves."""

    name: str
    value: float
    unit: str
    low: float
    high: float
    source: str
    moves: tuple[Moved, ...]


TIE, BODY, PACE, WORK = "tie_to_tie_per_gauge", "width_per_gauge", "pace", "labour: "

_SIZE = (Moved.HEIGHT, Moved.WIDTH, Moved.DEPTH)
_WIND = (Moved.WIND, Moved.BALLAST)  # what holds a gust goes by when it tips
_SHAPE = (*_SIZE, Moved.TIP, Moved.SAG, *_WIND, Moved.REACH)
_GIVES = (Moved.HEIGHT, Moved.SAG)
_MASS = (Moved.HEIGHT, Moved.WEIGHT, Moved.TIP, Moved.SAG, *_WIND)

MOVES: Mapping[str, tuple[Moved, ...]] = {
    TIE: (*_SHAPE, Moved.WEIGHT, Moved.AIR, Moved.PUMP),
    BODY: (*_SHAPE, Moved.WEIGHT, Moved.AIR, Moved.PUMP),
    "over_pressure": _MASS,
    "air_pressure": _MASS,
    "air_density": _MASS,
    "pump_rate": (Moved.PUMP,),
    "gravity": (Moved.HEIGHT, Moved.TIP, Moved.SAG, *_WIND),
    "strut_stiffness": _SHAPE,
    "crowding_stiffness": _SHAPE,
    "crowding_ratio": _SHAPE,
    "opening_stiffness": _SHAPE,
    "overlap_stiffness": _SHAPE,
    "lock_stiffness": _GIVES,
    "forearm": (Moved.REACH,),
    "upper_arm": (Moved.REACH,),
    "lean": (Moved.REACH,),
    "clear_floor": (Moved.REACH,),
    "yielding": (Moved.REACH,),
    "stool": (Moved.REACH,),
    "hand": (Moved.CAUTIONS,),
    "reach_over": (Moved.REACH,),
    "lifted_edge": (Moved.REACH,),
    "lifter": (Moved.PEOPLE,),
    "door_room": (Moved.DOORS,),
    "first_build": (Moved.BEGINNERS,),
    "draught": (Moved.BALLAST,),
    "least_ballast": (Moved.BALLAST, Moved.BASE),
    "base_lean": (Moved.BASE,),
    "dry_sand": (Moved.BALLAST,),
    "drag": _WIND,
}


def _range(spread: float) -> float:
    """How far a factor whose logarithm has that deviation goes, nine times in ten."""
    return exp(NINETY_PER_CENT * spread)


def _of_hands() -> tuple[CraftNumber, ...]:
    """What hands make of a gauge and of a minute."""
    tie, body, pace = TIE_TO_TIE_PER_GAUGE, _range(SPREADS.body), _range(SPREADS.pace)
    off = tie * ESTIMATED_WITHIN
    return (
        CraftNumber(TIE, tie, "of the gauge", tie - off, tie + off, FROM_MEMORY, MOVES[TIE]),
        CraftNumber(BODY, 1.0, "of the gauge", 1 / body, body, FROM_MEMORY, MOVES[BODY]),
        CraftNumber(PACE, 1.0, "of all minutes", 1 / pace, pace, FROM_MEMORY, (Moved.MINUTES,)),
    )


def _minutes() -> tuple[CraftNumber, ...]:
    """What each kind of work takes."""
    off = _range(SPREADS.kind)
    return tuple(
        CraftNumber(
            f"{WORK}{kind}",
            usual,
            f"min a {PER[kind]}",
            usual / off,
            usual * off,
            FROM_MEMORY,
            (Moved.MINUTES,),
        )
        for kind, usual in MINUTES.items()
    )


CRAFT: Mapping[str, CraftNumber] = {
    one.name: one
    for one in (
        *_of_hands(),
        *(
            CraftNumber(c.name, c.value, c.unit, c.low, c.high, c.source, MOVES.get(c.name, _MASS))
            for c in CONSTANTS.values()
        ),
        *_minutes(),
    )
}
"""All of them by name: a constant's own, `labour: ` and a kind of work, or TIE, BODY or PACE."""


def kind_of_work(name: str) -> str:
    """The kind of work whose minutes a number are; empty for any other."""
    return name.removeprefix(WORK) if name.startswith(WORK) else ""
