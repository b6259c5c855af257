"""Sentences about getting at joints, and about turning a piece over."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import capital, count_word, listed
from buildplan.sequence.words.grammar import Wording, noun


def out_of_reach() -> tuple[str, str]:
    """A joint that nobody can get at: what is wrong, and what would be right."""
    return (
        "no hand can reach to tie and lock here while the piece lies on the floor",
        "open the course there, or lock these joints before the balloons around them are tied",
    )


def only_from_behind() -> tuple[str, str]:
    """A joint that can be got at only with the piece turned over in the middle of the work."""
    return (
        "a hand can reach here only with the piece turned over in the middle of its bracing",
        "keep the piece narrower there, so that it can be reached from beside it",
    )


def lift(joints: Sequence[str]) -> str:
    """Joints that face the floor."""
    if not joints:
        return ""
    faces = noun(len(joints), "faces", "face")
    return f"{listed(joints)} {faces} the floor: have somebody lift the piece there."


def kneel() -> str:
    """Joints of the side that lies on the floor, in reach without lifting."""
    return "Kneel down to the joints at the back and reach in low."


def turn_over(people: int) -> Wording:
    """Turning the piece over."""
    return Wording(
        title="Turn the piece over",
        text=(
            f"{capital(count_word(people))} people take hold round its edge, both hands round a"
            " joint, never by one balloon. Lift together on a count, turn the piece over and lay it"
            " down with its back up."
        ),
        check="The back is up, and no joint has come apart.",
    )
