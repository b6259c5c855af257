"""How long work is likely to take, told before it begins."""

from __future__ import annotations

from buildplan.commands.aside import aside
from buildplan.language.voice import Voice


def tell_expected(seconds: float, voice: Voice) -> None:
    """Say so where somebody would wonder whether anything happens."""
    from buildplan.evaluation.expected_time import WORTH_SAYING_S

    if seconds >= WORTH_SAYING_S:
        words = voice.say_count(
            "This takes up to about {number} minute of work for one processor.",
            "This takes up to about {number} minutes of work for one processor.",
            max(1, round(seconds / 60)),
        )
        aside(words)
