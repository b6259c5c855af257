"""What leads from a step to other pages: its joints on the map, the pictures of its moves, the
steps that it names."""

from __future__ import annotations

from collections.abc import Mapping

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.map_links import to_the_map
from buildplan.booklet.common.map_sheets import MapSheets, step_place
from buildplan.document.links import PageLink
from buildplan.document.text import underlined
from buildplan.framework.cells import STRAIGHT
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Step


def looked_up(
    book: Book, sheets: MapSheets, step: Step, practised: Mapping[int, str]
) -> list[Flowable]:
    """Where a step's joints are on the map, where its moves were practised, and the pages of the
    steps that have its moves: at every course and corner, else where it is the first to name them.
    """
    voice = book.voice

    def told(page: int) -> str:
        return voice.say("shown from page {page}", page=page)

    shown = [practised[step.number]] if step.number in practised else []
    links = [PageLink(place, lambda page: underlined(told(page)), told) for place in shown]
    earlier = {n for one in book.steps[: step.number - 1] for n in book.told(one).as_in}
    every = step.kind is Kind.JOIN or bool(set(step.cells) - {STRAIGHT})
    wanted = [number for number in book.told(step).as_in if every or number not in earlier]
    steps = [page_of_step(voice, book.steps[number - 1]) for number in wanted]
    return [*to_the_map(book, sheets, [step]), *links, *steps]


def page_of_step(voice: Voice, step: Step) -> PageLink:
    """What leads to a step: its number and its page."""

    def words(page: int) -> str:
        return voice.say("step {step}: page {page}", step=step.number, page=page)

    return PageLink(step_place(step), lambda page: underlined(words(page)), words)


def page_alone(voice: Voice, step: Step) -> PageLink:
    """What leads to a step by its page alone."""

    def words(page: int) -> str:
        return voice.say("step {step}: page {page}", step=step.number, page=page)

    def shown(page: int) -> str:
        return underlined(voice.say("page {page}", page=page))

    return PageLink(step_place(step), shown, words)


def told_at_step(voice: Voice, step: Step) -> PageLink:
    """What leads from pictures to the step that has the words for them."""

    def words(page: int) -> str:
        return voice.say("step {step}: page {page}", step=step.number, page=page)

    return PageLink(step_place(step), lambda page: underlined(words(page)), words, after=4.0)
