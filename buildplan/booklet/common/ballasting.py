"""Ballast in the step that first needs it: how much, where, and the page that says more; and what
is to be looked to before a piece is stood up."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.lifting import all_locked
from buildplan.booklet.common.loads import joints_words, mass_words
from buildplan.booklet.common.needs import tags_of
from buildplan.booklet.common.panel_rows import ROW_GAP
from buildplan.booklet.common.tags_off import tags_off_before
from buildplan.document.blocks import Items, Words
from buildplan.document.links import PageLink
from buildplan.document.printing import Section
from buildplan.document.text import plain, strong, underlined
from buildplan.evaluation.ballast import ballast_each_kg
from buildplan.instructions.coming import coming
from buildplan.instructions.model import Doing
from buildplan.instructions.setting_up import is_tying
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.sequence.model import Kind, Step
from buildplan.shape.carrying import walk_through
from buildplan.shape.whereabouts import group_words

STANDING = mark("Hold it down, carry it")

NEXT = (1, 2)  # joints along a chain


def is_ballasted(book: Book, step: Step) -> bool:
    """Whether ballast comes on in a step, unless the piece is fastened to what holds it: where it
    first grows up from the floor, where parts that stand are first tied, or where it is stood
    up."""
    at = book.examination.wind.ballast_at
    return bool(at) and step.number == _first_needing(book, at)


def _first_needing(book: Book, at: Sequence[str]) -> int:
    """The number of the step in which ballast comes on at some joints."""
    last = next(step.number for step in book.steps if step.kind is Kind.STAND_UP)
    if not book.figures.stands:
        return last
    stood = book.figures.set_up
    if book.framework.parts:
        on_floor = stood is not None and {
            part.name for part in map(book.framework.part_at, at) if part is not None
        } <= set(stood.standing)
        tying = next((step.number for step in book.steps if is_tying(step)), last)
        return tying if on_floor else last
    joined: set[str] = set()
    for step in book.steps:
        if set(at) <= joined and coming(book.context, step):
            return step.number
        joined |= {operation.joints[0] for operation in step.of_kind(Kind.JOIN)}
    return last


def ballast_act(book: Book) -> Doing:
    """Ballast tied on while more of the piece is still to come."""
    told = book.voice.say(
        "Tie ballast of {each} to each of {joints} now: it keeps what stands from falling over"
        " while the rest comes on.",
        **_masses(book),
    )
    return Doing(sentences(told, where_bags_lie(book)))


def where_bags_lie(book: Book) -> str:
    """On which side of the foot ballast lies: where people walk through, not between the legs."""
    if walk_through(book.framework, book.shape) is None:
        return book.voice.say("Every bag lies outside the foot.")
    return book.voice.say("Every bag lies before or behind its foot, none in the way through.")


def begins_in_place(book: Book, step: Step) -> bool:
    """Whether a step is the first on the floor of what is ballasted while it grows, so that it
    cannot be moved afterwards."""
    at = book.examination.wind.ballast_at
    if not at or book.framework.parts or not book.figures.stands or not coming(book.context, step):
        return False
    first = next(other for other in book.steps if coming(book.context, other))
    last = next(other for other in book.steps if other.kind is Kind.STAND_UP)
    return step.number == first.number and _first_needing(book, at) < last.number


def place_act(book: Book) -> Doing:
    """That what is ballasted while it grows is built in its place."""
    return Doing(book.voice.say("Build it where it will stand: ballast is tied on while it grows."))


def ballast_row(book: Book) -> str:
    """Ballast, to be ticked before anybody lets go."""
    return book.voice.say("Tie ballast of {each} to each of {joints}, then let go", **_masses(book))


def _masses(book: Book) -> Mapping[str, str]:
    return {
        "each": mass_words(ballast_each_kg(book.examination), book.voice),
        "joints": joints_words(book.examination.wind.ballast_at, book.voice),
    }


def tags_beside(book: Book, joints: Collection[str]) -> Mapping[str, str]:
    """The tagged joint next to each of those `joints` at the front that have no tag of their own,
    where there is one on its chain no further off than `NEXT`; none of `joints`, each once."""
    tagged, found = {*tags_of(book.steps)}, dict[str, str]()
    for joint in joints:
        along = next((o.chain.joints for o in book.framework.chains if joint in o.chain.joints), ())
        if not along or joint in tagged or book.shape.at[joint][2] < 0:
            continue
        at = along.index(joint)
        near = (along[(at + way * off) % len(along)] for off in NEXT for way in (1, -1))
        tag = next((one for one in near if one in tagged), None)
        if tag is not None and tag not in {*joints, *found.values()}:
            found[joint] = tag
    return found


def before_standing(book: Book, step: Step) -> Sequence[Flowable]:
    """What is to be looked to before a piece is lifted, or let go; of any other step nothing."""
    if step.kind is not Kind.STAND_UP:
        return ()
    voice = book.voice
    rows = [*map(strong, all_locked(book)), *ready_rows(book, step)]
    title = voice.say("Before you let go") if book.figures.stands else voice.say("Before you lift")
    return (Words(strong(title), after=3.0, keep=True), Items(rows, ticked=True, gap=ROW_GAP))


def ready_rows(book: Book, step: Step) -> list[str]:
    """Where the piece lies, and who and what is there before it is lifted, or let go."""
    voice = book.voice
    in_place = book.figures.stands and not book.figures.hung
    ready = []
    if book.examination.wind.ballast_at:
        ready.append(
            voice.say("Ballast lies ready")
            if is_ballasted(book, step)
            else voice.say("Ballast is on: {each} at each of {joints}", **_masses(book))
        )
    return [
        *_turned(book),
        *([] if in_place else [voice.say("The way to its place is clear")]),
        voice.say(
            "{people} people or more are there, shoes on, hands free",
            people=strong(voice.whole(step.operations[0].people)),
        ),
        *map(plain, (*tags_off_before(book), *ready)),
    ]


def _turned(book: Book) -> Sequence[str]:
    """How what is turned up on a foot lies before it is lifted."""
    if book.figures.stands or book.shape.holding.hung:
        return ()
    feet = book.voice.tell(group_words(book.shape, book.shape.standing.feet))
    return (
        book.voice.say(
            "Turned on the floor: its foot ({joints}) points to where it will stand",
            joints=strong(feet),
        ),
    )


def ballast_link(book: Book, step: Step) -> Sequence[PageLink]:
    """What leads from a step that ballasts a piece or stands it up to the page about it."""
    if step.kind is not Kind.STAND_UP and not is_ballasted(book, step):
        return ()
    voice = book.voice
    title = voice.say(STANDING)

    ballasted = bool(book.examination.wind.ballast_at)

    def words(page: int) -> str:
        return voice.say("To {title}, page {page}", title=title, page=page)

    def markup(page: int) -> str:
        told = voice.say("ballast: page {page}", page=page) if ballasted else words(page)
        return underlined(told)

    here = underlined(voice.say("ballast: below on this page")) if ballasted else ""
    return (PageLink(Section(title, ()).place, markup, words, after=10.0, here=here),)
