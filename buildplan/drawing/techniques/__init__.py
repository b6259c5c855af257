"""How hands do each kind of work: one picture for each move, in the piece's own colours.

`TECHNIQUES` holds the moves of each kind of step; `moves` draws those of one step with its own
balloons and joints. Settling is told in the step of its brace, and looking a piece over takes no
move of its own, so neither has a picture in `TECHNIQUES`; chains are laid out as the piece lies.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from types import MappingProxyType

from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.braces import (
    settle_joint,
    tie_end,
    tie_single,
    wrap_brace,
)
from buildplan.drawing.techniques.closing_tie import begin_brace, close_brace, goes_round
from buildplan.drawing.techniques.joints import balloons_brought, join_chains
from buildplan.drawing.techniques.knots import chain_pairs, tie_off
from buildplan.drawing.techniques.laying import lay_course
from buildplan.drawing.techniques.locks import twist_lock
from buildplan.drawing.techniques.pairs import hold_shut, pair_rounds, tie_pair, wrap_pair
from buildplan.drawing.techniques.rings import close_ring
from buildplan.drawing.techniques.short_chains import brace_chain
from buildplan.drawing.techniques.tags import tag_joints
from buildplan.drawing.techniques.work import size_balloons, stand_up, turn_over
from buildplan.framework.model import Framework, Role
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Operation, Step
from buildplan.shape.lying import laid_in_figure
from buildplan.shape.model import Shape

USUAL = 4  # balloons at most joints of braces
Technique = Callable[..., Picture]  # of a framework, for a voice; more arguments have defaults

TECHNIQUES: Mapping[Kind, tuple[Technique, ...]] = MappingProxyType(
    {
        Kind.SIZE: (size_balloons, hold_shut),
        Kind.PAIR: (wrap_pair, tie_pair),
        Kind.TIE_OFF: (tie_off,),
        Kind.CHAIN: (chain_pairs,),
        Kind.CLOSE_RING: (close_ring,),
        Kind.TAG: (tag_joints,),
        Kind.LAY: (lay_course,),
        Kind.BRACE: (brace_chain, wrap_brace, begin_brace, close_brace, settle_joint),
        Kind.SINGLE: (tie_end, tie_single),
        Kind.JOIN: (join_chains,),
        Kind.TURN_OVER: (turn_over,),
        Kind.LOCK: (twist_lock,),
        Kind.STAND_UP: (stand_up,),
    }
)


def moves(
    framework: Framework,
    step: Step,
    voice: Voice,
    kinds: Collection[Kind] = tuple(Kind),
    shape: Shape | None = None,
) -> tuple[Picture, ...]:
    """The hand moves that a step takes, with its own balloons and joints; of `kinds` of work. With
    the shape a joint's balloons are the way round that they are built."""
    found = moves_by_kind(framework, step, voice, kinds, shape)
    return tuple(move for some in found.values() for move in some)


def moves_by_kind(
    framework: Framework,
    step: Step,
    voice: Voice,
    kinds: Collection[Kind] = tuple(Kind),
    shape: Shape | None = None,
) -> Mapping[Kind, tuple[Picture, ...]]:
    """The same as `moves`, by the kinds of work in the order in which they come up."""
    first: dict[Kind, Operation] = {}
    for operation in step.operations:
        first.setdefault(operation.kind, operation)
    joins = step.of_kind(Kind.JOIN)
    if joins:  # of joints, the first where most balloons meet
        first[Kind.JOIN] = max(joins, key=lambda join: balloons_brought(framework, join.joints[0]))
    closed = tuple(operation.chain for operation in step.of_kind(Kind.CLOSE_RING))
    found = {
        kind: (close_ring(framework, voice, closed),)
        if kind is Kind.CLOSE_RING
        else _moves_of(framework, operation, voice, shape)
        for kind, operation in first.items()
        if kind in kinds
    }
    pair = first.get(Kind.PAIR)
    if Kind.SIZE in found and pair is not None and pair.links:  # sized two at a time
        found[Kind.SIZE] += (hold_shut(framework, voice, pair.links),)
    return found


