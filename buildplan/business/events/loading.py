"""What goes on the vehicles of an event, as boxes, and whether it all fits."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from enum import Enum, auto
from itertools import islice

import numpy as np

from buildplan.business.buying.packing import Bag, bags
from buildplan.business.events.event_plan import Copy, EventPlan
from buildplan.business.events.stowing import Box, Room, Size, Stowed, in_place, stow, volume_m3
from buildplan.design.event import Event, Vehicle
from buildplan.evaluation.ballast import ballast_kg
from buildplan.evaluation.passing import Door
from buildplan.language.voice import Voice
from buildplan.sequence.timetable import WorkPlace
from buildplan.shape.carrying import whole

METRES_PER_CM = 0.01
# The rest of the load, from memory: a box of tools, and canisters for ballast, of ten kilograms.
TOOLS_M, TOOLS_KG = (0.6, 0.4, 0.4), 15.0
CANISTER_M, CANISTER_KG = (0.3, 0.2, 0.2), 10.0
# Bags give by this share of a side, and grow along another (from memory).
BAG_GIVES = 1 / 6
# A bag that is hardly filled takes this much of its height all the same (from memory).
LEAST_BAG = 0.2
# More trips than these nobody drives: a larger vehicle is asked for instead.
MOST_TRIPS = 4


class LoadKind(Enum):
    """What is loaded, in the order in which places are looked for."""

    WHOLE = auto()
    TOOLS = auto()
    BAG = auto()
    BALLAST = auto()


@dataclass(frozen=True)
class Item:
    """A thing to load for a piece (its place among the copies; None for all of them), in so many
    boxes. `bag` is what a bag of balloons holds."""

    kind: LoadKind
    piece: int | None
    boxes: tuple[Box, ...]
    bag: Bag | None = None

    @property
    def chain(self) -> str:
        """The letter of the chain whose bag it is, if it is one's."""
        return "" if self.bag is None else self.bag.chain

    @property
    def mass_kg(self) -> float:
        """Its weight."""
        return math.fsum(box.mass_kg for box in self.boxes)


@dataclass(frozen=True)
class Load:
    """All that is loaded, and where it goes; without vehicles, nowhere. `later` is what goes when
    the vehicles go again, trip by trip."""

    items: tuple[Item, ...]
    vehicles: tuple[Vehicle, ...]
    stowed: Stowed
    later: tuple[Stowed, ...] = ()

    @property
    def fits(self) -> bool:
        """Whether a place was found for everything; the places are looked over anew."""
        return not self.stowed.left and in_place(self.stowed, self.rooms)

    @property
    def trips(self) -> int:
        """How often the vehicles go."""
        return 1 + len(self.later)

    @property
    def left(self) -> tuple[Box, ...]:
        """What no trip has a place for."""
        return (self.later or (self.stowed,))[-1].left

    def on_trip(self, trip: int) -> tuple[Box, ...]:
        """What all vehicles together carry on a trip, from 1."""
        return tuple(
            box for number in range(len(self.vehicles)) for box in self.aboard(number, trip)
        )

    @property
    def rooms(self) -> tuple[Room, ...]:
        """The rooms of the vehicles."""
        return tuple(room_of(one) for one in self.vehicles)

    @property
    def boxes(self) -> tuple[Box, ...]:
        """All of it."""
        return tuple(box for item in self.items for box in item.boxes)

    def aboard(self, vehicle: int, trip: int = 1) -> tuple[Box, ...]:
        """What goes into a vehicle on a trip, from 1."""
        stowed = (self.stowed, *self.later)[trip - 1]
        return tuple(one.box for one in stowed.placed[vehicle])

    def share(self, vehicle: int) -> float:
        """How much of the room of a vehicle is taken, as a share of it."""
        room = math.prod(room_of(self.vehicles[vehicle]).size_m)
        return volume_m3(self.aboard(vehicle)) / room

    def mass_kg(self, vehicle: int) -> float:
        """What a vehicle has to carry."""
        return math.fsum(box.mass_kg for box in self.aboard(vehicle))


def by_item(boxes: Iterable[Box]) -> Mapping[int, int]:
    """How many boxes there are of each item, by its place in the load."""
    return dict(sorted(Counter(box.item for box in boxes).items()))


