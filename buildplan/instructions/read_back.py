"""The messages of steps that are read back before they are printed: what is tied, in which colours,
and where. Whoever says one of these says it from here."""

from __future__ import annotations

from buildplan.language.messages import mark, mark_count

# --- rows -----------------------------------------------------------------------------------

ROW = mark("{name}: {words}")
COLOURED_ROW = mark("{name} ({colour}): {words}")
CHAIN = mark_count(
    "{number} balloon ({order}), joints {joints}", "{number} balloons ({order}), joints {joints}"
)
AS_BELOW = mark("in sections as below")
AS_CHAIN = mark("in sections as chain {letter}")
SECTION_OF_ONE = mark("{name}, balloon {number} ({order})")
SECTION = mark("{name}, balloons {first} to {last} ({order})")
AND_BACK = mark("{first} to {last} and back to {back_to}")
AND_ANOTHER = mark("{way}; and {other}")
SHARES = mark("{way}, shares {links}")
RING = mark_count("closed at {joint}, {number} balloon", "closed at {joint}, {number} balloons")
THEN_LOCKED = mark("{joint}; then lock it")
TIED_BY_LOCK = mark("one lock round all")
KNOTS = mark_count("knot of {chains}", "knots of {chains}")
FREE_ENDS = mark_count("free end of {chains}", "free ends of {chains}")
PASSES = mark("chain {letter}")
PASSES_OFTEN = mark_count("chain {letter} ({number} time)", "chain {letter} ({number} times)")
BALLOON_END = mark("balloon {link}")
LINK_PAIRS = mark_count(
    "{number} pair, {first} with {second}", "{number} pairs, {first} with {second}"
)
LOCK_PAIRS = mark_count("{number} lock, {colour} rounds", "{number} locks, {colour} rounds")
TIED_OFF = mark_count(
    "{number} {colour} balloon tied off alone", "{number} {colour} balloons tied off alone"
)
SHORT_CHAINS = mark_count(
    "{number} chain of {length} {colour} balloons", "{number} chains of {length} {colour} balloons"
)
CHAINS_IN_ORDER = mark_count(
    "{number} chain of {length} ({order})", "{number} chains of {length} ({order})"
)

# --- orders of colours ------------------------------------------------------------------------

ALL_OF = mark("all {colour}")
RUN = mark("{count} {colour}")
OVER_AND_OVER = mark("{colours}, over and over")

# --- texts ------------------------------------------------------------------------------------

TAKE_LINKS = mark_count(
    "Take {number} {colour} link balloon ({nominal}), gauge {gauge}.",
    "Take {number} {colour} link balloons ({nominal}), gauge {gauge}.",
)
TAKE_ROUNDS = mark_count(
    "Take {number} {colour} round ({nominal}), gauge {gauge}.",
    "Take {number} {colour} rounds ({nominal}), gauge {gauge}.",
)
TAKE_ONE = mark("Take one {colour} balloon that was tied off alone.")
TAKE_PAIR = mark("Take a pair of {colour} balloons.")
TAKE_CHAIN = mark("Take a chain of {length} {colour} balloons.")
TAKE_SINGLE = mark("For the single take one {colour} balloon that was tied off alone.")
TAKE_LOCK = mark(
    "Take one lock, a pair of {colour} rounds, for each joint of the row. From inside the piece lay"
    " its knot on the joint, a round out through each of two opposite gaps. Outside, twist the two"
    " rounds past each other by two half turns, until both sit tight."
)
TAKE_LOCK_LYING = mark("Take one lock, a pair of {colour} rounds, for each joint of the row.")
TAKE_LOCK_OF_ONE_LAYER = mark(
    "Take one lock, a pair of {colour} rounds, for each joint of the row. Lay its knot in a corner"
    " of the joint, one round in front and one behind. In the opposite corner twist the two rounds"
    " past each other by two half turns, until both sit tight."
)
THESE_ROUNDS = mark("Lock with {colour} rounds.")
LIKE_PART = mark(
    "Parts {first} and {part} are alike: do as step {step} says, and read {part} for {first}."
)
MIRRORED_PART = mark(
    "Part {part} is the mirror image of part {first}: do as step {step} says, the other way"
    " round, and read {part} for {first}."
)
