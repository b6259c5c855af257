"""Telling the finish: looking the piece over, and standing it up."""

from __future__ import annotations

from collections import Counter

from buildplan.framework.model import Framework
from buildplan.instructions.context import Context
from buildplan.instructions.model import Wording
from buildplan.language.phrases import sentences
from buildplan.sequence.model import Step
from buildplan.sequence.reach import WITH_ONE_AT_FOOT


def inspect(context: Context, step: Step) -> Wording:
    """Looking the whole piece over before it is stood up."""
    voice, framework = context.voice, context.framework
    links, locks = len(framework.links), len(framework.locks)
    mirrored = any(joint != twin for joint, twin in framework.mirror.items())
    counted = voice.say_count(
        "{number} link balloon, none soft, none torn.",
        "{number} link balloons, none soft, none torn.",
        links,
    )
    held = voice.say_count("{number} lock, and it holds.", "{number} locks, and all hold.", locks)
    return Wording(
        title=voice.say("Look the piece over"),
        text=sentences(
            voice.say("Go once round the whole piece.")
            if context.figures.stands or not mirrored
            else voice.say("Go round it and lift its edge to see the back."),
            voice.say("Replace what is soft or torn."),
            _like_the_front(context) if mirrored else "",
        ),
        check=sentences(counted, held if locks else ""),
    )


def _like_the_front(context: Context) -> str:
    """What the back of a piece looks like that mirrors the front: writing reads from right to left
    there, and other balloons have other colours."""
    voice = context.voice
    parts = [part.framework for part in context.framework.parts]
    reads = context.framework.reads or any(part.reads for part in parts)
    if reads or not _in_its_colours(context.framework):
        return voice.say("Behind every joint of the front lies one of the back, tied alike.")
    return voice.say("The back must look exactly like the front.")


def _in_its_colours(framework: Framework) -> bool:
    """Whether every balloon of a mirrored piece has its like in the back, or the front."""
    mirror = framework.mirror
    tied = [(link.start, link.finish, link.balloon) for link in framework.links]
    here = Counter((frozenset((a, b)), balloon) for a, b, balloon in tied)
    there = Counter((frozenset((mirror[a], mirror[b])), balloon) for a, b, balloon in tied)
    return here == there


def stand_up(context: Context, step: Step) -> Wording:
    """Standing the piece up, and holding it as it must be held."""
    voice, figures = context.voice, context.figures
    people = step.operations[0].people
    one_at_foot = step.operations[0].people >= WITH_ONE_AT_FOOT and not (
        figures.hung or figures.stands
    )
    held = [voice.say("The piece {condition}.", condition=voice.tell(c)) for c in figures.held_by]
    if figures.stands and not figures.hung:
        title = voice.say("Let the piece stand")
        how = (
            voice.say("It stands as its parts were tied together.")
            if context.framework.parts
            else voice.say("It stands as it was built.")
        )
        moves = sentences(
            how,
            voice.say(
                "It takes {people} people or more, you among them, both hands round a joint, never"
                " on one balloon.",
                people=people,
            ),
        )
    else:
        title = voice.say("Hang the piece up") if figures.hung else voice.say("Stand the piece up")
        moves = sentences(
            _lifting(context, people),
            *([_at_the_foot(context)] if one_at_foot else []),
        )
    return Wording(
        title=title,
        text=sentences(
            moves,
            *held,
            voice.say("Hold it until it is fastened so.")
            if held
            else voice.say("Let go only when its ballast is on, one hand near it.")
            if figures.stands
            else ""
            if one_at_foot
            else voice.say("Once it is up one holds it while the other ties on its ballast."),
        ),
        check=sentences(voice.say("The piece is upright, as in the finished view."), *held)
        if held
        else voice.say("The piece stands by itself on its foot, as in the finished view."),
    )


def _at_the_foot(context: Context) -> str:
    """What one of those does who stand a piece up."""
    if context.figures.held_by:
        return context.voice.say(
            "One of them keeps the foot from sliding, then ties what holds it while the others"
            " hold."
        )
    return context.voice.say(
        "One of them keeps the foot from sliding. Once it is up the others hold it, and that one"
        " ties on its ballast."
    )


def _lifting(context: Context, people: int) -> str:
    """How a piece comes up."""
    voice = context.voice
    if context.figures.hung:
        return voice.say(
            "It takes {people} people or more, you among them. Take hold on both sides, both hands"
            " round a joint, never by one balloon. Lift together on a count, up to where it hangs.",
            people=people,
        )
    if context.figures.long:
        return voice.say(
            "It takes {people} people or more, you among them. Spread out evenly along its upper"
            " edge, both hands round a joint, never by one balloon. Lift together on a count, and"
            " turn the piece up on its foot.",
            people=people,
        )
    if context.framework.braces:
        return voice.say(
            "It takes {people} people or more, you among them. Take hold on both sides, both hands"
            " round the bundle of chains at a brace, never by one balloon. Lift together on a"
            " count, and turn the piece up on its foot.",
            people=people,
        )
    return voice.say(
        "It takes {people} people or more, you among them. Take hold on both sides, both hands"
        " round a joint, never by one balloon. Lift together on a count, and turn the piece up on"
        " its foot.",
        people=people,
    )
