"""Many labels in few words: runs, like runs of many chains, and, of more than that, by their parts.

Labels are a name and a number (`A12`), in an assembly with a part before it (`L.A12`); those of
joints that are tied are joined by a plus (`L.A12+R.A1`).
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby

from buildplan.language.messages import Listing, Message, listing, message, message_count

MOST_TOLD = 12  # labels, runs and blocks that are named one by one
A_RUN = 3  # labels in a row that are joined up
_LABEL = re.compile(r"((?:[^.]*\.)*)(.*?)(\d+)")


@dataclass(frozen=True)
class _Run:
    """The labels `name` with the numbers `first` to `last`, of a part."""

    part: str
    name: str
    first: int
    last: int

    @property
    def labels(self) -> list[Message | str]:
        """As it is told: each label of a short one."""
        ends = [f"{self.part}{self.name}{number}" for number in (self.first, self.last)]
        if self.last - self.first + 1 >= A_RUN:
            return [message("{first} to {last}", first=ends[0], last=ends[1])]
        return [*dict.fromkeys(ends)]


def runs_words(labels: Iterable[str]) -> Listing | Message:
    """Labels in few words, none left out: as `few_runs`, else how many they are."""
    told = few_runs(labels := list(labels))
    if told is not None:
        return told
    known = sorted(dict.fromkeys(labels), key=_order)
    return message(
        "{count} in all, from {first} to {last}",
        count=len(known),
        first=known[0],
        last=known[-1],
    )


def few_runs(labels: Iterable[str]) -> Listing | None:
    """Labels in few words: `A24 to A32, D24 and D25`; `1 to 4 of each of M to AN`; of an assembly
    that has too many, `12 joints of L and 8 joints of R`; None where that takes many words too."""
    given = list(dict.fromkeys(labels))
    known = sorted(given, key=_order)
    runs, others = _runs(known)
    told: list[Message | str] = [one for run in runs for one in run.labels]
    if len(told) + len(others) > MOST_TOLD:
        told = list(_blocks(runs))
    if len(told) + len(others) <= MOST_TOLD:
        return listing([*told, *others])
    parts = Counter(map(_part, given))
    if 1 < len(parts) <= MOST_TOLD and "" not in parts:
        return listing(
            message_count("{number} joint of {part}", "{number} joints of {part}", count, part=part)
            for part, count in parts.items()
        )
    return None


def chains_in_runs(names: Iterable[str]) -> Listing:
    """Chains in few words: `L.A to L.G and L.K`."""
    told: list[Message | str] = []
    places = enumerate(names)
    for _, found in groupby(places, key=lambda one: _chain_run(*one)):
        run = [name for _, name in found]
        if len(run) < A_RUN:
            told += run
        else:
            told.append(message("{first} to {last}", first=run[0], last=run[-1]))
    return listing(told)


def _chain_run(place: int, name: str) -> tuple[str, int]:
    """What chains of one part have in common that follow one another."""
    part, _, own = name.rpartition(".")
    return part, _chain_number(own) - place


def _part(label: str) -> str:
    """The part that a label is of; joints that are tied count once, with the first of them."""
    return label.partition("+")[0].rpartition(".")[0]


def _order(label: str) -> tuple[str, int, str, int]:
    found = _LABEL.fullmatch(label)
    part, name, number = found.groups() if found else ("", label, "0")
    return part, len(name), name, int(number)


def _runs(labels: Sequence[str]) -> tuple[list[_Run], list[str]]:
    """Labels in order as runs, and those without a number."""
    runs: list[_Run] = []
    others = []
    for label in labels:
        found = _LABEL.fullmatch(label)
        if found is None:
            others.append(label)
            continue
        part, name, number = found[1], found[2], int(found[3])
        last = runs[-1] if runs else None
        if last is not None and (last.part, last.name, last.last + 1) == (part, name, number):
            runs[-1] = _Run(part, name, last.first, number)
        else:
            runs.append(_Run(part, name, number, number))
    return runs, others


def _blocks(runs: Sequence[_Run]) -> Iterable[Message | str]:
    """Runs of the same numbers of chains that follow one another, as one."""
    grouped = groupby(enumerate(runs), key=lambda one: _block(*one))
    for _, found in grouped:
        own = [run for _, run in found]
        first, last = own[0], own[-1]
        if len(own) < A_RUN:
            for run in own:
                yield from run.labels
        else:
            yield message(
                "{numbers} of each of {first} to {last}",
                numbers=str(first.first)
                if first.first == first.last
                else message("{first} to {last}", first=str(first.first), last=str(first.last)),
                first=f"{first.part}{first.name}",
                last=f"{last.part}{last.name}",
            )


def _block(place: int, run: _Run) -> tuple[str, int, int, int]:
    """What runs of one block have in common: their part and numbers, and how far their chain is
    from their place among the runs, which is the same for chains that follow one another."""
    return run.part, run.first, run.last, _chain_number(run.name) - place


def _chain_number(name: str) -> int:
    """Where a chain stands among A, B ... Z, AA, AB ...; the same for all that are none."""
    if not re.fullmatch("[A-Z]+", name):
        return -1
    number = 0
    for letter in name:
        number = 26 * number + ord(letter) - ord("A") + 1
    return number
