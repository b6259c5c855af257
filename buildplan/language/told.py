"""An error that a user can cause, what is said of it a message."""

from __future__ import annotations

from buildplan.language.messages import Message
from buildplan.language.voice import Voice


class ToldError(ValueError):
    """What a user gave that cannot be used: `told` says what is wrong and what would be right."""

    def __init__(self, told: Message) -> None:
        super().__init__(Voice().tell(told))
        self.told = told


class NoSignError(ToldError):
    """A text cannot be printed: no font has its signs; `told` names them, and what to do."""
