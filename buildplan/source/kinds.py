"""The codes of what can be wrong with a file."""

from __future__ import annotations

from enum import auto

from buildplan.source.problems import ProblemKind


class FileKind(ProblemKind):
    """What can be wrong with a design file, or another file of this program."""

    # the file as a whole
    NO_SUCH_FILE = auto()
    A_FOLDER = auto()
    NOT_ALLOWED = auto()
    UNREADABLE = auto()
    TOO_LARGE = auto()
    NOT_UTF8 = auto()
    NOT_TEXT = auto()
    NOT_YAML = auto()
    EMPTY_FILE = auto()
    TWO_DOCUMENTS = auto()
    NOT_A_MAPPING = auto()
    ANOTHER_KIND_OF_FILE = auto()
    NOT_A_DESIGN_FILE = auto()
    MORE_PROBLEMS = auto()
    # what YAML allows and a design does not
    TOO_DEEP = auto()
    ALIAS_OF_NOTHING = auto()
    ALIAS_OF_ITSELF = auto()
    TAG = auto()
    UNPRINTABLE = auto()
    LEADING_ZERO = auto()
    QUOTE_NOT_CLOSED = auto()
    CURLY_QUOTES = auto()
    DASH_NEEDS_SPACE = auto()
    COMMA_IN_NUMBER = auto()
    KEY_NO_TEXT = auto()
    KEY_TWICE = auto()
    MERGE_OF_NO_MAPPING = auto()
    # keys and values by themselves
    UNKNOWN_KEY = auto()
    KEY_MISSING = auto()
    EMPTY = auto()
    BLANK = auto()
    WRONG_FORM = auto()
    WRONG_TYPE = auto()
    WRONG_COUNT = auto()
    TOO_LONG = auto()
    OUT_OF_RANGE = auto()
    NOT_FINITE = auto()
    NO_UNITS = auto()
    # what keys name
    NO_SUCH_BALLOON = auto()
    WRONG_KIND_OF_BALLOON = auto()
    NO_SUCH_CONSTANT = auto()
    NO_SUCH_CURRENCY = auto()
    NO_SUCH_JOINT = auto()
    NO_SUCH_CHAIN = auto()
    NO_SUCH_PART = auto()
    LISTED_TWICE = auto()
    # balloons
    WAY_UP_TWICE = auto()
    GAUGE_OVER_NOMINAL = auto()
    MEASURED_TWICE = auto()
    ROUND_HAS_NO_LENGTH = auto()
    UNLIKELY_LENGTH = auto()
    # prices and packs
    PRICED_TWICE = auto()
    NO_PACK_SIZE = auto()
    UNLIKE_PACKS = auto()
    # patterns
    NO_PATTERN = auto()
    SEVERAL_PATTERNS = auto()
    TOO_MANY_BALLOONS = auto()
    TOO_MANY_JOINTS = auto()
    CHAIN_WITHOUT_BALLOON = auto()
    SINGLE_MISSING = auto()
    CELL_WITHOUT_ADVANCE = auto()
    CELL_GOES_ALL_ROUND = auto()
    JOINED_ALREADY = auto()
    SIDE_TOO_SHORT = auto()
    NOT_COMING_ROUND = auto()
    CELLS_OR_HEIGHT = auto()
    LETTER_TOO_LOW = auto()
    OPENING_AT_EDGE = auto()
    OPENINGS_MEET = auto()
    # pieces listed joint by joint
    AMBIGUOUS_LABEL = auto()
    TIED_TO_ITSELF = auto()
    LOOSE_JOINT = auto()
    FALLS_APART = auto()
    # colours
    NO_COLOUR_PATTERN_HERE = auto()
    NO_SUCH_PART_TO_COLOUR = auto()
    ONE_COLOUR_ORDER = auto()
    COLOUR_KEY_OUT_OF_PLACE = auto()
    NO_SPIRAL_HERE = auto()
    UNEVEN_PITCH = auto()
    UNEVEN_ROUND_RING = auto()
    # assemblies
    DESIGN_OR_BUILD = auto()
    NAME_TAKEN = auto()
    NO_NEXT_PART = auto()
    TWO_JOINTS_TO_NEXT = auto()
    PART_OF_ITSELF = auto()
    PART_UNREADABLE = auto()
    PART_HAS_PROBLEMS = auto()
    OTHER_UNITS = auto()
    OTHER_KIND_OF_BALLOON = auto()
    SAME_PART_TWICE = auto()
    TIED_ALREADY = auto()
    LOOSE_PART = auto()
