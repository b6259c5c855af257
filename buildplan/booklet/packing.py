"""What is made beforehand, and how it is packed: bags by chain and by kind of brace."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from buildplan.framework.counts import BALLOONS_PER_LOCK
from buildplan.framework.model import Framework
from buildplan.sequence.chains import short_chains
from buildplan.shape.standing import body_volume_m3

# Share of a bag that loose balloons fill: random close packing of spheres, about 0.64 (from
# memory); balloons give a little, so bags of this size are not too small.
PACKED = 0.64


@dataclass(frozen=True)
class Bag:
    """What goes into one bag (or, where it is too much for one, into bags of one label)."""

    label: str
    holds: str
    counts: dict[str, int]
    bulk_m3: float

    @property
    def balloons(self) -> int:
        """Balloons of every kind in it."""
        return sum(self.counts.values())


def bags(framework: Framework) -> tuple[Bag, ...]:
    """Every balloon of the piece in exactly one bag, labelled as the pages call it."""
    packed = [
        _bag(
            framework,
            f"Chain {long.letter}",
            f"chain {long.letter}, {long.place}: {len(long.chain.links)} balloons, "
            f"joint {long.chain.joints[0]} marked, ends free",
            (framework.link[link].balloon for link in long.chain.links),
        )
        for long in framework.chains
    ]
    kinds: dict[tuple[str, ...], list[int]] = {}
    for brace in framework.braces:
        for _, chain in short_chains(brace):
            keys = tuple(framework.link[link].balloon for link in chain.links)
            kinds.setdefault(keys, []).append(brace.number)
    lengths = Counter(len(keys) for keys in kinds)
    seen: Counter[int] = Counter()
    for keys, numbers in kinds.items():
        seen[len(keys)] += 1
        # two kinds of one length are told apart by a number
        which = f"-{seen[len(keys)]}" if lengths[len(keys)] > 1 else ""
        of = _colours(framework, keys)
        what = {1: "single balloons", 2: "pairs"}.get(len(keys), f"chains of {len(keys)}")
        packed.append(
            _bag(
                framework,
                f"Brace {len(keys)}{which}",
                f"{len(numbers)} {what}, {of}, for braces",
                (key for _ in numbers for key in keys),
            )
        )
    singles = [framework.link[link].balloon for link in framework.singles]
    if singles:
        holds = f"{len(singles)} balloons tied off alone, {_colours(framework, singles)}"
        packed.append(_bag(framework, "Singles", holds, singles))
    if framework.locks:
        rounds = [lock.balloon for lock in framework.locks for _ in range(BALLOONS_PER_LOCK)]
        holds = f"{len(framework.locks)} locks, {_colours(framework, rounds)}, pairs of rounds"
        packed.append(_bag(framework, "Locks", holds, rounds))
    return tuple(packed)


def _colours(framework: Framework, keys: Iterable[str]) -> str:
    return " and ".join(dict.fromkeys(framework.balloons[key].label for key in keys))


def _bag(framework: Framework, label: str, holds: str, keys: Iterable[str]) -> Bag:
    counts = Counter(keys)
    volume = sum(_volume_m3(framework, key) * count for key, count in counts.items())
    return Bag(label, holds, dict(counts), volume / PACKED)


def _volume_m3(framework: Framework, key: str) -> float:
    balloon = framework.balloons[key]
    length = balloon.tie_to_tie_m if balloon.kind == "link" else balloon.gauge_m
    return body_volume_m3(balloon.gauge_m / 2, length)
