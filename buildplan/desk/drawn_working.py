"""What is drawn of a design only when it is asked for: its steps as they are printed, and the
courses that are offered for it."""

from __future__ import annotations

import base64
import json

from buildplan.booklet.common.book import book_of_piece
from buildplan.booklet.common.step_drawings import drawings_from
from buildplan.design.measures import units_read
from buildplan.desk.folder import Folder, version_of
from buildplan.desk.outcome import Made
from buildplan.desk.print_task import (
    COVER,
    OFFERS,
    CoverWork,
    OffersWork,
    Report,
    StepsWork,
    step_result,
)
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import Results, results_of
from buildplan.document.paper import PAPERS
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.png import first_page_png, picture_png
from buildplan.drawing.scene import finished_picture
from buildplan.drawing.svg import picture_svg
from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
from buildplan.fitting.checking import data_of
from buildplan.fitting.near_courses import near_courses
from buildplan.hands.reading import read_known
from buildplan.language.voice import Voice
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError

EDITION, PAPER = "training", "a4"
MOST_OFFERED, MOST_SOLVED = 4, 24
OFFER_POINTS, OFFER_DPI = 180.0, 96.0
COVER_PIXELS = 420  # wide: twice as fine as the page shows it


def _results(task: StepsWork | OffersWork) -> Results | None:
    """Where it goes; None where the file has become another."""
    folder = Folder(task.root)
    try:
        data = folder.read(task.name)
    except RefusedError:
        return None
    same = version_of(data) == task.version
    return results_of(folder, data, task.language) if same else None


def draw_steps(task: StepsWork, report: Report) -> None:
    """The pictures of all steps, each as soon as it is drawn."""
    results = _results(task)
    if results is None:
        return
    voice = Voice(task.language)
    try:
        design = read_known(Folder(task.root).file(task.name), voice)
    except (UnreadableDesignError, DesignProblemsError):
        return
    made = evaluate(design, units_read(voice, design.units), NEW_PARTS)
    book = book_of_piece(made, PAPERS[PAPER], EDITION, voice.language)
    first = task.first if task.first <= len(book.steps) else 1
    for number, picture in drawings_from(book, first):
        results.put(step_result(number), picture_svg(picture).encode())
        report(Made(step_result(number)))


def find_offers(task: OffersWork, report: Report) -> None:
    """The nearest courses that close and stand, as changes of the file and as pictures."""
    results = _results(task)
    if results is None:
        return
    voice = Voice(task.language)
    try:
        _, data = data_of(Folder(task.root).file(task.name), voice)
        tube = data["build"].get("tube")
        closed = isinstance(tube, dict) and tube.get("closed") is True
        found = near_courses(data, MOST_OFFERED, MOST_SOLVED) if closed else []
    except (UnreadableDesignError, DesignProblemsError):
        found = []
    offers = []
    for one in found:
        piece = one.measured
        picture = finished_picture(
            piece.framework, piece.shape, CAMERAS["front"], OFFER_POINTS, OFFER_POINTS
        )
        drawn = base64.b64encode(picture_png(picture, OFFER_DPI)).decode("ascii")
        edits = [{"op": "put", "path": list(put.at), "value": put.value} for put in one.changes]
        words = voice.tell(one.edit.words)
        offers.append({"words": words, "picture": f"data:image/png;base64,{drawn}", "edits": edits})
    results.put(OFFERS, json.dumps(offers, ensure_ascii=False).encode())
    report(Made(OFFERS))


def draw_cover(task: CoverWork, report: Report) -> None:
    """The first page of what was printed; nothing where it cannot be read."""
    folder = Folder(task.root)
    try:
        printed = (folder.output / task.file).read_bytes()
    except FileNotFoundError:  # gone since it was asked for
        return
    drawn = first_page_png(printed, COVER_PIXELS)
    if drawn is not None:
        Results(folder.results, task.key).put(COVER, drawn)
        report(Made(COVER))
