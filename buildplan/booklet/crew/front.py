"""The first page of the crew edition: what it is, its jobs, its cautions in short."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.cautions import LATEX_WORDS, choking_box
from buildplan.booklet.common.front import draft_notice
from buildplan.booklet.common.holding import held_words
from buildplan.booklet.common.manner import people_words
from buildplan.booklet.common.phone_code import code_of_piece
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.layout import beside, is_wide
from buildplan.document.tables import Grid
from buildplan.document.text import LEAD, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_words
from buildplan.drawing.two_views import front_and_side
from buildplan.evaluation.figures import weight_words
from buildplan.instructions.times import duration
from buildplan.language.messages import mark
from buildplan.language.phrases import clauses, people_counted
from buildplan.language.voice import Voice
from buildplan.sequence.timetable import Timetable, WorkPlace
from buildplan.shape.whereabouts import group_words

WARNING = mark("WARNING")
# The cautions of cautions.py as a crew reads them again before each job.
SHORT_CAUTIONS: Sequence[tuple[str, str]] = (
    (
        WARNING,
        mark("Keep exits, stairs, extinguishers and wheelchair ways clear. Ask the venue."),
    ),
    (
        WARNING,
        mark("Keep off overhead lines, sockets and hot lamps. Wiring is for an electrician."),
    ),
    (
        WARNING,
        mark("Ladders: firm, level ground, somebody to hold it, local rules for work at height."),
    ),
    (
        WARNING,
        mark("Wind: ballast and ties that somebody competent has checked; take down in time."),
    ),
    (
        mark("CAUTION"),
        mark("Safety glasses on; ear protection beside the inflator; face away."),
    ),
    (
        mark("CAUTION"),
        mark("Two or more to lift, turn and carry. Clear the way first. Ask about latex allergy."),
    ),
    (mark("CAUTION"), mark("Air only. Never breathe gas from a balloon.")),
    (
        mark("NOTICE"),
        mark("Heat makes balloons grow and burst. Sweep grit, staples and splinters away."),
    ),
)

CLOSEST_ROWS = 0.8
PICTURE_WIDTH, PICTURE_HEIGHT = 250.0, 148.0  # at most
PICTURE_SHARE, GAP = 0.46, 12.0


def front(book: Book, plan: Timetable) -> list[Flowable]:
    """What it is, how big, how many, how long; the regulation's words."""
    voice, enlarged = book.voice, book.paper.picture_scale
    seen: list[Flowable] = [Shown(_views(book), enlarged), *code_of_piece(book)]
    figures = [Items(_figures(book, plan)), Words(strong(voice.say(LATEX_WORDS)))]
    return [
        Words(strong(voice.say("Crew edition")), LEAD, after=4),
        *draft_notice(book),
        *beside(book.paper, seen, figures, PICTURE_SHARE),
        choking_box(book.paper, voice),
        _short_cautions(voice),
    ]


def _views(book: Book) -> Picture:
    """The finished piece from the front and from the side, and how wide, high and deep it is."""
    voice, facts, enlarged = book.voice, book.facts, book.paper.picture_scale
    room = book.paper.measure
    wide = min(room, PICTURE_WIDTH) if not is_wide(book.paper) else PICTURE_SHARE * room - GAP
    seen = (finished_words(book.framework, CAMERAS[name], voice) for name in ("front", "side"))
    return front_and_side(
        book.framework,
        book.shape,
        wide / enlarged,
        PICTURE_HEIGHT / enlarged,
        (
            voice.tell(size_words(facts.width_m, book.units)),
            voice.tell(size_words(facts.height_m, book.units)),
            voice.tell(size_words(facts.depth_m, book.units)),
        ),
        " ".join(seen),
        book.patterns,
    )


def _figures(book: Book, plan: Timetable) -> tuple[str, ...]:
    """The figures that a crew asks for first."""
    voice, facts = book.voice, book.facts
    sides = (facts.width_m, facts.height_m, facts.depth_m)
    size = " x ".join(voice.tell(size_words(metres, book.units)) for metres in sides)
    balloons = voice.say("{count} balloons", count=strong(voice.whole(facts.total)))
    return (
        ", ".join([balloons, *_parts(book)]),
        voice.say(
            "{size} wide, high, deep; {weight} (estimates)",
            size=strong(size),
            weight=strong(weight_words(facts.mass_kg, voice)),
        ),
        strong(people_words(book)),
        voice.say(
            "{times} for {people}, practised (estimates)",
            times=clauses(
                voice,
                [
                    voice.say(
                        "{part}: {time}",
                        part=_place(part.place, voice),
                        time=strong(duration(voice, part.minutes)),
                    )
                    for part in plan.parts
                ],
            ),
            people=people_counted(voice, facts.crew),
        ),
        voice.say(
            "Stands on {joints}",
            joints=strong(voice.tell(group_words(book.shape, book.shape.standing.feet))),
        ),
        *map(strong, held_words(book)),
    )


def _place(place: WorkPlace, voice: Voice) -> str:
    if place is WorkPlace.WORKSHOP:
        return voice.say("Beforehand")
    return voice.say("On site")


def _parts(book: Book) -> list[str]:
    voice = book.voice
    facts = book.facts
    parts = (
        (facts.braces, voice.say_count("{number} brace", "{number} braces", facts.braces)),
        (facts.singles, voice.say_count("{number} single", "{number} singles", facts.singles)),
        (facts.locks, voice.say_count("{number} lock", "{number} locks", facts.locks)),
    )
    return [words for count, words in parts if count]


def _short_cautions(voice: Voice) -> Grid:
    head = ("", voice.say("Cautions in short; local codes and licensed practice come first"))
    rows = tuple(
        (strong(voice.say(signal)), plain(voice.say(words))) for signal, words in SHORT_CAUTIONS
    )
    return Grid(head, rows, (21, 100), pad=CLOSEST_ROWS)
