"""Refusing what cannot be built from: a piece whose printed steps do not come to it again."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from buildplan.commands.aside import aside
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book
    from buildplan.evaluation.evaluating import Evaluation
    from buildplan.framework.model import Framework
    from buildplan.instructions.model import StepWords


def rebuilds(path: Path, piece: Evaluation, words: Sequence[StepWords], voice: Voice) -> bool:
    """Whether a piece can be built again from its steps and the words that are to be printed; says
    what to send us where it cannot, for that is a defect of ours."""
    return _rebuilds(path, piece, piece.framework, words, voice, voice)


def rebuilds_in_every_language(
    path: Path, book: Book, voices: Iterable[Voice], voice: Voice
) -> bool:
    """As `rebuilds`, of the words that a screen shows in each language; `voice` says what is
    wrong."""
    from buildplan.design.building import build_framework
    from buildplan.screen.words import told_in

    told = told_in(book, voices)
    return all(
        _rebuilds(path, book, build_framework(one.design), one.steps, Voice(language), voice)
        for language, one in told.items()
    )


def _rebuilds(
    path: Path,
    piece: Evaluation,
    framework: Framework,
    words: Sequence[StepWords],
    told: Voice,
    voice: Voice,
) -> bool:
    from buildplan.instructions.guarding import DoesNotRebuildError, assert_rebuilds

    try:
        assert_rebuilds(framework, piece.steps, words, piece.units, told)
    except DoesNotRebuildError as error:
        said = voice.say(
            "{file}: nothing printed, for its steps do not build the piece again (step {step}:"
            " {reason}). This is a defect of buildplan, not of your design: please send us the"
            " design file and this message.",
            file=str(path),
            step=error.step,
            reason=error.reason,
        )
        aside(said)
        return False
    return True
