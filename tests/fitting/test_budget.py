"""No outline gets past its budget, and progress is told: by counting, not by a clock."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from shapely import LineString

from buildplan.fitting import candidates, figure_fits, fitting, heights, improving
from buildplan.fitting.candidates import Progress, first_candidates
from buildplan.fitting.effort import EFFORTS, QUICK, USUAL, Spent
from buildplan.fitting.figure_growing import Grown, Start, grow
from buildplan.fitting.fit import Fit
from buildplan.fitting.fitting import fit_outline, recommended
from buildplan.fitting.following import tasks_for
from buildplan.fitting.heights import smallest_height
from buildplan.fitting.measuring import OVERLAP_GOAL
from buildplan.fitting.narrow import promising, tube_width_m
from buildplan.fitting.outline import Outline, outline_of, ring_points
from buildplan.fitting.solving import STRAIN_ALLOWED, Solved
from buildplan.fitting.sources import read_outline
from buildplan.fitting.tube_design import Gauges, gauges_from
from buildplan.language.messages import message
from buildplan.language.voice import Voice

UNSEEN = Path(__file__).parent / "unseen"
RING_M = 1.0
SMALL = replace(
    QUICK, courses=6, first=2, rounds=1, kept=2, tries=2, judged=1, taller=3, roots=1, changes=4
)


@pytest.mark.parametrize(
    ("name", "height_m"), [("crown", 1.05), ("bubble", 0.9), ("whale", 1.2), ("anchor", 1.2)]
)
def test_no_outline_gets_past_its_budget(
    name: str, height_m: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    outline = read_outline(str(UNSEEN / f"{name}.svg"), height_m)
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
    asked: list[int] = []

    def growing(start: Start, changes: int) -> Grown:
        asked.append(changes)
        return grow(start, changes)

    monkeypatch.setattr(figure_fits, "grow", growing)
    told: list[Progress] = []

    def watch(progress: Progress) -> bool:
        told.append(progress)
        return True

    fit_outline(outline, (8.0,), effort=SMALL, watch=watch)
    rounds = [one for one in told if not one.figures]
    # an outline that no tube comes to is drawn as a figure at once
    assert [one.done for one in rounds] == (
        list(range(1, SMALL.rounds + 2)) if promising(outline, (8.0,), "in") else []
    )
    if rounds:
        assert rounds[-1].spent.solved == count["solved"] <= SMALL.most_solved(searches)
        assert rounds[-1].spent.laid == count["laid"] <= SMALL.most_laid(searches)
    # a tube covers the whale as it should: no figure is grown of it
    figures = [one.figures for one in told if one.figures is not None]
    assert bool(figures) == (name != "whale") == bool(asked)
    assert all(one.done == one.of == len(asked) for one in figures[-1:])
    assert sum(asked) <= SMALL.most_changes(gauges=1)


@pytest.fixture(scope="module")
def ring() -> Fit:
    (fit,) = fit_outline(read_outline("ring", RING_M), (8.0,), effort=SMALL)
    assert fit.buildable
    return fit


def work_on(
    outline: Outline,
    monkeypatch: pytest.MonkeyPatch,
    tube: Fit | None = None,
    figure: Fit | None = None,
) -> list[str | float]:
    """What a fit does in order: `tubes`, and the gauges of the figures that it grows, in inches,
    where `tube` and `figure` are what comes of either."""
    done: list[str | float] = []

    def tubes(*given: object) -> list[Progress]:
        done.append("tubes")
        return [Progress({}, 1, 1, Spent())]

    def figures(starts: object, gauges: Sequence[Gauges], *given: object) -> tuple[list[Fit], bool]:
        done.extend(one.long for one in gauges)
        return [] if figure is None else [figure], True

    monkeypatch.setattr(fitting, "rounds", tubes)
    monkeypatch.setattr(fitting, "_judged_best", lambda *given: [] if tube is None else [tube])
    monkeypatch.setattr(fitting, "figure_fits", figures)
    fit_outline(outline, (8.0,), effort=SMALL, of_figures=(5.0, 4.0, 3.0))
    return done


def growing_of(
    name: str, height_m: float, monkeypatch: pytest.MonkeyPatch, tube: Fit | None = None
) -> set[float]:
    """The gauges of the figures that a fit grows, in inches, where `tube` is what was found."""
    outline = read_outline(str(UNSEEN / f"{name}.svg"), height_m)
    done = work_on(outline, monkeypatch, tube)
    return {gauge for gauge in done if isinstance(gauge, float)}


def test_a_shape_too_large_for_figures_grows_none(
    monkeypatch: pytest.MonkeyPatch, ring: Fit
) -> None:
    """Of links of 4 inches a bubble is 78 squares at 1.2 m, and 176 at 1.8 m: 160 is the most. Only
    where no tube can be built it is one of those that are few enough, or of longer links."""
    far = replace(ring, close=replace(ring.close, overlap=OVERLAP_GOAL - 0.1))
    assert growing_of("bubble", 1.2, monkeypatch, far) == {5.0, 4.0, 3.0}
    assert growing_of("bubble", 1.2, monkeypatch, ring) == set()
    assert growing_of("bubble", 1.8, monkeypatch, far) == set()
    assert growing_of("bubble", 1.8, monkeypatch) == {5.0}
    assert growing_of("bubble", 3.0, monkeypatch) == {8.0}


def test_what_cannot_be_built_and_hardly_overlaps_is_no_answer(
    monkeypatch: pytest.MonkeyPatch, ring: Fit
) -> None:
    """Of a spiral no tube and no figure comes to be: there is nothing to write."""
    broken = replace(ring, problems=(message("the piece does not hold itself up"),))
    monkeypatch.setattr(fitting, "rounds", lambda *given: [Progress({}, 1, 1, Spent())])
    monkeypatch.setattr(fitting, "figure_fits", lambda *given: ([], True))
    for overlap, shown in ((0.1, 0), (0.6, 1)):
        found = [replace(broken, close=replace(ring.close, overlap=overlap))]
        monkeypatch.setattr(fitting, "_judged_best", lambda *given, found=found: found)
        assert len(fit_outline(ring.outline, (8.0,), effort=SMALL)) == shown


def test_where_no_tube_will_do_figures_are_of_links_long_enough(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """An anchor 2.6 m high is 171 squares of links of 4 inches, and 110 of 5."""
    assert growing_of("anchor", 1.8, monkeypatch) == {5.0, 4.0, 3.0}
    assert growing_of("anchor", 2.6, monkeypatch) == {5.0}


def test_the_finest_figures_are_grown_where_the_others_do_not_cover(
    monkeypatch: pytest.MonkeyPatch, ring: Fit
) -> None:
    anchor = read_outline(str(UNSEEN / "anchor.svg"), 1.2)
    close, far = (
        replace(ring, close=replace(ring.close, overlap=OVERLAP_GOAL + more))
        for more in (0.01, -0.01)
    )
    assert work_on(anchor, monkeypatch, figure=close) == [5.0, 4.0]
    assert work_on(anchor, monkeypatch, figure=far) == [5.0, 4.0, 3.0]


def test_where_a_tube_would_get_in_its_own_way_figures_come_first(
    monkeypatch: pytest.MonkeyPatch, ring: Fit
) -> None:
    """A bent pipe that is a fifth wider than a tube of 8 inches, which is 0.44 m wide: the tube
    comes there, but out and back it would need twice that. One as wide as two tubes has room."""
    wide_m = 1.2 * tube_width_m(8.0, "in")

    def pipe(wide_m: float) -> Outline:
        bent = LineString([(0, 2), (0, 0), (2, 0), (2, 2)]).buffer(wide_m / 2, cap_style="flat")
        return outline_of("pipe", ring_points(bent), 2 + wide_m / 2)

    far = replace(ring, close=replace(ring.close, overlap=OVERLAP_GOAL - 0.01))
    assert work_on(pipe(wide_m), monkeypatch, far, figure=ring) == [5.0]
    assert work_on(pipe(wide_m), monkeypatch, far, figure=far) == [5.0, "tubes"]
    assert work_on(pipe(2 * wide_m), monkeypatch, ring, figure=ring) == ["tubes"]


@pytest.mark.parametrize("turned_deg", [0.0, 90.0])
def test_what_has_problems_wins_over_none_without(ring: Fit, turned_deg: float) -> None:
    """One that does not hold itself up is written only where there is no other, however close."""
    problem = message("the piece does not hold itself up")
    falls = replace(ring.shape, standing=replace(ring.shape.standing, stands=False))
    sound = replace(ring, problems=(), shape=falls, turned_deg=turned_deg)
    closer = replace(ring.close, overlap=0.99, farthest=0.0)
    broken = replace(ring, problems=(problem,), turned_deg=0.0, close=closer)
    assert not sound.buildable
    assert recommended([broken, sound]) is sound
    assert recommended([broken]) is broken


def test_larger_heights_are_bounded_by_the_effort_and_end_when_told(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """An outline that cannot be had at any height: the search for one ends all the same."""
    tried: list[float] = []
    told: list[float] = []

    def never(outline: Outline, gauge: float, units: str, figures: object, height_m: float) -> None:
        tried.append(height_m)

    def watch(tried_m: float) -> bool:
        told.append(tried_m)
        return True

    monkeypatch.setattr(heights, "_good_at", never)
    outline = read_outline("ring", 1.2)
    found = smallest_height(outline, 8.0, "in", SMALL, watch)
    assert found.height_m is None
    assert len(tried) == SMALL.taller
    assert tried == sorted(tried)
    assert told[-1] == tried[-1] == found.tried_m
    tried.clear()
    smallest_height(outline, 8.0, "in", EFFORTS["long"], lambda tried_m: False)
    assert len(tried) == heights.AT_ONCE
    assert all(one.taller < EFFORTS["long"].taller for one in (QUICK, USUAL))


def test_every_fault_of_a_piece_weighs_in_its_score() -> None:
    """What a hundredth of overlap is worth in each: of two pieces alike in all else the one that is
    as high as asked for, firmly on its foot, not strained, and nearer at its worst, is better."""
    task = tasks_for(read_outline("ring", 1.2), gauges_from(8.0), Voice())[0]
    solved = first_candidates(task, SMALL)[0][0]
    close = replace(solved.close, overlap=0.9, farthest=0.5)
    sound = replace(solved, close=close, height_share=1.0, strain=0.0, within_foot=5.0)

    def overlap_lost(other: Solved) -> float:
        """By how much a sound piece may overlap less and still be no worse."""
        assert sound.close.score == pytest.approx(sound.score)
        return other.score - sound.score

    assert overlap_lost(replace(sound, height_share=1.03)) > 0.01
    assert overlap_lost(replace(sound, height_share=0.97)) > 0.01
    assert overlap_lost(replace(sound, height_share=1.005)) == 0
    assert overlap_lost(replace(sound, within_foot=-1.0)) > 0.02
    assert overlap_lost(replace(sound, strain=STRAIN_ALLOWED + 0.01)) > 0.05
    assert overlap_lost(replace(sound, runs_into_itself=True)) > 0.05
    nearer, lapping = replace(close, farthest=0.4), replace(close, overlap=0.91)
    assert close.score - nearer.score == pytest.approx(close.score - lapping.score)
    # beyond the goals each counts for more
    short, far = replace(close, overlap=OVERLAP_GOAL - 0.01), replace(close, farthest=0.7)
    assert short.score - replace(close, overlap=OVERLAP_GOAL).score > 0.012
    assert far.score - replace(close, farthest=0.6).score > 0.014
