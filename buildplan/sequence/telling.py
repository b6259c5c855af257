"""From a group of operations to what its step says: finds names, numbers, joints; words.py
makes the sentences."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import groupby

from buildplan.design.measures import Units, length_words
from buildplan.framework.model import Brace, Chain, End, Framework, LongChain
from buildplan.sequence import words
from buildplan.sequence.grouping import STRAIGHT, Group, Piece, head_name
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.operations import lock_waits_for
from buildplan.sequence.words import Wording

RUN_PAIRS = 4
LONGEST_WITHOUT_RUNS = 12


@dataclass(frozen=True)
class Plan:
    """All groups of a piece, in order; group `i` is step `i + 1`."""

    piece: Piece
    groups: Sequence[Group]
    units: Units

    @property
    def framework(self) -> Framework:
        """The piece's framework."""
        return self.piece.framework

    @cached_property
    def names(self) -> Mapping[str, str]:
        """What each balloon is called: its label, with its gauge where labels alone would
        leave a doubt."""
        balloons = self.framework.balloons
        seen = Counter((b.kind, b.label) for b in balloons.values())
        return {
            key: b.label
            if seen[b.kind, b.label] == 1
            else f"{b.label} {length_words(b.gauge_m, self.units)}"
            for key, b in balloons.items()
        }

    @cached_property
    def maker(self) -> Mapping[str, int]:
        """Number of the step that makes each thing."""
        return {
            thing: number
            for number, group in enumerate(self.groups, 1)
            for operation in group.operations
            for thing in operation.makes
        }

    @cached_property
    def users(self) -> Mapping[str, tuple[int, ...]]:
        """Numbers of the steps that need each thing."""
        found: dict[str, dict[int, None]] = {}
        for number, group in enumerate(self.groups, 1):
            for operation in group.operations:
                for thing in operation.needs:
                    found.setdefault(thing, {})[number] = None
        return {thing: tuple(numbers) for thing, numbers in found.items()}

    @cached_property
    def long(self) -> Mapping[str, LongChain]:
        """Long chains by letter."""
        return {long.letter: long for long in self.framework.chains}

    @cached_property
    def waits(self) -> Mapping[str, int]:
        """Number of the brace after which each joint is locked."""
        return lock_waits_for(self.framework)

    def done(self, kind: Kind, number: int) -> int:
        """How many operations of a kind are done once step `number` is."""
        return sum(
            1 for group in self.groups[:number] for op in group.operations if op.kind is kind
        )

    def total(self, kind: Kind) -> int:
        """How many operations of a kind there are."""
        return self.done(kind, len(self.groups))

    def used_in(self, operations: Sequence[Operation]) -> list[int]:
        """Numbers of the steps that need what `operations` make."""
        made = (thing for operation in operations for thing in operation.makes)
        return sorted({number for thing in made for number in self.users.get(thing, ())})


def wording(plan: Plan, number: int) -> Wording:
    """What step `number` says."""
    group = plan.groups[number - 1]
    return _TELL[group.kind](plan, group, number)


def row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    """Name and row of words of one turn of step `number`."""
    group = plan.groups[number - 1]
    return _ROWS[group.kind](plan, number, turn)


# --- size, pair ---------------------------------------------------------------------------


def _size(plan: Plan, group: Group, number: int) -> Wording:
    operations = group.operations
    key = operations[0].balloon
    balloon = plan.framework.balloons[key]
    nominal = length_words(balloon.nominal_m, plan.units)
    gauge = length_words(balloon.gauge_m, plan.units)
    links = sum(len(op.links) for op in operations)
    if links:
        return words.size_links(links, plan.names[key], nominal, gauge, plan.used_in(operations))
    rounds = 2 * len(operations)
    return words.size_rounds(rounds, plan.names[key], nominal, gauge, plan.used_in(operations))


def _lock_balloon(plan: Plan, operation: Operation) -> str:
    return plan.names[plan.framework.lock_at[operation.locks[0]].balloon]


def _pair(plan: Plan, group: Group, number: int) -> Wording:
    first = group.operations[0]
    if first.locks:
        kinds = dict.fromkeys(_lock_balloon(plan, op) for op in group.operations)
        return words.pair_rounds(group.times, list(kinds))
    names = sorted(plan.names[key] for key in plan.piece.keys(first.links))
    return words.pair_links(group.times, names, first.links[0] in plan.piece.long_links)


