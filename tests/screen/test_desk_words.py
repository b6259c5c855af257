"""The desk's page and its words: every key that a screen says is a message, and none is idle."""

from __future__ import annotations

import re
from pathlib import Path

import buildplan.screen
from buildplan.desk.words import desk_words
from buildplan.language.voice import Voice

SOURCES = Path(buildplan.screen.__file__).parent / "web" / "src" / "desk"


def sources() -> str:
    return "\n".join(path.read_text("utf-8") for path in sorted(SOURCES.rglob("*.ts*")))


def test_every_key_that_a_screen_says_is_a_message() -> None:
    keys = set(desk_words(Voice("en")))
    said = set(re.findall(r'\bsay\("([^"]+)"', sources()))
    assert said - keys == set()
    begun = set(re.findall(r"\bsay\(`([^`$]+)\$\{", sources()))
    assert [one for one in begun if not any(key.startswith(one) for key in keys)] == []


def test_no_message_is_idle() -> None:
    text = sources()
    begun = tuple(re.findall(r"`([^`$]*[a-z] )\$\{", text))
    ended = tuple(re.findall(r"\bsay\(`\$\{\w+\}( [a-z]+)`", text))
    idle = [
        key
        for key in desk_words(Voice("en"))
        if f'"{key}"' not in text and not key.startswith(begun) and not key.endswith(ended)
    ]
    assert idle == []
