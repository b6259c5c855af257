"""Work at the joints: braces, how nozzles settle, locks, singles."""

from __future__ import annotations

from buildplan.drawing.colours import mix
from buildplan.drawing.line_art import INK, PAPER, between, rope
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.drawing.techniques.props import (
    Strand,
    badge,
    knot,
    link,
    move,
    neck_colour,
    palette,
    picture,
    round_,
    tail_end,
    weave,
    words,
)
from buildplan.framework.model import Framework


def brace_chain(framework: Framework) -> Picture:
    """The short chains that braces are made of: of four and of three, or fewer."""
    colours = palette(framework)
    full = len(framework.chains) if len(framework.chains) > 2 else 1
    sizes = [full] + ([full - 1] if any(b.shared for b in framework.braces) and full > 2 else [])
    marks: list[Mark] = []
    rows = [96.0, 34.0] if len(sizes) == 2 else [70.0]
    for size, y in zip(sizes, rows, strict=True):
        step, left = 45.0, 34.0
        for i in range(size):
            marks += link(
                (left + step * i + 1, y), (left + step * (i + 1) - 1, y), 37, colours.brace
            )
        for i in range(1, size):
            marks += knot((left + step * i, y), 0, colours.brace, 3.0)
            marks.append(words((left + step * i, y + 24), "necks" if i % 2 else "tails"))
        marks += badge((14, y), str(size))
    made_of = {
        1: "one link balloon by itself",
        2: "one pair, its necks tied together",
        3: "a pair, and one more balloon tied to it tail to tail",
        4: "two pairs tied tail to tail",
    }
    return picture(marks, " ".join(f"A brace chain of {n}: {made_of[n]}." for n in sizes))


def _tube_corners(count: int) -> list[tuple[Point, float]]:
    """Joints of a section drawn in the round, each with how far back it lies."""
    corners = {
        2: [((96.0, 108.0), 0.0), ((96.0, 38.0), 0.0)],
        3: [((76.0, 102.0), 0.0), ((98.0, 30.0), 0.5), ((134.0, 114.0), 1.0)],
        4: [
            ((78.0, 92.0), 0.0),
            ((78.0, 26.0), 0.0),
            ((136.0, 50.0), 1.0),
            ((136.0, 116.0), 1.0),
        ],
    }
    return [((x, y), depth) for (x, y), depth in corners[count]]


def wrap_brace(framework: Framework) -> Picture:
    """A brace going round the long chains, knotted to each joint, its last end about to
    close."""
    colours = palette(framework)
    brace = framework.braces[0]
    corners = _tube_corners(len(brace.section))
    spots = dict(zip(brace.section, corners, strict=True))
    layers: list[tuple[float, list[Mark]]] = []
    for (x, y), depth in spots.values():
        pale = [
            *link((x - 50, y), (x - 1, y), 25, colours.chain, "done"),
            *link((x + 1, y), (x + 50, y), 25, colours.chain, "done"),
        ]
        layers.append((depth + 0.01, pale))
    marks_on_top: list[Mark] = []
    chain = brace.chains[0]
    walk = [*chain.joints, *(chain.joints[:1] if chain.closed else ())]
    for i in range(len(chain.links)):
        (a, da), (b, db) = spots[walk[i]], spots[walk[i + 1]]
        last = chain.closed and i == len(chain.links) - 1
        if last:
            far = (between(a, b, 0.86)[0] + 6, between(a, b, 0.86)[1] + 22)
            layers.append(((da + db) / 2, link(a, far, 23, colours.brace)))
            marks_on_top += move(
                [(far[0] - 4, far[1] - 2), (b[0] + 2, b[1] + 24), (b[0] - 2, b[1] + 14)]
            )
            marks_on_top += badge(between(a, far), str(i + 1))
        else:
            layers.append(((da + db) / 2, link(a, b, 23, colours.brace)))
            marks_on_top += badge(between(a, b), str(i + 1))
    layers.sort(key=lambda layer: -layer[0])
    marks = [mark for _, layer in layers for mark in layer]
    for joint, (spot, _) in spots.items():
        radius = joint_radius(framework)
        marks += joint_marks(spot, radius, joint, skipped=False, locked=False, repeat=False)
    marks += marks_on_top
    order = " to ".join(walk)
    return picture(
        marks,
        f"Brace {brace.number} goes round the long chains from joint to joint: {order}, knotted at "
        f"each. " + ("Its last end closes on its start." if chain.closed else ""),
    )


def settle_joint(framework: Framework) -> Picture:
    """A brace's knot beside the chain's knot, then settled on it so that nozzles cross."""
    colours = palette(framework)
    marks: list[Mark] = []
    y, reach, long, fat = 76.0, 9.0, 36.0, 30.0
    for x, off, word in (
        (49.0, (14.0, 10.0), "beside: push"),
        (170.0, (0.0, 0.0), "nozzles cross"),
    ):
        # the chain lies level, below; the brace stands across it, above
        marks += link((x - reach - long, y), (x - reach, y), fat, colours.chain)
        marks += link((x + reach, y), (x + reach + long, y), fat, colours.chain)
        marks += weave(
            [Strand(((x - reach - 1, y, 0), (x, y, 0), (x + reach + 1, y, 0)), colours.chain, 5)]
        )
        marks += knot((x, y), 0, colours.chain, 3.6)
        bx, by = x + off[0], y + off[1]
        marks += link((bx, by + reach + long), (bx, by + reach), fat, colours.brace)
        marks += link((bx, by - reach), (bx, by - reach - long), fat, colours.brace)
        nozzle = [(bx, by + reach + 1), (bx, by + 4), (bx, by - 4), (bx, by - reach - 1)]
        marks += rope(nozzle, 5, neck_colour(colours.brace), INK)
        marks += knot((bx, by), 90, colours.brace, 3.6)
        marks.append(words((x, 6), word))
    marks += move([(96, 122), (86, 112), (74, 97)])
    marks += move([(100, 76), (109, 76), (118, 76)])
    return picture(
        marks,
        "Left, the brace's knot beside the chain's knot. Right, the brace pushed on to the joint, "
        "so that its nozzles cross the chain's nozzles, brace over chain.",
    )


