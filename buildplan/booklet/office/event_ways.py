"""An event on its way: does the load fit, do the pieces go through the doors, who walks through."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from reportlab.platypus import Flowable

from buildplan.booklet.common.loads import bulk_words
from buildplan.business.events.event_plan import Copy, EventPlan
from buildplan.business.events.loading import Load, bag_m, doors_of, room_of
from buildplan.business.events.stowing import TooMuch, too_much, volume_m3
from buildplan.design.measures import KG_PER_LB, Units, size_words
from buildplan.document.blocks import Items, Words, heading
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, STRONG, plain, strong
from buildplan.evaluation.passing import bag_passes, ways
from buildplan.evaluation.passing_words import (
    door_words,
    opening_caution,
    opening_words,
    way_words,
)
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.shape.carrying import walk_through

CLOSE_ROWS = 2.5
OPENINGS_TO_MEASURE = 3
BLANK_DOOR = "____________________"


def vehicle_blocks(plan: EventPlan, load: Load, voice: Voice) -> list[Flowable]:
    """Each vehicle with what goes into it, and what is left over."""
    units = plan.units
    bags = bag_m(plan.event)
    told = voice.say(
        "Bags are counted as boxes of {size} when full ({bulk} in all, with ballast and tools; an "
        "estimate).",
        size=sides_words(bags, units, voice),
        bulk=bulk_words(volume_m3(load.boxes), units, voice),
    )
    if not load.vehicles:
        missing = voice.say(
            "The event file names no vehicles: give them to see whether the load fits."
        )
        return [Words(plain(told)), Words(plain(missing), SMALL)]
    rows = tuple(
        (
            strong(vehicle.name),
            plain(sides_words(room_of(vehicle).size_m, units, voice)),
            voice.whole(len(load.stowed.placed[number])),
            voice.percent(load.share(number)),
            plain(_carries(load, number, units, voice)),
        )
        for number, vehicle in enumerate(load.vehicles)
    )
    head = (
        voice.say("Vehicle"),
        voice.say("Room (length x width x height)"),
        voice.say("Boxes"),
        voice.say("Full"),
        voice.say("Carries"),
    )
    return [
        Words(strong(fit_words(plan, load, voice)), STRONG, after=6),
        Grid(head, rows, (120, 180, 50, 50, 90), frozenset({2, 3, 4}), pad=CLOSE_ROWS, after=6),
        Words(plain(told), SMALL, after=6),
        Items(
            (
                voice.say(
                    "Ballast and tools low and against the cab, tied down; bags on top, nothing "
                    "sharp near them."
                ),
                voice.say("Keep the load from sun and heat: a closed vehicle gets hot."),
            )
        ),
    ]


WHY_NOT: Mapping[TooMuch | None, str] = {
    TooMuch.SIZE: mark(
        "It does not fit: a box is too large, or too heavy, for every vehicle or its door. Take "
        "another vehicle, or the piece in its bags."
    ),
    TooMuch.VOLUME: mark(
        "It does not fit: the boxes take more room than the vehicles have. Go twice, or take a "
        "larger vehicle."
    ),
    TooMuch.WEIGHT: mark(
        "It does not fit: it weighs more than the vehicles may carry. Go twice, or take ballast "
        "from the place."
    ),
    None: mark(
        "It may still fit by another way of packing: try it before the day, go twice, or take a "
        "larger vehicle."
    ),
}


def fit_words(plan: EventPlan, load: Load, voice: Voice) -> str:
    """Whether the load fits, in a sentence."""
    if load.fits:
        return voice.say_count(
            "It fits: a place was found for everything in {number} vehicle.",
            "It fits: a place was found for everything in {number} vehicles.",
            sum(1 for placed in load.stowed.placed if placed),
        )
    left = load.stowed.left
    why = too_much(load.boxes, load.rooms)
    found = voice.say_count(
        "No place was found for {number} box, {bulk}.",
        "No place was found for {number} boxes, {bulk}.",
        len(left),
        bulk=bulk_words(volume_m3(left), plan.units, voice),
    )
    again = ""
    if load.trips > 1:
        again = voice.say(
            "The day is planned with {trips} trips, the same again after taking down.",
            trips=load.trips,
        )
    return sentences(found, voice.say(WHY_NOT[why]), again)


def sides_words(sides_m: Iterable[float], units: Units, voice: Voice) -> str:
    """Something by its sides: `2.40 m x 1.70 m x 1.40 m`."""
    return " x ".join(voice.tell(size_words(side, units)) for side in sides_m)


def _carries(load: Load, number: int, units: Units, voice: Voice) -> str:
    """What a vehicle carries of what it may, if that is said."""
    unit = KG_PER_LB if units == "in" else 1.0
    mass, most = round(load.mass_kg(number) / unit), load.vehicles[number].carries
    if most is None:
        return voice.say("{lb} lb", lb=mass) if units == "in" else voice.say("{kg} kg", kg=mass)
    if units == "in":
        return voice.say("{lb} of {most} lb", lb=mass, most=round(most / unit))
    return voice.say("{kg} of {most} kg", kg=mass, most=round(most))


def place_blocks(plan: EventPlan, voice: Voice) -> list[Flowable]:
    """The doors on the way in, and what goes through the pieces once they stand."""
    return [*_doors(plan, voice), *_walked(plan, voice)]


def _doors(plan: EventPlan, voice: Voice) -> list[Flowable]:
    doors, units = doors_of(plan.event), plan.units
    if not doors:
        rows = ((BLANK_DOOR, "", "", ""),) * OPENINGS_TO_MEASURE
        head = (
            voice.say("Door, lift"),
            voice.say("Clear width"),
            voice.say("Clear height"),
            voice.say("Goes through"),
        )
        words = voice.say("The event file names no doors: measure them before anything is opened.")
        return [
            heading(voice.say("Doors")),
            Words(plain(words), SMALL),
            Grid(head, rows, (150, 90, 90, 150)),
        ]
    rows_of = [
        (
            strong(door_words(door, units, voice)) if copy is plan.firsts[0] else "",
            plain(copy.book.facts.name),
            plain(told),
        )
        for number, door in enumerate(doors)
        for copy, told in _through(plan, number, voice)
    ]
    head3 = (voice.say("Door"), voice.say("Piece"), voice.say("Goes through finished?"))
    blocks: list[Flowable] = [
        heading(voice.say("Doors")),
        Grid(head3, rows_of, (120, 100, 260), pad=CLOSE_ROWS, after=4),
    ]
    tight = [door for door in doors if not bag_passes(bag_m(plan.event), door)]
    for door in tight:
        words = voice.say(
            "{door}: full bags do not go through. Fill smaller ones.",
            door=door_words(door, units, voice),
        )
        blocks.append(Words(plain(words), STRONG))
    note = voice.say(
        "A hand's breadth is kept free on each side; estimated sizes: measure on arrival, before "
        "a bag is opened."
    )
    return [*blocks, Words(plain(note), SMALL, after=8)]


def _through(plan: EventPlan, door: int, voice: Voice) -> Iterator[tuple[Copy, str]]:
    """How the finished pieces go through a door."""
    found = doors_of(plan.event)[door]
    for copy in plan.firsts:
        (way,) = ways(copy.book, [found])
        yield copy, way_words(way, plan.units, voice)


def _walked(plan: EventPlan, voice: Voice) -> list[Flowable]:
    units, lines = plan.units, []
    for copy in plan.firsts:
        opening = walk_through(copy.book.framework, copy.book.shape)
        if opening is not None:
            told = opening_words(opening, units, voice)
            name = strong(copy.book.facts.name)
            line = voice.say("{piece}: {told}.", piece=name, told=told)
            lines.append(" ".join([line, plain(opening_caution(opening, units, voice))]).strip())
    if not lines:
        return []
    return [heading(voice.say("Walked through")), Items(tuple(lines))]
