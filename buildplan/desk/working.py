"""What is worked out of a design, in a process of its own; each part is kept as soon as there.

This module loads all that the work needs: processes are forked from one that has loaded it.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from buildplan.booklet.common.book import book_of_piece
from buildplan.design.building import build_framework
from buildplan.design.measures import units_read
from buildplan.design.model import Design
from buildplan.desk.cards import broken_card, card_of, card_picture, counted_card
from buildplan.desk.figures import piece_figures
from buildplan.desk.folder import Folder, version_of
from buildplan.desk.outcome import Made
from buildplan.desk.problem_data import problems_as_data, readable_data, untried
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import Results, results_of
from buildplan.desk.shown import shown_json
from buildplan.desk.task import (
    CARD,
    COUNTS,
    FACTS,
    PICTURE,
    PIECE,
    SHAPE,
    WAIT,
    CountWork,
    DesignWork,
    Report,
)
from buildplan.desk.whole_file import WholeFile
from buildplan.document.paper import PAPERS
from buildplan.evaluation.evaluating import NEW_PARTS, Evaluation, evaluate_shape, resting_shape
from buildplan.evaluation.expected_time import PieceSize, seconds_to_tell, size_of
from buildplan.evaluation.expected_words import expected_words
from buildplan.fitting.checking import Checked, checked, tried
from buildplan.hands.applying import learned_for
from buildplan.hands.reading import measured_by, read_known
from buildplan.language.voice import Voice
from buildplan.screen.gather import gather_piece, gather_shape
from buildplan.source.problems import DesignProblemsError, Problem, UnreadableDesignError

EDITION = "training"


@dataclass(frozen=True)
class _Bench:
    """Where the results of a task go."""

    task: DesignWork | CountWork
    path: Path
    results: Results
    voice: Voice
    report: Report

    def put(self, what: str, data: bytes) -> None:
        self.results.put(what, data)
        self.report(Made(what))

    def put_json(self, what: str, data: object) -> None:
        self.put(what, as_json(data))


def as_json(data: object) -> bytes:
    """Plain data as JSON."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")).encode()


def work_out(task: DesignWork, report: Report) -> None:
    """Work out a version of a design; nothing where the file has become another."""
    bench = _bench(task, report)
    if bench is None:
        return
    design = _design(bench, whole=task.whole)
    if design is not None:
        _worked_out(bench, design, whole=task.whole)


def count_out(task: CountWork, report: Report) -> None:
    """Count the balloons of a version of a design; nothing where the file has become another."""
    bench = _bench(task, report)
    design = None if bench is None else _design(bench, whole=False)
    if bench is not None and design is not None:
        bench.put_json(COUNTS, counted_card(design, build_framework(design), bench.voice))


def _bench(task: DesignWork | CountWork, report: Report) -> _Bench | None:
    folder = Folder(task.root)
    try:
        data = folder.read(task.name)
    except RefusedError:
        return None
    if version_of(data) != task.version:
        return None
    results = results_of(folder, data, task.language)
    return _Bench(task, folder.file(task.name), results, Voice(task.language), report)


def _design(bench: _Bench, *, whole: bool) -> Design | None:
    """The design as it is read, if no piece can be worked out from it what is wrong is kept."""
    try:
        design = read_known(bench.path, bench.voice)
    except UnreadableDesignError as error:
        _broken(bench, [error.problem], "", whole=whole)
        return None
    except DesignProblemsError as error:
        _broken(bench, error.problems, error.name, whole=whole)
        return None
    same = version_of(Folder(bench.task.root).read(bench.task.name)) == bench.task.version
    return design if same else None


def _broken(bench: _Bench, problems: Sequence[Problem], name: str, *, whole: bool) -> None:
    """A file that no piece can be worked out from."""
    bench.put_json(CARD, broken_card(name, problems, bench.voice))
    if not whole:
        return
    data = readable_data(bench.path)
    for settled in (False, True):
        known = tried(bench.path, problems, bench.voice) if settled else untried(problems)
        listed = problems_as_data(known, WholeFile(data, bench.voice))
        bench.put_json(FACTS, {"name": name, "settled": settled, "check": None, "problems": listed})


def _worked_out(bench: _Bench, design: Design, *, whole: bool) -> None:
    """The shape first, then what it weighs and how it stands, then the order of work."""
    voice, units = bench.voice, units_read(bench.voice, design.units)
    framework = build_framework(design)
    if whole:
        _tell_if_long(bench, design, size_of(framework))
    shape = resting_shape(design, framework)
    if whole:
        piece = gather_shape(design, framework, shape, units, [voice])
        bench.put(SHAPE, shown_json(piece, shape, voice))
    else:  # a card shows its picture first
        bench.put(PICTURE, card_picture(framework, shape))
    made = evaluate_shape(design, framework, shape, units, NEW_PARTS)
    if whole:
        known = learned_for(design, measured_by(bench.path))
        unsettled = Checked(made, None, known)
        bench.put_json(FACTS, piece_figures(unsettled, bench.path, voice, settled=False))
    bench.put_json(CARD, card_of(made, voice))
    if whole:
        bench.put(PICTURE, card_picture(framework, shape))
        _rest(bench, made)


def _tell_if_long(bench: _Bench, design: Design, size: PieceSize) -> None:
    """How long a large piece is likely to take, for those who wait for it."""
    words = expected_words(design.name, size, seconds_to_tell(size), bench.voice)
    if words:
        bench.put_json(WAIT, {"words": words})


def _rest(bench: _Bench, made: Evaluation) -> None:
    """The order of work, and what would mend the piece or stiffen it, tried."""
    voice = bench.voice
    book = book_of_piece(made, PAPERS["a4"], EDITION, voice.language)
    bench.put(PIECE, shown_json(gather_piece(book, [voice]), made.shape, voice))
    found = checked(bench.path, made, voice)
    bench.put_json(FACTS, piece_figures(found, bench.path, voice, settled=True))
