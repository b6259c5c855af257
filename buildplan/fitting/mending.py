"""Trying on the piece itself what is suggested: a change that does not mend it is not told.

What was tried and does not mend is told as that; what nobody can try but with the balloons in
hand is told as that too.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import chain, islice, takewhile
from pathlib import Path as FilePath
from typing import Any

from buildplan.evaluation.base_advice import KEPT_UP_BY_A_BASE
from buildplan.evaluation.measured import HERE, Measured, first_mistake, measure
from buildplan.evaluation.off_the_floor import FloorKind, off_the_floor
from buildplan.fitting.assembly_mending import OF_ASSEMBLIES, OF_PLACES, assembly_ways
from buildplan.fitting.both_ways import both_ways
from buildplan.fitting.extra_balloon import balloons_more
from buildplan.fitting.extras_out import without_extras
from buildplan.fitting.near_courses import COURSE_TRIALS, OF_THE_COURSE, near_courses
from buildplan.fitting.piece_ways import WAYS, piece_ways
from buildplan.language.messages import Message, listing, message, message_count
from buildplan.shape.constants import constants_with
from buildplan.shape.examining import examine
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import ExtraBrace
from buildplan.source.file_changes import CannotChangeError, changed_data
from buildplan.source.problems import DesignProblemsError, Problem, ProblemKind
from buildplan.source.suggestions import Remedy, Suggestion, by_hand

Data = Mapping[str, Any]
Kinds = frozenset[ProblemKind]
Left = Mapping[ProblemKind, frozenset[str]]
"""What is wrong with a piece, and the joints where it is so."""
Mends = Callable[[Remedy, Problem], bool]

# what keeps a piece from fitting together is mended before what it then does
FITTING = frozenset((*OF_THE_COURSE, *OF_ASSEMBLIES, ShapeKind.DOES_NOT_FIT, ShapeKind.NOT_AT_REST))
# what does not keep a file from being read as plain data
READ_ALL_THE_SAME = (*OF_THE_COURSE, *OF_PLACES)
# cautions with ways that are tried as those of problems are
TRIED_CAUTIONS: frozenset[ProblemKind] = frozenset(
    {ShapeKind.REACHES_PAST, ShapeKind.OFF_THE_MIDDLE, FloorKind.OFF_THE_FLOOR}
)
ON_THE_PIECE = frozenset((*OF_THE_COURSE, *OF_ASSEMBLIES, *WAYS, *TRIED_CAUTIONS))
MOST_BALLOONS = 3000  # solving a larger piece anew takes longer than anybody waits
MOST_TRIALS, BALLOONS_IN_ALL = 24, 12_000  # pieces that are solved anew for one design
MOST_WAYS = 2  # that are told: with two to choose from, no third is looked for
MOST_NAMED = 2  # of what was tried in vain


@dataclass(frozen=True)
class Broken:
    """A design file as plain data, right but for its course and its parts' places; the files of
    its parts lie in `folder`; `solved` is the piece itself where it has been solved already."""

    data: Data
    folder: FilePath
    solved: Measured | None = None

    @cached_property
    def piece(self) -> Measured | None:
        """The piece as it is; None where its course or its parts' places leave none."""
        if self.solved is not None:
            return self.solved
        try:
            return None if first_mistake(self.data) else measure(self.data, self.folder)
        except DesignProblemsError:
            return None

    @cached_property
    def courses(self) -> Sequence[Remedy]:
        """The nearest course of a tube that closes."""
        if not isinstance(self.data["build"].get("tube"), Mapping):
            return ()
        return [one.way for one in near_courses(self.data, 1, COURSE_TRIALS)]


@dataclass(frozen=True)
class Stiffer:
    """One balloon more that stiffens a piece, and the change of its file, tried, that ties it."""

    extra: ExtraBrace
    way: Remedy


def stiffer(sound: Broken, piece: Measured) -> Stiffer | None:
    """The one balloon more that stiffens a piece without a problem most and leaves it without one;
    None where none does."""
    for extra, ways in balloons_more(sound.data, piece):
        for way in ways:
            left = _solved(sound, way)
            if left is not None and left.keys() <= TRIED_CAUTIONS:
                return Stiffer(extra, way)
    return None


def without_what_breaks(broken: Broken) -> tuple[Remedy, ...]:
    """The balloons more that, taken out, leave a piece without a problem."""
    left = ((one, _solved(broken, one)) for one in without_extras(broken.data))
    return tuple(one for one, kinds in left if kinds is not None and kinds.keys() <= TRIED_CAUTIONS)


def tried_on_the_piece(
    data: Data,
    problems: Sequence[Problem],
    folder: FilePath = HERE,
    solved: Measured | None = None,
) -> tuple[Problem, ...]:
    """The problems of a design with those ways alone that mend them when the piece is solved
    anew, and with ways that only a solved piece can name: another course, other ties, other sizes,
    one more balloon. `data`, `folder` and `solved` are those of `Broken`.
    """
    broken = Broken(data, folder, solved)
    known = frozenset(one.kind for one in problems)
    trials = _Trials(broken)

    def mends(way: Remedy, problem: Problem) -> bool:
        """Whether the problem is gone, and no other has come, with the piece solved anew; a problem
        may leave a caution in its place, and what is broken elsewhere in like manner may be left
        as it is."""
        kind, left = problem.kind, trials.left_by(way)
        cautions = frozenset() if kind in TRIED_CAUTIONS else TRIED_CAUTIONS
        elsewhere = {
            joint for one in problems if one.kind is kind and one != problem for joint in one.joints
        }
        if left is None or not left.get(kind, frozenset()) <= elsewhere:
            return False
        return left.keys() <= known | cautions

    found = []
    for problem in problems:
        if problem.kind not in ON_THE_PIECE:
            found.append(problem)
        elif problem.kind not in FITTING and known & FITTING:
            first = by_hand(message("mend first what keeps it from fitting together"))
            found.append(replace(problem, suggestion=first))
        else:
            found.append(_with_what_mends(problem, broken, mends, trials, known))
    return tuple(found)


