"""Letters and digits as joined tubes: our own strokes, and the cells that they are laid in.

A character is a graph of strokes. A stroke is a tube's course seen from the front: it starts at a
free end, or at a side of a cell of an earlier stroke, and may end at one. Its cells are those of
any course (`s` straight, `f` a fan and `t` a corner to the right, `i` and `l` the same to the
left). Where a stroke meets another it shares the two joints of that side, front and back: a
square cell with strokes on three sides is a T, on four an X, a fan with one on each side a Y.

Characters are 2 u + 3 cells high: three level bars, and u cells between two of them. Round ones
turn half round by three fans with k cells between two of them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache

from buildplan.framework.naming import letters

HEIGHTS = (5, 7, 9, 11, 13)
NARROW = frozenset("BMRW")  # stems that would run into one another in 5 cells
# a low bar keeps a word one piece: a short one between two letters, a long one for a space
SPACE, JOINER = "_", "-"
BARS = frozenset({SPACE, JOINER})

# advance of the left and of the right side, and the turn to the left
_TURN_60, _TURN_90 = complex(0.5, 0.75**0.5), 1j
STEPS: Mapping[str, tuple[int, int, complex]] = {
    "s": (1, 1, 1),
    "f": (1, 0, _TURN_60.conjugate()),
    "i": (0, 1, _TURN_60),
    "t": (2, 0, _TURN_90.conjugate()),
    "l": (0, 2, _TURN_90),
}
_HEADINGS: Mapping[str, complex] = {
    "^": 1j,
    ">": 1,
    "v": -1j,
    "<": -1,
    "/": complex(0.5**0.5, 0.5**0.5),
    "\\": _TURN_60.conjugate(),
}

# Each stroke: where it starts (a heading, or a side), its cells, and the side it ends at if it
# does. A side is stroke:cell and L or R (M the second side of a corner); cells count from 0, or
# back from -1.
GLYPHS: Mapping[str, tuple[str, ...]] = {
    "A": ("^ s*H-1,t,s*w,t,s*H-1", "0:u+1R s*w 0:w+3u+4R"),
    "B": ("^ s*H", "0:0R s*w,l,s*u,l,s*w 0:u+1R", "0:H-1R s*w-1,t,s*u 1:w+u+2R"),
    "C": ("< s*w,l,s*H-2,l,s*w",),
    "D": ("^ s*H", "0:H-1R s*a,f,s*m,f,s*m,f,s*a 0:0R"),
    "E": ("< s*w,l,s*H-2,l,s*w", "0:w+u+1L s*w"),
    "F": ("^ s*H-1,t,s*w", "0:u+1R s*w", "0:0R s", "0:0L s"),
    "G": ("< s*w,l,s*H-2,l,s*w,l,s*u,l,s*g",),
    "H": ("^ s*H", "0:u+1R s*w,s", "1:wL s*u+1", "1:wR s*u+1"),
    "I": ("> s*j,s,s*j", "0:jL s*H-2,s", "1:-1L s*j", "1:-1R s*j"),
    "J": ("v s*H-1,t,s*w,t,s*j",),
    "K": ("^ s*H", "0:u+1R s,f,s*d", "1:1L s*d", "0:0R s", "0:0L s"),
    "L": ("v s*H-1,l,s*w",),
    "M": ("^ s*H-1,t,s*g,s,s*g,t,s*H-1", "0:H+gR s*u+1"),
    "N": ("^ s*q,f,s*k,f,s*k,f,s*q",),
    "O": ("> s*w,t,s*H-2,t,s*w,t,s*H-2,t 0:start",),
    "P": ("^ s*H", "0:H-1R s*a,f,s*k,f,s*k,f,s*a 0:u+1R", "0:0R s", "0:0L s"),
    "Q": ("> s*w,t,s*H-2,t,s*w,t,s*H-2,t 0:start", "0:w+H-1L s"),
    "R": ("^ s*H", "0:H-1R s*w,t,s*u,t,s*w 0:u+1R", "1:w+u+2L s*u+1"),
    "S": ("< s*a,i,s*k,i,s*k,i,s*a,f,s*k,f,s*k,f,s*a",),
    "T": ("> s*g,s,s*g", "0:gR s*H-2,s", "1:-1L s*j", "1:-1R s*j"),
    "U": ("v s*H-1,l,s*w,l,s*H-1",),
    "V": ("\\ s*v,i,s,i,s*v",),
    "W": ("v s*H-1,l,s*g,s,s*g,l,s*H-1", "0:H+gL s*u+1"),
    "X": ("/ s*x,s,s*x", "0:xL s*x", "0:xR s*x"),
    "Y": ("^ s*u+1,f,s,i,s*u", "0:u+1L s,f,s*u", "0:0R s", "0:0L s"),
    "Z": ("> s*w,f,s,f,s*z-1,i,s,i,s*w",),
    "0": ("> s*j,t,s*H-2,t,s*j,t,s*H-2,t 0:start",),
    "1": ("> s*j,s,s*j", "0:jL s*H-2,l,s"),
    "2": ("> s*a,f,s*k,f,s*k,f,s*a,l,s*u,l,s*a,s",),
    "3": ("> s*w,s,f,s*k,f,s*k,f,s*a", "0:w+2k+3L s*k,f,s*k,f,s*w,s"),
    "4": (
        "v s*u+1,l,s*w,s,s",
        "0:u+w+2L s*u+1",
        "0:u+w+2R s*u,s",
        "2:-1L s*j",
        "2:-1R s*j",
    ),
    "5": ("< s*a,s,l,s*u,l,s*a,f,s*k,f,s*k,f,s*a",),
    "6": ("< s*w,l,s*H-2,l,s*w,l,s*u,l,s*w 0:w+u+1L",),
    "7": ("> s*w,t,s*H-2,s", "0:-1R s*j", "0:-1L s*j"),
    "8": ("> s*w,t,s*H-2,t,s*w,t,s*H-2,t 0:start", "0:2w+H+u+1R s*w 0:w+u+1R"),
    "9": ("> s*w,t,s*u,t,s*w,t,s*u,t 0:start", "0:w+u+1M s*u,t,s*w"),
    SPACE: ("> s*w",),
    JOINER: ("> s",),
}


@dataclass(frozen=True)
class Glyph:
    """A character's front, drawn with links of length 1, its lowest joint at height 0.

    Joints are numbers into `at`. `loops` are its outlines as rings of joints, clockwise, the
    outer one first; `rungs` the sides that two cells share, in the order of the strokes.
    """

    at: tuple[complex, ...]
    loops: tuple[tuple[int, ...], ...]
    rungs: tuple[tuple[int, int], ...]


@dataclass
class _Drawing:
    """Joints as they are laid; `same` leads from a joint to the one that it is after all."""

    at: list[complex] = field(default_factory=list)
    same: list[int] = field(default_factory=list)
    # of each stroke, the joints of each cell on the left and on the right, in order
    cells: list[list[tuple[list[int], list[int]]]] = field(default_factory=list)

    def joint(self, at: complex) -> int:
        self.at.append(at)
        self.same.append(len(self.same))
        return len(self.at) - 1

    def find(self, joint: int) -> int:
        while self.same[joint] != joint:
            joint = self.same[joint]
        return joint

    def merge(self, one: int, other: int) -> None:
        one, other = sorted((self.find(one), self.find(other)))
        self.same[other] = one


def sizes(height: int) -> Mapping[str, int]:
    """What the strokes' letters stand for in characters `height` cells high."""
    u = (height - 3) // 2
    w = u if u % 2 else u + 1
    return {
        "H": height,
        "u": u,
        "w": w,  # cells within a bar
        "g": (w - 1) // 2,
        "j": max(1, (w - 1) // 2),
        "a": max(1, w - 1),
        "k": max(1, round(u / 3**0.5)),
        "m": max(1, round((2 * u + 1) / 3**0.5)),
        "d": round((u + 1.5) / 0.866) - 1,
        "q": height - 1 - (max(1, round(u / 3**0.5)) + 1) // 2,
        "v": round((height - 1.366) / 0.866),
        "x": round((height * 2**0.5 - 2) / 2),
        "z": round((height - 2) / 0.866) - 1,
    }


def cells_high(height: float, link: float) -> int:
    """How many cells high letters about so high are; `link` is the length of a long link, in the
    same unit."""
    return min(HEIGHTS, key=lambda cells: abs(cells * link - height))


def characters(text: str) -> dict[str, str]:
    """The glyphs of a text from left to right, bars among them, by a name for each: its
    character, with a number where that comes again."""
    words = ("".join(f"{one}{JOINER}" for one in word)[:-1] for word in text.split())
    row = SPACE.join(words)
    seen: dict[str, int] = {}
    named = {}
    for one in row:
        seen[one] = seen.get(one, 0) + 1
        name = {SPACE: "SPACE", JOINER: "BAR"}.get(one, one)
        named[f"{name}-{seen[one]}" if row.count(one) > 1 else name] = one
    return named


def front_chains(drawn: Glyph) -> list[list[str]]:
    """The labels of the joints of a character's outlines, front only, ring by ring."""
    return [
        [f"{letters(ring)}{place + 1}" for place in range(len(loop))]
        for ring, loop in enumerate(drawn.loops)
    ]


def letter_joints(text: str, height: int) -> list[str]:
    """The labels of all joints of letters `height` cells high, the front of each first."""
    found = []
    for name, one in characters(text).items():
        drawn = glyph(one, height)
        own = front_chains(drawn)
        rings = [len(ring) for ring in own]
        back = [
            f"{letters(len(own) + i)}{place + 1}"
            for i, count in enumerate(reversed(rings))
            for place in range(count)
        ]
        part = f"{name}." if len(text) > 1 else ""
        found += [f"{part}{joint}" for joint in (*(j for ring in own for j in ring), *back)]
    return found


def can_draw(character: str, height: int) -> bool:
    """Whether there is a character of that name and height."""
    return character in GLYPHS and (character not in NARROW or height > HEIGHTS[0])


@cache
def glyph(character: str, height: int) -> Glyph:
    """A character of GLYPHS, `height` cells high (one of HEIGHTS)."""
    size = sizes(height)
    drawing = _Drawing()
    for stroke in GLYPHS[character]:
        _lay(drawing, stroke.split(" "), size)
    return _outlined(drawing)


def _number(words: str, size: Mapping[str, int]) -> int:
    """The value of a sum such as `2w+H-1`."""
    found = re.findall(r"([+-]?)(\d*)([A-Za-z]?)", words)
    return sum(
        (-1 if sign == "-" else 1) * int(count or 1) * (size[name] if name else 1)
        for sign, count, name in found
        if count or name
    )


def _lay(drawing: _Drawing, stroke: Sequence[str], size: Mapping[str, int]) -> None:
    start, course, *end = stroke
    if start in _HEADINGS:
        heading = _HEADINGS[start]
        left, right = drawing.joint(0.5j * heading), drawing.joint(-0.5j * heading)
    else:
        left, right = _side(drawing, start, size)
        heading = (drawing.at[left] - drawing.at[right]) / 1j
        heading /= abs(heading)
    first = (left, right)
    cells: list[tuple[list[int], list[int]]] = []
    drawing.cells.append(cells)
    for item in course.split(","):
        name, _, times = item.partition("*")
        for _ in range(_number(times, size) if times else 1):
            lefts, rights = _cell(drawing, left, right, name, heading)
            cells.append((lefts, rights))
            left, right, heading = lefts[-1], rights[-1], heading * STEPS[name][2]
    if end:
        there = first if end[0] == "0:start" else _side(drawing, end[0], size)[::-1]
        drawing.merge(left, there[0])
        drawing.merge(right, there[1])


def _cell(
    drawing: _Drawing, left: int, right: int, name: str, heading: complex
) -> tuple[list[int], list[int]]:
    """Lay one cell: the joints along its left and its right side, the first two its start."""
    on_left, on_right, turn = STEPS[name]
    at_left, at_right = drawing.at[left], drawing.at[right]
    if on_left and on_right:
        return [left, drawing.joint(at_left + heading)], [right, drawing.joint(at_right + heading)]
    pivot, out = (at_right, at_left) if on_left else (at_left, at_right)
    end = pivot + (out - pivot) * turn
    steps = [end] if on_left + on_right == 1 else [out + end - pivot, end]
    laid = [drawing.joint(at) for at in steps]
    return ([left, *laid], [right]) if on_left else ([left], [right, *laid])


def _side(drawing: _Drawing, words: str, size: Mapping[str, int]) -> tuple[int, int]:
    """The joints of a cell's side, to the left and to the right of whoever goes out by it."""
    stroke, _, cell = words.partition(":")
    lefts, rights = drawing.cells[int(stroke)][_number(cell[:-1], size)]
    if cell[-1] == "R":
        return rights[1], rights[0]
    first = 1 if cell[-1] == "M" else 0
    return lefts[first], lefts[first + 1]


def _outlined(drawing: _Drawing) -> Glyph:
    """The outlines and rungs of what was laid: sides of one cell, and of two."""
    count: dict[tuple[int, int], int] = {}
    for lefts, rights in (cell for cells in drawing.cells for cell in cells):
        # round the cell, clockwise as seen from the front
        corners = [drawing.find(joint) for joint in (*lefts, *reversed(rights))]
        for side in zip(corners, [*corners[1:], corners[0]], strict=True):
            count[side] = count.get(side, 0) + 1
    rungs: list[tuple[int, int]] = []
    for a, b in count:
        if (b, a) in count and (b, a) not in rungs:
            rungs.append((a, b))
    following = {a: b for a, b in count if (b, a) not in count}
    kept = sorted({joint for side in count for joint in side})
    low = min(drawing.at[joint].imag for joint in kept)
    left = min(drawing.at[joint].real for joint in kept)
    number = {joint: i for i, joint in enumerate(kept)}
    at = tuple(drawing.at[joint] - complex(left, low) for joint in kept)
    loops = sorted(_loops(following, number, at), key=lambda loop: -_area(loop, at))
    return Glyph(
        at,
        tuple(loops),
        tuple((number[a], number[b]) for a, b in rungs),
    )


def _loops(
    following: Mapping[int, int], number: Mapping[int, int], at: Sequence[complex]
) -> Iterator[tuple[int, ...]]:
    """Rings of joints, each from its lowest joint on the left."""
    left = dict(following)
    while left:
        start = next(iter(left))
        ring = [start]
        joint = left.pop(start)
        while joint != start:
            ring.append(joint)
            joint = left.pop(joint)
        numbers = [number[joint] for joint in ring]
        first = min(
            range(len(ring)),
            key=lambda i: (round(at[numbers[i]].imag, 3), round(at[numbers[i]].real, 3)),
        )
        yield (*numbers[first:], *numbers[:first])


def _area(loop: Sequence[int], at: Sequence[complex]) -> float:
    """The area within a ring that runs clockwise; of a hole, less than 0 (shoelace formula)."""
    ends = zip(loop, (*loop[1:], loop[0]), strict=True)
    return -0.5 * sum((at[a].conjugate() * at[b]).imag for a, b in ends)
