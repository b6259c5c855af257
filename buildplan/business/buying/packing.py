"""What is made beforehand, and how it is packed: bags by chain and by kind of brace."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from math import fsum

from buildplan.framework.counts import BALLOONS_PER_LOCK
from buildplan.framework.model import Framework, LongChain
from buildplan.instructions.grammar import chain_letters
from buildplan.language.voice import Voice
from buildplan.sequence.chains import short_chains
from buildplan.sequence.courses import in_courses
from buildplan.shape.standing import body_volume_m3

# Share of a bag that loose balloons fill: random close packing of spheres, about 0.64 (from
# memory); balloons give a little, so bags of this size are not too small.
PACKED = 0.64
# So many makes of chains of one length are a bag each; more are told apart by their letters. Ours.
MOST_MAKES = 4


@dataclass(frozen=True)
class Bag:
    """What goes into one bag (or, where it is too much for one, into bags of one label); `chain`
    is the letter of the chain that has it to itself, if one has."""

    label: str
    holds: str
    counts: dict[str, int]
    bulk_m3: float
    chain: str = ""

    @property
    def balloons(self) -> int:
        """Balloons of every kind in it."""
        return sum(self.counts.values())


def bags(framework: Framework, voice: Voice) -> tuple[Bag, ...]:
    """Every balloon of the piece in exactly one bag, labelled as the pages call it."""
    together = [long for long in framework.chains if _comes_in(framework, long)]
    packed = list(_by_letter(framework, together, voice))
    packed += _alike(framework, together, voice)
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
        of = _colours(voice, framework, keys)
        packed.append(
            _bag(
                framework,
                voice.say("Brace chains of {kind}", kind=f"{len(keys)}{which}"),
                _for_braces(voice, len(numbers), len(keys), of),
                (key for _ in numbers for key in keys),
            )
        )
    alone = [link for long in together for link in long.chain.links if len(long.chain.links) == 1]
    singles = [framework.link[link].balloon for link in (*framework.singles, *alone)]
    if singles:
        holds = voice.say_count(
            "{number} balloon tied off alone, {colours}",
            "{number} balloons tied off alone, {colours}",
            len(singles),
            colours=_colours(voice, framework, singles),
        )
        packed.append(_bag(framework, voice.say("Singles"), holds, singles))
    if framework.locks:
        rounds = [lock.balloon for lock in framework.locks for _ in range(BALLOONS_PER_LOCK)]
        holds = voice.say_count(
            "{number} lock, {colours}, a pair of rounds",
            "{number} locks, {colours}, pairs of rounds",
            len(framework.locks),
            colours=_colours(voice, framework, rounds),
        )
        packed.append(_bag(framework, voice.say("Locks"), holds, rounds))
    return tuple(packed)


def _comes_in(framework: Framework, long: LongChain) -> bool:
    """Whether a chain comes in with a course: nobody wants it by its letter before."""
    return in_courses(framework.built_with(long.chain.joints[0]))


def _by_letter(framework: Framework, others: Collection[LongChain], voice: Voice) -> Iterator[Bag]:
    """Each long chain but `others` in a bag of its own."""
    for long in framework.chains:
        if long not in others:
            holds = voice.say(
                "{place}; tag {joint} where it begins",
                place=voice.tell(long.where),
                joint=long.chain.joints[0],
            )
            keys = [framework.link[link].balloon for link in long.chain.links]
            label = voice.say("Chain {letter}", letter=long.letter)
            yield _bag(framework, label, holds, keys, long.letter)


def _alike(framework: Framework, chains: Iterable[LongChain], voice: Voice) -> Iterator[Bag]:
    """Chains of one length in one bag, as far as their colours follow one another alike; where
    nearly every chain has an order of its own, all of a length, each with its letter."""
    made: dict[int, dict[tuple[str, ...], list[LongChain]]] = {}
    for long in chains:
        keys = tuple(framework.link[link].balloon for link in long.chain.links)
        if len(keys) > 1:
            made.setdefault(len(keys), {}).setdefault(keys, []).append(long)
    for length, makes in made.items():
        every = [long for alike in makes.values() for long in alike]
        own = len(makes) > MOST_MAKES
        for number, same in enumerate([every] if own else makes.values(), 1):
            which = f"-{number}" if len(makes) > 1 and not own else ""
            held = [framework.link[link].balloon for long in same for link in long.chain.links]
            told: dict[str, str | int] = {
                "length": length,
                "colours": _colours(voice, framework, held),
                "letters": chain_letters(voice, [long.letter for long in same]),
            }
            holds = (
                voice.say(
                    "{number} chains of {length}, {colours}, ends free, each with its letter: "
                    "{letters}",
                    number=len(same),
                    **told,
                )
                if own
                else voice.say_count(
                    "{number} chain of {length}, {colours}, ends free: {letters}",
                    "{number} chains of {length}, {colours}, ends free: {letters}",
                    len(same),
                    **told,
                )
            )
            label = voice.say("Chains of {kind}", kind=f"{length}{which}")
            yield _bag(framework, label, holds, held)


def _colours(voice: Voice, framework: Framework, keys: Iterable[str]) -> str:
    return voice.listed(list(dict.fromkeys(framework.balloons[key].label for key in keys)))


def _for_braces(voice: Voice, count: int, length: int, colours: str) -> str:
    """Short chains of one length and make, as they go into a bag."""
    if length == 1:
        return voice.say_count(
            "{number} single balloon, {colours}, for a brace",
            "{number} single balloons, {colours}, for braces",
            count,
            colours=colours,
        )
    if length == 2:
        return voice.say_count(
            "{number} pair, {colours}, for a brace",
            "{number} pairs, {colours}, for braces",
            count,
            colours=colours,
        )
    return voice.say_count(
        "{number} chain of {length}, {colours}, for a brace",
        "{number} chains of {length}, {colours}, for braces",
        count,
        length=length,
        colours=colours,
    )


def _bag(framework: Framework, label: str, holds: str, keys: Iterable[str], chain: str = "") -> Bag:
    counts = Counter(keys)
    volume = fsum(_volume_m3(framework, key) * count for key, count in counts.items())
    return Bag(label, holds, dict(counts), volume / PACKED, chain)


def _volume_m3(framework: Framework, key: str) -> float:
    balloon = framework.balloons[key]
    return body_volume_m3(balloon.gauge_m / 2, balloon.length_m)
