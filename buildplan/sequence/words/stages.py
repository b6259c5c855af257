"""What the stages of the work are called."""

from __future__ import annotations

from buildplan.language.speaking import say_in
from buildplan.sequence.model import Stage


def stage_name(stage: Stage) -> str:
    """The name of a stage, with a capital: `Close rings`."""
    names = {
        Stage.SIZE: say_in("stage", "Size"),
        Stage.PAIR: say_in("stage", "Pair"),
        Stage.CHAIN: say_in("stage", "Chain"),
        Stage.CLOSE_RINGS: say_in("stage", "Close rings"),
        Stage.BRACE: say_in("stage", "Brace"),
        Stage.LOCK_JOINTS: say_in("stage", "Lock joints"),
        Stage.FINISH: say_in("stage", "Finish"),
    }
    return names[stage]
