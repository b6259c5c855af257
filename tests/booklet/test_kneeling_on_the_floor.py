"""Who kneels on maps and plans kneels on the floor: the signs over all shipped designs."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pytest
import shapely
from shapely.geometry import LineString, Point, box
from shipped import DESIGNS, SHIPPED, book_of, views_of

from buildplan.booklet.common.step_pictures import eyes_of
from buildplan.drawing.bodies import Scene
from buildplan.drawing.eye import Eye
from buildplan.drawing.kneeling_figure import BODY
from buildplan.drawing.kneeling_place import ARM_THICK, kneeler_sign
from buildplan.drawing.marks import Circle, Polyline

GALLERY = sorted(f"gallery/{path.stem}" for path in (DESIGNS / "gallery").glob("*.yaml"))
SIZES = ((108.0, 110.0), (90.0, 75.0))  # of the small maps of steps, points
# Inside the moon there is no room to kneel in: what is least in the way.
NO_FLOOR = {"gallery/evening_moon": range(29, 35)}
MET, MET_INSIDE = 0.002, 0.15  # of what a sign covers


def sign(eye: Eye) -> shapely.Geometry:
    """What a sign covers, but for the rim about it, and its arms, which reach over the work."""
    assert eye.kneeler is not None
    drawn = kneeler_sign(eye.kneeler)
    arms = ARM_THICK * eye.kneeler.scale
    lines = [
        LineString(mark.points).buffer(mark.ink.width / 2)
        for mark in drawn.picture.marks
        if isinstance(mark, Polyline) and mark.ink.stroke == BODY and mark.ink.width > arms + 1e-9
    ]
    heads = [
        Point(mark.centre).buffer(mark.radius)
        for mark in drawn.picture.marks
        if isinstance(mark, Circle)
    ]
    whole = shapely.union_all([*lines, *heads])
    return shapely.transform(whole, lambda at: at + np.array(drawn.at))


def lying(scene: Scene) -> shapely.Geometry:
    """What lies on the floor, in metres from above."""
    spots = shapely.points(scene.bodies.centre[:, :2])
    return shapely.union_all(shapely.buffer(spots, scene.bodies.radius))


def on_map(lies: shapely.Geometry, eye: Eye) -> shapely.Geometry:
    """What lies on the floor, on the same map: its scale is that of the way to the work."""
    assert eye.kneeler is not None
    assert eye.kneeling is not None
    hips, work = eye.kneeling.hips[:2], eye.kneeling.work[:2]
    at = np.array(eye.kneeler.at)
    scale = np.linalg.norm(at - eye.kneeler.work) / np.linalg.norm(hips - work)
    return shapely.transform(lies, lambda flat: (flat - hips) * scale + at)


def signs(name: str) -> Iterator[tuple[int, tuple[float, float], Scene, Eye]]:
    """Every sign of one who kneels on the small maps of a design."""
    views = views_of(name)
    for step in book_of(name).steps:
        for size in SIZES if views.of(step) else ():
            for eye in eyes_of(step, views, views.of(step), size):
                if eye.kneeling:
                    yield step.number, size, views.progress.whole(step), eye


@pytest.mark.parametrize("name", [*SHIPPED, *GALLERY])
def test_no_sign_lies_over_balloons(name: str) -> None:
    """Nobody can kneel where balloons lie: common practice, no source."""
    lies: dict[int, shapely.Geometry] = {}  # by step
    for number, size, scene, eye in signs(name):
        covered = sign(eye)
        if number not in lies:
            lies[number] = lying(scene)
        met = covered.intersection(on_map(lies[number], eye)).area / covered.area
        assert met < (MET_INSIDE if number in NO_FLOOR.get(name, ()) else MET), (number, size)
        assert box(0.0, 0.0, *size).contains(covered), (number, size)


def test_a_tube_that_closes_at_a_dip_is_closed_from_its_open_middle() -> None:
    """The words of step 31 of the star have one kneel there."""
    book = book_of("reading_star")
    number, _, scene, eye = [*signs("reading_star")][-1]
    assert "open middle" in book.told(book.steps[number - 1]).text
    assert eye.kneeling is not None
    middle = np.mean(list(scene.shape.at.values()), axis=0)
    hips, work = (np.linalg.norm(at - middle) for at in (eye.kneeling.hips, eye.kneeling.work))
    assert hips < work
