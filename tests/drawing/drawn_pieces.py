"""A straight tube laid by hand, so that its pictures can be worked out on paper."""

from __future__ import annotations

import numpy as np

from buildplan.drawing.scene import Scene
from buildplan.framework.balloon_kinds import LINK as A_LINK
from buildplan.framework.balloon_kinds import ROUND as A_ROUND
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import BalloonType, Framework
from buildplan.framework.tube import TubePlan, build_tube
from buildplan.shape.model import Shape, Standing

GAUGE = 0.2
LINK = 0.23
BALLOONS = {
    "long": BalloonType("long", A_LINK, 0.3, GAUGE, LINK, True, "#1F5F8B", "deep blue"),
    "cross": BalloonType("cross", A_LINK, 0.3, GAUGE, LINK, True, "#F7F3E8", "ivory"),
    "lock": BalloonType("lock", A_ROUND, 0.125, 0.09, 0.09, True, "#F7F3E8", "ivory"),
}
# chain letter: height and depth of its row, in links
ROWS = {"A": (1, 0.5), "B": (0, 0.5), "C": (0, -0.5), "D": (1, -0.5)}


def straight_tube(cells: int = 4) -> tuple[Framework, Shape]:
    """Four chains along x, braced at every joint, every link exactly its own length."""
    plan = TubePlan(
        closed=False,
        long={letter: ["long"] for letter in ROWS},
        brace="cross",
        single=None,
        lock="lock",
        course=[STRAIGHT] * cells,
    )
    framework = build_tube("test tube", BALLOONS, plan)
    positions = []
    for joint in framework.joints:
        up, deep = ROWS[joint[0]]
        positions.append((int(joint[1:]) - 1 - cells / 2, up + GAUGE / 2 / LINK, deep))
    foot = np.array([(0.0, 0.0)])
    standing = Standing(True, ("B1",), foot, np.zeros(3), 10.0)
    size = (cells * LINK + GAUGE, LINK + GAUGE, LINK + GAUGE)
    at = np.array(positions, dtype=float) * LINK
    shape = Shape(framework.joints, at, True, 1, 0, 0, True, *size, 1.0, 0, 0, standing, ())
    return framework, shape


def brace_scene(cells: int = 4, brace: int = 1) -> Scene:
    """Brace number `brace` (from 0) is new; all chains and the braces before it stand."""
    framework, shape = straight_tube(cells)
    chains = {link.id for link in framework.links if link.role == "chain"}
    before = {link for b in framework.braces[:brace] for link in b.links}
    locked = {joint for b in framework.braces[:brace] for joint in b.section}
    return Scene(
        framework,
        shape,
        new_links=frozenset(framework.braces[brace].links),
        done_links=frozenset(chains | before),
        done_locks=frozenset(locked),
    )
