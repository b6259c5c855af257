"""What large pieces cost, and those that give most work: `python tests/bench/bench_limits.py`.

Pieces of about 1,000, 3,000 and 10,000 balloons that fit and that do not, that stand and that fall:
processor seconds to check one, and the power of the number by which the time grows. Wanted: at most
1.2. `bench_limits.py limits` prints what a piece of each limit costs, each in a process of its own.
"""

from __future__ import annotations

import math
import resource
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
from awkward_pieces import grid, nested, octet, random_graph, tube, wall, wound_tube

from buildplan.design.model import Design
from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
from buildplan.evaluation.expected_time import seconds_to_work_out, size_of

Make = Callable[[int], Design]

GROWING: dict[str, tuple[Make, tuple[int, ...]]] = {
    "wall": (wall, (10, 18, 32)),
    "wall of one layer": (lambda cells: wall(cells, 1), (15, 26, 48)),
    "tube": (tube, (100, 200, 600)),
    "tube of two chains": (lambda cells: tube(cells, 2), (200, 400, 1400)),
    "tube, closed": (lambda cells: tube(cells, closed=True), (100, 200, 600)),
    "sheet of squares": (lambda side: grid(side, side, 0), (15, 26, 49)),
    "assembly of assemblies": (nested, (4, 6, 8)),
    "octet": (octet, (8, 10, 14)),
    "octet, not fitting": (lambda side: octet(side, 5), (8, 10, 14)),
    "block": (lambda side: grid(side, side, side), (5, 8, 12)),
    "winding tube": (wound_tube, (100, 200, 600)),
    "tied at random": (random_graph, (300, 600, 1200)),
}
LIMITS: dict[str, Callable[[], Design]] = {
    "tube of 20,000 balloons": lambda: tube(1200),
    "wall of 6,000 joints": lambda: wall(53),
    "graph of 20,000 balloons, squares": lambda: grid(69, 69, 0),
    "graph of 20,000 balloons, cubes": lambda: grid(15, 15, 14),
    "graph of 20,000 balloons, octet": lambda: octet(17),
    "tube wound into itself": lambda: wound_tube(600),
    "assembly of 64 parts, 6 deep": lambda: nested(6),
    "assembly of 1,024 parts, 10 deep": lambda: nested(10),
    "2,700 joints tied at random": lambda: random_graph(2700),
}


def measured(name: str, design: Design) -> tuple[int, float]:
    """Print the figures of one piece; its balloons, and the seconds of its check."""
    start = time.process_time()
    found = evaluate(design, design.units, NEW_PARTS)
    taken = time.process_time() - start
    size = size_of(found.framework)
    told = seconds_to_work_out(size)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024**2
    kinds = ", ".join(one.kind.value for one in found.facts.problems) or "no problems"
    cells = (name, f"{size.balloons:,}", f"{taken:.2f} s", f"{told:.1f} s", f"{memory:.2f} GB")
    print("| " + " | ".join((*cells, kinds)) + " |", flush=True)
    return size.balloons, taken


def main() -> None:
    asked = sys.argv[1:]
    if asked[:1] == ["one"]:
        measured(asked[1], LIMITS[asked[1]]())
        return
    print("| piece | balloons | takes | told | memory | found |")
    print("| --- | --- | --- | --- | --- | --- |", flush=True)
    if asked == ["limits"]:
        for name in LIMITS:
            subprocess.run([sys.executable, __file__, "one", name], check=True)
        return
    evaluate(tube(100), "in", NEW_PARTS)  # what is imported at the first is not counted
    powers: list[tuple[str, float, float]] = []
    for name, (make, sizes) in GROWING.items():
        first, middle, last = (measured(name, make(size)) for size in sizes)
        powers.append((name, _power(first, last), _power(middle, last)))
    for name, whole, late in powers:
        print(f"{name} grows by the power {whole:.2f}, from the middle one on {late:.2f}")


def _power(one: tuple[int, float], other: tuple[int, float]) -> float:
    return math.log(other[1] / one[1]) / math.log(other[0] / one[0])


if __name__ == "__main__":
    main()
