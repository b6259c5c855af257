"""The surroundings that must not change a byte, and what designs give in them.

    .venv/bin/python tests/same_bytes/environments.py [PYTHON ...] [--only DESIGN] [--outputs A,B]

prints, as a table, for every shipped and gallery design whether all that can be printed of it is
the same in all surroundings. Each further PYTHON (one that has buildplan installed with its own
newest libraries; of another version, that is) takes its turn at them; without any it is seen
whether what differs goes by them or by the surroundings.
"""

from __future__ import annotations

import argparse
import json
import os
import subprocess
import sys
from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from itertools import cycle, product
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
SCRIPT = Path(__file__).parent / "printing_all.py"
DESIGNS = sorted(
    path
    for folder in (ROOT / "designs", ROOT / "designs" / "gallery")
    for path in folder.glob("*.yaml")
    if not path.stem.endswith(".event")
)
# the editions as they are, and with all that can be asked of one
PLAIN, DRESSED = ("training", "crew", "sale"), ("folded", "large", "sealed")
ALL = ("check", "steps", "crewed", *PLAIN, *DRESSED, "model", "data", "companion")
# what is made of several, or for the office: of one each
FRAME = ROOT / "designs" / "picture_frame.yaml"
OF_ONE: tuple[tuple[Path, tuple[str, ...]], ...] = (
    (
        FRAME,
        (
            *("drawing", "picture", "chart", "why", "shopping", "sheet", "quote", "resized"),
            *("gallery", "sold page"),
        ),
    ),
    (ROOT / "designs" / "reopening.event.yaml", ("event", "offer")),
)

HASH_SEEDS = ("0", "1", "2", "4294967295")
# far apart, one of them with half an hour
TIME_ZONES = ("Pacific/Kiritimati", "America/St_Johns")
# one that knows no letter beyond ASCII; with it no plain sum of floats
LOCALES: tuple[Mapping[str, str], ...] = (
    {"LC_ALL": "C.UTF-8"},
    {"LC_ALL": "C", "PYTHONCOERCECLOCALE": "0", "PYTHONUTF8": "0", "NO_PLAIN_SUM": "1"},
)
# every pair of zone and locale, each with a seed of its own
SURROUNDINGS: tuple[Mapping[str, str], ...] = tuple(
    {"PYTHONHASHSEED": seed, "TZ": zone, **locale}
    for seed, (zone, locale) in zip(HASH_SEEDS, product(TIME_ZONES, LOCALES), strict=True)
)


def sums_in(
    surroundings: Mapping[str, str],
    outputs: Sequence[str],
    designs: Sequence[Path],
    python: str = sys.executable,
) -> dict[str, str]:
    """The sums of all outputs of designs, by "design output", in a fresh process."""
    call = [python, str(SCRIPT), ",".join(outputs), *map(str, designs)]
    done = subprocess.run(
        call, env={**os.environ, **surroundings}, stdout=subprocess.PIPE, check=True
    )
    sums: dict[str, str] = json.loads(done.stdout)
    return sums


def unlike(found: Sequence[Mapping[str, str]]) -> tuple[str, ...]:
    """What is not the same in all of them."""
    return tuple(key for key in found[0] if len({one[key] for one in found}) > 1)


def run(pythons: Sequence[str], only: Sequence[str], outputs_of_all: Sequence[str]) -> None:
    """Print the table, of the designs of some names only where some are given."""
    table = [*((design, outputs_of_all) for design in DESIGNS), *OF_ONE]
    asked = [(d, outputs) for d, outputs in table if not only or d.stem in only]
    turns = cycle((sys.executable, *pythons))
    jobs = list(zip(SURROUNDINGS, turns, strict=False))
    heads = (f"{version_of(python)}, {' '.join(one.values())}" for one, python in jobs)
    print("in each of:", *heads, sep="\n- ", end="\n\n")
    print("| design | outputs | differing |\n| --- | --- | --- |")
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        for design, outputs in asked:
            found = list(
                pool.map(lambda job: sums_in(job[0], outputs, [design], job[1]), jobs)  # noqa: B023
            )
            print(
                f"| {design.stem} | {len(outputs)} | {', '.join(unlike(found)) or '-'} |",
                flush=True,
            )


def version_of(python: str) -> str:
    """Python 3.12.1"""
    call = [python, "--version"]
    return subprocess.run(call, stdout=subprocess.PIPE, text=True, check=True).stdout.strip()


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("pythons", nargs="*")
    parser.add_argument("--only", action="append", default=[])
    parser.add_argument("--outputs", default=",".join(ALL))
    given = parser.parse_args()
    run(given.pythons, given.only, given.outputs.split(","))
