"""New designs that are fitted to an outline, and the pictures of beginnings: work for a process of
its own. Pictures that were sent are read here and nowhere else."""

from __future__ import annotations

from html import escape
from pathlib import Path
from typing import get_args

from buildplan.design.measures import Units
from buildplan.design.reading import joined_data
from buildplan.desk.beginnings import CALLED, pattern_design
from buildplan.desk.cards import card_picture
from buildplan.desk.fit_task import BeginningsWork, FitWork, Report
from buildplan.desk.folder import Folder
from buildplan.desk.outcome import Begun, Made, Refused, Share
from buildplan.desk.refusals import RefusedError
from buildplan.desk.saving import begin
from buildplan.desk.titles import stem_of, titled
from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
from buildplan.evaluation.seating import seated
from buildplan.fitting.candidates import Progress
from buildplan.fitting.effort import USUAL
from buildplan.fitting.fit_file import fit_text
from buildplan.fitting.fitting import fit_outline, recommended
from buildplan.fitting.outline import Outline, outline_of
from buildplan.fitting.outlines import named_outline
from buildplan.fitting.photo_outline import photo_outline
from buildplan.fitting.progress_report import progress_words
from buildplan.fitting.sources import FIGURE_GAUGES, gauges_for
from buildplan.fitting.svg_outline import outline_in, svg_outline
from buildplan.fitting.workers import working
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.shape.constants import CONSTANTS
from buildplan.source.bounded import why_not_read
from buildplan.source.trade_words import in_file_words
from buildplan.source.whole_files import write_whole
from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load


def begin_fitted(task: FitWork, report: Report) -> None:
    """Fit a design and put it into the folder; what cannot be fitted is told."""
    voice = Voice(task.language)
    report(Share(0.0, voice.say("Fitting {name} ...", name=task.title)))
    try:
        made = _fitted(task, voice, report)
        if made is None:
            return
        report(Begun(begin(Folder(task.root), stem_of(task.title), titled(made, task.title))))
    except ToldError as error:
        words = voice.tell(error.told)
        sent = str(task.sent or task.title)
        report(Refused(words.replace(sent, task.title)))
    except RefusedError as error:
        report(Refused(voice.tell(error.told)))
    except OSError as error:  # of the picture that was sent
        words = voice.say("{file}: {problem}", file=task.title, problem=why_not_read(error))
        report(Refused(words))


def _fitted(task: FitWork, voice: Voice, report: Report) -> bytes | None:
    """The text of the design; None, with the reason told, where nothing comes close."""
    outline = _outline(task, voice)
    units: Units = next(unit for unit in get_args(Units) if unit == task.units)

    reached: list[Progress] = []

    def watch(progress: Progress) -> bool:
        report(Share(min(0.95, progress.share), progress_words(progress, voice, reached)))
        reached.append(progress)
        return True

    gauges, figures = gauges_for(outline, units), FIGURE_GAUGES[units]
    with working(1):
        fits = fit_outline(outline, gauges, units, USUAL, voice, watch, figures)
    if fits:
        return fit_text(recommended(fits), voice).encode()
    words = voice.say(
        "{outline}: no closed tube follows this outline at this height", outline=task.title
    )
    report(Refused(words))
    return None


def _outline(task: FitWork, voice: Voice) -> Outline:
    """The outline that a design is fitted to. Raises ToldError."""
    if task.named:
        return named_outline(task.named, task.height_m, voice)
    if task.sent is not None:
        try:
            read = svg_outline if task.sent.suffix == ".svg" else photo_outline
            drawn = read(task.sent)
        finally:
            task.sent.unlink(missing_ok=True)
    else:
        path = escape(task.drawn, quote=True)
        text = f'<svg xmlns="http://www.w3.org/2000/svg"><path d="{path}"/></svg>'
        drawn = outline_in(text, task.title)
    return outline_of(task.title, drawn.points, task.height_m, drawn.holes, drawn.left_out)


def draw_beginnings(task: BeginningsWork, report: Report) -> None:
    """Draw what each pattern is begun with."""
    for key in CALLED:
        target = task.folder / f"{key}.png"
        if target.exists():
            continue
        text = pattern_design(key, key, Voice()).decode()
        data = in_file_words(plain(load(text, key).root))
        design = seated(joined_data(data, Path(), CONSTANTS)).design
        made = evaluate(design, design.units, NEW_PARTS)
        write_whole(target, card_picture(made.framework, made.shape))
        report(Made(target.name))
