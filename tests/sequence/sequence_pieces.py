"""Frameworks for tests: random tubes and random listed pieces."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from hypothesis import assume
from hypothesis import strategies as st

from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.framework.cells import cell_kind
from buildplan.framework.listed import build_listed
from buildplan.framework.model import BalloonType, Framework
from buildplan.framework.tube import LAYOUTS, TubePlan, build_tube
from buildplan.instructions.model import StepWords
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step
from buildplan.sequence.steps import plan_steps

CELLS = {
    "straight": (1, 1),
    "fan": (1, 0),
    "fan_in": (0, 1),
    "tip": (2, 0),
    "dip": (0, 2),
    "2,1": (2, 1),
    "1,3": (1, 3),
    "3,0": (3, 0),
    "2,2": (2, 2),
    "0,4": (0, 4),
}


def balloon(key: str, kind: str = "link", label: str = "", gauge_m: float = 0.2032) -> BalloonType:
    """A balloon sized to 8 inches."""
    return BalloonType(
        key, BALLOON_KINDS[kind], 0.3, gauge_m, gauge_m * 1.15, False, "#1F5F8B", label or key
    )


BALLOONS = {
    "long": balloon("long", label="deep blue"),
    "other": balloon("other", label="sea green"),
    "cross": balloon("cross", label="ivory"),
    "lock": balloon("lock", "round", "ivory", 0.0889),
}


def tube(
    course: Sequence[str],
    chains: int = 4,
    closed: bool = False,
    long: Sequence[str] = ("long",),
    by_letter: Mapping[str, Sequence[str]] | None = None,
) -> Framework:
    """A tube along `course`, cells by name."""
    letters = [lane.letter for lane in LAYOUTS[chains]]
    patterns = {letter: list(long) for letter in letters}
    patterns |= {letter: list(keys) for letter, keys in (by_letter or {}).items()}
    cells = [cell_kind(*CELLS[name]) for name in course]
    return build_tube(
        "Piece", BALLOONS, TubePlan(closed, patterns, "cross", "cross", "lock", cells)
    )


def listed(balloons: Sequence[tuple[str, str, str]], lock: str | None = "lock") -> Framework:
    """A piece listed joint by joint."""
    joints = list(dict.fromkeys(joint for one, other, _ in balloons for joint in (one, other)))
    return build_listed("Piece", BALLOONS, joints, balloons, lock)


STAR = ["straight", "straight", "straight", "tip", "straight", "straight", "straight", "dip"] * 5


@st.composite
def tubes(draw: st.DrawFn) -> Framework:
    """Tubes of 2, 3 or 4 chains, open or closed, of any cells, colours in turn or not."""
    chains = draw(st.sampled_from((2, 3, 4)))
    closed = draw(st.booleans())
    course = draw(
        st.lists(
            st.one_of(st.just("straight"), st.sampled_from(sorted(CELLS))),
            min_size=1,
            max_size=14,
        )
    )
    least = 3 if closed else 1
    for side in (0, 1):
        missing = least - sum(CELLS[name][side] for name in course)
        course += ["straight"] * max(0, missing)
    long = draw(st.sampled_from((["long"], ["long", "other"], ["long", "long", "other"])))
    of_b: list[str] | None = draw(st.sampled_from((None, ["other"])))
    by_letter = None if of_b is None else {"B": of_b}
    framework = tube(course, chains, closed, long, by_letter)
    # a side that comes all round within one cell would put two braces on the same joints
    assume(all(brace.links for brace in framework.braces))
    return framework


@st.composite
def listed_pieces(draw: st.DrawFn, connected: bool = True) -> Framework:
    """Connected pieces of up to some 12 joints, two balloons between the same joints
    allowed, with locks or without."""
    count = draw(st.integers(2, 12))
    joints = [f"{draw(st.sampled_from('vw'))}{i + 1}" for i in range(count)]
    ties = [(joints[draw(st.integers(0, i - 1))], joints[i]) for i in range(1, count)]
    more = draw(
        st.lists(
            st.tuples(st.integers(0, count - 1), st.integers(0, count - 1)).filter(
                lambda tie: tie[0] != tie[1]
            ),
            max_size=18,
        )
    )
    ties += [(joints[i], joints[j]) for i, j in more]
    keys = draw(
        st.lists(st.sampled_from(("long", "other")), min_size=len(ties), max_size=len(ties))
    )
    lock = draw(st.sampled_from(("lock", None)))
    return listed([(one, other, key) for (one, other), key in zip(ties, keys, strict=True)], lock)


def told(framework: Framework, language: str = "en") -> list[tuple[Step, StepWords]]:
    """The steps of a piece, each with what it says."""
    steps = plan_steps(framework)
    return list(zip(steps, tell_steps(steps, framework, "in", Voice(language)), strict=True))


def all_words(words: StepWords) -> list[str]:
    """Everything that a step says, but for its check."""
    return [words.title, words.text, *(line for turn in words.turns for line in turn.lines)]
