"""Refusing what cannot be built from: a piece whose printed steps do not come to it again."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from buildplan.commands.app import errors
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.booklet.common.book import Book


def rebuilds(path: Path, book: Book, voice: Voice) -> bool:
    """Whether the piece can be built again from the steps and words that are to be printed; says
    what to send us where it cannot, for that is a defect of ours."""
    from buildplan.instructions.guarding import DoesNotRebuildError, assert_rebuilds

    try:
        assert_rebuilds(book.framework, book.steps, book.words)
    except DoesNotRebuildError as error:
        words = voice.say(
            "{file}: no booklet printed, for its steps do not build the piece again (step {step}:"
            " {reason}). This is a defect of buildplan, not of your design: please send us the"
            " design file and this message.",
            file=str(path),
            step=error.step,
            reason=error.reason,
        )
        errors.print(words, markup=False)
        return False
    return True
