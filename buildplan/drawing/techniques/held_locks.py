"""A locked joint as the model has it: its balloons pale, the rounds of its lock where they sit,
seen from outside the piece."""

from __future__ import annotations

from dataclasses import replace

from buildplan.drawing.bodies import Scene, lock_centres, outward
from buildplan.drawing.camera import Camera, fit
from buildplan.drawing.marks import Inset, Picture, Point
from buildplan.drawing.scene import body_marks
from buildplan.drawing.techniques.props import signs
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

FLAT = 0.65  # cosine of the way between where a joint faces and where its plan is seen from


def locked_joint(
    framework: Framework,
    shape: Shape,
    joint: str,
    middle: Point,
    half: float,
    plan: Camera | None = None,
) -> Inset:
    """The joint from outside (`from_outside`) in a square about `middle`, `half` of its size to
    each side; the rounds are above and below the chain."""
    scene = Scene(
        framework,
        shape,
        done_links=frozenset(framework.links_at[joint]),
        new_locks=frozenset((joint,)),
        patterns=signs(framework),
    )
    camera, size, bodies = from_outside(framework, shape, joint, plan), 2 * half, scene.bodies
    view = fit(camera, bodies.centre, bodies.radius, size, size, margin=3.5)
    marks = tuple(body_marks(scene, view, size, size))
    drawn = Picture(size, size, marks, "", (("picture", "locked joint"), ("joint", joint)))
    return Inset(drawn, (middle[0] - half, middle[1] - half))


def from_outside(
    framework: Framework, shape: Shape, joint: str, plan: Camera | None = None
) -> Camera:
    """Straight at a locked joint from the side on which its lock sits; the two rounds lie one above
    the other, the higher on the piece above. One that lies flat on a `plan` is turned as there."""
    place = next(i for i, lock in enumerate(framework.locks) if lock.joint == joint)
    one, other = lock_centres(framework, shape)[place]
    away = outward(framework, shape)[shape.row[joint]]
    up = one - other if (one - other)[1] >= 0 else other - one
    turned = Camera(tuple(away.tolist()), tuple(up.tolist()), "outside")
    if plan is not None and abs(float(turned.axes[2] @ plan.axes[2])) > FLAT:
        return replace(turned, up=plan.up)
    return turned
