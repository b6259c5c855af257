"""Ties of parts that are said to stand on others, or beside them: worked out on their shapes."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.design.reading import read_design
from buildplan.patterns.assembly_keys import PLACES, Assembly, AssemblyPart
from buildplan.patterns.build import built_as
from buildplan.shape.constants import constants_with
from buildplan.shape.crossing import tied_too_far_across
from buildplan.shape.finding import Settings, shapes_of_parts
from buildplan.shape.pressing import tied_too_many_at_one
from buildplan.shape.seat_places import Seat
from buildplan.shape.seats import ties_worked_out
from buildplan.source.problems import DesignProblemsError, Problem, ProblemKind

Tie = TypeVar("Tie")

# What the ties of a part stand for once they are known. That it stands on others stays: whether it
# came to their middle is told on the solved piece.
SPELLED_OUT = {key: None for key in PLACES if key != "on"} | {"lower": 0}

Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Seated:
    """A design whose ties are all spelled out; those that were worked out, by the names of the part
    that they are of and of those that it is within; and the parts that nothing holds where they are
    said to be."""

    design: Design
    ties: Mapping[tuple[str, ...], Pairs]
    problems: tuple[Problem, ...]


def read_whole(
    path: Path,
    known_constants: Collection[str] | None = None,
    passed_over: Collection[ProblemKind] = (),
) -> Design:
    """Read a design file as `read_design` does, with every tie spelled out. Raises as that does,
    and DesignProblemsError where nothing meets, or so much is tied across or at one joint that it
    is not worked on."""
    design = read_design(path, known_constants, passed_over)
    framework = build_framework(design)
    beyond = tied_too_many_at_one(framework) or tied_too_far_across(framework)
    if beyond is not None:
        raise DesignProblemsError(str(path), (beyond,), design.name)
    found = seated(design)
    if found.problems:
        raise DesignProblemsError(str(path), found.problems, found.design.name)
    return found.design


def seated(design: Design) -> Seated:
    """A design that has been read, with the ties of what is set on or beside its parts."""
    assembly = design.build.keys_of(Assembly)
    if assembly is None:
        return Seated(design, {}, ())
    parts: list[AssemblyPart] = []
    problems: list[Problem] = []
    within: dict[tuple[str, ...], Pairs] = {}
    for part in assembly.parts:
        inner = _inner(design, part)
        within |= {(part.name, *names): pairs for names, pairs in inner.ties.items()}
        parts.append(part.model_copy(update={"build": inner.design.build}))
        problems += inner.problems
    seats = [
        Seat(one.name, one.carried_by, next(iter(one.places)), one.lower)
        for one in parts
        if one.places
    ]
    if not seats or problems:
        whole = assembly.model_copy(update={"parts": parts})
        return Seated(_with(design, whole), within, tuple(problems))
    tied = _with(design, assembly.model_copy(update={"parts": parts}))
    framework = build_framework(tied)
    settings = Settings(constants=constants_with(design.constants))
    found = ties_worked_out(framework, shapes_of_parts(framework, settings), seats)
    plain = [one.model_copy(update=SPELLED_OUT) for one in parts]
    ties = ties_with(assembly.ties, [pair for pairs in found.ties.values() for pair in pairs])
    whole = Assembly.model_construct(parts=plain, ties=ties, lock=assembly.lock)
    own = {(name,): pairs for name, pairs in found.ties.items()}
    return Seated(_with(design, whole), within | own, found.problems)


def _inner(design: Design, part: AssemblyPart) -> Seated:
    """A part as a design of its own."""
    return seated(design.model_copy(update={"build": part.build}))


def _with(design: Design, assembly: Assembly) -> Design:
    return design.model_copy(update={"build": built_as("assembly", assembly)})


def ties_with(ties: Sequence[Tie], pairs: Sequence[tuple[str, str]]) -> list[Tie | list[str]]:
    """Ties with further joints that are brought together; joints that are at one place are in one
    tie. What is no list of joints, a tie by a balloon, stays as it is."""
    found: list[Tie | list[str]] = list(ties)
    for pair in pairs:
        met = [tie for tie in found if isinstance(tie, list) and not set(pair).isdisjoint(tie)]
        found = [tie for tie in found if all(tie is not one for one in met)]
        found.append(list(dict.fromkeys(joint for tie in (*met, pair) for joint in tie)))
    return found
