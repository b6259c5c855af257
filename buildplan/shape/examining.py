"""Examining a shape: how it gives, sags, leans and stands in wind, with ranges and advice.

Everything here rests on remembered constants; every figure is an Estimate that names them, and its
range comes from working the figure out again with the constants at their bounds.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import numpy as np

from buildplan.design.measures import Units
from buildplan.framework.model import Framework
from buildplan.shape.advice import FALLEN_SHARE, cautions_of, problems_of
from buildplan.shape.ballasting import ballast_factor, ballast_places
from buildplan.shape.bodies import LinkBodies, bodies_of
from buildplan.shape.constants import CONSTANTS, Constant, at_bound
from buildplan.shape.freedoms import Stiffening, pinned
from buildplan.shape.holding import ADVISED_KG, DRAUGHT_M_PER_S, on_base
from buildplan.shape.leaning import leaning
from buildplan.shape.model import (
    Estimate,
    Examination,
    FloatArray,
    Shape,
    Wind,
)
from buildplan.shape.reaching import reaching_past, standing_off
from buildplan.shape.relaxing import Relaxed, holds, relax
from buildplan.shape.standing import latex_kg, masses, stand
from buildplan.shape.stiffness import joint_masses_kg, locked, stiffness_of
from buildplan.shape.wind import (
    WorstWind,
    dynamic_pressure_pa,
    outline_towards,
    tip_speed_m_per_s,
    worst_wind,
)

Table = Mapping[str, Constant]

SPRINGS = ("strut_stiffness", "over_pressure", "lock_stiffness")
REST_SHARE = 0.002  # of what the heaviest joint carries: pushed less, a piece counts as at rest
NUDGE_M = 0.001
LINE_M = 0.01  # feet that are off a line by less lie in one
STEP_SHARE = 0.05  # of the height, that a joint moves by at most between two looks at a fall
SETTLING_WORK = 1e11  # multiplications that the factors of one search may take: 2 s or so


def settled(
    framework: Framework,
    bodies: LinkBodies,
    shape: Shape,
    found: Table,
    table: Table,
    work: float = SETTLING_WORK,
) -> tuple[float, float] | None:
    """How far the top sinks and how far it moves sideways when the piece is stood up, in m; None
    where the search for it took so much `work` (of `relax`) and had not ended.

    The piece stands with the joints of its feet held; it was built without weight, its locks keep
    the angles that it was built with. A piece that does not come to rest where a nudge
    leaves it, or that sinks by more than a quarter, has fallen: its height is returned.
    """
    positions = shape.positions_m
    number = framework.place_number
    held = np.zeros(positions.shape, bool)
    held[_held(bodies, positions, [number[joint] for joint in shape.standing.feet])] = True
    if held.all():
        return 0.0, 0.0
    top = int(np.argmax(positions[:, 1]))

    def fallen(now_m: FloatArray) -> bool:
        return float(positions[top, 1] - now_m[top, 1]) > FALLEN_SHARE * shape.height_m

    load = np.zeros_like(positions)
    weight = joint_masses_kg(framework, bodies, positions, table) * table["gravity"].value
    load[:, 1] = -weight
    stiffening = Stiffening(locked(framework, bodies, positions, found, table), pinned(held))

    def rested(start_m: FloatArray, share: float) -> Relaxed:
        return relax(
            stiffening,
            start_m,
            share * float(weight.max()),
            STEP_SHARE * shape.height_m,
            load,
            np.where(held, positions, 0.0),
            rounds=1,
            lost=fallen,
            work=work,
        )

    pushed_n = 5 * REST_SHARE * float(weight.max())  # at most, where a piece is at rest
    result = rested(positions, REST_SHARE)
    if (
        result.residual_n <= pushed_n
        and not fallen(result.positions_m)
        and not holds(stiffening, result.positions_m)
    ):
        # as even as the piece, it rests on a ridge: nudged, it finds the hollow beside, or falls
        nudge = NUDGE_M * np.random.default_rng(1).standard_normal(positions.shape)
        start_m = np.where(held, positions, result.positions_m + nudge)
        result = rested(start_m, REST_SHARE / 100)
    settled_m = result.positions_m
    if result.cut and not fallen(settled_m):
        return None
    if result.residual_n > pushed_n or fallen(settled_m) or not holds(stiffening, settled_m):
        return shape.height_m, shape.height_m
    move = settled_m - positions
    return float(-move[top, 1]), float(np.hypot(move[:, 0], move[:, 2]).max())


def _held(bodies: LinkBodies, positions_m: FloatArray, feet: Sequence[int]) -> list[int]:
    """The joints that are held while the rest settles: the feet.

    Feet that lie in one line would let the whole piece roll over that line, which is asked of by
    its tip angle and is no want of stiffness: there the balloons that meet the feet are held whole.
    """
    off = positions_m[feet] - positions_m[feet].mean(axis=0)
    if len(feet) > 2 and np.linalg.matrix_rank(off, tol=LINE_M) > 1:
        return list(feet)
    meet = np.isin(bodies.ends, feet).any(axis=1)
    return sorted({int(joint) for joint in bodies.ends[meet].ravel()} | set(feet))


def _spread(
    figures: Callable[[Table], tuple[float, ...]],
    table: Table,
    bounds: Mapping[str, str],
    units: Sequence[str],
) -> tuple[Estimate, ...]:
    """Figures, and their ranges when the constants of `bounds` go that way and the other."""
    other = {name: "high" if bound == "low" else "low" for name, bound in bounds.items()}
    cases = [figures(at_bound(table, bounds)), figures(table), figures(at_bound(table, other))]
    rests_on = tuple(name for name in bounds if table[name].remembered)
    return tuple(
        Estimate(found[1], min(found), max(found), unit, rests_on)
        for found, unit in zip(zip(*cases, strict=True), units, strict=True)
    )


def _sags(
    framework: Framework, bodies: LinkBodies, shape: Shape, table: Table, weak: Mapping[str, str]
) -> tuple[Estimate, Estimate] | None:
    """How far the top sinks and sways, and the ranges of both; `weak` are the bounds at which the
    piece gives most. None where a search for it was cut short: no other is begun then.

    From the stiffest case to the softest: where one has fallen the softer ones fall as well. What
    a wall, a pole or a line holds does not fall: it stays where it was built. So of that it is not
    asked how it would fall: what settles does so in a few steps (those of `relax` at any work).
    """
    work = 0.0 if shape.holding.fixed else SETTLING_WORK
    stiff = {name: "high" if bound == "low" else "low" for name, bound in weak.items()}
    cases: list[tuple[float, float]] = []
    fallen = (shape.height_m, shape.height_m)
    for case in (at_bound(table, stiff), table, at_bound(table, weak)):
        down = bool(cases) and cases[-1] == fallen
        found = fallen if down else settled(framework, bodies, shape, table, case, work)
        if found is None and not shape.holding.fixed:
            return None
        cases.append(found or fallen)
    if shape.holding.fixed:
        cases = [(0.0, 0.0) if case == fallen else case for case in cases]
    rests_on = tuple(name for name in weak if table[name].remembered)
    sag, sway = (
        Estimate(moved[1], min(moved), max(moved), "m", rests_on)
        for moved in zip(*cases, strict=True)
    )
    return sag, sway


def latex_of(framework: Framework, table: Table) -> tuple[str, ...]:
    """The latex masses of the table that the piece's balloons rest on."""

    def all_kg(of: Table) -> list[float]:
        return [latex_kg(balloon, of) for balloon in framework.balloons.values()]

    return tuple(
        name
        for name in CONSTANTS
        if table[name].latex_of is not None
        and all_kg(at_bound(table, {name: "high"})) != all_kg(table)
    )


