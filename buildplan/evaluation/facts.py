"""Every number that a command or a page states about a piece, worked out once.

Pages, lists and `check --json` all read these, so that they cannot disagree.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.evaluation.materials import Purchase, air_m3, needs_of, pump_minutes, purchases
from buildplan.framework.counts import balloon_counts, ring_lengths
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.sequence.labour import work_minutes
from buildplan.sequence.model import Step
from buildplan.sequence.timetable import crew_of, timetable
from buildplan.shape.holding import conditions
from buildplan.shape.model import FREE, Estimate, Examination, ExtraBrace, Holding, Shape
from buildplan.source.problems import Problem, problem_as_data


@dataclass(frozen=True)
class Facts:
    """The figures of one piece. Lengths in metres, mass in kilograms, time in minutes."""

    name: str
    units: Units
    counts: Mapping[str, int]
    joints: int
    rings: tuple[int, ...]
    chains: Mapping[str, int]
    closed: frozenset[str]
    braces: int
    singles: int
    locks: int
    pairs: int
    width_m: float
    height_m: float
    depth_m: float
    mass_kg: float
    mechanisms: int
    closes: bool
    stands: bool
    tip_angle_deg: float
    purchases: tuple[Purchase, ...]
    air_m3: float
    pump_minutes: float
    work_minutes: float
    crew_minutes: float
    crew: int
    problems: tuple[Problem, ...]
    holding: Holding = FREE

    @property
    def total(self) -> int:
        """Balloons of every kind in the piece."""
        return sum(self.counts.values())


def gather_facts(
    design: Design,
    framework: Framework,
    shape: Shape,
    examination: Examination,
    steps: tuple[Step, ...],
    problems: tuple[Problem, ...],
) -> Facts:
    """Work out every stated figure of a piece, and keep the problems that were found.

    A piece stands when its weight is over its foot, or something holds it, and it neither folds nor
    falls by itself.
    """
    air = air_m3(framework)
    crew = design.crew or 2
    minutes = {str(kind): value for kind, value in design.labour.items()}
    pairs = sum(len(long.chain.pairs) for long in framework.chains)
    pairs += sum(len(c.pairs) for brace in framework.braces for c in brace.chains)
    return Facts(
        name=framework.name,
        units=design.units,
        counts=balloon_counts(framework),
        joints=len(framework.joints),
        rings=tuple(ring_lengths(framework)),
        chains={long.letter: len(long.chain.links) for long in framework.chains},
        closed=frozenset(long.letter for long in framework.chains if long.chain.closed),
        braces=len(framework.braces),
        singles=len(framework.singles),
        locks=len(framework.locks),
        pairs=pairs,
        width_m=shape.width_m,
        height_m=shape.height_m,
        depth_m=shape.depth_m,
        mass_kg=shape.mass_kg,
        mechanisms=shape.mechanisms,
        closes=shape.closes,
        stands=shape.kept_up and not examination.problems,
        tip_angle_deg=shape.standing.tip_angle_deg,
        purchases=purchases(needs_of(design, framework)),
        air_m3=air,
        pump_minutes=pump_minutes(air, design.constants),
        work_minutes=work_minutes(steps, minutes),
        crew_minutes=timetable(steps, crew_of(crew), minutes).minutes,
        crew=crew,
        problems=problems,
        holding=shape.holding,
    )


def estimate_as_json(estimate: Estimate) -> dict[str, object]:
    """An estimate with its range, unit and the remembered constants it rests on."""
    return {
        "value": round(estimate.value, 4),
        "low": round(estimate.low, 4),
        "high": round(estimate.high, 4),
        "unit": estimate.unit,
        "rests_on": list(estimate.rests_on),
    }


def examination_as_json(
    examination: Examination, extra: ExtraBrace | None, voice: Voice
) -> dict[str, object]:
    """How the piece stands, gives and meets the wind, in SI units; `extra` is the balloon that
    would stiffen it most."""
    wind, stiffness = examination.wind, examination.stiffness
    return {
        "weight_range": estimate_as_json(examination.mass),
        "tip_angle_range": estimate_as_json(examination.tip_angle),
        "sag": estimate_as_json(examination.sag) if examination.sag else None,
        "sway": estimate_as_json(examination.sway) if examination.sway else None,
        "wind": {
            "front_area_m2": round(wind.front_area_m2, 3),
            "side_area_m2": round(wind.side_area_m2, 3),
            "tips_at": estimate_as_json(wind.tips_at),
            "gust_m_per_s": wind.gust_m_per_s,
            "ballast": estimate_as_json(wind.ballast) if wind.ballast else None,
            "reach": estimate_as_json(wind.reach) if wind.reach else None,
        },
        "stiffness": {
            "self_stresses": stiffness.self_stresses,
            "folds_crowded": stiffness.folds,
            "folds_locked": stiffness.folds_locked,
            "folds_unlocked_by_m": round(examination.folds_unlocked_m, 3),
            "softest_crowded_n_per_m": round(stiffness.crowded.stiffness_n_per_m, 3),
            "softest_locked_n_per_m": round(stiffness.locked.stiffness_n_per_m, 3),
            "gives_at": list(stiffness.locked.joints),
            "extra_brace": list(extra.joints) if extra else None,
            "extra_brace_gain": round(extra.gain, 4) if extra and extra.gain is not None else None,
        },
        "cautions": [problem_as_data(caution, voice) for caution in examination.cautions],
    }


def _held_by(holding: Holding) -> dict[str, object]:
    """What holds the piece, by the keys of the design file; lengths in metres."""
    found: dict[str, object] = {}
    if holding.base is not None:
        found["base"] = asdict(holding.base)
    named = ("pole", "hung", "tied_to_wall")
    return found | {name: True for name in named if getattr(holding, name)}


def facts_as_json(facts: Facts, voice: Voice) -> dict[str, object]:
    """The object that `check --json` prints; lengths in the file's units, weight in kg."""
    scale = METRES_PER_UNIT[facts.units]
    return {
        "name": facts.name,
        "balloons": facts.total,
        "counts": dict(facts.counts),
        "joints": facts.joints,
        "rings": list(facts.rings),
        "chains": dict(facts.chains),
        "braces": facts.braces,
        "singles": facts.singles,
        "locks": facts.locks,
        "pairs": facts.pairs,
        "size": {
            "width": round(facts.width_m / scale, 1),
            "height": round(facts.height_m / scale, 1),
            "depth": round(facts.depth_m / scale, 1),
            "unit": facts.units,
        },
        "weight": round(facts.mass_kg, 2),
        "weight_unit": "kg",
        "mechanisms": facts.mechanisms,
        "stands": facts.stands,
        "held_by": _held_by(facts.holding),
        "conditions": [voice.tell(one) for one in conditions(facts.holding, facts.units)],
        "tip_angle": round(facts.tip_angle_deg, 1),
        "closes": facts.closes,
        "minutes": round(facts.work_minutes),
        "crew": facts.crew,
        "crew_minutes": round(facts.crew_minutes),
        "air": round(facts.air_m3, 3),
        "air_unit": "m3",
        "pump_minutes": round(facts.pump_minutes, 1),
        "estimates": ["size", "weight", "tip_angle", "minutes", "air", "pump_minutes"],
        "problems": [problem_as_data(problem, voice) for problem in facts.problems],
    }
