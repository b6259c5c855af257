"""The order in which the signs of a line are seen: the Unicode Bidirectional Algorithm (UAX 9).

python-bidi's own levels, with the rule for pairs of brackets (N0) that they lack. Direction signs
are taken out before (`language/shown.py` knows them), so that a line has one embedding.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import TypedDict
from unicodedata import bidirectional

from bidi import algorithm
from bidi.mirror import MIRRORED

FROM_RIGHT = frozenset(("R", "AL"))
FROM_LEFT_MARK = "\u200e"
# Pairs of BidiBrackets.txt (Unicode Character Database) that are typed by hand.
CLOSING = {"(": ")", "[": "]", "{": "}", "〈": "〉", "「": "」", "『": "』", "【": "】", "《": "》"}


class _Sign(TypedDict):
    """A sign as python-bidi keeps it."""

    ch: str
    level: int
    type: str
    orig: str


def is_from_right(text: str) -> bool:
    """Whether a line as a whole is written from the right: its first letter is (rule P3), and so
    are most, for a sentence of ours may begin with a name. It is ours if it goes on with a number
    after the last such letter: `NAME, 1 of 2`, `NAME 30 cm`."""
    kinds = [kind for kind in map(bidirectional, text) if kind in ("L", "EN", *FROM_RIGHT)]
    letters = [kind for kind in kinds if kind != "EN"]
    if not letters or letters[0] == "L" or letters.count("L") >= len(letters) / 2:
        return False
    last = max(at for at, kind in enumerate(kinds) if kind in FROM_RIGHT)
    return kinds[last + 1 : last + 2] != ["EN"] or "L" not in kinds[last:]


def begins_from_right(text: str) -> bool:
    """Whether words that stand by themselves are written from the right: their first letter is
    (rules P2 and P3)."""
    kinds = (bidirectional(sign) for sign in text)
    return next((kind for kind in kinds if kind in ("L", *FROM_RIGHT)), "L") in FROM_RIGHT


def line_levels(text: str) -> list[int]:
    """The embedding level of each sign of a line of a page. In a sentence from the left the number
    after a name from the right is the sentence's, `NAME 30 cm` and not `30 NAME cm`: a mark from
    the left stands before it while the levels are found (UAX 9, 2.6 and HL3)."""
    if is_from_right(text):
        return levels(text, from_right=True)
    marked, after_name = "", False
    for at, sign in enumerate(text):
        kind = bidirectional(sign)
        if kind == "EN" and after_name and _goes_on_from_left(text[at:]):
            marked += FROM_LEFT_MARK
        after_name = kind in FROM_RIGHT or (after_name and kind not in ("L", "EN"))
        marked += sign
    found = zip(marked, levels(marked, from_right=False), strict=True)
    return [level for sign, level in found if sign != FROM_LEFT_MARK]


def _goes_on_from_left(text: str) -> bool:
    """Whether a letter from the left comes before one from the right, or the end of a bracket that
    the number is in with the name."""
    for sign in text:
        kind = bidirectional(sign)
        if kind == "L" or kind in FROM_RIGHT or sign in CLOSING.values():
            return kind == "L"
    return False


def levels(text: str, *, from_right: bool) -> list[int]:
    """The embedding level of each sign of a line without direction signs: odd from the right."""
    storage = algorithm.get_empty_storage()
    storage["base_level"], storage["base_dir"] = int(from_right), "LR"[from_right]
    algorithm.get_embedding_levels(text, storage)
    signs: list[_Sign] = storage["chars"]
    ends = "LR"[from_right]
    whole = {"sor": ends, "eor": ends, "start": 0, "type": "", "length": len(signs)}
    storage["runs"].append(whole)
    for sign in signs:
        if sign["type"] == "BN":  # UAX 9, 5.2: what is not seen goes with what stands before it
            sign["type"] = "NSM"
    algorithm.resolve_weak_types(storage)
    _settle_brackets(signs, ends)
    algorithm.resolve_neutral_types(storage, False)
    algorithm.resolve_implicit_levels(storage, False)
    found = [sign["level"] for sign in signs]
    for at in range(len(found) - 1, -1, -1):  # L1: spaces at the end
        if signs[at]["orig"] not in ("WS", "BN"):
            break
        found[at] = int(from_right)
    return found


def _settle_brackets(signs: Sequence[_Sign], base: str) -> None:
    """Rule N0: both brackets of a pair take the direction of what they hold."""
    for first, last in sorted(_pairs(signs)):
        inside = {_strong(sign) for sign in signs[first + 1 : last]} - {""}
        if not inside:
            continue
        told = base
        if base not in inside:
            before = [_strong(sign) for sign in signs[:first]]
            told = next((kind for kind in reversed(before) if kind), base)
        for at in (first, last):
            signs[at]["type"] = told
            for mark in signs[at + 1 :]:
                if mark["orig"] != "NSM":
                    break
                mark["type"] = told


def _pairs(signs: Sequence[_Sign]) -> Iterator[tuple[int, int]]:
    waiting: list[tuple[str, int]] = []
    for at, sign in enumerate(signs):
        if sign["type"] != "ON":
            continue
        if sign["ch"] in CLOSING:
            waiting.append((CLOSING[sign["ch"]], at))
            continue
        found = [i for i, (closing, _) in enumerate(waiting) if closing == sign["ch"]]
        if found:
            yield waiting[found[-1]][1], at
            del waiting[found[-1] :]


def _strong(sign: _Sign) -> str:
    return "R" if sign["type"] in ("R", "EN", "AN") else "L" if sign["type"] == "L" else ""


def as_seen(places: Sequence[int]) -> list[int]:
    """The numbers of a line's signs from left to right, of their levels (rule L2)."""
    order = list(range(len(places)))
    for level in range(max(places, default=0), 0, -1):
        runs = groupby(order, lambda at, level=level: places[at] >= level)  # type: ignore[misc]
        parts = [(high, list(run)) for high, run in runs]
        order = [at for high, run in parts for at in (reversed(run) if high else run)]
    return order


def mirrored(sign: str) -> str:
    """A sign as it is drawn from the right (rule L4)."""
    return str(MIRRORED.get(sign, sign))
