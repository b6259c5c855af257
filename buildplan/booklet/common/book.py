"""A booklet's contents gathered: one evaluated piece, and the paper and edition it goes on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace
from functools import cached_property
from string import ascii_uppercase

from buildplan.business.copies.brand import Branding
from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.document.paper import Paper
from buildplan.drawing.bodies import Bodies, every_body
from buildplan.drawing.signs import balloon_signs
from buildplan.drawing.typeset.font_files import FontFile
from buildplan.evaluation.evaluating import NEW_PARTS, Evaluation, evaluate
from buildplan.evaluation.passing import Door
from buildplan.evaluation.told_figures import told_figures
from buildplan.framework.model import Framework
from buildplan.instructions.company import people_of_steps
from buildplan.instructions.context import Context
from buildplan.instructions.model import Figures, StepWords
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import ENGLISH, Voice
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.piece import PieceIndex

UNCLEAR = frozenset("OIoil")  # taken for figures, or for one another


@dataclass(frozen=True, kw_only=True)
class Book(Evaluation):
    """All that the pages draw on: one evaluated piece, and what it is printed for.

    `colour_letters` gives each balloon key the letter that stands beside its colour on every
    page. `edition` is who it is for. A sold copy has the seller's `branding`, its `buyer`
    (empty when nobody is named) and its `serial`. With `gauges_apart` the gauges are printed
    by themselves. `fonts` are those that its seller names. `link` is the address of its page for
    phones, empty without one. `doors` are those on the way in, as far as they are known.
    `language` is the one of its words.
    """

    paper: Paper
    edition: str
    branding: Branding | None = None
    buyer: str = ""
    serial: str = ""
    gauges_apart: bool = False
    fonts: tuple[FontFile, ...] = ()
    link: str = ""
    doors: tuple[Door, ...] = ()
    language: str = ENGLISH

    @property
    def voice(self) -> Voice:
        """Who says the words of its pages."""
        return Voice(self.language)

    @cached_property
    def words(self) -> tuple[StepWords, ...]:
        """What its steps say, in their order."""
        return tell_steps(self.steps, self.framework, self.units, self.voice, self.figures)

    @cached_property
    def context(self) -> Context:
        """Its steps with what they are told with."""
        index = PieceIndex(self.framework)
        return Context(index, self.steps, self.units, self.voice, self.figures)

    @cached_property
    def people(self) -> tuple[int, ...]:
        """How many people each of its steps takes, in their order."""
        return people_of_steps(self.context)

    @cached_property
    def figures(self) -> Figures:
        """The figures that its steps quote."""
        return told_figures(self.framework, self.shape, self.units, self.constants)

    @cached_property
    def every_body(self) -> Bodies:
        """The bodies of the whole piece."""
        return every_body(self.framework, self.shape)

    @cached_property
    def locked_in(self) -> Mapping[str, int]:
        """The number of the step in which each joint is locked."""
        return {
            joint: step.number
            for step in self.steps
            for operation in step.of_kind(Kind.LOCK)
            for joint in operation.locks
        }

    def told(self, step: Step) -> StepWords:
        """What one of its steps says."""
        return self.words[step.number - 1]

    @cached_property
    def colour_letters(self) -> dict[str, str]:
        """The letter of each balloon that the piece uses."""
        used = (key for key, count in self.facts.counts.items() if count)
        return letters_of(used, self.framework)

    @property
    def patterns(self) -> Mapping[str, int]:
        """The sign that tells each balloon's colour without colour, where colours differ."""
        return balloon_signs(self.framework, self.framework.balloons)


def letters_of(used: Iterable[str], framework: Framework) -> dict[str, str]:
    """The letter of each balloon that a piece uses, from the end of the alphabet, none that a chain
    or the joints of the piece are called by; small ones where those have taken too many."""
    called = [one.letter for one in framework.chains if len(one.chain.links) > 1]
    called += [joint.rstrip("0123456789") for joint in framework.joints]
    taken = {name.rpartition(".")[2] for name in called}
    backward = ascii_uppercase[::-1]
    free = [letter for letter in backward + backward.lower() if letter not in {*taken, *UNCLEAR}]
    return dict(zip(used, free, strict=False))


def book_of_piece(found: Evaluation, paper: Paper, edition: str, language: str = ENGLISH) -> Book:
    """The contents of a booklet of a piece that was run through every stage."""
    held = {one.name: getattr(found, one.name) for one in fields(Evaluation)}  # not what is cached
    return Book(**held, paper=paper, edition=edition, language=language)


def gather_book(
    design: Design,
    paper: Paper,
    units: Units,
    edition: str,
    language: str = ENGLISH,
) -> Book:
    """Run a design through every stage."""
    found = evaluate(design, units, NEW_PARTS)
    return book_of_piece(found, paper, edition, language)


def adds_words(book: Book, step: Step) -> str:
    """What a step adds, by balloon: `12 ivory link balloons (Y)`."""
    return ", ".join(counted_words(book, key, count) for key, count in step.adds.items() if count)


def counted_words(book: Book, key: str, count: int) -> str:
    """So many of a balloon: `1 ivory link balloon (Y)`."""
    balloon = book.framework.balloons[key]
    told = (("colour", balloon.label), ("letter", book.colour_letters[key]))
    return book.voice.tell(replace(balloon.kind.words.counted, number=count, values=told))
