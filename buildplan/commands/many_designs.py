"""One command on several designs, by all cores: what is said and done comes in the order given.

In another process a design is worked on as here; what is said there is kept, and said here when
its turn comes, as is the error that it ends in.
"""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import chdir, closing, redirect_stderr, redirect_stdout
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Generic, TypeVar, cast

Answer = TypeVar("Answer")

# So many designs are worth the time that it takes to start processes: to print, to work out, and
# only to read.
FEW, MANY, VERY_MANY = 2, 6, 64


@dataclass(frozen=True)
class Outcome(Generic[Answer]):
    """What came of a design: the answer or the error, and what was said of it: pieces of text,
    each with whether it is for standard output (else it is for standard error)."""

    answer: Answer | None
    error: Exception | None
    said: tuple[tuple[bool, str], ...]


def each_design(
    work: Callable[[Path], Answer], designs: Sequence[Path], enough: int = FEW
) -> Iterator[Answer]:
    """`work` done on each design, in order; from `enough` of them on by all cores."""
    if len(designs) < enough or os.cpu_count() == 1:
        yield from map(work, designs)
        return
    from buildplan.fitting.workers import each_in_turn  # takes long to import

    with closing(each_in_turn(partial(_outcome, work, Path.cwd()), designs)) as outcomes:
        for outcome in outcomes:
            for out, text in outcome.said:
                (sys.stdout if out else sys.stderr).write(text)
            if outcome.error is not None:
                raise outcome.error
            yield cast("Answer", outcome.answer)


def _outcome(work: Callable[[Path], Answer], folder: Path, design: Path) -> Outcome[Answer]:
    said: list[tuple[bool, str]] = []
    with (
        chdir(folder),  # a process that is used again may have been started from another
        redirect_stdout(_Kept(said, out=True)),
        redirect_stderr(_Kept(said, out=False)),
    ):
        try:
            return Outcome(work(design), None, tuple(said))
        except Exception as error:  # noqa: BLE001 - it is raised again where it is waited for
            return Outcome(None, error, tuple(said))


class _Kept(io.TextIOBase):
    """Text that is kept, in the order in which it is written, with where it is for."""

    def __init__(self, said: list[tuple[bool, str]], *, out: bool) -> None:
        super().__init__()
        self._said, self._out = said, out

    def writable(self) -> bool:
        return True

    def write(self, text: str) -> int:
        self._said.append((self._out, text))
        return len(text)
