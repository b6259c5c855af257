"""The joint map of a tube in words, for those who cannot see it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial, reduce

from buildplan.drawing.map_layout import Strip, UnrolledTube
from buildplan.framework.cells import UNEVEN, CellKind
from buildplan.framework.model import Brace, Framework
from buildplan.language.phrases import first_to_last, sentences
from buildplan.language.voice import Voice


def map_words(
    plan: UnrolledTube, strips: Sequence[Strip], sheet: int, sheets: int, voice: Voice
) -> str:
    """What a sheet shows: the long chains, and what each brace ties."""
    framework = plan.framework
    parts = [
        voice.say(
            "Joint map, sheet {sheet} of {sheets}. Long chains: {chains}.",
            sheet=sheet,
            sheets=sheets,
            chains=chains_words(framework, voice),
        )
    ]
    for strip in strips:
        parts += [brace_words(plan, section, voice) for section in range(strip.first, strip.last)]
    last = strips[-1].last
    if last < len(framework.cells):
        parts.append(voice.say("Goes on at brace {brace}.", brace=plan.brace_number(last)))
    elif framework.closed:
        parts.append(voice.say("Then comes brace {brace} again.", brace=plan.brace_number(last)))
    else:
        parts.append(brace_words(plan, last, voice))
    return sentences(*parts)


def chains_words(framework: Framework, voice: Voice) -> str:
    """The long chains: `A (outer front, 40 balloons), B (inner front, 40 balloons)`."""
    return ", ".join(
        voice.say_count(
            "{letter} ({place}, {number} balloon)",
            "{letter} ({place}, {number} balloons)",
            len(chain.chain.links),
            letter=chain.letter,
            place=voice.tell(chain.where),
        )
        for chain in framework.chains
    )


def all_chains_words(framework: Framework, voice: Voice) -> str:
    """How much there is of a piece without braces, and the joints of each chain."""
    parts = [
        voice.say(
            "Joint map: {joints} joints, {balloons} balloons.",
            joints=len(framework.joints),
            balloons=len(framework.links),
        )
    ]
    for long in framework.chains:
        joints = [*long.chain.joints, *(long.chain.joints[:1] if long.chain.closed else ())]
        parts.append(
            voice.say(
                "Chain {letter} ({place}): {joints}.",
                letter=long.letter,
                place=voice.tell(long.where),
                joints=", ".join(joints),
            )
        )
    if framework.singles:
        parts.append(voice.say("Singles: {singles}.", singles=", ".join(framework.singles)))
    return sentences(*parts)


def brace_words(plan: UnrolledTube, section: int, voice: Voice) -> str:
    """What the brace at a section ties, and which joints are skipped after it."""
    framework = plan.framework
    brace = framework.braces[section]
    skipped = framework.cells[section].skipped if section < len(framework.cells) else ()
    singles = [id_ for id_ in framework.singles if framework.link[id_].start in skipped]
    return sentences(
        ties_words(brace, voice),
        voice.say("Skipped: {joints}.", joints=", ".join(skipped)) if skipped else "",
        voice.say("Singles: {singles}.", singles=", ".join(singles)) if singles else "",
    )


def ties_words(brace: Brace, voice: Voice) -> str:
    """Which joints a brace ties, and what it shares with others."""
    joints = ", ".join(brace.section)
    if brace.shared:
        return voice.say(
            "Brace {brace} ties {joints}, sharing {balloons}.",
            brace=brace.number,
            joints=joints,
            balloons=", ".join(brace.shared),
        )
    return voice.say("Brace {brace} ties {joints}.", brace=brace.number, joints=joints)


def cell_label(kind: CellKind, voice: Voice) -> str:
    """What a kind of cell is called on a drawing; a cell given by numbers goes by them."""
    words = kind.words
    return kind.name if words is UNEVEN else voice.tell(words.on_drawing or words.called)


def walk_words(joints: Sequence[str], voice: Voice) -> str:
    """The way from joint to joint: `A1 to B1 to C1`."""
    return reduce(partial(first_to_last, voice), joints)
