"""What the parts of the work are called: the same on paper, on a screen and in a terminal."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.framework.model import Framework, Part
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Stage, Step

# Stages that are one part of the work, and what it is called: messages to be said.
PART: Mapping[Stage, str] = {
    Stage.SIZE: mark("Size and pair"),
    Stage.PAIR: mark("Size and pair"),
    Stage.CHAIN: mark("Chain"),
    Stage.CLOSE_RINGS: mark("Close rings and lay in place"),
    Stage.BRACE: mark("Brace and lock joints"),
    Stage.LOCK_JOINTS: mark("Brace and lock joints"),
    Stage.FINISH: mark("Finish"),
}

# Work on balloons and chains before they are laid, and on the whole piece in the end.
_BESIDE_THE_PARTS = frozenset(
    {
        Kind.SIZE,
        Kind.PAIR,
        Kind.TIE_OFF,
        Kind.CHAIN,
        Kind.CLOSE_RING,
        Kind.TAG,
        Kind.INSPECT,
        Kind.STAND_UP,
    }
)


def stage_name(voice: Voice, stage: Stage, framework: Framework, steps: Sequence[Step]) -> str:
    """The name of the part of the work that a stage is of, by what there is to do in it."""
    kinds, part = {step.kind for step in steps}, PART[stage]
    if part == PART[Stage.CLOSE_RINGS] and framework.parts:  # parts are laid one by one
        if Kind.CLOSE_RING not in kinds:
            return voice.say("Tag the joints")
        return voice.say("Close rings and tag the joints")
    if part == PART[Stage.CLOSE_RINGS] and Kind.CLOSE_RING not in kinds:
        return voice.say("Tag and lay in place")
    if part == PART[Stage.BRACE] and Kind.BRACE not in kinds:
        return voice.say("Join and lock")
    return voice.say(part)


def work_names(voice: Voice, framework: Framework, steps: Sequence[Step]) -> tuple[str, ...]:
    """What the part of the work is called that each step is of. Of an assembly, what is done to
    each part once its chains are there is called by the part, and then the tying."""
    named: list[str] = []
    for step in steps:
        if not framework.parts or step.kind in _BESIDE_THE_PARTS:
            named.append(stage_name(voice, step.stage, framework, steps))
        elif step.kind is Kind.TURN_OVER and named:  # of the part that was worked on
            named.append(named[-1])
        elif (part := part_of_step(framework, step)) is not None:
            named.append(voice.say("Part {part}", part=part.name))
        else:
            named.append(voice.say("Tie together"))
    return tuple(named)


def part_of_step(framework: Framework, step: Step) -> Part | None:
    """The one part of an assembly that a step works on; None where it ties parts to one another,
    or looks over the whole."""
    joints = [joint for operation in step.operations for joint in operation.joints]
    return worked_part(framework, joints)


def worked_part(framework: Framework, joints: Sequence[str]) -> Part | None:
    """The part that all of some joints are of, or None."""
    parts = [framework.part_at(joint) for joint in joints]
    return parts[0] if parts and all(part is parts[0] for part in parts) else None
