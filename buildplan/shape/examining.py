"""Examining a shape: how it gives, sags, leans and stands in wind, with ranges and advice.

Everything here rests on remembered constants; every figure is an Estimate that names them, and its
range comes from working the figure out again with the constants at their bounds.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import numpy as np

from buildplan.design.measures import Units
from buildplan.framework.model import Framework
from buildplan.shape.advice import cautions_of, problems_of
from buildplan.shape.ballasting import ballast_factor, ballast_places
from buildplan.shape.bodies import LinkBodies, bodies_of
from buildplan.shape.constants import CONSTANTS, Constant, at_bound
from buildplan.shape.holding import on_base
from buildplan.shape.leaning import leaning
from buildplan.shape.model import (
    Estimate,
    Examination,
    Shape,
    Wind,
)
from buildplan.shape.reaching import reaching_past, standing_off
from buildplan.shape.settling import SETTLING_WORK, settled
from buildplan.shape.standing import latex_kg, masses, stand
from buildplan.shape.stiffness import stiffness_of
from buildplan.shape.wind import (
    WorstWind,
    dynamic_pressure_pa,
    outline_towards,
    tip_speed_m_per_s,
    worst_wind,
)

Table = Mapping[str, Constant]

SPRINGS = ("strut_stiffness", "over_pressure", "lock_stiffness")


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
    asked how it would fall, or buckle: what settles does so in a few steps (those of `relax` at any
    work).
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
    draught, least_kg = table["draught"].value, table["least_ballast"].value
    held = base is not None and base.all_kg >= least_kg and speeds[0] >= draught
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
        least_ballast_kg=least_kg,
        draught_m_per_s=draught,
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
    # of a shape that is not at rest it is not known how far it has yet to go
    sags = _sags(framework, bodies, shape, constants, weak) if shape.converged else None
    sag, sway = sags or (None, None)
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
