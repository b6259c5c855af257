"""Existing work too small for balloons is drawn as lines."""

import numpy as np
import pytest
from drawn_pieces import GAUGE, LINK, brace_scene

from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.far_lines import THREAD_BELOW_PT
from buildplan.drawing.framing import view_of
from buildplan.drawing.marks import Polyline, Stamp
from buildplan.drawing.scene import body_marks

CELLS = 40
WIDTH = 80.0  # 40 links on 80 points: bodies of less than 2 points


def test_chains_become_lines_and_what_is_new_stays_balloons() -> None:
    scene = brace_scene(CELLS, 20)
    view = view_of(scene, CAMERAS["front"], WIDTH, 40, scene.shape.joints)
    assert GAUGE * view.scale < THREAD_BELOW_PT
    marks = body_marks(scene, view, WIDTH, 40)
    lines = [mark for mark in marks if isinstance(mark, Polyline)]
    stamps = [mark for mark in marks if isinstance(mark, Stamp)]
    assert {stamp.look.state for stamp in stamps} == {"new"}
    assert sum(stamp.look.form == "link" for stamp in stamps) == 4
    # four chains, each a rim and a filling of the balloons' own width, from end to end
    assert len(lines) == 8
    fillings = lines[4:]
    for line in fillings:
        assert line.ink.width == pytest.approx(GAUGE * view.scale, abs=0.01)
        run = np.ptp(np.array(line.points), axis=0)
        assert run[0] == pytest.approx(CELLS * LINK * view.scale, abs=0.05)


def test_larger_work_is_drawn_as_balloons() -> None:
    scene = brace_scene(6, 2)
    view = view_of(scene, CAMERAS["front"], 300, 100, scene.shape.joints)
    marks = body_marks(scene, view, 300, 100)
    assert not any(isinstance(mark, Polyline) for mark in marks)
