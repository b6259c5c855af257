"""How the work grows with the piece: `python tests/bench/bench_big.py [most balloons]`.

Hung walls of two layers and tubes of some 1,000, 10,000 and 30,000 balloons: processor seconds to
check one (shape, examination, reach, steps, figures), to tell its steps and to print its crew's
booklet, the memory that was needed, and the power of the number by which the time grows from each
size to the next. Wanted: a power of at most 1.2; 30,000 balloons checked in 180 s and 1.5 GB; the
booklet of 10,000 printed in 40 s.
"""

from __future__ import annotations

import math
import resource
import sys
import time
from collections.abc import Callable
from typing import Any

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.design.model import Design
from buildplan.document.paper import PAPERS
from buildplan.evaluation.evaluating import evaluate
from buildplan.framework.counts import balloon_counts

PRINTED_UP_TO = 12_000
LINK = {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": "#1F5F8B", "label": "deep blue"}
ROUND = {"kind": "round", "nominal": 5, "inflate_to": 3.5, "colour": "#F7F3E8", "label": "ivory"}


def _design(name: str, build: dict[str, Any]) -> Design:
    return Design.model_validate(
        {
            "buildplan": 1,
            "name": name,
            "units": "in",
            "balloons": {"link": LINK, "lock": ROUND},
            "build": build,
            "hung": True,
        }
    )


def wall(cells: int) -> Design:
    """A wall of two layers, so many cells wide."""
    up = min(cells, 60)
    keys = {"row": "link", "upright": "link", "between": "link", "lock": "lock"}
    return _design("Wall", {"wall": {"across": cells, "up": up, "layers": 2, **keys}})


def tube(cells: int) -> Design:
    """An open tube of four chains, straight."""
    course = [{"repeat": 100, "cells": ["straight"]}] * (cells // 100)
    keys = {"long": "link", "brace": "link", "lock": "lock"}
    return _design("Tube", {"tube": {"closed": False, "chains": 4, **keys, "course": course}})


def measured(name: str, design: Design) -> tuple[int, float]:
    """Print the figures of one piece; its balloons, and the seconds of its check."""
    start = time.process_time()
    found = evaluate(design, design.units, 40)
    checked = time.process_time() - start
    balloons = sum(balloon_counts(found.framework).values())
    printed = ""
    if balloons <= PRINTED_UP_TO:
        book: Book = gather_book(design, PAPERS["a4"], design.units, "crew")
        start = time.process_time()
        book.words  # noqa: B018 - told once, and kept
        told = time.process_time() - start
        data = print_booklet(book)
        whole = time.process_time() - start
        printed = f"   steps told {told:6.2f} s, booklet {whole:6.2f} s ({len(data) >> 20} MiB)"
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss >> 10
    print(f"{name:6} {balloons:6d} balloons   check {checked:7.2f} s{printed}   {memory} MiB")
    return balloons, checked


def main() -> None:
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 30_000
    pieces: tuple[tuple[str, Callable[[int], Design], tuple[int, ...]], ...] = (
        ("wall", wall, (10, 32, 57)),
        ("tube", tube, (100, 600, 1900)),
    )
    measured("tube", tube(100))  # what is imported and kept at the first is not counted
    for name, make, sizes in pieces:
        before: tuple[int, float] | None = None
        for cells in sizes:
            design = make(cells)
            found = measured(name, design)
            if before is not None:
                power = math.log(found[1] / before[1]) / math.log(found[0] / before[0])
                print(f"{name:6} grows by the power {power:.2f}")
            before = found
            if found[0] * 2 > most:
                break


if __name__ == "__main__":
    main()
