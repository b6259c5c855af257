"""What a finished piece is looked over for."""

from __future__ import annotations

from pathlib import Path

import pytest

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind
from buildplan.sequence.steps import plan_steps

DESIGNS = Path(__file__).parents[2] / "designs"


@pytest.mark.parametrize(
    ("file", "said"),
    [
        ("picture_frame.yaml", "The back must look exactly like the front."),
        ("gallery/ribbon_arch.yaml", "Behind every joint of the front lies one of the back"),
    ],
    ids=["alike", "of other colours"],
)
def test_a_back_of_other_colours_does_not_look_like_the_front(file: str, said: str) -> None:
    framework = build_framework(read_design(DESIGNS / file))
    steps = plan_steps(framework)
    told = tell_steps(steps, framework, "in", Voice())
    over = next(one for step, one in zip(steps, told, strict=True) if step.kind is Kind.INSPECT)
    assert said in over.text