def tips_at_m_per_s(framework: Framework, shape: Shape, table: Table) -> float:
    """The least gust that tips a piece, with its base, about an edge of its foot."""
    standing, base = shape.standing, shape.holding.base
    worst = worst_wind(
        bodies_of(framework),
        shape.positions_m,
        standing.foot_polygon_m,
        standing.centre_of_mass_m,
    )
    kilograms = shape.mass_kg + (0.0 if base is None else base.all_kg)
    return _tips_at(worst, table, kilograms * table["gravity"].value)


def _tips_at(worst: WorstWind, table: Table, weight_n: float) -> float:
    density, drag = table["air_density"].value, table["drag"].value
    return tip_speed_m_per_s(weight_n, worst.reach_m, density, drag, worst.moment_m3, 1.0)


def _wind(
    framework: Framework,
    bodies: LinkBodies,
    shape: Shape,
    mass: Estimate,
    table: Table,
    gust: float | None,
) -> Wind:
    positions, standing = shape.positions_m, shape.standing
    foot, centre = standing.foot_polygon_m, standing.centre_of_mass_m
    worst = worst_wind(bodies, positions, foot, centre)
    gravity = table["gravity"].value
    base = shape.holding.base
    under = 0.0 if base is None else base.all_kg
    kilograms = (mass.low + under, mass.value + under, mass.high + under)
    drags = [at_bound(table, {"drag": "high"}), table, at_bound(table, {"drag": "low"})]
    speeds = [_tips_at(worst, t, kg * gravity) for t, kg in zip(drags, kilograms, strict=True)]
    rests = (*mass.rests_on, "drag")
    # a base that holds a draught weighs the piece down by itself
    held = base is not None and base.all_kg >= ADVISED_KG and speeds[0] >= DRAUGHT_M_PER_S
    places = () if held else ballast_places(framework, shape)
    factor = ballast_factor(shape, places)
    ballast = reach = None
    if gust is not None:
        pressures = [
            dynamic_pressure_pa(gust, t["air_density"].value) * t["drag"].value
            for t in reversed(drags)
        ]
        moments = [pressure * worst.moment_m3 for pressure in pressures]
        arm = max(worst.reach_m, 1e-6)
        needed = [
            factor * max(moment / (arm * gravity) - kg, 0.0)
            for moment, kg in zip(moments, reversed(kilograms), strict=True)
        ]
        ballast = Estimate(needed[1], needed[0], needed[2], "kg", rests)
        arms = [
            moment / (kg * gravity) for moment, kg in zip(moments, reversed(kilograms), strict=True)
        ]
        reach = Estimate(arms[1], arms[0], arms[2], "m", rests)
    return Wind(
        front_area_m2=outline_towards(bodies, positions, np.pi / 2).area_m2,
        side_area_m2=outline_towards(bodies, positions, 0.0).area_m2,
        tips_at=Estimate(speeds[1], speeds[0], speeds[2], "m/s", rests),
        edge_m=worst.edge_m,
        ballast_at=places,
        ballast_factor=factor,
        standing_kg=kilograms[0],
        gust_m_per_s=gust,
        ballast=ballast,
        reach=reach,
    )


