"""What a trainee is told of each technique: why it matters, and the usual mistake. How to see that
it is right is the check of the step.

All of it is common practice of the trade, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from buildplan.language.messages import mark
from buildplan.sequence.model import Kind


@dataclass(frozen=True)
class Lesson:
    """One technique, in messages to be said."""

    title: str
    why: str
    mistake: str


LESSONS: Mapping[Kind, Lesson] = {
    Kind.SIZE: Lesson(
        mark("Size"),
        mark("A balloon too large or small pulls its neighbours away."),
        mark("filling only to the gauge: latex gives, and the balloon ends up small."),
    ),
    Kind.PAIR: Lesson(
        mark("Pair"),
        mark("Neck to neck, two balloons close one another, with one knot for a lock to hold."),
        mark("wrapping only once, or far out on the necks: the pair slips and loses air."),
    ),
    Kind.TIE_OFF: Lesson(
        mark("Tie off alone"),
        mark("A balloon without a partner is closed before it is tied in."),
        mark("a knot close to the body, with no neck left to tie with."),
    ),
    Kind.CHAIN: Lesson(
        mark("Chain"),
        mark("Tail to tail keeps neck knots and tail knots in turn: joints can be told by feel."),
        mark("one balloon more or less, which shows much later."),
    ),
    Kind.CLOSE_RING: Lesson(
        mark("Close a ring"),
        mark("All counting starts at its closing knot."),
        mark("closing a chain that is twisted."),
    ),
    Kind.TAG: Lesson(
        mark("Tag"),
        mark("Joints are called by name on every page."),
        mark("miscounting: one tag a joint off, and all that follow."),
    ),
    Kind.LAY: Lesson(
        mark("Lay in place"),
        mark("In its true place every joint is within reach."),
        mark("front and back changed over, or an inner chain outside an outer one."),
    ),
    Kind.BRACE: Lesson(
        mark("Brace and settle"),
        mark("Braces hold the chains apart. Knot lies on knot, or a lock has nothing to hold."),
        mark("taking the next joint: all that follows stands askew."),
    ),
    Kind.SINGLE: Lesson(
        mark("Tie in a single"),
        mark("It holds a corner's joints apart."),
        mark("forgetting it: the corner folds once the piece stands."),
    ),
    Kind.JOIN: Lesson(
        mark("Join chains"),
        mark("Where chains meet, all their knots must act as one joint."),
        mark("one knot left a little apart: the lock holds the others, and this one wanders."),
    ),
    Kind.LOCK: Lesson(
        mark("Lock"),
        mark("Two small rounds twisted about all its knots: nothing slips."),
        mark("twisting round a balloon: the lock comes off."),
    ),
    Kind.TURN_OVER: Lesson(
        mark("Turn over"),
        mark("Some joints can be reached only from the other side."),
        mark("turning one half before the other: the piece twists, and locks come off."),
    ),
    Kind.INSPECT: Lesson(
        mark("Look over"),
        mark("A fault found now takes a minute; later, it takes the piece down."),
        mark("looking from one side alone."),
    ),
    Kind.STAND_UP: Lesson(
        mark("Stand up"),
        mark("The piece is light, wide and easily bent on its way up."),
        mark("lifting one side before the other."),
    ),
}

CORNERS = Lesson(
    mark("Turn a corner"),
    mark("Outer and inner chains go on by different numbers of balloons."),
    mark("going on by habit with every chain's next joint."),
)

# Tagging chains whose joints do not count along them: every knot has its name on its row.
TAGGED_BY_ROW = Lesson(
    mark("Tag"),
    mark("Joints are called by name on every page."),
    mark("leaving out a knot: every tag after it is wrong. The last name falls on the last end."),
)

# Laying down chains that are brought together joint by joint, with no braces across them.
LOOSE = Lesson(
    mark("Lay out"),
    mark("Joints are found by their tags alone."),
    mark("chains lying across one another: nobody can tell which knot is whose."),
)

# The end of what is held by something else than its own weight.
HELD = Lesson(
    mark("Let go"),
    mark("Many hands have held the piece; now what it is tied to holds it."),
    mark("letting go before it is tied fast, or without a hand ready on the other side."),
)

# The end of what was built standing.
STOOD = Lesson(
    mark("Let go"),
    mark("The piece has stood by many hands; now it stands by its foot and its ballast."),
    mark("letting go before the ballast is on, or without a hand ready on the other side."),
)
