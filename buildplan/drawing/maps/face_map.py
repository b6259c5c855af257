"""The map of a piece that its pattern draws flat, such as a letter: the front as it is seen, the
back behind it, up and to the right."""

from __future__ import annotations

from buildplan.drawing.line_art import between
from buildplan.drawing.map_style import (
    BRACE,
    SHARED,
    SINGLE,
    LinkStyle,
    brace_number,
    chain_style,
    joint_marks,
    joint_radius,
    link_marks,
)
from buildplan.drawing.map_words import chains_words, ties_words
from buildplan.drawing.maps.legend import Item, Sign, chain_items, legend
from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.framework.model import Framework, Link, Role
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

BACK = (0.5, 0.5)  # of a link: how far to the right and up the back is drawn
LARGEST_LINK = 66.0  # points


def face_map(framework: Framework, width: float, height: float, voice: Voice) -> Picture:
    """Every joint, link, brace number and lock of `framework`, which has a mirror and says where
    it is laid; at most `width` by `height` points."""
    radius = joint_radius(framework)
    key_height, key = legend(_legend_items(framework, voice), width)
    link_m = max(one.tie_to_tie_m for one in framework.balloons.values() if one.kind.is_strut)
    flat = {joint: _flat(framework.laid[joint], link_m) for joint in framework.joints}
    wide = max(x for x, _ in flat.values()) - min(x for x, _ in flat.values())
    tall = max(y for _, y in flat.values()) - min(y for _, y in flat.values())
    margin = radius + 4
    scale = min(
        LARGEST_LINK, (width - 2 * margin) / wide, (height - key_height - 2 * margin - 8) / tall
    )
    left = min(x for x, _ in flat.values()) * scale - (width - wide * scale) / 2
    low = min(y for _, y in flat.values()) * scale - key_height - margin - 4
    spots = {joint: (x * scale - left, y * scale - low) for joint, (x, y) in flat.items()}
    marks: list[Mark] = [*key]
    for link in sorted(framework.links, key=lambda link: _depth(framework, link)):
        marks += link_marks(spots[link.start], spots[link.finish], _style(framework, link))
    for joint in sorted(framework.joints, key=lambda joint: framework.laid[joint][2]):
        braced = any(joint in brace.section for brace in framework.braces)
        locked = joint in framework.lock_at
        marks += joint_marks(
            spots[joint], radius, joint, skipped=not braced, locked=locked, repeat=False
        )
    for brace in framework.braces:
        middle = between(spots[brace.section[0]], spots[brace.section[1]])
        marks += brace_number(middle, str(brace.number))
    top = max(y for _, y in spots.values()) + margin
    return Picture(width, top, tuple(marks), _alt(framework, voice))


def _flat(at: tuple[float, float, float], link_m: float) -> Point:
    """Where a joint is drawn, in links."""
    back = at[2] < 0
    return at[0] / link_m + back * BACK[0], at[1] / link_m + back * BACK[1]


def _depth(framework: Framework, link: Link) -> float:
    return framework.laid[link.start][2] + framework.laid[link.finish][2]


def _style(framework: Framework, link: Link) -> LinkStyle:
    if link.role is Role.SINGLE:
        return SINGLE
    if link.role is Role.BRACE:
        return SHARED if any(link.id in brace.shared for brace in framework.braces) else BRACE
    ids = (long.chain.links for long in framework.chains)
    return chain_style(next(i for i, links in enumerate(ids) if link.id in links))


def _legend_items(framework: Framework, voice: Voice) -> list[Item]:
    braced = {joint for brace in framework.braces for joint in brace.section}
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if set(framework.joints) - braced:
        items.append((Sign.SKIPPED, voice.say_in("legend", "joint that no brace reaches")))
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    named = [
        voice.say_in(
            "legend",
            "chain {letter}, {place}",
            letter=long.letter,
            place=voice.tell(long.where),
        )
        for long in framework.chains
    ]
    items += chain_items(framework, named, voice)
    if framework.braces:
        items.append((BRACE, voice.say_in("legend", "brace balloon")))
        items.append((Sign.NUMBER, voice.say_in("legend", "number of a brace")))
    if any(brace.shared for brace in framework.braces):
        items.append((SHARED, voice.say_in("legend", "brace balloon that two braces share")))
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    return items


def _alt(framework: Framework, voice: Voice) -> str:
    shown = voice.say(
        "Joint map: the front as it is seen, the back behind it, up and to the right. Long chains:"
        " {chains}.",
        chains=chains_words(framework, voice),
    )
    singles = ""
    if framework.singles:
        singles = voice.say("Singles: {singles}.", singles=", ".join(framework.singles))
    return sentences(shown, *(ties_words(brace, voice) for brace in framework.braces), singles)
