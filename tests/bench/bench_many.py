"""Several designs by one command: `python tests/bench/bench_many.py`.

Prints whether booklets come out with the same bytes one by one, all at once on one processor and
all at once on all of them, and a gallery and a shopping list on one and on all, with the seconds
that each takes.

The designs are the gallery's first six, or those that are named. Every command is a process of its
own, of this one version of the program.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

GALLERY = Path(__file__).parents[2] / "designs" / "gallery"
USUAL = 6


def on_one() -> None:
    """Have this process, and those that it begins, on one processor."""
    os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})


def ran(folder: Path, *arguments: str, one: bool = False) -> None:
    """Run a command in a folder. Raises CalledProcessError for one that fails otherwise than by
    what it says of a design."""
    command = [sys.executable, "-m", "buildplan", *arguments]
    before = on_one if one else None
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, preexec_fn=before)
    if done.returncode not in (0, 1):
        raise subprocess.CalledProcessError(done.returncode, command, done.stdout, done.stderr)


def digest(folder: Path) -> str:
    """All files that a folder holds, by their names and bytes."""
    told = hashlib.sha256()
    for file in sorted(path for path in folder.rglob("*") if path.is_file()):
        told.update(f"{file.relative_to(folder)}\n".encode())
        told.update(file.read_bytes())
    return told.hexdigest()[:16]


def booklets_alone(names: Sequence[str], folder: Path) -> None:
    """A booklet of each design, one command after another."""
    for name in names:
        ran(folder, "booklet", name, "--edition", "crew", "--out", "made", one=True)


def together(command: Sequence[str], one: bool, folder: Path) -> None:
    """One command for all designs, on one processor or on all."""
    ran(folder, *command, one=one)


def measured(files: Sequence[Path], work: Callable[[Path], None]) -> tuple[str, float]:
    """What some work makes of designs in a folder of its own: its digest, and the seconds."""
    with TemporaryDirectory() as place:
        folder = Path(place)
        for file in files:
            shutil.copy(file, folder)
        begun = time.perf_counter()
        work(folder)
        seconds = time.perf_counter() - begun
        for file in files:
            (folder / file.name).unlink()
        return digest(folder), seconds


def main() -> None:
    """Print the table."""
    every = sorted(file for file in GALLERY.glob("*.yaml") if not file.stem.endswith(".event"))
    files = [Path(name).resolve() for name in sys.argv[1:]] or every[:USUAL]
    names = [file.name for file in files]
    commands = {
        "booklet": ["booklet", *names, "--edition", "crew", "--out", "made"],
        "gallery": ["gallery", ".", "--out", "made.pdf"],
        "shopping": ["shopping", *names, "--csv", "made.csv", "--pdf", "made.pdf"],
    }
    print(f"{len(files)} designs, {len(os.sched_getaffinity(0))} processors\n")
    print("| what | how | seconds | bytes |\n| --- | --- | --- | --- |")
    for what, command in commands.items():
        ways = {"all at once, one processor": partial(together, command, True)}
        ways["all at once, all processors"] = partial(together, command, False)
        if what == "booklet":
            ways = {"one by one": partial(booklets_alone, names), **ways}
        first = ""
        for how, work in ways.items():
            made, seconds = measured(files, work)
            first = first or made
            same = "the same" if made == first else "OTHERS"
            print(f"| {what} | {how} | {seconds:.1f} | {made} {same} |", flush=True)


if __name__ == "__main__":
    main()
