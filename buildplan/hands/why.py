"""Which numbers that stand for the craft matter most for a figure of a piece, and with what share.

The combined standard uncertainty of a figure F of independent inputs x is the root of the sum of
(dF/dx u(x))^2 (JCGM 100:2008, the GUM, 5.1.2, equation 10); a number's share is its part of that
sum. The derivatives are central differences of the whole way from the design to the figure, over a
tenth of the range; of what moves by leaps over all of it (5.1.3, note 2). Every range is as wide in
standard deviations.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from math import fsum, sqrt

from buildplan.design.model import Design
from buildplan.evaluation.evaluating import Evaluation, resting_shape
from buildplan.evaluation.materials import air_m3, pump_minutes
from buildplan.framework.model import BalloonType, Framework
from buildplan.hands.craft import BODY, CRAFT, PACE, TIE, CraftNumber, Moved, kind_of_work
from buildplan.sequence.hand_reach import hands_with
from buildplan.sequence.labour import MINUTES, work_minutes
from buildplan.sequence.model import Access
from buildplan.sequence.reach import find_reach
from buildplan.shape.bodies import bodies_of
from buildplan.shape.constants import constants_with
from buildplan.shape.examining import latex_of, tips_at_m_per_s
from buildplan.shape.model import Shape
from buildplan.shape.settling import settled

STEP = 0.1  # of half a range, either way
BY_LEAPS = (Moved.WIND, Moved.REACH)  # an outline is counted in squares; joints are counted
# within its range lies where links at a right angle begin to crowd: corners open there all at once
LEAPING = "crowding_ratio"
# of a figure: what moves it by more over a tenth of a range has the piece come to rest otherwise
A_LEAP = 0.25
LEAST_SHARE = 1e-9  # what moves a figure by less of its variance does not move it

JOINTS = "joints"

FIGURES: Mapping[Moved, str] = {
    Moved.HEIGHT: "m",
    Moved.WIDTH: "m",
    Moved.DEPTH: "m",
    Moved.WEIGHT: "kg",
    Moved.TIP: "degrees",
    Moved.SAG: "m",
    Moved.WIND: "m/s",
    Moved.REACH: JOINTS,
    Moved.AIR: "m3",
    Moved.PUMP: "min",
    Moved.MINUTES: "min",
}
"""What can be asked about, and its unit. Height is that as the piece stands; reach is how many
joints a hand does not get at as the piece lies, or stands, while it is built: it has to be lifted
or turned, somebody stands on a stool, or no way is found."""


@dataclass(frozen=True)
class Basis:
    """What a piece is worked out from: its design, its framework, minutes by kind of work."""

    design: Design
    framework: Framework
    labour: Mapping[str, float]


@dataclass(frozen=True)
class Mover:
    """A number that moves a figure: by how much when it goes up by half its range, and its share of
    the figure's variance."""

    number: CraftNumber
    moves_by: float
    share: float


@dataclass(frozen=True)
class Why:
    """A figure, how far it may be off either way, and what that rests on, the largest share first.
    Shares add up to 1; where all is known, there are none."""

    figure: Moved
    value: float
    half_range: float
    movers: tuple[Mover, ...]


Put = Callable[[float], Basis]
"""What a piece is worked out from with a number so many halves of its range above its value."""


def why(piece: Evaluation, figure: Moved) -> Why:
    """What a figure of FIGURES rests on, of a piece."""
    start = basis_of(piece)
    value = value_of(piece, start, figure)
    movers = []
    for number, put in _numbers(start, figure):
        step = 1.0 if figure in BY_LEAPS or number.name == LEAPING else STEP
        up, down = (value_of(piece, put(way), figure) for way in (step, -step))
        if step < 1.0 and abs(up - down) > A_LEAP * abs(value):
            step = 1.0
            up, down = (value_of(piece, put(way), figure) for way in (step, -step))
        movers.append(Mover(number, (up - down) / (2 * step), 0.0))
    variance = fsum(one.moves_by**2 for one in movers)
    shared = [replace(one, share=one.moves_by**2 / variance) for one in movers if variance]
    told = sorted(
        (one for one in shared if one.share > LEAST_SHARE), key=lambda one: -round(one.share, 6)
    )
    return Why(figure, value, sqrt(variance), tuple(told))


def basis_of(piece: Evaluation) -> Basis:
    """What a piece was worked out from."""
    own = {str(kind): value for kind, value in piece.design.labour.items()}
    usual = {str(kind): value for kind, value in MINUTES.items()}
    return Basis(piece.design, piece.framework, usual | own)


