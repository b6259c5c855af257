"""An event on paper: what is built and when, what is bought, who does what, what is loaded."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.cautions import (
    LATEX_WORDS,
    choking_blocks,
)
from buildplan.booklet.crew.pages import SHORT_CAUTIONS, WARNING
from buildplan.booklet.office.event_load import load_blocks
from buildplan.booklet.office.event_times import times_blocks
from buildplan.booklet.office.shopping_page import shopping_section
from buildplan.business.events.event_plan import Copy, EventPlan, five_minutes_before, moment_words
from buildplan.design.measures import Units, size_words
from buildplan.document.blocks import Items, Words, heading
from buildplan.document.paper import Paper
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.tables import Grid
from buildplan.document.text import LEAD, SMALL, STRONG, plain, strong
from buildplan.evaluation.figures import minutes_words, weight_words
from buildplan.instructions.times import duration
from buildplan.language.grammar import percent
from buildplan.language.speaking import mark, say, spoken_voice, whole
from buildplan.sequence.timetable import RESERVE, Place

CLOSE_ROWS = 2.5


def print_event(plan: EventPlan, paper: Paper) -> bytes:
    """The event's pages as a tagged PDF. The same plan gives the same bytes."""
    title = say("{event}: shopping, times and load", event=plan.event.name)
    sections = event_sections(plan, paper)
    return print_document(Document(sections, paper, spoken_voice(), title, foot=plan.event.name))


def event_sections(plan: EventPlan, paper: Paper) -> list[Section]:
    """All pages of an event."""
    return [
        Section(plan.event.name, _front(plan, paper), titled=True),
        shopping_section(plan.shopping),
        Section(say("Who does what when"), times_blocks(plan, paper.measure), titled=True),
        Section(say("Load list"), load_blocks(plan), titled=True),
    ]


def _front(plan: EventPlan, paper: Paper) -> list[Flowable]:
    units = plan.shopping.units
    pieces = tuple(
        (
            strong(say("{number} x", number=piece.count)),
            plain(copy.book.facts.name),
            _size(copy, units),
            weight_words(copy.book.facts.mass_kg, spoken_voice()),
            whole(copy.book.facts.total * piece.count),
        )
        for piece, copy in zip(plan.event.designs, _first_of_each(plan), strict=True)
    )
    total = sum(copy.book.facts.total for copy in plan.copies)
    return [
        Words(
            say(
                "{pieces} pieces, {balloons} balloons, {people} people; open at {time}",
                pieces=strong(whole(len(plan.copies))),
                balloons=strong(whole(total)),
                people=strong(whole(plan.event.crew)),
                time=strong(plan.event.opening),
            ),
            LEAD,
            after=10,
        ),
        heading(say("Pieces")),
        Grid(
            (
                "",
                say("Piece"),
                say("Width, height, depth of one"),
                say("Weight of one"),
                say("Balloons"),
            ),
            (*pieces, ("", strong(say("all together")), "", "", strong(whole(total)))),
            (26, 120, 150, 100, 60),
            frozenset({4}),
            pad=CLOSE_ROWS,
            after=4,
        ),
        Words(
            say("Sizes and weights are estimates. Each piece is built from its own booklet."),
            SMALL,
            after=10,
        ),
        heading(say("The day")),
        Grid((say("When"), say("What")), tuple(_day(plan)), (110, 350), pad=CLOSE_ROWS, after=4),
        Words(
            say(
                "The latest times, with {reserve} held back for breaks, bursts and mistakes "
                "(estimates, practised hands; first builds take about twice as long).",
                reserve=percent(RESERVE),
            ),
            SMALL,
            after=8,
        ),
        *choking_blocks(paper, spoken_voice()),
        Words(plain(say(LATEX_WORDS)), STRONG, after=5),
        Items(
            tuple(
                f"{strong(say(signal))} {plain(say(words))}"
                for signal, words in SHORT_CAUTIONS
                if signal == WARNING
            ),
            gap=2.0,
            after=4,
        ),
        Words(
            say(
                "Local codes and licensed practice come first; further cautions are in each "
                "booklet."
            ),
            SMALL,
        ),
    ]


def _first_of_each(plan: EventPlan) -> list[Copy]:
    found, at = [], 0
    for piece in plan.event.designs:
        found.append(plan.copies[at])
        at += piece.count
    return found


def _size(copy: Copy, units: Units) -> str:
    facts = copy.book.facts
    return " x ".join(
        spoken_voice().tell(size_words(m, units))
        for m in (facts.width_m, facts.height_m, facts.depth_m)
    )


def _day(plan: EventPlan) -> list[tuple[str, str]]:
    opening = plan.opening
    rows = []
    for part in plan.timetable.parts:
        starts = moment_words(five_minutes_before(plan.starts[part.place]), opening)
        if part.place is Place.SITE and len(plan.timetable.parts) > 1 and plan.leave is not None:
            leave = moment_words(five_minutes_before(plan.leave), opening)
            travel = duration(spoken_voice(), plan.event.travel)
            way = say("Leave: {time} to the place", time=travel)
            rows.append((strong(leave), way))
        rows.append(
            (
                strong(starts),
                say(
                    mark("Start in the workshop: {time} for {people} people, {work} of work")
                    if part.place is Place.WORKSHOP
                    else mark("Start on site: {time} for {people} people, {work} of work"),
                    time=minutes_words(part.minutes, spoken_voice()),
                    people=plan.event.crew,
                    work=minutes_words(part.work, spoken_voice()),
                ),
            )
        )
    done = say("All stands, exits clear, bags of waste tied shut")
    rows.append((strong(plan.event.opening), done))
    return rows
