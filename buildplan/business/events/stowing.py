"""Whether boxes go into vehicles: a place is looked for, for each.

Boxes are set one by one, the low ones of what is still free first, and what is free is cut beside,
before and above each box, so that no cut goes through one (guillotine cutting; Christofides and
Whitlock 1977, from memory). That is done in several orders, and the best is taken. To tell for
certain whether boxes can be packed takes time beyond all bounds (it is NP-hard), so there are three
answers, and only two of them are certain: places that were found are looked over box by box before
they count (`in_place`); boxes that cannot go in by their size, room or weight are told as that
(`too_much`); of all others no place was found, and another hand may still find one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import Enum, auto
from itertools import combinations, permutations
from math import fsum, hypot, prod

Size = tuple[float, float, float]
LEAST_M = 1e-6


@dataclass(frozen=True)
class Box:
    """Something to load, in metres and kilograms; `item` says what it belongs to. What `gives`
    can be pressed by that share of one side, and grows by as much along another."""

    item: int
    size_m: Size
    mass_kg: float
    gives: float = 0.0

    @property
    def volume_m3(self) -> float:
        """The room that it takes."""
        return prod(self.size_m)


def volume_m3(boxes: Iterable[Box]) -> float:
    """The room that boxes take."""
    return fsum(box.volume_m3 for box in boxes)


@dataclass(frozen=True)
class Room:
    """The room of a vehicle: length, width, height; its door (width, height); what it carries in
    kilograms, None where nothing is said."""

    size_m: Size
    door_m: tuple[float, float]
    carries_kg: float | None = None


@dataclass(frozen=True)
class Placed:
    """A box in a vehicle: its corner nearest the front, left and floor, and its size as it lies."""

    box: Box
    at_m: Size
    size_m: Size


@dataclass(frozen=True)
class Stowed:
    """What goes into each vehicle, and what is left over."""

    placed: tuple[tuple[Placed, ...], ...]
    left: tuple[Box, ...]


def stow(boxes: Sequence[Box], rooms: Sequence[Room]) -> Stowed:
    """Find a place for each box: in the order given, or in another that leaves less behind."""
    found: list[Stowed] = []
    for order in _orders(boxes):
        found.append(_stowed(order, rooms))
        if not found[-1].left:
            break
    return min(found, key=lambda one: round(volume_m3(one.left), 9))


def _orders(boxes: Sequence[Box]) -> Iterator[Sequence[Box]]:
    """Orders in which boxes may be set: as given, and large, long and broad ones first."""
    yield boxes
    yield sorted(boxes, key=lambda box: (-box.volume_m3, box.size_m))
    yield sorted(boxes, key=lambda box: (-max(box.size_m), -box.volume_m3))
    yield sorted(boxes, key=lambda box: (-sorted(box.size_m)[1], -box.volume_m3))


def _stowed(boxes: Sequence[Box], rooms: Sequence[Room]) -> Stowed:
    """A place for each box, in the order given, in the first vehicle that has one."""
    vehicles = [_Vehicle(room, [((0.0, 0.0, 0.0), room.size_m)], []) for room in rooms]
    left = []
    for box in boxes:
        if not any(vehicle.take(box) for vehicle in vehicles):
            left.append(box)
    return Stowed(tuple(tuple(vehicle.placed) for vehicle in vehicles), tuple(left))


def in_place(stowed: Stowed, rooms: Sequence[Room]) -> bool:
    """Whether what was found can be: every box inside, through the door, pressed no more than it
    gives, none in the place of another, and no vehicle overloaded. It knows nothing of how the
    places were found."""
    for placed, room in zip(stowed.placed, rooms, strict=True):
        mass = fsum(one.box.mass_kg for one in placed)
        if room.carries_kg is not None and mass > room.carries_kg:
            return False
        for one in placed:
            ends = [at + side for at, side in zip(one.at_m, one.size_m, strict=True)]
            if min(one.at_m) < -LEAST_M or not _fits((ends[0], ends[1], ends[2]), room.size_m):
                return False
            if one.size_m not in _turned(one.box) or not _through(one.box.size_m, room.door_m):
                return False
        if any(_share_a_place(one, other) for one, other in combinations(placed, 2)):
            return False
    return True


def _share_a_place(one: Placed, other: Placed) -> bool:
    return all(
        at < start + length - LEAST_M and start < at + side - LEAST_M
        for at, side, start, length in zip(
            one.at_m, one.size_m, other.at_m, other.size_m, strict=True
        )
    )


class TooMuch(Enum):
    """Why boxes cannot go in, in whatever order and however they lie."""

    SIZE = auto()
    VOLUME = auto()
    WEIGHT = auto()


def too_much(boxes: Sequence[Box], rooms: Sequence[Room]) -> TooMuch | None:
    """Why these boxes can never all go in at once; None where they may, as far as is known."""
    if not all(any(_may_go_into(box, room) for room in rooms) for box in boxes):
        return TooMuch.SIZE
    if volume_m3(boxes) > fsum(prod(room.size_m) for room in rooms) + LEAST_M:
        return TooMuch.VOLUME
    carried = [room.carries_kg for room in rooms]
    if None not in carried and fsum(box.mass_kg for box in boxes) > fsum(filter(None, carried)):
        return TooMuch.WEIGHT
    return None


def _may_go_into(box: Box, room: Room) -> bool:
    """Whether a box may go into an empty vehicle, aslant too: nothing that is longer than a room's
    diagonal, or thicker than the room, does."""
    if room.carries_kg is not None and box.mass_kg > room.carries_kg:
        return False
    low, high = sorted(room.door_m)
    for narrow, middle, longest in map(sorted, _turned(box)):
        door = narrow <= low + LEAST_M and middle <= hypot(low, high) + LEAST_M
        if door and narrow <= min(room.size_m) + LEAST_M and longest <= hypot(*room.size_m):
            return True
    return False


@dataclass
class _Vehicle:
    """A vehicle while it is loaded: the boxes in it and the room that is free, corner and size."""

    room: Room
    free: list[tuple[Size, Size]]
    placed: list[Placed]

    def take(self, box: Box) -> bool:
        """Load a box if there is a place for it, low and far in."""
        loaded = fsum(one.box.mass_kg for one in self.placed) + box.mass_kg
        too_heavy = self.room.carries_kg is not None and loaded > self.room.carries_kg
        if too_heavy or not _through(box.size_m, self.room.door_m):
            return False
        for space in sorted(self.free, key=lambda one: (one[0][2], one[0][0], one[0][1])):
            ways = [size for size in _turned(box) if _fits(size, space[1])]
            if ways:
                best = max(ways, key=lambda size: (_like_it(size, space[1]), -size[2]))
                self.placed.append(Placed(box, space[0], best))
                self.free.remove(space)
                self.free += [one for one in _cut(*space, best) if min(one[1]) > LEAST_M]
                return True
        return False


def _through(size: Size, door: tuple[float, float]) -> bool:
    """Whether a box goes through a door, with its two shorter sides across."""
    narrow, middle, _ = sorted(size)
    low, high = sorted(door)
    return narrow <= low + LEAST_M and middle <= high + LEAST_M


def _turned(box: Box) -> list[Size]:
    """A box in each way that it can lie, and pressed in each way that it can be."""
    sides = [box.size_m]
    for pressed, longer in permutations(range(3), 2) if box.gives else ():
        made = list(box.size_m)
        made[pressed] *= 1 - box.gives
        made[longer] /= 1 - box.gives
        sides.append((made[0], made[1], made[2]))
    return list(dict.fromkeys((a, b, c) for one in sides for a, b, c in permutations(one)))


def _fits(size: Size, space: Size) -> bool:
    return all(side <= room + LEAST_M for side, room in zip(size, space, strict=True))


def _like_it(size: Size, space: Size) -> int:
    """How many boxes that lie like this one the space would hold."""
    return prod(
        int((room + LEAST_M) / max(side, LEAST_M)) for side, room in zip(size, space, strict=True)
    )


def _cut(corner: Size, space: Size, size: Size) -> Iterator[tuple[Size, Size]]:
    """What is left of a space behind, beside and above a box in its corner."""
    (x, y, z), (length, width, height), (long, wide, tall) = corner, space, size
    yield (x + long, y, z), (length - long, width, height)
    yield (x, y + wide, z), (long, width - wide, height)
    yield (x, y, z + tall), (long, wide, height - tall)
