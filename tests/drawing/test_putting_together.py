"""What is said of parts that stand near one another: no name and no figure on another."""

from __future__ import annotations

from itertools import combinations

import pytest

from buildplan.drawing.floor_distances import distance_marks, rows_of_figures
from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Box, Label
from buildplan.drawing.putting_together import _clear, _name_box
from buildplan.drawing.taped_lines import boxes_meet

NEAR = ([60.0, 85.0, 120.0, 126.0], ["36 1/2 in", "39 3/4 in", "6 in"])
FAR = ([60.0, 160.0, 260.0], ["46 1/4 in", "46 1/4 in"])


def box_of(label: Label) -> Box:
    half = text_width(label.text, label.size) / 2
    x, y = label.at
    return (x - half, y, x + half, y + label.size)


@pytest.mark.parametrize(("feet", "apart"), [NEAR, FAR])
def test_figures_of_neighbours_do_not_lie_on_one_another(
    feet: list[float], apart: list[str]
) -> None:
    labels = [one for one in distance_marks(feet, 40.0, apart) if isinstance(one, Label)]
    assert [one.text for one in labels] == apart
    for one, start, end in zip(labels, feet, feet[1:], strict=False):
        assert one.at[0] == pytest.approx((start + end) / 2)
    assert not any(boxes_meet(box_of(one), box_of(other)) for one, other in combinations(labels, 2))


def test_a_figure_is_in_its_line_where_there_is_room() -> None:
    assert rows_of_figures(*FAR) == [0, 0]
    assert all(rows_of_figures(*NEAR))


def test_names_of_parts_do_not_lie_on_one_another() -> None:
    named = {"E.R": (100.0, 50.0), "F.L": (108.0, 50.0), "L": (300.0, 50.0)}
    found = _clear(named)
    assert found["E.R"] == named["E.R"], "the first stays"
    assert found["L"] == named["L"]
    boxes = [_name_box(*one) for one in found.items()]
    assert not any(boxes_meet(one, other) for one, other in combinations(boxes, 2))
