"""Crew pages for where it stands: placing it, holding it down, sun and wind."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.holding import fastening
from buildplan.booklet.common.loads import (
    filled_words,
    joints_words,
    mass_words,
)
from buildplan.booklet.common.manner import hold_words
from buildplan.design.measures import speed_words
from buildplan.document.blocks import Items, heading
from buildplan.document.layout import beside
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.evaluation.ballast import ballast_kg
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.shape.holding import DRAUGHT_M_PER_S
from buildplan.shape.whereabouts import group_words

# Speeds that ballast is told for; outdoors the ends of Beaufort 2 and 3 (mean speeds: gusts run
# above them).
WINDS = (
    (mark("Indoors, a draught from a door"), DRAUGHT_M_PER_S),
    (mark("Outdoors, wind felt on the face"), 3.3),
    (mark("Outdoors, leaves and twigs in movement"), 5.4),
)
CLOSEST_ROWS = 1.2


def arriving(book: Book) -> list[Flowable]:
    """Where it stands and what holds it there; ballast; sun and wind."""
    voice = book.voice
    return [
        *beside(book.paper, _placing(book), _weather(voice)),
        *([_ballast(book)] if book.examination.wind.ballast_at else []),
    ]


def _placing(book: Book) -> list[Flowable]:
    """Where it stands, and what holds it there."""
    voice = book.voice
    feet = strong(voice.tell(group_words(book.shape, book.shape.standing.feet)))
    ballasted = book.examination.wind.ballast_at
    weighed = strong(joints_words(ballasted, voice))
    tips = voice.decimal(book.facts.tip_angle_deg, 1)
    leans = (
        voice.say("Ballast low at {joints}, the same on each", joints=weighed),
        voice.say(
            "It goes over when it leans {angle} in its worst direction (estimate)",
            angle=strong(voice.say("{angle} degrees", angle=tips)),
        ),
    )
    return [
        heading(voice.say("Where it stands")),
        Items(
            (
                voice.say("Ask the venue which spot; exits, stairs and sockets stay clear"),
                sentences(
                    voice.say("Stand it on {joints}, lift together on a count.", joints=feet),
                    hold_words(book),
                ),
                *fastening(book),
                *(leans if ballasted else ()),
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
    """The weight that holds it in each wind, and what it fills."""
    voice = book.voice
    head = (
        voice.say("Ballast that holds it (estimates)"),
        voice.say("Gust"),
        voice.say("On the foot"),
        voice.say("That is"),
    )
    masses = [(name, gust, ballast_kg(book.examination, gust)) for name, gust in WINDS]
    places = len(book.examination.wind.ballast_at)
    rows = tuple(
        (
            voice.say(name),
            voice.tell(speed_words(gust, book.units)),
            mass_words(mass, voice, places),
            plain(filled_words(mass, voice)),
        )
        for name, gust, mass in masses
    )
    return Grid(head, rows, (72, 18, 38, 92), pad=CLOSEST_ROWS)
