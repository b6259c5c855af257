"""The numbers that stand for the craft: each moves what it is said to move and nothing else."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from math import sqrt
from pathlib import Path

import pytest

from buildplan.design.model import Design
from buildplan.design.reading import read_design
from buildplan.evaluation.ballast import ballast_kg, sand_l
from buildplan.evaluation.evaluating import Evaluation, evaluate
from buildplan.hands.craft import CRAFT, Moved
from buildplan.hands.why import FIGURES, Basis, basis_of, value_of, why
from buildplan.sequence.hand_reach import hands_with
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Access
from buildplan.sequence.reach import find_reach
from buildplan.shape.constants import CONSTANTS, constants_with
from buildplan.shape.examining import latex_of

ROOT = Path(__file__).parents[2]


def test_the_registry_has_every_constant_and_every_kind_of_work() -> None:
    assert set(CRAFT) >= {*CONSTANTS, *(f"labour: {kind}" for kind in MINUTES)}
    for number in CRAFT.values():
        assert number.low <= number.value <= number.high
        assert number.low < number.high
        assert number.source
        assert number.moves


@cache
def piece(name: str, *constants: tuple[str, float]) -> Evaluation:
    design = read_design(ROOT / "designs" / f"{name}.yaml")
    design = design.model_copy(update={"constants": {**design.constants, **dict(constants)}})
    return evaluate(design, design.units, 12)


LAMP = "gallery/lamp_octahedron"
SHORT_ARMS = ("upper_arm", 0.05), ("lean", 0.05)  # whoever builds it just gets at all joints


# what moves no figure is tried all at once
IDLE = [name for name in CONSTANTS if not set(FIGURES) & set(CRAFT[name].moves)]


@pytest.mark.parametrize("names", [*([name] for name in CONSTANTS if name not in IDLE), IDLE])
def test_a_constant_moves_no_figure_but_those_it_names(names: Sequence[str]) -> None:
    lamp = piece(LAMP)
    start = basis_of(lamp)
    constants = {**lamp.design.constants, **{name: CRAFT[name].high for name in names}}
    moved = replace(start, design=lamp.design.model_copy(update={"constants": constants}))
    for figure in set(FIGURES) - {one for name in names for one in CRAFT[name].moves}:
        assert value_of(lamp, moved, figure) == value_of(lamp, start, figure), figure


def test_what_holds_a_piece_down_is_reckoned_with_the_design_s_own_numbers() -> None:
    lamp = piece(LAMP)
    own = piece(LAMP, ("draught", 40.0), ("least_ballast", 11.0), ("dry_sand", 1.6))
    assert ballast_kg(own.examination) == ballast_kg(lamp.examination, 40.0) > 20
    begun = len(own.examination.wind.ballast_at) / 2
    assert 11 <= ballast_kg(own.examination, 0.1) < 11 + begun
    assert [sand_l(12.0, one.constants) for one in (lamp, own)] == [8, 8]
    assert [sand_l(24.0, one.constants) for one in (lamp, own)] == [16, 15]


def test_what_is_said_to_move_a_figure_does() -> None:
    lamp = piece(LAMP)
    latex = latex_of(lamp.framework, constants_with({}))
    # nothing touches in so small a piece but what shares a joint; nor is all work in it
    idle = {"overlap_stiffness", *(name for name in CONSTANTS if name.endswith("_in_g"))} - {*latex}
    for figure in (Moved.HEIGHT, Moved.WEIGHT, Moved.TIP, Moved.AIR, Moved.PUMP):
        found = {one.number.name for one in why(lamp, figure).movers}
        named = {name for name, one in CRAFT.items() if figure in one.moves} - idle
        # of a very stiff piece, what makes it sag moves hardly anything else
        assert named - found <= {"lock_stiffness", "air_pressure", "air_density", "gravity"}


@pytest.mark.parametrize("figure", FIGURES)
def test_shares_add_up_to_one_and_the_largest_come_first(figure: Moved) -> None:
    # usual hands get at every joint of so small a piece, whatever their measures
    found = why(piece(LAMP, *SHORT_ARMS if figure is Moved.REACH else ()), figure)
    assert sum(one.share for one in found.movers) == pytest.approx(1, abs=1e-6)
    shares = [round(one.share, 6) for one in found.movers]
    assert shares == sorted(shares, reverse=True)
    whole = sum(one.moves_by**2 for one in found.movers) ** 0.5
    assert whole == pytest.approx(found.half_range, rel=1e-6)


def by_name(name: str, figure: Moved) -> dict[str, float]:
    return {one.number.name: one.moves_by for one in why(piece(name), figure).movers}


def out_of_reach(of: Evaluation, constants: Mapping[str, float]) -> int:
    ways = find_reach(of.framework, of.shape, hands_with(constants_with(constants))).ways
    return sum(way is not Access.DIRECT for way in ways.values())


def test_joints_out_of_reach_are_counted_at_both_ends_of_a_range() -> None:
    lamp = piece(LAMP, *SHORT_ARMS)
    found = why(lamp, Moved.REACH)
    assert found.value == 0
    assert {one.number.name for one in found.movers} >= {"forearm", "clear_floor"}
    for one in found.movers:
        low, high = (
            out_of_reach(lamp, dict([*SHORT_ARMS, (one.number.name, bound)]))
            for bound in (one.number.low, one.number.high)
        )
        assert one.moves_by == (high - low) / 2
    # a longer forearm gets at more of them
    assert next(one for one in found.movers if one.number.name == "forearm").moves_by < 0


@pytest.mark.parametrize("figure", [Moved.HEIGHT, Moved.TIP, Moved.WEIGHT, Moved.WIND])
def test_slopes_are_those_of_designs_worked_out_anew(figure: Moved) -> None:
    """Against forward and backward differences of whole designs, changed as a user would change the
    file (`constants`, `tie_to_tie`), with a step five times as small; of wind, at both ends."""
    lamp, step = piece(LAMP), 1.0 if figure is Moved.WIND else 0.02

    def worked_out(design: Design) -> float:
        found = evaluate(design, design.units, 12)
        assert found.examination.sag is not None
        sag = found.examination.sag.value
        return {
            Moved.HEIGHT: found.shape.height_m - sag,
            Moved.TIP: found.facts.tip_angle_deg,
            Moved.WEIGHT: found.facts.mass_kg,
            Moved.WIND: found.examination.wind.tips_at.value,
        }[figure]

    def changed(name: str, value: float) -> Design:
        if name == "tie_to_tie_per_gauge":
            balloons = {
                key: one.model_copy(update={"tie_to_tie": one.inflate_to * value})
                if one.is_strut
                else one
                for key, one in lamp.design.balloons.items()
            }
            return lamp.design.model_copy(update={"balloons": balloons})
        return lamp.design.model_copy(update={"constants": {name: value}})

    slopes = by_name(LAMP, figure)
    largest = max(map(abs, slopes.values()))
    checked = [
        n
        for n, slope in slopes.items()
        if n in {*CONSTANTS, "tie_to_tie_per_gauge"} and abs(slope) > 0.02 * largest
    ]
    assert len(checked) >= 2
    for name in checked:
        number = CRAFT[name]
        half = (number.high - number.low) / 2
        up, down = (number.value + sign * step * half for sign in (1, -1))
        within = (min(up, number.high), max(down, number.low))
        ends = [worked_out(changed(name, value)) for value in within]
        assert slopes[name] == pytest.approx((ends[0] - ends[1]) / (2 * step), rel=0.03)


def test_shares_of_a_sum_are_those_of_the_guide() -> None:
    """JCGM 100:2008 (GUM), 5.1.3: for y = c1 x1 + c2 x2 the parts are c1 u(x1) and c2 u(x2). The
    work of a piece is such a sum, of as many of each kind as its balloons and locks ask for."""
    lamp = piece(LAMP)
    slopes = by_name(LAMP, Moved.MINUTES)
    links, locks = len(lamp.framework.links), len(lamp.framework.locks)
    for kind, count in {"size": links + 2 * locks, "lock": locks}.items():
        number = CRAFT[f"labour: {kind}"]
        assert slopes[number.name] == pytest.approx(count * (number.high - number.low) / 2)


def test_shares_of_a_product_are_those_of_the_guide() -> None:
    """JCGM 100:2008 (GUM), 5.1.6, equation 12: for y = c x1^p1 x2^p2 the relative parts are
    p u(x) / x. The pump runs for the air's volume over its rate: p is -1 for the rate, and near 1
    for lengths and 2 for widths (the rounds are a little of it)."""
    found = why(piece("reading_star"), Moved.PUMP)
    relative = {one.number.name: one.moves_by / found.value for one in found.movers}
    for name, power, within in (
        ("pump_rate", -1, 0.01),
        ("tie_to_tie_per_gauge", 1, 0.1),
        ("width_per_gauge", 2, 0.1),
    ):
        number = CRAFT[name]
        half = (number.high - number.low) / 2 / number.value
        assert relative[name] == pytest.approx(power * half, rel=within)


def test_the_gust_that_tips_goes_with_the_root_of_the_drag() -> None:
    """GUM, 5.1.3, note 2: half of f(x + u) - f(x - u), of v = sqrt(W b / (1/2 rho Cd A h)) (dynamic
    pressure, ASCE 7: q = 0.613 V^2 in N/m2)."""
    found = why(piece(LAMP), Moved.WIND)
    (drag,) = (one for one in found.movers if one.number.name == "drag")
    high, low = (sqrt(drag.number.value / bound) for bound in (drag.number.high, drag.number.low))
    assert drag.moves_by / found.value == pytest.approx((high - low) / 2)


def test_what_opens_corners_all_at_once_counts_by_both_ends_of_its_range() -> None:
    """GUM, 5.1.3, note 2: half of f(x + u) - f(x - u), where the figure is no straight line. Sides
    that meet at a right angle crowd below 1 / sqrt 2 of tie-to-tie, where their midpoints are."""
    frame = piece("picture_frame")
    found = {one.number.name: one.moves_by for one in why(frame, Moved.TIP).movers}
    low, high = (
        piece("picture_frame", ("crowding_ratio", value)).facts.tip_angle_deg
        for value in (0.70, 0.735)
    )
    assert found["crowding_ratio"] == pytest.approx((high - low) / 2, rel=0.03)
    # by the slope at its value it would be 0.5 degrees
    assert abs(found["crowding_ratio"]) < 0.1


def test_a_piece_that_comes_to_rest_otherwise_counts_by_both_ends(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """GUM, 5.1.3, note 2: a figure that leaps by 3 within a tenth of the range moves by half of
    that, not by ten times as much."""

    def leaps(piece: Evaluation, given: Basis, figure: Moved) -> float:
        rate = constants_with(given.design.constants)["pump_rate"].value
        return 7.0 if rate > CRAFT["pump_rate"].value else 4.0

    monkeypatch.setattr("buildplan.hands.why.value_of", leaps)
    (rate,) = why(piece(LAMP), Moved.PUMP).movers
    assert (rate.number.name, rate.moves_by, rate.share) == ("pump_rate", 1.5, 1.0)


def test_what_the_design_knows_moves_nothing() -> None:
    lamp = piece(LAMP)
    known: Sequence[str] = ["pump_rate"]
    constants = {name: CONSTANTS[name].value for name in known}
    balloons = {
        key: one.model_copy(update={"tie_to_tie": one.inflate_to * 1.15}) if one.is_strut else one
        for key, one in lamp.design.balloons.items()
    }
    design = lamp.design.model_copy(update={"constants": constants, "balloons": balloons})
    found = why(evaluate(design, design.units, 12), Moved.PUMP)
    assert [one.number.name for one in found.movers] == ["width_per_gauge"]
    assert found.movers[0].share == pytest.approx(1)
