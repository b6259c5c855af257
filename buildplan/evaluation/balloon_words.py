"""What balloons are called by their size as bought: a form for each place where they stand."""

from __future__ import annotations

from buildplan.design.measures import Units, nominal_words
from buildplan.evaluation.materials import Purchase
from buildplan.framework.model import BalloonType
from buildplan.language.messages import Message, message


def sized(balloon: BalloonType, units: Units) -> Message:
    """A balloon by its size alone, where its colour stands beside: `12 in link`."""
    return message(balloon.kind.words.sized, size=nominal_words(balloon.nominal_m, units))


def coloured(balloon: BalloonType, units: Units) -> Message:
    """A balloon by its colour, and its size beside it: `deep blue, 12 in link`."""
    size = nominal_words(balloon.nominal_m, units)
    return message(balloon.kind.words.coloured_and_sized, colour=balloon.label, size=size)


def bought(purchase: Purchase, units: Units) -> Message:
    """What is bought, by all that its colour is called: `deep blue 12 in link`."""
    balloon = purchase.balloon
    size = nominal_words(balloon.nominal_m, units)
    return message(balloon.kind.words.coloured_sized, colour=purchase.label, size=size)
