"""An error that a user can cause, what is said of it a message."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.messages import Message, listing, message
from buildplan.language.shown import sign_name
from buildplan.language.voice import Voice

MOST_NAMED = 3  # signs that a message names


class ToldError(ValueError):
    """What a user gave that cannot be used: `told` says what is wrong and what would be right."""

    def __init__(self, told: Message) -> None:
        super().__init__(Voice().tell(told))
        self.told = told


class NoSignError(ToldError):
    """A text cannot be printed: no font has `signs` of it; `told` names them, and what to do."""

    def __init__(self, told: Message, signs: Sequence[str], text: str) -> None:
        super().__init__(told)
        self.args = (told, tuple(signs), text)  # so that it passes from one process to another
        self.signs, self.text = tuple(signs), text

    def __str__(self) -> str:
        return Voice().tell(self.told)


def no_sign(signs: Sequence[str], text: str) -> Message:
    """What is said of signs of a text that no font has."""
    return message(
        "no font has {signs} of {text}: put a font that has them on this machine, or name "
        "its file in the brand (font: FILE)",
        signs=listing(map(sign_name, signs[:MOST_NAMED])),
        text=text,
    )
