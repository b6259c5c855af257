"""Every number that the shape rests on and that no design file gives.

One table: name, value, unit, a range within which the true value is thought to lie, and where
it comes from. `from memory` is said where nothing better is at hand; whatever is worked out
from such a number is an estimate. A design may give its own values by name.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from buildplan.source.values import ConstantRange

FROM_MEMORY = "from memory"
OF_THE_DESIGN = "the design"


@dataclass(frozen=True)
class Constant:
    """A number with its unit, the range it may lie in, and its source. Where it is the latex in a
    balloon, `latex_of` says of what kind, and of what size printed on the bag, in inches."""

    name: str
    value: float
    unit: str
    low: float
    high: float
    source: str
    latex_of: tuple[str, float] | None = None

    @property
    def remembered(self) -> bool:
        """True when results that rest on this number are estimates."""
        return self.source.startswith(FROM_MEMORY)


def _latex(kind: str, size_in: int, value: float, low: float, high: float) -> Constant:
    name = f"{kind}_{size_in}_in_g"
    return Constant(name, value, "g", low, high, FROM_MEMORY, (kind, float(size_in)))


_TABLE = (
    # latex, by the size printed on the bag; sizes between are interpolated on log scales
    _latex("link", 6, 1.3, 1.0, 1.7),
    _latex("link", 12, 3.5, 2.8, 4.3),
    _latex("round", 5, 0.9, 0.7, 1.1),
    _latex("round", 11, 3.0, 2.5, 3.6),
    _latex("round", 16, 7.0, 5.5, 9.0),
    _latex("round", 24, 18.0, 14.0, 23.0),
    _latex("round", 36, 45.0, 35.0, 60.0),
    # the air and the place
    Constant("over_pressure", 2500.0, "Pa", 1000.0, 3500.0, FROM_MEMORY),
    Constant("air_pressure", 101325.0, "Pa", 98000.0, 104000.0, "ISA sea level, ISO 2533"),
    Constant("air_density", 1.204, "kg/m3", 1.15, 1.25, "p / (287.05 T), dry air at 20 C"),
    Constant("pump_rate", 500.0, "L/min", 250.0, 900.0, f"{FROM_MEMORY}; an electric inflator"),
    Constant("gravity", 9.80665, "m/s2", 9.78, 9.83, "standard gravity, CGPM 1901"),
    # the built link
    Constant("strut_stiffness", 1500.0, "N/m", 500.0, 4000.0, FROM_MEMORY),
    Constant("crowding_stiffness", 45.0, "N/m", 15.0, 150.0, f"{FROM_MEMORY}, a trial's fit"),
    # a hair over 1 / sqrt 2, where the midpoints of links at a right angle are
    Constant("crowding_ratio", 0.71, "of tie-to-tie", 0.70, 0.75, f"{FROM_MEMORY}, from trials"),
    Constant("opening_stiffness", 0.1, "N/m", 0.0, 0.5, FROM_MEMORY),
    Constant("overlap_stiffness", 300.0, "N/m", 100.0, 800.0, FROM_MEMORY),
    Constant(
        "lock_stiffness", 0.5, "N m/rad", 0.2, 1.5, f"{FROM_MEMORY}; between two links at a lock"
    ),
    # hands: the measures of a small adult, and what balloons allow
    Constant("forearm", 0.30, "m", 0.24, 0.36, f"{FROM_MEMORY}; from the elbow to the knuckles"),
    Constant("upper_arm", 0.32, "m", 0.28, 0.40, f"{FROM_MEMORY}; from the shoulder to the elbow"),
    Constant("lean", 0.40, "m", 0.20, 0.60, f"{FROM_MEMORY}; of a shoulder, kneeling, bent low"),
    Constant("clear_floor", 0.10, "m", 0.05, 0.20, f"{FROM_MEMORY}; about knees or feet"),
    Constant(
        "yielding", 0.8, "of their size", 0.7, 0.95, f"{FROM_MEMORY}; balloons to a pushing hand"
    ),
    Constant("stool", 0.45, "m", 0.20, 0.60, f"{FROM_MEMORY}; a step stool of two steps"),
    Constant("hand", 0.09, "m", 0.07, 0.11, f"{FROM_MEMORY}; its breadth, with a lock in it"),
    Constant("reach_over", 1.5, "m", 1.2, 1.8, f"{FROM_MEMORY}; down inside, from the floor"),
    Constant("lifted_edge", 40.0, "degrees", 25.0, 60.0, f"{FROM_MEMORY}; to reach under it"),
    Constant("lifter", 1.5, "m", 1.0, 2.0, f"{FROM_MEMORY}; of a piece, for each who lifts it"),
    Constant("door_room", 0.08, "m", 0.04, 0.12, f"{FROM_MEMORY}; on each side of what passes"),
    Constant("first_build", 2.0, "times", 1.5, 3.0, f"{FROM_MEMORY}; as long as practised hands"),
    # what holds a piece where nothing fixed does
    Constant("draught", 2.0, "m/s", 1.0, 3.0, f"{FROM_MEMORY}; indoors, from a door"),
    Constant("least_ballast", 8.0, "kg", 5.0, 15.0, f"{FROM_MEMORY}; or base, against a push"),
    Constant("base_lean", 15.0, "degrees", 10.0, 20.0, f"{FROM_MEMORY}; of a piece on its base"),
    Constant("dry_sand", 1.5, "kg/L", 1.4, 1.6, f"{FROM_MEMORY}; poured loosely"),
    # the wind
    Constant("drag", 1.2, "", 1.0, 1.4, f"{FROM_MEMORY}; infinite cylinder 1.20, flat plate 1.28"),
)

CONSTANTS: Mapping[str, Constant] = {constant.name: constant for constant in _TABLE}


def constants_with(overrides: Mapping[str, float | ConstantRange]) -> Mapping[str, Constant]:
    """The table with the values of `overrides` in place of its own.

    A value that is given alone counts as known: its range shrinks to it. Raises KeyError for a
    name that the table does not have.
    """
    table = dict(CONSTANTS)
    for name, given in overrides.items():
        value, low, high = (
            (given.value, given.low, given.high)
            if isinstance(given, ConstantRange)
            else (given, given, given)
        )
        table[name] = replace(table[name], value=value, low=low, high=high, source=OF_THE_DESIGN)
    return table


def at_bound(table: Mapping[str, Constant], names: Mapping[str, str]) -> Mapping[str, Constant]:
    """The table with each constant of `names` at its `low` or `high` bound."""
    moved = dict(table)
    for name, bound in names.items():
        constant = table[name]
        moved[name] = replace(constant, value=constant.low if bound == "low" else constant.high)
    return moved
