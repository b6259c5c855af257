"""Plates in the corners of close-ups."""

import numpy as np
from drawn_pieces import brace_scene
from shapely.geometry import Point, box

from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.closeup import close_up
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.marks import Circle, Inset, Picture
from buildplan.drawing.panel import Panel
from buildplan.drawing.plates import corner_plate, plate_box, title_plate

BLANK = Picture(30, 20, (), "")
SIZE = (200.0, 100.0)


def test_the_freest_corner_is_taken() -> None:
    everywhere_but_one = np.array([(0, 0, 30), (200, 0, 30), (0, 100, 30)], dtype=float)
    assert corner_plate(BLANK, SIZE, everywhere_but_one, []).at == (170, 80)


def test_plates_do_not_meet() -> None:
    title = title_plate("Brace 1", SIZE)
    assert plate_box(title)[0::3] == (0.0, 100.0)
    everywhere_else = np.array([(0, 0, 30), (200, 0, 30), (200, 100, 30)], dtype=float)
    plate = corner_plate(BLANK, SIZE, everywhere_else, [title])
    assert not box(*plate_box(plate)).intersects(box(*plate_box(title)))


def test_labels_and_joints_keep_clear_of_plates() -> None:
    scene = brace_scene()
    section = scene.framework.braces[1].section
    panel = Panel(scene, CAMERAS["corner"], section)
    picture = close_up(panel, 130, 140, title="Brace 2", corner=BLANK)
    plates = [box(*plate_box(mark)) for mark in picture.marks if isinstance(mark, Inset)]
    assert len(plates) == 2
    boxes = label_boxes(picture)
    assert set(section) < set(boxes)
    dots = [mark for mark in picture.marks if isinstance(mark, Circle)]
    for plate in plates:
        for joint in section:
            assert not plate.intersects(box(*boxes[joint][0]))
        for dot in dots:
            assert not plate.intersects(Point(dot.centre).buffer(dot.radius))
