"""What the parts of a tube must agree on: its chains, its course, and whether it comes round."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from statistics import fmean

from pydantic import ValidationError

from buildplan.design.closure import check_coming_round
from buildplan.design.colour_order import ColourPattern
from buildplan.design.colour_patterns import Place, lay_colours, period
from buildplan.design.course import (
    CELLS,
    INNER_CHAINS,
    OUTER_CHAINS,
    CourseCell,
    cell_counts,
)
from buildplan.design.kinds import FileKind
from buildplan.design.lengths import likely, tie_to_tie
from buildplan.design.model import Balloon
from buildplan.design.patterns import Tube
from buildplan.design.source.mistake import Mistake, Path, listed
from buildplan.design.source.partial_validation import Salvaged, list_in
from buildplan.design.suggestions import Put, Suggestion, TakeOut, by_hand, change
from buildplan.design.turning import SideLengths
from buildplan.design.values import ChainLetter
from buildplan.language.messages import mark, message

MOST_BALLOONS = 20_000
LEAST_IN_RING = 3
LINKS_PER_BRACE: Mapping[int, int] = {2: 1, 3: 3, 4: 4}
BALLOONS_PER_LOCK = 2

AT: Path = ("build", "tube")

Balloons = Mapping[str, Salvaged[Balloon]]

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
FURTHER: Mapping[str, str] = {
    "outer": mark("let the outer side advance further: add straight cells"),
    "inner": mark("let the inner side advance further: add straight cells"),
}


def chain_letters(chains: int) -> list[str]:
    """The letters of a tube's chains."""
    return sorted([*OUTER_CHAINS[chains], *INNER_CHAINS[chains]])


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


def _advances(counts: Mapping[CourseCell, int]) -> tuple[int, int]:
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
        if isinstance(item, str) and item in CELLS:
            yield (*at, i), CELLS[item]
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
                by_hand(message(FURTHER[side])),
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
                    by_hand(
                        message("let other cells advance on both sides too: add straight cells")
                    ),
                )
                return
    if part.closed and tube.right("long", "brace"):
        lengths = _side_lengths(part, balloons, colour_pattern, (outer, inner))
        if lengths is not None:
            yield from check_coming_round(counts, lengths, at)


def _balloon_total(chains: int, outer: int, inner: int, cells: int) -> int:
    """About how many balloons a tube takes: long chains, braces, locks."""
    links = len(OUTER_CHAINS[chains]) * outer + len(INNER_CHAINS[chains]) * inner
    return links + cells * LINKS_PER_BRACE[chains] + links * BALLOONS_PER_LOCK


def _links(keys: Iterable[object], balloons: Balloons) -> list[Balloon] | None:
    """The links of these keys, if the file says enough, and rightly, about each's length."""
    links = []
    for key in keys:
        balloon = balloons.get(key) if isinstance(key, str) else None
        if balloon is None or not balloon.right(
            "kind", "nominal", "inflate_to", "tie_to_tie", "chain_of_ten"
        ):
            return None
        link = balloon.part
        if link.kind != "link" or link.inflate_to > link.nominal or not likely(link):
            return None
        links.append(link)
    return links


def _laid(order: object, count: int, closed: bool) -> list[object]:
    """The balloons that a colour pattern, as the file gives it, lays along `count`; none if it
    is not written rightly."""
    if isinstance(order, dict):
        try:
            pattern = ColourPattern.model_validate(order)
        except ValidationError:
            return []
        if pattern.fade is None and period(pattern) is None:
            return []
        return [*lay_colours(pattern, [Place(i) for i in range(count)], count, closed)]
    return list_in(order)


def _side_lengths(
    tube: Tube,
    balloons: Balloons,
    colour_pattern: Mapping[str, object],
    counts: tuple[int, int],
) -> SideLengths | None:
    """The mean lengths of a tube's links on either side and of its braces; None if one of
    them cannot be told. `counts` are the balloons of an outer and of an inner chain."""

    def side(letters: Sequence[ChainLetter], count: int) -> list[Balloon] | None:
        keys: list[object] = []
        for letter in letters:
            long = tube.long.get(letter) if isinstance(tube.long, dict) else tube.long
            order = colour_pattern.get(letter, colour_pattern.get("long"))
            keys += _laid(order, count, tube.closed) or [long]
        return _links(keys, balloons)

    outer = side(OUTER_CHAINS[tube.chains], counts[0])
    inner = side(INNER_CHAINS[tube.chains], counts[1])
    braces = _links([tube.brace], balloons)
    if outer is None or inner is None or braces is None:
        return None
    return SideLengths(
        outer=fmean(tie_to_tie(link)[0] for link in outer),
        inner=fmean(tie_to_tie(link)[0] for link in inner),
        brace=tie_to_tie(braces[0])[0],
        inner_gauge=fmean(link.inflate_to for link in inner),
        inner_nominal=min(link.nominal for link in inner),
    )
