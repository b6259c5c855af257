"""A made-up language: each message in Cyrillic letters, so that a Latin word in what is said came
past the catalogues."""

from __future__ import annotations

import gettext
import re

import pytest

from buildplan.language import voice

WORD = re.compile(r"[A-Za-z]{2,}")
PLACEHOLDER = re.compile(r"({\w*})")


def disguised(message: str) -> str:
    """A message with every Latin letter made a Cyrillic one, outside its placeholders."""

    def letter(found: re.Match[str]) -> str:
        return chr(ord("а") + ord(found[0].lower()) - ord("a"))

    parts = PLACEHOLDER.split(message)
    return "".join(
        part if PLACEHOLDER.fullmatch(part) else re.sub("[A-Za-z]", letter, part) for part in parts
    )


class Disguise(gettext.NullTranslations):
    def gettext(self, message: str) -> str:
        return disguised(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return disguised(msgid1 if n == 1 else msgid2)

    def pgettext(self, context: str, message: str) -> str:
        return disguised(message)


def speak_made_up(monkeypatch: pytest.MonkeyPatch) -> None:
    """Speak it, whatever language is asked for."""
    monkeypatch.setattr(voice, "_catalogue", lambda language: Disguise())
