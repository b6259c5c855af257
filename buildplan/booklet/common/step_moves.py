"""The hand moves that a step shows, and the corner that it finishes."""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Set
from dataclasses import replace

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import (
    ON_THE_PIECE,
)
from buildplan.booklet.common.joint_moves import most_met, with_beside_locks, with_ends, with_lock
from buildplan.booklet.common.laid_courses import (
    all_closed,
    laid_pictures,
    stood_pictures,
    tagged_pictures,
)
from buildplan.booklet.common.parts_together import tying_pictures
from buildplan.booklet.common.spurs import spur_before
from buildplan.document.undrawn import Showable, Undrawn
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.cell_diagrams import cell_diagram
from buildplan.drawing.cell_layout import newest_brace
from buildplan.drawing.labelled import named_joints
from buildplan.drawing.laid_out import laid_layers
from buildplan.drawing.lifting_up import lifting_up_picture
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture
from buildplan.drawing.section_diagram import section_diagram
from buildplan.drawing.standing_up import standing_up_picture
from buildplan.drawing.techniques import moves_by_kind
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Cell
from buildplan.sequence.grouping import is_for_courses
from buildplan.sequence.model import Kind, Operation, Step
from buildplan.shape.lying import laid_in_figure

# What is done to a chain before it is laid; what is done to the whole piece at once.
BEFORE_LAYING = frozenset({Kind.CLOSE_RING, Kind.TAG})
AS_A_WHOLE = frozenset({Kind.TURN_OVER, Kind.STAND_UP})
STAND_UP_SIZE = (226.0, 172.0)
TURNED_PT = 226.0
LONG_FROM = 4  # balloons of a chain that goes on and on
LAYERS_SIZE = (230.0, 260.0)


def first_moves(
    book: Book, step: Step, height: float, taught: Set[Kind] = frozenset()
) -> tuple[Picture, ...]:
    """The hand moves that a step shows: its own with work beside the piece; where a kind of
    work on the piece first comes up, its moves, and a brace's course round the tube in a
    diagram `height` points high. Those of `taught` kinds of work on the piece are shown
    elsewhere."""
    if step.kind is Kind.STAND_UP:
        return (stood_up_picture(book, step, STAND_UP_SIZE),)
    if step.kind is Kind.TURN_OVER:
        hands = _by_kind(book, step, frozenset({Kind.TURN_OVER}))
        return (*_flat(hands), _turned(book, step))
    if is_laid_to_brace(book, step):
        own = book.framework.built_with(step.operations[0].joints[0])
        return (laid_layers(own, book.shape.at, *LAYERS_SIZE, book.voice),)
    if _ties(step):
        return _flat(act_moves(book, step))
    if step.kind not in ON_THE_PIECE:
        return _flat(_by_kind(book, step, frozenset(step.kinds)))
    new = _new_on_the_piece(book, step, taught)
    pictures = _flat(with_ends(book, step, _by_kind(book, step, new), taught))
    brace = _first_brace(book, step) if Kind.BRACE in new else None
    if brace and _is_first_of_kind(book, step) and corner_of(book, step) is None:
        # the way round is in the diagram, as the close-ups have it
        locked = {joint for operation in step.of_kind(Kind.LOCK) for joint in operation.locks}
        diagram = section_diagram(book.framework, brace, locked, book.voice, height)
        return (diagram, *pictures[1:])
    return pictures


def _new_on_the_piece(book: Book, step: Step, taught: Set[Kind]) -> frozenset[Kind]:
    """The kinds of work on the piece that a step is to show: other chains that come in are where
    they lie on the close-ups."""
    return _new_kinds(book, step) - {Kind.LAY} - taught


def _by_kind(book: Book, step: Step, kinds: Set[Kind]) -> Mapping[Kind, tuple[Picture, ...]]:
    """The hand moves of `kinds` of work in a step, in the order of the work; chains that come in
    where they lie, and how they come up, the first time that each way of laying them comes up."""
    laid = laid_pictures(book, step)
    stood, tagged = stood_pictures(book, step), tagged_pictures(book, step)
    drawn = moves_by_kind(book.framework, step, book.voice, kinds, book.shape)
    found: dict[Kind, tuple[Picture, ...]] = {
        kind: drawn[kind] for kind in drawn if kind in BEFORE_LAYING
    }
    if Kind.CLOSE_RING in drawn and all_closed(book, step):  # told in one
        found = {Kind.CLOSE_RING: tagged or tuple(one for some in found.values() for one in some)}
    if laid or Kind.LAY in drawn:
        found[Kind.LAY] = laid or drawn[Kind.LAY]
    found |= {kind: drawn[kind] for kind in drawn if kind not in {*BEFORE_LAYING, Kind.LAY}}
    found |= {Kind.STAND_UP: stood} if stood else {}
    return with_beside_locks(book, step, found)


