"""What a trainee is told of each technique: why it matters, the usual mistake, how to see it.

All of it is common practice of the trade, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from buildplan.sequence.model import Kind


@dataclass(frozen=True)
class Lesson:
    """One technique."""

    title: str
    why: str
    mistake: str
    see: str


LESSONS: Mapping[Kind, Lesson] = {
    Kind.SIZE: Lesson(
        "Size",
        "Every balloon is a part of a framework. One that is too large or too small pulls its "
        "neighbours out of place, and the piece does not close or leans.",
        "Filling to the gauge and stopping there. Latex goes on giving for a moment, and the "
        "balloon ends up small.",
        "Hold it in the gauge: it touches both sides and slips through without being pushed. Lay "
        "two side by side: they are alike.",
    ),
    Kind.PAIR: Lesson(
        "Pair",
        "Two balloons tied neck to neck close one another, with no knot on each neck. It is "
        "quick, and the knot lies in the middle, where a lock will hold it.",
        "Wrapping the necks round each other only once, or tying far out on the necks. The pair "
        "then slips and loses air.",
        "Pull the two apart gently: the knot does not move, and hardly any neck shows between "
        "the bodies.",
    ),
    Kind.TIE_OFF: Lesson(
        "Tie off alone",
        "A chain of an odd number has a balloon without a partner. Its neck must be closed by "
        "itself before it can be tied in.",
        "A knot close to the body, with no neck left over to tie with.",
        "Beyond the knot a finger's width of neck stands free.",
    ),
    Kind.CHAIN: Lesson(
        "Chain",
        "Chains run along the whole piece. Tail to tail keeps neck knots and tail knots in turn, "
        "so that joints can be counted by feel: even numbers are neck knots.",
        "Miscounting in a long chain. One balloon more or less shows only many braces later.",
        "Tie runs of four pairs first, lay them side by side, then tie the runs together. Count "
        "the whole chain once more before it is laid.",
    ),
    Kind.CLOSE_RING: Lesson(
        "Close a ring",
        "The closing knot is joint 1. All counting starts there, on every chain.",
        "Closing a chain that is twisted: the ring will not lie flat.",
        "Laid on the floor, the ring lies flat by itself and no balloon crosses another.",
    ),
    Kind.TAG: Lesson(
        "Tag",
        "Joints are called by name on every page. A tag on every fifth one ends all doubt.",
        "Counting one chain the other way round.",
        "Stand at joint 1 and read all tags: every chain counts the same way round.",
    ),
    Kind.LAY: Lesson(
        "Lay in place",
        "Most of the piece is built lying flat: chains in their true place are within reach, and "
        "braces find their joints.",
        "Front and back chains changed over, or an inner chain outside an outer one.",
        "Joints 1 lie together; back chains are below, front chains on top; inner ones inside.",
    ),
    Kind.BRACE: Lesson(
        "Brace and settle",
        "Braces hold the long chains apart; without them the chains are only ropes. Knot must lie "
        "on knot, or the lock has nothing to hold.",
        "Going past a joint or taking the next one: the brace then stands askew and so does "
        "everything after it.",
        "Read the joints aloud in the row's order. Look along the tube: brace stands square on "
        "brace.",
    ),
    Kind.SINGLE: Lesson(
        "Tie in a single",
        "At a corner a joint is left out by the braces. The single holds front and back apart "
        "there.",
        "Forgetting it: the corner looks right until the piece stands, then it folds.",
        "At each corner count the skipped joints: every one has its single and its locks.",
    ),
    Kind.JOIN: Lesson(
        "Join chains",
        "Where chains meet, all their knots must act as one joint.",
        "One knot left a little apart: the lock holds the others, and this one wanders.",
        "Take hold of one balloon and move it: all others at the joint move with it.",
    ),
    Kind.LOCK: Lesson(
        "Lock",
        "A lock is what makes a joint: two small rounds twisted about all its knots, so that "
        "nothing slips. Lock each brace before the next.",
        "Twisting round the balloons and not between them, so that the lock sits on top and "
        "comes off.",
        "One round shows on either side of the joint; pulled gently, nothing moves. Each joint "
        "has one lock, none has two.",
    ),
    Kind.TURN_OVER: Lesson(
        "Turn over",
        "Some joints can be reached only from the other side. Turned by all hands at once, the "
        "piece keeps its shape.",
        "Turning one half before the other: the tube twists, and locks come off.",
        "After it no joint has slipped, and the tags read the other way round.",
    ),
    Kind.INSPECT: Lesson(
        "Look over",
        "A fault found lying down takes a minute; found standing, it takes the piece down.",
        "Looking at the front alone.",
        "Go round once with a hand on the tube, front and back. The back looks exactly like the "
        "front.",
    ),
    Kind.STAND_UP: Lesson(
        "Stand up",
        "The piece is light, wide and easily bent on its way up.",
        "Lifting by a single balloon, or one side before the other.",
        "All hands are round the braced tube, and somebody counts. Nothing hangs or twists "
        "while it rises.",
    ),
}

CORNERS = Lesson(
    "Turn a corner",
    "At a tip, a dip or a fan outer and inner chains go on by different numbers of balloons. That "
    "is what bends the piece.",
    "Going on by habit with the next joint of every chain.",
    "Before a brace at a corner, read which joints are skipped and which balloon is shared, and "
    "lay a finger on each.",
)
