"""Stubs of chains that go on unbraced, at the joints of a close-up."""

from __future__ import annotations

from collections.abc import Mapping
from math import fsum

import numpy as np

from buildplan.drawing.bodies import Scene
from buildplan.drawing.marks import Ink, Mark, Point
from buildplan.drawing.symbols import OUTLINE_LINE
from buildplan.drawing.way_round import stub

# A stub: so much of a balloon's length, so much of its width; two at one joint stand so far apart.
STUB_LONG, STUB_WIDE, STUB_APART_DEG = 0.5, 0.6, 44.0


def stub_marks(scene: Scene, spots: Mapping[str, Point], scale: float) -> list[Mark]:
    """What comes out of joints, at `spots` on the page, of chains that go on unbraced, away from
    the work; `scale` in points per metre."""
    framework = scene.framework
    middle = (
        fsum(x for x, _ in spots.values()) / len(spots),
        fsum(y for _, y in spots.values()) / len(spots),
    )
    ink = Ink(fill="#FFFFFF", stroke=OUTLINE_LINE, width=0.7)
    marks: list[Mark] = []
    for joint, spot in spots.items():
        loose = [link for link in framework.links_at[joint] if link in scene.loose]
        run = np.array([spot[0] - middle[0], spot[1] - middle[1]])
        out = float(np.arctan2(run[1], run[0])) if np.hypot(*run) > 1e-6 else 0.0
        for number, link in enumerate(loose):
            kind = framework.balloons[framework.link[link].balloon]
            turn = np.radians(STUB_APART_DEG) * (number - (len(loose) - 1) / 2)
            away = (float(np.cos(out + turn)), float(np.sin(out + turn)))
            long = STUB_LONG * kind.tie_to_tie_m * scale
            marks.append(stub(spot, away, long, STUB_WIDE * kind.gauge_m * scale, ink))
    return marks
