"""Crew pages for the place: what the piece goes through, and what goes through the piece."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import begins_in_place
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import all_bulk_words
from buildplan.booklet.common.walking_through import walked_through
from buildplan.business.buying.packing import Bag
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, heading
from buildplan.document.layout import Columns, is_wide
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.evaluation.passing import Ease, WayThrough, ways
from buildplan.evaluation.passing_words import (
    pose_how,
    pose_name,
    way_words,
)
from buildplan.language.messages import mark
from buildplan.shape.carrying import poses, whole

# To be measured on arrival: of the way in, as far as its doors were not given before.
VEHICLE = (mark("Vehicle: opening"), mark("Vehicle: inside"))
WAY_IN = (
    mark("Outer door"),
    mark("Lift: door"),
    mark("Lift: inside"),
    mark("Inner door, corridor"),
)
SHARES, HALF_SHARES = (88, 30, 31, 35, 24), (112, 41, 43, 46)
CLOSE_ROWS = 1.2


def does_it_fit(book: Book, packed: Sequence[Bag]) -> list[Flowable]:
    """In which pose it goes through what, in how many pieces it comes, and who walks through it."""
    voice = book.voice
    return [
        heading(voice.say("Does it fit? Measure on arrival, before a bag is opened")),
        *([] if _is_built_in_place(book) and not book.doors else [_poses(book)]),
        *_way_in(book),
        *_given(book),
        Items((*_in_loads(book, packed), *walked_through(book))),
    ]


def _poses(book: Book) -> Grid:
    """What each pose of the finished piece needs."""
    voice, units = book.voice, book.units
    rows = tuple(
        (
            voice.say(
                "{name}: {words}",
                name=strong(pose_name(pose, voice)),
                words=plain(pose_how(pose, voice)),
            ),
            voice.tell(size_words(pose.width_m, units)),
            voice.tell(size_words(pose.height_m, units)),
            voice.tell(size_words(pose.length_m, units)),
            "",
        )
        for pose in poses(whole(book.framework, book.shape))
    )
    head = (
        voice.say("Pose of the finished piece"),
        voice.say("Needs width"),
        voice.say("Needs height"),
        voice.say("Length behind"),
        voice.say("Fits where"),
    )
    return Grid(head, rows, SHARES, frozenset({1, 2, 3}), pad=CLOSE_ROWS, after=8)


def _way_in(book: Book) -> list[Flowable]:
    """The openings on the way: those that are given with their sizes; the others to measure, two
    tables abreast where the paper is wide."""
    voice = book.voice
    given = [*(_door_row(book, way) for way in ways(book, book.doors))]
    measured = [voice.say(name) for name in (*VEHICLE, *(() if book.doors else WAY_IN))]
    head = (
        voice.say("On the way"),
        voice.say("Clear width"),
        voice.say("Clear height"),
        voice.say("Length inside"),
        voice.say("Pose"),
    )
    if given or not is_wide(book.paper):
        rows = [*given, *((name, "", "", "", "") for name in measured)]
        return [Grid(head, rows, SHARES, pad=CLOSE_ROWS, after=8)]
    half = (len(measured) + 1) // 2
    halves = [
        [Grid(head[:-1], [(name, "", "", "") for name in some], HALF_SHARES, pad=CLOSE_ROWS)]
        for some in (measured[:half], measured[half:])
    ]
    return [Columns(halves, after=6)]


def _door_row(book: Book, way: WayThrough) -> tuple[str, ...]:
    voice, units, door = book.voice, book.units, way.piece.door
    fits = way.piece.fit is not Ease.NOT
    return (
        plain(door.name or voice.say("Door")),
        voice.tell(size_words(door.width_m, units)),
        voice.tell(size_words(door.height_m, units)),
        "" if door.depth_m is None else voice.tell(size_words(door.depth_m, units)),
        strong(pose_name(way.piece.pose, voice)) if fits else strong(voice.say("none")),
    )


def _given(book: Book) -> list[Flowable]:
    """How the piece goes through each of the doors that are given."""
    voice = book.voice
    lines = [
        voice.say(
            "{door}: {told}",
            door=strong(way.piece.door.name or voice.say("Door")),
            told=plain(way_words(way, book.units, voice)),
        )
        for way in ways(book, book.doors)
    ]
    return [Items(tuple(lines), ticked=True, gap=2.0)] if lines else []


def _is_built_in_place(book: Book) -> bool:
    """Whether it cannot be moved once it has been begun."""
    put_together = book.figures.set_up is not None
    return put_together or any(begins_in_place(book, one) for one in book.steps)


def _in_loads(book: Book, packed: Sequence[Bag]) -> tuple[str, ...]:
    voice = book.voice
    bulk = all_bulk_words((bag.bulk_m3 for bag in packed), book.units, voice)
    loads = strong(voice.say("In {count} labelled loads", count=len(packed)))
    hinges = voice.say("Cover hinges, handles and latches; one person walks ahead and opens doors.")
    if _is_built_in_place(book):
        told = voice.say(
            "{in_loads}: chains, braces and locks in their bags, {bulk} in all. It is built where"
            " it will stand, and does not move afterwards.",
            in_loads=loads,
            bulk=bulk,
        )
        return (told, hinges)
    return (
        voice.say(
            "{in_one_piece} when one pose fits every opening on the way, with a hand's "
            "breadth to spare on each side (estimated sizes: measure your own piece).",
            in_one_piece=strong(voice.say("In one piece")),
        ),
        voice.say(
            "{in_loads} otherwise: chains, braces and locks in their bags, {bulk} in all, "
            "built in the room where it will stand.",
            in_loads=loads,
            bulk=bulk,
        ),
        hinges,
    )
