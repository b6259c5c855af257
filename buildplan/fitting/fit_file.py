"""A fit as a design file, with how close it comes as comments."""

from __future__ import annotations

from buildplan.fitting.design_file import design_text
from buildplan.fitting.fit import Fit
from buildplan.fitting.measure_words import height_words, share_words
from buildplan.fitting.report import holes_words
from buildplan.language.voice import Voice


def fit_text(fit: Fit, voice: Voice, within: str = "") -> str:
    """The text of the design file. `within` is the time that its search was given, where a clock
    ended it: such a design depends on the machine."""
    close, units = fit.close, fit.gauges.units
    fitted = voice.say(
        "{piece}: fitted to the outline {name}, {height} high.",
        piece=fit.design.name,
        name=fit.outline.name,
        height=height_words(fit.outline.height_m, units, voice),
    )
    how_close = voice.say(
        "It covers {share} of what it and the outline cover together; nowhere are the two edges "
        "farther apart than {distance} of a long link. Measure ten tied links and give "
        "chain_of_ten to make the size your own.",
        share=share_words(close.overlap, voice),
        distance=voice.decimal(close.farthest, 2),
    )
    head = [fitted, how_close, *holes_words(fit, voice)]
    if within:
        head.append(
            voice.say(
                "The search was ended by the clock, after {time}: another machine may find another "
                "design.",
                time=within,
            )
        )
    return design_text(fit.design, head, voice, fit.shape.standing.stands)
