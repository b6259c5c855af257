"""What can be wrong with a piece of parts once these are joined."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.framework.assembly import tied_to_itself
from buildplan.framework.counts import balloon_counts
from buildplan.language.messages import message
from buildplan.patterns.limits import MOST_BALLOONS, too_many_balloons
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, listed
from buildplan.source.suggestions import by_hand


def mistakes_of_whole(whole: Design) -> Iterator[Mistake]:
    """Whether a piece of parts takes more balloons than are worked on, or a part is folded up."""
    framework = build_framework(whole)
    count = sum(balloon_counts(framework).values())
    if count > MOST_BALLOONS:
        yield too_many_balloons(("build", whole.build.given[0]), count)
    folded = tied_to_itself(framework)
    if folded is not None:
        part, tie = folded
        yield Mistake(
            FileKind.SAME_PART_TWICE,
            ("build", whole.build.given[0], "ties"),
            message(
                "{joints} cannot meet: part {part} has two of them",
                joints=listed(tie.joints),
                part=part,
            ),
            by_hand(message("tie joints of different parts")),
        )
