"""What the stages of the work are called."""

from __future__ import annotations

from buildplan.language.voice import Voice
from buildplan.sequence.model import Stage


def stage_name(voice: Voice, stage: Stage) -> str:
    """The name of a stage, with a capital: `Close rings`."""
    names = {
        Stage.SIZE: voice.say_in("stage", "Size"),
        Stage.PAIR: voice.say_in("stage", "Pair"),
        Stage.CHAIN: voice.say_in("stage", "Chain"),
        Stage.CLOSE_RINGS: voice.say_in("stage", "Close rings"),
        Stage.BRACE: voice.say_in("stage", "Brace"),
        Stage.LOCK_JOINTS: voice.say_in("stage", "Lock joints"),
        Stage.FINISH: voice.say_in("stage", "Finish"),
    }
    return names[stage]
