"""A balloon's finish, from the design file to the pictures."""

from __future__ import annotations

from pathlib import Path
from typing import get_args

import pytest
import yaml
from pydantic import ValidationError

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Stamp
from buildplan.drawing.scene import finished_picture
from buildplan.drawing.shading import FINISHES
from buildplan.shape.finding import find_shape
from buildplan.source.values import Finish

GATE = Path(__file__).parents[2] / "designs" / "walk_through_gate.yaml"


def with_finish(**finishes: str) -> Design:
    data = yaml.safe_load(GATE.read_text("utf-8"))
    for key, finish in finishes.items():
        data["balloons"][key]["finish"] = finish
    return Design.model_validate(data)


def test_every_finish_of_the_file_can_be_drawn() -> None:
    assert set(get_args(Finish)) == set(FINISHES)


@pytest.mark.parametrize("name", FINISHES)
def test_a_body_gets_lighter_towards_the_light_without_rings(name: str) -> None:
    finish = FINISHES[name]
    for ramp in (finish.dark_ramp, finish.light_ramp):
        light, tone = zip(*ramp, strict=True)
        assert list(light) == sorted(light)
        assert list(tone) == sorted(tone)


def test_each_balloon_is_drawn_in_its_own_finish() -> None:
    framework = build_framework(with_finish(gold="metallic", cream="pearl"))
    picture = finished_picture(framework, find_shape(framework), CAMERAS["front"], 300, 300)
    drawn = {
        mark.look.colour: mark.look.finish
        for mark in picture.marks
        if isinstance(mark, Stamp) and mark.look.form == "body"
    }
    wanted = {"gold": "metallic", "cream": "pearl", "foxglove": "standard", "heather": "standard"}
    assert drawn == {framework.balloons[key].colour: finish for key, finish in wanted.items()}


def test_an_unknown_finish_is_refused() -> None:
    with pytest.raises(ValidationError, match=r"balloons\.gold\.finish"):
        with_finish(gold="chrome")
