"""No outline gets past its budget, and progress is told: by counting, not by a clock."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from buildplan.fitting import candidates, improving
from buildplan.fitting.candidates import Progress
from buildplan.fitting.effort import Effort
from buildplan.fitting.fitting import fit_outline
from buildplan.fitting.following import tasks_for
from buildplan.fitting.sources import read_outline
from buildplan.fitting.tube_design import gauges_from
from buildplan.language.voice import Voice

UNSEEN = Path(__file__).parent / "unseen"
SMALL = Effort(courses=6, first=2, rounds=1, kept=2, tries=2, judged=1)


@pytest.mark.parametrize("name", ["crown", "bubble", "whale", "anchor"])
def test_no_outline_gets_past_its_budget(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    outline = read_outline(str(UNSEEN / f"{name}.svg"), 1.2)
    searches = len(tasks_for(outline, gauges_from(8.0), Voice()))
    count = {"laid": 0, "solved": 0}

    def counted(what: str, work: Callable[..., Any]) -> Callable[..., Any]:
        def wrapped(*given: Any) -> Any:
            count[what] += 1
            return work(*given)

        return wrapped

    for module in (candidates, improving):
        monkeypatch.setattr(module, "solve", counted("solved", module.solve))
        monkeypatch.setattr(module, "drafted_score", counted("laid", module.drafted_score))
    told: list[Progress] = []

    def watch(progress: Progress) -> bool:
        told.append(progress)
        return True

    fit_outline(outline, (8.0,), effort=SMALL, watch=watch)
    assert [one.done for one in told] == list(range(1, SMALL.rounds + 2))
    assert told[-1].spent.solved == count["solved"] <= SMALL.most_solved(searches)
    assert told[-1].spent.laid == count["laid"] <= SMALL.most_laid(searches)


def test_the_search_ends_when_told_and_keeps_the_best() -> None:
    outline = read_outline("ring", 1.2)
    told: list[Progress] = []

    def once(progress: Progress) -> bool:
        told.append(progress)
        return False

    assert fit_outline(outline, (8.0,), effort=SMALL, watch=once)
    assert len(told) == 1


def test_ctrl_c_keeps_the_best() -> None:
    def interrupted(progress: Progress) -> bool:
        raise KeyboardInterrupt

    assert fit_outline(read_outline("ring", 1.2), (8.0,), effort=SMALL, watch=interrupted)
