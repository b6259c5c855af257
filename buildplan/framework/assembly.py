"""The assembly: parts that are pieces of their own, tied to one another at named joints."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from buildplan.framework.ends import End
from buildplan.framework.locks import Lock, Tie
from buildplan.framework.model import BalloonType, Brace, Cell, Chain, Framework, Link, Part, Role


@dataclass(frozen=True)
class Spacer:
    """A balloon from a joint of one part to a joint of another."""

    start: str
    finish: str
    balloon: str


def part_joint(part: str, joint: str) -> str:
    """What a joint of a part is called in the whole: `L.A1`."""
    return f"{part}.{joint}"


def is_of_part(joint: str, part: str) -> bool:
    """Whether a joint of the whole is one of the part of that name, or of one of its parts."""
    return joint.startswith(part_joint(part, ""))


def outer_part(joint: str) -> str:
    """The name of the part of the whole that a joint of the whole is of."""
    return joint.partition(".")[0]


def build_assembly(
    name: str,
    balloons: Mapping[str, BalloonType],
    parts: Sequence[Part],
    ties: Sequence[Sequence[str]],
    spacers: Sequence[Spacer],
    lock: str,
) -> Framework:
    """Build the framework of `parts`, each with the labels that its pattern gives, tied at `ties`
    and by `spacers`, which name joints as `part_joint` does.

    Each part keeps its own locks; every tie has one more. A part that is an assembly itself comes
    in as its parts, and where one of its ties is tied again, what meets there is one tie.
    """
    named: list[Part] = []
    joined: list[Tie] = []
    kept: list[Link] = []
    braces = cells = 0
    for part in parts:
        for piece in part.framework.parts or (replace(part, name=""),):
            named.append(_piece(part, piece, braces, cells))
            braces += len(piece.framework.braces)
            cells += len(piece.framework.cells)
        joined += [
            Tie(tuple(part_joint(part.name, joint) for joint in tie.joints))
            for tie in part.framework.ties
        ]
        kept += _links_between(part)
    joined = _united([*joined, *(Tie(tuple(tie)) for tie in ties)])
    kept += [_spacer_link(spacer) for spacer in spacers]
    wholes = [part.framework for part in named]
    return Framework(
        name=name,
        balloons=dict(balloons),
        joints=tuple(joint for one in wholes for joint in one.joints),
        links=(*(link for one in wholes for link in one.links), *kept),
        chains=tuple(long for one in wholes for long in one.chains),
        braces=tuple(brace for one in wholes for brace in one.braces),
        cells=tuple(cell for one in wholes for cell in one.cells),
        singles=(*(single for one in wholes for single in one.singles), *(k.id for k in kept)),
        locks=(
            *(held for one in wholes for held in one.locks),
            *(Lock(tie.name, lock) for tie in joined),
        ),
        closed=all(one.closed for one in wholes),
        mirror=_mirror(wholes, joined, kept),
        parts=tuple(named),
        ties=tuple(joined),
        extras=frozenset(link for one in wholes for link in one.extras),
    )


def _united(ties: Sequence[Tie]) -> list[Tie]:
    """Ties with those that share a joint taken as one, at the place of the last of them."""
    found: dict[Tie, None] = {}
    tied: dict[str, Tie] = {}
    for tie in ties:
        met = dict.fromkeys(tied[joint] for joint in tie.joints if joint in tied)
        for one in met:
            del found[one]
        joints = dict.fromkeys(joint for one in (*met, tie) for joint in one.joints)
        whole = Tie(tuple(joints))
        found[whole] = None
        tied.update(dict.fromkeys(joints, whole))
    return list(found)


def tied_to_itself(framework: Framework) -> tuple[str, Tie] | None:
    """A part of which two joints are brought together at one place, by ties of the parts that it is
    within, and their tie; None where there is none."""
    for tie in framework.ties:
        parts = [joint.rpartition(".")[0] for joint in tie.joints]
        if len(set(parts)) < len(parts):
            return max(parts, key=parts.count), tie
    return None


def _piece(part: Part, piece: Part, braces: int, cells: int) -> Part:
    """A piece of a part, or the part itself (then without a name), labelled and numbered on from so
    many."""
    own = piece.framework
    if piece.name:  # it is numbered within its part already
        braces, cells = braces - _first(own.braces), cells - _first(own.cells)
    own = _numbered(own, braces, cells)
    drawing = ".".join(filter(None, (piece.name and part.name, piece.drawing)))
    return Part(
        ".".join(filter(None, (part.name, piece.name))),
        _labelled(own, part.name),
        piece.mirrored != (part.mirrored and bool(piece.name)),
        tuple(part_joint(part.name, joint) for joint in piece.stand_on),
        drawing if piece.drawing else "",
        _set_on(part, piece),
    )


def _set_on(part: Part, piece: Part) -> tuple[str, ...]:
    """The parts that a piece of a part is set on: those of the part, where the piece is all of it
    or a letter of it; else its own, which are within the part."""
    if not piece.name or (piece.drawing and not piece.on):
        return part.on
    return tuple(part_joint(part.name, name) for name in piece.on)


def _links_between(part: Part) -> list[Link]:
    """The links of an assembly that is a part which are in none of its own parts."""
    within = {link.id for piece in part.framework.parts for link in piece.framework.links}
    if not within:
        return []
    whole = _labelled(part.framework, part.name)
    return [
        link
        for link, old in zip(whole.links, part.framework.links, strict=True)
        if old.id not in within
    ]


def _first(numbered: Sequence[Brace] | Sequence[Cell]) -> int:
    return numbered[0].number - 1 if numbered else 0


def _spacer_link(spacer: Spacer) -> Link:
    return Link(
        id=f"{spacer.start}-{spacer.finish}",
        balloon=spacer.balloon,
        role=Role.SINGLE,
        start=spacer.start,
        finish=spacer.finish,
        start_end=End.TAIL,
    )


def _mirror(
    wholes: Sequence[Framework], ties: Sequence[Tie], spacers: Sequence[Link]
) -> Mapping[str, str]:
    """The joints and ties that face one another; none where a part, or what ties the parts, has
    no such plane."""
    if not all(one.mirror for one in wholes):
        return {}
    mirror = {joint: twin for one in wholes for joint, twin in one.mirror.items()}
    known = {frozenset(tie.joints): tie.name for tie in ties}
    for tie in ties:
        twin = known.get(frozenset(mirror[joint] for joint in tie.joints))
        if twin is None:
            return {}
        mirror[tie.name] = twin
    across = {frozenset((link.start, link.finish)) for link in spacers}
    if any(frozenset((mirror[s.start], mirror[s.finish])) not in across for s in spacers):
        return {}
    return mirror


def _numbered(framework: Framework, braces: int, cells: int) -> Framework:
    """`framework` with its braces and cells counted on from so many."""
    return replace(
        framework,
        braces=tuple(replace(one, number=one.number + braces) for one in framework.braces),
        cells=tuple(
            replace(
                cell,
                number=cell.number + cells,
                first=cell.first + braces,
                second=cell.second + braces,
            )
            for cell in framework.cells
        ),
    )


def _labelled(framework: Framework, part: str) -> Framework:
    """`framework` with the name of the part before every label."""

    def label(joint: str) -> str:
        return part_joint(part, joint)

    def labels(joints: Sequence[str]) -> tuple[str, ...]:
        return tuple(map(label, joints))

    ids = dict(_link_ids(framework, part))

    def chain(one: Chain) -> Chain:
        return Chain(labels(one.joints), tuple(ids[link] for link in one.links), one.closed)

    return replace(
        framework,
        joints=labels(framework.joints),
        links=tuple(
            replace(one, id=ids[one.id], start=label(one.start), finish=label(one.finish))
            for one in framework.links
        ),
        chains=tuple(
            replace(long, letter=label(long.letter), chain=chain(long.chain))
            for long in framework.chains
        ),
        braces=tuple(
            replace(
                brace,
                section=labels(brace.section),
                chains=tuple(map(chain, brace.chains)),
                shared=tuple(ids[link] for link in brace.shared),
            )
            for brace in framework.braces
        ),
        cells=tuple(replace(cell, skipped=labels(cell.skipped)) for cell in framework.cells),
        singles=tuple(ids[link] for link in framework.singles),
        extras=frozenset(ids[link] for link in framework.extras),
        locks=tuple(replace(lock, joint=label(lock.joint)) for lock in framework.locks),
        mirror={label(joint): label(twin) for joint, twin in framework.mirror.items()},
        foot=labels(framework.foot),
        laid={label(joint): at for joint, at in framework.laid.items()},
        parts=(),
        ties=(),
    )


def _link_ids(framework: Framework, part: str) -> Iterator[tuple[str, str]]:
    """The id of every link, and what it is called in the whole."""
    for link in framework.links:
        copy = link.id.removeprefix(f"{link.start}-{link.finish}")
        ends = part_joint(part, link.start), part_joint(part, link.finish)
        yield link.id, f"{ends[0]}-{ends[1]}{copy}"
