"""The characters of a text side by side: what each is called, and the labels of its joints."""

from __future__ import annotations

from buildplan.patterns.flat_frames import flat_joints
from buildplan.patterns.letter_spacing import joiner
from buildplan.patterns.letter_strokes import BARS, SPACE
from buildplan.patterns.lettering import HEIGHTS, SIGN_OVER, glyph


def cells_high(height: float, link: float) -> int:
    """How many cells high letters about so high are, the lower of two as near; `link` is the length
    of a long link, in the same unit."""
    return min(HEIGHTS, key=lambda cells: abs((cells + SIGN_OVER) * link - height))


def characters(text: str, height: int) -> dict[str, str]:
    """The glyphs of a text `height` cells high from left to right, bars among them, by a name for
    each: its character, with a number where that comes again."""
    row: list[str] = []
    for word in text.split():
        row += [SPACE] if row else []
        for i, one in enumerate(word):
            row += [joiner(word[i - 1], one, height), one] if i else [one]
    plain = [{SPACE: "SPACE"}.get(one, "BAR" if one in BARS else one) for one in row]
    seen: dict[str, int] = {}
    named = {}
    for name, one in zip(plain, row, strict=True):
        seen[name] = seen.get(name, 0) + 1
        named[f"{name}-{seen[name]}" if plain.count(name) > 1 else name] = one
    return named


def letter_joints(text: str, height: int) -> list[str]:
    """The labels of all joints of letters `height` cells high, the front of each first."""
    found = []
    for name, one in characters(text, height).items():
        part = f"{name}." if len(text) > 1 else ""
        found += [f"{part}{joint}" for joint in flat_joints(glyph(one, height))]
    return found
