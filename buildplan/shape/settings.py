"""How hard the shape is looked for, and what counts as good."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from buildplan.shape.constants import CONSTANTS, Constant

AT_REST = 10  # times the tolerance, that a piece may be pushed with and count as at rest


@dataclass(frozen=True)
class Settings:
    """How hard to look.

    `starts` is the number of starts tried (two at most for a piece of more than MANY_JOINTS) and
    `seed` makes the shaken ones repeatable. `tolerance_n` is the force left at rest,
    `strain_allowed` the largest change of a link's length that still counts as closing,
    `overlap_allowed` how far bodies that share no joint may press into each other as a share of
    touching distance. `newton_steps` is how many are taken in each of the `rounds`. `work` is how
    many multiplications the factors of one start may take (2 s or so); where it runs out, no
    further start is tried. `sharpenings` is how many steps are taken past the tolerance, so that
    all processors find the same.
    """

    starts: int = 4
    seed: int = 1
    tolerance_n: float = 1e-6
    strain_allowed: float = 0.03
    overlap_allowed: float = 0.10
    newton_steps: int = 100
    rounds: int = 3
    work: float = 1e11
    sharpenings: int = 3
    constants: Mapping[str, Constant] = field(default_factory=lambda: CONSTANTS)

    @property
    def at_rest_n(self) -> float:
        """The force left up to which a piece counts as at rest."""
        return AT_REST * self.tolerance_n


DEFAULT = Settings()
MANY_JOINTS = 2000
