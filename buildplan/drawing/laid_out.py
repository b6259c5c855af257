"""How the long chains of a braced piece lie on the floor before they are braced.

The picture shows them in the figure of the piece itself, one layer over the other, joint 1 of each
where it lies and an arrow beside each chain from there; `floor_plan.py` shows them from straight
above as the step ends.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.fonts import text_width
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import joint_dot, joint_tags, leaders
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.map_layout import INNER, side_of
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.props import link, move
from buildplan.drawing.way_round import pointed
from buildplan.framework.chain_roles import Layer
from buildplan.framework.model import Framework, LongChain
from buildplan.language.messages import Message, mark, message_in
from buildplan.language.phrases import clauses
from buildplan.language.voice import Voice

# Layers are seen so low that a circle on the floor is drawn so high for its width.
SQUEEZE = 0.5
# A layer is drawn so far above the one below it, of the height of a layer, and at least so far.
LIFTED, LEAST_LIFTED_PT = 1.0, 26.0
# An arrow runs beside so many balloons from joint 1 on, so far off: of their length, or in points.
ALONG, ASIDE, LEAST_ASIDE_PT = 3, 0.62, 7.0
MARGIN_PT, LABEL_PT = 12.0, 8.0
JOINED = Ink(stroke=INK, width=0.9, dash=(3, 2))

# from the floor up
LAYERS: Mapping[Layer | None, Message] = {
    Layer.BACK: message_in("layer of chains", "back"),
    None: message_in("layer of chains", "between"),
    Layer.FRONT: message_in("layer of chains", "front"),
}
FLAT = message_in("layer of chains", "flat")
RINGS_LAID = mark(
    "The long rings laid out flat, from the floor up: {layers}; inner chains within the outer ones;"
    " joints {joints} lie together."
)
CHAINS_LAID = mark(
    "The long chains laid out flat, from the floor up: {layers}; inner chains within the outer"
    " ones; joints {joints} lie together."
)


@dataclass(frozen=True, eq=False)
class LaidChains:
    """A braced piece, or a part of one, and where its joints lie, seen from above: (x, y) in
    metres, the top of the piece upwards."""

    framework: Framework
    at: Mapping[str, FloatArray]

    @cached_property
    def layers(self) -> list[tuple[Message, list[LongChain]]]:
        """Chains from the floor up, outer ones first, each layer named."""
        found = []
        for layer, name in LAYERS.items():
            chains = [chain for chain in self.framework.chains if chain.layer is layer]
            if chains:
                found.append((name, sorted(chains, key=lambda one: side_of(one) == INNER)))
        return found if len(found) > 1 else [(FLAT, found[0][1])]

    def aside(self, chain: LongChain) -> list[FloatArray]:
        """Points beside the first balloons of a chain, away from the other chain of its layer."""
        joints = chain.chain.joints[: ALONG + 1]
        others = [one for one in self.framework.chains if one.layer is chain.layer and one != chain]
        line = np.array([self.at[joint] for joint in joints])
        length = float(np.mean(np.linalg.norm(np.diff(line, axis=0), axis=1)))
        run = np.gradient(line, axis=0)
        left = np.column_stack([-run[:, 1], run[:, 0]])
        left /= np.maximum(np.linalg.norm(left, axis=1), 1e-9)[:, None]
        away = -1.0 if self._is_left(line, left, others) else 1.0
        return list(line + away * ASIDE * length * left)

    def _is_left(self, line: FloatArray, left: FloatArray, others: Sequence[LongChain]) -> bool:
        """Whether the rest of a layer, or of a ring by itself the middle of the piece, lies to the
        left of the start of a chain."""
        joints = [joint for one in others for joint in one.chain.joints] or list(self.at)
        places = np.array([self.at[joint] for joint in joints])
        if others:
            nearest = np.argmin(np.linalg.norm(places[:, None] - line[None], axis=2), axis=0)
            towards = places[nearest] - line
        else:
            towards = np.mean(places, axis=0) - line
        return bool(np.sum(towards * left) > 0)


def laid_layers(
    own: Framework, at_m: Mapping[str, FloatArray], width: float, height: float, voice: Voice
) -> Picture:
    """The long chains of a braced piece, one layer above the other, as they are laid, and each
    chain's name; no higher than `height`."""
    laid = LaidChains(own, {joint: at_m[joint][:2] for joint in own.joints})
    named = [
        [f"{one.letter} {voice.tell(one.role.words[None])}" for one in chains]
        for _, chains in laid.layers
    ]
    left = max(text_width(words, TYPE) for rows in named for words in rows) + 12
    plan = np.array(list(laid.at.values()))
    low, span = np.min(plan, axis=0), np.ptp(plan, axis=0)
    steps = len(laid.layers) - 1
    tall = SQUEEZE * float(span[1]) * (1 + LIFTED * steps)
    room = (width - left - 3 * MARGIN_PT, height - 2 * MARGIN_PT - LEAST_LIFTED_PT * steps)
    scale = min(room[0] / max(float(span[0]), 1e-9), room[1] / max(tall, 1e-9))
    lift = LEAST_LIFTED_PT + LIFTED * SQUEEZE * float(span[1]) * scale
    top = MARGIN_PT + lift * steps + SQUEEZE * float(span[1]) * scale + MARGIN_PT

    def spot(joint_m: FloatArray, level: int) -> Point:
        x, y = (joint_m - low) * scale
        return (left + MARGIN_PT + float(x), MARGIN_PT + lift * level + SQUEEZE * float(y))

    marks: list[Mark] = []
    firsts: dict[str, Point] = {}
    pairs: dict[int, list[Point]] = {}
    for level, (name, chains) in enumerate(laid.layers):
        marks += _bodies(laid, chains, level, scale, spot)
        for chain in chains:
            first = chain.chain.joints[0]
            firsts[first] = spot(laid.at[first], level)
            pairs.setdefault(side_of(chain), []).append(firsts[first])
            marks += pointed([spot(point, level) for point in laid.aside(chain)])
        y = MARGIN_PT + lift * level + SQUEEZE * float(span[1]) * scale / 2
        marks.append(Label((2, y + 8), voice.tell(name), TYPE, INK, anchor="start", bold=True))
        for row, words in enumerate(named[level]):
            marks.append(Label((2, y - 3 - 10 * row), words, TYPE, INK, anchor="start"))
    marks += [Polyline((lowest[0], lowest[-1]), JOINED) for lowest in pairs.values() if steps]
    if steps:  # the upper layer comes down on the lower
        x = left + 2 * MARGIN_PT + float(span[0]) * scale
        y = MARGIN_PT + lift * steps + SQUEEZE * float(span[1]) * scale / 2
        marks += move([(x, y), (x, y - 0.4 * lift), (x, y - 0.8 * lift)])
    tags = place_tags(list(firsts.items()), width, top, size=LABEL_PT)
    marks += leaders(tags)
    marks += [mark for at in firsts.values() for mark in joint_dot(at, tied=True)]
    return Picture(
        width, top, (*marks, *joint_tags(tags)), _words(laid, voice), (("picture", "layers"),)
    )


