"""Dimension lines measure the piece; the person is to scale."""

import numpy as np
import pytest
from drawn_pieces import GAUGE, LINK, straight_tube

from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.dimensions import PERSON_M, dimension_marks, dimensioned_view, person_marks
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.marks import Circle, Curve, Label, Picture, Polyline, Stamp


def dimensioned(person: str | None = "1.70 m") -> Picture:
    framework, shape = straight_tube(12)
    return dimensioned_view(
        framework,
        shape,
        CAMERAS["front"],
        400,
        260,
        across="116 in (2.96 m)",
        upright="17 in (0.43 m)",
        person=person,
    )


def arrow_tips(picture: Picture) -> np.ndarray:
    tips = [m.points[0] for m in picture.marks if isinstance(m, Polyline) and m.closed]
    return np.array(tips)


def scale_of(picture: Picture) -> float:
    """Points per metre, from the drawn balloons' own diameter."""
    link = next(m for m in picture.marks if isinstance(m, Stamp) and m.look.form == "link")
    return float(np.hypot(link.matrix[2], link.matrix[3])) / GAUGE


def test_dimension_lines_measure_the_piece() -> None:
    picture = dimensioned()
    across, upright = arrow_tips(picture).reshape(2, 2, 2)
    scale = scale_of(picture)
    # rounds of the locks stand out beyond the bodies at the tube's edges
    assert across[1][0] - across[0][0] >= scale * (12 * LINK + GAUGE) - 0.01
    assert across[1][0] - across[0][0] < scale * (12 * LINK + GAUGE + 0.05)
    assert across[0][1] == across[1][1]
    assert upright[0][0] == upright[1][0]
    assert upright[1][1] - upright[0][1] == pytest.approx(scale * (LINK + GAUGE), rel=0.2)


def test_person_is_to_scale() -> None:
    picture = dimensioned()
    figure = person_marks((0.0, 0.0), PERSON_M * scale_of(picture))
    head = figure[1]
    drawn = next(m for m in picture.marks if isinstance(m, Circle))
    assert isinstance(head, Circle)
    assert drawn.radius == pytest.approx(head.radius, rel=0.01)
    top = head.centre[1] + head.radius
    assert top == pytest.approx(PERSON_M * scale_of(picture), rel=0.001)


def test_person_stands_on_its_feet() -> None:
    body, _ = person_marks((50.0, 10.0), 100.0)
    assert isinstance(body, Curve)
    heights = [end[1] for _, _, end in body.pieces]
    assert min(heights) == pytest.approx(10, abs=1)


def test_words_stay_in_the_picture_and_apart() -> None:
    picture = dimensioned()
    boxes = [box for found in label_boxes(picture).values() for box in found]
    assert len(boxes) == 3
    for left, low, right, high in boxes:
        assert 0 <= left < right <= picture.width
        assert 0 <= low < high <= picture.height


def test_no_person_unless_asked() -> None:
    picture = dimensioned(person=None)
    assert not [m for m in picture.marks if isinstance(m, Circle)]
    assert len(label_boxes(picture)) == 2


def test_figure_stands_in_a_gap_of_its_line() -> None:
    marks = dimension_marks((0, 0), (100, 0), "2 m", 9)
    lines = [m for m in marks if isinstance(m, Polyline) and not m.closed]
    (label,) = [m for m in marks if isinstance(m, Label)]
    ends = sorted(point[0] for line in lines for point in line.points)
    picture = Picture(100, 20, (label,), "")
    left, _, right, _ = label_boxes(picture)["2 m"][0]
    assert ends[1] < left < right < ends[2]
