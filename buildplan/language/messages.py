"""Messages as values: what is to be said, before any language is chosen.

A message is written in English where it arises, with named placeholders; a `Voice` says it. Its
values may be messages themselves, numbers or lists, so that nothing needs a language before the
edge.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

Style = Literal["standard", "or"]


@dataclass(frozen=True)
class Decimal:
    """A number said with so many decimal places."""

    value: float
    places: int


@dataclass(frozen=True)
class Measure:
    """A length or a speed in the reader's units, and the number that scripts read of it, whatever
    the reader's."""

    words: Message
    number: float


@dataclass(frozen=True)
class Listing:
    """Things said one after another: `A, B and C`, or with the style `or`, `A, B or C`."""

    items: tuple[Value, ...]
    style: Style = "standard"


@dataclass(frozen=True)
class Message:
    """One message of the catalogues with its values.

    `many` is the plural form and `number` what chooses between the two, where it has one.
    `context` tells short messages of the same English apart. With `whole` the braces in the text
    are its own.
    """

    text: str
    values: tuple[tuple[str, Value], ...] = ()
    many: str = ""
    number: int = 0
    context: str = ""
    whole: bool = False


Value = str | int | Decimal | Measure | Listing | Message


def message(text: str, /, **values: Value) -> Message:
    """A message whose `{name}` placeholders are filled when it is said."""
    return Message(text, tuple(values.items()))


def message_in(context: str, text: str, /, **values: Value) -> Message:
    """As `message`, for a short one that means different things in different places."""
    return Message(text, tuple(values.items()), context=context)


def message_count(one: str, many: str, number: int, /, **values: Value) -> Message:
    """A message in the form that goes with a number, which fills `{number}`."""
    return Message(one, tuple(values.items()), many=many, number=number)


def message_whole(text: str, /) -> Message:
    """A message without placeholders, whose braces are its own."""
    return Message(text, whole=True)


def listing(items: Iterable[Value], style: Style = "standard") -> Listing:
    """Things to be said one after another."""
    return Listing(tuple(items), style)


def written(digits: str) -> Decimal:
    """A number in Python's digits, with as many places as they have: `0.25`."""
    return Decimal(float(digits), len(digits.partition(".")[2]))


def mark(text: str) -> str:
    """The text itself: it goes into the catalogues, and is made a message of later."""
    return text


def mark_count(one: str, many: str) -> tuple[str, str]:
    """The two forms of a counted message: as `mark`, for `say_count` later."""
    return one, many
