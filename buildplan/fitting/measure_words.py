"""Heights, gauges and shares of a fit in words."""

from __future__ import annotations

from buildplan.design.measures import Units
from buildplan.language.voice import Voice


def height_words(height_m: float, units: Units, voice: Voice) -> str:
    """A height to the centimetre or the inch: `180 cm`, `71 in`."""
    if units == "cm":
        return voice.say("{length} cm", length=voice.whole(round(height_m * 100)))
    return voice.say("{length} in", length=voice.whole(round(height_m / 0.0254)))


def gauge_words(gauge: float, units: Units, voice: Voice) -> str:
    """`6.5 in`, with as many places as it has."""
    length = voice.written(f"{gauge:g}")
    if units == "cm":
        return voice.say("{length} cm", length=length)
    return voice.say("{length} in", length=length)


def share_words(share: float, voice: Voice) -> str:
    """A share to a tenth of a per cent."""
    return voice.say("{number}%", number=voice.decimal(share * 100, 1))
