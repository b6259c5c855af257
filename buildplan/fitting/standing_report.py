"""What `check` says of a piece as it stands: its size, whether it closes and stands, what wind it
bears, how it gives, and the work it takes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from buildplan.design.measures import Units, length_words, size_words
from buildplan.evaluation.evaluating import Evaluation
from buildplan.evaluation.facts import Facts
from buildplan.evaluation.figures import (
    air_words,
    estimate_words,
    minutes_words,
    weight_words,
    wind_words,
)
from buildplan.fitting.mending import Stiffer
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.shape.advice import FALLEN_SHARE
from buildplan.shape.holding import conditions
from buildplan.shape.model import Estimate
from buildplan.shape.whereabouts import group_words

Row = tuple[str, str]
"""The name of a figure, empty where the one above goes on, and its words."""

MOST_CARRIED_KG = 25.0  # what one person lifts at most; common practice, no source


def standing_rows(
    piece: Evaluation, height: Sequence[str], voice: Voice, stiffer: Stiffer | None = None
) -> Iterator[Row]:
    """The figures of a piece as it stands; `height` is what is said of how high it will, `stiffer`
    what was tried that stiffens it."""
    facts = piece.facts
    yield from _size(facts, piece.units, height, voice)
    yield voice.say("Closes"), _closes(facts, voice)
    yield from _stands(piece, voice)
    yield from _wind(piece, voice)
    yield from _gives(piece, voice)
    if stiffer is not None:
        yield "", _stiffer(stiffer, voice)
    work = voice.say(
        "{work} in all, {time} for {people} people (estimate)",
        work=minutes_words(facts.work_minutes, voice),
        time=minutes_words(facts.crew_minutes, voice),
        people=facts.crew,
    )
    yield voice.say("Work"), work
    air = air_words(facts.air_m3, facts.pump_minutes, piece.units, voice)
    yield voice.say("Air"), voice.say("{air} (estimate)", air=air)


def _size(facts: Facts, units: Units, height: Sequence[str], voice: Voice) -> Iterator[Row]:
    lengths = (facts.width_m, facts.height_m, facts.depth_m)
    size = " x ".join(voice.tell(size_words(length, units)) for length in lengths)
    words = voice.say("{size} (width x height x depth, estimate)", size=size)
    yield voice.say_in("how large", "Size"), words
    for number, said in enumerate(height):
        yield "" if number else voice.say("Height"), said
    weight = voice.say("{weight} (estimate)", weight=weight_words(facts.mass_kg, voice))
    yield voice.say("Weight"), weight


def _closes(facts: Facts, voice: Voice) -> str:
    if not facts.closes:
        return voice.say_in("does it close", "no")
    return voice.say("yes") if facts.rings else voice.say("nothing to close: the chains are open")


def _stands(piece: Evaluation, voice: Voice) -> Iterator[Row]:
    """Whether it stands, and what holds it."""
    held = [voice.tell(one) for one in conditions(piece.shape.holding, piece.units)]
    by_itself = piece.shape.standing.stands
    stands = voice.say_in("does it stand", "no")
    if piece.facts.stands and by_itself and piece.shape.holding.fixed:
        stands = voice.say("yes")  # as it is held; how it would stand without is nobody's concern
    elif piece.facts.stands and by_itself:
        stands = voice.say(
            "yes, on {joints}; goes over when it leans {angle} (estimate)",
            joints=group_words(piece.shape, piece.shape.standing.feet),
            angle=estimate_words(piece.examination.tip_angle, 1, voice.say("degrees"), voice),
        )
    elif piece.facts.stands and held:
        stands = voice.say("not by itself")
    yield voice.say("Stands"), stands
    for number, words in enumerate(held):
        yield "" if number else voice.say("Held"), words


def _wind(piece: Evaluation, voice: Voice) -> Iterator[Row]:
    """The gust that tips it, and the ballast that holds the gust that was asked for."""
    wind, units = piece.examination.wind, piece.units
    tips = wind_words(wind.tips_at.value, units, voice)
    if not piece.shape.holding.fixed:
        said = (
            mark("a gust of {speed} tips it when nothing holds it down (estimate)")
            if piece.shape.holding.base is None
            else mark("a gust of {speed} tips it on its base (estimate)")
        )
        yield voice.say("Wind"), voice.say(said, speed=tips)
    if wind.ballast is None or wind.gust_m_per_s is None or piece.shape.holding.fixed:
        return
    said = (
        mark("{weight} on its foot hold {speed} (estimate)")
        if wind.ballast.value <= MOST_CARRIED_KG
        else mark(
            "its foot is too small to be held by weight alone at {speed}: fix it to a wall, or "
            "to a base that reaches {reach} out and weighs {base} (estimate)"
        )
    )
    words = voice.say(
        said,
        weight=weight_words(wind.ballast.value, voice),
        speed=wind_words(wind.gust_m_per_s, units, voice),
        reach=size_words(_reach_with_m(piece, MOST_CARRIED_KG), units),
        base=weight_words(MOST_CARRIED_KG, voice),
    )
    yield voice.say("Ballast"), words


def _reach_with_m(piece: Evaluation, base_kg: float) -> float:
    """How far a base of that weight has to reach out from below the middle of the piece, in metres,
    to hold the gust that was asked for: the moment of the wind is that of both weights."""
    reach, own = piece.examination.wind.reach, piece.examination.mass.value
    return 0.0 if reach is None else reach.value * own / (own + base_kg)


def _gives(piece: Evaluation, voice: Voice) -> Iterator[Row]:
    """How far it sags, and how stiff it is."""
    sag, stiffness = piece.examination.sag, piece.examination.stiffness
    if not piece.shape.holding.hung:  # what hangs does not sag at its top
        yield voice.say("Sags"), _sag_words(piece, sag, voice)
    words = voice.say_count(
        "{number} loose movement of the bare links; {crowded} left when the balloons crowd, "
        "{locked} with the locks",
        "{number} loose movements of the bare links; {crowded} left when the balloons crowd, "
        "{locked} with the locks",
        piece.facts.mechanisms,
        crowded=stiffness.folds,
        locked=stiffness.folds_locked,
    )
    yield voice.say("Stiffness"), words
    yield "", voice.say("it gives most at {joints}", joints=", ".join(stiffness.locked.joints))


def _sag_words(piece: Evaluation, sag: Estimate | None, voice: Voice) -> str:
    """How far the top sinks; what sinks so far that it has fallen is said to fall."""
    if sag is None:
        return voice.say("not found: the search was cut short")
    held = piece.shape.holding.fixed
    fallen_m = math.inf if held else FALLEN_SHARE * piece.shape.height_m
    if sag.value > fallen_m:
        return voice.say("it does not hold itself up (estimate)")
    lengths = {
        "length": length_words(sag.value, piece.units),
        "low": length_words(sag.low, piece.units),
    }
    if sag.high > fallen_m:
        return voice.say(
            "{length} at the top under its own weight ({low} at least, or it does not hold itself "
            "up, estimate)",
            **lengths,
        )
    return voice.say(
        "{length} at the top under its own weight ({low} to {high}, estimate)",
        **lengths,
        high=length_words(sag.high, piece.units),
    )


def _stiffer(stiffer: Stiffer, voice: Voice) -> str:
    """What was tried, and how much stiffer the piece is with it."""
    way = voice.tell(stiffer.way.words)
    if stiffer.extra.gain is None:
        return voice.say("tried on the piece: {way}, and it folds no more", way=way)
    return voice.say(
        "tried on the piece: {way}, and it is stiffer by {gain} %",
        way=way,
        gain=voice.decimal(100 * (stiffer.extra.gain - 1), 0),
    )
