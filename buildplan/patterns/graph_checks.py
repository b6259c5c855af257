"""What the joints and balloons of a listed piece must agree on."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from buildplan.language.messages import mark, message
from buildplan.patterns.limits import BALLOONS_PER_LOCK, MOST_BALLOONS, too_many_balloons
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, key_in_words, listed, one_of, shown
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import Put, Remedy, Suggestion, TakeOut, by_hand, change

AT: Path = ("build", "graph")
# what separates joints where steps list them
_AMBIGUOUS = re.compile(r"[\s,;:#–-]")


def check_graph(graph: Mapping[str, object]) -> Iterator[Mistake]:
    """Every disagreement in `graph`, plain data of the file."""
    labels = list_in(graph.get("joints"))
    yield from _check_labels(labels)
    locks = len(labels) if isinstance(graph.get("lock"), str) else 0
    count = len(list_in(graph.get("balloons"))) + BALLOONS_PER_LOCK * locks
    if count > MOST_BALLOONS:
        yield too_many_balloons(AT, count)
        return
    joints: dict[str, int] = {}
    for i, label in enumerate(labels):
        if isinstance(label, str):
            joints.setdefault(label, i)
    if not joints:
        return
    ties: list[tuple[str, str]] = []
    whole = all(isinstance(label, str) for label in labels)
    for i, balloon in enumerate(list_in(graph.get("balloons"))):
        ends = [mapping_in(balloon).get(end) for end in ("from", "to")]
        for end, label in zip(("from", "to"), ends, strict=True):
            if isinstance(label, str) and label not in joints:
                yield Mistake(
                    FileKind.NO_SUCH_JOINT,
                    (*AT, "balloons", i, end),
                    message("there is no joint {joint}", joint=shown(label)),
                    _another_joint(label, joints, (*AT, "balloons", i, end)),
                )
        if not all(isinstance(label, str) and label in joints for label in ends):
            whole = False
        elif ends[0] == ends[1]:
            yield Mistake(
                FileKind.TIED_TO_ITSELF,
                (*AT, "balloons", i, "to"),
                message(
                    "this balloon is tied to joint {joint} at both its ends", joint=shown(ends[0])
                ),
                by_hand(message("let it end at another joint")),
            )
        else:
            ties.append((str(ends[0]), str(ends[1])))
    if whole and ties:
        yield from _check_connections(joints, ties)


def _another_joint(label: str, joints: Mapping[str, int], at: Path) -> Suggestion:
    """A suggestion of a joint that there is, or to list the one that is named."""
    there = one_of(label, joints, mark("the joints are: {names}"), at)
    listed_too = Remedy(
        message("add {joint} to the joints", joint=shown(label)),
        (Put((*AT, "joints"), [*joints, label]),),
    )
    return replace(there, ways=(*there.ways, listed_too))


def _check_labels(labels: Sequence[object]) -> Iterator[Mistake]:
    """Labels that would be misread, and those that come again."""
    seen: set[str] = set()
    for i, label in enumerate(labels):
        if not isinstance(label, str):
            continue
        if _AMBIGUOUS.search(label):
            yield Mistake(
                FileKind.AMBIGUOUS_LABEL,
                (*AT, "joints", i),
                message(
                    "the joint {joint} would be misread in the rows of the steps",
                    joint=shown(label),
                ),
                by_hand(message("name joints by letters and digits alone, such as A1")),
            )
        if label in seen:
            yield Mistake(
                FileKind.LISTED_TWICE,
                (*AT, "joints", i),
                message("the joint {joint} is listed twice", joint=shown(label)),
                change(
                    message("list each joint once, or give the second a label of its own"),
                    TakeOut((*AT, "joints", i)),
                ),
            )
        seen.add(label)


def _check_connections(
    joints: Mapping[str, int], ties: Sequence[tuple[str, str]]
) -> Iterator[Mistake]:
    neighbours: dict[str, list[str]] = {label: [] for label in joints}
    for one, other in ties:
        neighbours[one].append(other)
        neighbours[other].append(one)
    for label, beside in neighbours.items():
        if not beside:
            yield Mistake(
                FileKind.LOOSE_JOINT,
                (*AT, "joints", joints[label]),
                message("no balloon is tied at the joint {joint}", joint=shown(label)),
                change(
                    message("add a balloon from it to another joint, or take it out"),
                    TakeOut((*AT, "joints", joints[label])),
                ),
            )
    parts = _parts({label: beside for label, beside in neighbours.items() if beside})
    if len(parts) > 1:
        smallest = min(parts, key=len)
        yield Mistake(
            FileKind.FALLS_APART,
            (*AT, "balloons"),
            message(
                "the piece falls into {count} parts: nothing ties {joints} to the rest",
                count=len(parts),
                joints=listed(map(key_in_words, smallest), most=6),
            ),
            by_hand(message("tie the parts together, or make a design of each")),
        )


def _parts(neighbours: Mapping[str, Sequence[str]]) -> list[list[str]]:
    """The connected parts, each a list of joints in the order of the file."""
    part_of: dict[str, int] = {}
    count = 0
    for start in neighbours:
        if start in part_of:
            continue
        part_of[start] = count
        waiting = [start]
        while waiting:
            for label in neighbours[waiting.pop()]:
                if label not in part_of:
                    part_of[label] = count
                    waiting.append(label)
        count += 1
    parts: list[list[str]] = [[] for _ in range(count)]
    for label in neighbours:
        parts[part_of[label]].append(label)
    return parts
