"""Boxes in vehicles: every place that is given is free, inside, and goes through the door."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from buildplan.business.events.stowing import Box, Placed, Room, stow, volume_m3

sides = st.floats(0.1, 1.2)
boxes = st.lists(
    st.builds(
        Box,
        st.just(0),
        st.tuples(sides, sides, sides),
        st.floats(0.1, 30),
        st.sampled_from([0, 0.2]),
    ),
    max_size=25,
)
rooms = st.lists(
    st.builds(
        Room,
        st.tuples(st.floats(0.5, 3), st.floats(0.5, 2), st.floats(0.5, 2)),
        st.tuples(st.floats(0.3, 2), st.floats(0.3, 2)),
        st.none() | st.floats(10, 200),
    ),
    min_size=1,
    max_size=3,
)


def cubes(count: int, side: float = 1.0, mass_kg: float = 1.0) -> list[Box]:
    return [Box(number, (side,) * 3, mass_kg) for number in range(count)]


def clash(one: Placed, other: Placed) -> bool:
    return all(
        a < b + size_b - 1e-6 and b < a + size_a - 1e-6
        for a, size_a, b, size_b in zip(one.at_m, one.size_m, other.at_m, other.size_m, strict=True)
    )


@given(boxes, rooms)
@settings(max_examples=60, deadline=None)
def test_no_two_boxes_share_a_place_and_none_sticks_out(
    boxes: list[Box], rooms: list[Room]
) -> None:
    found = stow(boxes, rooms)
    assert sum(map(len, found.placed)) + len(found.left) == len(boxes)
    for room, placed in zip(rooms, found.placed, strict=True):
        for one in placed:
            assert volume_m3([Box(0, one.size_m, 1.0)]) == pytest.approx(one.box.volume_m3)
            if not one.box.gives:
                assert sorted(one.size_m) == sorted(one.box.size_m)
            ends = (at + size for at, size in zip(one.at_m, one.size_m, strict=True))
            assert all(end <= side + 1e-5 for end, side in zip(ends, room.size_m, strict=True))
            assert sorted(one.box.size_m)[0] <= min(room.door_m) + 1e-5
        assert not any(clash(one, other) for one, other in combinations(placed, 2))
        if room.carries_kg is not None:
            assert sum(one.box.mass_kg for one in placed) <= room.carries_kg


@pytest.mark.parametrize(("count", "left"), [(8, 0), (9, 1), (30, 22)])
def test_a_room_of_eight_cubes_holds_eight(count: int, left: int) -> None:
    found = stow(cubes(count), [Room((2, 2, 2), (2, 2))])
    assert len(found.left) == left


def test_boxes_are_turned_where_that_helps() -> None:
    planks = [Box(0, (0.2, 0.3, 1.9), 1.0) for _ in range(60)]
    room = Room((1.9, 1.2, 1.0), (1.2, 1.0))
    found = stow(planks, [room])
    assert len(found.placed[0]) == 20, "1.2 x 1.0 of 0.2 x 0.3 ends: 6 x 3 or 4 x 5, all through"
    assert volume_m3(one.box for one in found.placed[0]) == pytest.approx(1.9 * 1.2 * 1.0)


def test_bags_are_pressed_where_that_makes_room() -> None:
    room = Room((3.0, 1.7, 1.8), (1.7, 1.8))
    stiff = [Box(0, (0.6, 0.6, 0.9), 1.0) for _ in range(30)]
    soft = [Box(0, (0.6, 0.6, 0.9), 1.0, 1 / 6) for _ in range(30)]
    assert len(stow(stiff, [room]).placed[0]) < len(stow(soft, [room]).placed[0])


def test_what_one_vehicle_may_not_carry_goes_into_the_next() -> None:
    found = stow(cubes(4, 0.5, 10.0), [Room((2, 2, 2), (2, 2), 20.0), Room((2, 2, 2), (2, 2))])
    assert [len(placed) for placed in found.placed] == [2, 2]
