"""Crew pages for the floor: the jobs on site, the runs of braces beside their pictures."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from itertools import groupby

import numpy as np
from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.lifting import first_lift_notice
from buildplan.booklet.common.phone_code import code_at_step
from buildplan.booklet.crew.corners import corners_drawn
from buildplan.booklet.crew.courses import course_blocks, is_of_courses
from buildplan.booklet.crew.equal_parts import equal_part, equal_part_blocks
from buildplan.booklet.crew.hand_moves import hand_moves, words_told
from buildplan.booklet.crew.laying import floor_lines, is_laid_by_plan, laid_out
from buildplan.booklet.crew.run_lines import RunLine, run_lines
from buildplan.booklet.crew.standing_so_far import standing
from buildplan.booklet.crew.standing_up import stood_up
from buildplan.booklet.crew.ties import put_together, stage_of_ties, stages_of_ties
from buildplan.booklet.crew.when import JobTimes, job_heading, later_bars
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.layout import Columns, in_pairs, is_wide
from buildplan.document.sizing import Sparing
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong, unbroken
from buildplan.drawing.bodies import Scene, link_length_m
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import step_picture
from buildplan.framework.chain_roles import Layer
from buildplan.instructions.job_checks import job_checks
from buildplan.instructions.jobs import JobRow, job_row, job_title
from buildplan.instructions.setting_up import is_tying
from buildplan.instructions.stages import part_of_step
from buildplan.language.phrases import clauses, sentences
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import Job, JobKind, RunRow
from buildplan.sequence.model import Kind, Step
from buildplan.shape.model import Shape

RUN_PICTURE, BESIDE_TABLE = 140.0, 140.0  # greatest heights
LEAST_TALL = 50.0
TALL, NARROW_SHARES = 1.6, (0.74,)  # a piece so high for its width is beside its words on any paper
# Of the width, the first of these goes to a table with which it takes hardly more height than with
# the last: the picture beside it has the rest.
TABLE_SHARES, PICTURE_GAP = (0.7, 0.74, 0.78, 0.82, 0.87), 8.0
A_LINE = 16.0  # so much higher at most, for a larger picture
CLOSEST_ROWS = 0.8
LONGEST_BESIDE = 220  # letters of what is told in half the width, its markup among them
LONGEST_NAME = 20  # letters of a name that stays on one line


def assembling(book: Book, work: Sequence[Job], times: JobTimes) -> list[Flowable]:
    """The jobs on site: each run of braces a table beside one picture, and when it begins."""
    first = next((job for job in work if not job.portable), None)
    blocks = code_at_step(book, first.steps[0]) if first else []
    blocks += corners_drawn(book, words_told(book))
    blocks += hand_moves(book)
    job_of = {step.number: job.number for job in work for step in job.steps}
    before = _to_be_read(book, work, job_of)
    blocks += before.get(0, ())
    for name, run in groupby(work, key=lambda job: equal_part(book, job)):
        if name:
            blocks += equal_part_blocks(book, tuple(run), name, job_of, times)
            continue
        on_site = [job for job in run if not job.portable]
        for short, several in groupby(on_site, key=lambda job: _is_short(book, job)):
            told = [_told(book, job, times, before.get(job.number, ())) for job in several]
            blocks += in_pairs(book.paper, told) if short else [b for one in told for b in one]
    return blocks


def _is_short(book: Book, job: Job) -> bool:
    """Whether a job is a few words, so that the next one has room beside it."""
    lines = floor_lines(book, job.steps)
    if job.kind is JobKind.STAND_UP:
        return False
    return not job.rows and len(lines) == 1 and len(lines[0]) <= LONGEST_BESIDE


def _told(book: Book, job: Job, times: JobTimes, before: Sequence[Flowable]) -> list[Flowable]:
    """A job under its name; what must be known `before` it stands there too."""
    voice = book.voice
    title = job_title(voice, job, book.told)
    name = voice.say("Job {number}: {title}", number=job.number, title=title)
    head = job_heading(name, job, times)
    if is_of_courses(job):
        told = _beside_picture(book, course_blocks(book, job, times), job)
    elif job.kind is JobKind.STAND_UP and len(job.steps) == 1:
        told = tuple(stood_up(book, job.steps[0]))
    elif any(row.kind is not Kind.LAY for row in job.rows):
        told = _run(book, job, times)
    else:
        return [head, *laid_out(book, job.steps, before)]
    return [head, *before, *told]


def _to_be_read(
    book: Book, work: Sequence[Job], job_of: Mapping[int, int]
) -> Mapping[int, Sequence[Flowable]]:
    """When the piece may be lifted, and what a line of several braces means: by the number of the
    job that lays out what is braced; else of the first with such a line, or 0, before all."""
    notice = first_lift_notice(book, book.steps, job_of)
    words = book.voice.say(
        "A line of several braces gives the joints of the first and of the last: each brace is "
        "one balloon further along every chain than the one before it, and is locked before "
        "the next."
    )
    reads = [job for job in work if any(line.several for line in run_lines(book, job.rows))]
    how: list[Flowable] = [Words(words)] if reads else []
    laid = [one for one in work if one.kind is JobKind.LAY_OUT and is_laid_by_plan(book, one.steps)]
    if laid:
        return {laid[0].number: [*notice, *how]}
    return {0: notice, **{job.number: how for job in reads[:1]}}


def _run(book: Book, job: Job, times: JobTimes) -> tuple[Flowable, ...]:
    voice = book.voice
    laid = [step for step in job.steps if step.kind is Kind.LAY]
    ties = [row for row in job.rows if _is_tie(row)]
    tied = bool(ties) and all(row.locks for row in ties)
    own = [row for row in job.rows if row.kind is not Kind.LAY and not (tied and _is_tie(row))]
    told = run_lines(book, own)
    words = put_together(book, [step for step in job.steps if not (tied and is_tying(step))])
    before: list[Flowable] = [Items(words, ticked=True)] if words else []
    before += [_table(book, job, told, times)] if told else []
    stages = stages_of_ties(book, list(filter(is_tying, job.steps))) if tied else []
    if stages and stages[0].lines and not before:
        before = [Items(stages[0].lines, ticked=True)]
        stages[0] = replace(stages[0], lines=())
    counted = f"{clauses(voice, standing(book, job.steps))}."
    check = Words(
        voice.say(
            "{check} {counts}",
            check=strong(voice.say("Check")),
            counts=plain(sentences(*job_checks(book.context, job.steps), counted)),
        )
    )
    return (
        *(laid_out(book, laid, ()) if laid else ()),
        *(_beside_picture(book, before, job) if before else ()),
        *(block for stage in stages for block in stage_of_ties(book, stage)),
        check,
    )


def _is_tie(row: RunRow) -> bool:
    return row.kind is Kind.JOIN and len(row.joints) > 1


def _table(book: Book, job: Job, told: Sequence[RunLine], times: JobTimes) -> Grid:
    """The lines of a run: what is tied, along which joints, and which are locked then; when it is
    gone on with after a break."""
    voice = book.voice
    with_locks = any(line.locks for line in told)
    starts = later_bars(job, [line.step for line in told], times)
    rows = tuple(
        (
            " ".join(filter(None, (strong(_unparted(line.name)), plain(line.cell), begins))),
            plain(line.joints),
            *((plain(line.locks),) if with_locks else ()),
        )
        for line, begins in zip(told, starts, strict=True)
    )
    tied = any(row.kind in (Kind.BRACE, Kind.SINGLE) for row in job.rows)
    head = (
        voice.say("Brace") if any(row.brace is not None for row in job.rows) else "",
        voice.say("Joints in order") if tied else voice.say("Knots that meet"),
        *((voice.say("Then lock"),) if with_locks else ()),
    )
    shares = (32, 130, 48) if with_locks else (48, 114)
    return Grid(head, rows, shares, pad=CLOSEST_ROWS, after=5, ticked=True)


def _unparted(name: str) -> str:
    return unbroken(name) if len(name) <= LONGEST_NAME else name


def _beside_picture(book: Book, told: list[Flowable], job: Job) -> tuple[Flowable, ...]:
    """What is told of a job beside its picture, as wide as costs no height, or under it on narrow
    paper."""
    measure, enlarged = book.paper.measure, book.paper.picture_scale
    drawn = _run_picture(book, job)
    if not is_wide(book.paper) and book.facts.height_m < TALL * book.facts.width_m:
        return (Shown(drawn(measure), enlarged), *told)

    def beside(share: float) -> Columns:
        picture = drawn((measure - PICTURE_GAP) * (1 - share))
        columns = [told, [Shown(picture, enlarged)]]
        return Columns(columns, (share, 1 - share), gap=PICTURE_GAP, after=4, whole=False)

    shares = TABLE_SHARES if is_wide(book.paper) else NARROW_SHARES
    return (Sparing(beside, shares, A_LINE),)


def _brought(steps: Sequence[Step]) -> tuple[frozenset[str], frozenset[str]]:
    adding = [op for step in steps for op in step.operations if op.adds]
    links = frozenset(link for op in adding for link in op.links)
    return links, frozenset(joint for op in adding for joint in op.locks)


def _run_picture(book: Book, job: Job) -> Callable[[float], Picture]:
    """The picture of a job on the whole piece, as wide as is asked, in points."""
    voice = book.voice
    done_links, done_locks = _brought(book.steps[: job.steps[0].number - 1])
    links, locks = _brought(job.steps)
    part = part_of_step(book.framework, job.steps[0])
    shape = book.shape if part is None else _of_part(book.shape, part.framework.joints)
    if part is not None:  # the others are elsewhere until it is tied to them
        done_links &= {*part.framework.link}
        done_locks &= {*part.framework.joints}
    scene = Scene(
        book.framework,
        shape,
        new_links=links,
        done_links=done_links,
        new_locks=locks,
        done_locks=done_locks,
        patterns=book.patterns,
        every_body=book.every_body,
    )
    enlarged = book.paper.picture_scale
    across, up, _ = np.ptp(shape.positions_m, axis=0) + link_length_m(book.framework)
    most = BESIDE_TABLE if is_wide(book.paper) else RUN_PICTURE
    rows = (_row_words(row, job_row(voice, row, book.told), voice) for row in job.rows)
    alt = voice.say(
        "Job {number} on the whole piece, from the front. {rows}.",
        number=job.number,
        rows=clauses(voice, rows),
    )

    def drawn(wide: float) -> Picture:
        tall = min(most, max(LEAST_TALL, wide * float(up / across)))
        size = (wide / enlarged, tall / enlarged)
        return step_picture(scene, CAMERAS["front"], *size, labels=_corners(book, job), alt=alt)

    return drawn


def _of_part(shape: Shape, joints: Sequence[str]) -> Shape:
    """The shape of one part of a piece alone."""
    at_m = np.array([shape.at[joint] for joint in joints])
    return replace(shape, joints=tuple(joints), positions_m=at_m, tied={})


def _row_words(row: RunRow, said: JobRow, voice: Voice) -> str:
    return voice.say(
        "{name}: {how}; locks {joints}",
        name=said.name,
        how=said.words,
        joints=" ".join(row.locks),
    )


def _corners(book: Book, job: Job) -> tuple[str, ...]:
    """Joints that tell where a run is: one in front at its first and one at its last brace."""
    numbers = [row.brace for row in job.rows if row.brace is not None]
    ends = [
        book.framework.brace[number].chains[0].joints for number in (*numbers[:1], *numbers[-1:])
    ]
    letters = [long.letter for long in book.framework.chains if long.layer is not Layer.BACK]
    shown = [[j for j in end if j in book.shape.at and j[0] in letters] for end in ends]
    named = [joints[0] for joints in shown if joints]
    joined = [row.joints[0] for row in job.rows if row.kind is Kind.JOIN and len(row.joints) == 1]
    named += [*joined[:1], *joined[-1:]]
    return tuple(dict.fromkeys(named))
