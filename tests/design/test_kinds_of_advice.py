"""Every kind of problem says how its advice is tried, and every wording that names a change is
followed by a test, so that no new one comes in untried."""

from __future__ import annotations

import pytest
from advice_wordings import wordings_of_changes
from design_texts import changed, problems
from kinds_by_hand import BY_HAND
from piece_advice import BY_A_PROBLEM, BY_WHAT_STIFFENS
from test_advice import BROKEN

from buildplan.business.buying.money import MoneyKind
from buildplan.business.copies.brand import BrandKind
from buildplan.evaluation.base_advice import KEPT_UP_BY_A_BASE
from buildplan.fitting.mending import ON_THE_PIECE
from buildplan.sequence.reach import ReachKind
from buildplan.shape.kinds import ShapeKind
from buildplan.source.kinds import FileKind as K
from buildplan.source.problems import ProblemKind

# tried on the file in tests/design/test_advice.py, and by the program before it is told
ON_THE_FILE: frozenset[ProblemKind] = frozenset(kind for *_, kind, _ in BROKEN)
# other tests make kinds of their own
OURS = [
    kinds for kinds in ProblemKind.__subclasses__() if kinds.__module__.startswith("buildplan.")
]
EVERY = sorted((one for kinds in OURS for one in kinds), key=repr)


@pytest.mark.parametrize("kind", EVERY, ids=str)
def test_every_kind_of_problem_says_how_its_advice_is_tried(kind: ProblemKind) -> None:
    tried = kind in ON_THE_FILE or kind in ON_THE_PIECE or kind in KEPT_UP_BY_A_BASE
    assert tried is not (kind in BY_HAND)


def test_kinds_are_those_of_all_packages() -> None:
    assert {K, ShapeKind, ReachKind, MoneyKind, BrandKind} <= set(ProblemKind.__subclasses__())


# followed by tests/design/test_event_files.py
OF_EVENTS = {"write hours and minutes, in quotes: {example}"}


def test_every_wording_that_names_a_change_is_followed() -> None:
    """In test_advice.py, or on the piece in tests/fitting/test_advice_on_the_piece.py."""
    on_the_file = {
        way.words.text
        for text, old, new, *_ in BROKEN
        for problem in problems(changed(text, (old, new)))
        for way in problem.suggestion.ways
    }
    on_the_piece = {wording for told in BY_A_PROBLEM for wording in told.says}
    followed = on_the_file | on_the_piece | {*BY_WHAT_STIFFENS} | OF_EVENTS
    found = wordings_of_changes()
    assert len(found) > 60, "they are found in the code"
    assert found <= followed, found - followed
    assert on_the_piece <= found
