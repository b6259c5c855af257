"""What the close-ups of the steps show: one panel a brace with its locks, and one for each few
joints of a round that are brought together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.progress import BuildProgress
from buildplan.booklet.common.spurs import spur_of_step
from buildplan.drawing.camera import Camera, angle_between_deg
from buildplan.drawing.cell_layout import corner_at, newest_brace
from buildplan.drawing.panel import Panel
from buildplan.drawing.parts_apart import parts_apart, seat_beside
from buildplan.drawing.seat import ACROSS, BESIDE, LOOKING_DOWN, OPEN_END, brace_seat, seat_before
from buildplan.drawing.way_round import TiedRow
from buildplan.framework.chain_roles import Layer
from buildplan.framework.model import Brace
from buildplan.instructions.model import TurnWords
from buildplan.instructions.setting_up import is_tying
from buildplan.language.phrases import clauses
from buildplan.language.voice import Voice
from buildplan.sequence.model import Access, Kind, Operation, Step, Turn
from buildplan.shape.lying import laid_in_figure

# Steps whose work is on the piece, and those that concern the whole of it.
ON_THE_PIECE = frozenset({Kind.BRACE, Kind.SINGLE, Kind.JOIN})
ON_THE_WHOLE = frozenset({Kind.LAY, Kind.INSPECT})
# Close-ups that can stand beside one another and still be read.
MOST_ABREAST = 3
# Joints of a round that are seen from one seat: so many, and none further round than this.
MOST_JOINTS, FURTHEST_ROUND_DEG = 4, 75.0


@dataclass(frozen=True, eq=False)
class CloseUp:
    """A picture of work near by: what it is called, in words what is done, and what it shows."""

    title: str
    words: str
    panel: Panel


@dataclass(frozen=True, eq=False)
class Views:
    """What the pictures of all steps show: the piece as it grows, and the close-ups of steps
    on the piece, by step number."""

    progress: BuildProgress
    closeups: Mapping[int, tuple[CloseUp, ...]]

    def of(self, step: Step) -> tuple[CloseUp, ...]:
        """The close-ups of a step; none when its work is not on the piece."""
        return self.closeups.get(step.number, ())


def plan_views(book: Book) -> Views:
    """Close-ups for every step on the piece, each from the seat of its kind of work; a spur has
    diagrams instead."""
    progress = BuildProgress(book)
    return Views(
        progress,
        {
            step.number: tuple(closeups_of(book, progress, step))
            for step in book.steps
            if step.kind in ON_THE_PIECE and spur_of_step(book, step) is None
        },
    )


def step_joints(step: Step) -> tuple[str, ...]:
    """The joints where hands work in a step."""
    tying = [turn for turn in step.turns if _ties(turn)]
    return _joints(tying or step.turns)


def _ties(turn: Turn) -> bool:
    """Whether a turn ties something to the piece: some only bring a chain in."""
    return any(operation.kind in ON_THE_PIECE for operation in turn.operations)


def closeups_of(book: Book, progress: BuildProgress, step: Step) -> Iterator[CloseUp]:
    """The close-ups of a step on the piece, in the order in which their work is done."""
    if step.kind is Kind.JOIN:
        coming = [number for number, turn in enumerate(step.turns) if not _ties(turn)]
        tying = [number for number, turn in enumerate(step.turns) if _ties(turn)]
        said = book.told(step).turns
        told = [said[number] for number in coming]
        for numbers in _rounds(book, step):
            turns = [step.turns[number] for number in numbers]
            joints = _joints(turns)
            tied = [said[number] for number in numbers]
            title = tied[0].name if len(turns) == 1 else ""
            scene = progress.at_turns(step, numbers, joints)
            camera = seat_before(book.framework, book.shape, joints)
            ties = [book.framework.tie_of[joint] for joint in joints if is_tying(step)]
            if ties:
                camera = seat_beside(scene, ties, camera)
                scene = parts_apart(scene, list(dict.fromkeys(ties)), camera)
            panel = Panel(
                scene,
                camera,
                joints,
                tuple(TiedRow((joint,), False) for joint in joints),
                numbered={
                    joint: tying.index(number) + 1
                    for number, turn in zip(numbers, turns, strict=True)
                    for joint in turn.joints
                },
            )
            yield CloseUp(title, _words(book, [*told, *tied]), panel)
            told = []
        return
    for number, turn_said in enumerate(book.told(step).turns):
        yield CloseUp(
            turn_said.name, _words(book, [turn_said]), _tied(book, progress, step, number)
        )


def _tied(book: Book, progress: BuildProgress, step: Step, number: int) -> Panel:
    """The panel of a turn that ties a brace or a single, with its locks."""
    turn, framework = step.turns[number], book.framework
    brace = next((brace_of(book, op) for op in turn.operations if op.kind is Kind.BRACE), None)
    joints = _joints([turn])
    scene = progress.at_turns(step, [number], joints)
    if brace is None:
        singles = tuple(
            TiedRow(op.joints, False) for op in turn.operations if op.kind is Kind.SINGLE
        )
        return Panel(
            scene,
            seat_before(book.framework, book.shape, joints),
            joints,
            singles,
            _below(book, joints),
        )
    rows = (
        *(TiedRow(chain.joints, chain.closed) for chain in brace.chains),
        *(TiedRow(op.joints, False) for op in turn.operations if op.kind is Kind.SINGLE),
    )
    skipped = tuple(
        joint
        for cell in framework.cells
        if newest_brace(framework, cell).number == brace.number and not cell.kind.is_spur
        for joint in cell.skipped
    )
    camera = brace_seat(framework, book.shape, brace, corner_at(framework, brace))
    shown = tuple(dict.fromkeys((*brace.section, *joints)))
    return Panel(
        scene,
        camera,
        shown,
        rows,
        _below(book, shown),
        skipped,
        frozenset(brace.shared),
        later=_waiting(book, step, brace, shown),
    )


def _waiting(book: Book, step: Step, brace: Brace, joints: Sequence[str]) -> Mapping[str, int]:
    """Joints of a brace that are locked with one that comes after it, and its number; not those
    that are locked with the piece turned over."""
    turned = step.ways.get(Access.TURNED, ())
    waits = book.context.lock_waits_for
    return {
        joint: waits[joint]
        for joint in joints
        if waits.get(joint, 0) > brace.number and joint not in turned
    }


def seen_from(voice: Voice, camera: Camera) -> str:
    """From where a close-up is seen, in words."""
    if camera.name == OPEN_END:
        return voice.say("from the open end")
    if camera.name == ACROSS:
        return voice.say("straight across the corner")
    if camera == LOOKING_DOWN:
        return voice.say("from above, the head at the top")
    if camera.name == BESIDE:
        return voice.say("from beside it, as it lies front up")
    return voice.say("as one stands before it")


def brace_of(book: Book, operation: Operation) -> Brace:
    """The brace that an operation ties."""
    links = set(operation.links)
    return next(brace for brace in book.framework.braces if set(brace.links) & links)


def _below(book: Book, joints: Sequence[str]) -> frozenset[str]:
    """Those of some joints that lie on the floor while a piece lies front up."""
    back = {
        joint
        for part in {id(f): f for f in map(book.framework.built_with, joints)}.values()
        if laid_in_figure(part)
        for long in part.chains
        if long.layer is Layer.BACK
        for joint in long.chain.joints
    }
    return frozenset(joints) & back


def _rounds(book: Book, step: Step) -> list[list[int]]:
    """The turns of a step that brings joints together, by number, in the order in which they are
    done: as few runs as can each be seen from one seat, and are of one layer, as even as can be."""
    tying = [number for number, turn in enumerate(step.turns) if _ties(turn)]
    runs: list[list[int]] = []
    for number in tying:
        if runs and _seen_together(book, step, [*runs[-1], number]):
            runs[-1].append(number)
        else:
            runs.append([number])
    cuts = [place * len(tying) // max(len(runs), 1) for place in range(len(runs) + 1)]
    even = [tying[first:last] for first, last in pairwise(cuts)]
    return even if all(_seen_together(book, step, run) for run in even) else runs


def _seen_together(book: Book, step: Step, numbers: Sequence[int]) -> bool:
    """Whether turns can be seen from the seat before all of them."""
    joints = _joints([step.turns[number] for number in numbers])
    behind = {any(j in step.behind for j in step.turns[number].joints) for number in numbers}
    if len(joints) > MOST_JOINTS or len(behind) > 1:
        return False
    before = seat_before(book.framework, book.shape, joints)
    seats = [seat_before(book.framework, book.shape, step.turns[n].joints) for n in numbers]
    return all(
        seat.name == before.name and angle_between_deg(seat, before) <= FURTHEST_ROUND_DEG
        for seat in seats
    )


def _joints(turns: Sequence[Turn]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(joint for turn in turns for joint in turn.joints))


def _words(book: Book, turns: Sequence[TurnWords]) -> str:
    """The words of turns, row after row."""
    return clauses(book.voice, (row for turn in turns for row in turn.lines))
