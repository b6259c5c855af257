"""A booklet's contents gathered, and the whole booklet printed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from buildplan.booklet.brand import Branding
from buildplan.booklet.facts import Facts, gather_facts
from buildplan.booklet.paper import Paper
from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.drawing.signs import balloon_signs
from buildplan.framework.build import build_framework
from buildplan.framework.model import Framework
from buildplan.language.speaking import ENGLISH, say_count, spoken
from buildplan.sequence.model import Step
from buildplan.sequence.reach import find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.constants import constants_with
from buildplan.shape.examining import examine
from buildplan.shape.finding import Settings, find_shape
from buildplan.shape.model import Examination, Shape

# New link balloons in one step, at most: few for those who learn, ten braces of four for crews.
NEW_PARTS: Mapping[str, int] = {"training": 12, "crew": 40, "sale": 12}


@dataclass(frozen=True)
class Book:
    """All that the pages draw on: one piece, its steps and its figures.

    `letters` gives each balloon key the letter that stands beside its colour on every page.
    `units` are those of the reader, `edition` who it is for. A sold copy has the seller's
    `branding`, its `buyer` (empty when nobody is named) and its `serial`. With `gauges_apart`
    the gauges are printed by themselves. `language` is the one of its words.
    """

    design: Design
    framework: Framework
    shape: Shape
    examination: Examination
    steps: tuple[Step, ...]
    facts: Facts
    paper: Paper
    units: Units
    edition: str
    branding: Branding | None = None
    buyer: str = ""
    serial: str = ""
    gauges_apart: bool = False
    language: str = ENGLISH

    @property
    def colour_letters(self) -> dict[str, str]:
        """The letter of each balloon that the piece uses, from the end of the alphabet so
        that it is not taken for a chain."""
        used = [key for key, count in self.facts.counts.items() if count]
        return dict(zip(used, "ZYXWVUTSRQPNMLKJ", strict=False))

    @property
    def patterns(self) -> Mapping[str, int]:
        """The sign that tells each balloon's colour without colour, where colours differ."""
        return balloon_signs(self.framework, [k for k, count in self.facts.counts.items() if count])


def resting_shape(design: Design, framework: Framework) -> Shape:
    """The shape of a design's piece, on the foot and with the constants that it names."""
    stand_on = design.stand_on
    feet = (stand_on,) if isinstance(stand_on, str) else tuple(stand_on or ())
    constants = constants_with(design.constants)
    return find_shape(framework, stand_on=feet, settings=Settings(constants=constants))


def gather_book(
    design: Design,
    paper: Paper,
    units: Units,
    edition: str,
    gust_m_per_s: float | None = None,
) -> Book:
    """Run a design through every stage; a gust asks for the ballast that holds it."""
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    constants = constants_with(design.constants)
    found = examine(framework, shape, gust_m_per_s=gust_m_per_s, constants=constants)
    reach = find_reach(framework, shape)
    steps = plan_steps(framework, NEW_PARTS[edition], units, reach)
    problems = (*shape.problems, *found.problems, *reach.problems)
    facts = gather_facts(design, framework, shape, found, steps, problems)
    return Book(
        design, framework, shape, found, steps, facts, paper, units, edition, language=spoken()
    )


def adds_words(book: Book, step: Step) -> str:
    """What a step adds, by balloon: `12 ivory link balloons (Y)`."""
    letters, parts = book.colour_letters, []
    for key, count in step.adds.items():
        if count:
            balloon = book.framework.balloons[key]
            told = {"colour": balloon.label, "letter": letters[key]}
            parts.append(
                say_count(
                    "{number} {colour} link balloon ({letter})",
                    "{number} {colour} link balloons ({letter})",
                    count,
                    **told,
                )
                if balloon.kind == "link"
                else say_count(
                    "{number} {colour} round ({letter})",
                    "{number} {colour} rounds ({letter})",
                    count,
                    **told,
                )
            )
    return ", ".join(parts)
