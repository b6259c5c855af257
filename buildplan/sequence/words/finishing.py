"""Sentences of the finish: looking the piece over, and standing it up."""

from __future__ import annotations

from buildplan.language.grammar import capital, count_word, listed, sentences
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words import grammar
from buildplan.sequence.words.grammar import (
    Wording,
)


def inspect(links: int, locks: int, mirrored: bool) -> Wording:
    """Looking the whole piece over before it is stood up."""
    counted = [say_count("{number} link balloon", "{number} link balloons", links)]
    if locks:
        counted.append(grammar.locks(locks))
    return Wording(
        title=say("Look the piece over"),
        text=sentences(
            say("Go once round the whole piece."),
            say("Look for a joint that has lost its lock or has two.") if locks else "",
            say("Replace every balloon that is soft or torn."),
            say("The back must look exactly like the front.") if mirrored else "",
        ),
        check=say("{counted}, none soft, none torn.", counted=capital(listed(counted))),
    )


def stand_up(people: int, braced: bool) -> Wording:
    """Standing the piece up."""
    who = capital(count_word(people))
    if braced:
        text = say(
            "{people} people or more take hold on both sides, both hands round the bundle of chains"
            " at a brace, never by one balloon. Lift together on a count, turn the piece up on its"
            " foot, and hold it until it is ballasted as its own page says.",
            people=who,
        )
    else:
        text = say(
            "{people} people or more take hold on both sides, both hands round a joint, never by"
            " one balloon. Lift together on a count, turn the piece up on its foot, and hold it"
            " until it is ballasted as its own page says.",
            people=who,
        )
    return Wording(
        title=say("Stand the piece up"),
        text=text,
        check=say("The piece stands by itself on its foot, as in the finished view."),
    )
