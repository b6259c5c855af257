"""A piece taken down, in the order in which hands do it: the same on the pages of every edition."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.booklet.common.book import Book
from buildplan.document.text import strong
from buildplan.instructions.setting_up import comes_up, is_tying, ties_of
from buildplan.sequence.hand_reach import hands_with
from buildplan.sequence.reach import WITH_ONE_AT_FOOT, lifters


def going_down(book: Book) -> list[str]:
    """From clearing people away to the balloons counted into their bags."""
    voice = book.voice
    held = bool(book.figures.held_by)
    untied = voice.say("Some hold the piece while one unties it from what holds it")
    ballasted = book.examination.wind.ballast_at or not held
    laid = [] if _stays_low(book) else [_lowered(book)]
    if book.figures.set_up and ballasted:
        laid = [_one_by_one(book)]
    elif ballasted:
        laid.insert(0, voice.say("Somebody holds the piece while another unties its ballast"))
    return [
        voice.say("Clear people away, put on safety glasses"),
        *([untied] if held else []),
        *_taken_apart(book),
        *_parted(book),
        *laid,
        voice.say(
            "Let the air out: snip each neck beside its knot with blunt scissors; do not burst "
            "balloons near people"
        ),
        voice.say(
            "Count what goes into the bags: {balloons} balloons were in the piece",
            balloons=strong(voice.whole(book.facts.total)),
        ),
    ]


def _taken_apart(book: Book) -> Iterator[str]:
    """The parts that were lifted on top of others come off, the last first, each while it is
    held."""
    voice, context = book.voice, book.context
    steps = [step for step in book.steps if is_tying(step)]
    blocks = [parts for step in steps for parts in comes_up(context, step)]
    gone: set[str] = set()
    for parts in reversed(blocks):
        yield voice.say_count(
            "{people} people hold part {parts} at both sides while one undoes the {ties} ties that"
            " hold it; they lift it down and lay it flat",
            "{people} people hold parts {parts} at both sides while one undoes the {ties} ties that"
            " hold them; they lift them down as one and lay them flat",
            len(parts),
            people=strong(voice.whole(lifters(book.shape, hands_with(book.constants)))),
            parts=voice.listed(list(parts)),
            ties=len(ties_of(context, parts, gone)),
        )
        gone |= {*parts}


def _parted(book: Book) -> Iterator[str]:
    """The parts on the floor that are tied to one another come apart before any of them is laid
    down: by knots, or by balloons between them."""
    told, part_at = book.figures.set_up, book.framework.part_at
    held = [tie.joints for tie in book.framework.ties]
    held += [(link.start, link.finish) for link in book.framework.links]
    groups = [{part.name for part in map(part_at, joints) if part is not None} for joints in held]
    standing = [] if told is None else list(told.standing)
    tied = [one for one in standing if any({one} < group <= {*standing} for group in groups)]
    if tied:
        yield book.voice.say(
            "Somebody holds each of parts {parts} while one undoes what ties them to one another",
            parts=book.voice.listed(tied),
        )


def _one_by_one(book: Book) -> str:
    """How the parts that are left standing on the floor come down, each held until it lies."""
    told = book.figures.set_up
    assert told is not None, "parts are put together standing"
    return book.voice.say_count(
        "Part {parts}: somebody holds it while another unties its ballast; then lay it flat",
        "Parts {parts}, one by one: somebody holds it while another unties its ballast; then lay it"
        " flat",
        len(told.standing),
        parts=book.voice.listed(list(told.standing)),
    )


def _stays_low(book: Book) -> bool:
    """Whether what was built as it stands is no lower when it lies: a ball is let down nowhere."""
    stands = book.figures.stands and not book.framework.parts
    return stands and book.shape.height_m <= max(book.shape.width_m, book.shape.depth_m)


def _lowered(book: Book) -> str:
    """How it comes to lie, by as many as stood it up."""
    voice, people = book.voice, book.steps[-1].operations[0].people
    if people >= WITH_ONE_AT_FOOT and not book.shape.holding.hung:
        return voice.say(
            "{people} people or more let it down slowly, one at its foot",
            people=strong(voice.whole(people)),
        )
    return voice.say(
        "{people} people or more let it down slowly",
        people=strong(voice.whole(people)),
    )
