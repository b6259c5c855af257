"""A design checked: its figures, what is wrong with it, and what would mend it or stiffen it.

`buildplan check` prints this, and the desk shows it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from buildplan.evaluation.evaluating import Evaluation
from buildplan.evaluation.facts import examination_as_json, facts_as_json
from buildplan.evaluation.measured import Measured
from buildplan.evaluation.passing import Door, passing_as_json
from buildplan.fitting.mending import (
    ON_THE_PIECE,
    READ_ALL_THE_SAME,
    TRIED_CAUTIONS,
    Broken,
    Stiffer,
    stiffer,
    tried_on_the_piece,
)
from buildplan.hands.applying import learned_for
from buildplan.hands.forecast import forecast, height_of
from buildplan.hands.model import Hands
from buildplan.hands.reading import measured_by, read_known
from buildplan.language.voice import Voice
from buildplan.source.file_text import text_of
from buildplan.source.problems import DesignProblemsError, Problem
from buildplan.source.trade_words import in_file_words
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load

MOST_STIFFENED = 3000  # balloons of a piece that what would stiffen it is tried on


@dataclass(frozen=True)
class Checked:
    """A piece with every way that mends it tried, what stiffens it, and the hands that build it."""

    piece: Evaluation
    stiffer: Stiffer | None
    known: Hands


def checked(path: Path, piece: Evaluation, voice: Voice, hands: Path | None = None) -> Checked:
    """The piece of a design file checked: what would mend its problems and cautions tried on it."""
    found = piece.examination.cautions
    cautions = [one for one in found if one.kind in TRIED_CAUTIONS]
    measured = measured_by(path, hands)
    # changes are tried with the figures of the file: a piece of other hands is no measure for them
    solved = None if measured else Measured(piece.design, piece.framework, piece.shape)
    told = tried(path, (*piece.facts.problems, *cautions), voice, solved)
    kept = len(piece.facts.problems)
    others = [one for one in found if one not in cautions]
    piece = replace(
        piece,
        facts=replace(piece.facts, problems=told[:kept]),
        examination=replace(piece.examination, cautions=(*told[kept:], *others)),
    )
    known = learned_for(piece.design, measured)
    return Checked(piece, stiffer_of(path, piece), known)


def checked_as_json(
    checked: Checked, voice: Voice, doors: Sequence[Door] = ()
) -> dict[str, object]:
    """The object that `check --json` prints."""
    piece, known = checked.piece, checked.known
    extra = None if checked.stiffer is None else checked.stiffer.extra
    tall = forecast(known.taken_for_granted, height_of(piece))
    return {
        **facts_as_json(piece.facts, voice),
        **examination_as_json(piece.examination, extra, voice),
        "height_range_m": [round(tall.low_m, 4), round(tall.high_m, 4)],
        **passing_as_json(piece, doors),
    }


def file_data(path: Path) -> tuple[str, dict[str, Any]]:
    """The text of a design file that has been read, and its content as plain data."""
    text = text_of(path)
    data = in_file_words(plain(load(text, str(path)).root))
    assert isinstance(data, dict), "a design that has been read is made of keys"
    return text, data


def data_of(path: Path, voice: Voice) -> tuple[str, dict[str, Any]]:
    """The text of a design file and its content as plain data, which is right but for its course
    and the places of its parts.

    Raises UnreadableDesignError, or DesignProblemsError when other things are wrong with it.
    """
    try:
        read_known(path, voice)
    except DesignProblemsError as error:
        if not all(one.kind in READ_ALL_THE_SAME for one in error.problems):
            raise
    return file_data(path)


def to_try(problems: Sequence[Problem]) -> bool:
    """Whether there is something to be tried on the piece itself."""
    return any(one.kind in ON_THE_PIECE for one in problems)


def tried(
    path: Path, problems: Sequence[Problem], voice: Voice, solved: Measured | None = None
) -> tuple[Problem, ...]:
    """The problems of a design, each change that they suggest tried on the piece itself, which is
    solved anew where it is not given as `solved`."""
    if not to_try(problems):
        return tuple(problems)
    try:
        _, data = data_of(path, voice)
    except DesignProblemsError:
        return tuple(problems)
    return tried_on_the_piece(data, problems, path.parent, solved)


def stiffer_of(path: Path, piece: Evaluation) -> Stiffer | None:
    """What stiffens a piece that has no problems, tried on it; None where nothing does, or where
    trying takes longer than the check itself should."""
    if piece.facts.problems or piece.facts.total > MOST_STIFFENED:
        return None
    _, data = file_data(path)
    measured = Measured(piece.design, piece.framework, piece.shape)
    return stiffer(Broken(data, path.parent), measured)