def examine(
    framework: Framework,
    shape: Shape,
    *,
    gust_m_per_s: float | None = None,
    constants: Table = CONSTANTS,
    units: Units = "cm",
) -> Examination:
    """Examine a shape that `find_shape` has set on the floor.

    `gust_m_per_s` asks for the ballast that holds that gust; `units` are those of the reader.
    Nothing is raised; advice is in `problems`.
    """
    bodies = bodies_of(framework)
    positions = shape.positions_m

    def weighed(table: Table) -> tuple[float, ...]:
        return (float(masses(framework, bodies, positions, table)[0].sum()),)

    def tipped(table: Table) -> tuple[float, ...]:
        standing, kilograms = stand(framework, bodies, positions, table)
        base = shape.holding.base
        if base is not None:
            standing = on_base(standing, kilograms, base)
        return (standing.tip_angle_deg,)

    latex = latex_of(framework, constants)
    light = dict.fromkeys(latex, "low")
    weak = dict.fromkeys(SPRINGS, "low") | dict.fromkeys(latex, "high")
    (mass,) = _spread(weighed, constants, light | {"over_pressure": "low"}, ["kg"])
    (tip,) = _spread(tipped, constants, light | {"over_pressure": "high"}, ["degrees"])
    sag, sway = _sags(framework, bodies, shape, constants, weak) or (None, None)
    found = stiffness_of(framework, bodies, shape, constants)
    wind = _wind(framework, bodies, shape, mass, constants, gust_m_per_s)
    return Examination(
        mass=mass,
        tip_angle=tip,
        sag=sag,
        sway=sway,
        stiffness=found,
        wind=wind,
        problems=(*problems_of(shape, found, sag), *leaning(framework, shape)),
        cautions=(
            *reaching_past(framework, shape, units),
            *standing_off(framework, shape, units),
            *cautions_of(shape, sag, tip, wind, units),
        ),
    )