def _tie_off(plan: Plan, group: Group, number: int) -> Wording:
    links = [op.links[0] for op in group.operations]
    long = [letter for letter, c in plan.long.items() if c.chain.odd in links]
    singles = sum(1 for link in links if link in plan.framework.singles)
    return words.tie_off(
        len(links),
        plan.names[plan.framework.link[links[0]].balloon],
        long,
        len(links) - len(long) - singles,
        singles,
    )


# --- chain --------------------------------------------------------------------------------


def _colour_runs(plan: Plan, chain: Chain) -> tuple[list[tuple[int, str]], bool]:
    """Runs of one colour along a chain, cut to one period when they come over and over."""
    names = [plan.names[key] for key in plan.piece.keys(chain.links)]
    count = len(names)
    period = next(
        p for p in range(1, count + 1) if all(names[i] == names[i % p] for i in range(count))
    )
    runs = [(len(list(same)), name) for name, same in groupby(names[:period])]
    return runs, period < count


def _chain(plan: Plan, group: Group, number: int) -> Wording:
    if not group.operations[0].adds:
        return _short_chain(plan, group)
    chains = [_long_of(plan, op) for op in group.operations]
    first = chains[0].chain
    length = len(first.links)
    runs, over = _colour_runs(plan, first)
    return words.long_chains(
        letters=[long.letter for long in chains],
        length=length,
        pairs=len(first.pairs),
        odd=first.odd is not None,
        colours=words.colour_order(runs, over),
        run_pairs=RUN_PAIRS if length > LONGEST_WITHOUT_RUNS else 0,
    )


def _long_of(plan: Plan, operation: Operation) -> LongChain:
    return plan.long[operation.id.split()[1]]


def _short_chain(plan: Plan, group: Group) -> Wording:
    numbers = sorted({plan.piece.brought_by[op.links[0]] for op in group.operations})
    braces = f"{words.noun(len(numbers), 'brace')} {words.number_ranges(numbers)}"
    return words.short_chains(group.times, len(group.operations[0].links), braces)


# --- close rings --------------------------------------------------------------------------


def _knots(chain: Chain) -> tuple[int, int, int]:
    """Balloons, neck knots and tail knots of a ring; a knot of tail to neck is counted with
    the tail knots."""
    necks = len(chain.pairs)
    return len(chain.links), necks, len(chain.links) - necks


def _close(plan: Plan, group: Group, number: int) -> Wording:
    chains = [_long_of(plan, op).chain for op in group.operations]
    odd = {chain.odd is not None for chain in chains}
    how = words.AS_THEY_ARE
    if len(odd) == 1:
        how = words.TAIL_TO_NECK if odd.pop() else words.TAIL_TO_TAIL
    letters = [_long_of(plan, op).letter for op in group.operations]
    return words.close_rings(letters, how, [_knots(chain) for chain in chains])


def _tag(plan: Plan, group: Group, number: int) -> Wording:
    if plan.framework.braces:
        return words.tag_counted(plan.framework.closed)
    return words.tag_named()


def _lay(plan: Plan, group: Group, number: int) -> Wording:
    chains = plan.framework.chains
    if not plan.framework.braces:
        return words.lay_apart([long.letter for long in chains])
    placed = sorted(chains, key=lambda long: (_layer(long), "inner" in long.place))
    below = {long.place.replace("back", "front"): long for long in chains if "back" in long.place}
    order = [
        words.place_of_chain(
            long.letter,
            long.place,
            below[long.place].letter if long.place in below else "",
        )
        for long in placed
    ]
    firsts = [long.chain.joints[0] for long in chains]
    return words.lay_beside(order, firsts, plan.framework.closed)


def _layer(long: LongChain) -> int:
    """0 for what lies underneath, 2 for what lies on top."""
    return 0 if "back" in long.place else 2 if "front" in long.place else 1


# --- brace, single, join, lock ------------------------------------------------------------


def _alternating(plan: Plan, group: Group, number: int) -> str:
    if not group.locked_next or group.times == 1:
        return ""
    first, second = (head_name(turn[0]) for turn in group.turns[:2])
    return words.in_turn(
        number,
        number + 1,
        first.lower() if group.kind is Kind.BRACE else first,
        second.lower() if group.kind is Kind.BRACE else second,
    )


def _shared(plan: Plan, brace: Brace) -> list[tuple[str, int]]:
    return [(link, plan.piece.brought_by[link]) for link in brace.shared]


