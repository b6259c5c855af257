"""A reader of words: rebuilds a piece from what steps say, and from nothing else.

It knows phrases of the trade and joint labels, and nothing of operations: if the words do not
say enough, the piece it ends with is wrong. White space counts for nothing, so that it can
read a printed page as well.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

Edge = tuple[str, str, str, str]  # joint of the neck, joint of the tail, balloon, role

LABEL = r"[^\s,;:–]+"
WAY = rf"{LABEL}(?: – {LABEL})+"
PHRASES = re.compile(
    "|".join(
        (
            r"Take (?P<count>\d+) (?P<sized>[^.,]+?) (?P<kind>link balloon|round)s? \(\d",
            r"For the single take one (?P<for_single>[^.,]+?) balloon\b",
            r"Take (?P<size>a chain of \w+|one|a pair of|any) (?P<balloon>[^.,]+?) balloons?\b",
            r"(?:a pair of|Lock with) (?P<rounds>[^.,]+?) rounds\b",
            rf"Chain [\w.]+: (?P<length>\d+) balloons? \((?P<order>[^)]+)\), joints "
            rf"(?P<chain>{LABEL}(?: – {LABEL})+|{LABEL} to {LABEL}(?: and back to {LABEL})?)",
            r"Chain \w+, balloons? (?P<first>\d+)(?: to (?P<last>\d+))? \((?P<section>[^)]+)\)",
            rf"Brace \d+(?: \((?P<coloured>[^)]+)\))?: (?P<brace>{WAY}(?:; and {WAY})*)",
            rf"Balloon \S+ \((?P<between>[^)]+)\): (?P<across>{LABEL} – {LABEL})",
            rf"Joint (?P<joined>{LABEL}): (?:(?!Joints? ).)*?; then lock it",
            r"Joints (?P<several>[^:]+), (?:one after another|as they come): "
            r"(?:(?!Joints? ).)*?; then lock it",
            r"Joint, then lock Knots of chains Free ends (?P<table>.*?) Check\b",
            rf"Single(?: [^\s(]\S*)?(?: \((?P<own>[^)]+)\))?: (?P<single>{LABEL} – {LABEL})",
            rf"Tie \S+: (?P<tie>{LABEL}(?: – {LABEL})+)",
            rf"Tie (?P<locked_tie>{LABEL}\+{LABEL}): one lock round all",
            rf"Locks(?: with the back up)?: (?P<locks>{LABEL}(?:, {LABEL})*)",
        )
    )
)

SIZES = {"one": 1, "a pair of": 2, "a chain of three": 3, "a chain of four": 4}


@dataclass
class Read:
    """What the words said: link balloons, the name of the rounds at each locked joint, and
    how many balloons were sized by name."""

    links: Counter[Edge] = field(default_factory=Counter)
    locks: dict[str, str] = field(default_factory=dict)
    sized: Counter[str] = field(default_factory=Counter)

    def tie(self, joints: Sequence[str]) -> None:
        """Joints of parts become one, called by all their names."""
        called = dict.fromkeys(joints, "+".join(joints))
        self.links = Counter(
            {
                (called.get(neck, neck), called.get(tail, tail), balloon, role): count
                for (neck, tail, balloon, role), count in self.links.items()
            }
        )


def read_words(text: str) -> Read:  # noqa: C901 - a case for each phrase
    """Read the steps of a piece, in their order."""
    read, single, rounds = Read(), "", ""
    balloons: dict[int, str] = {}  # what short chains of so many balloons are tied from
    way: list[str] = []
    names: list[str] = []
    for found in PHRASES.finditer(" ".join(text.split())):
        said = found.groupdict()
        single = said["for_single"] or single
        if said["size"] == "any":
            single = said["balloon"]
            balloons = dict.fromkeys(SIZES.values(), single)
        elif said["size"]:
            balloons[SIZES[said["size"]]] = said["balloon"]
        rounds = said["rounds"] or rounds
        if said["sized"]:
            read.sized[f"{said['sized']} {said['kind']}"] += int(said["count"])
        elif said["chain"] and said["order"] == "in sections as below":
            way, names = _way(said["chain"]), []
        elif said["chain"] and said["order"].startswith("in sections as chain"):
            read.links.update(_alternating(_way(said["chain"]), names, "chain"))
        elif said["section"]:
            first, last = int(said["first"]), int(said["last"] or said["first"])
            assert first == len(names) + 1, "sections follow one another"
            names += _names(said["section"], last - len(names))
            if len(names) == len(way) - 1:
                read.links.update(_alternating(way, names, "chain"))
        elif said["chain"]:
            names = _names(said["order"], int(said["length"]))
            read.links.update(_alternating(_way(said["chain"]), names, "chain"))
        elif said["brace"]:
            read.links.update(_brace(said["brace"], said["coloured"], balloons))
        elif said["across"]:
            tail, neck = said["across"].split(" – ")
            read.links[neck, tail, said["between"], "chain"] += 1
        elif said["single"]:
            tail, neck = said["single"].split(" – ")
            read.links[neck, tail, said["own"] or single, "single"] += 1
        elif said["tie"]:
            read.tie(said["tie"].split(" – "))
        elif said["locked_tie"]:
            read.tie(said["locked_tie"].split("+"))
            assert said["locked_tie"] not in read.locks
            read.locks[said["locked_tie"]] = rounds
        elif said["joined"]:
            assert said["joined"] not in read.locks
            read.locks[said["joined"]] = rounds
        elif said["several"]:
            for joint in _listed(said["several"]):
                assert joint not in read.locks
                read.locks[joint] = rounds
        elif said["table"]:
            for joint in _rows(said["table"]):
                assert joint not in read.locks
                read.locks[joint] = rounds
        elif said["locks"]:
            for joint in said["locks"].split(", "):
                assert joint not in read.locks
                read.locks[joint] = rounds
    return read


def _alternating(joints: Sequence[str], names: Sequence[str], role: str) -> Iterator[Edge]:
    """Links along joints: the first starts with its tail, and knots are neck to neck and
    tail to tail in turn."""
    assert len(joints) == len(names) + 1
    for i, name in enumerate(names):
        tail, neck = (joints[i], joints[i + 1]) if i % 2 == 0 else (joints[i + 1], joints[i])
        yield neck, tail, name, role


def _way(words: str) -> list[str]:
    if " – " in words:
        return words.split(" – ")
    counted = re.fullmatch(r"(\S*?)(\d+) to \1(\d+)( and back to \1\2)?", words)
    assert counted, words
    joints = [f"{counted[1]}{i}" for i in range(int(counted[2]), int(counted[3]) + 1)]
    return [*joints, joints[0]] if counted[4] else joints


def _listed(words: str) -> Iterator[str]:
    """`B1 to B6, C2 and C3`, one by one."""
    for run in re.split(r", | and ", words):
        first, _, last = run.partition(" to ")
        counted = re.fullmatch(r"(.*?)(\d+)", first)
        end = re.fullmatch(r"(.*?)(\d+)", last or first)
        assert counted, run
        assert end, run
        assert counted[1] == end[1], run
        yield from (f"{counted[1]}{i}" for i in range(int(counted[2]), int(end[2]) + 1))


def _rows(table: str) -> Iterator[str]:
    """The joints of a table whose rows are numbered: `1 P1 A, C P1-P3 (neck) 2 P2 D, E`."""
    place, rest = 1, f" {table} "
    while found := re.search(rf" {place} ({LABEL}) ", rest):
        yield found[1]
        place, rest = place + 1, rest[found.end() - 1 :]


def _names(order: str, count: int) -> list[str]:
    if order.startswith("all "):
        return [order.removeprefix("all ")] * count
    runs = order.removesuffix(", over and over").split(", ")
    names = [run.split(" ", 1)[1] for run in runs for _ in range(int(run.split(" ", 1)[0]))]
    assert len(names) == count or order.endswith("over and over")
    return [names[i % len(names)] for i in range(count)]


def _brace(ways: str, coloured: str | None, balloons: dict[int, str]) -> Iterator[Edge]:
    for part in ways.split("; and "):
        joints = part.split(" – ")
        count = len(joints) - 1
        yield from _alternating(joints, [coloured or balloons[count]] * count, "brace")
