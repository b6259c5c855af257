"""A search that is ended, by the clock or at Ctrl-C, keeps the best so far."""

from __future__ import annotations

import threading
from dataclasses import replace
from pathlib import Path

import pytest

from buildplan.fitting import figure_fits, fitting
from buildplan.fitting.candidates import Progress
from buildplan.fitting.effort import QUICK
from buildplan.fitting.fitting import fit_outline
from buildplan.fitting.progress_report import progress_words
from buildplan.fitting.sources import read_outline
from buildplan.fitting.workers import _hear_no_more_of_what_is_given_up
from buildplan.language.messages import message
from buildplan.language.voice import Voice

UNSEEN = Path(__file__).parent / "unseen"
RING_M = 1.0
SMALL = replace(
    QUICK, courses=6, first=2, rounds=1, kept=2, tries=2, judged=1, taller=3, roots=1, changes=4
)


def test_the_search_ends_when_told_and_keeps_the_best() -> None:
    outline = read_outline("ring", RING_M)
    told: list[Progress] = []

    def once(progress: Progress) -> bool:
        told.append(progress)
        return False

    assert fit_outline(outline, (8.0,), effort=SMALL, watch=once)
    assert [one.ended for one in told] == [False, True], "its best is looked at, which is told"
    assert "looking whether" in progress_words(told[-1], Voice())


def test_work_that_is_given_up_is_not_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """A thread of joblib's that finds nothing where work was given up; other errors are told."""
    heard: list[object] = []
    monkeypatch.setattr(threading, "excepthook", lambda args: heard.append(args.exc_type))
    thread = type("Handing", (threading.Thread,), {"__module__": "joblib.externals.loky"})()
    _hear_no_more_of_what_is_given_up()
    for kind in (KeyError, ValueError):
        threading.excepthook(threading.ExceptHookArgs((kind, kind(7), None, thread)))
    threading.excepthook(threading.ExceptHookArgs((KeyError, KeyError(7), None, None)))
    assert heard == [ValueError, KeyError]


def test_ctrl_c_keeps_the_best() -> None:
    assert fit_outline(read_outline("ring", RING_M), (8.0,), effort=SMALL, watch=interrupted)


@pytest.mark.parametrize("by_clock", [True, False])
def test_figures_end_when_told_with_the_best_so_far(
    by_clock: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An anchor, that no tube comes to: of eight figures two at a time, four are grown, then no
    more, and no tube is looked for."""
    monkeypatch.setattr(figure_fits, "AT_ONCE", 2)
    told: list[int] = []

    def watch(progress: Progress) -> bool:
        assert progress.figures is not None
        told.append(progress.figures.done)
        if told[-1] == 4 and not by_clock:
            raise KeyboardInterrupt
        return told[-1] < 4

    anchor = read_outline(str(UNSEEN / "anchor.svg"), 1.2)
    effort = replace(SMALL, roots=8)
    fits = fit_outline(anchor, (8.0,), effort=effort, watch=watch, of_figures=(5.0,))
    assert told == [0, 2, 4]
    assert fits[0].is_figure
    # and at Ctrl-C while tubes are tried, if none that can be built was grown, it is kept as well
    broken = replace(fits[0], problems=(message("the piece does not hold itself up"),))
    monkeypatch.setattr(fitting, "rounds", interrupted)
    monkeypatch.setattr(fitting, "figure_fits", lambda *given: ([broken], True))
    assert fit_outline(anchor, (8.0,), effort=effort, of_figures=(5.0,)) == (broken,)
    monkeypatch.setattr(fitting, "figure_fits", lambda *given: ([], True))
    with pytest.raises(KeyboardInterrupt):
        fit_outline(anchor, (8.0,), effort=effort, of_figures=(5.0,))


def interrupted(*given: object) -> bool:
    raise KeyboardInterrupt
