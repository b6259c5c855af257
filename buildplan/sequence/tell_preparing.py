"""Telling the steps up to the laying of the chains."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from buildplan.design.measures import length_words
from buildplan.framework.chain_roles import INNER, Layer
from buildplan.framework.counts import BALLOONS_PER_LOCK
from buildplan.framework.model import Framework, LongChain
from buildplan.language.grammar import listed
from buildplan.sequence.colour_order import colour_runs, is_long, sections
from buildplan.sequence.grouping import is_for_courses
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.plan import Plan
from buildplan.sequence.words import chaining, heads, laying, rows, tying
from buildplan.sequence.words import preparing as words
from buildplan.sequence.words.grammar import Wording, colours

Row = tuple[str, str]
UNNAMED = ""
RUN_PAIRS = 4
LONGEST_WITHOUT_RUNS = 12


def long_of(plan: Plan, operation: Operation) -> LongChain:
    """The long chain that an operation is about: its id ends in the letter."""
    return plan.long[operation.id.rsplit(" ", 1)[-1]]


def _sizing(plan: Plan, number: int) -> list[words.Sized]:
    """What is sized in a step of pairs: of each kind of balloon how many, and to what."""
    counts: Counter[str] = Counter()
    for operation in plan.group(number).of_kind(Kind.SIZE):
        counts[operation.balloon] += len(operation.links) + BALLOONS_PER_LOCK * len(operation.locks)
    balloons = plan.framework.balloons
    return [
        words.Sized(
            count,
            plan.names[key],
            length_words(balloons[key].nominal_m, plan.units),
            length_words(balloons[key].gauge_m, plan.units),
        )
        for key, count in counts.items()
    ]


def lock_name(plan: Plan, operation: Operation) -> str:
    """What the balloons of a lock are called."""
    return plan.names[plan.framework.lock_at[operation.locks[0]].balloon]


def _tied(plan: Plan, number: int) -> tuple[Operation, ...]:
    group = plan.group(number)
    return group.of_kind(group.kind)


def pair(plan: Plan, number: int) -> Wording:
    """Sizing and tying pairs of links, or locks."""
    tied, sizing = _tied(plan, number), _sizing(plan, number)
    if tied[0].locks:
        return words.pair_rounds(len(tied), sizing[0])
    long = tied[0].links[0] in plan.piece.long_links
    return words.pair_links(len(tied), sorted(plan.names_of(tied[0].links)), long, sizing)


def pair_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`80 pairs, deep blue with deep blue`."""
    tied = _tied(plan, number)
    if tied[0].locks:
        return UNNAMED, rows.lock_pairs(len(tied), lock_name(plan, tied[0]))
    return UNNAMED, rows.link_pairs(len(tied), *sorted(plan.names_of(tied[0].links)))


def tie_off(plan: Plan, number: int) -> Wording:
    """Closing link balloons that have no partner."""
    links = [op.links[0] for op in _tied(plan, number)]
    long = [letter for letter, c in plan.long.items() if c.chain.odd in links]
    singles = len(plan.piece.singles.intersection(links))
    in_braces = len(links) - len(long) - singles
    return words.tie_off(len(links), _sizing(plan, number)[0], long, in_braces, singles)


def tie_off_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`20 ivory balloons tied off alone`."""
    tied = _tied(plan, number)
    return UNNAMED, rows.tied_off(len(tied), plan.names_of(tied[0].links)[0])


def chain(plan: Plan, number: int) -> Wording:
    """Tying long chains, or the short chains of braces."""
    group = plan.group(number)
    links = group.operations[0].links
    if is_for_courses(plan.piece, group.operations[0]) and len(group.turns) == 1:
        return chaining.stock(group.times, len(links), colours(*colour_runs(plan.names_of(links))))
    if links[0] not in plan.piece.long_links:
        braces = sorted({plan.piece.brought_by[op.links[0]] for op in group.operations})
        return chaining.short_chains(group.times, len(links), balloons_of(plan, links), braces)
    orders = {tuple(plan.names_of(op.links)) for op in group.operations}
    runs, over = colour_runs(plan.names_of(links))
    order = colours(runs, over) if len(runs) > 1 else ""
    if len(orders) > 1 or is_long(plan.names_of(links)):
        order = chaining.OF_ITS_ROWS
    return chaining.long_chains(
        letters=[long_of(plan, op).letter for op in group.operations],
        length=len(links),
        colour_order=order,
        run_pairs=RUN_PAIRS if len(links) > LONGEST_WITHOUT_RUNS else 0,
    )


def balloons_of(plan: Plan, links: Sequence[str]) -> str:
    """What the balloons of a short chain are called: `ivory`, `ivory and coral`."""
    return listed(list(dict.fromkeys(plan.names_of(links))))


def chain_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Chain A: 40 balloons (all deep blue), joints A1 to A40 and back to A1`."""
    operation = turn[0]
    if is_for_courses(plan.piece, operation) and plan.group(number).turns == (turn,):
        order = colours(*colour_runs(plan.names_of(operation.links)))
        return UNNAMED, chaining.chains_in_order(len(turn), len(operation.links), order)
    if operation.links[0] not in plan.piece.long_links:
        links = operation.links
        return UNNAMED, rows.short_chains(len(turn), len(links), balloons_of(plan, links))
    first = long_of(plan, plan.group(number).operations[0])
    return chain_row_of(plan, operation, first.letter)


