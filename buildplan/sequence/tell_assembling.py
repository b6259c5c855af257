"""Telling the braces, singles, joints and locks, and the finish."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from buildplan.framework.chain_roles import INNER, OUTER, ChainRole
from buildplan.framework.model import Brace, Cell, Chain, End, LongChain
from buildplan.language.grammar import sentences
from buildplan.sequence.chains import walk
from buildplan.sequence.grouping import STRAIGHT
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.ordering import natural
from buildplan.sequence.piece import Piece
from buildplan.sequence.plan import Plan
from buildplan.sequence.reach import Way
from buildplan.sequence.tell_heads import head_name, locks_name
from buildplan.sequence.tell_preparing import (
    UNNAMED,
    Row,
    balloons_of,
    chain_row_of,
    lock_name,
    long_of,
)
from buildplan.sequence.words import assembling as words
from buildplan.sequence.words import courses, finishing, locking, reaching, rows, tying
from buildplan.sequence.words import heads as head_words
from buildplan.sequence.words.grammar import Wording


def _locking(plan: Plan, number: int) -> list[str]:
    """How what a step ties is locked, and that each turn is locked before the next."""
    locks = plan.group(number).of_kind(Kind.LOCK)
    if not locks:
        return []
    several = plan.group(number).times > 1
    return [
        locking.lock(lock_name(plan, locks[0])),
        locking.each_before_the_next() if several else "",
    ]


def _done(plan: Plan, number: int, *checks: str) -> str:
    """The check of a step whose turns are locked."""
    if not plan.group(number).of_kind(Kind.LOCK):
        return sentences(*checks)
    return sentences(
        locking.pull(), *checks, locking.locks_so_far(*plan.progress(Kind.LOCK, number))
    )


def _locks_row(piece: Piece, turn: Sequence[Operation]) -> list[str]:
    joints = [joint for operation in turn for joint in operation.locks]
    return [rows.at_joints(locks_name(piece, turn[0]), joints)] if joints else []


# --- braces -------------------------------------------------------------------------------


def brace(plan: Plan, number: int) -> Wording:
    """One brace, or several equal ones."""
    group = plan.group(number)
    braces = [plan.piece.brace[op.id] for op in group.heads]
    one, alone = braces[0], group.times == 1
    moves = [_cell_moves(plan, one, cell) for cell in plan.piece.cells_at(one)] if alone else []
    colour = _colour_of(plan, number, one) or words.OF_ITS_ROW
    moves += [_leading(plan, chain, alone, colour) for chain in one.chains]
    if alone:
        moves.append(words.shares(_shared(plan, one), one.number))
        moves += _single_moves(plan, group.of_kind(Kind.SINGLE))
    elif any(brace.shared for brace in braces):
        moves.append(words.shares_in_row())
    moves += _getting_at(plan, [joint for op in group.operations for joint in op.joints])
    moves.append(words.settle())
    moves += _locking(plan, number)
    moves += _waiting(plan, group.heads)
    special = [name for name in group.cells if name != STRAIGHT]
    done = _done(plan, number, words.braces_standing(*plan.progress(Kind.BRACE, number)))
    return words.brace_step([brace.number for brace in braces], special, moves, done)


def _single_moves(plan: Plan, singles: Sequence[Operation]) -> list[str]:
    """The singles that belong to the corner of a brace."""
    moves = []
    for single in singles:
        moves.append(words.take(words.short_chain(1, balloons_of(plan, single.links))))
        moves.append(words.tie_across(*single.joints))
    return moves


def _shared(plan: Plan, brace: Brace) -> list[tuple[str, int]]:
    return [(link, plan.piece.brought_by[link]) for link in brace.shared]


def _colour_of(plan: Plan, number: int, brace: Brace) -> str:
    """What the balloons of a brace are called; empty where those of its step differ."""
    links = [link for op in plan.group(number).heads for link in plan.piece.brace[op.id].links]
    return balloons_of(plan, brace.links) if len(set(plan.names_of(links))) == 1 else ""


def _leading(plan: Plan, chain: Chain, alone: bool, balloons: str) -> str:
    """How one short chain of a brace is tied in; `alone` names its joints."""
    what = words.short_chain(len(chain.links), balloons)
    if chain.closed:
        ends = words.TAIL_AND_NECK if len(chain.links) % 2 else words.BOTH_TAILS
        return words.lead_round(what, chain.joints[0] if alone else "", ends)
    link = plan.framework.link
    first_neck = link[chain.links[0]].end_at(chain.joints[0]) is End.NECK
    last_neck = link[chain.links[-1]].end_at(chain.joints[-1]) is End.NECK
    first_end = words.end_words(first_neck)
    last_end = words.end_words(last_neck, other=not first_neck)
    first, *over, last = chain.joints
    if alone:
        return words.lead_between(what, first, over, last, first_end, last_end)
    return words.lead_between_in_row(what, bool(over), first_end, last_end)


def _cell_moves(plan: Plan, brace: Brace, cell: Cell) -> str:
    """What a cell does; nothing is said of a straight one."""
    if cell.name == STRAIGHT:
        return ""
    before = plan.framework.brace[cell.first].section
    after = plan.framework.brace[cell.second].section
    chains = plan.framework.built_with(before[0]).chains

    def side(role: ChainRole, advance: int) -> tuple[list[str], int, list[str], list[str]]:
        letters = [long.letter for long in chains if long.role == role]
        letter = plan.piece.letter
        return (
            letters,
            advance,
            [joint for joint in before if letter[joint] in letters],
            [joint for joint in after if letter[joint] in letters],
        )

    outer, inner = side(OUTER, cell.outer), side(INNER, cell.inner)
    return words.cell_moves(cell.name, cell.second < cell.first, outer, inner, cell.skipped)


def brace_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Brace 3: A3 – B3 – C3 – D3, closed at A3`."""
    name = head_name(plan.piece, turn[0])
    one = plan.piece.brace[turn[0].id]
    ways = [(chain.joints, chain.closed) for chain in one.chains]
    colour = "" if _colour_of(plan, number, one) else balloons_of(plan, one.links)
    said = [rows.brace(rows.of_colour(name, colour), ways, _shared(plan, one))]
    for operation in turn:
        if operation.kind is Kind.SINGLE:
            said.append(rows.single(head_name(plan.piece, operation), operation.joints))
    return name, "\n".join([*said, *_locks_row(plan.piece, turn)])


