"""Setting a piece at rest on the floor, and judging it there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from buildplan.framework.model import Framework
from buildplan.framework.places import joints_named
from buildplan.shape.bodies import LinkBodies
from buildplan.shape.holding import held
from buildplan.shape.judging import problems_of
from buildplan.shape.model import FREE, FloatArray, Holding, IntArray, Shape
from buildplan.shape.placing import PlacedJoints
from buildplan.shape.posing import facing_the_viewer, of_one_hand, on_the_floor, size_m, upright
from buildplan.shape.relaxing import Relaxed
from buildplan.shape.rigidity import Rigidity, rigidity
from buildplan.shape.settings import Settings
from buildplan.shape.standing import stand
from buildplan.shape.starts import is_flat


@dataclass(frozen=True)
class AtRest:
    """A piece at rest, not set on the floor yet: however it is set down, this is worked out once.

    `two_sided` tells whether its back mirrors its front; `results` are its resting shapes, lowest
    energy first; `placed` is how the parts of an assembly were set before they were tied."""

    framework: Framework
    bodies: LinkBodies
    settings: Settings
    two_sided: bool
    results: tuple[Relaxed, ...]
    placed: PlacedJoints | None = None

    @cached_property
    def rigid(self) -> Rigidity:
        """Its mechanisms and states of self stress, as it rests."""
        return rigidity(self.bodies.ends, self.results[0].positions_m)


def feet_of(framework: Framework, placed: PlacedJoints) -> tuple[IntArray, FloatArray]:
    """The numbers of the joints on the floor, in order, and how high each lies above it."""
    height = {framework.place_number[joint]: one for joint, one in placed.feet_m.items()}
    feet = np.array(sorted(height), int)
    return feet, np.array([height[number] for number in feet])


def _levelled(framework: Framework, placed: PlacedJoints, found: Relaxed) -> FloatArray:
    """What was found, with feet of larger and of smaller balloons equally high."""
    feet, heights = feet_of(framework, placed)
    level = found.positions_m.copy()
    level[feet, 1] -= heights - heights.mean()
    return level


def set_down(
    resting: AtRest,
    *,
    stand_on: Sequence[str] = (),
    top: Sequence[str] = (),
    holding: Holding = FREE,
) -> Shape:
    """The shape of a piece at rest, set on the floor.

    `stand_on` names joints that are to be the foot; without it an open tube stands on its two ends
    and any other piece on its stablest side; a flat piece is stood up on its edge. With `top` it is
    set on the side that has those joints highest. `holding` says what holds it. What is wrong
    with the piece is in `problems`; nothing is raised. Raises KeyError for a joint in `stand_on`
    that the piece does not have.
    """
    framework, bodies, settings = resting.framework, resting.bodies, resting.settings
    stand_on, top = joints_named(framework, stand_on), joints_named(framework, top)
    best, placed = resting.results[0], resting.placed
    level = best.positions_m
    if placed is not None and not stand_on:
        level, stand_on = _levelled(framework, placed, best), tuple(placed.feet_m)
    flat = resting.two_sided or is_flat(best.positions_m)
    rotation = upright(framework, bodies, level, stand_on, flat, settings.constants, top)
    posed = facing_the_viewer(framework, best.positions_m @ rotation.T)
    positions = on_the_floor(bodies, of_one_hand(framework, posed))
    standing, mass = stand(framework, bodies, positions, settings.constants)
    holding, standing = held(standing, mass, holding)
    size = size_m(bodies, positions)
    strain = float(np.abs(bodies.strain(positions)).max(initial=0.0))
    return Shape(
        joints=framework.places,
        positions_m=positions,
        converged=best.residual_n <= settings.at_rest_n,
        iterations=best.iterations,
        residual_n=best.residual_n,
        largest_strain=strain,
        closes=strain <= settings.strain_allowed,
        width_m=float(size[0]),
        height_m=float(size[1]),
        depth_m=float(size[2]),
        mass_kg=mass,
        mechanisms=resting.rigid.mechanisms,
        self_stresses=resting.rigid.self_stresses,
        mirrored=resting.two_sided,
        standing=standing,
        problems=(placed.problems if placed else ())
        or problems_of(
            framework,
            bodies,
            resting.results,
            positions,
            standing,
            resting.two_sided,
            settings,
            holding,
        ),
        holding=holding,
        starts_cut=any(one.cut for one in resting.results),
        tied={j: framework.place_number[j] for j in framework.tie_of},
    )
