"""Trying on the piece itself what is suggested: a change that does not mend it is not told."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path as FilePath
from typing import Any

from buildplan.evaluation.measured import HERE, Measured, first_mistake, measure
from buildplan.fitting.assembly_mending import OF_ASSEMBLIES, OF_PLACES, assembly_ways
from buildplan.fitting.near_courses import near_courses
from buildplan.language.messages import listing, message
from buildplan.shape.constants import constants_with
from buildplan.shape.examining import examine
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.stiffness import stiffening_brace
from buildplan.source.file_changes import CannotChangeError, changed_data
from buildplan.source.kinds import FileKind
from buildplan.source.problems import DesignProblemsError, Problem, ProblemKind
from buildplan.source.suggestions import Change, Put, Remedy, Suggestion, by_hand

Data = Mapping[str, Any]

# what another course mends
OF_THE_COURSE = (
    FileKind.NOT_COMING_ROUND,
    ShapeKind.DOES_NOT_CLOSE,
    ShapeKind.RUNS_INTO_ITSELF,
)
ON_THE_PIECE = (*OF_THE_COURSE, ShapeKind.FOLDS, ShapeKind.UNLIKE_BACK, *OF_ASSEMBLIES)
# what does not keep a file from being read as plain data
READ_ALL_THE_SAME = (*OF_THE_COURSE, *OF_PLACES)
COURSE_TRIALS = 10
MOST_BALLOONS = 3000  # solving a larger piece anew takes longer than anybody waits
FITS = 0.06  # how far the length of a further balloon may be off that of the braces
TWINS = {3: {"C": "A"}, 4: {"D": "A", "C": "B"}}


def tried_on_the_piece(
    data: Data, problems: Sequence[Problem], folder: FilePath = HERE
) -> tuple[Problem, ...]:
    """The problems of a tube or an assembly with those ways alone that mend them when the piece is
    solved anew, and with ways that only a solved piece can name: another course, other ties, one
    more balloon.

    `data` is a design file as plain data, right but for its course and its parts' places; the
    files of its parts lie in `folder`. Of another pattern the problems are returned as they are.
    """
    if isinstance(data["build"].get("assembly"), Mapping):
        return tuple(_of_assembly(data, problems, folder))
    tube = data["build"].get("tube")
    if not isinstance(tube, Mapping):
        return tuple(problems)
    known = {one.kind for one in problems}
    courses: list[Remedy] | None = None
    found = []
    for problem in problems:
        if problem.kind not in ON_THE_PIECE:
            found.append(problem)
            continue
        if problem.kind not in OF_THE_COURSE and not known.isdisjoint(OF_THE_COURSE):
            first = by_hand(message("mend the course first"))
            found.append(replace(problem, suggestion=first))
            continue
        ways = [*problem.suggestion.ways, *_ways(problem.kind, data)]
        good = [way for way in ways if _mends(way, problem.kind, data, known)]
        if not good and problem.kind in OF_THE_COURSE:
            if courses is None:  # one other course mends all that is wrong with it
                courses = [one.way for one in near_courses(data, 1, COURSE_TRIALS)]
            good = courses
        found.append(replace(problem, suggestion=_told(problem, tuple(good))))
    return tuple(found)


def _of_assembly(data: Data, problems: Sequence[Problem], folder: FilePath) -> Iterator[Problem]:
    """The problems of an assembly, each with the first way that mends it."""
    known = {one.kind for one in problems}
    for problem in problems:
        if problem.kind not in OF_ASSEMBLIES:
            yield problem
            continue
        ways = assembly_ways(problem.kind, data, folder)
        good = next((way for way in ways if _mends(way, problem.kind, data, known, folder)), None)
        words = problem.suggestion.words
        told = Suggestion(words) if good is None else Suggestion(ways=(good,))
        yield replace(problem, suggestion=told)


def _told(problem: Problem, good: tuple[Remedy, ...]) -> Suggestion:
    if good:
        return Suggestion(ways=good)
    words = problem.suggestion.words
    if problem.kind in OF_THE_COURSE:
        further = message(
            "no course near this one was found to close and stand; buildplan course looks further"
        )
        words = (*words, further)
    return Suggestion(words or problem.suggestion.words)


def _mends(
    way: Remedy, kind: ProblemKind, data: Data, known: set[ProblemKind], folder: FilePath = HERE
) -> bool:
    """Whether the problem is gone, and no other has come, with the piece solved anew."""
    try:
        changed = changed_data(data, way.changes)
    except CannotChangeError:
        return False
    if first_mistake(changed) is not None:
        return False
    try:
        return _kinds(measure(changed, folder)) <= known - {kind}
    except DesignProblemsError:
        return False


def _kinds(piece: Measured) -> set[ProblemKind]:
    """What is wrong with a solved piece."""
    if piece.balloons > MOST_BALLOONS or piece.shape.problems:
        return {one.kind for one in piece.shape.problems}
    constants = constants_with(piece.design.constants)
    return {one.kind for one in examine(piece.framework, piece.shape, constants=constants).problems}


def _ways(kind: ProblemKind, data: Data) -> Iterator[Remedy]:
    """Ways that a problem of the shape has, besides other courses; none of them is tried yet."""
    if kind is ShapeKind.UNLIKE_BACK:
        yield from _front_and_back(data["build"]["tube"])
    elif kind is ShapeKind.FOLDS:
        yield from _one_more_balloon(data)


def _front_and_back(tube: Mapping[str, Any]) -> Iterator[Remedy]:
    long = tube["long"]
    twins = TWINS.get(tube["chains"], {})
    if isinstance(long, Mapping) and all(letter in long for letter in (*twins, *twins.values())):
        alike = {**long, **{back: long[front] for back, front in twins.items()}}
        words = message("use the same balloons for each front chain and the back chain behind it")
        yield Remedy(words, (Put(("build", "tube", "long"), alike),))


def _one_more_balloon(data: Data) -> Iterator[Remedy]:
    """The one balloon more that stiffens the piece most; sized to fit where the braces' do not."""
    piece = measure(data)
    extra = stiffening_brace(piece.framework, piece.shape, constants_with(piece.design.constants))
    if extra is None:
        return
    tube = data["build"]["tube"]
    brace = piece.framework.balloons[tube["brace"]]
    joints = list(extra.joints)
    at = ("build", "tube", "extra")
    others = list(tube.get("extra") or ())
    share = extra.length_m / brace.tie_to_tie_m
    if abs(share - 1) <= FITS:
        words = message("tie one more balloon between {joints}", joints=listing(joints))
        yield Remedy(words, (Put(at, [*others, joints]),))
        return
    given = data["balloons"][tube["brace"]]
    gauge = round(given["inflate_to"] * share, 1)
    if gauge > given["nominal"] or "tie_to_tie" in given or "chain_of_ten" in given:
        return
    key = "extra"
    while key in data["balloons"]:
        key += " more"
    changes: tuple[Change, ...] = (
        Put(("balloons", key), {**given, "inflate_to": gauge}),
        Put(at, [*others, {"joints": joints, "balloon": key}]),
    )
    words = message(
        "tie one more balloon between {joints}, sized to {gauge}",
        joints=listing(joints),
        gauge=f"{gauge:g}",
    )
    yield Remedy(words, changes)
