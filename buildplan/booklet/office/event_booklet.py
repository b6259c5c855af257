"""An event on paper: what is built and when, what is loaded, who does what, what is bought."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.cautions import LATEX_WORDS, choking_blocks
from buildplan.booklet.crew.front import SHORT_CAUTIONS, WARNING
from buildplan.booklet.office.event_down import down_blocks
from buildplan.booklet.office.event_front import front_blocks
from buildplan.booklet.office.event_load import load_blocks, load_rows
from buildplan.booklet.office.event_times import times_blocks, timetable_rows
from buildplan.booklet.office.event_ways import place_blocks, vehicle_blocks
from buildplan.booklet.office.shopping_page import counted_blocks
from buildplan.business.buying.shopping import shopping_rows
from buildplan.business.events.event_plan import EventPlan
from buildplan.business.events.loading import load_of, on_trips
from buildplan.document.blocks import Items, Words, heading, together
from buildplan.document.paper import Paper
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.text import SMALL, STRONG, plain, strong
from buildplan.language.voice import Voice
from buildplan.source.csv_text import csv_bytes


def print_event(plan: EventPlan, paper: Paper, voice: Voice) -> bytes:
    """The event's pages as a tagged PDF. The same plan gives the same bytes.

    They go with the crew: nothing on them says what anything costs.
    """
    title = voice.say("{event}: times, load and shopping", event=plan.event.name)
    sections = event_sections(plan, paper, voice)
    return print_document(Document(sections, paper, voice, title, foot=plan.event.name))


def event_tables(plan: EventPlan, voice: Voice) -> Mapping[str, bytes]:
    """The lists of the event's pages as tables for spreadsheets, by what each is called."""
    load = load_of(plan, voice)
    plan = on_trips(plan, load)
    rows = {
        "shopping": shopping_rows(plan.shopping, voice),
        "timetable": timetable_rows(plan, voice),
        "load": load_rows(plan, load, voice),
    }
    return {what: csv_bytes(table) for what, table in rows.items()}


def event_sections(plan: EventPlan, paper: Paper, voice: Voice) -> list[Section]:
    """All pages of an event, in the order in which the day comes to need them."""
    load = load_of(plan, voice)
    plan = on_trips(plan, load)
    parts: Sequence[tuple[str, Sequence[Flowable], bool]] = (
        (plan.event.name, front_blocks(plan, load, voice), False),
        (voice.say("Load list"), load_blocks(plan, load, paper, voice), False),
        (voice.say("Vehicles"), vehicle_blocks(plan, load, voice), True),
        (voice.say("At the place"), place_blocks(plan, voice), True),
        (voice.say("Who does what when"), times_blocks(plan, paper.measure, voice), False),
        (voice.say("Taking down"), down_blocks(plan, voice), True),
        (voice.say("Cautions"), _cautions(paper, voice), True),
        (voice.say("Shopping list"), counted_blocks(plan.shopping, voice), True),
    )
    return [
        Section(title, blocks, titled=True, runs_on=runs_on) for title, blocks, runs_on in parts
    ]


def _cautions(paper: Paper, voice: Voice) -> list[Flowable]:
    """The regulation's words, and the cautions that matter at any place."""
    blocks = [
        *choking_blocks(paper, voice),
        Words(plain(voice.say(LATEX_WORDS)), STRONG, after=5),
        heading(voice.say("At any place")),
        Items(
            tuple(
                f"{strong(voice.say(signal))} {plain(voice.say(words))}"
                for signal, words in SHORT_CAUTIONS
                if signal == WARNING
            ),
            gap=2.0,
            after=4,
        ),
        Words(
            voice.say(
                "Local codes and licensed practice come first; further cautions are in each "
                "booklet."
            ),
            SMALL,
        ),
    ]
    return [together(*blocks)]
