"""Crew pages for arriving: does it fit through the doors, where it stands, holding it down."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import (
    bulk_words,
    joints_words,
    mass_words,
)
from buildplan.booklet.common.manner import hold_words
from buildplan.business.buying.packing import Bag
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, heading
from buildplan.document.layout import beside
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.evaluation.ballast import DRAUGHT_M_PER_S, ballast_kg
from buildplan.evaluation.figures import speed_words
from buildplan.evaluation.passing_words import pose_how, pose_name
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.shape.carrying import poses, whole

# Speeds that ballast is told for; outdoors the ends of Beaufort 2 and 3 (mean speeds: gusts run
# above them).
WINDS = (
    (mark("Indoors, a draught from a door"), DRAUGHT_M_PER_S),
    (mark("Outdoors, wind felt on the face"), 3.3),
    (mark("Outdoors, leaves and twigs in movement"), 5.4),
)
OPENINGS = (
    mark("Vehicle: opening"),
    mark("Vehicle: inside"),
    mark("Outer door"),
    mark("Lift: door"),
    mark("Lift: inside"),
    mark("Inner door, corridor"),
)
CLOSE_ROWS, CLOSEST_ROWS = 2.5, 1.2
FIT_SHARES = (70, 34, 36, 42, 32)


def arriving(book: Book, packed: Sequence[Bag]) -> list[Flowable]:
    """Whether it fits, in which pose and in how many pieces; ballast; sun and wind."""
    voice = book.voice
    return [
        heading(voice.say("Does it fit? Measure on arrival, before a bag is opened")),
        _poses(book),
        _openings(voice),
        _ways_in(book, packed),
        *beside(book.paper, _placing(book), _weather(voice)),
        _ballast(book),
    ]


def _poses(book: Book) -> Grid:
    """The room that the finished piece takes, pose by pose."""
    voice, units = book.voice, book.units
    rows = tuple(
        (
            f"{strong(pose_name(pose, voice))}: {plain(pose_how(pose, voice))}",
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
    return Grid(head, rows, FIT_SHARES, frozenset({1, 2, 3}), pad=CLOSE_ROWS, after=8)


def _openings(voice: Voice) -> Grid:
    """What is measured on the way in."""
    head = (
        voice.say("On the way"),
        voice.say("Clear width"),
        voice.say("Clear height"),
        voice.say("Length inside"),
        voice.say("Pose"),
    )
    rows = tuple((voice.say(name), "", "", "", "") for name in OPENINGS)
    return Grid(head, rows, FIT_SHARES, pad=CLOSE_ROWS, after=8)


def _ways_in(book: Book, packed: Sequence[Bag]) -> Items:
    """In one piece, or in bags."""
    voice = book.voice
    bulk = bulk_words(sum(bag.bulk_m3 for bag in packed), book.units, voice)
    return Items(
        (
            voice.say(
                "{in_one_piece} when one pose fits every opening on the way, with a hand's "
                "breadth to spare on each side (estimated sizes: measure your own piece).",
                in_one_piece=strong(voice.say("In one piece")),
            ),
            voice.say(
                "{in_loads} otherwise: chains, braces and locks in their bags, {bulk} in all, "
                "built in the room where it will stand. Once braced it does not come apart "
                "again.",
                in_loads=strong(voice.say("In {count} labelled loads", count=len(packed))),
                bulk=bulk,
            ),
            voice.say(
                "Cover hinges, handles and latches; look out for thorns, screws and hot "
                "lamps. One person walks ahead and opens doors."
            ),
        )
    )


def _placing(book: Book) -> list[Flowable]:
    """Where it stands, and what holds it there."""
    voice = book.voice
    feet = strong(joints_words(book.shape.standing.feet, voice))
    tips = voice.decimal(book.facts.tip_angle_deg, 1)
    return [
        heading(voice.say("Place it and hold it down")),
        Items(
            (
                voice.say("Ask the venue which spot; exits, stairs and sockets stay clear"),
                sentences(
                    voice.say("Stand it on {joints}, lift together on a count.", joints=feet),
                    hold_words(book),
                ),
                voice.say("Ballast low at {joints}, the same on each foot", joints=feet),
                voice.say(
                    "It goes over when it leans {angle} in its worst direction (estimate)",
                    angle=strong(voice.say("{angle} degrees", angle=tips)),
                ),
            ),
            ticked=True,
        ),
    ]


def _weather(voice: Voice) -> list[Flowable]:
    """What sun and wind do to it.

    Charles: volume goes with absolute temperature; 308.15 K / 293.15 K = 1.051.
    """
    return [
        heading(voice.say("Sun and wind")),
        Items(
            (
                voice.say(
                    "Air grows by about 5 in 100 from 20 to 35 degrees C (68 to 95 F). In "
                    "the sun far more: stand it in shade, or size a little smaller where "
                    "it will stand"
                ),
                voice.say(
                    "Sun dulls latex within hours; cold balloons shrink and grow again indoors"
                ),
                voice.say(
                    "Outdoors tie it to something that holds as well, keep people clear, "
                    "or keep it indoors"
                ),
                voice.say(
                    "Wind rising, rain or lightning: take it down at once. Who decides: "
                    "____________________"
                ),
            )
        ),
    ]


def _ballast(book: Book) -> Grid:
    """The weight that holds it in each wind."""
    voice = book.voice
    head = (
        voice.say("Ballast that holds it (estimates, the safe end)"),
        voice.say("Gust"),
        voice.say("On the foot, in all"),
    )
    rows = tuple(
        (
            voice.say(name),
            speed_words(gust, book.units, voice),
            mass_words(ballast_kg(book.examination, gust), voice),
        )
        for name, gust in WINDS
    )
    return Grid(head, rows, (96, 26, 40), pad=CLOSEST_ROWS)
