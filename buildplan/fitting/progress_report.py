"""How far a fit is, in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from buildplan.fitting.candidates import FiguresGrown, Progress
from buildplan.fitting.measure_words import gauge_words, share_words
from buildplan.fitting.solving import Solved
from buildplan.language.messages import mark
from buildplan.language.voice import Voice


def progress_words(progress: Progress, voice: Voice, reached: Sequence[Progress] = ()) -> str:
    """How far the search is; how close anything yet comes, which never falls, and the best to
    build, with why it is better where it is not the closest. `reached` is what the search came to
    until now."""
    if progress.ended:
        return voice.say("ended: looking whether the best so far can be built; Ctrl-C keeps none")
    if progress.figures is not None:
        return _growing_words(progress.figures, voice)
    best = progress.best
    if best is None:
        return voice.say(
            "round {done} of {rounds}: no closed tube yet, {solved} shapes solved",
            done=progress.done,
            rounds=progress.rounds,
            solved=progress.spent.solved,
        )
    closest = max(_all_found((*reached, progress)), key=lambda one: one.close.overlap)
    told = voice.say(
        "round {done} of {rounds}: closest so far {closest}; best to build so far overlaps by "
        "{share}, edges at most {distance} links apart, with {links} links of {gauge}; {solved} "
        "shapes solved",
        done=progress.done,
        rounds=progress.rounds,
        closest=share_words(closest.close.overlap, voice),
        share=share_words(best.close.overlap, voice),
        distance=voice.decimal(best.close.farthest, 2),
        links=len(best.framework.links),
        gauge=gauge_words(best.task.gauges.long, best.task.gauges.units, voice),
        solved=progress.spent.solved,
    )
    reason = _why_better(best, closest)
    return told if reason is None else voice.say(reason, progress=told)


def _growing_words(growing: FiguresGrown, voice: Voice) -> str:
    if not growing.done:
        return voice.say("no tube follows it well: drawing it as a figure of cells")
    return voice.say(
        "{done} of {all} figures grown: the closest so far overlaps by about {share}",
        done=growing.done,
        all=growing.of,
        share=share_words(growing.overlap, voice),
    )


def _all_found(reached: Iterable[Progress]) -> Iterator[Solved]:
    """All courses that were kept in any round."""
    for progress in reached:
        for solved in progress.found.values():
            yield from solved


def _why_better(best: Solved, closest: Solved) -> str | None:
    """What makes a course better to build than one that overlaps by more, as a message: what weighs
    most in its score."""
    if round(best.close.overlap, 3) >= round(closest.close.overlap, 3):
        return None
    return max(
        (closest.off_height - best.off_height, mark("{progress} (nearer the height asked for)")),
        (closest.falling - best.falling, mark("{progress} (its weight better above its foot)")),
        (closest.strained - best.strained, mark("{progress} (its balloons less stretched)")),
        (closest.in_one_place - best.in_one_place, mark("{progress} (nothing of it in the way)")),
        (1e-9, mark("{progress} (its edges nearer one another)")),
    )[1]
