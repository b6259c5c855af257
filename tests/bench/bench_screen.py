"""The companion's figures: how large it is, and how soon its first picture is there.

    .venv/bin/python tests/bench/bench_screen.py

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
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

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


def main() -> None:
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
