"""A first piece to practise on: a small one made as the real piece is, of its own balloons."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from buildplan.design.building import build_framework
from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.evaluation.told_figures import told_figures
from buildplan.framework.cells import CELL_KINDS, STRAIGHT
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.instructions.model import StepWords
from buildplan.instructions.telling import tell_steps
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.patterns.build import built_as
from buildplan.patterns.column import Column
from buildplan.patterns.globe import Globe
from buildplan.patterns.solid import Solid
from buildplan.patterns.tube_keys import Tube
from buildplan.patterns.wall import Wall
from buildplan.sequence.courses import in_courses
from buildplan.sequence.model import Step
from buildplan.sequence.reach import find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape
from buildplan.source.values import FileModel

NAME = mark("Practice piece")
# Cells that go straight on; where the piece turns, one of its corners lies between them.
STRAIGHTS = 2
USUAL_CHAINS = 4
ABOUT_POLE = 5  # balloons of the rings of a globe about its poles
MOST_AROUND = 6  # a hand fits into a ring of as many, as into that of the piece


@dataclass(frozen=True)
class Practice:
    """The practice piece; `counts` are its own balloons and no part of the real piece's."""

    framework: Framework
    shape: Shape
    steps: tuple[Step, ...]
    words: tuple[StepWords, ...]
    counts: dict[str, int]


def practice(
    design: Design, framework: Framework, steps: Sequence[Step], units: Units, voice: Voice
) -> Practice | None:
    """The practice piece of a design, made as the piece itself is; None where there is none that
    takes no other hand moves than the piece's own `steps`."""
    small = _small(design, framework)
    if not framework.locks or small is None:
        return None
    changes = {
        "name": voice.say(NAME),
        "build": built_as(*small),
        "stand_on": None,
        "colour_pattern": {},
    }
    built = build_framework(design.model_copy(update=changes))
    shape = find_shape(built)
    # what is built course by course begins at the face or pole that it stands on
    reach = find_reach(built, shape) if in_courses(built) else None
    made = plan_steps(built, reach=reach)
    taught = {kind for step in steps for kind in step.kinds}
    if not {kind for step in made for kind in step.kinds} <= taught:
        return None
    counts = {key: count for key, count in balloon_counts(built).items() if count}
    words = tell_steps(made, built, units, voice, told_figures(built, shape, units))
    return Practice(built, shape, made, words, counts)


def _small(design: Design, framework: Framework) -> tuple[str, FileModel] | None:
    """A small piece of the same kind: the name of its pattern in the file, and its keys; None
    where the piece has no such pattern."""
    if framework.braces:
        return "tube", _post(framework)
    _, keys = design.build.given
    match keys:
        case Column():
            around = min(keys.around, MOST_AROUND)
            return "column", keys.model_copy(update={"around": around, "rings": 2, "extra": []})
        case Wall():
            # two cells each way, in as many layers: every chain is a pair
            grid = {"across": 2, "up": 2, "openings": [], "extra": []}
            return "wall", keys.model_copy(update=grid)
        case Solid():
            return "solid", keys.model_copy(update={"shape": "tetrahedron", "extra": []})
        case Globe():
            foot = Column(
                around=ABOUT_POLE, rings=2, ring=keys.long, between=keys.long, lock=keys.lock
            )
            return "column", foot
    return None


def _post(framework: Framework) -> Tube:
    """A short post of the balloons that come most often in the piece, with the corner that the
    piece has first, if it has any."""
    link = framework.link
    along = _usual(link[i].balloon for long in framework.chains for i in long.chain.links)
    across = _usual(link[i].balloon for brace in framework.braces for i in brace.links)
    chains = len(framework.chains)
    return Tube.model_validate(
        {
            "closed": False,
            "chains": chains if chains in (2, 3, 4) else USUAL_CHAINS,
            "long": along,
            "brace": across,
            "single": _usual(link[i].balloon for i in framework.singles) or across,
            "lock": _usual(lock.balloon for lock in framework.locks),
            "course": _course(framework),
        }
    )


def _course(framework: Framework) -> list[str]:
    """The cells of the post, by their names."""
    corners = [cell.name for cell in framework.cells if cell.kind != STRAIGHT]
    named = [name for name in corners if name in CELL_KINDS]
    half = [STRAIGHT.name] * (STRAIGHTS // 2)
    return [*half, *named[:1], *half]


def _usual(keys: Iterable[str]) -> str:
    """The key that comes most often, the first of those that come as often; empty if none."""
    counted = Counter(keys).most_common(1)
    return counted[0][0] if counted else ""
