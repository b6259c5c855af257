"""Somebody's words within a sentence of ours, kept from turning it round: isolates of the Unicode
Bidirectional Algorithm (UAX 9, 2.4).

A name from the right stands between two signs, first strong isolate and its end, so that it has
its own direction and the sentence about it keeps its own: on a page, in a browser, at a terminal.
Words without a letter from the right need none, and get none.
"""

from __future__ import annotations

from collections.abc import Iterator
from unicodedata import bidirectional

FIRST_STRONG, END = "\u2068", "\u2069"
FROM_LEFT, FROM_RIGHT = "\u2066", "\u2067"
OPENING = frozenset((FIRST_STRONG, FROM_LEFT, FROM_RIGHT))
LETTERS_FROM_RIGHT = frozenset(("R", "AL"))


def isolated(text: str) -> str:
    """The text, as an isolate where it has a letter from the right that is in none."""
    if text.isascii():
        return text
    depth = 0
    for sign in text:
        depth += (sign in OPENING) - (sign == END)
        if not depth and bidirectional(sign) in LETTERS_FROM_RIGHT:
            return f"{FIRST_STRONG}{text}{END}"
    return text


def without_isolates(text: str) -> str:
    """The text without the signs of isolates."""
    return "".join(sign for sign in text if sign not in OPENING and sign != END)


def are_closed(text: str) -> bool:
    """Whether all isolates of a text are of the kind that we make, and end: what stands outside
    them is not moved."""
    depth = 0
    for sign in text:
        depth += (sign == FIRST_STRONG) - (sign == END)
        if depth < 0 or sign in (FROM_LEFT, FROM_RIGHT):
            return False
    return not depth


def begins_from_right(text: str) -> bool:
    """Whether a line is written from the right: the first letter outside isolates is (UAX 9, rules
    P2 and P3)."""
    return next((kind != "L" for kind in _letters(text)), False)


def _letters(text: str) -> Iterator[str]:
    depth = 0
    for sign in text:
        depth = max(0, depth + (sign in OPENING) - (sign == END))
        kind = bidirectional(sign)
        if not depth and (kind == "L" or kind in LETTERS_FROM_RIGHT):
            yield kind
