"""Crew pages for where it stands: placing it, holding it down, sun and wind."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.after import ballast_tied
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.holding import fastening
from buildplan.booklet.common.loads import filled_words, joints_words, mass_words
from buildplan.design.measures import speed_words
from buildplan.document.blocks import Items, Shown, heading
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.evaluation.ballast import ballast_kg
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.shape.whereabouts import group_words

# Speeds that ballast is told for, beside the draught that it is reckoned with; the ends of Beaufort
# 2 and 3 (mean speeds: gusts run above them).
INDOORS = mark("Indoors, a draught from a door")
OUTDOORS = (
    (mark("Outdoors, wind felt on the face"), 3.3),
    (mark("Outdoors, leaves and twigs in movement"), 5.4),
)
CLOSEST_ROWS = 1.2


def placing(book: Book) -> list[Flowable]:
    """Where it stands, and what holds it there; how ballast is tied, where it takes any."""
    voice = book.voice
    feet, ballasted = book.shape.standing.feet, book.examination.wind.ballast_at
    tips = voice.decimal(book.facts.tip_angle_deg, 1)
    weighed = [
        voice.say(
            "Ballast low at {joints}, the same on each",
            joints=strong(joints_words(ballasted, voice)),
        ),
        voice.say(
            "It goes over when it leans {angle} in its worst direction (estimate)",
            angle=strong(voice.say("{angle} degrees", angle=tips)),
        ),
    ]
    stands = voice.say(
        "Stands on {joints}", joints=strong(voice.tell(group_words(book.shape, feet)))
    )
    tied = ballast_tied(book)
    return [
        heading(voice.say("Where it stands")),
        Items(
            (
                voice.say("Ask the venue which spot; exits, stairs and sockets stay clear"),
                *([] if set(ballasted) == set(feet) else [stands]),
                *fastening(book),
                *(weighed if ballasted else []),
            ),
            ticked=True,
            gap=2.5,
        ),
        *([Shown(tied, book.paper.picture_scale)] if tied else []),
    ]


def weather(voice: Voice) -> list[Flowable]:
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
            )
        ),
    ]


def ballast_table(book: Book) -> list[Flowable]:
    """The weight that holds it in each wind, and what it fills; of a piece that takes ballast."""
    if not book.examination.wind.ballast_at:
        return []
    voice = book.voice
    head = (
        voice.say("Ballast that holds it (estimates)"),
        voice.say("Gust"),
        voice.say("On the foot"),
        voice.say("That is"),
    )
    winds = ((INDOORS, book.examination.wind.draught_m_per_s), *OUTDOORS)
    masses = [(name, gust, ballast_kg(book.examination, gust)) for name, gust in winds]
    places = len(book.examination.wind.ballast_at)
    rows = tuple(
        (
            voice.say(name),
            voice.tell(speed_words(gust, book.units)),
            mass_words(mass, voice, places),
            plain(filled_words(mass, book.constants, voice)),
        )
        for name, gust, mass in masses
    )
    return [Grid(head, rows, (80, 20, 40, 78), pad=CLOSEST_ROWS, after=6)]
