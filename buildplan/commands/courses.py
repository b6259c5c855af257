"""The command that looks for courses that close and stand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, answer_data, aside, busy
from buildplan.commands.expecting import tell_expected
from buildplan.commands.options import IN_ENGLISH, DesignArgument, JsonOption, LanguageOption
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.fitting.near_courses import NearCourse

BALLOONS_A_CELL = 14  # of a tube of four chains, braces and locks and all


@app.command()
def course(
    design: DesignArgument,
    count: Annotated[int, typer.Option(min=1, max=12, help="How many courses to find.")] = 4,
    effort: Annotated[
        int,
        typer.Option(
            min=1, max=400, help="How many shapes to solve at most; the same on any machine."
        ),
    ] = 24,
    picture: Annotated[
        Path | None,
        typer.Option(help="A sheet of them: .png, .pdf or .svg.", show_default=False),
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option(help="Write the design with one of them, a .yaml.", show_default=False),
    ] = None,
    take: Annotated[int, typer.Option(min=1, help="Which of them --out writes.")] = 1,
    as_json: JsonOption = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Find the nearest courses of a closed tube that close and stand.

    Starts from the course that the design has, come round or not, and changes few cells.
    """
    from buildplan.commands.files import ProblemsFoundError, write_whole
    from buildplan.design.measures import units_read
    from buildplan.drawing.forms import FORMS
    from buildplan.fitting.checking import data_of
    from buildplan.fitting.course_sheet import course_sheet
    from buildplan.source.file_changes import changed_text

    voice = Voice(language)
    _refuse(out, design, picture, voice)
    text, data = data_of(design, voice)
    tube = data["build"].get("tube")
    if not (isinstance(tube, dict) and tube.get("closed") is True):
        raise typer.BadParameter(
            voice.say("this is no closed tube: it has no course that must close")
        )
    found = _looked_for(data, count, effort, voice)
    if as_json:
        listed = [_as_data(one, number, voice) for number, one in enumerate(found, 1)]
        answer_data(listed)
    elif found:
        answer(_report(found, units_read(voice, data["units"]), voice))
    if not found:
        _tell_none(design, data, voice)
        raise ProblemsFoundError
    if picture is not None:
        sheet = course_sheet(found, units_read(voice, data["units"]), voice)
        write_whole(picture, FORMS[picture.suffix.lower()](sheet))
        answer(picture, err=as_json)
    if out is not None:
        made, _ = changed_text(text, found[min(take, len(found)) - 1].changes)
        write_whole(out, made.encode())
        answer(out, err=as_json)


def _refuse(out: Path | None, design: Path, picture: Path | None, voice: Voice) -> None:
    """A wrong call where a file to be written cannot be."""
    from buildplan.commands.files import refuse_ending, refuse_itself
    from buildplan.drawing.forms import FORMS

    refuse_ending(out, (".yaml", ".yml"), voice)
    refuse_itself(out, design, voice)
    refuse_ending(picture, tuple(FORMS), voice)


def _looked_for(
    data: Mapping[str, Any], count: int, effort: int, voice: Voice
) -> Sequence[NearCourse]:
    """The courses found; says meanwhile how far the search is."""
    from buildplan.evaluation.expected_time import seconds_to_try_courses
    from buildplan.fitting.near_courses import near_courses
    from buildplan.patterns.course import expand_course
    from buildplan.patterns.tube_keys import Tube

    cells = expand_course(Tube.model_validate(data["build"]["tube"]))
    tell_expected(seconds_to_try_courses(BALLOONS_A_CELL * len(cells), effort), voice)
    with busy(voice.say("Trying other courses ...")) as show:

        def tell(solved: int, found: int) -> None:
            words = voice.say("{solved} shapes solved, {found} found", solved=solved, found=found)
            show(words)

        return near_courses(data, count, effort, tell)


def _tell_none(design: Path, data: Mapping[str, Any], voice: Voice) -> None:
    """That no course was found, and what else would mend the piece."""
    from buildplan.fitting.mending import Broken, without_what_breaks
    from buildplan.source.suggestions import Suggestion, suggestion_words

    words = voice.say("{file}: no course near this one closes and stands", file=str(design))
    ways = without_what_breaks(Broken(data, design.parent))
    mends = f"; {suggestion_words(Suggestion(ways=ways), voice)}" if ways else ""
    aside(f"{words}{mends}")


def _report(found: Sequence[NearCourse], units: Any, voice: Voice) -> str:
    """Each course: how to come to it, what it makes, and how the file writes it."""
    from buildplan.design.measures import size_words
    from buildplan.fitting.course_words import course_words

    lines = []
    for number, one in enumerate(found, 1):
        lines.append(f"{number}. {voice.tell(one.edit.words)}")
        size = voice.say(
            "{count} balloons, {width} x {height}, stands",
            count=one.measured.balloons,
            width=size_words(one.measured.width_m, units),
            height=size_words(one.measured.height_m, units),
        )
        lines.append(f"   {size}")
        lines += [f"     {line}" for line in course_words(one.edit.cells)]
    return "\n".join(lines)


def _as_data(one: NearCourse, number: int, voice: Voice) -> dict[str, object]:
    from buildplan.source.suggestions import change_as_data

    shape = one.measured.shape
    return {
        "number": number,
        "text": voice.tell(one.edit.words),
        "moved": one.edit.moved,
        "changes": [change_as_data(change) for change in one.changes],
        "balloons": one.measured.balloons,
        "width_m": round(shape.width_m, 3),
        "height_m": round(shape.height_m, 3),
        "tip_angle": round(shape.standing.tip_angle_deg, 1),
    }
