"""How a tube that is laid out comes to its shape: what is braced at a few moments of the work, from
straight above, with what still lies loose pale."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.progress import BuildProgress
from buildplan.drawing.bodies import Scene
from buildplan.drawing.line_art import SOFT
from buildplan.drawing.marks import Inset, Label, Mark, Picture
from buildplan.drawing.scene import step_picture
from buildplan.drawing.seat import FROM_ABOVE, leaves_out
from buildplan.framework.cells import CellKind
from buildplan.framework.model import Framework
from buildplan.instructions.stages import part_of_step
from buildplan.sequence.model import Kind, Step

MOMENTS = 4
LEAST, MOST, GAP = 104.0, 140.0, 8.0
CAPTION_PT, TYPE_PT = 13.0, 9.0


def with_moments(
    book: Book, progress: BuildProgress, plan: Picture, laid: Step, room: float
) -> Picture:
    """The plan of a step that lays chains out, and below it, no higher than `room`, the moments of
    bracing them."""
    steps, high = moments(book, laid), min(room, MOST)
    below = _in_turn(book, progress, steps, (plan.width, high))
    lifted = (Inset(plan, (0.0, high)), *below)
    said = book.voice.say(
        "Below, the work as each of these steps ends: {steps}. What is braced then is in full"
        " colour, what still lies loose is pale.",
        steps=book.voice.listed([str(step.number) for step in steps]),
    )
    return Picture(plan.width, plan.height + high, lifted, f"{plan.alt} {said}")


def moments(book: Book, laid: Step) -> Sequence[Step]:
    """The steps, a few at most, that show how what a step lays out is braced: the first with a
    corner of either kind, the one halfway, the last."""
    part = part_of_step(book.framework, laid)
    braced = [
        step
        for step in book.steps
        if step.kind is Kind.BRACE and part_of_step(book.framework, step) == part
    ]
    own = book.framework.built_with(laid.operations[0].joints[0])
    tied = {operation.brace: step for step in braced for operation in step.of_kind(Kind.BRACE)}
    corners: dict[CellKind, Step] = {}
    for cell in own.cells:
        if leaves_out(cell) and cell.second in tied:
            corners.setdefault(cell.kind, tied[cell.second])
    wanted = {step.number: step for step in corners.values()}
    for step in (braced[-1], braced[len(braced) // 2], braced[0]):
        if len(wanted) < MOMENTS:
            wanted[step.number] = step
    return [wanted[number] for number in sorted(wanted)][:MOMENTS]


def _in_turn(
    book: Book, progress: BuildProgress, steps: Sequence[Step], size: tuple[float, float]
) -> list[Mark]:
    """A picture of the work at each of some steps, side by side in a strip of this size."""
    wide, high = (size[0] - GAP * (MOMENTS - 1)) / MOMENTS, size[1] - CAPTION_PT
    marks: list[Mark] = []
    for place, step in enumerate(steps):
        x = place * (wide + GAP)
        scene = _braced_by(book.framework, progress, step, book.steps)
        drawn = step_picture(scene, FROM_ABOVE, wide, high)
        marks.append(Inset(drawn, (x, CAPTION_PT)))
        words = book.voice.say_count("step {steps}", "steps {steps}", 1, steps=str(step.number))
        marks.append(Label((x + wide / 2, 2.5), words, TYPE_PT, SOFT))
    return marks


def _braced_by(
    framework: Framework, progress: BuildProgress, step: Step, steps: Sequence[Step]
) -> Scene:
    """What stands after a step, new as far as it is held; chains that still lie loose as done."""
    scene = progress.finished(step)
    held = {
        joint
        for one in steps[: step.number]
        if one.kind is Kind.BRACE
        for operation in one.operations
        for joint in operation.joints
    }
    ends = ((name, framework.link[name]) for name in scene.new_links)
    braced = {name for name, link in ends if link.start in held and link.finish in held}
    return replace(
        scene, new_links=frozenset(braced), done_links=frozenset(scene.new_links - braced)
    )
