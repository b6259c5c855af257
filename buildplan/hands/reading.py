"""Reading a design as the hands that are known of will build it."""

from __future__ import annotations

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


def measured_by(path: Path, hands: Path | None = None) -> tuple[Measurement, ...]:
    """The measurements of the hands that build a design: of the file named, else of the one
    beside the design; none where there is none."""
    file = hands or path.parent / HANDS_FILE
    if hands is None and not file.exists():
        return ()
    return read_hands(file)


def read_known(path: Path, voice: Voice, hands: Path | None = None) -> Design:
    """Read a design, in the reader's language as far as it has its own words in it, and with the
    lengths and minutes of the hands that are known of. Raises as `read_design` does."""
    design = translated_design(read_whole(path, CONSTANTS), voice.language)
    measured = measured_by(path, hands)
    return with_hands(design, learned_for(design, measured)) if measured else design


def built_by_hands(path: Path, hands: Path | None = None) -> BuiltBy:
    """How designs are built by the hands of the file named, else of the one beside the design."""
    measured = measured_by(path, hands)

    def built(design: Design) -> Design:
        return with_hands(design, learned_for(design, measured)) if measured else design

    return built
