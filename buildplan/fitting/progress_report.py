"""How far a fit is, in words."""

from __future__ import annotations

from buildplan.fitting.candidates import Progress
from buildplan.fitting.report import gauge_words, share_words
from buildplan.fitting.solving import Solved
from buildplan.language.messages import mark
from buildplan.language.voice import Voice


def progress_words(progress: Progress, voice: Voice, before: Solved | None = None) -> str:
    """How far the search is, and the best so far; where it overlaps by less than the one that was
    told `before` it, also why it is better."""
    if progress.figures:
        return voice.say("no tube follows it well: drawing it as a figure of cells")
    best = progress.best
    if best is None:
        return voice.say(
            "round {done} of {rounds}: no closed tube yet, {solved} shapes solved",
            done=progress.done,
            rounds=progress.rounds,
            solved=progress.spent.solved,
        )
    told = voice.say(
        "round {done} of {rounds}: best so far overlaps by {share}, edges at most {distance} links "
        "apart, with {links} links of {gauge}; {solved} shapes solved",
        done=progress.done,
        rounds=progress.rounds,
        share=share_words(best.close.overlap, voice),
        distance=voice.decimal(best.close.farthest, 2),
        links=len(best.framework.links),
        gauge=gauge_words(best.task.gauges.long, best.task.gauges.units, voice),
        solved=progress.spent.solved,
    )
    reason = None if before is None else _why_better(best, before)
    return told if reason is None else voice.say(reason, progress=told)


def _why_better(best: Solved, before: Solved) -> str | None:
    """What makes a course better than one that overlaps by more, as a message: what weighs most in
    its score."""
    if round(best.close.overlap, 3) >= round(before.close.overlap, 3):
        return None
    return max(
        (before.off_height - best.off_height, mark("{progress} (nearer the height asked for)")),
        (before.falling - best.falling, mark("{progress} (its weight better above its foot)")),
        (before.strained - best.strained, mark("{progress} (its balloons less stretched)")),
        (1e-9, mark("{progress} (its edges nearer one another)")),
    )[1]
