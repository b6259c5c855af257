"""Where the zigzags of a column begin, as its steps say."""

from __future__ import annotations

import re

from sequence_pieces import BALLOONS

from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.patterns.column import Column, build_column
from buildplan.sequence.steps import plan_steps


def test_a_column_says_where_each_zigzag_begins() -> None:
    """`On chain L D1 comes after C1`: two neighbours on that zigzag, the first on its ring."""
    keys = Column(around=4, rings=5, ring="long", between="cross", lock="lock")
    piece = build_column("Post", BALLOONS, keys)
    steps = plan_steps(piece)
    words = tell_steps(steps, piece, "in", Voice())
    found = [re.findall(r"On chain (\w+) (\w+) comes after (\w+)\.", one.text) for one in words]
    told = [one for some in found for one in some]
    zigzags = [long for long in piece.chains if len(long.chain.joints) == 8]
    assert [letter for letter, _, _ in told] == [long.letter for long in zigzags[1:]]
    for long, (_, tip, joint) in zip(zigzags[1:], told, strict=True):
        assert long.chain.joints[:2] == (joint, tip)
