"""Steps and what they say as plain lists and dictionaries, for `steps --json`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from buildplan.instructions.model import StepWords, TurnWords
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Step


def told_as_json(steps: Sequence[Step], words: Sequence[StepWords]) -> list[dict[str, Any]]:
    """Steps as `steps_as_json` gives them, with their words: `title`, `text` and `check` of each
    step, `name` and `words` of each turn, a line each."""
    return [
        {
            **plain,
            "title": said.title,
            "text": said.text,
            "check": said.check,
            "turns": [
                {**turn, **_turn(told)}
                for turn, told in zip(plain["turns"], said.turns, strict=True)
            ],
        }
        for plain, said in zip(steps_as_json(steps), words, strict=True)
    ]


def _turn(told: TurnWords) -> dict[str, Any]:
    return {"name": told.name, "words": "\n".join(told.lines)}
