"""What the parts of a tube must agree on: its chains, its course, and whether it comes round."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial

from buildplan.framework.cells import CELL_KINDS, CellKind
from buildplan.language.messages import Message, mark, message
from buildplan.patterns.closure import check_coming_round
from buildplan.patterns.course import (
    INNER_CHAINS,
    OUTER_CHAINS,
    cell_counts,
    expand_course,
)
from buildplan.patterns.course_edits import added, as_items
from buildplan.patterns.limits import BALLOONS_PER_LOCK, MOST_BALLOONS
from buildplan.patterns.tube_keys import Tube
from buildplan.patterns.tube_lengths import Balloons, chain_letters, side_lengths, sized_inner
from buildplan.patterns.tube_links import check_extra
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, listed
from buildplan.source.partial_validation import Salvaged, list_in
from buildplan.source.suggestions import Put, Remedy, Suggestion, TakeOut, by_hand, change

LEAST_IN_RING = 3
LINKS_PER_BRACE: Mapping[int, int] = {2: 1, 3: 3, 4: 4}

AT: Path = ("build", "tube")

NO_CHAIN = mark("there is no chain {letter}: a tube of {chains} chains has {letters}")
SKIPPED: Mapping[str, str] = {
    "outer": mark(
        "this cell skips a joint on the outer side, between chains {chains}, and no single is "
        "named for it"
    ),
    "inner": mark(
        "this cell skips a joint on the inner side, between chains {chains}, and no single is "
        "named for it"
    ),
}
# by the side, and whether the chains are closed into rings
TOO_SHORT: Mapping[tuple[str, bool], str] = {
    ("outer", True): mark(
        "the outer chains are {count} balloons long, and a closed ring takes at least {least}"
    ),
    ("inner", True): mark(
        "the inner chains are {count} balloons long, and a closed ring takes at least {least}"
    ),
    ("outer", False): mark(
        "the outer chains are {count} balloons long, and an open chain takes at least {least}"
    ),
    ("inner", False): mark(
        "the inner chains are {count} balloons long, and an open chain takes at least {least}"
    ),
}
MOST_SPREAD = 150  # cells of a course beyond which none are put in one by one
FURTHER: Mapping[str, str] = {
    "outer": mark("let the outer side advance further: add straight cells"),
    "inner": mark("let the inner side advance further: add straight cells"),
}


def joint_counts(tube: Salvaged[Tube]) -> dict[str, int] | None:
    """How many joints each chain of the tube has; None if that cannot be told."""
    if not tube.right("chains", "closed", "course"):
        return None
    outer, inner = _advances(cell_counts(tube.part.course))
    end = 0 if tube.part.closed else 1
    if outer + inner > MOST_BALLOONS:
        return None
    return {
        letter: (outer if letter in OUTER_CHAINS[tube.part.chains] else inner) + end
        for letter in chain_letters(tube.part.chains)
    }


def _advances(counts: Mapping[CellKind, int]) -> tuple[int, int]:
    return (
        sum(count * cell.outer for cell, count in counts.items()),
        sum(count * cell.inner for cell, count in counts.items()),
    )


def check_tube(
    tube: Salvaged[Tube],
    given: Mapping[str, object],
    balloons: Balloons,
    colour_pattern: Mapping[str, object],
) -> Iterator[Mistake]:
    """Every disagreement in a tube; `given` is what the file says of it, as plain data."""
    if tube.right("chains"):
        yield from _check_letters(tube, given.get("long"), colour_pattern)
    cells = list(_cells(given.get("course"), (*AT, "course")))
    for at, (outer, inner) in cells:
        if (outer, inner) == (0, 0):
            yield Mistake(
                FileKind.CELL_WITHOUT_ADVANCE,
                at,
                message("a cell [0, 0] advances no chain"),
                change(message("take it out, or let a side advance"), TakeOut(at)),
            )
    if tube.right("chains") and given.get("single") is None:
        yield from _check_singles(tube.part.chains, cells, given.get("brace"))
    joints = joint_counts(tube)
    if joints is not None and min(joints.values()) and given.get("extra"):
        yield from check_extra(tube.part, joints, given["extra"])
    if tube.right("closed", "chains", "course") and (0, 0) not in [cell for _, cell in cells]:
        yield from _check_course(tube, balloons, colour_pattern)


def _check_letters(
    tube: Salvaged[Tube], long: object, colour_pattern: Mapping[str, object]
) -> Iterator[Mistake]:
    chains = tube.part.chains
    letters = chain_letters(chains)
    if isinstance(long, dict):
        for letter in long:
            if letter in ("A", "B", "C", "D") and letter not in letters:
                yield Mistake(
                    FileKind.NO_SUCH_CHAIN,
                    (*AT, "long", letter),
                    message(NO_CHAIN, letter=letter, chains=chains, letters=listed(letters)),
                    change(
                        message("take {letter} out, or change the number of chains", letter=letter),
                        TakeOut((*AT, "long", letter)),
                    ),
                )
        missing = [letter for letter in letters if letter not in long]
        if missing:
            yield Mistake(
                FileKind.CHAIN_WITHOUT_BALLOON,
                (*AT, "long"),
                message(
                    "long names no balloon for {missing}: a tube of {chains} chains has {letters}",
                    missing=listed(missing),
                    chains=chains,
                    letters=listed(letters),
                ),
                _add_chains(long, missing),
            )
    for letter in colour_pattern:
        if letter in ("A", "B", "C", "D") and letter not in letters:
            yield Mistake(
                FileKind.NO_SUCH_CHAIN,
                ("colour_pattern", letter),
                message(NO_CHAIN, letter=letter, chains=chains, letters=listed(letters)),
                by_hand(message("use {names}", names=listed(letters, "or"))),
            )


def _add_chains(long: Mapping[str, object], missing: Sequence[str]) -> Suggestion:
    """A suggestion to give the chains that have no balloon that of another chain."""
    key = next((key for key in long.values() if isinstance(key, str)), None)
    if key is None:
        return by_hand(message("add {chains}, each with its balloon", chains=listed(missing)))
    right = listed(f"{letter}: {key}" for letter in missing)
    puts = (Put((*AT, "long", letter), key) for letter in missing)
    return change(message("add {right}", right=right), *puts)


def _cells(items: object, at: Path) -> Iterator[tuple[Path, tuple[int, int]]]:
    """The advances of every cell that is written down (once, however often it is laid), and
    where; what is no cell is passed over."""
    for i, item in enumerate(list_in(items)):
        if isinstance(item, str) and item in CELL_KINDS:
            yield (*at, i), CELL_KINDS[item].advances
        elif isinstance(item, list) and len(item) == 2 and all(type(n) is int for n in item):
            yield (*at, i), (item[0], item[1])
        elif isinstance(item, dict):
            yield from _cells(item.get("cells"), (*at, i, "cells"))


def _check_singles(
    chains: int, cells: Sequence[tuple[Path, tuple[int, int]]], brace: object
) -> Iterator[Mistake]:
    """A joint that no brace reaches takes a single to its twin, if its chain has one."""
    for at, advances in cells:
        for advance, side, twins in zip(
            advances, ("outer", "inner"), (OUTER_CHAINS[chains], INNER_CHAINS[chains]), strict=True
        ):
            if advance > 1 and len(twins) > 1:
                yield Mistake(
                    FileKind.SINGLE_MISSING,
                    at,
                    message(SKIPPED[side], chains=listed(twins)),
                    change(
                        message("add {right} to build.tube", right=f"single: {brace}"),
                        Put((*AT, "single"), brace),
                    )
                    if isinstance(brace, str)
                    else by_hand(message("add single, with the key of its balloon")),
                )
                return


def _check_course(
    tube: Salvaged[Tube], balloons: Balloons, colour_pattern: Mapping[str, object]
) -> Iterator[Mistake]:
    at: Path = (*AT, "course")
    part = tube.part
    counts = cell_counts(part.course)
    outer, inner = _advances(counts)
    total = _balloon_total(part.chains, outer, inner, sum(counts.values()))
    if total > MOST_BALLOONS:
        yield Mistake(
            FileKind.TOO_MANY_BALLOONS,
            at,
            message("this course takes about {count} balloons", count=total),
            by_hand(message("a piece may have {count}; repeat fewer times", count=MOST_BALLOONS)),
        )
        return
    least = LEAST_IN_RING if part.closed else 1
    for side, advance in (("outer", outer), ("inner", inner)):
        if advance < least:
            yield Mistake(
                FileKind.SIDE_TOO_SHORT,
                at,
                message(TOO_SHORT[side, part.closed], count=advance, least=least),
                _more_straight(part, at, message(FURTHER[side]), least - advance),
            )
            return
    if part.closed:
        for cell in counts:
            if cell.outer >= outer or cell.inner >= inner:
                yield Mistake(
                    FileKind.CELL_GOES_ALL_ROUND,
                    at,
                    message(
                        "one cell {cell} takes a closed side all the way round",
                        cell=f"[{cell.outer}, {cell.inner}]",
                    ),
                    _more_straight(
                        part,
                        at,
                        message("let other cells advance on both sides too: add straight cells"),
                        1,
                    ),
                )
                return
    if part.closed and tube.right("long", "brace"):
        lengths = side_lengths(part, balloons, colour_pattern, (outer, inner))
        if lengths is not None:
            cells = tuple(expand_course(part))
            sized = partial(sized_inner, part, balloons, colour_pattern)
            for mistake in check_coming_round(cells, lengths, at, sized):
                yield replace(mistake, suggestion=_with_single(part, mistake.suggestion))


def _more_straight(tube: Tube, at: Path, right: Message, fewest: int) -> Suggestion:
    """A suggestion of so many straight cells, spread evenly along the course."""
    cells = tuple(expand_course(tube))
    if not cells or len(cells) > MOST_SPREAD:
        return by_hand(right)
    edit = added(cells, "straight", fewest)
    return Suggestion((right,), (Remedy(edit.words, (Put(at, as_items(edit.cells)),)),))


def _with_single(tube: Tube, suggestion: Suggestion) -> Suggestion:
    """A suggestion of other courses, with the single that their tips and dips need and the tube
    does not name yet."""
    if tube.single is not None or tube.chains == min(LINKS_PER_BRACE):
        return suggestion
    put = Put((*AT, "single"), tube.brace)
    words = f"single: {tube.brace}"
    ways = tuple(
        Remedy(message("{way} (with {right})", way=way.words, right=words), (*way.changes, put))
        if _skips(way, tube.chains)
        else way
        for way in suggestion.ways
    )
    return replace(suggestion, ways=ways)


def _skips(way: Remedy, chains: int) -> bool:
    """Whether a way lays a course that skips joints of chains that have a twin."""
    return any(
        isinstance(put, Put) and put.at[-1] == "course" and max(advance[: chains - 2]) > 1
        for put in way.changes
        for _, advance in _cells(put.value if isinstance(put, Put) else None, ())
    )


def _balloon_total(chains: int, outer: int, inner: int, cells: int) -> int:
    """About how many balloons a tube takes: long chains, braces, locks."""
    links = len(OUTER_CHAINS[chains]) * outer + len(INNER_CHAINS[chains]) * inner
    return links + cells * LINKS_PER_BRACE[chains] + links * BALLOONS_PER_LOCK
