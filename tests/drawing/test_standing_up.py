"""Standing a piece up, drawn from its own shape."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from drawn_pieces import straight_tube

from buildplan.drawing.ballast_bags import SAND
from buildplan.drawing.lifting_up import lifting_up_picture
from buildplan.drawing.marks import Circle, Curve, Polyline, Stamp
from buildplan.drawing.people_lifting import lifting_people, person_at_foot
from buildplan.drawing.standing_up import LIES, SEEN_FROM, STAYS, standing_up_picture
from buildplan.sequence.hand_reach import HandReach
from buildplan.sequence.reach import is_long


@pytest.mark.parametrize("people", [2, 3, 4])
def test_the_piece_the_edge_and_the_people_are_there(people: int) -> None:
    framework, shape = straight_tube()
    picture = standing_up_picture(framework, shape, 226, 172, "up", people)
    bodies = [m for m in picture.marks if isinstance(m, Stamp) and m.look.form == "link"]
    assert len(bodies) == len(framework.links)
    (edge,) = [m for m in picture.marks if isinstance(m, Polyline) and m.ink == STAYS]
    (lies,) = [m for m in picture.marks if isinstance(m, Polyline) and m.ink == LIES]
    # the edge that stays is the near side of where the piece lies
    assert set(edge.points) < set(lies.points)
    heads = [m for m in picture.marks if isinstance(m, Circle)]
    assert len(heads) == people
    for head in heads:
        assert 0 <= head.centre[0] <= picture.width
        assert 0 <= head.centre[1] <= picture.height


def test_people_are_drawn_to_the_scale_of_the_piece() -> None:
    """A head is about an eighth of a person high and somewhat less wide (from memory)."""
    framework, shape = straight_tube()
    picture = standing_up_picture(framework, shape, 226, 172, "up", 1)
    (head,) = [m for m in picture.marks if isinstance(m, Circle)]
    (lies,) = [m for m in picture.marks if isinstance(m, Polyline) and m.ink == LIES]
    wide_m = float(max(shape.positions_m[:, 0]) - min(shape.positions_m[:, 0]))
    scale = (lies.points[1][0] - lies.points[0][0]) / (wide_m * SEEN_FROM.axes[0][0])
    assert head.radius == pytest.approx(1.70 / 16 * scale, rel=0.03)


def test_people_are_spread_along_a_long_piece() -> None:
    """At its ends alone they would bend it (common practice, no source): all but the one at the
    foot stand evenly from end to end."""
    framework, shape = straight_tube()
    assert not is_long(shape, HandReach())
    long = replace(shape, width_m=5.0)
    assert is_long(long, HandReach())
    picture = lifting_up_picture(framework, long, 226, 172, "up", 5, ballast_at=shape.joints[:8])
    heads = sorted(m.centre[0] for m in picture.marks if isinstance(m, Circle))
    assert len(heads) == 5
    (edge,) = [m for m in picture.marks if isinstance(m, Polyline) and m.ink == STAYS]
    wide = abs(edge.points[1][0] - edge.points[0][0])
    assert max(heads) - min(heads) > 0.6 * wide
    bags = [m for m in picture.marks if isinstance(m, Curve) and m.ink == SAND]
    assert len({bag.start for bag in bags}) == 8, "a bag for each joint, each seen"


def test_all_hold_the_piece_and_stand_on_the_floor() -> None:
    """Both hands of each are at joints of the piece, which stands on its end, and those
    of the one who kneels at its foot."""
    _, small = straight_tube(16)
    shape = replace(small, positions_m=small.positions_m[:, [1, 0, 2]] + (0.0, 1.95, 0.0))
    for person in (*lifting_people(shape, 4), person_at_foot(shape)):
        away = np.linalg.norm(person.hands[:, None] - shape.positions_m[None], axis=2).min(axis=1)
        assert away == pytest.approx([0.0, 0.0], abs=0.05)
        assert person.floor[1] == 0.0
        assert 0.0 <= person.points[:, 1].min() < 0.05
