"""Larger sizes of an outline in words."""

from __future__ import annotations

from buildplan.design.measures import Units
from buildplan.fitting.heights import Larger
from buildplan.fitting.measure_words import gauge_words, height_words
from buildplan.fitting.narrow import HOPELESS, NARROW_ALLOWED, tube_width_m
from buildplan.fitting.sources import MOST_HEIGHT_M
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice


def larger_words(larger: Larger, gauge: float, units: Units, voice: Voice) -> str:
    """At which larger size an outline that cannot be had well at its own can be, and what of it is
    too narrow where it cannot."""
    links = gauge_words(gauge, units, voice)
    said = []
    if larger.narrow > NARROW_ALLOWED:
        too_low = (
            mark(
                "{share} of the outline is narrower than a tube of {gauge} links, which is {width} "
                "wide: with them it cannot be had well below about {height}."
            )
            if larger.least_m <= MOST_HEIGHT_M
            else mark(
                "{share} of the outline is narrower than a tube of {gauge} links, which is {width} "
                "wide: with them it cannot be had well at any height that a piece can have."
            )
        )
        said.append(
            voice.say(
                too_low,
                share=voice.percent(larger.narrow),
                gauge=links,
                width=height_words(tube_width_m(gauge, units), units, voice),
                height=height_words(larger.least_m, units, voice),
            )
        )
    if larger.parts and larger.narrow <= HOPELESS:
        parts = [
            voice.say(
                "the part {where}, about {width} wide",
                where=part.where,
                width=height_words(part.width_m, units, voice),
            )
            for part in larger.parts
        ]
        said.append(voice.say("Too narrow for it: {parts}.", parts=voice.listed(parts)))
    if (
        larger.height_m is not None
        or larger.figures
        or not said
        or larger.tried_m >= larger.least_m
    ):
        said.append(_heights_tried(larger, gauge, units, voice))
    return sentences(*said)


def _heights_tried(larger: Larger, gauge: float, units: Units, voice: Voice) -> str:
    """The smallest height that will do, or up to which height none does."""
    if larger.height_m is not None:
        return voice.say(
            "The smallest height at which it can be had well is about {height}, with links of "
            "{gauge}.",
            height=height_words(larger.height_m, units, voice),
            gauge=gauge_words(larger.gauge or gauge, units, voice),
        )
    none_will_do = (
        mark(
            "Neither with a tube of {gauge} links nor as a figure can it be had well at any "
            "height tried, up to {height}."
        )
        if larger.figures
        else mark(
            "With links of {gauge} it cannot be had well at any height tried, up to {height}."
        )
    )
    return voice.say(
        none_will_do,
        gauge=gauge_words(gauge, units, voice),
        height=height_words(larger.tried_m, units, voice),
    )
