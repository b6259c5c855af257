"""Every kind of problem says how its advice is tried, so that no new one comes in untried."""

from __future__ import annotations

import pytest
from kinds_by_hand import BY_HAND
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
