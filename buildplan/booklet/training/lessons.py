"""What a trainee is told of each technique: why it matters, the usual mistake, how to see it.

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
    see: str


LESSONS: Mapping[Kind, Lesson] = {
    Kind.SIZE: Lesson(
        mark("Size"),
        mark(
            "Every balloon is a part of a framework. One that is too large or too small pulls its "
            "neighbours out of place, and the piece does not close or leans."
        ),
        mark(
            "Filling to the gauge and stopping there. Latex goes on giving for a moment, and the "
            "balloon ends up small."
        ),
        mark(
            "Hold it in the gauge: it touches both sides and slips through without being pushed. "
            "Lay two side by side: they are alike."
        ),
    ),
    Kind.PAIR: Lesson(
        mark("Pair"),
        mark(
            "Two balloons tied neck to neck close one another, with no knot on each neck. It is "
            "quick, and the knot lies in the middle, where a lock will hold it."
        ),
        mark(
            "Wrapping the necks round each other only once, or tying far out on the necks. The "
            "pair then slips and loses air."
        ),
        mark(
            "Pull the two apart gently: the knot does not move, and hardly any neck shows between "
            "the bodies."
        ),
    ),
    Kind.TIE_OFF: Lesson(
        mark("Tie off alone"),
        mark(
            "A chain of an odd number has a balloon without a partner. Its neck must be closed by "
            "itself before it can be tied in."
        ),
        mark("A knot close to the body, with no neck left over to tie with."),
        mark("Beyond the knot a finger's width of neck stands free."),
    ),
    Kind.CHAIN: Lesson(
        mark("Chain"),
        mark(
            "Chains run along the whole piece. Tail to tail keeps neck knots and tail knots in "
            "turn, so that joints can be counted by feel: even numbers are neck knots."
        ),
        mark("Miscounting in a long chain. One balloon more or less shows only many braces later."),
        mark(
            "Tie runs of four pairs first, lay them side by side, then tie the runs together. "
            "Count the whole chain once more before it is laid."
        ),
    ),
    Kind.CLOSE_RING: Lesson(
        mark("Close a ring"),
        mark("The closing knot is joint 1. All counting starts there, on every chain."),
        mark("Closing a chain that is twisted: the ring will not lie flat."),
        mark("Laid on the floor, the ring lies flat by itself and no balloon crosses another."),
    ),
    Kind.TAG: Lesson(
        mark("Tag"),
        mark("Joints are called by name on every page. A tag on every fifth one ends all doubt."),
        mark("Counting one chain the other way round."),
        mark("Stand at joint 1 and read all tags: every chain counts the same way round."),
    ),
    Kind.LAY: Lesson(
        mark("Lay in place"),
        mark(
            "Most of the piece is built lying flat: chains in their true place are within reach, "
            "and braces find their joints."
        ),
        mark("Front and back chains changed over, or an inner chain outside an outer one."),
        mark(
            "Joints 1 lie together; back chains are below, front chains on top; inner ones inside."
        ),
    ),
    Kind.BRACE: Lesson(
        mark("Brace and settle"),
        mark(
            "Braces hold the long chains apart; without them the chains are only ropes. Knot must "
            "lie on knot, or the lock has nothing to hold."
        ),
        mark(
            "Going past a joint or taking the next one: the brace then stands askew and so does "
            "everything after it."
        ),
        mark(
            "Read the joints aloud in the row's order. Look along the tube: brace stands square on "
            "brace."
        ),
    ),
    Kind.SINGLE: Lesson(
        mark("Tie in a single"),
        mark(
            "At a corner a joint is left out by the braces. The single holds front and back apart "
            "there."
        ),
        mark("Forgetting it: the corner looks right until the piece stands, then it folds."),
        mark("At each corner count the skipped joints: every one has its single and its locks."),
    ),
    Kind.JOIN: Lesson(
        mark("Join chains"),
        mark("Where chains meet, all their knots must act as one joint."),
        mark("One knot left a little apart: the lock holds the others, and this one wanders."),
        mark("Take hold of one balloon and move it: all others at the joint move with it."),
    ),
    Kind.LOCK: Lesson(
        mark("Lock"),
        mark(
            "A lock is what makes a joint: two small rounds twisted about all its knots, so that "
            "nothing slips. Lock each brace before the next."
        ),
        mark(
            "Twisting round the balloons and not between them, so that the lock sits on top and "
            "comes off."
        ),
        mark(
            "One round shows on either side of the joint; pulled gently, nothing moves. Each joint "
            "has one lock, none has two."
        ),
    ),
    Kind.TURN_OVER: Lesson(
        mark("Turn over"),
        mark(
            "Some joints can be reached only from the other side. Turned by all hands at once, the "
            "piece keeps its shape."
        ),
        mark("Turning one half before the other: the tube twists, and locks come off."),
        mark("After it no joint has slipped, and the tags read the other way round."),
    ),
    Kind.INSPECT: Lesson(
        mark("Look over"),
        mark("A fault found lying down takes a minute; found standing, it takes the piece down."),
        mark("Looking from one side alone."),
        mark("Go round once with a hand on each joint, and look at it from behind as well."),
    ),
    Kind.STAND_UP: Lesson(
        mark("Stand up"),
        mark("The piece is light, wide and easily bent on its way up."),
        mark("Lifting by a single balloon, or one side before the other."),
        mark(
            "All hands are round joints, and somebody counts. Nothing hangs or twists while it "
            "rises."
        ),
    ),
}

CORNERS = Lesson(
    mark("Turn a corner"),
    mark(
        "At a tip, a dip or a fan outer and inner chains go on by different numbers of balloons. "
        "That is what bends the piece."
    ),
    mark("Going on by habit with the next joint of every chain."),
    mark(
        "Before a brace at a corner, read which joints are skipped and which balloon is shared, "
        "and lay a finger on each."
    ),
)

# Laying down chains that are brought together joint by joint, with no braces across them.
LOOSE = Lesson(
    mark("Lay out"),
    mark(
        "Joints are found by their tags alone. Chains in the order of their letters are found at "
        "once."
    ),
    mark("Chains lying across one another: nobody can tell which knot is whose."),
    mark("Every chain can be lifted without moving another, and every tag can be read."),
)
