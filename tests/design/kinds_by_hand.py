"""The kinds of problems whose advice is followed by hand."""

from __future__ import annotations

from buildplan.business.buying.money import MoneyKind
from buildplan.business.copies.brand import BrandKind
from buildplan.sequence.reach import ReachKind
from buildplan.shape.kinds import ShapeKind
from buildplan.source.kinds import FileKind as K
from buildplan.source.problems import ProblemKind

# Advice that names no change of the file: what to do to the file as a whole, a choice that only a
# person can make, or what to do with the balloons in hand.
BY_HAND: frozenset[ProblemKind] = frozenset(
    (
        # a file that cannot be read has no place to change
        *(K.NO_SUCH_FILE, K.A_FOLDER, K.NOT_ALLOWED, K.UNREADABLE, K.TOO_LARGE, K.NOT_UTF8),
        *(K.NOT_TEXT, K.NOT_YAML, K.EMPTY_FILE, K.TWO_DOCUMENTS, K.NOT_A_MAPPING),
        *(K.ANOTHER_KIND_OF_FILE, K.NOT_A_DESIGN_FILE, K.MORE_PROBLEMS, K.TOO_DEEP),
        *(K.ALIAS_OF_NOTHING, K.ALIAS_OF_ITSELF, K.TAG, K.UNPRINTABLE, K.LEADING_ZERO),
        *(K.QUOTE_NOT_CLOSED, K.CURLY_QUOTES, K.DASH_NEEDS_SPACE, K.KEY_NO_TEXT, K.KEY_TWICE),
        *(K.MERGE_OF_NO_MAPPING,),
        # what belongs there only a person knows
        *(K.EMPTY, K.BLANK, K.WRONG_COUNT, K.TOO_LONG, K.NOT_FINITE, K.NO_UNITS),
        *(K.UNLIKELY_LENGTH, K.NO_PACK_SIZE, K.NO_PATTERN, K.SEVERAL_PATTERNS),
        *(K.TOO_MANY_BALLOONS, K.TOO_MANY_JOINTS, K.OPENINGS_MEET, K.AMBIGUOUS_LABEL),
        *(K.TIED_TO_ITSELF, K.FALLS_APART, K.NO_COLOUR_PATTERN_HERE, K.NO_SUCH_PART_TO_COLOUR),
        *(K.ONE_COLOUR_ORDER, K.NO_SPIRAL_HERE, K.DESIGN_OR_BUILD),
        *(
            K.TWO_JOINTS_TO_NEXT,
            K.PART_OF_ITSELF,
            K.PARTS_TOO_DEEP,
            K.PART_UNREADABLE,
            K.PART_HAS_PROBLEMS,
        ),
        *(K.OTHER_UNITS, K.OTHER_KIND_OF_BALLOON, K.SAME_PART_TWICE, K.TIED_ALREADY),
        *(K.ONE_PLACE_FOR_SEVERAL, K.NO_SUCH_SIDE, K.CELL_IN_THE_WAY),
        *MoneyKind,
        *BrandKind,
        ShapeKind.TIED_TOO_FAR_ACROSS,
        ShapeKind.TIED_TOO_MANY_AT_ONE,
        # on the day, with the balloons in hand
        *(ShapeKind.SAGS, ShapeKind.MAY_NOT_HOLD_ITSELF, ShapeKind.TIPS_IN_A_DRAUGHT),
        # how many rings a column has, or what stands on what
        ShapeKind.LEANS,
        # the number that is told is tried in tests/framework/test_beside.py
        ShapeKind.NOT_SO_LOW,
        *(ShapeKind.KEPT_BY_ITS_LOCKS, ShapeKind.OTHER_SHAPES_UNSOUGHT),
        *ReachKind,
    )
)
