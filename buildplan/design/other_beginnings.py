"""What a designer can begin with that is no single tube: walls, columns, globes and the like."""

from __future__ import annotations

import re
import unicodedata

from buildplan.design.wishes import (
    USUAL_GAUGE,
    BuildLines,
    Wish,
    WishError,
    count_for,
    lock_line,
    to_gauge,
)
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.patterns.lettering import HEIGHTS, SIGN_OVER, can_draw

WALL_CELLS = range(3, 13)
COLUMN_RINGS = range(3, 17)
# Height of a column of six around, in tie-to-tie lengths: with no ring, and for each ring.
COLUMN_AT = (0.01, 0.861)
GLOBE_ACROSS = 3.84
# An entrance: two columns of four around with an arch on top. Height in tie-to-tie lengths with no
# ring in the columns and for each; the rings are odd, so that the upper lies as the lowest.
ENTRANCE_RINGS = (3, 5, 7, 9)
ENTRANCE_AT = (3.03, 0.846)
ENTRANCE_LEG, ENTRANCE_SPAN = 2, 6
MOST_LETTERS = 12


def wall(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    """A wall about as wide as was asked for."""
    cells = count_for(wish, size, 7, WALL_CELLS, lambda count: 0.87 + count)
    return BuildLines(
        (
            "wall:",
            f"  across: {cells}       # {voice.say('square cells from side to side')}",
            f"  up: {cells}           # {voice.say('and from the floor up')}",
            "  layers: 2",
            f"  row: long       # {voice.say('the level rows')}",
            "  upright: cross",
            f"  between: cross  # {voice.say('from the front layer to the back')}",
            lock_line(voice),
            f"  # {voice.say('What is left out, in cells; up: 0 makes a doorway of it.')}",
            "  # openings: [{along: 2, up: 3, wide: 3, high: 2}]",
        )
    )


def column(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    """A column about as high as was asked for."""
    rings = count_for(
        wish, size, 9, COLUMN_RINGS, lambda count: COLUMN_AT[0] + COLUMN_AT[1] * count
    )
    return BuildLines(
        (
            "column:",
            f"  around: 6       # {voice.say('balloons in each ring')}",
            f"  rings: {rings}        # {voice.say('stacked, the lowest on the floor')}",
            "  ring: long",
            f"  between: cross  # {voice.say('zigzags between two rings')}",
            lock_line(voice),
        )
    )


def globe(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    """The globe, which has one size for each gauge."""
    gauge = USUAL_GAUGE[wish.units] if wish.gauge is None else wish.gauge
    count_for(wish, size, 1, (1,), lambda _: GLOBE_ACROSS)
    short = voice.say("sized smaller, about the points where five balloons meet")
    return BuildLines(
        (
            f"globe:           # {voice.say('80 triangles')}",
            "  long: long",
            f"  short: cross    # {short}",
            lock_line(voice),
        ),
        cross_gauge=to_gauge(gauge * 7 / 8, wish.units),
    )


def entrance(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    """Two columns with an arch on top of them."""
    rings = count_for(
        wish, size, 5, ENTRANCE_RINGS, lambda count: ENTRANCE_AT[0] + ENTRANCE_AT[1] * count
    )
    column = f"{{column: {{around: 4, rings: {rings}, ring: long, between: cross, lock: lock}}}}"
    arch = (
        f"{{arch: {{kind: square, leg: {ENTRANCE_LEG}, span: {ENTRANCE_SPAN}, long: long, "
        "brace: cross, lock: lock}}"
    )
    word = "{letters: {text: HI, cells: 5, long: long, brace: cross, bar: cross, lock: lock}}"
    return BuildLines(
        (
            "assembly:",
            "  parts:",
            f"    # {voice.say('the left column, the right one, and the arch on top of them')}",
            f"    - {{name: L, build: {column}}}",
            f"    - {{name: R, build: {column}}}",
            f"    - {{name: T, on: [L, R], build: {arch}}}",
            f"    # {voice.say('letters on the arch: take away the # before them')}",
            f"    # - {{name: S, on: T, build: {word}}}",
            lock_line(voice),
        )
    )


def sign(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    """The name of the piece in letters."""
    plain = unicodedata.normalize("NFKD", wish.name).encode("ascii", "ignore").decode().upper()
    text = " ".join(re.findall(r"[A-Z0-9]+", plain))[:MOST_LETTERS].strip()
    if not text:
        raise WishError(message("a sign says its name, in letters from A to Z and digits"), "name")
    heights = [
        cells for cells in HEIGHTS if all(can_draw(one, cells) for one in text if one != " ")
    ]
    cells = count_for(
        wish, size, heights[min(1, len(heights) - 1)], heights, lambda n: SIGN_OVER + n
    )
    bars = voice.say("low bars between the letters keep a word one piece")
    return BuildLines(
        (
            "letters:",
            f'  text: "{text}"',
            f"  cells: {cells}        # {voice.say('how many cells high')}",
            "  long: long",
            "  brace: cross",
            f"  bar: cross      # {bars}",
            lock_line(voice),
        )
    )
