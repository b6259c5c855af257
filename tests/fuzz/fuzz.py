"""Files and requests made wrong, so many of each kind, and what became of them as a table:
`python tests/fuzz/fuzz.py 100000`, or some kinds alone: `... 5000 design "svg logo"`.

Each kind is tried in processes of its own, so that the most memory is its own too. Cases are the
same each time: `python tests/fuzz/fuzz.py case design 1234` writes that one and judges it.
"""

from __future__ import annotations

import logging
import multiprocessing
import resource
import shutil
import sys
import tempfile
import time
import warnings
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path

from desk_kind import DESK
from judging import ACCEPTED, FAULT, HANG, REFUSED, judged
from kinds import DESIGNS, KINDS, Kind
from sold_kind import SOLD

ALL = {kind.name: kind for kind in (*KINDS, SOLD, DESK)}
AT_ONCE = 500  # cases of a process
SHOWN = 3  # of each fault
HEAD = ("kind", "read", "refused", "accepted", "faults", "hangs", "most memory", "slowest")
ROW = "| {:<12} | {:>7} | {:>7} | {:>8} | {:>6} | {:>5} | {:>11} | {:>8} |"


@dataclass
class Tally:
    """What became of the cases of a kind: how many of each, the bad ones, memory and time."""

    how: Counter[str] = field(default_factory=Counter)
    bad: list[tuple[int, str]] = field(default_factory=list)
    memory_mib: int = 0
    slowest_s: float = 0.0

    def add(self, other: Tally) -> None:
        """Count others too."""
        self.how += other.how
        self.bad += other.bad
        self.memory_mib = max(self.memory_mib, other.memory_mib)
        self.slowest_s = max(self.slowest_s, other.slowest_s)

    def row(self, name: str) -> str:
        """A row of the table."""
        counts = (sum(self.how.values()), *(self.how[how] for how in (REFUSED, ACCEPTED)))
        bad = (self.how[FAULT], self.how[HANG])
        return ROW.format(
            name,
            *(f"{count:,}" for count in counts),
            *bad,
            f"{self.memory_mib} MiB",
            f"{self.slowest_s:.2f} s",
        )


def folder_with_designs() -> Path:
    """A folder in which what cases name is there."""
    folder = Path(tempfile.mkdtemp(prefix="fuzz-"))
    for file in DESIGNS.glob("*.yaml"):
        shutil.copy(file, folder)
    return folder


def tried(name: str, numbers: range) -> Tally:
    """The cases of these numbers."""
    logging.disable()
    warnings.simplefilter("ignore")
    tally, kind, folder = Tally(), ALL[name], folder_with_designs()
    for number in numbers:
        path = folder / f"case{kind.ending}"
        path.write_bytes(kind.case(number))
        start = time.process_time()
        outcome = judged(kind.read, path)
        tally.slowest_s = max(tally.slowest_s, time.process_time() - start)
        tally.how[outcome.how] += 1
        if outcome.how in (FAULT, HANG):
            tally.bad.append((number, f"{outcome.how}: {outcome.said}"))
    shutil.rmtree(folder)
    tally.memory_mib = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss >> 10
    return tally


def one_case(kind: Kind, number: int) -> None:
    """Write a case into this folder, and say what becomes of it."""
    path = Path(f"{kind.name.replace(' ', '_')}_{number}{kind.ending}")
    path.write_bytes(kind.case(number))
    print(path, judged(kind.read, path))


def main() -> None:
    """Try them all, and print the table."""
    if sys.argv[1:2] == ["case"]:
        one_case(ALL[sys.argv[2]], int(sys.argv[3]))
        return
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    names = sys.argv[2:] or list(ALL)
    each = -(-most // len(names))
    print(ROW.format(*HEAD), flush=True)
    print("|" + "|".join("-" * (len(cell)) for cell in ROW.format(*HEAD).split("|")[1:-1]) + "|")
    whole = Tally()
    with multiprocessing.get_context("fork").Pool(2, maxtasksperchild=1) as pool:
        for name in names:
            ranges = [range(at, min(at + AT_ONCE, each)) for at in range(0, each, AT_ONCE)]
            tally = Tally()
            for one in pool.starmap(tried, [(name, numbers) for numbers in ranges], 1):
                tally.add(one)
            print(tally.row(name), flush=True)
            _show(name, tally)
            whole.add(tally)
    print(whole.row("all"))


def _show(name: str, tally: Tally) -> None:
    """The first of each fault of a kind, on the messages."""
    seen: Counter[str] = Counter()
    for number, said in tally.bad:
        alike = said[:30] + said[-25:]
        seen[alike] += 1
        if seen[alike] <= SHOWN:
            print(f"  {name} {number}: {said[:500]}", file=sys.stderr, flush=True)


if __name__ == "__main__":
    main()