def _flat(pictures: Mapping[Kind, tuple[Picture, ...]]) -> tuple[Picture, ...]:
    return tuple(picture for some in pictures.values() for picture in some)


def act_moves(
    book: Book, step: Step, taught: Set[Kind] = frozenset()
) -> Mapping[Kind, tuple[Picture, ...]]:
    """The hand moves that a step is the first to show, by the kinds of work of its acts; those of
    `taught` kinds of work on the piece are shown elsewhere."""
    if _ties(step):
        return tying_pictures(book, step)
    if step.kind in ON_THE_PIECE:
        drawn = _by_kind(book, step, _new_on_the_piece(book, step, taught))
        return with_lock(book, step, with_ends(book, step, drawn, taught), taught)
    return _by_kind(book, step, _new_beside_it(book, step))


def shows_locks(book: Book, step: Step) -> bool:
    """Whether a diagram of a step shows the sign of a lock."""
    if step.kind is not Kind.BRACE or not book.framework.locks:
        return False
    if corner_of(book, step) is not None:
        return True
    return _is_first_of_kind(book, step) and bool(step.of_kind(Kind.LOCK))


def new_moves(
    book: Book, step: Step, height: float, taught: Set[Kind] = frozenset()
) -> tuple[Picture, ...]:
    """The hand moves that a step is the first to show: what was shown is not shown again."""
    if step.kind in {*ON_THE_PIECE, *AS_A_WHOLE} or is_laid_to_brace(book, step):
        return first_moves(book, step, height, taught)
    return _flat(_by_kind(book, step, _new_beside_it(book, step)))


def _new_beside_it(book: Book, step: Step) -> frozenset[Kind]:
    """The kinds of work beside the piece that a step is the first to show so."""
    shown = {
        _move(book, operation)
        for other in book.steps[: step.number - 1]
        for operation in other.operations
    }
    return frozenset(op.kind for op in step.operations if _move(book, op) not in shown)


def is_laid_to_brace(book: Book, step: Step) -> bool:
    """Whether a step lays chains down in the figure of the piece, where they will be held."""
    joints = step.operations[0].joints
    return step.kind is Kind.LAY and laid_in_figure(book.framework.built_with(joints[0]))


def _move(book: Book, operation: Operation) -> Hashable:
    """What a picture of a hand move depends on."""
    kind, framework = operation.kind, book.framework
    match kind:
        case Kind.PAIR:
            mixed = len({framework.link[link].balloon for link in operation.links}) > 1
            return kind, bool(operation.locks), mixed
        case Kind.CHAIN:
            length, waits = len(operation.links), is_for_courses(book.context.piece, operation)
            if length < LONG_FROM or not waits:
                return kind, length  # the words of its picture say what it is made of
            return kind, length % 2  # a longer chain is tied as one before it
        case Kind.LAY:
            return kind, operation.joints
    return kind


def stood_up_picture(book: Book, step: Step, size: tuple[float, float]) -> Picture:
    """How the piece comes up from where it was braced, front up; how it stands, where it was
    built standing. `size` is in points."""
    if book.figures.stands:
        return finished_picture(
            book.framework,
            book.shape,
            CAMERAS["corner"],
            *size,
            patterns=book.patterns,
            alt=book.voice.say("{piece} standing, seen from a corner.", piece=book.framework.name),
        )
    people = max(operation.people for operation in step.operations)
    words = book.voice.say(
        "{piece} comes up from lying front up. The thick line is the edge that stays on the floor,"
        " the arrow the way the top goes; people stand at the sides, or along a long piece, of"
        " three or more one at the foot. Bags of ballast lie at its foot, or lines show what holds"
        " it.",
        piece=book.framework.name,
    )
    stays = book.voice.say("thick line: stays down")
    bags = book.examination.wind.ballast_at
    draw = lifting_up_picture if book.figures.long else standing_up_picture
    return draw(book.framework, book.shape, *size, words, people, stays, bags)


