"""Crew pages for before the day: what is prepared, how it is packed, what is loaded."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.high_work import to_stand_on
from buildplan.booklet.common.holding import to_hold_it_down
from buildplan.booklet.common.loads import all_bulk_words, bulk_words
from buildplan.booklet.common.manner import people_words
from buildplan.booklet.common.needs import TAGS, tags_of, tools_of
from buildplan.booklet.common.phone_code import code_at_step
from buildplan.booklet.crew.arriving import ballast_table
from buildplan.booklet.crew.standing_so_far import turn_lines
from buildplan.booklet.crew.tags import tags_told
from buildplan.booklet.crew.when import JobTimes, job_heading, line_starts
from buildplan.business.buying.packing import Bag
from buildplan.business.buying.shopping import packs_words
from buildplan.design.measures import gauged_words
from buildplan.document.blocks import Items, Words, heading
from buildplan.document.layout import Columns, in_pairs, is_wide
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, plain, strong, unbroken
from buildplan.evaluation import balloon_words
from buildplan.evaluation.figures import air_words
from buildplan.framework.model import BalloonType
from buildplan.instructions.grammar import colours
from buildplan.instructions.jobs import job_title
from buildplan.sequence.jobs import Job
from buildplan.sequence.model import Kind, Step

CLOSE_ROWS = 1.2
LONGEST_LIST = 40  # letters of a list of joints: of more, a job or a list names them


def preparing(
    book: Book, work: Sequence[Job], packed: Sequence[Bag], times: JobTimes
) -> list[Flowable]:
    """What is sized and tied in the workshop, and what goes into which bag."""
    voice = book.voice
    blocks = _balloons(book)
    first = next((job for job in work if job.portable), None)
    blocks += code_at_step(book, first.steps[0]) if first else []
    portable = [job for job in work if job.portable]
    for short, several in groupby(
        portable, key=lambda job: len(_lines(book, job.steps, times)) == 1
    ):
        told = [_job(book, job, times) for job in several]
        blocks += in_pairs(book.paper, told) if short else [b for one in told for b in one]
    rows = tuple(
        (
            strong(unbroken(bag.label) if is_wide(book.paper) else bag.label),
            plain(bag.holds),
            voice.whole(bag.balloons),
            plain(bulk_words(bag.bulk_m3, book.units, voice)),
            "",
            "",
        )
        for bag in packed
    )
    all_bags = (
        "",
        voice.say("all together"),
        strong(voice.whole(sum(bag.balloons for bag in packed))),
        strong(all_bulk_words((bag.bulk_m3 for bag in packed), book.units, voice)),
        "",
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
                voice.say("Loaded"),
            ),
            (*rows, all_bags),
            (36, 100, 18, 22, 16, 16),
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


def _job(book: Book, job: Job, times: JobTimes) -> list[Flowable]:
    """A job under its name, a line to tick for each of its steps."""
    title = job_title(book.voice, job, book.told)
    name = book.voice.say("Job {number}: {title}", number=job.number, title=title)
    lines = tuple(_lines(book, job.steps, times))
    return [job_heading(name, job, times), Items(lines, ticked=True, gap=2.5)]


def _balloon(book: Book, balloon: BalloonType, colour: str) -> str:
    voice = book.voice
    words = voice.say(
        "{balloon}, {colour}", balloon=balloon_words.sized(balloon, book.units), colour=colour
    )
    return plain(words)


def _balloons(book: Book) -> list[Flowable]:
    """What must be there, in whole packs, and the air."""
    voice = book.voice
    facts, letters = book.facts, book.colour_letters
    rows = tuple(
        (
            strong(", ".join(letters[balloon.key] for balloon in p.balloons)),
            _balloon(book, p.balloon, voice.tell(p.label)),
            strong(", ".join(dict.fromkeys(_gauge(book, balloon) for balloon in p.balloons))),
            voice.whole(p.needed),
            voice.whole(p.spare),
            strong(packs_words(p, voice)),
        )
        for p in facts.purchases
    )
    air = air_words(facts.air_m3, facts.pump_minutes, book.units, voice)
    told = voice.say("Air: {air} (estimates). Air only, no helium.", air=plain(air))
    return [
        heading(
            voice.say("Balloons to have, in whole packs")
            if any(p.packs is not None for p in facts.purchases)
            else voice.say("Balloons to have")
        ),
        Grid(
            (
                "",
                voice.say("Balloon"),
                voice.say("Gauge"),
                voice.say("Needed"),
                voice.say("Spare"),
                voice.say("Buy"),
            ),
            rows,
            (10, 56, 26, 22, 20, 34),
            frozenset({3, 4, 5}),
            pad=CLOSE_ROWS,
            after=6,
        ),
        Words(told),
    ]


def _gauge(book: Book, balloon: BalloonType) -> str:
    return book.voice.tell(gauged_words(balloon.gauge_m, book.units))


def _lines(book: Book, steps: Sequence[Step], times: JobTimes) -> list[str]:
    """A line for each step, with when it begins, and one for each turn that says something of its
    own."""
    lines = []
    starts = line_starts([step.number for step in steps], times)
    for step, begins in zip(steps, starts, strict=True):
        title = f"{strong(book.told(step).title)}{plain(_one_colour(book, step))}"
        lines.append(" ".join(filter(None, (f"{title}. {plain(book.told(step).check)}", begins))))
        if len(step.turns) > 1 and not _all_alike(book, step):
            lines += turn_lines(book, step)
    return lines


def _one_colour(book: Book, step: Step) -> str:
    """The colour of long chains that are all of one balloon, unless their title says it."""
    if not _all_alike(book, step):
        return ""
    links = step.operations[0].links
    (name, *_) = book.context.names_of(links)
    told = colours(book.voice, [(len(links), name)], over_and_over=False)
    return "" if name in book.told(step).title else f" ({told})"


def _all_alike(book: Book, step: Step) -> bool:
    """Whether a step makes chains that are all of one balloon: their lengths are in its title."""
    links = [link for turn in step.turns for op in turn.operations for link in op.links]
    keys = {book.framework.link[link].balloon for link in links}
    return step.kind is Kind.CHAIN and len(keys) == 1


def loading(book: Book, work: Sequence[Job]) -> list[Flowable]:
    """What goes on the vehicle beside the bags, and everybody."""
    voice = book.voice
    tools, holding, people = _tools_and_people(book, work)
    first, last = tools, [*holding, *people]
    name = heading(voice.say("Load list, beside the bags"))
    if not is_wide(book.paper):
        return [name, *first, *last, *_all_tags(book, work), *ballast_table(book)]
    columns = Columns((first, last), whole=False)
    return [name, columns, *_all_tags(book, work), *ballast_table(book)]


def _ticked(lines: Sequence[str]) -> Items:
    return Items(tuple(lines), ticked=True, gap=2.0)


def _tools_and_people(book: Book, work: Sequence[Job]) -> list[list[Flowable]]:
    """Tools; what holds it down; people and papers."""
    voice = book.voice
    tools = (
        *_tools(book, work),
        voice.say("Broom and dustpan"),
        voice.say("The spares of the table above, not inflated"),
    )
    ballasted = book.examination.wind.ballast_at
    outdoors = [voice.say("Outdoors more: see the ballast table")] if ballasted else []
    holding = (
        *to_hold_it_down(book),
        *outdoors,
        voice.say("Clear lines and fixings, if the venue allows them"),
    )
    people = (
        strong(people_words(book)),
        voice.say("This booklet; the gauges cut from card; a pen"),
        voice.say("First aid kit; the venue's telephone number"),
        voice.say("Extension lead, and tape to hold it to the floor"),
    )
    lists = (
        (voice.say("Tools"), tools),
        (voice.say("To hold it down"), holding),
        (voice.say("People and other things"), people),
    )
    return [[Words(strong(name), keep=True), _ticked(items)] for name, items in lists]


def _tagged_in(work: Sequence[Job]) -> int:
    """The number of the one job that names every tag; 0 where several do."""
    found = {job.number for job in work for step in job.steps if step.of_kind(Kind.TAG)}
    return found.pop() if len(found) == 1 else 0


def _all_tags(book: Book, work: Sequence[Job]) -> list[Flowable]:
    """What is written on tags that no single job names."""
    voice, tags = book.voice, tags_of(book.steps)
    some = tags_told(tags, voice)
    if not tags or len(some) <= LONGEST_LIST or _tagged_in(work):
        return []
    return [Words(voice.say("{name}: {words}", name=strong(voice.say("Tags")), words=plain(some)))]


def _tools(book: Book, work: Sequence[Job]) -> list[str]:
    """The tools, the tags written before among them."""
    voice = book.voice
    tools = [plain(voice.say(tool)) for tool in tools_of(book) if tool != TAGS]
    tools += map(plain, to_stand_on(book))
    tags = tags_of(book.steps)
    some = tags_told(tags, voice)
    if tags and len(some) > LONGEST_LIST:
        count, places = strong(voice.whole(len(tags))), _tagged_in(work)
        written = (
            voice.say("{count} tags, written before: see job {number}", count=count, number=places)
            if places
            else voice.say("{count} tags, written before: see below", count=count)
        )
        tools.insert(2, written)
    elif tags:
        written = voice.say_count(
            "{count} tag, written before: {joints}",
            "{count} tags, written before: {joints}",
            len(tags),
            count=strong(voice.whole(len(tags))),
            joints=plain(some),
        )
        tools.insert(2, written)
    return tools
