"""What `steps` says to a person."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.instructions.model import StepWords
from buildplan.instructions.stages import stage_name
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step


def steps_report(steps: Sequence[Step], words: Sequence[StepWords], voice: Voice) -> str:
    """The steps in order, each with its rows and its check."""
    lines: list[str] = []
    stage = None
    for step, said in zip(steps, words, strict=True):
        if step.stage is not stage:
            stage = step.stage
            lines += ["", stage_name(voice, stage).upper()]
        title = said.title
        if step.times > 1:
            title = voice.say("{step} (x {times})", step=title, times=step.times)
        lines += [f"{step.number:4}. {title}", f"      {said.text}"]
        lines += [f"      - {row}" for row in said.rows]
        lines.append("      " + voice.say("Check: {count}", count=said.check))
    return "\n".join(lines[1:])
