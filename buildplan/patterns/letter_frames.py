"""The framework of a text: outlines as rings, front and back, braced wherever two cells meet.

A character is as deep as one balloon. Its outlines (one outside, one round each hole) are rings of
the front and of the back; every side that two cells share is a brace's front, so that a junction
of strokes is held by a brace on each of its strokes. A joint that no brace reaches, at a corner or
a free end, takes a single from front to back. The characters of a word are parts of an assembly,
with low bars between them and balloons wherever two joints face one another.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from buildplan.framework.assembly import Spacer, build_assembly, part_joint
from buildplan.framework.chain_roles import INNER, OUTER, Layer
from buildplan.framework.model import (
    BalloonType,
    Brace,
    Framework,
    Lock,
    LongChain,
    Part,
    Role,
)
from buildplan.framework.naming import letters as chain_letters
from buildplan.framework.tube import LinksMade, tie_brace
from buildplan.patterns.letter_keys import Letters
from buildplan.patterns.letter_rows import characters, front_chains
from buildplan.patterns.letter_spacing import facing
from buildplan.patterns.letter_strokes import BARS
from buildplan.patterns.lettering import Glyph, glyph

LOW = 0.15  # of a link: joints up to this above the lowest are the foot


@dataclass(frozen=True)
class _Labels:
    """The labels of a character's joints, by their numbers, front and back."""

    front: Mapping[int, str]
    back: Mapping[int, str]


def build_letters(
    name: str, balloons: Mapping[str, BalloonType], letters: Letters, height: int
) -> Framework:
    """Build the framework of a text, `height` cells high: one character, or a word as an
    assembly."""
    row = characters(letters.text, height)
    names, drawn = list(row), [glyph(one, height) for one in row.values()]
    if len(drawn) == 1:
        return _build_glyph(name, balloons, letters, drawn[0], 0.0)
    parts: list[Part] = []
    spacers: list[Spacer] = []
    x = 0.0
    for i, one in enumerate(drawn):
        if i:
            gap, pairs = facing(drawn[i - 1], one)
            x += gap
            spacers += _spacers((names[i - 1], drawn[i - 1]), (names[i], one), pairs, letters)
        inked = _as_bar(letters) if row[names[i]] in BARS else letters
        framework = _build_glyph(names[i], balloons, inked, one, x)
        parts.append(Part(names[i], framework, drawing=letters.text))
    whole = build_assembly(name, balloons, parts, [], spacers, letters.lock)
    laid = {joint: at for part in whole.parts for joint, at in part.framework.laid.items()}
    return replace(whole, laid=laid)


def _as_bar(letters: Letters) -> Letters:
    """The balloons of a bar, which is no letter and may be told from them by its colour."""
    return letters.model_copy(update={"long": letters.bar or letters.long})


def _labels(drawn: Glyph) -> _Labels:
    front, back = {}, {}
    rings = front_chains(drawn)
    for number, (loop, ring) in enumerate(zip(drawn.loops, rings, strict=True)):
        behind = chain_letters(2 * len(rings) - 1 - number)
        for place, (joint, label) in enumerate(zip(loop, ring, strict=True)):
            front[joint], back[joint] = label, f"{behind}{place + 1}"
    return _Labels(front, back)


def _build_glyph(
    name: str, balloons: Mapping[str, BalloonType], letters: Letters, drawn: Glyph, x: float
) -> Framework:
    """The framework of one character, its left edge drawn at `x` links."""
    labels, links = _labels(drawn), LinksMade()
    layers = [
        (Layer.FRONT, labels.front, drawn.loops),
        (Layer.BACK, labels.back, drawn.loops[::-1]),
    ]
    chains: list[LongChain] = []
    for layer, label, loops in layers:
        for loop in loops:
            joints = [label[joint] for joint in loop]
            chain = links.chain(joints, [letters.long] * len(joints), True, Role.CHAIN)
            role = OUTER if loop is drawn.loops[0] else INNER
            chains.append(LongChain(chain_letters(len(chains)), role, layer, chain))
    braces: list[Brace] = []
    for number, (a, b) in enumerate(drawn.rungs, 1):
        section = (labels.front[a], labels.front[b], labels.back[b], labels.back[a])
        braces.append(tie_brace(number, section, letters.brace, links))
    braced = {joint for rung in drawn.rungs for joint in rung}
    singles: list[str] = []
    for joint in (joint for loop in drawn.loops for joint in loop if joint not in braced):
        ends = labels.front[joint], labels.back[joint]
        singles += links.chain(ends, [letters.brace], False, Role.SINGLE).links
    every = tuple(joint for long in chains for joint in long.chain.joints)
    return Framework(
        name=name,
        balloons=dict(balloons),
        joints=every,
        links=tuple(links.made),
        chains=tuple(chains),
        braces=tuple(braces),
        cells=(),
        singles=tuple(singles),
        locks=tuple(Lock(joint, letters.lock) for joint in every),
        closed=True,
        mirror={
            one: other
            for joint in labels.front
            for one, other in (
                (labels.front[joint], labels.back[joint]),
                (labels.back[joint], labels.front[joint]),
            )
        },
        foot=tuple(
            label[joint]
            for label in (labels.front, labels.back)
            for joint in label
            if drawn.at[joint].imag < LOW
        ),
        laid=dict(_laid(balloons, letters, drawn, labels, x)),
        reads=True,
    )


def _laid(
    balloons: Mapping[str, BalloonType], letters: Letters, drawn: Glyph, labels: _Labels, x: float
) -> Iterator[tuple[str, tuple[float, float, float]]]:
    link_m = balloons[letters.long].tie_to_tie_m
    half_m = balloons[letters.brace].tie_to_tie_m / 2
    for label, z in ((labels.front, half_m), (labels.back, -half_m)):
        for joint, at in enumerate(drawn.at):
            yield label[joint], ((at.real + x) * link_m, at.imag * link_m, z)


def _spacers(
    left: tuple[str, Glyph],
    right: tuple[str, Glyph],
    pairs: list[tuple[int, int]],
    letters: Letters,
) -> Iterator[Spacer]:
    one, other = _labels(left[1]), _labels(right[1])
    for i, j in pairs:
        for start, finish in ((one.front[i], other.front[j]), (one.back[i], other.back[j])):
            ends = part_joint(left[0], start), part_joint(right[0], finish)
            yield Spacer(*ends, letters.brace)
