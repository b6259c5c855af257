"""Gathering a piece as data from all that is known of it."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from fractions import Fraction

import numpy as np

from buildplan.booklet.common.book import Book, letters_of
from buildplan.business.copies.serial import design_digest
from buildplan.design.measures import Units, gauged_words
from buildplan.design.model import Design
from buildplan.design.translating import translated_design
from buildplan.drawing.bodies import lock_centres
from buildplan.drawing.outlines import profile
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import BalloonType, Framework
from buildplan.language.voice import Voice
from buildplan.screen.model import (
    SCHEMA_ID,
    ActData,
    BalloonData,
    BraceData,
    CellData,
    ChainData,
    JointData,
    LinkData,
    LockData,
    Piece,
    StepData,
)
from buildplan.screen.seats import rounded, seat_of
from buildplan.screen.turns import coming, moments_of, turn_data
from buildplan.screen.words import Told, told_in
from buildplan.sequence.labour import units
from buildplan.sequence.model import Step
from buildplan.sequence.repair import Act, repairs
from buildplan.shape.model import Shape

# Points of a balloon's outline from knot to knot.
PROFILE_POINTS = 25


def gather_piece(book: Book, voices: Sequence[Voice]) -> Piece:
    """A piece as data, with its words in the language of each voice.

    The book must be as its file says it, not in another language (see `design.translations`).
    """
    told = told_in(book, voices)
    framework, facts = book.framework, book.facts
    moments = list(moments_of(book.steps))
    comes = coming(book, moments)
    return Piece(
        **{"$schema": SCHEMA_ID},
        version=1,
        design=design_digest(book.design),
        edition=book.edition,
        name={language: each.design.name for language, each in told.items()},
        languages=list(told),
        units=book.units,
        width_m=round(facts.width_m, 4),
        height_m=round(facts.height_m, 4),
        depth_m=round(facts.depth_m, 4),
        draft=bool(facts.problems),
        balloons=_balloons(book.design, framework, book.units, voices),
        joints=_joints(framework, book.shape, book.steps),
        links=_links(framework, comes),
        locks=_locks(framework, book.shape, comes),
        chains=_chains(framework),
        braces=_braces(framework),
        cells=_cells(framework),
        steps=[_step(book, told, number, moments) for number in range(len(book.steps))],
        stages={
            stage: {language: each.stages[stage] for language, each in told.items()}
            for stage in next(iter(told.values())).stages
        },
        moments=moments,
        repairs={
            link: [_act(act) for act in acts]
            for link, acts in repairs(framework, book.steps).items()
        },
    )


def gather_shape(
    design: Design, framework: Framework, shape: Shape, units: Units, voices: Sequence[Voice]
) -> Piece:
    """A piece as it lies in space, before its order of work is known: without steps, and all of
    it there from the first moment on."""
    named = {voice.language: translated_design(design, voice.language).name for voice in voices}
    return Piece(
        **{"$schema": SCHEMA_ID},
        version=1,
        design=design_digest(design),
        edition="training",
        name=named,
        languages=list(named),
        units=units,
        width_m=round(shape.width_m, 4),
        height_m=round(shape.height_m, 4),
        depth_m=round(shape.depth_m, 4),
        draft=bool(shape.problems),
        balloons=_balloons(design, framework, units, voices),
        joints=_joints(framework, shape, ()),
        links=_links(framework, {}),
        locks=_locks(framework, shape, {}),
        chains=_chains(framework),
        braces=_braces(framework),
        cells=_cells(framework),
        steps=[],
        stages={},
        moments=[],
        repairs={},
    )


def _links(framework: Framework, comes: Mapping[str, int]) -> list[LinkData]:
    return [
        LinkData(
            id=link.id,
            balloon=link.balloon,
            role=link.role.value,
            start=link.start,
            finish=link.finish,
            neck=link.neck,
            tail=link.tail,
            moment=comes.get(link.id, 0),
            held=max(
                comes.get(f"lock {framework.place(joint)}", comes.get(link.id, 0))
                for joint in (link.start, link.finish)
            ),
        )
        for link in framework.links
    ]


def _chains(framework: Framework) -> list[ChainData]:
    return [
        ChainData(
            letter=long.letter,
            joints=list(long.chain.joints),
            links=list(long.chain.links),
            closed=long.chain.closed,
        )
        for long in framework.chains
    ]


def _braces(framework: Framework) -> list[BraceData]:
    return [
        BraceData(
            number=brace.number,
            section=list(brace.section),
            links=list(brace.links),
            shared=list(brace.shared),
        )
        for brace in framework.braces
    ]


def _cells(framework: Framework) -> list[CellData]:
    return [
        CellData(
            number=cell.number,
            name=cell.name,
            outer=cell.outer,
            inner=cell.inner,
            first=cell.first,
            second=cell.second,
            skipped=list(cell.skipped),
        )
        for cell in framework.cells
    ]


def balloon_profile(balloon: BalloonType) -> list[tuple[float, float]]:
    """The outline of a balloon from knot to knot: (share of the length, share of the gauge)."""
    if not balloon.kind.is_strut:
        angle = np.linspace(-np.pi / 2, np.pi / 2, PROFILE_POINTS)
        along, radius = np.sin(angle) / 2, np.cos(angle) / 2
    else:
        length = balloon.tie_to_tie_m / balloon.gauge_m
        # closer together towards the knots, where it curves most
        even = np.sin(np.linspace(-np.pi / 2, np.pi / 2, PROFILE_POINTS))
        t, r = profile(length)
        along, radius = even / 2, np.interp(even * length / 2, t, r)
    return [
        (round(float(a), 4) + 0.0, round(float(r), 4)) for a, r in zip(along, radius, strict=True)
    ]


def _balloons(
    design: Design, framework: Framework, units: Units, voices: Sequence[Voice]
) -> list[BalloonData]:
    """The kinds of balloon that a piece uses."""
    used = {key: count for key, count in balloon_counts(framework).items() if count}
    letters = letters_of(used, framework)
    named = {voice: translated_design(design, voice.language) for voice in voices}
    return [
        BalloonData(
            key=key,
            kind="link" if balloon.kind.is_strut else "round",
            label={voice.language: own.balloons[key].label or "" for voice, own in named.items()},
            size={v.language: v.tell(gauged_words(balloon.gauge_m, units)) for v in voices},
            letter=letters.get(key, ""),
            colour=balloon.colour,
            finish=balloon.finish,
            nominal_m=round(balloon.nominal_m, 4),
            gauge_m=round(balloon.gauge_m, 4),
            tie_to_tie_m=round(balloon.tie_to_tie_m, 4),
            count=count,
            spare=math.ceil(count * Fraction(str(design.spare))),
            profile=balloon_profile(balloon),
        )
        for key, count in used.items()
        for balloon in (framework.balloons[key],)
    ]


def _act(act: Act) -> ActData:
    return ActData.model_validate(
        {
            "act": str(act.deed),
            "joint": act.joint,
            "own_end": str(act.own_end or ""),
            "link": act.link,
            "end": str(act.end or ""),
        }
    )


def _joints(framework: Framework, shape: Shape, steps: Sequence[Step]) -> list[JointData]:
    touched: dict[str, list[int]] = {}
    for step in steps:
        for joint in dict.fromkeys(joint for turn in step.turns for joint in turn.joints):
            touched.setdefault(joint, []).append(step.number)
    return [
        JointData(
            label=joint,
            at=rounded(shape.at[joint]),
            place=framework.place(joint),
            links=list(framework.links_at[joint]),
            steps=touched.get(joint, []),
        )
        for joint in framework.joints
    ]


def _locks(framework: Framework, shape: Shape, comes: Mapping[str, int]) -> list[LockData]:
    return [
        LockData(
            joint=lock.joint,
            balloon=lock.balloon,
            at=(rounded(first), rounded(second)),
            moment=comes.get(f"lock {lock.joint}", 0),
        )
        for lock, (first, second) in zip(
            framework.locks, lock_centres(framework, shape), strict=True
        )
    ]


def _step(
    book: Book, told: Mapping[str, Told], at: int, moments: Sequence[tuple[int, int]]
) -> StepData:
    step = book.steps[at]
    work: Counter[str] = Counter()
    for operation in step.operations:
        work[str(operation.kind)] += units(operation)
    first = moments.index((step.number, 0))
    return StepData(
        number=step.number,
        stage=str(step.stage),
        kind=str(step.kind),
        title={language: each.steps[at].title for language, each in told.items()},
        text={language: each.steps[at].text for language, each in told.items()},
        refers={language: each.refers[at] for language, each in told.items()},
        check={language: each.steps[at].check for language, each in told.items()},
        times=step.times,
        needs=list(step.needs),
        adds=dict(step.adds),
        prepares=dict(step.prepares),
        cells=[kind.name for kind in step.cells],
        work=dict(work),
        seat=seat_of(book, step.kind, step.turns),
        turns=[
            turn_data(book, told, step, number, first + number) for number in range(len(step.turns))
        ],
    )
