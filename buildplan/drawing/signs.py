"""Signs on balloons that tell their colours without colour."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from itertools import combinations

from buildplan.drawing.colour_vision import confusable
from buildplan.drawing.symbols import PATTERNS
from buildplan.framework.model import Framework

Pair = frozenset[str]


def touching(framework: Framework) -> frozenset[Pair]:
    """Pairs of balloon keys of the same form, two links or two rounds, that meet at a joint."""
    at: dict[str, set[str]] = {}
    for link in framework.links:
        for joint in (link.start, link.finish):
            at.setdefault(joint, set()).add(link.balloon)
    for lock in framework.locks:
        at.setdefault(lock.joint, set()).add(lock.balloon)
    kind = {key: balloon.kind for key, balloon in framework.balloons.items()}
    return frozenset(
        frozenset(pair)
        for keys in at.values()
        for pair in combinations(sorted(keys), 2)
        if kind[pair[0]] == kind[pair[1]]
    )


def balloon_signs(framework: Framework, used: Iterable[str]) -> Mapping[str, int]:
    """The sign of each balloon key of `used` (`Look.pattern`): one for each colour of each kind and
    size that a bag holds.

    When there are more of them than signs, one for each colour; when there are more colours too,
    those that may be taken for one another where they touch still get signs that differ.
    """
    balloons = {key: framework.balloons[key] for key in used}
    bag = {key: (one.colour, one.kind.name, one.nominal_m) for key, one in balloons.items()}
    bags = list(dict.fromkeys(bag.values()))
    if len(bags) <= PATTERNS:
        return {key: bags.index(bag[key]) for key in bag}
    colour = {key: one.colour for key, one in balloons.items()}
    colours = list(dict.fromkeys(colour.values()))
    if len(colours) <= PATTERNS:
        return {key: colours.index(colour[key]) for key in colour}
    rivals: dict[str, set[str]] = {each: set() for each in colours}
    for first, second in map(sorted, touching(framework)):
        pair = colour.get(first), colour.get(second)
        if pair[0] and pair[1] and pair[0] != pair[1] and confusable(pair[0], pair[1]):
            rivals[pair[0]].add(pair[1])
            rivals[pair[1]].add(pair[0])
    sign: dict[str, int] = {}
    times: Counter[int] = Counter()
    for each in sorted(colours, key=lambda c: (-len(rivals[c]), colours.index(c))):
        taken = {sign[rival] for rival in rivals[each] if rival in sign}
        sign[each] = min(range(PATTERNS), key=lambda s: (s in taken, times[s], s))
        times[sign[each]] += 1
    return {key: sign[colour[key]] for key in colour}
