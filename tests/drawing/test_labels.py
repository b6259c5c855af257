"""Joint labels never cover one another, a joint, or the picture's edge."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, box

from buildplan.drawing.fonts import text_width
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import TIE_RADIUS, joint_tags, label_boxes, rounded_box, tag_size
from buildplan.drawing.marks import Circle, Curve, Ink, Label, Picture

WIDTH, HEIGHT = 300.0, 220.0
spots = st.lists(
    st.tuples(st.floats(12, WIDTH - 12), st.floats(12, HEIGHT - 12)), min_size=1, max_size=16
)


@settings(max_examples=60)
@given(spots, st.sampled_from([8.0, 9.0, 11.0]))
def test_tags_keep_clear(where: list[tuple[float, float]], size: float) -> None:
    wanted = [(f"{'ABCD'[i % 4]}{i * 7 + 1}", spot) for i, spot in enumerate(where)]
    tags = place_tags(wanted, WIDTH, HEIGHT, size=size)
    assert [tag.text for tag in tags] == [text for text, _ in wanted]
    boxes = [box(*tag.box) for tag in tags]
    for one, other in combinations(boxes, 2):
        assert not one.intersects(other)
    page = box(0, 0, WIDTH, HEIGHT)
    for tag_box in boxes:
        assert page.contains(tag_box)
        for spot in where:
            assert not tag_box.intersects(Point(spot).buffer(TIE_RADIUS * 0.99))


def test_tags_are_placed_the_same_every_time() -> None:
    wanted = [(f"A{i}", (50.0 + 9 * i, 100.0 + i % 3)) for i in range(20)]
    first = place_tags(wanted, WIDTH, HEIGHT)
    assert first == place_tags(wanted, WIDTH, HEIGHT)
    assert len(first) == 20


def test_a_label_without_room_is_left_out() -> None:
    assert place_tags([("A100", (5.0, 5.0))], 12, 10) == ()


def test_the_words_fit_their_tag() -> None:
    (tag,) = place_tags([("D40", (100.0, 100.0))], WIDTH, HEIGHT, size=10)
    left, low, right, high = tag.box
    assert (right - left, high - low) == pytest.approx(tag_size("D40", 10), abs=0.01)
    assert right - left > text_width("D40", 10, bold=True)


def test_label_boxes_know_the_anchor() -> None:
    marks = tuple(
        Label((50.0, 20.0), name, 10.0, anchor=name) for name in ("start", "middle", "end")
    )
    boxes = label_boxes(Picture(100, 100, marks, ""))
    assert boxes["start"][0][0] == 50
    assert boxes["end"][0][2] == pytest.approx(50)
    left, _, right, _ = boxes["middle"][0]
    assert (left + right) / 2 == pytest.approx(50)


def test_tag_marks() -> None:
    tags = place_tags([("A1", (100.0, 100.0))], WIDTH, HEIGHT)
    shape, label = joint_tags(tags)
    assert isinstance(shape, Curve)
    assert isinstance(label, Label)
    assert label.text == "A1"
    assert not isinstance(shape, Circle)


def test_rounded_box_stays_in_its_box() -> None:
    curve = rounded_box((10, 20, 50, 40), 4, Ink(fill="#FFFFFF"))
    points = [curve.start, *(point for piece in curve.pieces for point in piece)]
    assert min(x for x, _ in points) == 10
    assert max(x for x, _ in points) == 50
    assert min(y for _, y in points) == 20
    assert max(y for _, y in points) == 40
    assert curve.pieces[-1][2] == curve.start


def test_tags_keep_off_blocked_boxes() -> None:
    blocked = [(0.0, 60.0, 80.0, 100.0), (60.0, 0.0, 100.0, 40.0)]
    wanted = [(f"A{i}", (20.0 + 8 * i, 50.0)) for i in range(8)]
    tags = place_tags(wanted, 100, 100, blocked=blocked)
    assert len(tags) == len(wanted)
    for tag in tags:
        assert not any(box(*tag.box).intersects(box(*other)) for other in blocked)


@given(
    st.lists(st.tuples(st.integers(3, 17), st.integers(3, 17)), min_size=2, max_size=6, unique=True)
)
def test_a_tag_is_not_taken_for_another_joints(spots: list[tuple[int, int]]) -> None:
    """With room around: its leader runs over no other joint, and none is nearer to it."""
    wanted = [(f"A{i}", (10.0 * x, 10.0 * y)) for i, (x, y) in enumerate(spots)]
    reaching = {"A0": 8.4}
    at = dict(wanted)
    for tag in place_tags(wanted, 200, 200, reaching=reaching):
        left, low, right, high = tag.box
        body = box(left, low, right, high)
        leader = LineString([tag.spot, ((left + right) / 2, (low + high) / 2)])
        for name, spot in at.items():
            if name != tag.text:
                assert leader.distance(Point(spot)) >= reaching.get(name, TIE_RADIUS) - 1e-6
                assert body.distance(Point(spot)) >= body.distance(Point(tag.spot)) - 1e-6
