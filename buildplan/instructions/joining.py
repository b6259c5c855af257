"""Telling the joints where long chains meet, the tying of parts, and the turning over."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.instructions import courses, names, rows
from buildplan.instructions.bringing_in import (
    bringing_in,
    seen_from_outside,
    which_tip,
)
from buildplan.instructions.coming import coming, joined_as
from buildplan.instructions.context import Context
from buildplan.instructions.crowns import standing_up
from buildplan.instructions.folding import folds_up
from buildplan.instructions.grammar import as_in_steps, joint_names
from buildplan.instructions.locking import done, getting_at, how_to_lock
from buildplan.instructions.measuring import rings_above_floor, rows_taped
from buildplan.instructions.model import Doing, LiesAt, RowWords, TurnWords, Wording
from buildplan.instructions.moves import Hand
from buildplan.instructions.setting_up import (
    high_up,
    is_tying,
    lie_together,
    lifted_on,
    pairs_first,
    put_on_floor,
)
from buildplan.language.phrases import sentences
from buildplan.sequence.model import Kind, Step, Turn


def join(context: Context, step: Step) -> Wording:
    """Joints where long chains meet, or where parts are tied together."""
    tied_parts = len(step.of_kind(Kind.JOIN)[0].joints) > 1
    return _tie_parts(context, step) if tied_parts else _join(context, step)


def _join(context: Context, step: Step) -> Wording:
    voice = context.voice
    joints = [op.joints[0] for op in step.of_kind(Kind.JOIN)]
    comes_in = bool(coming(context, step))
    known = joined_as(context, step)
    taught = known[-1] if known else None
    acts = bringing_in(context, step) if comes_in else []
    reach = sentences(*getting_at(context, step))
    lock = sentences(*how_to_lock(context, step)) if step.locks else _bind(context, joints)
    if folds_up(context, step) and taught is not None:
        acts += [Doing(folded_up(context, step), Kind.STAND_UP)]
        lock = ""
    if taught is None:
        outside = seen_from_outside(context, step) if comes_in else ""
        acts += [
            Doing(sentences(_bring_together(context, joints), outside, reach), Kind.JOIN),
            *([Doing(lock, Kind.LOCK)] if lock else []),
            *(standing_up(context, step) if comes_in else ()),
        ]
    else:
        again = as_in_steps(voice, known)
        if comes_in:  # a zigzag begins now at the one side, now at the other
            again = sentences(again, which_tip(context, step))
        ends = any(context.piece.passing[joint][1] for joint in joints)
        if ends and context.teacher(Hand.JOIN_ENDS, step) is None:
            reach = sentences(_bring_together(context, joints), reach)
        if step.locks and context.teacher(Hand.LOCK, step) is None:  # told whole
            acts.append(Doing(sentences(reach, "" if comes_in else again, lock), Kind.LOCK))
        else:
            acts.append(Doing(sentences(reach, lock if step.locks else "", again), Kind.JOIN))
        acts += standing_up(context, step) if comes_in else ()
    return Wording(
        title=courses.course_title(context, step, joints)
        if comes_in
        else voice.say_count(
            "Bring together joint {joints}",
            "Bring together joints {joints}",
            len(joints),
            joints=joint_names(voice, joints),
        ),
        text=sentences(*(act.said for act in acts)),
        acts=tuple(acts),
        check=done(
            context,
            step,
            voice.say("Move one balloon: all others at its joint move with it.")
            if taught is None
            else "",
            *meeting(context, joints),
            *courses.new_widths(context, step),
            *rings_above_floor(context, step),
            *rows_taped(context, step),
        ),
        as_in=known,
    )


def _bring_together(context: Context, joints: Sequence[str]) -> str:
    """What is brought together at joints where chains meet."""
    if any(ends for _, ends in map(context.piece.passing.__getitem__, joints)):
        return context.voice.say(
            "Find every knot and free end tagged with the joint's name and bring them together."
            " Tie free ends into the joint."
        )
    return context.voice.say(
        "Find every knot tagged with the joint's name and bring them together."
    )


def folded_up(context: Context, step: Step) -> str:
    """How what hangs is brought together in a step, and locked."""
    up = context.voice.say(
        "Fold up what hangs until the knots of a joint meet: one holds them, another locks."
    )
    return sentences(up, *how_to_lock(context, step))


def _bind(context: Context, joints: Sequence[str]) -> str:
    """Holding joints that have no lock."""
    if not _come_apart(context, joints):
        return ""
    return context.voice.say("Bind the knots fast with a strip of latex.")


def _come_apart(context: Context, joints: Sequence[str]) -> bool:
    """Whether some joints without a lock need binding: free ends that are tied in hold by
    themselves."""
    return not all(context.piece.passing[joint][1] for joint in joints)


def is_bound(context: Context, step: Step) -> bool:
    """Whether joints that meet in a step are bound with a strip of latex."""
    joins = step.of_kind(Kind.JOIN)
    if step.kind is not Kind.JOIN or step.locks:
        return False
    tied_parts = len(joins[0].joints) > 1
    return tied_parts or _come_apart(context, [one.joints[0] for one in joins])


def meeting(context: Context, joints: Sequence[str]) -> list[str]:
    """How many balloons meet at each joint: with a wrong knot there they are more or fewer."""
    voice, by_count = context.voice, dict[int, list[str]]()
    for joint in joints:
        by_count.setdefault(len(context.met_at(joint)), []).append(joint)
    if len(by_count) == 1:
        return [
            voice.say_count(
                "{number} balloon at each joint.", "{number} balloons at each joint.", count
            )
            for count in by_count
        ]
    return [
        voice.say_count(
            "{number} balloon at {joints}.",
            "{number} balloons at {joints}.",
            count,
            joints=joint_names(voice, same),
        )
        for count, same in sorted(by_count.items())
    ]


def _tie_parts(context: Context, step: Step) -> Wording:
    voice, ties = context.voice, step.of_kind(Kind.JOIN)
    parts = voice.listed(context.parts_at(ties))
    first = next(other for other in context.steps if is_tying(other))
    whole = step is first or (step.locks and not first.locks)
    lifted = list(lifted_on(context, step))
    acts = (
        _tying(context, step, parts)
        if whole
        else [
            Doing(
                sentences(
                    *pairs_first(context, step),
                    *lifted,
                    _tied_as(context, first, held=bool(lifted)),
                    *high_up(context, step),
                    *lie_together(context, step),
                ),
                Kind.LAY if lifted else None,
            )
        ]
    )
    return Wording(
        title=voice.say("Tie parts {parts} together", parts=parts),
        text=sentences(*(act.said for act in acts)),
        check=done(context, step),
        acts=tuple(acts),
    )


def _tied_as(context: Context, first: Step, *, held: bool) -> str:
    """Where tying was told; `held` where it is said already who holds and who ties."""
    if held:
        return context.voice.say("As in step {step}.", step=first.number)
    return context.voice.say(
        "As in step {step}: one ties and locks, the others hold the parts where they are.",
        step=first.number,
    )


def _tying(context: Context, step: Step, parts: str) -> list[Doing]:
    """How parts are set up, brought to where they are tied and held there, and tied."""
    voice, ties = context.voice, step.of_kind(Kind.JOIN)
    floor = sentences(*put_on_floor(context, step))
    pairs = sentences(*pairs_first(context, step))
    lifted = sentences(*lifted_on(context, step))
    held = lifted or voice.say(
        "Bring parts {parts} to where the finished view has them, {people} people or more in all,"
        " at both sides: one ties and locks, the others keep both hands on the parts, never on one"
        " balloon, until the last row of this step is locked.",
        parts=parts,
        people=ties[0].people,
    )
    laid = voice.say_count(
        "Lay the joints of the row on one another, knot on knot.",
        "Lay the joints of each row on one another, knot on knot; there are {number} rows.",
        len(ties),
    )
    together = (
        laid,
        *lie_together(context, step),
        *high_up(context, step),
    )
    tied = sentences(*how_to_lock(context, step), _round_all(context, step))
    return [
        *([Doing(floor, Kind.LAY)] if floor else []),
        *([Doing(pairs, Kind.SETTLE)] if pairs else []),
        Doing(held),
        Doing(sentences(*together), Kind.JOIN),
        Doing(tied, Kind.LOCK),
    ]


def _round_all(context: Context, step: Step) -> str:
    """What holds joints that meet together."""
    voice = context.voice
    if step.locks:
        one_more = voice.say(
            "What ties them is one more lock for each row, a pair of {colour} rounds: its knot"
            " inside, its necks at either side of all knots that meet, the rounds twisted past each"
            " other outside by two half turns. No other balloon and no line is needed.",
            colour=context.lock_name(step.locks[0]),
        )
        return sentences(one_more, _beside_theirs(context, step))
    return voice.say("Bind the joints fast to one another with a strip of latex.")


def _beside_theirs(context: Context, step: Step) -> str:
    """Where the rounds of a tie come out at joints that have locks already."""
    tie = context.framework.tie_of[step.of_kind(Kind.JOIN)[0].joints[0]]
    apart = context.figures.apart.get(tie.name)
    if apart is None or not any(joint in context.framework.lock_at for joint in tie.joints):
        return ""
    if apart.axis is LiesAt.ON_TOP:
        return context.voice.say(
            "The joints keep the locks that they have, whose rounds lie above and below; the new"
            " ones come out left and right of the knots, between them."
        )
    return context.voice.say(
        "The joints keep the locks that they have; the new rounds come out above and below the"
        " knots, between the rounds that are there."
    )


def join_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Joint v4: knots of chain A (2 times) and chain B; free end of chain C`, and its lock."""
    voice, head = context.voice, turn.operations[0]
    if head.kind is not Kind.JOIN:
        return courses.coming_rows(context, step, turn)
    name = names.head_name(voice, context.piece, head)
    if len(head.joints) > 1:
        if turn.of_kind(Kind.LOCK):
            return TurnWords(name, (rows.tied(voice, name),))
        return TurnWords(name, (rows.row(voice, name, rows.along(head.joints)),))
    passing, ends = context.piece.passing[head.joints[0]]
    alone = context.piece.alone
    said = rows.join(
        voice,
        name,
        list(passing.items()),
        [(letter, times) for letter, times in ends.items() if letter not in alone],
        [alone[letter] for letter in ends if letter in alone],
    )
    brought = [_brought(context, link) for link in head.links]
    if turn.of_kind(Kind.LOCK):
        said = rows.then_locked(voice, said)
    return TurnWords(name, (said, *brought))


def _brought(context: Context, link_id: str) -> RowWords:
    """A balloon that is tied in with a joint, tail first."""
    link = context.framework.link[link_id]
    colour = context.names_of([link_id])[0]
    return rows.balloon(context.voice, link_id, colour, (link.tail, link.neck))


def nothing_particular(context: Context, step: Step, turn: Turn) -> TurnWords:
    """A turn of which there is nothing more to say."""
    return TurnWords("", ())