def _bodies(
    laid: LaidChains,
    chains: Sequence[LongChain],
    level: int,
    scale: float,
    spot: Callable[[FloatArray, int], Point],
) -> list[Mark]:
    """The balloons of a layer's chains, from the far side to the near."""
    framework = laid.framework
    drawn: list[tuple[float, list[Mark]]] = []
    for chain in chains:
        for id_ in chain.chain.links:
            one = framework.link[id_]
            balloon = framework.balloons[one.balloon]
            ends = spot(laid.at[one.start], level), spot(laid.at[one.finish], level)
            body = link(*ends, balloon.gauge_m * scale * 0.8, balloon.colour)
            drawn.append((ends[0][1] + ends[1][1], body))
    return [mark for _, body in sorted(drawn, key=lambda one: -one[0]) for mark in body]


def _words(laid: LaidChains, voice: Voice) -> str:
    layers = []
    for name, chains in laid.layers:
        names = voice.listed([f"{chain.letter} ({voice.tell(chain.where)})" for chain in chains])
        layers.append(voice.say("{name}: {words}", name=name, words=names))
    firsts = ", ".join(chain.chain.joints[0] for chain in laid.framework.chains)
    message = RINGS_LAID if laid.framework.closed else CHAINS_LAID
    return voice.say(message, layers=clauses(voice, layers), joints=firsts)
