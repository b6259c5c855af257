"""Gathering a piece as data from all that is known of it."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from fractions import Fraction

import numpy as np

from buildplan.booklet.common.book import Book
from buildplan.business.copies.serial import design_digest
from buildplan.drawing.bodies import lock_centres
from buildplan.drawing.outlines import profile
from buildplan.framework.model import BalloonType
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
from buildplan.sequence.repair import Act, repairs

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
        balloons=[_balloon(book, told, key) for key, count in facts.counts.items() if count],
        joints=_joints(book),
        links=_links(book, comes),
        locks=_locks(book, comes),
        chains=_chains(book),
        braces=_braces(book),
        cells=_cells(book),
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


def _links(book: Book, comes: Mapping[str, int]) -> list[LinkData]:
    return [
        LinkData(
            id=link.id,
            balloon=link.balloon,
            role=link.role.value,
            start=link.start,
            finish=link.finish,
            neck=link.neck,
            tail=link.tail,
            moment=comes[link.id],
            held=max(
                comes.get(f"lock {book.framework.place(joint)}", comes[link.id])
                for joint in (link.start, link.finish)
            ),
        )
        for link in book.framework.links
    ]


def _chains(book: Book) -> list[ChainData]:
    return [
        ChainData(
            letter=long.letter,
            joints=list(long.chain.joints),
            links=list(long.chain.links),
            closed=long.chain.closed,
        )
        for long in book.framework.chains
    ]


def _braces(book: Book) -> list[BraceData]:
    return [
        BraceData(
            number=brace.number,
            section=list(brace.section),
            links=list(brace.links),
            shared=list(brace.shared),
        )
        for brace in book.framework.braces
    ]


def _cells(book: Book) -> list[CellData]:
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
        for cell in book.framework.cells
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


def _balloon(book: Book, told: Mapping[str, Told], key: str) -> BalloonData:
    balloon, count = book.framework.balloons[key], book.facts.counts[key]
    return BalloonData(
        key=key,
        kind="link" if balloon.kind.is_strut else "round",
        label={language: each.design.balloons[key].label or "" for language, each in told.items()},
        size={language: each.gauges[key] for language, each in told.items()},
        letter=book.colour_letters.get(key, ""),
        colour=balloon.colour,
        finish=balloon.finish,
        nominal_m=round(balloon.nominal_m, 4),
        gauge_m=round(balloon.gauge_m, 4),
        tie_to_tie_m=round(balloon.tie_to_tie_m, 4),
        count=count,
        spare=math.ceil(count * Fraction(str(book.design.spare))),
        profile=balloon_profile(balloon),
    )


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


def _joints(book: Book) -> list[JointData]:
    touched: dict[str, list[int]] = {}
    for step in book.steps:
        for joint in dict.fromkeys(joint for turn in step.turns for joint in turn.joints):
            touched.setdefault(joint, []).append(step.number)
    return [
        JointData(
            label=joint,
            at=rounded(book.shape.at[joint]),
            place=book.framework.place(joint),
            links=list(book.framework.links_at[joint]),
            steps=touched.get(joint, []),
        )
        for joint in book.framework.joints
    ]


def _locks(book: Book, comes: Mapping[str, int]) -> list[LockData]:
    centres = lock_centres(book.framework, book.shape)
    return [
        LockData(
            joint=lock.joint,
            balloon=lock.balloon,
            at=(rounded(first), rounded(second)),
            moment=comes[f"lock {lock.joint}"],
        )
        for lock, (first, second) in zip(book.framework.locks, centres, strict=True)
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
