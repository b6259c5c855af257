"""What a trainee gets beside the plan: lessons, a practice piece, time targets and sign-off."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.step_blocks import PART, part_name
from buildplan.booklet.training.lessons import CORNERS, LESSONS, LOOSE, Lesson
from buildplan.booklet.training.practice import Practice, practice
from buildplan.design.measures import length_words
from buildplan.document.flow import Block, Grid, Items, Shown, Words, beside, heading, leaves_of
from buildplan.document.renderer import SMALL, Leaf, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.drawing.techniques import moves, technique_pictures
from buildplan.evaluation.figures import nominal_words
from buildplan.language.grammar import sentences
from buildplan.language.speaking import mark, say, whole
from buildplan.sequence.labour import operation_minutes
from buildplan.sequence.model import Kind, Operation, Stage, Step
from buildplan.sequence.words.stages import stage_name

# A first build takes about twice as long (from memory).
BEGINNER = 2.0
WORDS_SHARE = 0.54  # leaves hand moves the width to be at their own size
ON_THE_PIECE = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN})
LINE, DATE_LINE = "_" * 24, "_" * 8


def with_lessons(book: Book, step_pages: Sequence[tuple[str, Sequence[Leaf]]]) -> Iterator[Leaf]:
    """The step pages, the lessons of each part of the work before its first page; those of the
    next part stand with them where one page has room for both."""
    taught: set[Kind] = set()
    together: list[dict[str, Mapping[Kind, Step]]] = []
    for part, _ in step_pages:
        first = _first_steps(book, part, taught)
        taught |= first.keys()
        joined = {**(together[-1] if together else {}), part: first}
        if first and together and len(lessons(book, joined)) == 1:
            together[-1] = joined
        elif first:
            together.append({part: first})
    before = {next(iter(parts)): parts for parts in together}
    for part, leaves in step_pages:
        if part in before:  # a part of the work may come again, with another part of the piece
            yield from lessons(book, before.pop(part))
        yield from leaves


def _first_steps(book: Book, part: str, taught: set[Kind]) -> Mapping[Kind, Step]:
    """The first step in a part for each kind of work that comes up there."""
    found: dict[Kind, Step] = {}
    for step in book.steps:
        for kind in step.kinds if PART[step.stage] == part else ():
            if kind in LESSONS and kind not in taught:
                found.setdefault(kind, step)
    return found


def lessons(book: Book, parts: Mapping[str, Mapping[Kind, Step]]) -> list[Leaf]:
    """Each technique of parts of the work, by the first steps of each, and where trainer and
    trainee sign."""
    first = [(kind, step) for steps in parts.values() for kind, step in steps.items()]
    blocks: list[Block] = []
    for kind, step in first:
        lesson = _lesson_of(book, kind, step)
        drawn = moves(book.framework, step, (kind,))
        if kind is Kind.CHAIN and len(step.operations[0].links) < 3:  # nothing is tied yet
            drawn = technique_pictures(book.framework, kind)
        pictures = [
            replace(picture, alt=sentences(_lesson_words(lesson), picture.alt)) for picture in drawn
        ]
        blocks += _lesson(book, lesson, pictures[:1])
        if kind is Kind.BRACE and any(set(s.cells) - {"straight"} for s in book.steps):
            blocks += _lesson(book, CORNERS, [])
    blocks.append(Words(_shown_and_done()))
    told = [part_name(book, part) for part in parts]
    title = say("Learn: {parts}", parts=", ".join(part[0].lower() + part[1:] for part in told))
    leaves = leaves_of(book.paper, title, blocks)
    return [replace(leaves[0], holds=tuple(_place(kind) for kind, _ in first)), *leaves[1:]]


def _lesson_of(book: Book, kind: Kind, step: Step) -> Lesson:
    """What is taught of a kind of work that first comes up in a step."""
    if kind is Kind.LAY and not book.framework.built_with(step.operations[0].joints[0]).braces:
        return LOOSE
    return LESSONS[kind]


def _shown_and_done() -> str:
    return say(
        "Shown and done. Trainee {line}  Trainer {line}  Date {date}", line=LINE, date=DATE_LINE
    )


def _lesson_words(lesson: Lesson) -> str:
    return say("Lesson {title}.", title=say(lesson.title))


def _place(kind: Kind) -> str:
    return f"lesson {kind}"


def _lesson(book: Book, lesson: Lesson, pictures: Sequence[Picture]) -> tuple[Block, ...]:
    words: list[Block] = [
        heading(say(lesson.title)),
        Words(f"{strong(say('Why.'))} {plain(say(lesson.why))}"),
        Words(f"{strong(say('Usual mistake.'))} {plain(say(lesson.mistake))}"),
        Words(f"{strong(say('How to see it.'))} {plain(say(lesson.see))}"),
    ]
    if not pictures:
        return (*words[:-1], replace_after(words[-1], 14))
    return beside(book.paper, words, [Shown(picture) for picture in pictures], WORDS_SHARE)


def replace_after(block: Block, after: float) -> Block:
    """The same words with more space below."""
    return replace(block, after=after) if isinstance(block, Words) else block


# --- practice piece ------------------------------------------------------------------------


def practice_piece(book: Book) -> list[Leaf]:
    """A short post to build first, with its own count; nothing when there is no such piece."""
    made = practice(book.design, book.framework, book.units)
    if made is None:
        return []
    return leaves_of(book.paper, say("A first practice piece"), _practice(book, made))


def _practice(book: Book, made: Practice) -> list[Block]:
    framework = made.framework
    total = sum(made.counts.values())
    rows = tuple(
        (
            strong(book.colour_letters.get(key, "")),
            plain(
                say(
                    "{balloon}, {colour}",
                    balloon=nominal_words(framework.balloons[key], book.units),
                    colour=framework.balloons[key].label,
                )
            ),
            length_words(framework.balloons[key].gauge_m, book.units),
            strong(whole(count)),
        )
        for key, count in made.counts.items()
    )
    picture = finished_picture(
        framework,
        made.shape,
        CAMERAS["corner"],
        160,
        190,
        patterns=book.patterns,
        alt=say(
            "Practice post, finished, from a corner: {chains} chains of {balloons} balloons, "
            "{braces} braces, {locks} locks.",
            chains=len(framework.chains),
            balloons=len(framework.chains[0].chain.links),
            braces=len(framework.braces),
            locks=len(framework.locks),
        ),
    )
    practised = _minutes(book, (op for step in made.steps for op in step.operations))
    words: list[Block] = [
        Words(
            say(
                "Build this before the real piece: {chains} chains of one pair each, {braces} "
                "short braces across them, {locks} locks. Every hand move of the piece is in it. "
                "Each is taught on the page called Learn before the steps where it first comes "
                "up: read it there.",
                chains=len(framework.chains),
                braces=len(framework.braces),
                locks=len(framework.locks),
            )
        ),
        Grid(
            ("", say("Balloon"), say("Size to"), say("Count")),
            rows,
            (8, 60, 22, 20),
            frozenset({3}),
            after=6,
        ),
        Words(
            sentences(
                strong(say("{number} balloons of its own.", number=total)),
                say(
                    "They are not counted into the piece: take old stock, and add them to what "
                    "you buy."
                ),
            )
        ),
        Words(
            say(
                "Time: {beginner} for a beginner, {practised} for a practised hand (estimates). "
                "Took: {line} min",
                beginner=strong(_whole(practised * BEGINNER)),
                practised=strong(_whole(practised)),
                line="_" * 6,
            )
        ),
    ]
    steps = tuple(
        f"{strong(step.title)}. {plain(_told(step))}{_learn(step)}" for step in made.steps
    )
    return [
        *beside(book.paper, words, [Shown(picture)], 0.66),
        heading(say("Steps")),
        Items(steps, ticked=True, gap=1.0, after=4.0),
        Words(_shown_and_done()),
    ]


def _told(step: Step) -> str:
    """The joints of work on the piece; the check of other work."""
    if step.kind in ON_THE_PIECE:
        return "; ".join(turn.words for turn in step.turns)
    return step.check


def _learn(step: Step) -> str:
    lesson = LESSONS.get(step.kind)
    if lesson is None:
        return ""
    return " " + say("(Learn: {lesson})", lesson=plain(say(lesson.title)))


def _minutes(book: Book, operations: Iterable[Operation]) -> float:
    own = {str(kind): value for kind, value in book.design.labour.items()}
    return sum(operation_minutes(operation, own) for operation in operations)


def _whole(minutes: float) -> str:
    """Minutes, to 5 above."""
    hours, rest = divmod(5 * -(-round(minutes) // 5), 60)
    if not hours:
        return say("{minutes} min", minutes=rest)
    if not rest:
        return say("{hours} h", hours=hours)
    return say("{hours} h {minutes} min", hours=hours, minutes=rest)


# --- time targets and sign-off -------------------------------------------------------------

SIGNED: dict[Stage, str] = {
    Stage.SIZE: mark("five taken at random pass the gauge"),
    Stage.PAIR: mark("five taken at random hold when pulled; counts agree"),
    Stage.CHAIN: mark("every chain counted twice by two people"),
    Stage.CLOSE_RINGS: mark("tags read the same way round; nothing twisted"),
    Stage.BRACE: mark("every brace at the joints of its row; corners as on the map"),
    Stage.LOCK_JOINTS: mark("one lock at each joint; nothing slips"),
    Stage.FINISH: mark("back like front; stands and is held down"),
}


def _signed(book: Book, stage: Stage) -> tuple[str, str]:
    """What a stage is called, of what there is to do in it, and what is checked at its end."""
    kinds = {step.kind for step in book.steps}
    if stage is Stage.BRACE and Kind.BRACE not in kinds:
        return say("Join chains"), say("every knot and free end at the joint of its tag")
    if stage is Stage.CLOSE_RINGS and Kind.CLOSE_RING not in kinds:
        return part_name(book, PART[stage]), say(SIGNED[stage])
    return stage_name(stage), say(SIGNED[stage])


def _learnt(book: Book) -> tuple[str, ...]:
    """What the trainee can do in the end, by what the piece has."""
    braced = any(step.kind is Kind.BRACE for step in book.steps)
    corners = any(set(step.cells) - {"straight"} for step in book.steps)
    return (
        say("size, pair and chain to the count, without the booklet"),
        say("find any joint on the piece from its name on the joint map"),
        say("tie in a straight brace and lock it, front and back")
        if braced
        else say("bring the knots of a joint together and lock it"),
        *([say("turn a corner from its row and its diagram")] if corners else []),
        say("find a mistake made on purpose by the trainer"),
    )


def sign_off(book: Book) -> list[Leaf]:
    """Time targets by stage, and a place for both to sign each stage."""
    by_stage: dict[Stage, list[Operation]] = {}
    for operation in (operation for step in book.steps for operation in step.operations):
        by_stage.setdefault(operation.stage, []).append(operation)
    rows = []
    for stage in Stage:
        if stage not in by_stage:
            continue
        practised = _minutes(book, by_stage[stage])
        name, checked = _signed(book, stage)
        rows.append(
            (
                strong(name),
                _whole(practised * BEGINNER),
                _whole(practised),
                "",
                plain(checked),
                "<br/><br/>",
                "",
            )
        )
    minutes = _minutes(book, (op for operations in by_stage.values() for op in operations))
    rows.append(
        (
            strong(say("All")),
            strong(_whole(minutes * BEGINNER)),
            strong(_whole(minutes)),
            "",
            "",
            "",
            "",
        )
    )
    return leaves_of(
        book.paper,
        say("Time targets and sign-off"),
        [
            Words(
                say(
                    "Targets are for one pair of hands doing all the work of a stage; estimates, a "
                    "beginner at twice the time of a practised hand. Quality comes first: nobody "
                    "signs a stage because its time is up."
                )
            ),
            Grid(
                (
                    say("Stage"),
                    say("Beginner"),
                    say("Practised"),
                    say("Took"),
                    say("Checked before signing"),
                    say("Trainee"),
                    say("Trainer"),
                ),
                tuple(rows),
                (21, 27, 27, 14, 53, 24, 24),
            ),
            heading(say("The trainee can now do alone")),
            Items(_learnt(book), ticked=True),
            Words(
                say("Trainee {line}  Trainer {line}  Date {date}", line=LINE, date=DATE_LINE),
                after=6,
            ),
            Words(say("Signing says that the work was seen, not that it is without risk."), SMALL),
        ],
    )
