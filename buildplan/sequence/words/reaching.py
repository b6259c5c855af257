"""Sentences about getting at joints, and about turning a piece over."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import capital, count_word, listed
from buildplan.language.messages import Message, message
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.grammar import Wording
from buildplan.source.suggestions import Suggestion, by_hand


def out_of_reach() -> tuple[Message, Suggestion]:
    """A joint to which no way was found: what to take note of, and what helps."""
    return (
        message("these joints are hard to reach when they are tied and locked"),
        by_hand(
            message(
                "have a second person press the balloons about them apart, or lock them before the "
                "balloons around them are tied"
            )
        ),
    )


def on_its_side(joints: Sequence[str]) -> str:
    """Joints that face the floor, to which lifting an edge does not help."""
    if not joints:
        return ""
    return say_count(
        "For {joints} stand the piece on its side; somebody holds it.",
        "For {joints} stand the piece on its side; somebody holds it.",
        len(joints),
        joints=listed(joints),
    )


def stool(joints: Sequence[str]) -> str:
    """Joints that are too high to be reached from the floor."""
    if not joints:
        return ""
    return say_count(
        "{joints} is high: work from a steady step stool, and have somebody hold it.",
        "{joints} are high: work from a steady step stool, and have somebody hold it.",
        len(joints),
        joints=listed(joints),
    )


def hard(joints: Sequence[str]) -> str:
    """Joints to which no way was found."""
    if not joints:
        return ""
    return say_count(
        "{joints} is hard to reach: have somebody press the balloons there apart.",
        "{joints} are hard to reach: have somebody press the balloons there apart.",
        len(joints),
        joints=listed(joints),
    )


def lift(joints: Sequence[str]) -> str:
    """Joints that face the floor."""
    if not joints:
        return ""
    return say_count(
        "{joints} faces the floor: have somebody lift the piece there.",
        "{joints} face the floor: have somebody lift the piece there.",
        len(joints),
        joints=listed(joints),
    )


def kneel() -> str:
    """Joints of the side that lies on the floor, in reach without lifting."""
    return say("Kneel down to the joints at the back and reach in low.")


def turn_over(people: int) -> Wording:
    """Turning the piece over."""
    return Wording(
        title=say("Turn the piece over"),
        text=say(
            "{people} people take hold round its edge, both hands round a joint, never by one"
            " balloon. Lift together on a count, turn the piece over and lay it down with its back"
            " up.",
            people=capital(count_word(people)),
        ),
        check=say("The back is up, and no joint has come apart."),
    )
