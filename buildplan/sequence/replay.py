"""Rebuilding a piece from its steps alone, on an empty floor.

An independent reader: it takes the list that `steps --json` prints, shares no code with the
sequencer, and refuses whatever a person could not do. It knows link balloons by their names
and ends only by what the steps do to them; where a balloon ends up follows from the knots.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING

from buildplan.sequence.replay_acts import do
from buildplan.sequence.replay_state import BuiltIn, Floor, ImpossibleError, Json

if TYPE_CHECKING:
    import networkx as nx


class ReplayError(Exception):
    """A step that cannot be done as it is written."""

    def __init__(self, step: int, message: str) -> None:
        super().__init__(f"step {step}: {message}")
        self.step = step
        self.message = message


@dataclass(frozen=True)
class Replayed:
    """What stands at the end: the link balloons by name, and the balloon of each lock by joint."""

    balloons: Mapping[str, BuiltIn]
    locks: Mapping[str, str]

    @property
    def graph(self) -> nx.MultiGraph:
        """The piece as `framework.counts.multigraph` gives it: edges keyed by link, with `balloon`,
        `role`, `neck`, `tail`."""
        import networkx as nx  # takes longer to import than most pieces to rebuild

        graph = nx.MultiGraph()
        for name, one in self.balloons.items():
            graph.add_edge(one.neck, one.tail, key=name, **asdict(one))
        return graph


def replay(steps: Sequence[Json]) -> Replayed:
    """Build the piece that `steps` tell. Raises ReplayError at the first step that asks for
    something impossible, or that says something untrue of itself."""
    floor = Floor(awaited=_last_braces(steps), turned=_locked_turned(steps))
    _read_numbers(steps)
    for number, operation in _in_turn(steps):
        try:
            do(floor, operation)
        except ImpossibleError as cannot:
            raise ReplayError(number, str(cannot)) from None
    for step in steps:
        _compare_counts(step, floor)
    last = steps[-1]["number"] if steps else 0
    if not floor.stood_up:
        raise ReplayError(last, "the piece is never stood up")
    return Replayed(dict(floor.balloons()), dict(floor.locks))


def _last_braces(steps: Sequence[Json]) -> Mapping[str, str]:
    """The brace that comes last to each joint: a lock may wait for it."""
    return {
        joint: operation["id"]
        for _, operation in _in_turn(steps)
        if operation["kind"] == "brace"
        for joint in operation["joints"]
    }


def _locked_turned(steps: Sequence[Json]) -> frozenset[str]:
    """Joints that are locked with the back up: until then nothing else can hold them."""
    return frozenset(
        joint
        for _, operation in _in_turn(steps)
        if operation["kind"] == "lock" and operation["up"] == "back"
        for joint in operation["locks"]
    )


def _read_numbers(steps: Sequence[Json]) -> None:
    for place, step in enumerate(steps, 1):
        number = step["number"]
        if number != place:
            raise ReplayError(number, f"stands at place {place}: numbers must run without gaps")
        for needed in step["needs"]:
            if not 1 <= needed < number:
                raise ReplayError(number, f"needs step {needed}, which is not an earlier one")
        if len(step["turns"]) not in (1, step["times"]):
            raise ReplayError(number, f"{len(step['turns'])} turns for {step['times']} times")
        for place, turn in enumerate(step["turns"], 1):
            if set(turn["joints"]) != {j for op in turn["operations"] for j in op["joints"]}:
                raise ReplayError(number, f"turn {place} names other joints than its work")


def _in_turn(steps: Sequence[Json]) -> Iterator[tuple[int, Json]]:
    """(step number, operation), turn by turn."""
    for step in steps:
        for turn in step["turns"]:
            for operation in turn["operations"]:
                yield step["number"], operation


def _compare_counts(step: Json, floor: Floor) -> None:
    """What a step says it adds and prepares must be what its operations handled, each balloon
    once."""
    operations = [operation for turn in step["turns"] for operation in turn["operations"]]
    for told, adds in ((step["adds"], True), (step["prepares"], False)):
        concerned = [operation for operation in operations if operation["adds"] is adds]
        links = {link for operation in concerned for link in operation["links"]}
        locks = {joint for operation in concerned for joint in operation["locks"]}
        handled = Counter(floor.sized[link] for link in links)
        for joint in locks:
            handled[floor.rounds[joint]] += 2
        if handled != Counter(told):
            raise ReplayError(step["number"], f"counts {dict(told)}, but handles {dict(handled)}")
