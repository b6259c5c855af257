"""Saying a message in the language that is spoken at the moment.

On its way out: pass a `Voice` (`language/voice.py`), or make a `message` (`language/messages.py`).
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

from babel import Locale

from buildplan.language.messages import Value, mark
from buildplan.language.voice import CATALOGUES, DOMAIN, ENGLISH, LOCALES, Voice

__all__ = ["CATALOGUES", "DOMAIN", "ENGLISH", "LOCALES", "mark"]

_AT_FIRST = Voice()
_spoken: ContextVar[Voice] = ContextVar("spoken", default=_AT_FIRST)


def spoken() -> str:
    """The language that is spoken at the moment: a key of LOCALES."""
    return _spoken.get().language


def spoken_voice() -> Voice:
    """The voice of the moment."""
    return _spoken.get()


@contextmanager
def speaking(language: str) -> Iterator[None]:
    """Speak a language for a while. Raises KeyError for one that has no catalogue."""
    token = _spoken.set(Voice(language if LOCALES[language] else ENGLISH))
    try:
        yield
    finally:
        _spoken.reset(token)


def speak(language: str) -> None:
    """Speak a language from now on, until a `speaking` round this ends."""
    _spoken.set(Voice(language if LOCALES[language] else ENGLISH))


def locale() -> Locale:
    """The locale of the language that is spoken at the moment."""
    return _spoken.get().locale


def language_tag() -> str:
    """The language that is spoken at the moment as a BCP 47 tag, for documents: `en-GB`."""
    return _spoken.get().tag


def whole(number: int) -> str:
    """A whole number in digits: `12`, `1,234` (Spanish `12.345`)."""
    return _spoken.get().whole(number)


def say(message: str, /, **values: Value) -> str:
    """A message, its `{name}` placeholders filled; whole numbers as the locale writes them."""
    return _spoken.get().say(message, **values)


def say_in(context: str, message: str, /, **values: Value) -> str:
    """As `say`, for a short message that means different things in different places."""
    return _spoken.get().say_in(context, message, **values)


def say_count(one: str, many: str, number: int, /, **values: Value) -> str:
    """The form of a message that goes with a number, which fills `{number}`."""
    return _spoken.get().say_count(one, many, number, **values)


def say_whole(message: str, /) -> str:
    """As `say`, for a message without placeholders, whose braces are its own."""
    return _spoken.get().say_whole(message)