def _moves_of(
    framework: Framework, first: Operation, voice: Voice, shape: Shape | None
) -> tuple[Picture, ...]:
    if first.kind is Kind.SIZE:
        return (size_balloons(framework, voice, first.balloon),)
    if first.kind is Kind.PAIR:
        return _pair_moves(framework, first, voice)
    if first.kind is Kind.TIE_OFF:
        return (tie_off(framework, voice, first.links[0]),)
    if first.kind is Kind.CHAIN and (
        framework.link[first.links[0]].role is Role.BRACE or len(first.links) < 3
    ):
        # a short chain; one balloon, or one pair, is a chain as it is
        balloon = framework.link[first.links[0]].balloon
        return (brace_chain(framework, voice, (len(first.links),), balloon),)
    if first.kind is Kind.CHAIN:
        return (chain_pairs(framework, voice, first.links),)
    if first.kind is Kind.BRACE and first.links:
        return _brace_moves(framework, first, voice)
    if first.kind is Kind.LAY:
        own = framework.built_with(first.joints[0])
        coming = [one for one in own.chains if not {*one.chain.links}.isdisjoint(first.links)]
        if laid_in_figure(own):
            return ()  # laid in the figure of the piece: `laid_out.py`
        # of a course those that later steps bring in lie elsewhere
        return (lay_course(own, voice, coming),)
    if first.kind is Kind.TAG:
        return (tag_joints(framework.built_with(first.joints[0]), voice, first.joints),)
    if first.kind is Kind.JOIN and len(first.joints) > 1:
        return ()  # parts that are tied to one another are drawn as they lie: `parts_apart.py`
    if first.kind in {Kind.JOIN, Kind.LOCK}:
        return (_joint_move(framework, first, voice, shape),)
    return technique_pictures(framework, first.kind, voice)


def _pair_moves(framework: Framework, first: Operation, voice: Voice) -> tuple[Picture, ...]:
    """How two balloons are tied, once both are held shut."""
    if first.locks:
        return (pair_rounds(framework, voice),)
    return tuple(draw(framework, voice, first.links) for draw in (wrap_pair, tie_pair))


def _joint_move(
    framework: Framework, first: Operation, voice: Voice, shape: Shape | None
) -> Picture:
    """How chains are brought together at a joint, or how it is locked."""
    if first.kind is Kind.LOCK:
        return twist_lock(framework, voice, _usual_joint(framework, first.locks[0]), shape)
    return join_chains(framework, voice, first.joints[0], shape)


def _usual_joint(framework: Framework, joint: str) -> str:
    """The first locked joint of a braced piece at which four balloons meet, as at most; else
    `joint`."""
    if not framework.braces:
        return joint
    locked = (lock.joint for lock in framework.locks)
    return next((one for one in locked if len(framework.links_at[one]) == USUAL), joint)


def _brace_moves(framework: Framework, first: Operation, voice: Voice) -> tuple[Picture, ...]:
    """The way of a brace, how its ends are tied, and how the knots between them settle."""
    brace = next(b for b in framework.braces if first.links[0] in b.links)
    wrapped = wrap_brace(framework, voice, brace.number)
    settled = (settle_joint(framework, voice),) if brace.passes_joints else ()
    if goes_round(brace):
        ends = (draw(framework, voice, brace.number) for draw in (begin_brace, close_brace))
        return (wrapped, *ends, *settled)
    return (wrapped, tie_end(framework, voice), *settled)


def technique_pictures(framework: Framework, kind: Kind, voice: Voice) -> tuple[Picture, ...]:
    """The pictures of one kind of work that have something to show for this piece."""
    return tuple(
        draw(framework, voice) for draw in TECHNIQUES.get(kind, ()) if _applies(draw, framework)
    )


def _applies(draw: Technique, framework: Framework) -> bool:
    if draw in (begin_brace, close_brace):
        return bool(framework.braces) and goes_round(framework.braces[0])
    if draw in (wrap_brace, settle_joint):
        return bool(framework.braces)
    if draw is brace_chain:
        return any(len(chain.links) > 1 for brace in framework.braces for chain in brace.chains)
    if draw is lay_course:
        return not framework.braces  # these lie in the figure of the piece
    if draw in (tie_end, tie_single):
        return bool(framework.singles)
    if draw is twist_lock:
        return bool(framework.locks)
    if draw is close_ring:
        return any(long.chain.closed for long in framework.chains)
    return True


__all__ = [
    "TECHNIQUES",
    "Technique",
    "balloons_brought",
    "moves",
    "moves_by_kind",
    "technique_pictures",
]
