"""Crew pages for before the day: what is prepared, how it is packed, what is loaded."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from decimal import Decimal

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import ballast_words, balloon_words, bulk_words
from buildplan.booklet.common.needs import TAGS, TOOLS
from buildplan.business.buying.money import cost, money_words
from buildplan.business.buying.packing import Bag
from buildplan.business.buying.shopping import packs_words
from buildplan.design.measures import length_words
from buildplan.document.blocks import Items, Words, heading
from buildplan.document.layout import beside
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, plain, strong, unbroken
from buildplan.evaluation.figures import air_words, minutes_words, nominal_words
from buildplan.framework.model import BalloonType
from buildplan.language.speaking import mark
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import Job
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.reach import lifters
from buildplan.sequence.words.grammar import runs_told

CLOSE_ROWS = 2.5

# How hands work, for those who know it, in a line each.
MOVES: dict[Kind, str] = {
    Kind.SIZE: mark("Size against the gauge, a little over; let air out until it slips through."),
    Kind.PAIR: mark("Pair neck to neck: necks round each other twice, then tie."),
    Kind.CHAIN: mark("Chain pairs tail to tail with a double knot."),
    Kind.CLOSE_RING: mark("Close a ring without a twist; the closing knot is its joint 1."),
    Kind.BRACE: mark(
        "Lead a brace through its joints in the row's order, knot on knot; settle it."
    ),
    Kind.SINGLE: mark("Tie a single straight across, tail first, then its closed neck."),
    Kind.JOIN: mark("Bring the knots at a joint together before it is locked."),
    Kind.LOCK: mark("Lock: knot on the joint, a round to either side, twist until nothing slips."),
}


def preparing(book: Book, work: Sequence[Job], packed: Sequence[Bag]) -> list[Flowable]:
    """What is sized and tied in the workshop, and what goes into which bag."""
    voice = book.voice
    sizes = tuple(
        (
            strong(letter),
            _balloon(book, book.framework.balloons[key], book.framework.balloons[key].label),
            strong(length_words(book.framework.balloons[key].gauge_m, book.units)),
            strong(voice.whole(book.facts.counts[key])),
        )
        for key, letter in book.colour_letters.items()
    )
    blocks: list[Flowable] = [
        *_buying(book),
        heading(voice.say("Size")),
        Grid(
            ("", voice.say("Balloon"), voice.say("Gauge"), voice.say("Count")),
            sizes,
            (10, 80, 28, 24),
            frozenset({3}),
            pad=CLOSE_ROWS,
        ),
    ]
    kinds = {kind for step in book.steps for kind in step.kinds}
    blocks += [
        heading(voice.say("How we tie")),
        Items(
            tuple(plain(voice.say(words)) for kind, words in MOVES.items() if kind in kinds),
            gap=2.5,
        ),
    ]
    for job in work:
        if job.portable:
            blocks.append(
                heading(voice.say("Job {number}: {title}", number=job.number, title=job.title))
            )
            blocks.append(Items(tuple(_lines(job.steps)), ticked=True, gap=2.5))
    rows = tuple(
        (
            strong(unbroken(bag.label)),
            plain(bag.holds),
            voice.whole(bag.balloons),
            plain(bulk_words(bag.bulk_m3, book.units, voice)),
            "",
        )
        for bag in packed
    )
    all_bags = (
        "",
        voice.say("all together"),
        strong(voice.whole(sum(bag.balloons for bag in packed))),
        strong(bulk_words(sum(bag.bulk_m3 for bag in packed), book.units, voice)),
        "",
    )
    blocks += [
        heading(voice.say("Bags: one label on each bag, the same words as here")),
        Grid(
            (
                voice.say("Label"),
                voice.say("Holds"),
                voice.say("Balloons"),
                voice.say("Bulk"),
                voice.say("Packed"),
            ),
            (*rows, all_bags),
            (32, 90, 27, 27, 25),
            frozenset({2, 3}),
            pad=CLOSE_ROWS,
            after=6,
        ),
        Words(
            voice.say(
                "Bulk is loosely filled (an estimate). What is too much for one bag goes into "
                "more bags of the same label: write 1 of 2, 2 of 2. Smooth bags; keep them warm, "
                "out of the sun and off the floor."
            ),
            SMALL,
        ),
    ]
    return blocks


def _balloon(book: Book, balloon: BalloonType, colour: str) -> str:
    voice = book.voice
    words = voice.say(
        "{balloon}, {colour}", balloon=nominal_words(balloon, book.units), colour=colour
    )
    return plain(words)


def _buying(book: Book) -> list[Flowable]:
    """What to buy in whole packs, and what else a quote is made from: cost, air, work."""
    voice = book.voice
    facts, letters, currency = book.facts, book.colour_letters, book.design.currency
    costs = [None if currency is None else cost(p, currency) for p in facts.purchases]
    rows = tuple(
        (
            strong(", ".join(letters[balloon.key] for balloon in p.balloons)),
            _balloon(book, p.balloon, p.label),
            voice.whole(p.needed),
            voice.whole(p.spare),
            strong(packs_words(p)),
        )
        for p in facts.purchases
    )
    work = voice.say(
        "Work: {all} of one person in all, {time} for {people} people (estimates, practised "
        "hands; the way there and back comes on top)",
        all=strong(minutes_words(facts.work_minutes)),
        time=minutes_words(facts.crew_minutes),
        people=facts.crew,
    )
    air = air_words(facts.air_m3, facts.pump_minutes, book.units)
    told = [voice.say("Air: {air} (estimates). Air only, no helium.", air=plain(air)), work]
    known = [amount for amount in costs if amount is not None]
    if currency is not None and len(known) == len(costs):
        amount = money_words(sum(known, Decimal(0)), currency)
        told.insert(0, voice.say("Balloons, in whole packs: {amount}", amount=strong(amount)))
    return [
        heading(voice.say("Buy, and what a quote is made from")),
        Grid(
            ("", voice.say("Balloon"), voice.say("Needed"), voice.say("Spare"), voice.say("Buy")),
            rows,
            (10, 62, 22, 20, 34),
            frozenset({2, 3, 4}),
            pad=CLOSE_ROWS,
            after=6,
        ),
        Items(tuple(told), gap=2.0),
    ]


def _lines(steps: Sequence[Step]) -> list[str]:
    """A line for each step, and one for each turn that says something of its own."""
    lines = []
    for step in steps:
        lines.append(f"{strong(step.title)}. {plain(step.check)}")
        if len(step.turns) > 1:
            lines += [plain(row) for turn in step.turns for row in turn.words.splitlines()]
    return lines


def loading(book: Book, packed: Sequence[Bag]) -> list[Flowable]:
    """Everything that goes on the vehicle, and everybody."""
    voice = book.voice
    facts = book.facts
    tags = [j for s in book.steps if s.kind is Kind.TAG for o in s.operations for j in o.joints]
    spares = tuple(
        voice.say(
            "{count} {balloons}, not inflated",
            count=strong(voice.whole(p.spare)),
            balloons=plain(balloon_words(book, p.balloon.key)),
        )
        for p in facts.purchases
    )
    tools = [plain(voice.say(tool)) for tool in TOOLS if tool != TAGS]
    if tags:
        written = voice.say_count(
            "{count} tag, written before: {joints}",
            "{count} tags, written before: {joints}",
            len(tags),
            count=strong(voice.whole(len(tags))),
            joints=plain(_some(tags, voice)),
        )
        tools.insert(2, written)
    first: list[Flowable] = [
        heading(voice.say("Bags")),
        Items(tuple(_bag_words(bag, voice) for bag in packed), True),
        heading(voice.say("Spares to carry")),
        Items(spares, ticked=True),
    ]
    second: list[Flowable] = [
        heading(voice.say("Tools")),
        Items(
            (
                *tools,
                voice.say("Extension lead, and tape to hold it to the floor"),
                voice.say("Broom and dustpan"),
            ),
            ticked=True,
        ),
        heading(voice.say("To hold it down")),
        Items(
            (
                voice.say(
                    "Ballast, the same on each foot: {ballast}", ballast=plain(ballast_words(book))
                ),
                voice.say("Soft ties or webbing, no wire"),
                voice.say("Clear lines and fixings, if the venue allows them"),
            ),
            ticked=True,
        ),
        heading(voice.say("People and papers")),
        Items(
            (
                voice.say(
                    "{people} people: {lifters} at least to lift and stand it up",
                    people=strong(voice.whole(max(lifters(book.shape), facts.crew))),
                    lifters=lifters(book.shape),
                ),
                voice.say("This booklet; the gauges cut from card; a pen"),
                voice.say("First aid kit; the venue's telephone number"),
            ),
            ticked=True,
        ),
    ]
    return list(beside(book.paper, first, second, 0.46))


def _bag_words(bag: Bag, voice: Voice) -> str:
    return voice.say_count(
        "{label}: {number} balloon",
        "{label}: {number} balloons",
        bag.balloons,
        label=strong(bag.label),
    )


def _some(labels: Sequence[str], voice: Voice) -> str:
    """Labels by their letters, each once: `A1 A5 A10; B1 to B8 (3 of each)`."""
    alike: dict[tuple[str, int], list[int]] = {}
    for label, times in Counter(labels).items():
        letters = label.rstrip("0123456789")
        alike.setdefault((letters, times), []).append(int(label[len(letters) :] or 0))
    said = []
    for (letters, times), found in alike.items():
        numbers = sorted(found)
        joints = " ".join(runs_told([f"{letters}{n or ''}" for n in numbers], numbers))
        each = voice.say("{joints} ({number} of each)", joints=joints, number=times)
        said.append(joints if times == 1 else each)
    return "; ".join(said)
