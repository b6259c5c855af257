"""Many labels in few words."""

from __future__ import annotations

from itertools import product

from buildplan.language.voice import Voice
from buildplan.source.runs import runs_words


def told(labels: list[str]) -> str:
    return Voice().tell(runs_words(labels))


def test_joints_that_are_tied_are_counted_with_the_first_of_their_parts() -> None:
    """What is tied is one joint: none is told twice, and no part has the name of a tie."""
    own = [f"T.{chain}{number}" for chain, number in product("ADGJMPS", (1, 9))]
    tied = [f"U.{chain}1+T.{chain}5" for chain in "BEH"]
    assert told([*own, *tied]) == "14 joints of T and 3 joints of U"
    assert told(tied) == "U.B1+T.B5, U.E1+T.E5 and U.H1+T.H5"
