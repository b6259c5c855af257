"""The plan of a tube: its cells laid one after another in the middle plane, then closed.

Section k runs from the inner joint I to the outer joint O, a length `width`. A cell turns it
inward by an angle `turn` and moves its middle along the half-turned heading, slanted by `slant`:
a straight cell is a trapezoid (a square when its chains are equal), a fan an equilateral triangle,
a tip or a dip a rhombus whose angle is free. What is free is chosen so that a closed tube comes
round: its turns add up to a full one and it ends where it began, with the least change of angles.

The plane is that of complex numbers, x + iy; the course runs clockwise, outer side to its left.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, fsum

import numpy as np
import numpy.typing as npt

from buildplan.framework.chain_roles import INNER, OUTER, ChainRole, Layer
from buildplan.framework.model import Framework
from buildplan.shape.model import FloatArray
from buildplan.shape.roots import bisected

ComplexArray = npt.NDArray[np.complex128]

RHOMBUS_TURN = np.pi / 2  # a tip's or dip's angle before anything asks it to change
WIDEST_TURN, WIDEST_SLANT = np.radians(150), np.radians(60)
COMES_ROUND = 1e-12  # misses by so much of a radian, and of the plan's size
# How unwilling an angle is to change: rhombi give first, then slants, rigid cells last.
EASE_RHOMBUS, EASE_SLANT, EASE_RIGID = 1.0, 0.05, 1e-4


@dataclass(frozen=True)
class CellPlan:
    """The cells of a tube as numbers.

    `outer_m` and `inner_m` are the lengths of chain along each cell (cells,), `width_m` the
    length of a section in the plane, `turn` the angle each cell would turn by itself,
    `turn_ease` and `slant_ease` how readily its two angles change (0 is never).
    """

    outer_m: FloatArray
    inner_m: FloatArray
    width_m: float
    turn: FloatArray
    turn_ease: FloatArray
    slant_ease: FloatArray
    closed: bool


def section_size_m(framework: Framework) -> tuple[float, float]:
    """Width of a section in the middle plane, and its depth across the plane."""
    key = framework.links[-1].balloon
    for brace in framework.braces:
        for link in brace.links:
            key = framework.link[link].balloon
            break
        break
    length = framework.balloons[key].tie_to_tie_m
    by_chains = {2: (length, 0.0), 3: (length * np.sqrt(0.75), length), 4: (length, length)}
    return by_chains[len(framework.chains)]


def _sides(framework: Framework) -> dict[ChainRole, list[float]]:
    """Lengths of the links of the first outer and the first inner chain, in order."""
    found: dict[ChainRole, list[float]] = {}
    for long in framework.chains:
        found.setdefault(
            long.role,
            [
                framework.balloons[framework.link[link].balloon].tie_to_tie_m
                for link in long.chain.links
            ],
        )
    return found


def plan_of(framework: Framework) -> CellPlan:
    """The plan of a tube's framework."""
    width, _ = section_size_m(framework)
    sides = _sides(framework)
    outer_steps = np.array([cell.outer for cell in framework.cells])
    inner_steps = np.array([cell.inner for cell in framework.cells])
    outer = _along(sides[OUTER], outer_steps)
    inner = _along(sides[INNER], inner_steps)
    most = 2 * np.arcsin(np.clip((outer - inner) / (2 * width), -1, 1))
    turn = most.copy()
    # with two links or more on the longer side the chain may bulge, and the turn is free
    longer = np.where(outer > inner, outer_steps, inner_steps)
    free = (outer_steps != inner_steps) & (longer >= 2)
    turn[free] = np.sign(most[free]) * np.minimum(np.abs(most[free]), RHOMBUS_TURN)
    slanting = (outer_steps > 0) & (inner_steps > 0)
    return CellPlan(
        outer_m=outer,
        inner_m=inner,
        width_m=width,
        turn=turn,
        turn_ease=np.where(free, EASE_RHOMBUS, EASE_RIGID),
        slant_ease=np.where(slanting, EASE_SLANT, 0.0),
        closed=framework.closed,
    )


def _along(lengths: list[float], steps: npt.NDArray[np.int_]) -> FloatArray:
    reached = np.concatenate([[0.0], np.cumsum(lengths)])
    ends = np.cumsum(steps)
    return np.asarray(reached[ends] - reached[ends - steps])


def _advances(plan: CellPlan, turn: FloatArray) -> FloatArray:
    """How far the middle of the section moves in each cell.

    The side with less chain lies straight; the other's chord is longer by 2 width sin(turn / 2).
    """
    gain = plan.width_m * np.sin(turn / 2)
    bends_in = plan.outer_m >= plan.inner_m
    return np.asarray(np.where(bends_in, plan.inner_m + gain, plan.outer_m - gain))


def lay_sections(
    plan: CellPlan, turn: FloatArray, slant: FloatArray
) -> tuple[ComplexArray, FloatArray]:
    """Middle of every section and the heading there, one more than there are cells."""
    heading = np.append(0.0, -np.cumsum(turn))
    direction = np.exp(1j * (heading[:-1] - turn / 2 + slant))
    return np.append(0.0, np.cumsum(_advances(plan, turn) * direction)), heading


