"""What leaves a command: its answer, on standard output; and what is said beside it, on standard
error: lines, and on a terminal that work goes on. Signs that are not seen are shown in both."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from buildplan.language.shown import is_unseen, shown


def aside(words: str) -> None:
    """Print a line beside the answer."""
    print(_seen(words), file=sys.stderr, flush=True)


def answer(words: str | Path, *, err: bool = False) -> None:
    """Print lines of the answer, or the path of a file that was written; with `err` beside the
    answer."""
    print(
        shown(str(words)) if isinstance(words, Path) else _seen(words),
        file=sys.stderr if err else sys.stdout,
        flush=True,
    )


def answer_data(data: object) -> None:
    """Print plain data as JSON (RFC 8259); signs that are not seen by their numbers."""
    text = json.dumps(data, indent=2, ensure_ascii=False)
    print(
        "".join(f"\\u{ord(c):04x}" if c != "\n" and is_unseen(c) else c for c in text), flush=True
    )


def _seen(words: str) -> str:
    """Lines, with the signs in them shown that are not seen."""
    return "\n".join(map(shown, words.split("\n")))


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
