"""Saying a message in the language that is spoken at the moment.

Messages are looked up with the standard library's gettext, in the catalogues beside this
module. Their placeholders are filled by name, so that a translation may put them in its own order.
"""

from __future__ import annotations

import gettext
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache
from pathlib import Path

from babel import Locale
from babel.numbers import format_decimal

DOMAIN = "buildplan"
CATALOGUES = Path(__file__).parent / "catalogues"
ENGLISH = "en"
# The language of a catalogue, as the locale whose numbers and lists it uses (Unicode CLDR).
LOCALES: Mapping[str, str] = {ENGLISH: "en_GB", "es": "es"}
# up to here every locale of LOCALES writes a whole number with its digits alone
UNGROUPED = 1000

_spoken: ContextVar[str] = ContextVar("spoken", default=ENGLISH)


def spoken() -> str:
    """The language that is spoken at the moment: a key of LOCALES."""
    return _spoken.get()


@contextmanager
def speaking(language: str) -> Iterator[None]:
    """Speak a language for a while. Raises KeyError for one that has no catalogue."""
    token = _spoken.set(language if LOCALES[language] else ENGLISH)
    try:
        yield
    finally:
        _spoken.reset(token)


def speak(language: str) -> None:
    """Speak a language from now on, until a `speaking` round this ends."""
    _spoken.set(language if LOCALES[language] else ENGLISH)


@cache
def _catalogue(language: str) -> gettext.NullTranslations:
    if language == ENGLISH:
        return gettext.NullTranslations()
    return gettext.translation(DOMAIN, CATALOGUES, [language])


@cache
def _locale(language: str) -> Locale:
    return Locale.parse(LOCALES[language])


def locale() -> Locale:
    """The locale of the language that is spoken at the moment."""
    return _locale(spoken())


def language_tag() -> str:
    """The language that is spoken at the moment as a BCP 47 tag, for documents: `en-GB`."""
    return LOCALES[spoken()].replace("_", "-")


def whole(number: int) -> str:
    """A whole number in digits: `12`, `1,234` (Spanish `12.345`)."""
    if -UNGROUPED < number < UNGROUPED:
        return str(number)
    return format_decimal(number, locale=locale())


def say(message: str, /, **values: str | int) -> str:
    """A message, its `{name}` placeholders filled; whole numbers as the locale writes them."""
    return _filled(_catalogue(spoken()).gettext(message), values)


def say_in(context: str, message: str, /, **values: str | int) -> str:
    """As `say`, for a short message that means different things in different places."""
    return _filled(_catalogue(spoken()).pgettext(context, message), values)


def say_count(one: str, many: str, number: int, /, **values: str | int) -> str:
    """The form of a message that goes with a number, which fills `{number}`."""
    message = _catalogue(spoken()).ngettext(one, many, number)
    return _filled(message, {"number": number, **values})


def say_whole(message: str, /) -> str:
    """As `say`, for a message without placeholders, whose braces are its own."""
    return _catalogue(spoken()).gettext(message) if message else ""


def mark(message: str) -> str:
    """The message itself: it goes into the catalogues, and is said with `say` later."""
    return message


def _filled(message: str, values: Mapping[str, str | int]) -> str:
    told = {k: whole(v) if isinstance(v, int) else v for k, v in values.items()}
    return message.format(**told)
