"""Reading a plan back before it is printed: from its steps and from the words that are printed.

Whatever is wrong here is a defect of ours and no mistake of a user's. What the rows say is read as
a person reads them: joints in their order, whatever the language round them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Sequence
from itertools import pairwise

from buildplan.framework.counts import multigraph
from buildplan.framework.model import Framework
from buildplan.instructions.grammar import ALONG
from buildplan.instructions.model import RowWords, StepWords
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Kind, Step, Turn
from buildplan.sequence.replay import Replayed, ReplayError, replay


class DoesNotRebuildError(Exception):
    """A plan that does not come to the piece that it is for: the step, and what is wrong there, in
    English, for those who mend it."""

    def __init__(self, step: int, reason: str) -> None:
        super().__init__(f"step {step}: {reason}")
        self.step = step
        self.reason = reason


def assert_rebuilds(
    framework: Framework, steps: Sequence[Step], words: Sequence[StepWords]
) -> None:
    """Build the piece from its steps, and read their rows against it. Raises DoesNotRebuildError
    unless both come to `framework`, balloon for balloon and lock for lock."""
    try:
        rebuilt = replay(steps_as_json(steps))
    except ReplayError as error:
        raise DoesNotRebuildError(error.step, error.message) from error
    last = steps[-1].number
    if _edges(rebuilt) != _edges(Replayed(multigraph(framework), {})):
        raise DoesNotRebuildError(last, "the balloons of the piece come to others")
    if rebuilt.locks != {lock.joint: lock.balloon for lock in framework.locks}:
        raise DoesNotRebuildError(last, "the locks of the piece come to others")
    joints = frozenset(framework.joints)
    for step, said in zip(steps, words, strict=True):
        for turn, told in zip(step.turns, said.turns, strict=True):
            _read_turn(framework, step, turn, told.rows, joints)


def _edges(rebuilt: Replayed) -> Counter[tuple[str, ...]]:
    return Counter(
        (key, data["neck"], data["tail"], data["balloon"], str(data["role"]))
        for _, _, key, data in rebuilt.graph.edges(keys=True, data=True)
    )


def _read_turn(
    framework: Framework,
    step: Step,
    turn: Turn,
    rows: Sequence[RowWords],
    joints: Collection[str],
) -> None:
    """The rows of a turn against the balloons that it ties in and the joints that it locks."""
    if turn.operations[0].kind not in (Kind.BRACE, Kind.SINGLE):
        return
    tied = Counter(
        frozenset((framework.link[link].start, framework.link[link].finish))
        for operation in turn.operations
        if operation.kind in (Kind.BRACE, Kind.SINGLE)
        for link in operation.links
    )
    ways = [row for row in rows if ALONG in row.said]
    told = Counter(pair for row in ways for pair in _pairs(row.said, joints))
    if told != tied:
        raise DoesNotRebuildError(step.number, "a row names other joints than are tied")
    locked = {joint for operation in turn.operations for joint in operation.locks}
    named = {joint for row in rows if row not in ways for joint in row.said.split(", ")}
    if named != locked:
        raise DoesNotRebuildError(step.number, "a row names other joints than are locked")


def _pairs(said: str, joints: Collection[str]) -> Iterator[frozenset[str]]:
    """Neighbours along the ways of a row; a way whose first joint is named again at its end is
    closed there."""
    for part in said.split("; "):
        way = [_joint(token, joints) for token in part.split(ALONG)]
        closing = part.rpartition(way[-1])[2].split()
        if closing and closing[-1] == way[0]:
            way.append(way[0])
        yield from (frozenset(pair) for pair in pairwise(way))


def _joint(token: str, joints: Collection[str]) -> str:
    """The joint in a piece of a way: a word of it that is a joint's name."""
    words = (word.strip(",;.") for word in token.split())
    return next((word for word in words if word in joints), token)
