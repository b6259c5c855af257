"""The figures of what is shown on a screen: the companion's first picture, and the desk's waits.

    .venv/bin/python tests/bench/bench_screen.py            both
    .venv/bin/python tests/bench/bench_screen.py desk       the desk alone

The desk's, by the clock, asked as its page asks it, on a folder of 200 designs: home, the very
first time (every card with name and balloons; the cards in sight whole, with size, whether it
stands and picture; all of them) and by a desk that is begun anew (all: they are kept by what is in
the file);
and from a changed cell or colour to the new shape, of the star and of a wall of about 3,000
balloons, the median of several and the longest. Asked for are 2 s, 0.5 s and 3 s.

The companion's: how large it is, and how soon its first picture is there.

For the star, and for a wall of about 3,000 balloons:

- bytes;
- milliseconds by the clock until the first picture was drawn, and until the browser showed it, as
  they are and with the processor slowed six times. Other work on the machine counts into these;
- milliseconds of the processor that the page's own thread took for all that without WebGL: ours;
- milliseconds by the clock until WebGL takes over. Chromium draws it here by its software
  renderer, which a desktop or a phone does not.

The rival of the same run is an empty page in the same browser. Times by the clock mean something
on a quiet machine alone, so its load is printed. Needs a Chromium.
"""

from __future__ import annotations

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import httpx
from playwright.sync_api import Browser

from buildplan.booklet.common.book import gather_book
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.language.voice import LOCALES, Voice
from buildplan.screen.page import companion

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "tests" / "screen"))
from browser import chromium  # noqa: E402 - they lie beside the tests of the screen
from screen_pieces import GREAT_WALL  # noqa: E402

SLOWED = 6
PATIENCE_MS = 300_000
CLOCK = """async () => {
  const at = name => (performance.getEntriesByName(name)[0] ?? {}).startTime
  while (at('first-contentful-paint') === undefined) await new Promise(done => setTimeout(done, 20))
  const shown = at('first-contentful-paint')
  return {drawn: at('first picture') ?? shown, shown}
}"""


@dataclass(frozen=True)
class Taken:
    """Milliseconds from opening a page: until it was drawn, until it was shown, until it was as
    it stays, and of the processor by the page's own thread."""

    drawn: float
    shown: float
    ready: float
    own: float


def taken(browser: Browser, address: str, ready: str, slowed: int = 1) -> Taken:
    """Open a page and wait until `ready` is in it."""
    page = browser.new_page(viewport={"width": 390, "height": 844})
    page.set_default_timeout(PATIENCE_MS)
    tool = page.context.new_cdp_session(page)
    tool.send("Performance.enable", {"timeDomain": "threadTicks"})
    if slowed > 1:
        tool.send("Emulation.setCPUThrottlingRate", {"rate": slowed})
    page.goto(address)
    page.wait_for_selector(ready, state="attached")
    ended = page.evaluate("performance.now()")
    clock = page.evaluate(CLOCK)
    figures = {one["name"]: one["value"] for one in tool.send("Performance.getMetrics")["metrics"]}
    page.close()
    return Taken(clock["drawn"], clock["shown"], ended, 1000 * figures["TaskDuration"])


def written(folder: Path, design: Path) -> Path:
    read = read_design(design)
    book = gather_book(read, PAPERS["a4"], read.units, "crew")
    file = folder / f"{design.stem}.html"
    file.write_text(companion(book, [Voice(each) for each in LOCALES]), encoding="utf-8")
    return file


HOME_OF = 200  # designs
IN_SIGHT = 10  # cards on a screen of 1440 by 900
TIMES = 8


@contextmanager
def desk_on(folder: Path) -> Iterator[httpx.Client]:
    """A desk as a person starts it, asked as its page asks it."""
    command = [sys.executable, "-m", "buildplan", "desk", str(folder), "--no-open"]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    address = process.stdout.readline().strip()
    own = address.split("/?")[0]
    try:
        with httpx.Client(base_url=own, headers={"origin": own}, timeout=600) as http:
            http.get(address)
            yield http
    finally:
        process.terminate()
        process.wait()


@dataclass(frozen=True)
class HomeShown:
    """Seconds from the first question of home's page: until every design has its card with name
    and balloons, until the cards in sight are whole with their pictures loaded, until all are."""

    cards: float
    sight: float
    all: float


def home_shown(http: httpx.Client) -> HomeShown:
    """Home, asked for as its page asks: over and over until all is there."""
    begun = time.perf_counter()
    cards = sight = 0.0
    told = False
    loaded: set[str] = set()
    while True:
        designs = http.get("/api/home").json()["designs"]
        if not told:
            http.post("/api/home/seen", json={"names": [one["name"] for one in designs[:IN_SIGHT]]})
            told = True
        if not cards and all(one["balloons"] or one["state"] == "broken" for one in designs):
            cards = time.perf_counter() - begun
        for one in designs:
            if one["picture"] and one["picture"] not in loaded:
                http.get(one["picture"]).raise_for_status()
                loaded.add(one["picture"])
        there = [one["picture"] is not None and one["state"] == "ready" for one in designs]
        if not sight and all(there[:IN_SIGHT]):
            sight = time.perf_counter() - begun
        if all(there):
            return HomeShown(cards, sight, time.perf_counter() - begun)
        time.sleep(0.1)