class _Trials:
    """Ways followed on a piece, each solved once; of a large piece only few are: one for which no
    trial is left mends nothing, and is told as left untried."""

    def __init__(self, broken: Broken) -> None:
        balloons = 1 if broken.piece is None else broken.piece.balloons
        self._broken = broken
        self._most = min(MOST_TRIALS, max(1, BALLOONS_IN_ALL // balloons))
        self._found: dict[str, Left | None] = {}
        self._untried: set[str] = set()

    def left_by(self, way: Remedy) -> Left | None:
        """What is wrong with the piece once a way is followed: None where it cannot be followed,
        or is not tried."""
        key = repr(way.changes)
        if key not in self._found:
            if len(self._found) >= self._most:
                self._untried.add(key)
                return None
            self._found[key] = _solved(self._broken, way)
        return self._found[key]

    def left_out(self, way: Remedy) -> bool:
        """Whether a way was asked for when no trial was left."""
        return repr(way.changes) in self._untried


def _solved(broken: Broken, way: Remedy) -> Left | None:
    try:
        changed = changed_data(broken.data, way.changes)
        if first_mistake(changed) is not None:
            return None
        return _left(measure(changed, broken.folder))
    except (CannotChangeError, DesignProblemsError):
        return None


def _left(piece: Measured) -> Left:
    """What is wrong with a solved piece."""
    found = [*piece.shape.problems]
    if not FITTING & {one.kind for one in found} and piece.balloons <= MOST_BALLOONS:
        constants = constants_with(piece.design.constants)
        examined = examine(piece.framework, piece.shape, constants=constants)
        cautions = (*examined.cautions, *off_the_floor(piece.framework, piece.shape, "in"))
        found += examined.problems
        found += [one for one in cautions if one.kind in TRIED_CAUTIONS]
    joints: dict[ProblemKind, frozenset[str]] = {}
    for one in found:
        joints[one.kind] = joints.get(one.kind, frozenset()) | frozenset(one.joints)
    return joints


def _with_what_mends(
    problem: Problem, broken: Broken, mends: Mends, trials: _Trials, known: Kinds
) -> Problem:
    """A problem with the ways that mend it; where there are none, with what was tried in vain.
    `known` is all that is wrong with the piece."""
    good, vain, whole = list[Remedy](), list[Remedy](), list[Remedy]()
    outs = tuple(without_extras(broken.data))
    added = tuple(way for way in outs if mends(way, problem))
    untried = [way for way in outs if trials.left_out(way)]
    if added:
        # what was added to a good piece is what broke it
        return replace(problem, suggestion=Suggestion(ways=added[:MOST_WAYS]))
    named = problem.suggestion.ways
    enough = good if len(known) == 1 else whole
    further = takewhile(lambda _: len(enough) < MOST_WAYS, _further(problem.kind, broken))
    # what mends the cause comes before what keeps the piece up all the same
    caused = problem.kind in KEPT_UP_BY_A_BASE
    for way in chain(further, named) if caused else chain(named, further):
        if any(way.changes == one.changes for one in (*good, *vain, *untried)):
            continue
        mended = mends(way, problem)
        (good if mended else untried if trials.left_out(way) else vain).append(way)
        if mended and (trials.left_by(way) or {}).keys() <= known & TRIED_CAUTIONS:
            whole.append(way)
    if not good:
        good = [*islice((way for way in both_ways(vain) if mends(way, problem)), 1)]
    if good:
        # of ways that mend this problem, those after which no other is left
        return replace(problem, suggestion=Suggestion(ways=tuple(whole or good)))
    words = [*_in_vain(vain), *_left_out(untried), *problem.suggestion.words]
    if problem.kind in OF_THE_COURSE and "tube" in broken.data["build"]:
        words.append(message("buildplan course looks further for courses that close and stand"))
    return replace(problem, suggestion=Suggestion(tuple(words)))


def _further(kind: ProblemKind, broken: Broken) -> Iterator[Remedy]:
    """Ways beyond those that a problem names."""
    if isinstance(broken.data["build"].get("assembly"), Mapping):
        yield from assembly_ways(kind, broken.data, broken.folder)
    elif kind in OF_THE_COURSE:
        yield from broken.courses
    if first_mistake(broken.data) is None:
        yield from piece_ways(kind, broken.data, broken.piece)


def _in_vain(ways: Sequence[Remedy]) -> Iterator[Message]:
    """What was tried, and mends nothing."""
    if len(ways) > MOST_NAMED:
        yield message_count(
            "{number} change was tried on the piece, and does not mend it",
            "{number} changes were tried on the piece, and none mends it",
            len(ways),
        )
    elif ways:
        told = listing([way.words for way in ways], "or")
        yield message("tried on the piece, and does not mend it: {ways}", ways=told)


def _left_out(ways: Sequence[Remedy]) -> Iterator[Message]:
    """What was not tried."""
    if ways:
        yield message_count(
            "{number} change was not tried: of a large piece only few are",
            "{number} changes were not tried: of a large piece only few are",
            len(ways),
        )
