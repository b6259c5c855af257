"""Reading a design as the hands that are known of will build it."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path

from buildplan.design.model import Design
from buildplan.design.translating import translated_design
from buildplan.evaluation.measured import BuiltBy
from buildplan.evaluation.seating import read_whole
from buildplan.hands.applying import learned_for, with_hands
from buildplan.hands.file import read_hands
from buildplan.hands.model import HANDS_FILE, Measurement
from buildplan.language.voice import Voice
from buildplan.shape.constants import CONSTANTS
from buildplan.source.kinds import FileKind
from buildplan.source.problems import DesignProblemsError, Problem, ProblemKind

# With what is wrong so a piece has its balloons and joints, and a shape that shows what is wrong.
DRAWN_ALL_THE_SAME: frozenset[ProblemKind] = frozenset({FileKind.NOT_COMING_ROUND})


def measured_by(path: Path, hands: Path | None = None) -> tuple[Measurement, ...]:
    """The measurements of the hands that build a design: of the file named, else of the one
    beside the design; none where there is none."""
    file = hands or path.parent / HANDS_FILE
    if hands is None and not file.exists():
        return ()
    return read_hands(file)


def read_known(
    path: Path,
    voice: Voice,
    hands: Path | None = None,
    passed_over: Collection[ProblemKind] = (),
) -> Design:
    """Read a design, in the reader's language as far as it has its own words in it, and with the
    lengths and minutes of the hands that are known of. Passes over problems and raises as
    `read_design` does."""
    design = translated_design(read_whole(path, CONSTANTS, passed_over), voice.language)
    measured = measured_by(path, hands)
    return with_hands(design, learned_for(design, measured)) if measured else design


def read_draft(
    path: Path, voice: Voice, hands: Path | None = None
) -> tuple[Design, tuple[Problem, ...]]:
    """Read a design as `read_known` does, which may have problems with which it can be drawn and
    tied all the same, and those problems. Raises as `read_design` does of all others."""
    try:
        return read_known(path, voice, hands), ()
    except DesignProblemsError as error:
        if not DRAWN_ALL_THE_SAME.issuperset(problem.kind for problem in error.problems):
            raise
        return read_known(path, voice, hands, DRAWN_ALL_THE_SAME), error.problems


def built_by_hands(path: Path, hands: Path | None = None) -> BuiltBy:
    """How designs are built by the hands of the file named, else of the one beside the design."""
    measured = measured_by(path, hands)

    def built(design: Design) -> Design:
        return with_hands(design, learned_for(design, measured)) if measured else design

    return built
