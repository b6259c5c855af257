"""What a trainee gets beside the plan: time targets and sign-off."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import fsum

from buildplan.booklet.common.after import notes
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.step_blocks import BELOW_TITLE
from buildplan.document.blocks import Items, Stack, Words, heading
from buildplan.document.printing import Section
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.framework.cells import STRAIGHT
from buildplan.instructions.stages import work_names
from buildplan.instructions.times import duration
from buildplan.language.messages import mark
from buildplan.language.phrases import clauses
from buildplan.sequence.labour import operation_minutes
from buildplan.sequence.model import Kind, Operation, Stage, Step

LINE, DATE_LINE = "_" * 24, "_" * 8


def minutes_of(book: Book, operations: Iterable[Operation]) -> float:
    """What some work takes a practised hand, in minutes."""
    own = {str(kind): value for kind, value in book.design.labour.items()}
    return fsum(operation_minutes(operation, own) for operation in operations)


def _operations(steps: Sequence[Step]) -> list[Operation]:
    return [operation for step in steps for operation in step.operations]


def first_build(book: Book) -> float:
    """So many times as long as a practised hand a first build takes."""
    return book.constants["first_build"].value


def in_fives(minutes: float) -> int:
    """Minutes in steps of five, rounded up."""
    return 5 * -(-round(minutes) // 5)


# --- time targets and sign-off -------------------------------------------------------------

SIGNED: dict[Stage, str] = {
    Stage.SIZE: mark("five at random pass the gauge"),
    Stage.PAIR: mark("five at random hold when pulled; counts agree"),
    Stage.CHAIN: mark("every chain counted by two people"),
    Stage.CLOSE_RINGS: mark("numbers run one way; nothing twisted"),
    Stage.BRACE: mark("every brace at its joints; corners as on the map"),
    Stage.LOCK_JOINTS: mark("no lock is missing; nothing slips"),
    Stage.FINISH: mark("seen from all sides; stands and is held down"),
}


def _signed(book: Book, steps: Sequence[Step]) -> str:
    """What is checked at the end of a part of the work, by the stages that are in it."""
    voice, kinds = book.voice, {step.kind for step in steps}
    stages = {operation.stage for operation in _operations(steps)}
    told = [voice.say(SIGNED[stage]) for stage in Stage if stage in stages]
    if Stage.BRACE in stages and Kind.BRACE not in kinds:
        ends = any(not long.chain.closed for long in book.framework.chains)
        told[told.index(voice.say(SIGNED[Stage.BRACE]))] = (
            voice.say("every knot and free end at the joint of its tag")
            if ends
            else voice.say("every knot at the joint of its tag")
        )
    return clauses(voice, told)


def _learnt(book: Book) -> tuple[str, ...]:
    """What the trainee can do in the end, by what the piece has."""
    voice = book.voice
    braced = any(step.kind is Kind.BRACE for step in book.steps)
    corners = any(set(step.cells) - {STRAIGHT} for step in book.steps)
    return (
        voice.say("size, pair and chain to the count, without the booklet"),
        voice.say("find any joint of the joint map on the piece"),
        voice.say("tie in a straight brace and lock it, front and back")
        if braced
        else voice.say("bring the knots of a joint together and lock it"),
        *([voice.say("turn a corner from its row and its diagram")] if corners else []),
        voice.say("find a mistake made on purpose by the trainer"),
    )


def sign_off(book: Book, practice_minutes: int) -> Section:
    """Time targets by stage, after that of the practice piece if there is one, and a place for both
    to sign each stage; and one for notes."""
    voice = book.voice
    head = (
        voice.say("Part of the work"),
        voice.say("Target"),
        voice.say("Took"),
        voice.say("Checked before signing"),
        voice.say("Trainee"),
        voice.say("Trainer"),
    )
    blocks = [
        Words(voice.say("Targets are for one beginner; a practised hand takes half (estimates).")),
        Grid(head, _targets(book, practice_minutes), (22, 26, 20, 78, 25, 25)),
        heading(voice.say("The trainee can now do alone")),
        Items(_learnt(book), ticked=True),
        Words(
            voice.say("Trainee {line}  Trainer {line}  Date {date}", line=LINE, date=DATE_LINE),
            after=6,
        ),
    ]
    title = voice.say("Time targets and sign-off")
    # of more rows than a page has room for below the title some go on the next
    signed = Stack(blocks, whole=True, below_title=BELOW_TITLE)
    return Section(title, [signed, notes(book)], titled=True, runs_on=True)


def _targets(book: Book, practice_minutes: int) -> list[tuple[str, ...]]:
    """A row for the practice piece and for each part of the work, called as its pages are, and one
    for all of them."""
    voice = book.voice
    rows: list[tuple[str, ...]] = []
    if practice_minutes:
        name, target = voice.say("Practice piece"), plain(duration(voice, practice_minutes))
        rows.append((strong(name), target, "", "", "<br/><br/>", ""))
    told: dict[str, str] = {}
    for name, steps in _by_work(book).items():
        target = plain(duration(voice, _beginners_minutes(book, steps)))
        signed = _signed(book, steps)
        first = told.setdefault(signed, name)
        again = voice.say("as for: {part}", part=first)
        checked = signed if first == name or len(signed) < len(again) else again
        rows.append((strong(name), target, "", plain(checked), "<br/><br/>", ""))
    total = beginners_total(book, practice_minutes)
    rows.append((strong(voice.say("All")), strong(total), "", "", "", ""))
    return rows


def beginners_total(book: Book, practice_minutes: int) -> str:
    """How long a first build takes one pair of hands, all its parts together as each is told, with
    the practice piece."""
    minutes = fsum(_beginners_minutes(book, steps) for steps in _by_work(book).values())
    return duration(book.voice, practice_minutes + minutes)


def _by_work(book: Book) -> dict[str, list[Step]]:
    """The steps by what the part of the work is called that they are of, in order."""
    named = work_names(book.voice, book.framework, book.steps)
    found: dict[str, list[Step]] = {}
    for name, step in zip(named, book.steps, strict=True):
        found.setdefault(name, []).append(step)
    return found


def _beginners_minutes(book: Book, steps: Sequence[Step]) -> int:
    """Minutes that steps take a beginner, in fives."""
    return in_fives(minutes_of(book, _operations(steps)) * first_build(book))
