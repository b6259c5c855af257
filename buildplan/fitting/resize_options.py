"""A way to another height, and the choice between what can be tried on it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from buildplan.evaluation.measured import BuiltBy, Measured, first_mistake, measure
from buildplan.language.messages import Message, message
from buildplan.language.told import ToldError
from buildplan.source.file_changes import changed_data
from buildplan.source.suggestions import Put

Trial = tuple[tuple[Put, ...], tuple[Message, ...]]
"""Changes to try, and what they change."""


@dataclass(frozen=True)
class ResizeWay:
    """One way to another height: the changes in the file and what comes of them; or, with
    nothing measured, why it cannot be had. `words` say what changes, one thing each."""

    by: str
    changes: tuple[Put, ...] = ()
    measured: Measured | None = None
    words: tuple[Message, ...] = ()
    why_not: Message | None = None


class NotHadError(ToldError):
    """A way that does not work; `told` says why."""


def nearest(
    by: str,
    trials: Iterator[Trial],
    data: Mapping[str, Any],
    height_m: float,
    built_by: BuiltBy,
) -> ResizeWay:
    """Of the changes to try, those that pass and come nearest to the height."""
    found: list[ResizeWay] = []
    why_not = message("nothing that could be tried is left")
    for changes, words in trials:
        made = changed_data(data, changes)
        mistake = first_mistake(made)
        if mistake is not None:
            why_not = mistake
            continue
        measured = measure(made, built_by=built_by)
        if measured.problem:
            why_not = message("solved, {problem}", problem=measured.problem)
        else:
            found.append(ResizeWay(by, changes, measured, words))
    if not found:
        raise NotHadError(why_not)
    return min(found, key=lambda way: off_m(way, height_m))


def off_m(way: ResizeWay, height_m: float) -> float:
    """How far from the height a way that has been measured comes."""
    assert way.measured is not None
    return abs(way.measured.height_m - height_m)
