"""Close-ups of a real piece show its work: the issue's measures, on a design of the project."""

from pathlib import Path

import pytest
import yaml

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.drawing.closeup import closeup_camera
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.scene import Scene, close_up
from buildplan.drawing.visibility import sight_of
from buildplan.framework.model import Framework
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape

DESIGN = Path(__file__).parents[2] / "designs" / "picture_frame.yaml"
# Our own thresholds for "the parts added in a step are visible": Agrawala et al. 2003 name the
# rule and no figure.
SEEN = 0.8


@pytest.fixture(scope="module")
def piece() -> tuple[Framework, Shape]:
    framework = build_framework(Design.model_validate(yaml.safe_load(DESIGN.read_text("utf-8"))))
    return framework, find_shape(framework)


@pytest.mark.parametrize("brace", range(0, 28, 3))
def test_each_brace_is_seen_and_named(piece: tuple[Framework, Shape], brace: int) -> None:
    framework, shape = piece
    chains = {link.id for link in framework.links if link.role == "chain"}
    before = {link for b in framework.braces[:brace] for link in b.links}
    locked = {joint for b in framework.braces[:brace] for joint in b.section}
    section = framework.braces[brace].section
    scene = Scene(
        framework,
        shape,
        new_links=frozenset(framework.braces[brace].links),
        done_links=frozenset(chains | before),
        done_locks=frozenset(locked),
    )
    camera = closeup_camera(scene, section)
    sight = sight_of(scene, camera, section)
    assert sight.share >= SEEN
    assert sight.joints_share == 1
    picture = close_up(scene, camera, 300, 220, section, ties=section, labels=section)
    assert set(label_boxes(picture)) == set(section)
