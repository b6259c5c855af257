"""A reader of words: rebuilds a piece from titles, texts and rows of steps alone.

It knows English phrases of the trade and joint labels, and nothing of operations: if the
words do not say enough, the piece it ends with is wrong.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

Edge = tuple[str, str, str, str]  # joint of the neck, joint of the tail, balloon, role


@dataclass
class Read:
    """What the words said: link balloons, the name of the rounds at each locked joint, and
    how many balloons were sized by name."""

    links: Counter[Edge] = field(default_factory=Counter)
    locks: dict[str, str] = field(default_factory=dict)
    sized: Counter[str] = field(default_factory=Counter)


def read_words(steps: Iterable[tuple[str, str, Sequence[str]]]) -> Read:
    """Read steps given as (title, text, rows)."""
    read = Read()
    for title, text, rows in steps:
        _read_sized(read, title)
        named = re.search(r"Take (?:a chain of \w+|one|a pair of) (.+?) balloons?\b", text)
        rounds = re.search(r"a pair of (.+?) rounds", text)
        for row in rows:
            name, _, rest = row.partition(": ")
            if name.startswith("Chain ") and "joints " in rest:
                read.links.update(_chain(rest))
            elif name.startswith("Brace "):
                assert named
                read.links.update(_brace(rest, named[1]))
            elif name.startswith("Single "):
                assert named
                tail, neck = rest.split(" – ")
                read.links[neck, tail, named[1], "single"] += 1
            elif name.startswith("Locks of "):
                assert rounds
                for joint in rest.split(", "):
                    assert joint not in read.locks
                    read.locks[joint] = rounds[1]
    return read


def _read_sized(read: Read, title: str) -> None:
    sized = re.match(r"Size (\d+) (.+?) (link balloon|round)s? to ", title)
    if sized:
        read.sized[f"{sized[2]} {sized[3]}"] += int(sized[1])


def _alternating(joints: Sequence[str], names: Sequence[str], role: str) -> Iterator[Edge]:
    """Links along joints: the first starts with its tail, and knots are neck to neck and
    tail to tail in turn."""
    assert len(joints) == len(names) + 1
    for i, name in enumerate(names):
        tail, neck = (joints[i], joints[i + 1]) if i % 2 == 0 else (joints[i + 1], joints[i])
        yield neck, tail, name, role


def _chain(rest: str) -> Iterator[Edge]:
    """`40 balloons (all deep blue), joints A1 to A40 and back to A1`."""
    found = re.fullmatch(r"(\d+) balloons? \((.+)\), joints (.+)", rest)
    assert found
    count = int(found[1])
    yield from _alternating(_way(found[3]), _names(found[2], count), "chain")


def _way(words: str) -> list[str]:
    counted = re.fullmatch(r"([A-Z]+)1 to \1(\d+)( and back to \1[1])?", words)
    if " – " in words or not counted:
        return words.split(" – ")
    joints = [f"{counted[1]}{i + 1}" for i in range(int(counted[2]))]
    return [*joints, joints[0]] if "and back to" in words else joints


def _names(order: str, count: int) -> list[str]:
    if order.startswith("all "):
        return [order.removeprefix("all ")] * count
    runs = order.removesuffix(", over and over").split(", ")
    names = [run.split(" ", 1)[1] for run in runs for _ in range(int(run.split(" ", 1)[0]))]
    assert len(names) == count or order.endswith("over and over")
    return [names[i % len(names)] for i in range(count)]


def _brace(rest: str, balloon: str) -> Iterator[Edge]:
    """`A3 – B3 – C3 – D3, closed at A3`; `C4 – D6 – A6 – B4, shares B4-C4 with brace 4`."""
    own = rest.split(", shares ")[0]
    for part in own.split("; and "):
        way, _, closed = part.partition(", closed at ")
        joints = way.split(" – ")
        if closed:
            assert closed == joints[0]
            joints.append(closed)
        yield from _alternating(joints, [balloon] * (len(joints) - 1), "brace")
