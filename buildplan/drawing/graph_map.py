"""The map of a piece that is listed joint by joint: joints as discs, balloons as lines.

A piece whose graph is planar and well connected is drawn by Tutte's method ("How to draw a
graph", 1963): its longest face is the frame, every other joint lies at the mean of its
neighbours, and no two lines cross. Other pieces are drawn with line lengths near the graph
distances (Kamada and Kawai 1989). When the discs would not stand clear of one another the
chains are also written out row by row.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

import networkx as nx
import numpy as np

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PAPER, SOFT, TYPE, between
from buildplan.drawing.map_legend import Item, Sign, chain_items, legend
from buildplan.drawing.map_style import (
    chain_style,
    joint_marks,
    joint_radius,
    link_marks,
)
from buildplan.drawing.marks import Curve, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.framework.model import Framework
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

Layout = dict[str, Point]
ChainRow = tuple[str, int, Sequence[str]]  # a chain's letter, its number, its joints
ROW_GAP = 14.0
CLEAR = 6.0  # bare paper between two discs
LETTER_ROOM = 22.0  # least bare line that a chain's letter is set on


def graph_map(
    framework: Framework, width: float, height: float, voice: Voice
) -> tuple[Picture, ...]:
    """One sheet with the diagram, or, when that would be too crowded, the chains in rows."""
    radius = joint_radius(framework)
    key_height, key = legend(_legend_items(framework, voice), width)
    room = (width - 2 * radius - 4, height - key_height - 2 * radius - 14)
    clear = _has_room(len(framework.joints), room, radius)
    for layout in _layouts(framework) if clear else ():
        placed = _fitted(layout, room)
        if _is_clear(framework, placed, radius):
            middle = radius + 2, key_height + radius + 10
            spots = {j: (x + middle[0], y + middle[1]) for j, (x, y) in placed.items()}
            tall = max(y for _, y in spots.values()) + radius + 4
            marks = (*key, *_diagram(framework, spots, radius))
            return (Picture(width, tall, marks, _alt(framework, voice)),)
    return _chain_rows(framework, width, height, voice)


def _legend_items(framework: Framework, voice: Voice) -> list[Item]:
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    named = [
        voice.say_count(
            "chain {letter} ({number} balloon)",
            "chain {letter} ({number} balloons)",
            len(chain.chain.links),
            letter=chain.letter,
        )
        for chain in framework.chains
    ]
    return [*items, *chain_items(framework, named, voice)]


def _layouts(framework: Framework) -> Iterator[Layout]:
    """Ways to lay the graph out, the best to read first; a map is tried in several sizes, and each
    way is worked out once."""
    ties = tuple((link.start, link.finish) for link in framework.links)
    for way in (_flat, _by_distance, _by_springs):
        layout = way(framework.joints, ties)
        if layout is not None:
            yield layout


Ties = tuple[tuple[str, str], ...]


def _graph(joints: tuple[str, ...], ties: Ties) -> nx.Graph:
    graph = nx.Graph()
    graph.add_nodes_from(joints)
    graph.add_edges_from(ties)
    return graph


@lru_cache(maxsize=8)
def _flat(joints: tuple[str, ...], ties: Ties) -> Layout | None:
    graph = _graph(joints, ties)
    planar, embedding = nx.check_planarity(graph)
    if planar and len(graph) > 3 and nx.is_connected(graph):
        return _tutte(graph, embedding)
    return None


@lru_cache(maxsize=8)
def _by_distance(joints: tuple[str, ...], ties: Ties) -> Layout | None:
    graph = _graph(joints, ties)
    if not nx.is_connected(graph):
        return None
    return _points(nx.kamada_kawai_layout(graph, pos=nx.circular_layout(graph)))


@lru_cache(maxsize=8)
def _by_springs(joints: tuple[str, ...], ties: Ties) -> Layout:
    return _points(nx.spring_layout(_graph(joints, ties), seed=1, iterations=200))


def _has_room(joints: int, room: tuple[float, float], radius: float) -> bool:
    """Whether so many discs clear of one another have room at all: of equal circles none lie denser
    than hexagons do (Fejes Toth 1940), and half a disc may stand out at each side."""
    apart = 2 * radius + CLEAR
    return joints * apart**2 * math.sqrt(3) / 2 <= (room[0] + apart) * (room[1] + apart)


def _points(layout: dict[str, np.ndarray]) -> Layout:
    return {joint: (float(p[0]), float(p[1])) for joint, p in layout.items()}


def _faces(embedding: nx.PlanarEmbedding) -> list[list[str]]:
    marked: set[tuple[str, str]] = set()
    return [
        embedding.traverse_face(u, v, marked) for u, v in embedding.edges() if (u, v) not in marked
    ]


def _tutte(graph: nx.Graph, embedding: nx.PlanarEmbedding) -> Layout:
    """Joints at the mean of their neighbours inside the longest face."""
    frame = max(_faces(embedding), key=lambda face: (len(set(face)) == len(face), len(face)))
    joints = list(graph)
    index = {joint: i for i, joint in enumerate(joints)}
    system, right = np.zeros((len(joints), len(joints))), np.zeros((len(joints), 2))
    turn = math.pi / 2 if len(frame) % 2 else math.pi / 2 - math.pi / len(frame)
    fixed = {joint: turn + 2 * math.pi * i / len(frame) for i, joint in enumerate(frame)}
    for joint in joints:
        i = index[joint]
        if joint in fixed:
            system[i, i] = 1
            right[i] = (math.cos(fixed[joint]), math.sin(fixed[joint]))
            continue
        system[i, i] = graph.degree(joint)
        for other in graph[joint]:
            system[i, index[other]] -= 1
    solved = np.linalg.solve(system, right)
    return {joint: (float(solved[i, 0]), float(solved[i, 1])) for joint, i in index.items()}


def _fitted(layout: Layout, room: tuple[float, float]) -> Layout:
    """The layout scaled to fit (each way by itself up to a third more, to use the page)."""
    xs, ys = [p[0] for p in layout.values()], [p[1] for p in layout.values()]
    wide, tall = max(max(xs) - min(xs), 1e-9), max(max(ys) - min(ys), 1e-9)
    scale = min(room[0] / wide, room[1] / tall)
    sx, sy = min(room[0] / wide, scale * 4 / 3), min(room[1] / tall, scale * 4 / 3)
    left = (room[0] - wide * sx) / 2
    return {
        joint: (left + (x - min(xs)) * sx, (y - min(ys)) * sy) for joint, (x, y) in layout.items()
    }


def _is_clear(framework: Framework, spots: Layout, radius: float) -> bool:
    """Whether discs stand clear of one another and of lines that do not end at them."""
    names = list(spots)
    at = np.array([spots[name] for name in names])
    apart = np.hypot(*(at[:, None] - at[None, :]).transpose(2, 0, 1))
    if np.any(apart[np.triu_indices(len(names), 1)] < 2 * radius + CLEAR):
        return False
    for link in framework.links:
        a, b = np.array(spots[link.start]), np.array(spots[link.finish])
        along = np.clip((at - a) @ (b - a) / ((b - a) @ (b - a)), 0, 1)
        near = np.hypot(*(at - (a + along[:, None] * (b - a))).T)
        ends = [names.index(link.start), names.index(link.finish)]
        if np.any(np.delete(near, ends) < radius + 1.5):
            return False
    return True


def _diagram(framework: Framework, spots: Layout, radius: float) -> list[Mark]:
    chain_of = {id_: i for i, long in enumerate(framework.chains) for id_ in long.chain.links}
    beside: dict[frozenset[str], int] = {}
    marks: list[Mark] = []
    for link in framework.links:
        style = chain_style(chain_of.get(link.id, 0))
        pair = frozenset((link.start, link.finish))
        copy = beside[pair] = beside.get(pair, -1) + 1
        a, b = (spots[joint] for joint in sorted(pair))
        if copy:
            marks.append(_bowed(a, b, copy, Ink(stroke=INK, width=style.width, dash=style.dash)))
        else:
            marks += link_marks(a, b, style)
    if len(framework.chains) > 1:
        for link in framework.links:
            a, b = spots[link.start], spots[link.finish]
            if math.dist(a, b) >= 2 * radius + LETTER_ROOM:
                letter = framework.chains[chain_of[link.id]].letter
                marks += _letter(between(a, b), letter)
    for joint, at in spots.items():
        locked = joint in framework.lock_at
        marks += joint_marks(at, radius, joint, skipped=False, locked=locked, repeat=False)
    return marks


def _letter(at: Point, letter: str) -> list[Mark]:
    """A chain's letter on one of its lines, paper left bare behind it."""
    half = text_width(letter, TYPE) / 2 + 1
    x, y = at
    box = ((x - half, y - 4.5), (x + half, y - 4.5), (x + half, y + 4.5), (x - half, y + 4.5))
    return [
        Polyline(box, Ink(fill=PAPER), closed=True),
        Label((x, y - TYPE * 0.36), letter, TYPE, INK),
    ]


