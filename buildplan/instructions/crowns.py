"""Telling how the free knots of what stands come up, where a zigzag begins on its ring, and where
what stands folds inwards."""

from __future__ import annotations

from collections.abc import Sequence
from math import fsum

from buildplan.framework.model import LongChain
from buildplan.instructions.coming import coming, is_first, round_of
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import joint_names
from buildplan.instructions.model import Doing
from buildplan.instructions.moves import Hand
from buildplan.language.voice import Voice
from buildplan.sequence.laid import RoundCourse
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.ordering import natural


def standing_up(context: Context, step: Step) -> Sequence[Doing]:
    """How the free knots of the first zigzag come up, once it is locked to its ring: like a crown,
    on which the next ring is set. Nothing where that was told, or of another course."""
    course = round_of(context, step)
    if course is None or course.up is None or not is_first(context, step):
        return ()
    if context.teacher(Hand.LIFT_CROWN, step) is not None:
        return ()
    told = context.voice.say(
        "Lift the outer knots, {tips}, off the floor: chain {zigzag} now stands up from chain"
        " {ring} like a crown. Let go of it: it may lean outwards, or back to the floor, until"
        " the next ring holds it.",
        tips=joint_names(context.voice, sorted_tips(course)),
        zigzag=course.up.letter,
        ring=course.ring.letter,
    )
    return (Doing(told, Kind.STAND_UP),)


def folded_inwards(context: Context, step: Step) -> str:
    """That what is built folds inwards, where the ring that comes in is shorter than the last."""
    rings = [long for one in context.steps[: step.number] for long in _rings(context, one)]
    if len(rings) < 2 or rings[-1] not in coming(context, step):
        return ""
    before, ring = rings[-2:]
    if _length_m(context, ring) >= _length_m(context, before):
        return ""
    return context.voice.say(
        "Ring {ring} is smaller than ring {before}: fold the free knots of what stands inwards.",
        ring=ring.letter,
        before=before.letter,
    )


def _rings(context: Context, step: Step) -> list[LongChain]:
    """The closed chains that come in with a step and are joined all round in it."""
    joined = {operation.joints[0] for operation in step.of_kind(Kind.JOIN)}
    return [
        long
        for long in coming(context, step)
        if long.chain.closed and joined.issuperset(long.chain.joints)
    ]


def _length_m(context: Context, ring: LongChain) -> float:
    """How long a ring is, from tie to tie."""
    framework = context.framework
    return fsum(
        framework.balloons[framework.link[id_].balloon].tie_to_tie_m for id_ in ring.chain.links
    )


def first_tip(voice: Voice, course: RoundCourse) -> str:
    """Which tip of a zigzag comes after its first joint on the ring: now the one of the same
    number, now the next."""
    if course.up is None:
        return ""
    first, tip, *_ = course.up.chain.joints
    letter = course.up.letter
    return voice.say(
        "On chain {zigzag} {tip} comes after {joint}.", zigzag=letter, tip=tip, joint=first
    )


def sorted_tips(course: RoundCourse) -> list[str]:
    """The joints of a ring's zigzag that are not on the ring, by their numbers."""
    own = set(course.ring.chain.joints)
    tips = course.up.chain.joints if course.up is not None else ()
    return sorted((joint for joint in tips if joint not in own), key=natural)
