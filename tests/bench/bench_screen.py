"""The companion's figures: how large it is, and how soon its first picture is there.

    .venv/bin/python tests/bench/bench_screen.py

For the star, and for a wall of about 3,000 balloons: bytes; milliseconds from opening the file to
the first picture, as they are and with the processor slowed six times; until WebGL takes over.
The rival of the same run is an empty page in the same browser. Needs a Chromium.
"""

from __future__ import annotations

import sys
import tempfile
import time
from pathlib import Path

from playwright.sync_api import Browser

from buildplan.booklet.common.book import gather_book
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.language.voice import LOCALES, Voice
from buildplan.screen.page import companion

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "tests" / "screen"))
from browser import chromium  # noqa: E402 - it lies beside the tests of the screen

SLOWED = 6
WALL = """\
buildplan: 1
name: Great Wall
units: cm
balloons:
  long: {kind: link, nominal: 30, inflate_to: 20, colour: "#1F5F8B", label: deep blue}
  lock: {kind: round, nominal: 13, inflate_to: 9, colour: "#F7F3E8", label: ivory}
build:
  wall: {across: 27, up: 27, layers: 1, row: long, upright: long, lock: lock}
"""


def milliseconds(browser: Browser, file: Path, wanted: str, slowed: int) -> float:
    """From opening a file to the first time that `wanted` is in the page."""
    page = browser.new_page(viewport={"width": 390, "height": 844})
    page.set_default_timeout(300_000)
    if slowed > 1:
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slowed})
    began = time.perf_counter()
    page.goto(file.as_uri(), wait_until="commit")
    page.wait_for_selector(wanted, state="attached")
    took = 1000 * (time.perf_counter() - began)
    page.close()
    return took


def written(folder: Path, design: Path) -> Path:
    read = read_design(design)
    book = gather_book(read, PAPERS["a4"], read.units, "crew")
    file = folder / f"{design.stem}.html"
    file.write_text(companion(book, [Voice(each) for each in LOCALES]), encoding="utf-8")
    return file


def main() -> None:
    with tempfile.TemporaryDirectory() as name, chromium() as browser:
        folder = Path(name)
        (folder / "great_wall.yaml").write_text(WALL, encoding="utf-8")
        (folder / "empty.html").write_text("<!doctype html><p>nothing</p>", encoding="utf-8")
        empty = milliseconds(browser, folder / "empty.html", "p", 1)
        print(f"{'empty page':14} {empty:8.0f} ms")
        for design in (ROOT / "designs" / "reading_star.yaml", folder / "great_wall.yaml"):
            file = written(folder, design)
            first = milliseconds(browser, file, ".stage[data-drawn]", 1)
            slow = milliseconds(browser, file, ".stage[data-drawn]", SLOWED)
            light = milliseconds(browser, file, ".stage[data-painter=webgl]", 1)
            print(
                f"{design.stem:14} {file.stat().st_size / 1e6:6.2f} MB; first picture "
                f"{first:.0f} ms ({first / empty:.1f} empty pages), slowed {SLOWED} times "
                f"{slow:.0f} ms; WebGL {light:.0f} ms"
            )


if __name__ == "__main__":
    main()
