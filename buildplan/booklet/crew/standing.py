"""Crew pages for after it stands: looking after it, taking it down, what was different."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book, counted_words
from buildplan.booklet.common.going_down import going_down
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, heading
from buildplan.document.layout import beside
from buildplan.document.tables import Grid
from buildplan.document.text import plain
from buildplan.instructions.times import duration
from buildplan.language.phrases import clauses
from buildplan.sequence.timetable import Timetable, WorkPlace


def while_standing(book: Book, plan: Timetable) -> list[Flowable]:
    """While it stands; what was different this time; taking down; waste."""
    voice = book.voice
    after = [heading(voice.say("While it stands")), _looking_after(book)]
    took = [heading(voice.say("This time")), _this_time(book, plan)]
    return [
        *beside(book.paper, after, took),
        heading(voice.say("Take it down")),
        _taking_down(book),
    ]


def _looking_after(book: Book) -> Items:
    voice = book.voice
    spare = clauses(
        voice, (counted_words(book, p.balloon.key, p.spare) for p in book.facts.purchases)
    )
    return Items(
        (
            voice.say(
                "Spares stay near, with a hand pump and the gauges: {spares}",
                spares=plain(spare),
            ),
            voice.say(
                "Look it over each morning: locks on, feet down, ballast in place, exits clear"
            ),
            voice.say("Pick up every piece of a broken balloon at once"),
        ),
        ticked=True,
        gap=2.5,
    )


def _taking_down(book: Book) -> Items:
    voice = book.voice
    return Items(
        (
            *going_down(book),
            voice.say("Take off ties and tape; keep ballast and gauges for next time"),
            voice.say("Sweep; look under furniture. Nothing goes outdoors, nothing down a drain"),
            voice.say(
                "Tie the waste bags shut, out of the reach of children and animals; latex "
                "goes where local rules say"
            ),
        ),
        ticked=True,
        gap=2.5,
    )


def _this_time(book: Book, plan: Timetable) -> Grid:
    """What was planned, beside room for what it took."""
    voice, facts, units = book.voice, book.facts, book.units
    width, height = (voice.tell(size_words(m, units)) for m in (facts.width_m, facts.height_m))
    minutes = {part.place: duration(voice, part.minutes) for part in plan.parts}
    rows = (
        (voice.say("Beforehand"), minutes.get(WorkPlace.WORKSHOP, ""), ""),
        (voice.say("On site"), minutes.get(WorkPlace.SITE, ""), ""),
        (voice.say("Balloons burst"), "", ""),
        (voice.say("Width x height, measured"), f"{width} x {height}", ""),
    )
    return Grid(("", voice.say("Planned"), voice.say("Took")), rows, (74, 54, 26), pad=2.0)