# --- singles, joints ----------------------------------------------------------------------


def single(plan: Plan, number: int) -> Wording:
    """Singles across skipped joints."""
    heads = plan.group(number).heads
    links = [op.links[0] for op in heads]
    said = words.single_step(
        links,
        balloons_of(plan, links),
        heads[0].joints if len(links) == 1 else (),
        _locking(plan, number),
        _done(plan, number, words.singles_in_place(*plan.progress(Kind.SINGLE, number))),
    )
    parts = _parts_at(plan, heads)
    return tying.between_parts(said, parts) if len(parts) > 1 else said


def single_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Single A5-D5: A5 – D5`."""
    name = head_name(plan.piece, turn[0])
    said = rows.single(name, turn[0].joints)
    return name, "\n".join([said, *_locks_row(plan.piece, turn)])


def join(plan: Plan, number: int) -> Wording:
    """Joints where long chains meet, or where parts are tied together."""
    heads = plan.group(number).heads
    progress = plan.progress(Kind.JOIN, number)
    if len(heads[0].joints) > 1:
        return tying.tie_step(
            _parts_at(plan, heads),
            len(heads),
            heads[0].people,
            _locking(plan, number),
            _done(plan, number, words.joined_so_far(*progress)),
        )
    moves = [] if len(_coming(plan, number)) else [words.find_knots()]
    moves += _getting_at(plan, [head.joints[0] for head in heads])
    moves += _locking(plan, number) or [words.bind()]
    said = words.join_step(
        [op.joints[0] for op in heads],
        moves,
        _done(plan, number, words.joined_so_far(*progress)),
    )
    if not _coming(plan, number):
        return said
    return _of_part(plan, number, courses.with_chains(said, *_come_in(plan, number)))


def _of_part(plan: Plan, number: int, said: Wording) -> Wording:
    """What is said of the first course of a part names the part."""
    (laid,) = plan.group(number).of_kind(Kind.LAY)
    part = plan.framework.part_at(laid.joints[0])
    _, first, *_ = _come_in(plan, number)
    if part is None or not first:
        return said
    return tying.of_part(said, part.name, part is plan.framework.parts[0])


def _coming(plan: Plan, number: int) -> list[LongChain]:
    """The chains that come in with a step."""
    tags = plan.group(number).of_kind(Kind.TAG)
    return [long_of(plan, operation) for operation in tags]


def _come_in(plan: Plan, number: int) -> tuple[Sequence[str], bool, bool, bool]:
    """Their letters, whether they are the first of the piece or part, whether any of them is
    closed, and whether they are odd."""
    chains = _coming(plan, number)
    (laid,) = plan.group(number).of_kind(Kind.LAY)
    first = not any(
        plan.framework.built_with(operation.joints[0]).joints
        == plan.framework.built_with(laid.joints[0]).joints
        for earlier in plan.groups[: number - 1]
        for operation in earlier.of_kind(Kind.LAY)
    )
    closed = [long.chain for long in chains if long.chain.closed]
    odd = any(chain.odd is not None for chain in closed)
    return [long.letter for long in chains], first, bool(closed), odd


def lay_course(plan: Plan, number: int) -> Wording:
    """Chains that come in and meet nothing."""
    return _of_part(plan, number, courses.lay_alone(*_come_in(plan, number)))


def coming_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Chain B: 4 balloons (all leaf green), joints B1 – B2 – B3 – B4 – B1`."""
    long = long_of(plan, turn[0])
    maker = plan.group(plan.maker[f"chain {long.letter}"])
    if len(maker.turns) > 1:  # its colours were told when it was tied
        name = head_words.chain_name(long.letter)
        return name, rows.at_joints(name, walk(long.chain))
    (tied,) = (op for op in maker.operations if op.id == f"chain {long.letter}")
    return chain_row_of(plan, tied)


def join_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Joint v4: knots of chain A (2 times) and chain B; free end of chain C`."""
    if turn[0].kind is not Kind.JOIN:
        return coming_row(plan, number, turn)
    name = head_name(plan.piece, turn[0])
    if len(turn[0].joints) > 1:
        said = tying.tie_row(name, turn[0].joints)
        return name, "\n".join([said, *_locks_row(plan.piece, turn)])
    passing, ends = plan.piece.passing[turn[0].joints[0]]
    knots = [rows.passes(letter, times) for letter, times in passing.items()]
    alone = plan.piece.alone
    free_ends = [
        rows.of_balloon(alone[letter]) if letter in alone else rows.passes(letter, times)
        for letter, times in ends.items()
    ]
    brought = [
        rows.balloon(link, plan.names_of([link])[0], _tail_first(plan, link))
        for link in turn[0].links
    ]
    said = rows.join(name, knots, free_ends)
    if any(operation.locks for operation in turn):
        said = rows.then_locked(said)
    return name, "\n".join([said, *brought])


