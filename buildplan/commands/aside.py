"""What is said beside the answer, on standard error: lines, and on a terminal that work goes on."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager


def aside(words: str) -> None:
    """Print a line beside the answer."""
    print(words, file=sys.stderr, flush=True)


@contextmanager
def busy(words: str) -> Iterator[Callable[[str], None]]:
    """Show on a terminal that work goes on, and on what. What is yielded shows other words."""
    if not sys.stderr.isatty():
        yield _unseen
        return
    from rich.console import Console  # longer to import than a design is to read
    from rich.text import Text

    with Console(stderr=True).status(Text(words)) as status:
        yield lambda other: status.update(Text(other))


def _unseen(words: str) -> None:
    """Nobody is at a terminal to be shown anything."""
