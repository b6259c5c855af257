"""The characters of a text side by side: what each is called, and the labels of its joints."""

from __future__ import annotations

from buildplan.framework.naming import letters
from buildplan.patterns.letter_strokes import JOINER, SPACE
from buildplan.patterns.lettering import HEIGHTS, Glyph, glyph


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