def put(path: list[str | int], value: object) -> Mapping[str, object]:
    return {"op": "put", "path": path, "value": value}


def star_edit(number: int) -> Mapping[str, object]:
    """Sides of three cells, or of two."""
    side = ["straight"] * (3 - number % 2)
    return put(["build", "tube", "course", 0, "cells"], [*side, "tip", *side, "dip"])


def wall_edit(number: int) -> Mapping[str, object]:
    """A wall of 27 cells across, or of 26."""
    return put(["build", "wall", "across"], 27 - number % 2)


def shape_shown(http: httpx.Client, name: str, number: int, edit: Mapping[str, object]) -> float:
    """Seconds from a change to the data of the new shape, of a version that is new."""
    edits = [edit, put(["name"], f"Tried {number}")]
    at = f"/api/design/{name}"
    base = http.get(at).json()["version"]
    begun = time.perf_counter()
    made = http.post(f"{at}/edit", json={"base": base, "edits": edits}).json()
    while True:
        answer = http.get(f"{at}/piece", params={"version": made["version"]})
        if answer.status_code != 202:
            break
        time.sleep(0.01)
    assert answer.status_code == 200, answer.text
    return time.perf_counter() - begun


def desk_figures(folder: Path) -> None:
    """Home, and changed cells."""
    designs = sorted((ROOT / "designs").rglob("*.yaml"))
    whole = [one for one in designs if "\nbuild:" in one.read_text("utf-8")]
    for number in range(HOME_OF - 2):
        design = whole[number % len(whole)]
        text = design.read_text("utf-8")
        (folder / f"piece_{number:03}.yaml").write_text(f"{text}# {number}\n", "utf-8")
    (folder / "great_wall.yaml").write_text(GREAT_WALL, encoding="utf-8")
    shutil.copy(ROOT / "designs" / "reading_star.yaml", folder)
    with desk_on(folder) as http:
        first = home_shown(http)
    with desk_on(folder) as http:
        again = home_shown(http)
        print(
            f"home of {HOME_OF}, the very first time: every card with name and balloons "
            f"{first.cards:.2f} s, the {IN_SIGHT} in sight whole {first.sight:.1f} s, every one "
            f"{first.all:.0f} s; begun anew, every card and picture {again.all:.2f} s; "
            f"load {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors"
        )
        for name, edit in (("reading_star", star_edit), ("great_wall", wall_edit)):
            taken_s = [shape_shown(http, name, n, edit(n)) for n in range(1, TIMES + 1)]
            links = http.get(f"/api/design/{name}/piece").json()["piece"]["links"]
            print(
                f"{name}, {len(links)} links: from a changed cell to the new shape "
                f"{statistics.median(taken_s):.2f} s, {max(taken_s):.2f} s the longest"
            )


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        desk_figures(Path(name))
    if sys.argv[1:] != ["desk"]:
        companion_figures()


def companion_figures() -> None:
    """The companion's first picture."""
    with tempfile.TemporaryDirectory() as name, chromium() as browser:
        folder = Path(name)
        (folder / "great_wall.yaml").write_text(GREAT_WALL, encoding="utf-8")
        nothing = folder / "empty.html"
        nothing.write_text("<!doctype html><p>nothing</p>", encoding="utf-8")
        empty = taken(browser, nothing.as_uri(), "p")
        idle = taken(browser, nothing.as_uri(), "p", SLOWED)
        print(
            f"empty page: shown {empty.shown:.0f} ms, slowed {SLOWED} times {idle.shown:.0f} ms; "
            f"own {empty.own:.0f} ms of the processor; load {os.getloadavg()[0]:.1f} on "
            f"{os.cpu_count()} processors"
        )
        for design in (ROOT / "designs" / "reading_star.yaml", folder / "great_wall.yaml"):
            file = written(folder, design)
            plain = f"{file.as_uri()}?flat"
            own = taken(browser, plain, ".stage[data-drawn]")
            slow = taken(browser, plain, ".stage[data-drawn]", SLOWED)
            light = taken(browser, file.as_uri(), ".stage[data-painter=webgl]")
            print(
                f"{design.stem}: {file.stat().st_size / 1e6:.2f} MB; first picture drawn after "
                f"{light.drawn:.0f} ms, shown after {light.shown:.0f} ms "
                f"({light.shown / empty.shown:.1f} empty pages); slowed {SLOWED} times drawn "
                f"{slow.drawn:.0f} ms, shown {slow.shown:.0f} ms "
                f"({slow.shown / idle.shown:.1f} empty pages); own {own.own:.0f} ms of the "
                f"processor; WebGL by software after {light.ready:.0f} ms"
            )


if __name__ == "__main__":
    main()
