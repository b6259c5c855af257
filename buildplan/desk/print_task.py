"""What is to be printed of a design, and what else is drawn of it when it is asked for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

OFFERS, COVER = "offers.json", "cover.png"

Report = Callable[[object], None]


@dataclass(frozen=True)
class Wishes:
    """What can be asked for beside: pages to fold, where its pages lead, large print and doors of a
    crew's booklet, the buyers of sold copies, the file of the folder that seals them and the one
    that signs them with its password, which is kept nowhere, the terms of a quote, and how many
    are quoted or shopped for: `count` of the design itself, and of those `beside`, each by its
    name in the folder.
    Texts are as they were written, a door, a buyer or a line of an address on each line; `deposit`
    is in percent, 0 for none; `valid` in days, 0 where it is left open."""

    fold: bool = False
    link: str = ""
    large: bool = False
    doors: str = ""
    buyers: str = ""
    key: str = ""
    sign: str = ""
    password: str = field(default="", repr=False)
    customer: str = ""
    address: str = ""
    sender: str = ""
    number: str = ""
    date: str = ""
    deposit: int = 0
    valid: int = 0
    count: int = 1
    beside: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True)
class PrintWork:
    """A design of a folder, to be printed: `what` it is to be, and how. `units` and `brand`, a file
    below the folder, are empty for the design's own."""

    root: Path
    name: str
    what: str
    edition: str
    paper: str
    language: str
    units: str
    brand: str
    wishes: Wishes = Wishes()

    def __call__(self, report: Report) -> None:
        """Print it, in a process that has loaded what that needs."""
        from buildplan.desk.print_working import print_asked

        print_asked(self, report)


@dataclass(frozen=True)
class StepsWork:
    """The pictures of the steps of a version of a design, to be drawn: that of step `first`, then
    the others."""

    root: Path
    name: str
    version: str
    language: str
    first: int

    def __call__(self, report: Report) -> None:
        """Draw them."""
        from buildplan.desk.drawn_working import draw_steps

        draw_steps(self, report)


@dataclass(frozen=True)
class OffersWork:
    """Courses near that of a version of a design that close and stand, to be looked for."""

    root: Path
    name: str
    version: str
    language: str

    def __call__(self, report: Report) -> None:
        """Look for them."""
        from buildplan.desk.drawn_working import find_offers

        find_offers(self, report)


@dataclass(frozen=True)
class CoverWork:
    """The first page of a PDF among what was printed, to be drawn small; `key` is what it is kept
    by."""

    root: Path
    file: str
    key: str

    def __call__(self, report: Report) -> None:
        """Draw it."""
        from buildplan.desk.drawn_working import draw_cover

        draw_cover(self, report)


def step_result(step: int) -> str:
    """What the picture of a step is called among what was worked out."""
    return f"step-{step}.svg"
