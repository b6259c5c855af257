"""On which side of the place where parts are tied each part's own joint is named."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import link_length_m
from buildplan.drawing.camera import PaperView
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

# A part goes up or down from a joint if its balloons there do so by this share of a link. Ours.
LEVEL = 0.15


def tied_sides(
    framework: Framework, shape: Shape, view: PaperView, joints: Sequence[str]
) -> Mapping[str, int]:
    """1 for joints whose part goes up on the page from where it is tied to another of `joints`, -1
    for those whose part goes down; nothing of the others."""
    shown = set(joints)
    upward = np.asarray(view.camera.axes[1])
    up = {joint: _along(framework, shape, upward, joint) for joint in joints}
    least = LEVEL * link_length_m(framework)
    found: dict[str, int] = {}
    for joint in joints:
        tie = framework.tie_of.get(joint)
        others = [one for one in tie.joints if one in shown and one != joint] if tie else []
        if others and all(abs(up[joint] - up[one]) > least for one in others):
            found[joint] = 1 if up[joint] > max(up[one] for one in others) else -1
    return found


def _along(framework: Framework, shape: Shape, way: FloatArray, joint: str) -> float:
    """How far along a unit vector (3,) the balloons at a joint lead, on the mean; metres."""
    links = [framework.link[link] for link in framework.links_at[joint]]
    ends = [link.finish if link.start == joint else link.start for link in links]
    if not ends:
        return 0.0
    return float((np.mean([shape.at[one] for one in ends], axis=0) - shape.at[joint]) @ way)
