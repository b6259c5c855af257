"""Crew pages for after it stands: looking after it, taking it down, what was different."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book, counted_words
from buildplan.booklet.common.going_down import going_down
from buildplan.booklet.crew.arriving import placing, weather
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, heading
from buildplan.document.layout import Columns, is_wide
from buildplan.document.tables import Grid
from buildplan.document.text import plain
from buildplan.language.phrases import clauses


def while_standing(book: Book) -> list[Flowable]:
    """Where it stands and what the weather does to it; what is looked after; what was different
    this time; taking down; waste."""
    voice = book.voice
    first = [
        *placing(book),
        heading(voice.say("While it stands")),
        _looking_after(book),
        *_this_time(book),
    ]
    second = [*weather(voice), heading(voice.say("Take it down")), _taking_down(book)]
    if not is_wide(book.paper):
        return [*first, *second]
    return [Columns((first, second), whole=False)]


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
            voice.say(
                "Wind rising, rain or lightning: take it down at once. Who decides: "
                "____________________"
            ),
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


def _this_time(book: Book) -> list[Flowable]:
    """Room for what came out otherwise than planned, beside the times of the schedule."""
    voice, facts, units = book.voice, book.facts, book.units
    width, height = (voice.tell(size_words(m, units)) for m in (facts.width_m, facts.height_m))
    planned = f"{width} x {height}"
    rows = (
        (voice.say("Balloons burst"), "", ""),
        (voice.say("Width x height, measured"), planned, ""),
    )
    head = (voice.say("This time"), voice.say("Planned"), voice.say("Took"))
    return [Grid(head, rows, (74, 62, 22), pad=0.8)]
