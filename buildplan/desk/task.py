"""What is to be worked out of a design, and what its results are called."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

SHAPE, PIECE, FACTS = "shape.json", "piece.json", "facts.json"
# what is said while a large piece is worked out
WAIT = "wait.json"
COUNTS, CARD, PICTURE = "counts.json", "card.json", "picture.png"

Report = Callable[[object], None]


@dataclass(frozen=True)
class DesignWork:
    """One version of one design in a folder, to be worked out for a reader of a language: all of
    it, or what its card at home shows."""

    root: Path
    name: str
    version: str
    language: str
    whole: bool = True

    def __call__(self, report: Report) -> None:
        """Work it out, in a process that has loaded what that needs; reports what is there."""
        from buildplan.desk.working import work_out

        work_out(self, report)


@dataclass(frozen=True)
class CountWork:
    """One version of one design in a folder, of which only its name and its balloons are wanted:
    they are there before its shape is."""

    root: Path
    name: str
    version: str
    language: str

    def __call__(self, report: Report) -> None:
        """Count, in a process that has loaded what that needs; reports what is there."""
        from buildplan.desk.working import count_out

        count_out(self, report)