def _leading(plan: Plan, brace: Brace, alone: bool) -> list[str]:
    told = []
    for chain in brace.chains:
        count = len(chain.links)
        if chain.closed:
            ends = words.TAIL_AND_NECK if count % 2 else words.BOTH_TAILS
            told.append(words.lead_round(count, chain.joints[0] if alone else "", ends))
            continue
        first_end = str(plan.framework.link[chain.links[0]].end_at(chain.joints[0]))
        last = plan.framework.link[chain.links[-1]].end_at(chain.joints[-1])
        last_end = "closed neck" if last is End.NECK else "other tail"
        what = words.chain_name(count)
        if alone:
            over = chain.joints[1:-1]
            told.append(
                words.lead_between(
                    what, chain.joints[0], over, chain.joints[-1], first_end, last_end
                )
            )
        else:
            told.append(words.lead_row(what, first_end, last_end))
    return told


def _letters_on(plan: Plan, side: str) -> list[str]:
    return [long.letter for long in plan.framework.chains if long.place.startswith(side)]


def _cell_words(plan: Plan, brace: Brace) -> list[str]:
    """What the cells that `brace` completes do, straight ones apart."""
    told = []
    for cell in plan.piece.cells_at(brace):
        if cell.name == STRAIGHT:
            continue
        outer, inner = _letters_on(plan, "outer"), _letters_on(plan, "inner")
        stays = [
            joint
            for joint in brace.section
            if (plan.piece.letter[joint] in outer and cell.outer == 0)
            or (plan.piece.letter[joint] in inner and cell.inner == 0)
        ]
        told.append(
            words.cell_moves(cell.name, outer, inner, (cell.outer, cell.inner), stays, cell.skipped)
        )
    return told


def _brace(plan: Plan, group: Group, number: int) -> Wording:
    braces = [plan.piece.brace[op.id] for op in group.operations]
    first, alone = braces[0], group.times == 1
    moves = _leading(plan, first, alone)
    if alone:
        moves += [*_cell_words(plan, first), words.shares(_shared(plan, first), first.number)]
    elif first.shared:
        moves.append(words.shares_row())
    moves.append(words.settle(number + 1 if group.locked_next else None))
    moves.append(_alternating(plan, group, number))
    special = [name for name in group.cells if name != STRAIGHT]
    return words.brace_step(
        [brace.number for brace in braces],
        words.at_cells(special) if special else "",
        moves,
        plan.done(Kind.BRACE, number),
        plan.total(Kind.BRACE),
    )


def _single(plan: Plan, group: Group, number: int) -> Wording:
    links = [op.links[0] for op in group.operations]
    return words.single_step(
        links,
        plan.names[plan.framework.link[links[0]].balloon],
        number + 1 if group.locked_next else None,
        _alternating(plan, group, number),
        plan.done(Kind.SINGLE, number),
        plan.total(Kind.SINGLE),
    )


def _join(plan: Plan, group: Group, number: int) -> Wording:
    return words.join_step(
        [op.joints[0] for op in group.operations],
        number + 1 if group.locked_next else None,
        _alternating(plan, group, number),
        plan.done(Kind.JOIN, number),
        plan.total(Kind.JOIN),
    )


def _waiting(plan: Plan, head: Operation) -> list[tuple[str, int]]:
    """Joints of a brace whose lock waits for a later brace, with that brace's number."""
    if head.kind is not Kind.BRACE:
        return []
    number = plan.piece.brace[head.id].number
    return [(j, plan.waits[j]) for j in head.joints if plan.waits[j] > number]


def _lock(plan: Plan, group: Group, number: int) -> Wording:
    heads = plan.groups[number - 2].operations
    waiting = []
    for later in sorted({w for head in heads for _, w in _waiting(plan, head)}):
        joints = [j for head in heads for j, w in _waiting(plan, head) if w == later]
        waiting.append(words.waits(joints, later))
    if heads[0].kind is Kind.BRACE:
        numbers = [plan.piece.brace[head.id].number for head in heads]
        of = f"{words.noun(len(heads), 'brace')} {words.number_ranges(numbers)}"
    elif heads[0].kind is Kind.SINGLE:
        of = words.listed([f"the ends of single {head.links[0]}" for head in heads])
    else:
        of = f"{words.noun(len(heads), 'joint')} {words.listed([h.joints[0] for h in heads])}"
    return words.lock_step(
        of, " ".join(waiting), plan.done(Kind.LOCK, number), plan.total(Kind.LOCK)
    )


def _inspect(plan: Plan, group: Group, number: int) -> Wording:
    framework = plan.framework
    return words.inspect(len(framework.links), len(framework.locks), bool(framework.mirror))


def _stand_up(plan: Plan, group: Group, number: int) -> Wording:
    return words.stand_up()


