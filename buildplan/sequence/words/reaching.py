"""Sentences about getting at joints, and about turning a piece over."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import capital, count_word, listed
from buildplan.language.messages import Message, message
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.grammar import Wording
from buildplan.source.suggestions import Suggestion, by_hand


def out_of_reach() -> tuple[Message, Suggestion]:
    """A joint that nobody can get at: what is wrong, and what would be right."""
    return (
        message("no hand can reach to tie and lock here while the piece lies on the floor"),
        by_hand(
            message(
                "open the course there, or lock these joints before the balloons around them are "
                "tied"
            )
        ),
    )


def only_from_behind() -> tuple[Message, Suggestion]:
    """A joint that can be got at only with the piece turned over in the middle of the work."""
    return (
        message(
            "a hand can reach here only with the piece turned over in the middle of its bracing"
        ),
        by_hand(message("keep the piece narrower there, so that it can be reached from beside it")),
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
