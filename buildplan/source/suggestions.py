"""What would be right, as values: a change to the design file, or words to be followed by hand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import reduce
from itertools import chain

from buildplan.language.messages import Message, message
from buildplan.language.voice import Voice

Path = tuple[str | int, ...]
"""A place in the file: keys, and positions in lists from 0."""


@dataclass(frozen=True)
class Put:
    """Another `value` at a place of the file, or the first one there. With `last`, the place is
    the first of several items of a list, up to item `last`, that one value takes the place of."""

    at: Path
    value: object
    last: int | None = None


@dataclass(frozen=True)
class TakeOut:
    """The key or the item at a place of the file, with what belongs to it, goes."""

    at: Path


@dataclass(frozen=True)
class Rename:
    """The key at a place of the file is written otherwise."""

    at: Path
    key: str


Change = Put | TakeOut | Rename


@dataclass(frozen=True)
class Remedy:
    """One way to mend a problem: said in words, and done by all of its changes."""

    words: Message
    changes: tuple[Change, ...]


@dataclass(frozen=True)
class Suggestion:
    """What would be right: words for the person, and ways of which each mends by itself.

    Without ways it can be followed by hand only.
    """

    words: tuple[Message, ...] = ()
    ways: tuple[Remedy, ...] = ()

    @property
    def by_hand(self) -> bool:
        """Whether no change of the file is named that could be tried."""
        return not self.ways

    def __bool__(self) -> bool:
        return bool(self.words or self.ways)


NOTHING = Suggestion()


def by_hand(*words: Message | None) -> Suggestion:
    """A suggestion that names no change of the file; what is None is passed over."""
    return Suggestion(tuple(one for one in words if one is not None))


def to_try(*words: Message) -> Suggestion:
    """What may mend and has not been tried: told as a thing to be tried by hand."""
    return by_hand(*(message("to be tried by hand: {advice}", advice=one) for one in words))


def change(words: Message, *changes: Change) -> Suggestion:
    """A suggestion of one change, or of several that belong together."""
    return Suggestion(ways=(Remedy(words, changes),))


def within(part: Path, suggestion: Suggestion) -> Suggestion:
    """A suggestion about what stands at `part` of a file, as one about the whole file."""
    return replace(
        suggestion,
        ways=tuple(
            Remedy(way.words, tuple(replace(one, at=(*part, *one.at)) for one in way.changes))
            for way in suggestion.ways
        ),
    )


def suggestion_words(suggestion: Suggestion, voice: Voice) -> str:
    """The suggestion as people read it: its ways with `or` between them, its words after them."""
    said = [voice.tell(one) for one in suggestion.words]
    if suggestion.ways:
        ways = [voice.tell(way.words) for way in suggestion.ways]
        said.insert(
            0,
            reduce(
                lambda one, other: voice.tell(message("{one}, or {other}", one=one, other=other)),
                ways,
            ),
        )
    asks = [" " if one.endswith("?") else "; " for one in said]
    return "".join(chain.from_iterable(zip(said, [*asks[:-1], ""], strict=True)))


def change_as_data(change: Change) -> Mapping[str, object]:
    """A change as plain data for scripts: its place as a list, and what is to be done there."""
    match change:
        case Put(at, value, None):
            return {"at": list(at), "put": value}
        case Put(at, value, last):
            return {"at": list(at), "last": last, "put": value}
        case TakeOut(at):
            return {"at": list(at), "take_out": True}
        case Rename(at, key):
            return {"at": list(at), "rename": key}
