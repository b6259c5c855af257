"""How long a balloon of the file is once it is built in."""

from __future__ import annotations

from buildplan.source.balloons import Balloon

# Length between the knots of a built link, over the gauge it was sized against. From
# memory, an estimate: a measured `tie_to_tie` or `chain_of_ten` in the file replaces it.
TIE_TO_TIE_PER_GAUGE = 1.15

# What such an estimate is good for: nine hands in ten come within this share of it. From memory;
# measurements of your own (`hands.yaml`) narrow it.
ESTIMATED_WITHIN = 0.06

# Within this range of the gauge a measured length is believed. From memory, and generous.
LEAST_PER_GAUGE, MOST_PER_GAUGE = 0.8, 2.0


def tie_to_tie(balloon: Balloon) -> tuple[float, float]:
    """Length between the two knots of a built link, in the file's units, and the share of it
    that it may be off by: none where the file gives it. For a round: its gauge."""
    if balloon.tie_to_tie is not None:
        return balloon.tie_to_tie, balloon.tie_to_tie_within
    if balloon.chain_of_ten is not None:
        return balloon.chain_of_ten / 10, 0.0
    if balloon.is_strut:
        return balloon.inflate_to * TIE_TO_TIE_PER_GAUGE, ESTIMATED_WITHIN
    return balloon.inflate_to, 0.0


def likely(balloon: Balloon) -> bool:
    """Whether the balloon's length between its knots can be right for its gauge."""
    length, _ = tie_to_tie(balloon)
    return LEAST_PER_GAUGE <= length / balloon.inflate_to <= MOST_PER_GAUGE
