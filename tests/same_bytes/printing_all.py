"""What designs give, as sums of bytes; run in a process of its own.

    python tests/same_bytes/printing_all.py OUTPUTS DESIGN ...

OUTPUTS are keys of `CALLS`, joined by commas. Prints one JSON object:
{"reading_star check": "sha256", ...}. With NO_PLAIN_SUM=1 our own code must not
use the built-in `sum` of floats, whose last digits differ between Pythons ("What's New In Python
3.12": "sum() now uses Neumaier summation"); `math.fsum` is the same in all.
"""

from __future__ import annotations

import builtins
import contextlib
import gc
import hashlib
import io
import json
import operator
import os
import shutil
import sys
import tempfile
from collections.abc import Iterable
from functools import reduce
from pathlib import Path
from typing import Any

from buildplan.__main__ import COLLECT_AT
from buildplan.cli import main

# what each is called with beside the design; OUT is a folder of its own, ALONE one that holds the
# design and a key, and stands for it
OUT, ALONE = "OUT", "ALONE"
KEY = f"{ALONE}/own.key"
BUYER = ("--edition", "sale", "--for", "Ana Example")
CALLS = {
    "check": ("check", "--json"),
    "steps": ("steps", "--json"),
    "crewed": ("steps", "--crew", "3", "--opening", "2027-05-01T10:00", "--language", "es"),
    "training": ("booklet", "--out", OUT),
    "crew": ("booklet", "--edition", "crew", "--language", "es", "--out", OUT),
    "sale": ("booklet", *BUYER, "--out", OUT),
    "large": ("booklet", "--edition", "crew", "--large-print", "--language", "de", "--out", OUT),
    "folded": ("booklet", "--fold", "--paper", "letter", "--language", "fr", "--out", OUT),
    "sealed": ("booklet", *BUYER, "--key", KEY, "--language", "pt", "--out", OUT),
    "model": ("export", "--out", f"{OUT}/piece.glb"),
    "data": ("export", "--out", f"{OUT}/piece.json"),
    "companion": ("companion", "--out", f"{OUT}/piece.html"),
    "sold page": ("companion", *BUYER, "--out", f"{OUT}/piece.html"),
    "drawing": ("draw", "--out", f"{OUT}/piece.pdf"),
    "picture": ("draw", "--view", "corner", "--out", f"{OUT}/piece.png"),
    "chart": ("check", "--chart", f"{OUT}/chart.svg"),
    "why": ("check", "--why", "height", "--why", "wind"),
    "shopping": ("shopping", "--csv", f"{OUT}/list.csv", "--pdf", f"{OUT}/list.pdf"),
    "sheet": ("measure", "--out", f"{OUT}/log.csv", "--pdf", f"{OUT}/log.pdf"),
    "quote": ("quote", "--csv", f"{OUT}/quote.csv", "--pdf", f"{OUT}/quote.pdf"),
    "resized": ("resize", "--height", "240cm", "--by", "gauge", "--out", f"{OUT}/resized.yaml"),
    "gallery": ("gallery", ALONE, "--out", f"{OUT}/gallery.pdf"),
    "event": ("event", "--out", OUT),
    "offer": ("quote", "--csv", f"{OUT}/quote.csv", "--pdf", f"{OUT}/quote.pdf", "--for", "Ana"),
}


def _sum(call: tuple[str, ...], design: Path, folder: Path) -> str:
    """The sum of what a command says and of all that it writes."""
    with tempfile.TemporaryDirectory() as alone:
        shutil.copy(design, alone)
        Path(alone, "own.key").write_bytes(bytes(range(64)))
        named = () if ALONE in call else (str(design),)
        put = [part.replace(OUT, str(folder)).replace(ALONE, alone) for part in call]
        sys.argv = ["buildplan", *put, *named]
        said = _said()
    summed = hashlib.sha256(said.replace(str(folder), OUT).encode())
    for path in sorted(folder.iterdir()):
        summed.update(path.read_bytes())
        path.unlink()
    return summed.hexdigest()


def _said() -> str:
    """What the command says."""
    said, aside = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(said), contextlib.redirect_stderr(aside):
        try:
            main()
        except SystemExit as ended:
            if ended.code not in (None, 0, 1):
                raise RuntimeError(aside.getvalue()) from ended
    return said.getvalue()


def _sum_of_whole_numbers(values: Iterable[Any], /, start: Any = 0) -> Any:
    items = [start, *values]
    caller = sys._getframe(1)
    ours = caller.f_globals.get("__name__", "").startswith("buildplan")
    if ours and any(isinstance(one, float) for one in items):
        raise TypeError(f"floats: {caller.f_code.co_filename}:{caller.f_lineno}")
    return reduce(operator.add, items)


def run() -> None:
    """Print the sums that the call asks for."""
    gc.set_threshold(*COLLECT_AT)  # as the command has it
    if os.environ.get("NO_PLAIN_SUM"):
        builtins.sum = _sum_of_whole_numbers
    outputs, designs = sys.argv[1].split(","), [Path(name) for name in sys.argv[2:]]
    with tempfile.TemporaryDirectory() as name:
        sums = {
            f"{design.stem} {output}": _sum(CALLS[output], design, Path(name))
            for design in designs
            for output in outputs
        }
    print(json.dumps(sums))


if __name__ == "__main__":
    run()
