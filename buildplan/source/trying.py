"""Trying what is suggested: a change that does not mend its mistake is not told."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from buildplan.language.messages import message
from buildplan.source.file_changes import CannotChangeError, changed_data
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake
from buildplan.source.suggestions import Put, Remedy, Suggestion

MOST_TRIALS = 60
# A change is tried by checking the whole file anew: of a large file only few are tried.
MOST_VALUES_CHECKED = 400_000
NOTHING_MENDS = message("no one change that was tried mends this by itself")
# mistakes of form hide others behind them, which a change does not make
HIDING = (FileKind.WRONG_TYPE, FileKind.UNKNOWN_KEY)

Find = Callable[[object], Sequence[Mistake]]
"""Finds what is wrong with the plain data of a file."""


def tried(mistakes: Sequence[Mistake], data: object, find: Find, values: int) -> list[Mistake]:
    """The mistakes of `data`, a file of so many values, with those ways alone that mend them.

    Ways beyond what is sensible to try are left as words, to be followed by hand.
    """
    left = min(MOST_TRIALS, MOST_VALUES_CHECKED // max(values, 1))
    found = []
    for mistake in mistakes:
        ways = mistake.suggestion.ways
        if len(ways) > left:
            found.append(replace(mistake, suggestion=untried(mistake.suggestion)))
            continue
        left -= len(ways)
        good = tuple(way for way in ways if _mends(way, mistake, mistakes, data, find))
        found.append(replace(mistake, suggestion=only(mistake.suggestion, good)))
    return found


def only(suggestion: Suggestion, ways: tuple[Remedy, ...]) -> Suggestion:
    """A suggestion with these of its ways alone; never an empty one."""
    kept = replace(suggestion, ways=ways)
    return kept or Suggestion((NOTHING_MENDS,))


def untried(suggestion: Suggestion) -> Suggestion:
    """A suggestion whose ways are left as words, to be followed by hand."""
    return Suggestion((*(way.words for way in suggestion.ways), *suggestion.words))


def _mends(
    way: Remedy, mistake: Mistake, mistakes: Sequence[Mistake], data: object, find: Find
) -> bool:
    """Whether the mistake is gone with the changes of a way made, and what they write is right:
    no such one is left at its place, or there is one less of them (for what is taken out moves
    the places behind it)."""
    try:
        left = find(changed_data(data, way.changes))
    except CannotChangeError:
        return False
    if mistake.kind not in HIDING:
        written = [change.at for change in way.changes if isinstance(change, Put)]
        known = {(one.kind, one.at) for one in mistakes}
        new = [one.at for one in left if (one.kind, one.at) not in known]
        if any(place[: len(at)] == at for at in written for place in new):
            return False
    alike = [one.at for one in left if one.kind is mistake.kind]
    return mistake.at not in alike or len(alike) < sum(one.kind is mistake.kind for one in mistakes)