def _tail_first(plan: Plan, link_id: str) -> tuple[str, str]:
    link = plan.framework.link[link_id]
    return link.tail, link.neck


# --- locks, turning over ------------------------------------------------------------------------


def _getting_at(plan: Plan, joints: Sequence[str]) -> list[str]:
    """How joints that are not on top are got at."""
    joints = list(dict.fromkeys(joints))
    behind = [joint for joint in joints if joint in plan.piece.behind]
    if plan.reach is None:
        return [locking.roll()] if behind else []
    ways = plan.reach.ways
    by_way = {way: [j for j in joints if ways.get(j) is way] for way in Way}
    return [
        reaching.kneel() if set(behind).intersection(by_way[Way.DIRECT]) else "",
        reaching.lift(by_way[Way.LIFTED]),
        reaching.on_its_side(by_way[Way.ON_ITS_SIDE]),
        reaching.stool(by_way[Way.STOOL]),
        reaching.hard(by_way[Way.NONE]),
    ]


def _parts_at(plan: Plan, heads: Sequence[Operation]) -> list[str]:
    """The names of the parts that `heads` tie together."""
    found = (plan.framework.part_at(joint) for head in heads for joint in head.joints)
    return sorted({part.name for part in found if part is not None}, key=natural)


def _waiting(plan: Plan, heads: Sequence[Operation]) -> list[str]:
    """What is said of joints whose lock waits for a brace of a later step."""
    later: dict[int, list[str]] = {}
    put_off = {joint for joint, way in plan.ways.items() if way is Way.TURNED}
    for head in heads:
        if head.kind is Kind.BRACE:
            for joint in head.joints:
                if joint in put_off:
                    continue
                number = plan.lock_waits_for[joint]
                if number > plan.piece.brace[heads[-1].id].number:
                    later.setdefault(number, []).append(joint)
    turned = [joint for head in heads for joint in head.joints if joint in put_off]
    waits = [locking.waits(joints, number) for number, joints in sorted(later.items())]
    return [*waits, locking.waits_for_turning(turned)]


def turn_over(plan: Plan, number: int) -> Wording:
    """Turning the piece over, and locking what could not be reached before."""
    group = plan.group(number)
    said = reaching.turn_over(group.heads[0].people)
    if not group.locks:
        return said
    text = sentences(said.text, *_locking(plan, number))
    return replace(said, text=text, check=_done(plan, number, said.check))


def turned_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """`Locks with the back up: C3, C4`, where there are any."""
    joints = [joint for operation in turn for joint in operation.locks]
    name = head_words.locks_turned()
    return (name, rows.at_joints(name, joints)) if joints else (UNNAMED, "")


# --- finish -------------------------------------------------------------------------------


def inspect(plan: Plan, number: int) -> Wording:
    """Looking the piece over."""
    framework = plan.framework
    two_sides = any(joint != twin for joint, twin in framework.mirror.items())
    return finishing.inspect(len(framework.links), len(framework.locks), two_sides)


def stand_up(plan: Plan, number: int) -> Wording:
    """Standing it up."""
    people = plan.group(number).heads[0].people
    return finishing.stand_up(people, bool(plan.framework.braces))


def plain_row(plan: Plan, number: int, turn: Sequence[Operation]) -> Row:
    """Nothing particular."""
    return UNNAMED, ""