def _joint_from_front(x: float, y: float, chain: str, brace: str) -> list[Mark]:
    reach, long, fat = 3.5, 29.0, 22.0
    return [
        *link((x - reach - long, y), (x - reach, y), fat, chain, "done"),
        *link((x + reach, y), (x + reach + long, y), fat, chain, "done"),
        *link((x, y + reach + long), (x, y + reach), fat, brace, "done"),
        *link((x, y - reach), (x, y - reach - long), fat, brace, "done"),
        *knot((x, y), 20, mix(chain, PAPER, 0.5), 3.2),
    ]


def _twist_from_side(x: float, y: float, chain: str, lock: str) -> list[Mark]:
    """The joint seen along the brace: necks straddle it from behind and twist before it."""
    one = Strand(
        (
            (x, y - 11, 1),
            (x - 7, y - 6, 1),
            (x - 8, y + 3, 1),
            (x - 4, y + 9, 2),
            (x + 4, y + 14, 2),
            (x + 5, y + 18, -1),
            (x, y + 23, -1),
            (x - 7, y + 28, -1),
        ),
        lock,
        4.0,
    )
    two = Strand(
        (
            (x, y - 11, -1),
            (x + 7, y - 6, -1),
            (x + 8, y + 3, -1),
            (x + 4, y + 9, 0),
            (x - 4, y + 14, 0),
            (x - 5, y + 18, 0),
            (x, y + 23, 0),
            (x + 7, y + 28, 0),
        ),
        lock,
        4.0,
    )
    nozzle = Strand(((x - 8, y, 0), (x, y, 0), (x + 8, y, 0)), mix(chain, PAPER, 0.5), 5.0)
    return [
        *link((x - 35, y), (x - 6, y), 22, chain, "done"),
        *link((x + 6, y), (x + 35, y), 22, chain, "done"),
        *weave([nozzle, two, one]),
        *knot((x, y - 12), 0, lock, 2.6),
        *round_((x - 13, y + 34), (x - 5, y + 27), 18, lock),
        *round_((x + 13, y + 34), (x + 5, y + 27), 18, lock),
        *move([(x - 25, y + 46), (x, y + 51), (x + 25, y + 46)]),
        *badge((x, y + 56), "2"),
    ]


def twist_lock(framework: Framework) -> Picture:
    """A pair of small rounds put through the joint from behind and twisted in front."""
    colours = palette(framework)
    marks: list[Mark] = []
    y, lock = 72.0, colours.lock
    for x, word in ((37.0, "from behind"), (110.0, "from the side"), (183.0, "tight")):
        marks.append(words((x, 6), word))
        if word == "from the side":
            marks += _twist_from_side(x, 62.0, colours.chain, lock)
            continue
        out = 21.0 if word == "from behind" else 7.5
        if word == "from behind":
            neck = ((x - out, y + out, 0), (x, y, 0), (x + out, y - out, 0))
            marks += weave([Strand(neck, lock, 4.0)])
        marks += _joint_from_front(x, y, colours.chain, colours.brace)
        marks += round_((x - out, y + out), (x, y), 18, lock)
        marks += round_((x + out, y - out), (x, y), 18, lock)
        if word == "from behind":
            marks += move([(x - 12, y + 36), (x + 3, y + 36), (x + 14, y + 26)])
            marks += move([(x + 12, y - 36), (x - 3, y - 36), (x - 14, y - 26)])
    marks += badge((37, 128), "1")
    marks += badge((183, 128), "3")
    return picture(
        marks,
        "A lock. One: the pair's knot lies behind the joint, a round on each side, in opposite "
        "corners. Two, seen from the side: the necks straddle the joint and the two rounds are "
        "twisted round one another in front of it. Three: both sit tight on the joint.",
    )


def tie_single(framework: Framework) -> Picture:
    """A single from one skipped joint to its twin on the other side."""
    colours = palette(framework)
    single = framework.link[framework.singles[0]] if framework.singles else None
    start, finish = (single.start, single.finish) if single else ("", "")
    marks: list[Mark] = []
    front, back = (62.0, 40.0), (146.0, 102.0)
    for x, y in (back, front):
        marks += link((x - 54, y), (x - 1, y), 32, colours.chain, "done")
        marks += link((x + 1, y), (x + 54, y), 32, colours.chain, "done")
    radius = joint_radius(framework)
    marks += joint_marks(back, radius, finish, skipped=True, locked=False, repeat=False)
    near, far = between(front, back, 0.06), (128.0, 70.0)
    marks += link(near, far, 40, colours.brace)
    tail = Strand(((*far, 0), (134, 74, 0), (138, 82, 0)), colours.brace, 4.5)
    marks += weave([tail])
    marks += tail_end(tail)
    marks += move([(150, 72), (156, 80), (153, 89)])
    marks += joint_marks(front, radius, start, skipped=True, locked=False, repeat=False)
    marks += [
        words((158, 72), "tail: tie in here", "start"),
        words((62, 12), "neck: tied"),
    ]
    return picture(
        marks,
        f"A single, one link balloon, tied by its neck into joint {start} and by its tail into "
        f"joint {finish}, which no brace reaches. A lock goes on each end.",
    )
