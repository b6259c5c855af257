"""What one close-up shows, as plain data: what is tied where, and from where it is seen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import Camera
from buildplan.drawing.way_round import TiedRow


@dataclass(frozen=True, eq=False)
class Panel:
    """What one close-up shows, and from where.

    `joints` are where hands work. `rows` are the short chains that are tied there, in the
    order of the work; joints that are tied in turn without one are a row each. `below` are joints
    that lie on the floor, `skipped` those that no brace reaches, `shared` the link that this
    brace has in common with another. `numbered` gives joints another place in the order than the
    rows do, where they are tied in turn with joints of another panel. `later` are joints that
    wait, and the brace that their lock comes with.
    """

    scene: Scene
    camera: Camera
    joints: tuple[str, ...]
    rows: tuple[TiedRow, ...] = ()
    below: frozenset[str] = frozenset()
    skipped: tuple[str, ...] = ()
    shared: frozenset[str] = frozenset()
    numbered: Mapping[str, int] | None = None
    later: Mapping[str, int] = field(default_factory=dict)

    @property
    def of_singles(self) -> frozenset[str]:
        """The skipped joints that a single is tied to."""
        tied = {joint for row in self.rows for joint in row.joints}
        return frozenset(self.skipped) & tied