def _turned(book: Book, step: Step) -> Picture:
    """The piece as it lies once it is turned over, from straight above, with the joints that are
    locked then."""
    joint = (*step.locks, *book.framework.joints)[0]
    own = book.framework.built_with(joint)
    alt = book.voice.say(
        "Step {number}: the piece with its back up, from straight above. Named are the joints that"
        " are locked now.",
        number=step.number,
    )
    return named_joints(own, book.shape, CAMERAS["back"], TURNED_PT, step.locks, alt, book.patterns)


def how_to(book: Book, step: Step, picture: Picture) -> Picture:
    """A hand move told as that of a step, with what the step makes by it."""
    move = captioned(picture, book.voice.say("How to do step {number}.", number=step.number))
    if not any(step.adds.values()) or step.kind in ON_THE_PIECE:
        return move
    return replace(move, alt=f"{move.alt} {'; '.join(book.told(step).rows)}.")


def captioned(picture: Picture, words: str) -> Picture:
    """The picture with words of its own before its alternative text."""
    return replace(picture, alt=f"{words} {picture.alt}")


def _new_kinds(book: Book, step: Step) -> frozenset[Kind]:
    """The kinds of work that first come up in a step; tying parts together is one of its own, and
    so is bringing more balloons together than before. A lock is a lock everywhere, but at the
    joints of braces it is laid otherwise."""
    before = [other for other in book.steps if other.number < step.number]
    known = {kind for other in before if _ties(other) == _ties(step) for kind in other.kinds}
    known |= {Kind.LOCK for other in before if Kind.LOCK in other.kinds}
    if step.kind is Kind.BRACE and not any(one.kind is Kind.BRACE and one.locks for one in before):
        known -= {Kind.LOCK}
    if not any(map(_tags_round, before)):
        known -= {Kind.TAG} if _tags_round(step) else set()
    if step.kind is Kind.JOIN and not _ties(step):
        joins = [one for one in before if one.kind is Kind.JOIN and not _ties(one)]
        met = max((most_met(book, other) for other in joins), default=0)
        known -= {Kind.JOIN} if most_met(book, step) > met else set()
    return frozenset(step.kinds) - known


def _tags_round(step: Step) -> bool:
    """Whether a step tags chains that it closes, each knot by its row."""
    return {Kind.TAG, Kind.CLOSE_RING} <= set(step.kinds)


def _is_first_of_kind(book: Book, step: Step) -> bool:
    return step is next(o for o in book.steps if o.kind is step.kind and _ties(o) == _ties(step))


def _ties(step: Step) -> bool:
    """Whether a step ties parts together."""
    return step.kind is Kind.JOIN and len(step.of_kind(Kind.JOIN)[0].joints) > 1


def _first_brace(book: Book, step: Step) -> int | None:
    """Number of the first brace that a step ties."""
    if step.kind is not Kind.BRACE:
        return None
    links = set(step.links)
    return next(brace.number for brace in book.framework.braces if set(brace.links) & links)


def corner_of(book: Book, step: Step) -> Cell | None:
    """The cell that a brace step finishes, unless it goes straight on. The brace that closes a
    ring finishes two: the one that leads back to the first brace is the one that turns."""
    number = _first_brace(book, step)
    if number is None or set(step.cells) <= {STRAIGHT}:
        return None
    finished = [
        cell
        for cell in book.framework.cells
        if newest_brace(book.framework, cell).number == number and cell.kind != STRAIGHT
    ]
    return finished[-1] if finished else None


def corner_picture(book: Book, step: Step, cell: Cell, size: tuple[float, float]) -> Showable:
    """The diagram of a corner as it is at the end of its step: locks that are set later are not
    there yet. A spur is drawn as it lies, as high as it needs."""
    told = book.voice.say("Diagram of step {number}.", number=step.number)
    if cell.kind.is_spur:
        return captioned(spur_before(book, step.number, cell), told)
    locked = {joint for joint, number in book.locked_in.items() if number <= step.number}
    return Undrawn(
        *size,
        lambda: captioned(
            cell_diagram(book.framework, cell.number, *size, book.voice, locked), told
        ),
    )
