"""What `steps` says to a person."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.model import Framework
from buildplan.instructions.model import StepWords
from buildplan.instructions.stages import work_names
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step


def steps_report(
    framework: Framework, steps: Sequence[Step], words: Sequence[StepWords], voice: Voice
) -> str:
    """The steps in order, under the parts of the work, each with its rows and its check."""
    lines: list[str] = []
    before = ""
    named = work_names(voice, framework, steps)
    for step, said, work in zip(steps, words, named, strict=True):
        if work != before:
            before = work
            lines += ["", work.upper()]
        title = said.title
        if step.times > 1:
            title = voice.say("{step} (x {times})", step=title, times=step.times)
        lines += [f"{step.number:4}. {title}", f"      {said.text}"]
        lines += [f"      - {row}" for row in said.rows]
        lines.append("      " + voice.say("Check: {count}", count=said.check))
    return "\n".join(lines[1:])