def load_of(plan: EventPlan, voice: Voice) -> Load:
    """What goes on the vehicles, and a place for it: whole pieces and tools first, then bags by
    piece, ballast last, between them."""
    items = tuple(
        replace(item, boxes=tuple(replace(box, item=i) for box in item.boxes))
        for i, item in enumerate(_items(plan, voice))
    )
    vehicles = tuple(plan.event.vehicles)
    order = sorted(items, key=lambda item: item.kind.value)
    boxes = [box for item in order for box in item.boxes]
    rooms = [room_of(one) for one in vehicles]
    first = stow(boxes, rooms)
    later = tuple(islice(_again(first, rooms), MOST_TRIPS))
    return Load(items, vehicles, first, later if len(later) < MOST_TRIPS else ())


def _again(stowed: Stowed, rooms: Sequence[Room]) -> Iterator[Stowed]:
    """What is left over, trip by trip, until nothing is, or nothing more finds a place."""
    while stowed.left and rooms:
        stowed = stow(stowed.left, rooms)
        if not any(stowed.placed):
            return
        yield stowed


def on_trips(plan: EventPlan, load: Load) -> EventPlan:
    """A plan whose vehicles go as often as the load asks for: what is done before they leave begins
    so much earlier."""
    event = plan.event
    again = event.loading + event.unloading + 2 * event.travel
    earlier = timedelta(minutes=(load.trips - plan.trips) * again)
    starts = {
        place: at - earlier if place is WorkPlace.WORKSHOP else at
        for place, at in plan.starts.items()
    }
    return replace(plan, trips=load.trips, starts=starts)


def _items(plan: EventPlan, voice: Voice) -> Iterator[Item]:
    for place, copy in enumerate(plan.copies):
        if copy.built:
            yield Item(LoadKind.WHOLE, place, (Box(0, _size_m(copy), copy.book.facts.mass_kg),))
        else:
            yield from _bags(plan.event, place, copy, voice)
    yield Item(LoadKind.TOOLS, None, (Box(0, TOOLS_M, TOOLS_KG),))
    for place, copy in enumerate(plan.copies):
        canisters = math.ceil(ballast_kg(copy.book.examination) / CANISTER_KG)
        yield Item(LoadKind.BALLAST, place, (Box(0, CANISTER_M, CANISTER_KG),) * canisters)


def _size_m(copy: Copy) -> Size:
    carried = whole(copy.book.framework, copy.book.shape)
    wide, tall, deep = (carried.extent_m(axis) for axis in np.eye(3))
    return wide, tall, deep


def _bags(event: Event, piece: int, copy: Copy, voice: Voice) -> Iterator[Item]:
    packed = bags(copy.book.framework, voice)
    bulk = math.fsum(bag.bulk_m3 for bag in packed)
    for bag in packed:
        mass = copy.book.facts.mass_kg * bag.bulk_m3 / bulk
        yield Item(LoadKind.BAG, piece, _filled(bag.bulk_m3, mass, bag_m(event)), bag)


def _filled(bulk_m3: float, mass_kg: float, size: Size) -> tuple[Box, ...]:
    """So many full bags, and one that is as high as what is left fills it."""
    count = math.ceil(round(bulk_m3 / math.prod(size), 6))
    rest = bulk_m3 / math.prod(size) - (count - 1)
    low = (size[0], size[1], max(rest, LEAST_BAG) * size[2])
    each = mass_kg / count
    full = [Box(0, size, each, BAG_GIVES)] * (count - 1)
    return (*full, Box(0, low, each, BAG_GIVES))


def bag_m(event: Event) -> Size:
    """The size of a full bag, in metres."""
    bag = event.bag
    return tuple(METRES_PER_CM * side for side in (bag.length, bag.width, bag.height))  # type: ignore[return-value]


def room_of(vehicle: Vehicle) -> Room:
    """The room of a vehicle, in metres; its door is as large as that where nothing is said."""
    length, width, height = (
        METRES_PER_CM * side for side in (vehicle.length, vehicle.width, vehicle.height)
    )
    door = (vehicle.door_width, vehicle.door_height)
    clear = tuple(
        side if given is None else METRES_PER_CM * given
        for given, side in zip(door, (width, height), strict=True)
    )
    return Room((length, width, height), (clear[0], clear[1]), vehicle.carries)


def doors_of(event: Event) -> tuple[Door, ...]:
    """The doors on the way in, in metres."""
    return tuple(
        Door(
            door.name,
            METRES_PER_CM * door.width,
            METRES_PER_CM * door.height,
            None if door.depth is None else METRES_PER_CM * door.depth,
        )
        for door in event.doors
    )


def ballast_of(copies: Sequence[Copy]) -> list[float]:
    """The ballast of each piece, in kilograms."""
    return [ballast_kg(copy.book.examination) for copy in copies]