def _bowed(a: Point, b: Point, copy: int, ink: Ink) -> Curve:
    """A line beside a straight one between the same two joints."""
    side = 0.22 * ((copy + 1) // 2) * (1 if copy % 2 else -1)
    nx_, ny_ = -(b[1] - a[1]) * side, (b[0] - a[0]) * side
    one = (a[0] + (b[0] - a[0]) / 3 + nx_, a[1] + (b[1] - a[1]) / 3 + ny_)
    two = (a[0] + (b[0] - a[0]) * 2 / 3 + nx_, a[1] + (b[1] - a[1]) * 2 / 3 + ny_)
    return Curve(a, ((one, two, b),), ink)


def _alt(framework: Framework, voice: Voice) -> str:
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
    return sentences(*parts)


def _beside(
    rows: Sequence[ChainRow], width: float, ends: float, step: float
) -> list[list[tuple[float, ChainRow]]]:
    """Rows put on lines, as many beside one another as there is room for, each with its left
    edge; a row is `ends` wide and a `step` more for each joint after its first."""
    lines: list[list[tuple[float, ChainRow]]] = []
    right = math.inf
    for row in rows:
        wide = ends + step * (len(row[2]) - 1)
        if right + wide - ROW_GAP > width:
            lines.append([])
            right = 0.0
        lines[-1].append((right, row))
        right += wide
    return lines


def _chain_rows(
    framework: Framework, width: float, height: float, voice: Voice
) -> tuple[Picture, ...]:
    """Each chain as a row of joints, walked from end to end, short ones beside one another; a
    joint that an earlier row has shown is pale: there the two chains meet."""
    radius = joint_radius(framework)
    left, step, line = 26.0, 2 * radius + 14, 2 * radius + 16
    fit = max(2, int((width - left - 2 * radius) // step) + 1)
    rows: list[ChainRow] = []
    for number, long in enumerate(framework.chains):
        walk = [*long.chain.joints, *(long.chain.joints[:1] if long.chain.closed else ())]
        for first in range(0, len(walk) - 1, fit - 1):
            letter = long.letter if first == 0 else ""
            rows.append((letter, number, walk[first : first + fit]))
    items = [
        *_legend_items(framework, voice),
        (
            Sign.SHOWN_BEFORE,
            voice.say_in("legend", "joint shown before: chains meet here"),
        ),
    ]
    key_height, key = legend(items, width)
    lines = _beside(rows, width, left + 2 * radius + ROW_GAP, step)
    per_sheet = max(1, int((height - key_height - 8) // line))
    sheets = -(-len(lines) // per_sheet)
    seen: set[str] = set()
    pictures = []
    for sheet in range(sheets):
        here = lines[sheet * per_sheet : (sheet + 1) * per_sheet]
        tall = key_height + 8 + line * len(here)
        placed = [(i, x, row) for i, one in enumerate(here) for x, row in one]
        marks: list[Mark] = [*key]
        for i, start, (letter, number, joints) in placed:
            y = tall - line * (i + 0.5)
            if letter:
                marks.append(Label((start, y - 4), letter, 11, INK, anchor="start", bold=True))
            else:
                marks.append(Label((start, y - 3), "...", TYPE, SOFT, anchor="start"))
            xs = [start + left + radius + k * step for k in range(len(joints))]
            for a, b in pairwise(xs):
                marks += link_marks((a, y), (b, y), chain_style(number))
            for x, joint in zip(xs, joints, strict=True):
                locked = joint in framework.lock_at
                marks += joint_marks(
                    (x, y), radius, joint, skipped=False, locked=locked, repeat=joint in seen
                )
                seen.add(joint)
        pictures.append(Picture(width, tall, tuple(marks), _alt(framework, voice)))
    return tuple(pictures)
