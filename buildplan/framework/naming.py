"""What chains and joints are called."""

from __future__ import annotations


def letters(index: int) -> str:
    """A, B, ... Z, AA, AB, ... for number `index`, from 0."""
    found = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        found = chr(ord("A") + rest) + found
    return found


def numbered(count: int) -> list[str]:
    """P1, P2, ...: the corners of a solid, in no order that a chain would give."""
    return [f"P{i + 1}" for i in range(count)]
