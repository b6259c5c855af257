"""How deep each sign of a line is embedded: the Unicode Bidirectional Algorithm (UAX 9, of 2022),
whose rules are named here as there. Signs of embedding and overriding (LRE, RLE, LRO, RLO, PDF) are
no part of any text of ours, and are not known.

python-bidi tells the order of a whole line; letters that join are shaped run by run, by their
levels, which it does not tell.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from bidi.mirror import MIRRORED

from buildplan.language.isolates import begins_from_right

DEEPEST = 125  # BD2
ISOLATES = frozenset(("LRI", "RLI", "FSI"))
LETTERS = frozenset(("L", "R", "AL"))
NEUTRAL = frozenset(("B", "S", "WS", "ON", "LRI", "RLI", "FSI", "PDI"))
AT_END = frozenset(("WS", "LRI", "RLI", "FSI", "PDI", "BN"))  # L1
MOST_OPEN = 63  # BD16


@dataclass
class _Sequence:
    """An isolating run sequence (BD13): where its signs are in the line, their kinds as they are
    resolved, its level, and the kinds before and after it (X10)."""

    at: list[int]
    kinds: list[str]
    level: int
    before: str
    after: str

    @property
    def direction(self) -> str:
        """That of the embedding."""
        return "LR"[self.level % 2]


def levels(text: str, *, from_right: bool) -> list[int]:
    """The embedding level of each sign of a line: odd from the right."""
    kinds = [unicodedata.bidirectional(sign) or "L" for sign in text]
    base = int(from_right)
    found = _explicit(text, kinds, base)
    for sequence in _sequences(kinds, found, base):
        _resolve_weak(sequence)
        _resolve_brackets(sequence, text, kinds)
        _resolve_neutral(sequence)
        for at, kind in zip(sequence.at, sequence.kinds, strict=True):  # I1 and I2
            found[at] += (kind != "L") if sequence.level % 2 == 0 else (kind != "R")
            found[at] += sequence.level % 2 == 0 and kind in ("EN", "AN")
    for at, kind in enumerate(kinds):  # 5.2: what is not seen goes with what stands before it
        if kind == "BN":
            found[at] = found[at - 1] if at else base
    ends = True
    for at in range(len(kinds) - 1, -1, -1):  # L1
        ends = kinds[at] in ("S", "B") or (ends and kinds[at] in AT_END)
        if ends:
            found[at] = base
    return found


def _explicit(text: str, kinds: Sequence[str], base: int) -> list[int]:
    """X1 to X8, of isolates."""
    ends = _ends(kinds)
    found, open_levels, too_deep = list[int](), [base], 0
    for at, kind in enumerate(kinds):
        if kind == "PDI":  # X6a
            if too_deep:
                too_deep -= 1
            elif len(open_levels) > 1:
                open_levels.pop()
        level = open_levels[-1]
        found.append(level)
        if kind in ISOLATES:  # X5a to X5c
            within = text[at + 1 : ends.get(at, len(text))]
            right = kind == "RLI" or (kind == "FSI" and begins_from_right(within))
            deeper = level + 1 + (level % 2 == int(right))
            if deeper > DEEPEST or too_deep:
                too_deep += 1
            else:
                open_levels.append(deeper)
    return found


def _ends(kinds: Sequence[str]) -> dict[int, int]:
    """Where each isolate ends that does (BD9)."""
    opened, found = list[int](), dict[int, int]()
    for at, kind in enumerate(kinds):
        if kind in ISOLATES:
            opened.append(at)
        elif kind == "PDI" and opened:
            found[opened.pop()] = at
    return found


def _sequences(kinds: Sequence[str], found: Sequence[int], base: int) -> Iterator[_Sequence]:
    """BD13 and X10, of what X9 leaves."""
    seen = [at for at, kind in enumerate(kinds) if kind != "BN"]
    runs = list[list[int]]()
    for at in seen:
        if runs and found[runs[-1][-1]] == found[at]:
            runs[-1].append(at)
        else:
            runs.append([at])
    ends = _ends(kinds)
    begun_by = {run[0]: run for run in runs}
    follows = {ends[run[-1]] for run in runs if run[-1] in ends}
    levels_about = [base, *(found[at] for at in seen), base]
    place = {at: number for number, at in enumerate(seen, 1)}
    for run in runs:
        if run[0] in follows:
            continue
        signs = list(run)
        while (end := ends.get(signs[-1])) is not None:
            signs += begun_by[end]
        level = found[signs[0]]
        next_level = base if kinds[signs[-1]] in ISOLATES else levels_about[place[signs[-1]] + 1]
        before = "LR"[max(level, levels_about[place[signs[0]] - 1]) % 2]
        yield _Sequence(
            signs, [kinds[at] for at in signs], level, before, "LR"[max(level, next_level) % 2]
        )


def _resolve_weak(sequence: _Sequence) -> None:
    """W1 to W7."""
    kinds = sequence.kinds
    last, strong = sequence.before, sequence.before
    for i, kind in enumerate(kinds):
        if kind == "NSM":  # W1
            kinds[i] = "ON" if last in ISOLATES or last == "PDI" else last
        last = kinds[i]
        if last in LETTERS:
            strong = last
        elif last == "EN" and strong == "AL":  # W2
            kinds[i] = "AN"
    kinds[:] = ["R" if kind == "AL" else kind for kind in kinds]  # W3
    _join_numbers(kinds)
    strong = sequence.before
    for i, kind in enumerate(kinds):
        if kind in ("ES", "ET", "CS"):  # W6
            kinds[i] = "ON"
        elif kind in LETTERS:
            strong = kind
        elif kind == "EN" and strong == "L":  # W7
            kinds[i] = "L"


def _join_numbers(kinds: list[str]) -> None:
    """W4 and W5: what parts the digits of a number, and what stands beside it, goes with it."""
    for i in range(1, len(kinds) - 1):  # W4
        about = kinds[i - 1]
        if about == kinds[i + 1] and (kinds[i], about) in (
            ("ES", "EN"),
            ("CS", "EN"),
            ("CS", "AN"),
        ):
            kinds[i] = about
    for start, end in _stretches(kinds, frozenset(("ET",))):  # W5
        if "EN" in (*kinds[max(0, start - 1) : start], *kinds[end : end + 1]):
            kinds[start:end] = ["EN"] * (end - start)


def _resolve_brackets(sequence: _Sequence, text: str, as_given: Sequence[str]) -> None:
    """N0: both brackets of a pair take the direction of what they hold."""
    kinds, own = sequence.kinds, sequence.direction
    for first, last in sorted(_pairs(sequence, text)):
        inside = {_strong(kind) for kind in kinds[first + 1 : last]}
        if not inside & {"L", "R"}:
            continue
        told = own
        if own not in inside:
            earlier = (_strong(kind) for kind in reversed(kinds[:first]))
            told = next((kind for kind in earlier if kind), sequence.before)
        for i in (first, last):
            kinds[i] = told
            for after in range(i + 1, len(kinds)):
                if as_given[sequence.at[after]] != "NSM":
                    break
                kinds[after] = told


def _pairs(sequence: _Sequence, text: str) -> Iterator[tuple[int, int]]:
    """BD16."""
    waiting = list[tuple[str, int]]()
    for i, at in enumerate(sequence.at):
        if sequence.kinds[i] != "ON":
            continue
        sign = unicodedata.normalize("NFC", text[at])  # brackets that are equivalent are one
        closing = _closing_brackets().get(sign)
        if closing is not None:
            if len(waiting) == MOST_OPEN:
                return
            waiting.append((closing, i))
            continue
        fitting = [n for n, (expected, _) in enumerate(waiting) if expected == sign]
        if fitting:
            yield waiting[fitting[-1]][1], i
            del waiting[fitting[-1] :]


@cache
def _closing_brackets() -> dict[str, str]:
    """The closing bracket of each opening one (BidiBrackets.txt of the Unicode Character Database,
    which is derived so: punctuation that opens, and is mirrored by what closes)."""
    return {
        sign: other
        for sign, other in MIRRORED.items()
        if unicodedata.category(sign) == "Ps"
        and unicodedata.category(other) == "Pe"
        and unicodedata.bidirectional(sign) == "ON"
    }


def _resolve_neutral(sequence: _Sequence) -> None:
    """N1 and N2."""
    kinds = sequence.kinds
    for start, end in _stretches(kinds, NEUTRAL):
        before = _strong(kinds[start - 1]) if start else sequence.before
        after = _strong(kinds[end]) if end < len(kinds) else sequence.after
        kinds[start:end] = [before if before == after else sequence.direction] * (end - start)


def _stretches(kinds: Sequence[str], sort: frozenset[str]) -> list[tuple[int, int]]:
    """Where kinds of a sort stand in a row: start and end of each."""
    edges = [False, *(kind in sort for kind in kinds), False]
    turns = [i for i, (one, next_one) in enumerate(pairwise(edges)) if one != next_one]
    return list(zip(turns[::2], turns[1::2], strict=True))


def _strong(kind: str) -> str:
    """The direction that a kind has for rules N0 to N2, if any: numbers are from the right."""
    return {"L": "L", "R": "R", "EN": "R", "AN": "R"}.get(kind, "")
