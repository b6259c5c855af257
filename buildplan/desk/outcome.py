"""What the processes at work report, as plain data."""

from __future__ import annotations

from dataclasses import dataclass

from buildplan.language.messages import Message


@dataclass(frozen=True)
class Made:
    """A result is there: `what` of a design."""

    what: str


@dataclass(frozen=True)
class Share:
    """How much of the work is done, and what is being done now; words of the reader's language."""

    share: float
    words: str = ""


@dataclass(frozen=True)
class Files:
    """What was printed: names below the folder of what is printed."""

    names: tuple[str, ...]


@dataclass(frozen=True)
class Begun:
    """A new design: the name of its file."""

    name: str


@dataclass(frozen=True)
class Refused:
    """Why nothing came of it, in the reader's language."""

    words: str


@dataclass(frozen=True)
class Failed:
    """A fault of ours; or, where it is told, none: a disk that takes nothing more."""

    error: str
    told: Message | None = None
