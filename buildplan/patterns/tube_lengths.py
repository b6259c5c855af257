"""The lengths of a tube's links by its sides, as far as the file says them rightly."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import chain, count
from statistics import fmean

from pydantic import ValidationError

from buildplan.patterns.colour_order import ColourPattern
from buildplan.patterns.colour_patterns import RunPlace, lay_colours, period
from buildplan.patterns.course import INNER_CHAINS, OUTER_CHAINS
from buildplan.patterns.tube_keys import Tube
from buildplan.patterns.turning import SideLengths
from buildplan.source.balloons import Balloon
from buildplan.source.lengths import likely, tie_to_tie
from buildplan.source.partial_validation import Salvaged, list_in
from buildplan.source.suggestions import Change, Put
from buildplan.source.values import ChainLetter

Balloons = Mapping[str, Salvaged[Balloon]]


def chain_letters(chains: int) -> list[ChainLetter]:
    """The letters of a tube's chains."""
    return sorted([*OUTER_CHAINS[chains], *INNER_CHAINS[chains]])


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
        if not link.is_strut or link.inflate_to > link.nominal or not likely(link):
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
        return [*lay_colours(pattern, [RunPlace(i) for i in range(count)], count, closed)]
    return list_in(order)


def side_lengths(
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


def sized_inner(
    tube: Tube,
    balloons: Balloons,
    colour_pattern: Mapping[str, object],
    gauge: float,
) -> tuple[Change, ...]:
    """The changes of the file that size the balloons of the inner chains, and no others, to a
    gauge; none where colours are laid along them."""
    letters, inner = chain_letters(tube.chains), INNER_CHAINS[tube.chains]
    if any(letter in colour_pattern for letter in ("long", *inner)):
        return ()
    long = {letter: _long_key(tube, letter) for letter in letters}
    keys = {long[letter] for letter in inner}
    if len(keys) > 1:
        return ()
    (key,) = keys
    if key not in (tube.brace, *(long[letter] for letter in letters if letter not in inner)):
        return (Put(("balloons", key, "inflate_to"), gauge),)
    names = chain(["inner"], map("inner {}".format, count(2)))
    new = next(name for name in names if name not in balloons)
    balloon = balloons[key].part
    if balloon.tie_to_tie is not None or balloon.chain_of_ten is not None:
        return ()  # a measured length is that of the gauge it was measured at
    smaller = balloon.model_dump(exclude_unset=True) | {"inflate_to": gauge}
    sized = {letter: new if letter in inner else long[letter] for letter in letters}
    return (Put(("balloons", new), smaller), Put(("build", "tube", "long"), sized))


def _long_key(tube: Tube, letter: ChainLetter) -> str:
    return tube.long if isinstance(tube.long, str) else tube.long[letter]
