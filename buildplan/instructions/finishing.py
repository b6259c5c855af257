"""Telling the finish: looking the piece over, and standing it up."""

from __future__ import annotations

from buildplan.instructions.context import Context
from buildplan.instructions.model import Wording
from buildplan.language.phrases import count_word, sentences
from buildplan.sequence.model import Step


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
            voice.say("Go once round the whole piece."),
            voice.say("Look for a joint that has lost its lock or has two.") if locks else "",
            voice.say("Replace every balloon that is soft or torn."),
            voice.say("The back must look exactly like the front.") if mirrored else "",
        ),
        check=sentences(counted, held if locks else ""),
    )


def stand_up(context: Context, step: Step) -> Wording:
    """Standing the piece up."""
    voice, people = context.voice, count_word(context.voice, step.operations[0].people)
    if context.figures.stands:
        return Wording(
            title=voice.say("Let the piece stand"),
            text=voice.say(
                "It stands as it was built. Call {people} people or more, set it straight, both"
                " hands round a joint, never on one balloon, and hold it until it is ballasted.",
                people=people,
            ),
            check=voice.say("The piece stands by itself on its foot, as in the finished view."),
        )
    if context.framework.braces:
        text = voice.say(
            "Call {people} people or more. Take hold on both sides, both hands round the bundle of"
            " chains at a brace, never by one balloon. Lift together on a count, turn the piece up"
            " on its foot, and hold it until it is ballasted.",
            people=people,
        )
    else:
        text = voice.say(
            "Call {people} people or more. Take hold on both sides, both hands round a joint, never"
            " by one balloon. Lift together on a count, turn the piece up on its foot, and hold it"
            " until it is ballasted.",
            people=people,
        )
    return Wording(
        title=voice.say("Stand the piece up"),
        text=text,
        check=voice.say("The piece stands by itself on its foot, as in the finished view."),
    )
