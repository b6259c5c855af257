"""Reading a plan back before it is printed: from its steps and from the words that are printed.

Whatever is wrong here is a defect of ours and no mistake of a user's. The steps as data are built
on an empty floor (`sequence/replay.py`); then each row and each text is read as a person reads it,
whatever the language, and has to say what its step does: every balloon with its colour, which end
of it goes where, every lock, every joint that is brought together, every part that is tied.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.design.measures import Units
from buildplan.framework.model import Framework
from buildplan.instructions.heard_rows import MisreadError
from buildplan.instructions.model import StepWords
from buildplan.instructions.reading import Reading
from buildplan.instructions.right_words import Right
from buildplan.language.voice import Voice
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Step
from buildplan.sequence.replay import ReplayError, replay
from buildplan.sequence.replay_state import BuiltIn


class DoesNotRebuildError(Exception):
    """A plan that does not come to the piece that it is for: the step, and what is wrong there, in
    English, for those who mend it."""

    def __init__(self, step: int, reason: str) -> None:
        super().__init__(f"step {step}: {reason}")
        self.step = step
        self.reason = reason


def assert_rebuilds(
    framework: Framework,
    steps: Sequence[Step],
    words: Sequence[StepWords],
    units: Units,
    voice: Voice,
) -> None:
    """Build the piece from its steps, and read their words against it; they are in `voice`, their
    gauges in `units`. Raises DoesNotRebuildError unless both come to `framework`, balloon for
    balloon and lock for lock."""
    try:
        rebuilt = replay(steps_as_json(steps))
    except ReplayError as error:
        raise DoesNotRebuildError(error.step, error.message) from error
    last = steps[-1].number
    if rebuilt.balloons != _balloons(framework):
        raise DoesNotRebuildError(last, "the balloons of the piece come to others")
    if rebuilt.locks != {lock.joint: lock.balloon for lock in framework.locks}:
        raise DoesNotRebuildError(last, "the locks of the piece come to others")
    reading = Reading(Right(framework, units, voice), words)
    for step, said in zip(steps, words, strict=True):
        try:
            reading.step(step, said)
        except MisreadError as error:
            raise DoesNotRebuildError(step.number, str(error)) from error
    untold = [long.letter for long in framework.chains if long.letter not in reading.order]
    if untold:
        raise DoesNotRebuildError(last, f"no row tells chain {untold[0]}")


def _balloons(framework: Framework) -> Mapping[str, BuiltIn]:
    """The link balloons of a piece by name; joints that are tied together are one."""
    place = framework.place
    return {
        link.id: BuiltIn(place(link.neck), place(link.tail), link.balloon, str(link.role))
        for link in framework.links
    }
