"""Many sold copies of one design: `python tests/bench/bench_copies.py [copies]`.

Prints the sale edition of the five-pointed star for 1,000 invented buyers by one command, sealed
with a key; then verifies every copy, and prints ten of them anew, each by a command of its own, to
compare their bytes. Told are the seconds of the processor, all processes together, the most memory
that one of them took, and what was found. Wanted: 1,000 copies in two minutes on two cores, each
verified, each of the ten the same.
"""

from __future__ import annotations

import math
import resource
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Sequence
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from buildplan.business.copies.verifying import verify
from buildplan.fitting.workers import each_in_turn

DESIGNS = Path(__file__).parents[2] / "designs"
USUAL, ANEW = 1000, 10


def seconds_of_children() -> float:
    """Seconds of the processor that the processes begun from here, and theirs, have taken."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def printed(folder: Path, out: str, who: Sequence[str]) -> None:
    """Print copies of the star into a folder. Raises CalledProcessError where that fails."""
    design = str(DESIGNS / "reading_star.yaml")
    seller = ["--brand", str(DESIGNS / "brand" / "lantern_street.yaml")]
    command = [sys.executable, "-m", "buildplan", "booklet", design, "--edition", "sale", *seller]
    command += ["--key", "seal.key", "--out", out, *who]
    subprocess.run(command, cwd=folder, check=True, capture_output=True)


def verdict_of(key: bytes, file: Path) -> tuple[str, float]:
    """What the check of a copy finds, and the seconds of the processor that it takes."""
    begun = time.process_time()
    return str(verify(file, key).verdict), time.process_time() - begun


def main() -> None:
    """Print what is found."""
    copies = int(sys.argv[1]) if len(sys.argv) > 1 else USUAL
    names = [f"Example Buyer {number}" for number in range(1, copies + 1)]
    with TemporaryDirectory() as place:
        folder = Path(place)
        (folder / "seal.key").write_bytes(bytes(range(32)))
        (folder / "buyers.csv").write_text("\n".join(["name", *names]) + "\n")
        begun, clock = seconds_of_children(), time.perf_counter()
        printed(folder, "many", ["--buyers", "buyers.csv"])
        spent, clock = seconds_of_children() - begun, time.perf_counter() - clock
        memory = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss >> 10
        made = sorted((folder / "many").glob("*.pdf"))
        print(
            f"{len(made)} copies: {spent:.1f} s of the processor, {clock:.1f} s, {memory} MiB",
            flush=True,
        )
        judged = list(each_in_turn(partial(verdict_of, (folder / "seal.key").read_bytes()), made))
        told = Counter(verdict for verdict, _ in judged)
        found = ", ".join(f"{count} {verdict}" for verdict, count in sorted(told.items()))
        spent = math.fsum(seconds for _, seconds in judged)
        print(f"verified: {found}; {spent:.1f} s of the processor", flush=True)
        for name in names[:: max(1, copies // ANEW)][:ANEW]:
            printed(folder, "alone", ["--for", name])
        alone = sorted((folder / "alone").glob("*.pdf"))
        same = sum(
            file.read_bytes() == (folder / "many" / file.name).read_bytes() for file in alone
        )
        print(f"printed alone: {len(alone)}, of which {same} have the same bytes")


if __name__ == "__main__":
    main()
