"""A fit: a design, its solved shape standing, and how close it comes to an outline."""

from __future__ import annotations

from dataclasses import dataclass

from buildplan.design.model import Design
from buildplan.fitting.inside import Inside
from buildplan.fitting.measuring import FARTHEST_GOAL, HEIGHT_WITHIN, OVERLAP_GOAL, Closeness
from buildplan.fitting.outline import ComplexArray, Outline
from buildplan.fitting.tube_design import Gauges
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.language.messages import Message
from buildplan.patterns.figure_keys import Figure
from buildplan.shape.model import Shape

UPRIGHT_DEG = 4.0  # a piece turned by less stands as it is drawn


@dataclass(frozen=True)
class Fit:
    """A design, its solved shape, how close that comes to `outline`, and every problem that a
    check of its file would name, but for its not standing by itself.

    `target` is the outline as it lies on the standing piece, in x and y of the shape, and
    `target_holes` its holes; `inside` is what lies within the piece where the outline has any.
    `turned_deg` is how far the piece stands turned (counterclockwise, seen from the front) from
    the way the outline is drawn. `footed` tells whether it follows the outline with a foot that
    this does not have.
    """

    outline: Outline
    target: ComplexArray
    target_holes: tuple[ComplexArray, ...]
    design: Design
    framework: Framework
    shape: Shape
    close: Closeness
    inside: Inside | None
    problems: tuple[Message, ...]
    gauges: Gauges
    turned_deg: float
    footed: bool

    @property
    def balloons(self) -> int:
        """Balloons of every kind."""
        return sum(balloon_counts(self.framework).values())

    @property
    def is_figure(self) -> bool:
        """Whether it is drawn in cells, and no tube."""
        return self.design.build.keys_of(Figure) is not None

    @property
    def height_m(self) -> float:
        """Height of the piece as it stands."""
        return self.shape.height_m

    @property
    def as_drawn(self) -> bool:
        """Whether it is the way up that the outline is drawn."""
        return abs(self.turned_deg) <= UPRIGHT_DEG

    @property
    def as_high(self) -> bool:
        """Whether it is as high as was asked for, as it stands."""
        return abs(self.height_m / self.outline.height_m - 1) <= HEIGHT_WITHIN

    @property
    def stands_as_drawn(self) -> bool:
        """Whether it stands by itself the way the outline is drawn."""
        return self.as_drawn and self.shape.standing.stands and not self.design.pole

    @property
    def buildable(self) -> bool:
        """Whether it passes every check, and stands as it is drawn."""
        return not self.problems and self.stands_as_drawn

    @property
    def near(self) -> bool:
        """Whether it is as close as it should be."""
        return self.close.overlap >= OVERLAP_GOAL and self.close.farthest <= FARTHEST_GOAL

    @property
    def well(self) -> bool:
        """Whether it is as close as it should be and right in every other way, but that it may
        have to be held."""
        return self.near and not self.problems and self.as_drawn and self.as_high

    @property
    def good(self) -> bool:
        """Whether it is as close as it should be, and right in every other way."""
        return self.well and self.stands_as_drawn

    @property
    def ready(self) -> bool:
        """Whether it can be built from its file with nothing else: it stands by itself, or the file
        has the pole that holds it."""
        return self.good or (self.well and self.design.pole)

    @property
    def likeness(self) -> float:
        """The overlap, with the holes of the outline counted where it has any."""
        return self.close.overlap if self.inside is None else self.inside.overlap
