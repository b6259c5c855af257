"""What is said of joints that hands cannot get at."""

from __future__ import annotations

from buildplan.language.messages import Message, message
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
