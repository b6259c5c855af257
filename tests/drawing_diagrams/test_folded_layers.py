"""The side view of two layers that are built lying: where the front chain is while one works at the
back, and then."""

from __future__ import annotations

from diagram_pieces import assert_inside, built

from buildplan.drawing.labels import label_boxes
from buildplan.drawing.techniques.folded_layers import Layers, folded_layers
from buildplan.framework.chain_roles import UPRIGHT, Layer
from buildplan.language.voice import Voice

WALL = {"row": "long", "upright": "long", "between": "cross", "lock": "lock"}


def test_the_front_chain_lies_over_the_foot_then_over_the_back() -> None:
    """The head is at the right: a folded chain is left of the joint that it begins at, the joint
    worked at right of it, and of the front one as high as the first above the back's."""
    wall = built({"wall": {**WALL, "across": 2, "up": 3, "layers": 2}})
    ups = [one for one in wall.chains if one.role == UPRIGHT]
    front = next(one for one in ups if one.layer is Layer.FRONT)
    back = next(
        one
        for one in ups
        if one.layer is Layer.BACK
        and {one.chain.joints[0], front.chain.joints[0]}
        in ({link.start, link.finish} for link in wall.links)
    )
    first = {front.chain.joints[0], back.chain.joints[0]}
    between = next(link.id for link in wall.links if {link.start, link.finish} == first)
    picture = folded_layers(wall, Voice(), Layers(back, front, between))
    assert_inside(picture)
    boxes = label_boxes(picture)
    half = picture.width / 2
    for joint in first:
        assert sorted(box[0] > half for box in boxes[joint]) == [False, True]
    (at_back,), (at_front,) = boxes[back.chain.joints[1]], boxes[front.chain.joints[1]]
    assert at_back[0] < half < at_front[0]
    assert f"chain {front.letter} is folded down over the foot" in picture.alt
