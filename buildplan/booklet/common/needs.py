"""What a builder needs: balloons, tools, people, room, and the order to write down."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.high_work import to_stand_on
from buildplan.booklet.common.holding import to_hold_it_down
from buildplan.booklet.common.manner import people_words
from buildplan.booklet.common.swatches import swatch
from buildplan.design.measures import gauged_words, size_words
from buildplan.document.blocks import Items, heading, together
from buildplan.document.layout import beside
from buildplan.document.printing import Section
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.evaluation import balloon_words
from buildplan.evaluation.figures import minutes_words
from buildplan.evaluation.materials import Purchase
from buildplan.instructions.joining import is_bound
from buildplan.instructions.kneeling import held_for_long
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.sequence.labour import work_minutes
from buildplan.sequence.model import Kind, Step


@dataclass(frozen=True)
class Practised:
    """What a practice piece takes: balloons by key, and tags."""

    counts: Mapping[str, int]
    tags: int


ORDER_PAD = 7.0  # room to write by hand
TAGS = mark("Paper tags or masking tape, and a marker")
SCISSORS = mark("Blunt scissors; no pins, no knives near the piece")
STRIPS = mark("Blunt scissors, latex strips; no pins or knives nearby")
TOOLS: Sequence[str] = (
    mark("Electric inflator for air; a hand pump for repairs"),
    mark("The gauges, cut from stiff card"),
    TAGS,
    SCISSORS,
    mark("Safety glasses for everyone; ear protection beside the inflator"),
    mark("A tape measure"),
    mark("Bags for waste latex, kept from children"),
)


def tags_of(steps: Sequence[Step]) -> list[str]:
    """What is written on the tags of some steps: the letters of chains that wait for their course,
    and joints, as often as each is tagged."""
    letters = [
        operation.chain
        for step in steps
        for operation in step.of_kind(Kind.CHAIN)
        if operation.chain and not operation.adds
    ]
    return letters + [
        joint
        for step in steps
        for operation in step.of_kind(Kind.TAG)
        for joint in operation.joints
    ]


def needs(book: Book, practice: Practised | None = None) -> Section:
    """What you need: balloons with spares and packs, tools, people, room and time. What a
    `practice` piece takes is bought as well."""
    voice = book.voice
    own, practised = len(tags_of(book.steps)), practice.tags if practice else 0
    tools = tuple(
        plain(_tags_words(voice, own, practised) if tool == TAGS else voice.say(tool))
        for tool in tools_of(book)
    )
    tools = (*tools, *map(plain, to_stand_on(book)))
    first = [heading(voice.say("Tools")), Items(tools, ticked=True, gap=6.0)]
    second = [
        heading(voice.say("People, room and time")),
        Items(_people(book)),
        heading(voice.say("To hold it down")),
        Items(tuple(to_hold_it_down(book)), ticked=True),
    ]
    blocks = [
        heading(voice.say("Balloons")),
        _balloons(book, practice.counts if practice else {}),
        *beside(book.paper, first, second),
        _order(book),
    ]
    return Section(voice.say("What you need"), blocks, titled=True)


def tools_of(book: Book) -> list[str]:
    """The tools, as marked messages; strips of latex where they hold knots that have no lock or
    wait for it long (common practice, no source)."""
    context = book.context
    binds = any(is_bound(context, step) or held_for_long(context, step) for step in book.steps)
    return [STRIPS if tool == SCISSORS and binds else tool for tool in TOOLS]


def _tags_words(voice: Voice, own: int, practised: int) -> str:
    if not own + practised:
        return voice.say(TAGS)
    if own and practised:
        return voice.say(
            "Paper or masking tape for {number} tags, {practised} more to practise, and a marker",
            number=own,
            practised=practised,
        )
    tags = own + practised
    return voice.say("Paper or masking tape for {number} tags, and a marker", number=tags)


def _balloons(book: Book, practice: Mapping[str, int]) -> Grid:
    voice, letters, facts = book.voice, book.colour_letters, book.facts
    practised = [
        sum(practice.get(one.key, 0) for one in purchase.balloons) for purchase in facts.purchases
    ]
    rows = [
        (
            strong(", ".join(letters[one.key] for one in purchase.balloons)),
            plain(_purchase_words(book, purchase)),
            ", ".join(
                dict.fromkeys(
                    voice.tell(gauged_words(one.gauge_m, book.units)) for one in purchase.balloons
                )
            ),
            voice.whole(purchase.needed),
            voice.whole(purchase.spare),
            *([voice.whole(practised[number])] if practice else []),
            _to_buy(book, replace(purchase, needed=purchase.needed + practised[number])),
        )
        for number, purchase in enumerate(facts.purchases)
    ]
    spare = sum(purchase.spare for purchase in facts.purchases)
    rows.append(
        (
            "",
            strong(voice.say("all together")),
            "",
            strong(voice.whole(facts.total)),
            strong(voice.whole(spare)),
            *([strong(voice.whole(sum(practised)))] if practice else []),
            "",
        )
    )
    swatches = {
        number: swatch(purchase.balloon, letters[key], book.patterns[key], voice)
        for number, purchase in enumerate(facts.purchases, start=1)
        if (key := purchase.balloon.key)
    }
    head = (
        voice.say("Colour"),
        voice.say("Balloon"),
        voice.say("Size to"),
        voice.say("In the piece"),
        voice.say("Spare, {share}", share=voice.percent(book.design.spare)),
        *([voice.say("Practice")] if practice else []),
        voice.say("To buy"),
    )
    shares = (62, 124, 56, 66, 56, *([62] if practice else []), 94)
    right = frozenset(range(3, len(head)))
    return Grid(head, rows, shares, right, after=12, pictures=swatches)


def _to_buy(book: Book, purchase: Purchase) -> str:
    if purchase.packs is None or purchase.pack_size is None:
        return book.voice.whole(purchase.to_buy)
    return book.voice.say_count(
        "{number} pack of {size}",
        "{number} packs of {size}",
        purchase.packs,
        size=purchase.pack_size,
    )


def _people(book: Book) -> list[str]:
    voice, facts = book.voice, book.facts
    room = voice.tell(size_words(max(facts.width_m, facts.height_m) + 2.0, book.units))
    return [
        strong(people_words(book)),
        voice.say("A clean, smooth floor, about {room} square", room=strong(room)),
        voice.say(
            "About {work} of work, {time} for {people} people (estimates; a first build takes "
            "twice as long)",
            work=strong(minutes_words(facts.work_minutes, voice)),
            time=strong(minutes_words(facts.crew_minutes, voice)),
            people=facts.crew,
        ),
        *_alone(book),
    ]


def _alone(book: Book) -> Iterator[str]:
    """How much of the work one person can do alone, where some of it takes more."""
    alone = [step for step, people in zip(book.steps, book.people, strict=True) if people == 1]
    own = {str(kind): minutes for kind, minutes in book.design.labour.items()}
    minutes = work_minutes(alone, own)
    if not minutes or len(alone) == len(book.steps):
        return
    if minutes_words(minutes, book.voice) == minutes_words(book.facts.work_minutes, book.voice):
        yield book.voice.say("Nearly all can be done alone; each part says how many people")
    else:
        yield book.voice.say(
            "{work} of it can be done alone; each part says how many people it takes",
            work=strong(minutes_words(minutes, book.voice)),
        )


def _purchase_words(book: Book, purchase: Purchase) -> str:
    """A balloon to buy, as a shop calls it."""
    return book.voice.say(
        "{balloon}, {colour}",
        balloon=balloon_words.sized(purchase.balloon, book.units),
        colour=purchase.label,
    )


def _order(book: Book) -> Flowable:
    """Where to write down what was ordered."""
    voice, letters = book.voice, book.colour_letters
    head = (
        voice.say("Colour"),
        voice.say("Ordered from, make and its name of the colour"),
        voice.say("Came on"),
    )
    rows = [
        (strong(", ".join(letters[one.key] for one in purchase.balloons)), "", "")
        for purchase in book.facts.purchases
    ]
    grid = Grid(head, rows, (62, 330, 104), pad=ORDER_PAD)
    return together(heading(voice.say("Your order")), grid)
