"""Which locks of a step are hidden by what lies on them, and are drawn from the back as well."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

import numpy as np

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import joints_words
from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.back_locks import locks_from_back
from buildplan.framework.chain_roles import Layer
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Step

ABREAST = 3


def locks_behind(book: Book, step: Step) -> tuple[Picture, ...]:
    """The locks at the back that a step sets where a piece is built lying on it, one for all joints
    whose balloons lead the same ways, in rows; those that an earlier step has shown are left
    out."""
    known = {
        _ways(book, joint)
        for other in book.steps[: step.number - 1]
        for joint in _at_the_back(book, other)
    }
    alike: dict[Hashable, list[str]] = {}
    for joint in _at_the_back(book, step):
        if (ways := _ways(book, joint)) not in known:
            alike.setdefault(ways, []).append(joint)
    shown = [(joints[0], _called(joints, book.voice)) for joints in alike.values()]
    rows = [shown[at : at + ABREAST] for at in range(0, len(shown), ABREAST)]
    return tuple(
        locks_from_back(book.framework.built_with(row[0][0]), book.voice, book.shape, dict(row))
        for row in rows
    )


def _called(joints: Sequence[str], voice: Voice) -> str:
    """Joints of one part by their own names: the step says whose they are, and there is little
    room."""
    return joints_words([joint.rpartition(".")[2] for joint in joints], voice)


def _at_the_back(book: Book, step: Step) -> list[str]:
    """The joints at the back that a step locks, of what is built lying on it."""
    if step.kind is not Kind.JOIN or not step.locks:
        return []
    behind = {
        joint
        for long in book.framework.chains
        if long.layer is Layer.BACK
        for joint in long.chain.joints
    }
    part_at = book.framework.part_at
    names = {joint: part.name if (part := part_at(joint)) else "" for joint in step.locks}
    return [j for j in step.locks if j in behind and names[j] in book.figures.flat]


def _ways(book: Book, joint: str) -> Hashable:
    """The ways that the balloons of a joint lead, of those along the axes and between them."""
    at = book.shape.at
    found = []
    for id_ in book.framework.links_at[joint]:
        link = book.framework.link[id_]
        other = link.finish if link.start == joint else link.start
        way = at[other] - at[joint]
        found.append(tuple(np.rint(way / np.linalg.norm(way)).astype(int).tolist()))
    return tuple(sorted(found))
