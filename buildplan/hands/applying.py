"""A design as these hands will build it: what was learned, where the design itself says nothing."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.model import Design
from buildplan.hands.learning import learn
from buildplan.hands.model import (
    ChainOfTen,
    Give,
    Hands,
    Measurement,
    Pace,
    RingAcross,
    Size,
    StandingHeight,
    TimedWork,
)
from buildplan.sequence.labour import MINUTES
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.examining import SPRINGS
from buildplan.source.balloons import Balloon
from buildplan.source.lengths import TIE_TO_TIE_PER_GAUGE, tie_to_tie
from buildplan.source.values import ConstantRange


def size_of(balloon: Balloon, metres_per_unit: float) -> Size:
    """The size of a balloon of a design file."""
    nominal, gauge = balloon.nominal * metres_per_unit, balloon.inflate_to * metres_per_unit
    return Size(round(nominal, 5), round(gauge, 5))


def _tied(balloon: Balloon, hands: Hands, metres_per_unit: float) -> Balloon:
    _, within = tie_to_tie(balloon)
    if not balloon.is_strut or not within or balloon.tie_to_tie is not None:
        return balloon
    factor = hands.tie(((size_of(balloon, metres_per_unit), 1),))
    length = balloon.inflate_to * TIE_TO_TIE_PER_GAUGE * factor.value
    known = {"tie_to_tie": length, "tie_to_tie_within": factor.high / factor.value - 1}
    return balloon.model_copy(update=known)


def learned_for(design: Design, measurements: Sequence[Measurement]) -> Hands:
    """What measurements say of the hands that will build this design, in all its sizes."""
    scale = METRES_PER_UNIT[design.units]
    sizes = [size_of(one, scale) for one in design.balloons.values() if one.is_strut]
    return learn(measurements, sizes)


def with_hands(design: Design, hands: Hands) -> Design:
    """The design with lengths, stiffness and minutes as learned. What the file says itself stands,
    and so does what nothing was measured of."""
    changes: dict[str, object] = {}
    kinds = {type(one) for one in hands.measurements}
    if kinds & {ChainOfTen, RingAcross, StandingHeight}:
        scale = METRES_PER_UNIT[design.units]
        changes["balloons"] = {
            key: _tied(balloon, hands, scale) for key, balloon in design.balloons.items()
        }
    if StandingHeight in kinds:
        give = hands.factor({Give(): 1.0})
        learned = {
            name: ConstantRange(
                value=CONSTANTS[name].value * give.value,
                low=CONSTANTS[name].value * give.low,
                high=CONSTANTS[name].value * give.high,
            )
            for name in SPRINGS
        }
        changes["constants"] = learned | dict(design.constants)
    if TimedWork in kinds:
        paces = {
            str(kind): MINUTES[kind] * hands.factor({Pace(): 1.0, Pace(kind): 1.0}).value
            for kind in MINUTES
        }
        changes["labour"] = paces | {str(kind): value for kind, value in design.labour.items()}
    return design.model_copy(update=changes)
