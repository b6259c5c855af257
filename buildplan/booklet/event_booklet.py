"""An event on paper: what is built and when, what is bought, who does what, what is loaded."""

from __future__ import annotations

from buildplan.booklet.cautions import (
    CHOKING_EUROPE,
    LATEX_WORDS,
    choking_box,
    law_words,
)
from buildplan.booklet.event_load import load_blocks
from buildplan.booklet.event_plan import Copy, EventPlan, five_minutes_before, moment_words
from buildplan.booklet.event_times import times_blocks
from buildplan.booklet.flow import Block, Grid, Items, Words, heading, leaves_of
from buildplan.booklet.pages_crew import SHORT_CAUTIONS
from buildplan.booklet.pages_shopping import shopping_leaves
from buildplan.booklet.paper import Paper
from buildplan.booklet.press import LEAD, SMALL, STRONG, Leaf, Press, plain, strong
from buildplan.booklet.words import minutes_words, weight_words
from buildplan.design.measures import Units, size_words
from buildplan.language.speaking import say
from buildplan.sequence.timetable import RESERVE, Place
from buildplan.sequence.words.times import duration


def print_event(plan: EventPlan, paper: Paper) -> bytes:
    """The event's pages as a tagged PDF. The same plan gives the same bytes."""
    press = Press(paper, plan.event.name)
    return press.print(
        event_leaves(plan, paper),
        title=f"{plan.event.name}: shopping, times and load",
        author="buildplan",
    )


def event_leaves(plan: EventPlan, paper: Paper) -> list[Leaf]:
    """All pages of an event."""
    return [
        *leaves_of(paper, plan.event.name, _front(plan)),
        *shopping_leaves(plan.shopping, paper),
        *leaves_of(paper, "Who does what when", times_blocks(plan, paper.measure)),
        *leaves_of(paper, "Load list", load_blocks(plan)),
    ]


def _front(plan: EventPlan) -> list[Block]:
    units = plan.shopping.units
    pieces = tuple(
        (
            strong(f"{piece.count} x"),
            plain(copy.book.facts.name),
            _size(copy, units),
            weight_words(copy.book.facts.mass_kg),
            str(copy.book.facts.total * piece.count),
        )
        for piece, copy in zip(plan.event.designs, _first_of_each(plan), strict=True)
    )
    total = sum(copy.book.facts.total for copy in plan.copies)
    return [
        Words(
            f"{strong(str(len(plan.copies)))} pieces, {strong(str(total))} balloons, "
            f"{strong(str(plan.event.crew))} people; open at {strong(plan.event.opening)}",
            LEAD,
            after=10,
        ),
        heading("Pieces"),
        Grid(
            ("", "Piece", "Width, height, depth of one", "Weight of one", "Balloons"),
            (*pieces, ("", strong("all together"), "", "", strong(str(total)))),
            (26, 120, 150, 100, 60),
            frozenset({4}),
            after=4,
        ),
        Words(
            "Sizes and weights are estimates. Each piece is built from its own booklet.",
            SMALL,
            after=10,
        ),
        heading("The day"),
        Grid(("When", "What"), tuple(_day(plan)), (110, 350), after=4),
        Words(
            f"The latest times, with {RESERVE:.0%} held back for breaks, bursts and mistakes "
            "(estimates, practised hands; first builds take about twice as long).",
            SMALL,
            after=12,
        ),
        choking_box(),
        Words(plain(say(CHOKING_EUROPE))),
        Words(plain(law_words(LATEX_WORDS)), STRONG, after=8),
        Items(
            tuple(
                f"{strong(signal)} {plain(words)}"
                for signal, words in SHORT_CAUTIONS
                if signal == "WARNING"
            ),
            after=6,
        ),
        Words(
            "Local codes and licensed practice come first; further cautions are in each booklet.",
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
    return " x ".join(size_words(m, units) for m in (facts.width_m, facts.height_m, facts.depth_m))


def _day(plan: EventPlan) -> list[tuple[str, str]]:
    opening = plan.opening
    rows = []
    for part in plan.timetable.parts:
        where = "in the workshop" if part.place is Place.WORKSHOP else "on site"
        starts = moment_words(five_minutes_before(plan.starts[part.place]), opening)
        if part.place is Place.SITE and len(plan.timetable.parts) > 1 and plan.leave is not None:
            leave = moment_words(five_minutes_before(plan.leave), opening)
            rows.append((strong(leave), f"Leave: {duration(plan.event.travel)} to the place"))
        rows.append(
            (
                strong(starts),
                f"Start {where}: {minutes_words(part.minutes)} for {plan.event.crew} people, "
                f"{minutes_words(part.work)} of work",
            )
        )
    rows.append((strong(plan.event.opening), "All stands, exits clear, bags of waste tied shut"))
    return rows