def chain_row_of(plan: Plan, operation: Operation, first: str = "") -> Row:
    """What a chain is made of, and its joints; a long order of colours is told of the chain
    `first` alone."""
    long = long_of(plan, operation)
    joints = long.chain.joints
    way = rows.along(operation.joints)
    if plan.piece.counts_along(long):
        way = rows.counted(joints[0], joints[-1], joints[0] if long.chain.closed else "")
    name = heads.chain_name(long.letter)
    names = plan.names_of(operation.links)
    if not is_long(names):
        return name, rows.chain(name, len(names), colours(*colour_runs(names)), way)
    if first not in ("", long.letter):
        # chains of a long order are told together only where they are alike
        return name, rows.chain(name, len(names), rows.as_chain(first), way)
    told = [rows.chain(name, len(names), rows.by_sections(), way)]
    for begin, end, part in sections(names):
        told.append(rows.section(name, begin, end, colours(*colour_runs(part))))
    return name, "\n".join(told)


def close(plan: Plan, number: int) -> Wording:
    """Closing rings."""
    chains = [long_of(plan, op) for op in plan.group(number).operations]
    letters = [long.letter for long in chains]
    if not all(plan.piece.counts_along(long) for long in chains):
        return laying.close_listed_rings(letters)
    odd = {long.chain.odd is not None for long in chains}
    how = laying.TAIL_TO_NECK if True in odd else laying.TAIL_TO_TAIL
    if len(odd) > 1:
        how = laying.AS_THEY_ARE
    counts = [
        (len(c.links), len(c.pairs), len(c.links) - len(c.pairs))
        for c in (long.chain for long in chains)
    ]
    return laying.close_rings(letters, how, counts)


def close_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Ring A: closed at A1, 40 balloons`."""
    long = long_of(plan, turn[0])
    name = heads.ring_name(long.letter)
    return name, rows.ring(name, long.chain.joints[0], len(long.chain.links))


def tag(plan: Plan, number: int) -> Wording:
    """Tagging joints."""
    chains = plan.framework.chains
    if not all(plan.piece.counts_along(long) for long in chains):
        return laying.tag_named()
    lasts = [long.chain.joints[-1] for long in chains]
    both = len({long.chain.closed for long in chains}) > 1
    return laying.tag_counted(plan.framework.closed, lasts, both)


def tag_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Chain A: A1, A5, A10`."""
    name = heads.chain_name(long_of(plan, turn[0]).letter)
    return name, rows.at_joints(name, turn[0].joints)


def lay(plan: Plan, number: int) -> Wording:
    """Laying the long chains, those at the back first; of an assembly, those of one part."""
    joint = plan.group(number).operations[0].joints[0]
    part = plan.framework.part_at(joint)
    said = _lay(plan.framework.built_with(joint))
    if part is None:
        return said
    return tying.of_part(said, part.name, part is plan.framework.parts[0])


def _lay(framework: Framework) -> Wording:
    chains = framework.chains
    if not framework.braces:
        return laying.lay_apart([long.letter for long in chains])
    letter = {joint: long.letter for long in chains for joint in long.chain.joints}
    behind = {
        long.letter: letter[framework.mirror[long.chain.joints[0]]]
        for long in chains
        if framework.mirror and long.layer is Layer.FRONT
    }
    placed = sorted(chains, key=lambda long: (_layer(long), long.role == INNER))
    order = [laying.place_of_chain(long, behind.get(long.letter, "")) for long in placed]
    firsts = [long.chain.joints[0] for long in chains]
    layers = any(_layer(long) == 0 for long in chains)
    if framework.mirror and not framework.cells:
        front = [joint for joint in firsts if letter[joint] in behind]
        return laying.lay_outlines(order, [(joint, framework.mirror[joint]) for joint in front])
    return laying.lay_beside(order, firsts, framework.closed, layers)


def _layer(long: LongChain) -> int:
    """0 for what lies underneath, 2 for what lies on top."""
    return {Layer.BACK: 0, None: 1, Layer.FRONT: 2}[long.layer]


def lay_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Joints 1: A1, B1, C1, D1`, where they are brought together."""
    if not plan.framework.built_with(turn[0].joints[0]).braces:
        return UNNAMED, ""
    return UNNAMED, rows.at_joints(heads.together(), turn[0].joints)
