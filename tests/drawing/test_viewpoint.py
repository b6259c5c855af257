"""The small block that shows from where a picture is seen."""

import pytest
from drawn_pieces import straight_tube
from shapely.geometry import MultiPoint, Polygon
from shapely.ops import unary_union

from buildplan.drawing.camera import CAMERAS, turned
from buildplan.drawing.marks import Label, Picture, Polyline
from buildplan.drawing.viewpoint import viewpoint_picture, viewpoint_words


def faces(picture: Picture) -> list[Polygon]:
    return [Polygon(mark.points) for mark in picture.marks if isinstance(mark, Polyline)]


@pytest.mark.parametrize(("across", "over"), [(30, 20), (-40, 50), (150, -30)])
def test_three_faces_fill_the_outline_without_overlap(across: float, over: float) -> None:
    _, shape = straight_tube()
    seen = faces(viewpoint_picture(shape, turned(CAMERAS["front"], across, over), 60))
    assert len(seen) == 3
    whole = unary_union(seen)
    # a box is convex: what is seen of it is the hull of its corners
    assert whole.area == pytest.approx(MultiPoint(list(whole.exterior.coords)).convex_hull.area)
    assert sum(face.area for face in seen) == pytest.approx(whole.area, rel=1e-3)


def test_the_front_is_named_when_it_is_seen() -> None:
    _, shape = straight_tube()
    for name, count in (("front", 1), ("corner", 1), ("back", 0), ("side", 0)):
        marks = viewpoint_picture(shape, CAMERAS[name], 60, front="front").marks
        assert sum(isinstance(mark, Label) for mark in marks) == count


def test_it_stays_in_its_square() -> None:
    _, shape = straight_tube()
    for face in faces(viewpoint_picture(shape, CAMERAS["corner"], 60)):
        left, low, right, high = face.bounds
        assert min(left, low) >= 1.9
        assert max(right, high) <= 58.1


@pytest.mark.parametrize(
    ("across", "over", "words"),
    [
        (0, 0, "from the front"),
        (8, -8, "from the front"),
        (-50, 0, "from the left"),
        (50, 40, "from the right and from above"),
        (0, -30, "from below"),
        (180, 0, "from the back"),
    ],
)
def test_a_view_in_words(across: float, over: float, words: str) -> None:
    assert viewpoint_words(turned(CAMERAS["front"], across, over)) == words