def value_of(piece: Evaluation, given: Basis, figure: Moved) -> float:
    """A figure, in its unit of FIGURES, of a piece worked out from what is given; in the steps of
    `piece`, which stay."""
    match figure:
        case Moved.MINUTES:
            return work_minutes(piece.steps, given.labour)
        case Moved.AIR:
            return air_m3(given.framework)
        case Moved.PUMP:
            return pump_minutes(air_m3(given.framework), given.design.constants)
    shape = resting_shape(given.design, given.framework)
    match figure:
        case Moved.WIDTH:
            return shape.width_m
        case Moved.DEPTH:
            return shape.depth_m
        case Moved.WEIGHT:
            return shape.mass_kg
        case Moved.TIP:
            return shape.standing.tip_angle_deg
        case Moved.SAG:
            return _sag_m(given, shape)
        case Moved.WIND:
            table = constants_with(given.design.constants)
            return tips_at_m_per_s(given.framework, shape, table)
        case Moved.REACH:
            hands = hands_with(constants_with(given.design.constants))
            ways = find_reach(given.framework, shape, hands).ways
            return float(sum(way is not Access.DIRECT for way in ways.values()))
    return shape.height_m - min(_sag_m(given, shape), shape.height_m / 4)


def _sag_m(given: Basis, shape: Shape) -> float:
    table = constants_with(given.design.constants)
    bodies = bodies_of(given.framework)
    fallen = shape.height_m
    sag, _ = settled(given.framework, bodies, shape, table, table) or (fallen, fallen)
    return 0.0 if shape.holding.fixed and sag == fallen else sag


def _numbers(start: Basis, figure: Moved) -> Iterator[tuple[CraftNumber, Put]]:
    """The numbers that can move a figure and are not known for this design, with its own ranges."""
    table = constants_with(start.design.constants)
    latex = latex_of(start.framework, table)
    within = max(balloon.tie_within for balloon in start.framework.balloons.values())
    for name, number in CRAFT.items():
        if figure not in number.moves:
            continue
        work = kind_of_work(name)
        if name in table:
            one = table[name]
            if one.high > one.low and (one.latex_of is None or name in latex):
                own = replace(
                    number, value=one.value, low=one.low, high=one.high, source=one.source
                )
                yield own, partial(_with_constant, start, own)
        elif name == TIE and within:
            off = number.value * within
            own = replace(number, low=number.value - off, high=number.value + off)
            yield own, partial(_with_ties, start)
        elif name == BODY:
            yield number, partial(_with_bodies, start, half_of(number))
        elif name == PACE or (work and work not in map(str, start.design.labour)):
            yield number, partial(_with_minutes, start, number)


def half_of(number: CraftNumber) -> float:
    """Half the range of a number."""
    return (number.high - number.low) / 2


def _with_constant(start: Basis, number: CraftNumber, step: float) -> Basis:
    value = min(max(number.value + step * half_of(number), number.low), number.high)
    constants = {**start.design.constants, number.name: value}
    return replace(start, design=start.design.model_copy(update={"constants": constants}))


def _with_ties(start: Basis, step: float) -> Basis:
    def longer(balloon: BalloonType) -> BalloonType:
        return replace(balloon, tie_to_tie_m=balloon.tie_to_tie_m * (1 + step * balloon.tie_within))

    return replace(start, framework=_with_balloons(start.framework, longer))


def _with_bodies(start: Basis, half: float, step: float) -> Basis:
    def thicker(balloon: BalloonType) -> BalloonType:
        return replace(balloon, gauge_m=balloon.gauge_m * (1 + step * half))

    return replace(start, framework=_with_balloons(start.framework, thicker))


def _with_balloons(framework: Framework, change: Callable[[BalloonType], BalloonType]) -> Framework:
    """A framework, and its parts, of balloons that are changed."""
    return replace(
        framework,
        balloons={key: change(balloon) for key, balloon in framework.balloons.items()},
        parts=tuple(
            replace(part, framework=_with_balloons(part.framework, change))
            for part in framework.parts
        ),
    )


def _with_minutes(start: Basis, number: CraftNumber, step: float) -> Basis:
    """The minutes of one kind of work changed, or by the pace of all that the design does not say
    itself."""
    own, work = set(map(str, start.design.labour)), kind_of_work(number.name)
    factor = 1 + step * half_of(number) / number.value
    labour = {
        kind: minutes * factor if kind == work or (not work and kind not in own) else minutes
        for kind, minutes in start.labour.items()
    }
    return replace(start, labour=labour)
