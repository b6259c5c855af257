"""The joints by which the figure of long chains is known while they lie unbraced."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.model import Framework, LongChain

# More corners than these are as hard to find as none.
MOST = 14
# Of the joints of a chain at most this share is tagged as its corners.
MOST_TAGGED = 1 / 3
# From one tag to the next are so many balloons at most.
TAG_EVERY = 5
# Without corners, so many places of a ring are named.
PLACES = 4


def corner_joints(framework: Framework, chains: Sequence[LongChain]) -> tuple[str, ...]:
    """The joints of some chains that no brace reaches: there the figure has its corners. None of a
    figure that has too many."""
    braced = {joint for brace in framework.braces for joint in brace.section}
    found = [joint for one in chains for joint in one.chain.joints if joint not in braced]
    return tuple(found) if len(found) <= MOST else ()


def tagged_joints(framework: Framework, long: LongChain) -> tuple[str, ...]:
    """The joints of a chain that get a tag: joint 1, those that a corner leaves out, those where
    two braces share a balloon, the last of an open chain, and between them every fifth, so that
    none is further than five from a tag before it."""
    joints = long.chain.joints
    braced = {joint for brace in framework.braces for joint in brace.section}
    shared = {
        joint
        for brace in framework.braces
        for link in brace.shared
        for joint in (framework.link[link].start, framework.link[link].finish)
    }
    corners = [joint for joint in joints if joint not in braced or joint in shared]
    if len(corners) > MOST_TAGGED * len(joints):
        corners = []
    wanted = {joints[0], *corners, *([] if long.chain.closed else joints[-1:])}
    found = [joints[0]]
    for number, joint in enumerate(joints[1:], 2):
        due = number % TAG_EVERY == 0 and not _is_near(joints, number, wanted)
        if joint in wanted or due:
            found.append(joint)
    return tuple(found)


def _is_near(joints: Sequence[str], number: int, wanted: set[str]) -> bool:
    """Whether the joint of a number, from 1, lies between wanted ones that are no more than five
    balloons apart."""
    before = next((n for n in range(1, TAG_EVERY) if joints[number - 1 - n] in wanted), TAG_EVERY)
    after = next(
        (n for n in range(1, TAG_EVERY) if joints[(number - 1 + n) % len(joints)] in wanted),
        TAG_EVERY,
    )
    return before + after <= TAG_EVERY


def landmarks(framework: Framework, chains: Sequence[LongChain]) -> dict[str, tuple[str, ...]]:
    """The joints by which some chains are laid out, chain by chain, by its letter: its corners, or
    where there are none a few with tags, as far apart as can be; of an open chain its ends too."""
    corners = set(corner_joints(framework, chains))
    found = {}
    for long in chains:
        joints = long.chain.joints
        marked = [joint for joint in joints if joint in corners]
        if not corners or len(marked) < 2:
            marked += _spread(tagged_joints(framework, long), long.chain.closed)
        if not long.chain.closed:
            marked += [joints[0], joints[-1]]
        found[long.letter] = tuple(joint for joint in joints if joint in marked)
    return found


def _spread(tags: Sequence[str], closed: bool) -> list[str]:
    """A few of some tags, evenly among them; of an open chain the first and the last."""
    parts = min(PLACES, len(tags))
    if closed:
        return [tags[n * len(tags) // parts] for n in range(parts)]
    return [tags[round(n * (len(tags) - 1) / max(parts - 1, 1))] for n in range(parts)]
