"""Chains as hands tie them: what they are tied from, and which ends meet in which knot."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.framework.ends import End
from buildplan.framework.model import Brace, Chain, Framework, LongChain
from buildplan.sequence import work_names as names
from buildplan.sequence.model import Knot
from buildplan.sequence.work_names import Name


def walk(chain: Chain) -> tuple[str, ...]:
    """Joints along `chain`, the first again at the end of a ring."""
    return (*chain.joints, chain.joints[0]) if chain.closed else chain.joints


def short_chains(brace: Brace) -> tuple[tuple[Name, Chain], ...]:
    """The chains a brace brings, each with its name."""
    if len(brace.chains) == 1:
        return ((names.brace(brace.number), brace.chains[0]),)
    return tuple(
        (names.brace_part(brace.number, place), chain)
        for place, chain in enumerate(brace.chains, 1)
    )


def all_chains(framework: Framework) -> Iterator[tuple[Name, Chain]]:
    """Every chain, long or short, with its name."""
    yield from ((names.long_chain(long.letter), long.chain) for long in framework.chains)
    for brace in framework.braces:
        yield from short_chains(brace)


def takes_tying(chain: Chain) -> bool:
    """Whether a short chain is more than a pair or one balloon, which are ready as they are."""
    return len(chain.links) > 2


def pair_names(name: Name, chain: Chain) -> tuple[Name, ...]:
    """Names of a chain's pairs."""
    return tuple(names.pair(place, name) for place in range(1, len(chain.pairs) + 1))


def prepared(name: Name, chain: Chain) -> tuple[Name, ...]:
    """Names of the pairs and the odd balloon that a chain is tied from."""
    odd = () if chain.odd is None else (names.tied_off(chain.odd),)
    return (*pair_names(name, chain), *odd)


def chain_knots(framework: Framework, chain: Chain) -> tuple[Knot, ...]:
    """Knots between pairs: those that the pairs do not have already, closing knot apart."""
    joints = walk(chain)
    knots = []
    for i in range(1, len(chain.links) - 1, 2):
        before, after = chain.links[i], chain.links[i + 1]
        ends = ((before, finish_end(framework, before)), (after, framework.link[after].start_end))
        knots.append(Knot(joints[i + 1], ends))
    return tuple(knots)


def finish_end(framework: Framework, link_id: str) -> End:
    return End.TAIL if framework.link[link_id].start_end is End.NECK else End.NECK


def closing_knot(framework: Framework, chain: Chain) -> Knot:
    last, first = chain.links[-1], chain.links[0]
    ends = ((last, finish_end(framework, last)), (first, framework.link[first].start_end))
    return Knot(chain.joints[0], ends)


def counts_along(long: LongChain) -> bool:
    """Whether the chain's joints are called by its letter and counted along it: A1, A2, ..."""
    return all(j == f"{long.letter}{i}" for i, j in enumerate(long.chain.joints, 1))


def numbered_round(long: LongChain) -> bool:
    """Whether the joints of a ring are numbered through round it: P7, P8, P9 ..."""
    first, *_ = joints = long.chain.joints
    sort = first.rstrip("0123456789")
    start = first[len(sort) :]
    if not long.chain.closed or not start:
        return False
    return all(joint == f"{sort}{int(start) + i}" for i, joint in enumerate(joints))
