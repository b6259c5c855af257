"""Messages taken apart again: what one was said with, found in a text, in any language."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from buildplan.language.voice import Voice

# Numbers that between them choose every plural form of the languages there are.
COUNTS = (1, 2, 5, 1_000_000)
NUMBER = r"\d[\d.,\u00a0\u202f]*"
"""Whole numbers as any locale writes them."""
_PLACEHOLDER = re.compile(r"\{(\w+)\}")
# a noncharacter (Unicode Standard, 23.7), which no text holds and no voice shows otherwise
_MARK = "\ufdd0"
_SENTINEL = re.compile(f"{_MARK}(\\w+){_MARK}")


@dataclass(frozen=True)
class Heard:
    """A message as a voice says it, with what may stand for each of its placeholders."""

    forms: tuple[re.Pattern[str], ...]

    def whole(self, text: str) -> Mapping[str, str] | None:
        """What stands for each placeholder where the text is the message; None where it is not."""
        for form in self.forms:
            found = form.fullmatch(text)
            if found is not None:
                return found.groupdict()
        return None

    def within(self, text: str) -> Iterator[tuple[int, Mapping[str, str]]]:
        """Where in a text the message is said, and with what."""
        starts = set[int]()
        for form in self.forms:
            for found in form.finditer(text):
                if found.start() not in starts:
                    starts.add(found.start())
                    yield found.start(), found.groupdict()


def heard(voice: Voice, text: str, /, **stands: str) -> Heard:
    """A message; `stands` are regular expressions for what may stand for a placeholder, else
    anything may."""
    return Heard((_form(voice.say(text, **_sentinels(text)), stands),))


def heard_count(voice: Voice, one: str, many: str, /, **stands: str) -> Heard:
    """As `heard`, for a message in the form that goes with a number."""
    values = _sentinels(one + many)
    said = dict.fromkeys(voice.say_count(one, many, number, **values) for number in COUNTS)
    return Heard(tuple(_form(form, {"number": NUMBER, **stands}) for form in said))


def number_in(text: str) -> int:
    """A whole number as a locale wrote it."""
    return int("".join(filter(str.isdigit, text)))


def _sentinels(text: str) -> dict[str, str]:
    return {name: f"{_MARK}{name}{_MARK}" for name in _PLACEHOLDER.findall(text)}


def _form(said: str, stands: Mapping[str, str]) -> re.Pattern[str]:
    """The pattern of a message that was said with sentinels; the forms of one message have its
    placeholders once each, or the same thing in each place."""
    literals = _SENTINEL.split(said)
    parts, seen = [re.escape(literals[0])], set[str]()
    for name, literal in zip(literals[1::2], literals[2::2], strict=True):
        group = rf"(?P={name})" if name in seen else rf"(?P<{name}>{stands.get(name, '.+?')})"
        parts += [group, re.escape(literal)]
        seen.add(name)
    return re.compile("".join(parts))
