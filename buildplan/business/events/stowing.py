"""Whether boxes go into vehicles: a place is looked for, for each.

Boxes are set one by one, the low ones of what is still free first, and what is free is cut beside,
before and above each box, so that no cut goes through one (guillotine cutting; Christofides and
Whitlock 1977, from memory). Where it finds a place for all, they fit; where it does not, another
hand may still find one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import permutations
from math import prod

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
    return sum(box.volume_m3 for box in boxes)


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
    """Find a place for each box, in the order given, in the first vehicle that has one."""
    vehicles = [_Vehicle(room, [((0.0, 0.0, 0.0), room.size_m)], []) for room in rooms]
    left = []
    for box in boxes:
        if not any(vehicle.take(box) for vehicle in vehicles):
            left.append(box)
    return Stowed(tuple(tuple(vehicle.placed) for vehicle in vehicles), tuple(left))


@dataclass
class _Vehicle:
    """A vehicle while it is loaded: the boxes in it and the room that is free, corner and size."""

    room: Room
    free: list[tuple[Size, Size]]
    placed: list[Placed]

    def take(self, box: Box) -> bool:
        """Load a box if there is a place for it, low and far in."""
        loaded = sum(one.box.mass_kg for one in self.placed) + box.mass_kg
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
