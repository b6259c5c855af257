"""What a trainee gets beside the plan: a practice piece, time targets and sign-off."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import fsum

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import ON_THE_PIECE
from buildplan.booklet.common.map_sheets import step_place
from buildplan.booklet.training.practice import Practice, practice
from buildplan.design.measures import gauged_words
from buildplan.document.blocks import Items, Shown, Words, heading
from buildplan.document.layout import beside
from buildplan.document.links import PageLink
from buildplan.document.printing import Section
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, plain, strong, underlined
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation import balloon_words
from buildplan.framework.cells import STRAIGHT
from buildplan.instructions.model import StepWords
from buildplan.instructions.stages import work_names
from buildplan.instructions.times import duration
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.labour import operation_minutes
from buildplan.sequence.model import Kind, Operation, Stage, Step

# A first build takes about twice as long (from memory).
BEGINNER = 2.0
LINE, DATE_LINE = "_" * 24, "_" * 8


def practice_of(book: Book) -> Practice | None:
    """The practice piece of a book, if it has one."""
    return practice(book.design, book.framework, book.steps, book.units, book.voice)


def practice_piece(book: Book, made: Practice | None) -> list[Section]:
    """A small piece to build first, with its own count; nothing when there is no such piece."""
    if made is None:
        return []
    title = book.voice.say("A first practice piece")
    return [Section(title, _practice(book, made), titled=True)]


def _practice(book: Book, made: Practice) -> list[Flowable]:
    voice = book.voice
    framework = made.framework
    picture = finished_picture(
        framework,
        made.shape,
        CAMERAS["corner"],
        160,
        190,
        patterns=book.patterns,
        alt=voice.say(
            "Practice piece, finished, from a corner: {chains} chains, {braces} braces, {locks} "
            "locks.",
            chains=len(framework.chains),
            braces=len(framework.braces),
            locks=len(framework.locks),
        ),
    )
    practised = _minutes(book, _operations(made.steps))
    words: list[Flowable] = [
        Words(
            voice.say(
                "Build this first: {links} link balloons and {locks} locks.",
                links=len(framework.links),
                locks=len(framework.locks),
            )
        ),
        _to_the_lessons(book),
        _practice_balloons(book, made),
        Words(
            sentences(
                strong(
                    voice.say("{number} balloons of its own.", number=sum(made.counts.values()))
                ),
                voice.say("They are not counted into the piece; buy them too."),
            )
        ),
        Words(
            voice.say(
                "Time: {beginner} for a beginner, {practised} for a practised hand (estimates). "
                "Took: {line} min",
                beginner=strong(_minutes_words(voice, practised * BEGINNER)),
                practised=strong(_minutes_words(voice, practised)),
                line="_" * 6,
            )
        ),
    ]
    steps = tuple(
        f"{strong(said.title)}. {plain(_told(step, said))}".strip()
        for step, said in zip(made.steps, made.words, strict=True)
    )
    return [
        *beside(book.paper, words, [Shown(picture)], 0.66),
        heading(voice.say("Steps")),
        Items(steps, ticked=True, gap=1.0, after=4.0),
        Words(_shown_and_done(voice)),
    ]


def _to_the_lessons(book: Book) -> PageLink:
    """Where the hand moves are taught: from the first step of the piece on."""
    voice = book.voice

    def markup(page: int) -> str:
        return underlined(voice.say("Learn: from page {page} on", page=page))

    def words(page: int) -> str:
        return voice.say("To the lessons, page {page}", page=page)

    return PageLink(step_place(book.steps[0]), markup, words, after=6.0)


def _shown_and_done(voice: Voice) -> str:
    return voice.say(
        "Shown and done. Trainee {line}  Trainer {line}  Date {date}", line=LINE, date=DATE_LINE
    )


def _practice_balloons(book: Book, made: Practice) -> Grid:
    voice = book.voice
    balloons = made.framework.balloons
    rows = [
        (
            strong(book.colour_letters.get(key, "")),
            plain(
                voice.say(
                    "{balloon}, {colour}",
                    balloon=balloon_words.sized(balloons[key], book.units),
                    colour=balloons[key].label,
                )
            ),
            voice.tell(gauged_words(balloons[key].gauge_m, book.units)),
            strong(voice.whole(count)),
        )
        for key, count in made.counts.items()
    ]
    head = ("", voice.say("Balloon"), voice.say("Size to"), voice.say("Count"))
    return Grid(head, rows, (8, 60, 22, 20), frozenset({3}), after=6)


def _told(step: Step, said: StepWords) -> str:
    """The joints of work on the piece; of other work its title says all."""
    if step.kind in ON_THE_PIECE:
        return "; ".join(line for turn in said.turns for line in turn.lines)
    return ""


def _minutes(book: Book, operations: Iterable[Operation]) -> float:
    own = {str(kind): value for kind, value in book.design.labour.items()}
    return fsum(operation_minutes(operation, own) for operation in operations)


def _operations(steps: Sequence[Step]) -> list[Operation]:
    return [operation for step in steps for operation in step.operations]


def _minutes_words(voice: Voice, minutes: float) -> str:
    """Minutes, to 5 above."""
    return duration(voice, _in_fives(minutes))


def _in_fives(minutes: float) -> int:
    return 5 * -(-round(minutes) // 5)


# --- time targets and sign-off -------------------------------------------------------------

SIGNED: dict[Stage, str] = {
    Stage.SIZE: mark("five at random pass the gauge"),
    Stage.PAIR: mark("five at random hold when pulled; counts agree"),
    Stage.CHAIN: mark("every chain counted by two people"),
    Stage.CLOSE_RINGS: mark("numbers run one way; nothing twisted"),
    Stage.BRACE: mark("every brace at its joints; corners as on the map"),
    Stage.LOCK_JOINTS: mark("one lock at each joint; nothing slips"),
    Stage.FINISH: mark("seen from all sides; stands and is held down"),
}


def _signed(book: Book, steps: Sequence[Step]) -> str:
    """What is checked at the end of a part of the work, by the stages that are in it."""
    voice, kinds = book.voice, {step.kind for step in steps}
    stages = {operation.stage for operation in _operations(steps)}
    told = [voice.say(SIGNED[stage]) for stage in Stage if stage in stages]
    if Stage.BRACE in stages and Kind.BRACE not in kinds:
        told[told.index(voice.say(SIGNED[Stage.BRACE]))] = voice.say(
            "every knot and free end at the joint of its tag"
        )
    return "; ".join(told)


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


def sign_off(book: Book) -> Section:
    """Time targets by stage, and a place for both to sign each stage."""
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
        Words(
            voice.say(
                "Targets are a beginner's, for one pair of hands doing all the work of a stage; a "
                "practised hand takes half (estimates). Nobody signs because time is up."
            )
        ),
        Grid(head, _targets(book), (24, 28, 18, 64, 28, 28)),
        heading(voice.say("The trainee can now do alone")),
        Items(_learnt(book), ticked=True),
        Words(
            voice.say("Trainee {line}  Trainer {line}  Date {date}", line=LINE, date=DATE_LINE),
            after=6,
        ),
        Words(voice.say("Signing says that the work was seen, no more."), SMALL),
    ]
    return Section(voice.say("Time targets and sign-off"), blocks, titled=True)


def _targets(book: Book) -> list[tuple[str, ...]]:
    """A row for each part of the work, called as its pages are, and one for all of them."""
    voice = book.voice
    rows: list[tuple[str, ...]] = []
    for name, steps in _by_work(book).items():
        target = duration(voice, _beginners_minutes(book, steps))
        rows.append((strong(name), target, "", plain(_signed(book, steps)), "<br/><br/>", ""))
    rows.append((strong(voice.say("All")), strong(beginners_total(book)), "", "", "", ""))
    return rows


def beginners_total(book: Book) -> str:
    """How long a first build takes one pair of hands, all its parts together as each is told."""
    minutes = fsum(_beginners_minutes(book, steps) for steps in _by_work(book).values())
    return duration(book.voice, minutes)


def _by_work(book: Book) -> dict[str, list[Step]]:
    """The steps by what the part of the work is called that they are of, in order."""
    named = work_names(book.voice, book.framework, book.steps)
    found: dict[str, list[Step]] = {}
    for name, step in zip(named, book.steps, strict=True):
        found.setdefault(name, []).append(step)
    return found


def _beginners_minutes(book: Book, steps: Sequence[Step]) -> int:
    """Minutes that steps take a beginner, in fives."""
    return _in_fives(_minutes(book, _operations(steps)) * BEGINNER)
