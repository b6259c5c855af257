"""How long a large piece is likely to take, in words, before it is begun."""

from __future__ import annotations

from buildplan.evaluation.expected_time import WORTH_SAYING_S, PieceSize
from buildplan.language.voice import Voice

FEW_S = 90  # told in seconds


def expected_words(piece: str, size: PieceSize, seconds: float, voice: Voice) -> str:
    """What is said of so many seconds of work on a piece; nothing where they are few."""
    if seconds < WORTH_SAYING_S:
        return ""
    if seconds < FEW_S:
        return voice.say(
            "{piece} has {balloons} balloons: this takes about {count} seconds of work for one "
            "processor.",
            piece=piece,
            balloons=size.balloons,
            count=10 * round(seconds / 10),
        )
    return voice.say_count(
        "{piece} has {balloons} balloons: this takes about {number} minute of work for one "
        "processor.",
        "{piece} has {balloons} balloons: this takes about {number} minutes of work for one "
        "processor.",
        round(seconds / 60),
        piece=piece,
        balloons=size.balloons,
    )
