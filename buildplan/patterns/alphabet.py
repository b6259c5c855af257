"""The alphabet: the strokes of every letter and digit that there is, and of the bars between."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.patterns.letter_strokes import (
    JOINERS,
    SPACE,
    Bend,
    Heading,
    Itself,
    LetterSize,
    Stroke,
    cells,
    left_of,
    right_of,
    second_left_of,
    stroke,
)

HEIGHT, BETWEEN, BAR = cells(LetterSize.HEIGHT), cells(LetterSize.BETWEEN), cells(LetterSize.BAR)
HALF_BAR, SHORT_BAR, SERIF = (
    cells(LetterSize.HALF_BAR),
    cells(LetterSize.SHORT_BAR),
    cells(LetterSize.SERIF),
)
ROUND, TALL_ROUND = cells(LetterSize.ROUND), cells(LetterSize.TALL_ROUND)
LEG, STEM, SLOPE = cells(LetterSize.LEG), cells(LetterSize.STEM), cells(LetterSize.SLOPE)
ARM, DIAGONAL = cells(LetterSize.ARM), cells(LetterSize.DIAGONAL)
FAN_RIGHT, FAN_LEFT = Bend.FAN_RIGHT, Bend.FAN_LEFT
RIGHT, LEFT = Bend.CORNER_RIGHT, Bend.CORNER_LEFT
UP, DOWN, LEFTWARDS, RIGHTWARDS = Heading.UP, Heading.DOWN, Heading.LEFTWARDS, Heading.RIGHTWARDS
UP_RIGHT, DOWN_STEEPLY = Heading.UP_RIGHT, Heading.DOWN_STEEPLY
ITS_START = Itself.START

# turned half round
HALF_ROUND = (FAN_RIGHT, ROUND, FAN_RIGHT, ROUND, FAN_RIGHT)
TALL_HALF_ROUND = (FAN_RIGHT, TALL_ROUND, FAN_RIGHT, TALL_ROUND, FAN_RIGHT)
HALF_ROUND_LEFT = (FAN_LEFT, ROUND, FAN_LEFT, ROUND, FAN_LEFT)
BOX = (BAR, RIGHT, HEIGHT - 2, RIGHT, BAR, RIGHT, HEIGHT - 2, RIGHT)
SLIM_BOX = (SERIF, RIGHT, HEIGHT - 2, RIGHT, SERIF, RIGHT, HEIGHT - 2, RIGHT)
# a stem by itself would fall over
FEET = (stroke(right_of(0, 0), 1), stroke(left_of(0, 0), 1))

GLYPHS: Mapping[str, tuple[Stroke, ...]] = {
    "A": (
        stroke(UP, HEIGHT - 1, RIGHT, BAR, RIGHT, HEIGHT - 1),
        stroke(right_of(0, BETWEEN + 1), BAR, end=right_of(0, BAR + 3 * BETWEEN + 4)),
    ),
    "B": (
        stroke(UP, HEIGHT),
        stroke(right_of(0, 0), BAR, LEFT, BETWEEN, LEFT, BAR, end=right_of(0, BETWEEN + 1)),
        stroke(
            right_of(0, HEIGHT - 1), BAR - 1, RIGHT, BETWEEN, end=right_of(1, BAR + BETWEEN + 2)
        ),
    ),
    "C": (stroke(LEFTWARDS, BAR, LEFT, HEIGHT - 2, LEFT, BAR),),
    "D": (
        stroke(UP, HEIGHT),
        stroke(
            right_of(0, HEIGHT - 1),
            SHORT_BAR,
            *TALL_HALF_ROUND,
            SHORT_BAR,
            end=right_of(0, 0),
        ),
    ),
    "E": (
        stroke(LEFTWARDS, BAR, LEFT, HEIGHT - 2, LEFT, BAR),
        stroke(left_of(0, BAR + BETWEEN + 1), BAR),
    ),
    "F": (
        stroke(UP, HEIGHT - 1, RIGHT, BAR),
        stroke(right_of(0, BETWEEN + 1), BAR),
        *FEET,
    ),
    "G": (stroke(LEFTWARDS, BAR, LEFT, HEIGHT - 2, LEFT, BAR, LEFT, BETWEEN, LEFT, HALF_BAR),),
    "H": (
        stroke(UP, HEIGHT),
        stroke(right_of(0, BETWEEN + 1), BAR, 1),
        stroke(left_of(1, BAR), BETWEEN + 1),
        stroke(right_of(1, BAR), BETWEEN + 1),
    ),
    "I": (
        stroke(RIGHTWARDS, SERIF, 1, SERIF),
        stroke(left_of(0, SERIF), HEIGHT - 2, 1),
        stroke(left_of(1, -1), SERIF),
        stroke(right_of(1, -1), SERIF),
    ),
    "J": (stroke(DOWN, HEIGHT - 1, RIGHT, BAR, RIGHT, SERIF),),
    "K": (
        stroke(UP, HEIGHT),
        stroke(right_of(0, BETWEEN + 1), 1, FAN_RIGHT, LEG),
        stroke(left_of(1, 1), LEG),
        *FEET,
    ),
    "L": (stroke(DOWN, HEIGHT - 1, LEFT, BAR),),
    "M": (
        stroke(UP, HEIGHT - 1, RIGHT, HALF_BAR, 1, HALF_BAR, RIGHT, HEIGHT - 1),
        stroke(right_of(0, HEIGHT + HALF_BAR), BETWEEN + 1),
    ),
    "N": (stroke(UP, STEM, *HALF_ROUND, STEM),),
    "O": (stroke(RIGHTWARDS, *BOX, end=ITS_START),),
    "P": (
        stroke(UP, HEIGHT),
        # no wider above than its foot is below: what stands beside it is tied to its foot
        stroke(
            right_of(0, HEIGHT - 1),
            SHORT_BAR,
            RIGHT,
            BETWEEN,
            RIGHT,
            SHORT_BAR,
            end=right_of(0, BETWEEN + 1),
        ),
        *FEET,
    ),
    "Q": (
        stroke(RIGHTWARDS, *BOX, end=ITS_START),
        stroke(left_of(0, BAR + HEIGHT - 1), 1),
    ),
    "R": (
        stroke(UP, HEIGHT),
        stroke(
            right_of(0, HEIGHT - 1), BAR, RIGHT, BETWEEN, RIGHT, BAR, end=right_of(0, BETWEEN + 1)
        ),
        stroke(left_of(1, BAR + BETWEEN + 2), BETWEEN + 1),
    ),
    "S": (stroke(LEFTWARDS, SHORT_BAR, *HALF_ROUND_LEFT, SHORT_BAR, *HALF_ROUND, SHORT_BAR),),
    "T": (
        # its bar reaches out over its feet: else it would be an I
        stroke(RIGHTWARDS, SERIF + 1, 1, SERIF + 1),
        stroke(right_of(0, SERIF + 1), HEIGHT - 2, 1),
        stroke(left_of(1, -1), SERIF),
        stroke(right_of(1, -1), SERIF),
    ),
    "U": (stroke(DOWN, HEIGHT - 1, LEFT, BAR, LEFT, HEIGHT - 1),),
    "V": (stroke(DOWN_STEEPLY, SLOPE, FAN_LEFT, 1, FAN_LEFT, SLOPE),),
    "W": (
        stroke(DOWN, HEIGHT - 1, LEFT, HALF_BAR, 1, HALF_BAR, LEFT, HEIGHT - 1),
        stroke(left_of(0, HEIGHT + HALF_BAR), BETWEEN + 1),
    ),
    "X": (
        stroke(UP_RIGHT, ARM, 1, ARM),
        stroke(left_of(0, ARM), ARM),
        stroke(right_of(0, ARM), ARM),
    ),
    "Y": (
        stroke(UP, BETWEEN + 1, FAN_RIGHT, 1, FAN_LEFT, BETWEEN),
        stroke(left_of(0, BETWEEN + 1), 1, FAN_RIGHT, BETWEEN),
        *FEET,
    ),
    "Z": (stroke(RIGHTWARDS, BAR, FAN_RIGHT, 1, FAN_RIGHT, DIAGONAL, FAN_LEFT, 1, FAN_LEFT, BAR),),
    "0": (stroke(RIGHTWARDS, *SLIM_BOX, end=ITS_START),),
    "1": (
        stroke(RIGHTWARDS, SERIF, 1, SERIF),
        stroke(left_of(0, SERIF), HEIGHT - 2, LEFT, 1),
    ),
    "2": (
        stroke(RIGHTWARDS, SHORT_BAR, *HALF_ROUND, SHORT_BAR, LEFT, BETWEEN, LEFT, SHORT_BAR, 1),
    ),
    "3": (
        stroke(RIGHTWARDS, BAR, 1, *HALF_ROUND, SHORT_BAR),
        stroke(left_of(0, BAR + 2 * ROUND + 3), ROUND, FAN_RIGHT, ROUND, FAN_RIGHT, BAR, 1),
    ),
    "4": (
        stroke(DOWN, BETWEEN + 1, LEFT, BAR, 1, 1),
        stroke(left_of(0, BETWEEN + BAR + 2), BETWEEN + 1),
        stroke(right_of(0, BETWEEN + BAR + 2), BETWEEN, 1),
        stroke(left_of(2, -1), SERIF),
        stroke(right_of(2, -1), SERIF),
    ),
    "5": (stroke(LEFTWARDS, SHORT_BAR, 1, LEFT, BETWEEN, LEFT, SHORT_BAR, *HALF_ROUND, SHORT_BAR),),
    "6": (
        stroke(
            LEFTWARDS,
            BAR,
            LEFT,
            HEIGHT - 2,
            LEFT,
            BAR,
            LEFT,
            BETWEEN,
            LEFT,
            BAR,
            end=left_of(0, BAR + BETWEEN + 1),
        ),
    ),
    "7": (
        stroke(RIGHTWARDS, BAR, RIGHT, HEIGHT - 2, 1),
        stroke(right_of(0, -1), SERIF),
        stroke(left_of(0, -1), SERIF),
    ),
    "8": (
        stroke(RIGHTWARDS, *BOX, end=ITS_START),
        stroke(
            right_of(0, 2 * BAR + HEIGHT + BETWEEN + 1), BAR, end=right_of(0, BAR + BETWEEN + 1)
        ),
    ),
    "9": (
        stroke(RIGHTWARDS, BAR, RIGHT, BETWEEN, RIGHT, BAR, RIGHT, BETWEEN, RIGHT, end=ITS_START),
        stroke(second_left_of(0, BAR + BETWEEN + 1), BETWEEN, RIGHT, BAR),
    ),
    SPACE: (stroke(RIGHTWARDS, BAR),),
    **{bar: (stroke(RIGHTWARDS, len(bar)),) for bar in JOINERS},
}