def close_plan(
    plan: CellPlan, turn: FloatArray, slant: FloatArray, near: float = COMES_ROUND
) -> tuple[FloatArray, FloatArray]:
    """Turns and slants, as near as may be to those given, with which a closed tube comes round, or
    misses by no more than `near`.

    Least squares of the changes, each over its ease, under three conditions (full turn, x, y):
    Gauss-Newton on the conditions. An open tube is returned as given.
    """
    if not plan.closed:
        return turn, slant
    cells = len(turn)
    # with more outer than inner chain, or as much, the outer side is outside
    outside = plan.outer_m.sum() >= plan.inner_m.sum() * (1 - 1e-9)
    full = 2 * np.pi if outside else -2 * np.pi
    wanted = np.concatenate([turn, slant])
    ease = np.concatenate([plan.turn_ease, plan.slant_ease])
    angles = wanted.copy()
    scale = float(plan.outer_m.sum() + plan.inner_m.sum()) / 4

    limit = np.repeat([WIDEST_TURN, WIDEST_SLANT], cells)
    for _ in range(60):
        miss, slopes = _misses(plan, angles[:cells], angles[cells:], full, scale)
        if np.abs(miss).max() < near:
            break
        # least |change / ease| from `wanted` that meets the conditions made linear at `angles`
        across = slopes.T @ (ease[:, None] * slopes)
        multipliers = np.linalg.lstsq(across, slopes.T @ (angles - wanted) - miss, rcond=1e-12)[0]
        move = wanted + ease * (slopes @ multipliers) - angles
        angles = angles + move * min(1.0, 0.4 / max(float(np.abs(move).max()), 1e-12))
        angles = np.clip(angles, -limit, limit)
    return angles[:cells], angles[cells:]


def _misses(
    plan: CellPlan, turn: FloatArray, slant: FloatArray, full: float, scale: float
) -> tuple[FloatArray, FloatArray]:
    """By how much a tube misses coming round (turn, x / scale, y / scale), and the derivatives of
    that by every turn and slant, (2 cells, 3)."""
    turned = np.cumsum(turn)
    direction = np.exp(1j * (slant + turn / 2 - turned))
    steps = _advances(plan, turn) * direction / scale
    reached = np.cumsum(steps)
    gap = reached[-1]
    gain = np.where(plan.outer_m >= plan.inner_m, 0.5, -0.5) * plan.width_m * np.cos(turn / 2)
    # a cell's turn lengthens it, turns it by half, and turns all that comes after it in full
    by_slant = 1j * steps
    by_turn = gain / scale * direction - 0.5 * by_slant - 1j * (gap - reached)
    slopes = np.zeros((2 * len(turn), 3))
    slopes[: len(turn), 0] = 1.0
    slopes[:, 1:] = np.concatenate([by_turn, by_slant])[:, None].view(np.float64)
    return np.array([turned[-1] - full, gap.real, gap.imag]), slopes


def bulge(start: complex, finish: complex, lengths: FloatArray, outward: int) -> ComplexArray:
    """Joints between the ends of a run of links that bows out evenly from its chord.

    `outward` is +1 to the left of the way from start to finish, -1 to the right. A chord that
    is too long is divided in proportion.
    """
    chord = abs(finish - start)
    total = float(lengths.sum())
    along = (finish - start) / chord if chord > 1e-9 * total else 1j * outward
    place = (np.cumsum(lengths) - lengths / 2) / total - 0.5
    links = tuple(zip(lengths.tolist(), place.tolist(), strict=True))

    def reach(bend: float) -> float:  # of two or three links: numpy would take longer
        return float(fsum(length * cos(bend * at) for length, at in links))

    bend = 0.0
    if chord < total * (1 - 1e-9):
        most = 2 * np.pi
        bend = bisected(lambda b: reach(b) - chord, 0.0, most) if reach(most) < chord else most
    steps = lengths * np.exp(-1j * outward * bend * place)
    across: ComplexArray = np.cumsum(steps)
    if abs(across[-1]) > 1e-9 * total:
        across = across * chord / abs(across[-1]) * np.exp(-1j * np.angle(across[-1]))
    return np.asarray(start + along * across[:-1])


def plan_positions(framework: Framework, turn: FloatArray, slant: FloatArray) -> FloatArray:
    """Position of every joint (joints, 3) when the cells are laid with these angles."""
    plan = plan_of(framework)
    width, depth = section_size_m(framework)
    middle, heading = lay_sections(plan, turn, slant)
    across = 0.5 * width * 1j * np.exp(1j * heading)
    number = framework.place_number
    positions = np.zeros((len(framework.places), 3))
    for long in framework.chains:
        outer = long.role == OUTER
        at_section = middle + (across if outer else -across)
        steps = [cell.outer if outer else cell.inner for cell in framework.cells]
        lengths = np.array(
            [
                framework.balloons[framework.link[link].balloon].tie_to_tie_m
                for link in long.chain.links
            ]
        )
        reached = 0
        places: dict[int, complex] = {}
        for k, step in enumerate(steps):
            places.setdefault(reached, complex(at_section[k]))
            if step >= 2:
                run = bulge(
                    complex(at_section[k]),
                    complex(at_section[k + 1]),
                    lengths[reached : reached + step],
                    1 if outer else -1,
                )
                places.update({reached + 1 + i: complex(point) for i, point in enumerate(run)})
            reached += step
            if not framework.closed:
                places.setdefault(reached, complex(at_section[k + 1]))
        z = {Layer.FRONT: depth / 2, Layer.BACK: -depth / 2, None: 0.0}[long.layer]
        for i, joint in enumerate(long.chain.joints):
            positions[number[joint]] = (places[i].real, places[i].imag, z)
    return positions
