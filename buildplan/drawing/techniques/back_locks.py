"""The locks at the back of what is built lying on it, as they sit when a joint is lifted: those
joints from the back, side by side, each balloon with the name of the joint that it leads to."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import CAMERAS, fit
from buildplan.drawing.fonts import text_width, wrapped
from buildplan.drawing.line_art import INK, PAPER, TYPE
from buildplan.drawing.marks import Inset, Label, Mark, Picture
from buildplan.drawing.scene import body_marks
from buildplan.drawing.techniques.props import signs, words
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.model import Shape

# Points: half of each view, and where its middle is; what is below and above; between two views.
HALF, BELOW, ABOVE, GAP, MARGIN = 36.0, 12.0, 13.0, 4.0, 2.0
LINE = 10.0  # from one line of words to the next
NAMED_AT, OFF_JOINT = 0.8, 15.0  # of the way to the other joint; points from its own at least
BACK = CAMERAS["back"]


def locks_from_back(
    framework: Framework, voice: Voice, shape: Shape, shown: Mapping[str, str]
) -> Picture:
    """The joints that are `shown`, each with the words for all that are locked like it: their
    balloons pale and the rounds of their locks, straight from the back."""
    wide = 2 * HALF
    lines = {joint: [*wrapped(named, wide, TYPE)] for joint, named in shown.items()}
    above = ABOVE + (max(map(len, lines.values())) - 1) * LINE
    high = BELOW + wide + above
    across = len(shown) * (wide + GAP) - GAP
    scenes = {joint: _scene(framework, shape, joint) for joint in shown}
    reach = max(_reach(scene, joint) for joint, scene in scenes.items())  # one scale for all
    marks: list[Mark] = []
    for place, joint in enumerate(shown):
        left = place * (wide + GAP)
        marks.append(Inset(_joint(scenes[joint], joint, reach), (left, BELOW)))
        for row, line in enumerate(lines[joint]):
            marks.append(words((left + HALF, high - TYPE - row * LINE), line))
    marks.append(words((across / 2, 3.0), voice.say("From the back.")))
    told = voice.say(
        "The locks of {joints} from the back: a round sits in each of two gaps; at the end of each"
        " balloon is the name of the joint that it leads to.",
        joints=voice.listed(list(shown.values())),
    )
    return Picture(across, high, tuple(marks), told, (("picture", "locks at the back"),))


def _scene(framework: Framework, shape: Shape, joint: str) -> Scene:
    return Scene(
        framework,
        shape,
        done_links=frozenset(framework.links_at[joint]),
        new_locks=frozenset((joint,)),
        patterns=signs(framework),
    )


def _reach(scene: Scene, joint: str) -> float:
    """How far bodies reach from a joint to any side, as seen from the back, in metres."""
    off = np.abs(scene.bodies.centre - scene.shape.at[joint])[:, :2]
    return float((off + np.reshape(scene.bodies.radius, (-1, 1))).max())


def _joint(scene: Scene, joint: str, reach: float) -> Picture:
    framework, shape, size = scene.framework, scene.shape, 2 * HALF
    corners = shape.at[joint] + np.array([(-reach, -reach, 0.0), (reach, reach, 0.0)])
    view = fit(BACK, corners, 0.0, size, size, margin=MARGIN)
    marks = [*body_marks(scene, view, size, size)]
    for id_ in framework.links_at[joint]:
        link = framework.link[id_]
        other = link.finish if link.start == joint else link.start
        (here, there), _ = view.place(np.array([shape.at[joint], shape.at[other]]))
        way = (there - here) * NAMED_AT
        off = float(np.hypot(*way))
        if off < OFF_JOINT:  # it leads straight away from whoever looks
            continue
        x, y = (here + way).tolist()
        name = other.rpartition(".")[2]
        edge = text_width(name, TYPE, bold=True) / 2
        at = (min(max(x, edge), size - edge), min(max(y, TYPE / 2), size - TYPE / 2) - TYPE * 0.36)
        marks.append(Label(at, name, TYPE, INK, bold=True, halo=PAPER))
    data = (("picture", "lock at the back"), ("joint", joint))
    return Picture(size, size, tuple(marks), "", data)
