"""Nothing that stands is drawn over new work."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from drawn_pieces import brace_scene
from shapely.geometry import Point

from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.closeup import close_up, uncovered
from buildplan.drawing.cutaway import CUT_LINE, GAP_PT, cut_away, silhouettes
from buildplan.drawing.framing import view_of
from buildplan.drawing.marks import Polyline
from buildplan.drawing.panel import Panel


@pytest.mark.parametrize("name", ["front", "back", "side", "top", "corner"])
def test_what_is_left_keeps_clear_of_what_is_new_behind_it(name: str) -> None:
    scene = brace_scene()
    view = view_of(scene, CAMERAS[name], 300, 300)
    bodies = scene.bodies
    outlines = silhouettes(bodies, view, [1.15] * len(bodies.names))
    _, depth = view.place(bodies.centre)
    cuts = cut_away(bodies, view, outlines, np.zeros((0, 3)))
    assert cuts
    for old, cut in cuts.items():
        assert not bodies.is_new[old]
        for new in np.flatnonzero(bodies.is_new):
            if cut.pieces and depth[new] < depth[old]:
                assert cut.whole.distance(outlines[new]) > 0.9 * GAP_PT
        assert cut.whole.area <= outlines[old].area


def test_the_cut_edge_is_dashed_and_lies_along_the_cut() -> None:
    scene = brace_scene()
    view = view_of(scene, CAMERAS["corner"], 300, 300)
    outlines = silhouettes(scene.bodies, view, [1.15] * len(scene.bodies.names))
    cuts = cut_away(scene.bodies, view, outlines, np.zeros((0, 3)))
    cut = next(cut for cut in cuts.values() if cut.pieces)
    dashed = [
        m
        for m in cut.marks("#FFFFFF", "#000000", 0.5)
        if isinstance(m, Polyline) and m.ink == CUT_LINE
    ]
    assert dashed
    new = [outlines[i] for i in np.flatnonzero(scene.bodies.is_new)]
    for line in dashed:
        for point in line.points:
            assert any(abs(Point(point).distance(one) - GAP_PT) < 0.1 for one in new)


def test_a_close_up_shows_its_new_work_whole() -> None:
    for camera in CAMERAS.values():
        found = uncovered(Panel(brace_scene(), camera, ("A2", "B2", "C2", "D2")))
        assert found.seen == pytest.approx(1)
        assert found.crossing == 0


def test_a_close_up_leaves_out_what_is_far_and_names_its_joints() -> None:
    scene = brace_scene(30, 2)
    near = close_up(Panel(scene, CAMERAS["corner"], ("A3", "B3")), 220, 220)
    whole = close_up(Panel(replace(scene), CAMERAS["corner"], scene.framework.joints), 220, 220)
    assert len(near.marks) < len(whole.marks) / 3