# --- rows ---------------------------------------------------------------------------------


def _size_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    name = plan.names[turn[0].balloon]
    links = sum(len(op.links) for op in turn)
    return (
        ("All", words.bulk_row(links, f"{name} links"))
        if links
        else ("All", words.bulk_row(2 * len(turn), f"{name} rounds"))
    )


def _pair_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    if turn[0].locks:
        return "All", words.bulk_row(len(turn), "locks")
    names = sorted(plan.names[key] for key in plan.piece.keys(turn[0].links))
    return "All", words.bulk_row(len(turn), f"pairs: {names[0]} with {names[1]}")


def _tie_off_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    name = plan.names[plan.framework.link[turn[0].links[0]].balloon]
    return "All", words.bulk_row(len(turn), f"{name} balloons tied off alone")


def _colours_in_row(plan: Plan, chain: Chain) -> str:
    runs, over = _colour_runs(plan, chain)
    return words.colours_in_row(runs, over)


def _chain_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    if not turn[0].adds:
        return "All", words.bulk_row(len(turn), f"chains of {words.count_word(len(turn[0].links))}")
    long = _long_of(plan, turn[0])
    chain = long.chain
    back_to = chain.joints[0] if chain.closed else ""
    way = (
        words.way_counted(chain.joints[0], chain.joints[-1], back_to)
        if plan.framework.braces
        else words.way_listed(turn[0].joints)
    )
    colours = _colours_in_row(plan, chain)
    told = words.chain_row(long.letter, way, len(chain.links), chain.closed, colours)
    return f"Chain {long.letter}", told


def _ring_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    long = _long_of(plan, turn[0])
    told = words.ring_row(long.letter, long.chain.joints[0], len(long.chain.links))
    return f"Ring {long.letter}", told


def _tag_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    letter = turn[0].id.split()[1]
    return f"Chain {letter}", words.tag_row(letter, turn[0].joints)


def _lay_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    return "All", words.lay_row(turn[0].joints)


def _brace_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    brace = plan.piece.brace[turn[0].id]
    ways = [(chain.joints, chain.closed) for chain in brace.chains]
    shared = words.shared_row(_shared(plan, brace))
    name = head_name(turn[0])
    return name, words.brace_row(name, ways, shared)


def _single_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    name = head_name(turn[0])
    return name, words.single_row(name, turn[0].joints)


def _join_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    joint = turn[0].joints[0]
    passing, ends = [], []
    for long in plan.framework.chains:
        chain = long.chain
        inside = chain.joints if chain.closed else chain.joints[1:-1]
        if joint in inside:
            passing.append(words.of_chain(long.letter, inside.count(joint)))
        if not chain.closed and joint in (chain.joints[0], chain.joints[-1]):
            ends.append(words.of_chain(long.letter, 1))
    name = head_name(turn[0])
    return name, words.join_row(name, passing, ends)


def _lock_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    head = next(
        other for other in plan.groups[number - 2].operations if other.id == turn[0].needs[0]
    )
    name = f"Locks of {head_name(head)[0].lower()}{head_name(head)[1:]}"
    return name, words.lock_row(name, [op.joints[0] for op in turn])


def _plain_row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    return "All", ""


_TELL: Mapping[Kind, Callable[[Plan, Group, int], Wording]] = {
    Kind.SIZE: _size,
    Kind.PAIR: _pair,
    Kind.TIE_OFF: _tie_off,
    Kind.CHAIN: _chain,
    Kind.CLOSE_RING: _close,
    Kind.TAG: _tag,
    Kind.LAY: _lay,
    Kind.BRACE: _brace,
    Kind.SINGLE: _single,
    Kind.JOIN: _join,
    Kind.LOCK: _lock,
    Kind.INSPECT: _inspect,
    Kind.STAND_UP: _stand_up,
}
_ROWS: Mapping[Kind, Callable[[Plan, int, Sequence[Operation]], tuple[str, str]]] = {
    Kind.SIZE: _size_row,
    Kind.PAIR: _pair_row,
    Kind.TIE_OFF: _tie_off_row,
    Kind.CHAIN: _chain_row,
    Kind.CLOSE_RING: _ring_row,
    Kind.TAG: _tag_row,
    Kind.LAY: _lay_row,
    Kind.BRACE: _brace_row,
    Kind.SINGLE: _single_row,
    Kind.JOIN: _join_row,
    Kind.LOCK: _lock_row,
    Kind.INSPECT: _plain_row,
    Kind.STAND_UP: _plain_row,
}
