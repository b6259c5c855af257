"""The joints by which the figure of long chains is known while they lie unbraced."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.model import Framework, LongChain

# More corners than these are as hard to find as none.
MOST = 14


def corner_joints(framework: Framework, chains: Sequence[LongChain]) -> tuple[str, ...]:
    """The joints of some chains that no brace reaches: there the figure has its corners. None of a
    figure that has too many."""
    braced = {joint for brace in framework.braces for joint in brace.section}
    found = [joint for one in chains for joint in one.chain.joints if joint not in braced]
    return tuple(found) if len(found) <= MOST else ()
