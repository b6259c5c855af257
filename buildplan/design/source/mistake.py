"""A mistake at a place in the design file, before it is given its line."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache
from typing import Literal

from buildplan.language import grammar
from buildplan.language.speaking import say, say_in

Path = tuple[str | int, ...]
"""A place in the file: keys, and positions in lists from 0."""
Mark = tuple[int, int]
"""Line and column, both from 1."""

_PLAIN_KEY = re.compile(r"[\w-]+( [\w-]+)*")


@dataclass(frozen=True)
class Mistake:
    """What is wrong at `at`, and what would be right.

    `mark` is given only where `at` does not lead to the line (a key's second copy, say).
    """

    at: Path
    message: str
    suggestion: str
    mark: Mark | None = None


def path_in_words(path: Path) -> str:
    """`path` as people write it: `build.tube.course[3]`."""
    words = ""
    for step in path:
        if isinstance(step, int):
            words += f"[{step}]"
        else:
            name = key_in_words(step)
            words += f"[{name}]" if name.startswith('"') else f".{name}"
    return words.removeprefix(".")


def key_in_words(key: str) -> str:
    """`key` as it stands in a sentence: in quotes, and cut short, when it is no plain word."""
    return key if _PLAIN_KEY.fullmatch(key) and len(key) <= 40 else shown(key)


def shown(value: object) -> str:
    """`value` as it is written in a design file, cut short if it is long."""
    match value:
        case None:
            words = say_in("value in a design file", "nothing")
        case bool():
            words = "true" if value else "false"
        case str():
            escaped = value.replace("\\", "\\\\").replace('"', '\\"')
            words = '"' + "".join(c if c.isprintable() else "?" for c in escaped) + '"'
            return words if len(words) <= 42 else words[:38] + '..."'
        case dict():
            words = say_in("value in a design file", "a mapping")
        case list():
            words = say_in("value in a design file", "a list")
        case float():
            words = f"{value:.12g}"
        case _:
            words = str(value)
    return words if len(words) <= 42 else words[:38] + "..."


def listed(names: Iterable[str], last: Literal["and", "or"] = "and", most: int = 20) -> str:
    """`names` as a list in words: a, b and c."""
    all_names = list(names)
    if len(all_names) > most:
        names_in_full = ", ".join(all_names[:most])
        return say("{names} and {count} more", names=names_in_full, count=len(all_names) - most)
    return grammar.listed(all_names, "or" if last == "or" else "standard")


@lru_cache(maxsize=2000)
def _nearest(name: str, known: tuple[str, ...]) -> str | None:
    by_lower = {one.lower(): one for one in reversed(known)}
    close = get_close_matches(name.lower(), by_lower, n=1, cutoff=0.55)
    return by_lower[close[0]] if close else None


def nearest(name: str, known: Iterable[str]) -> str | None:
    """The one of `known` that `name` was most likely meant to be, or None.

    Looks through no more than the first 1,000, so that a long list costs little.
    """
    return _nearest(name, tuple(known)[:1000])


def one_of(name: str, known: Iterable[str], message: str) -> str:
    """A suggestion that leads from `name` to one of `known`: the nearest first, then all.

    `message` is marked, and has a place for the `{names}`.
    """
    names = tuple(known)
    if not names:
        return say("there is none to choose from")
    guess = nearest(name, names)
    all_of_them = say(message, names=listed(map(key_in_words, names)))
    return f"{meant(guess)} {all_of_them}" if guess else all_of_them


def meant(guess: str) -> str:
    """Asks whether this name was meant."""
    return say("did you mean {guess}?", guess=key_in_words(guess))
