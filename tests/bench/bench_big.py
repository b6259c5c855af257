"""How the work grows with the piece: `python tests/bench/bench_big.py [most balloons]`.

Hung walls of two layers and tubes of some 1,000, 10,000 and 30,000 balloons: processor seconds to
check one (shape, examination, reach, steps, figures), to tell its steps, to read them back and to
print its crew's booklet, the memory that was needed, and the power of the number by which each of
these grows from one size to the next. Wanted: a power of at most 1.2; 30,000 balloons checked in
180 s and 1.5 GB; the booklet of 10,000 printed in 40 s.
"""

from __future__ import annotations

import gc
import math
import resource
import sys
import time
from collections.abc import Callable, Mapping
from typing import Any

from buildplan.__main__ import COLLECT_AT
from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.design.model import Design
from buildplan.document.paper import PAPERS
from buildplan.evaluation.evaluating import evaluate
from buildplan.framework.counts import balloon_counts
from buildplan.instructions.guarding import assert_rebuilds

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


def measured(name: str, design: Design) -> tuple[int, Mapping[str, float]]:
    """Print the figures of one piece; its balloons, and the seconds of each kind of work."""
    start = time.process_time()
    found = evaluate(design, design.units, 40)
    seconds = {"check": time.process_time() - start}
    balloons = sum(balloon_counts(found.framework).values())
    printed = ""
    if balloons <= PRINTED_UP_TO:
        book: Book = gather_book(design, PAPERS["a4"], design.units, "crew")
        start = time.process_time()
        words = book.words  # told once, and kept
        seconds["steps"] = time.process_time() - start
        start = time.process_time()
        assert_rebuilds(book.framework, book.steps, words, design.units, book.voice)
        seconds["read back"] = time.process_time() - start
        start = time.process_time()
        data = print_booklet(book)
        seconds["booklet"] = time.process_time() - start
        printed = f"   {len(data) / 2**20:.1f} MiB printed"
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss >> 10
    told = "   ".join(f"{kind} {spent:6.2f} s" for kind, spent in seconds.items())
    print(f"{name:6} {balloons:6d} balloons   {told}{printed}   {memory} MiB", flush=True)
    return balloons, seconds


def main() -> None:
    gc.set_threshold(*COLLECT_AT)  # as the commands do
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 30_000
    pieces: tuple[tuple[str, Callable[[int], Design], tuple[int, ...]], ...] = (
        ("wall", wall, (10, 32, 57)),
        ("tube", tube, (100, 600, 1900)),
    )
    for name, make, sizes in pieces:
        measured(name, make(sizes[0]))  # what is imported and kept at the first is not counted
        before: tuple[int, Mapping[str, float]] | None = None
        for cells in sizes:
            found = measured(name, make(cells))
            if before is not None:
                larger = math.log(found[0] / before[0])
                powers = (
                    f"{kind} {math.log(spent / before[1][kind]) / larger:.2f}"
                    for kind, spent in found[1].items()
                    if kind in before[1]
                )
                print(f"{name:6} grows by the power: {', '.join(powers)}", flush=True)
            before = found
            if found[0] * 2 > most:
                break


if __name__ == "__main__":
    main()
