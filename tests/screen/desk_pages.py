"""Desks to open in a browser: of a folder with small designs, each in a process of its own."""

from __future__ import annotations

import json
import re
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlsplit

import pypdfium2
from browser import DESKTOP, PATIENCE_MS, Opened, watch
from companions import ORDINARY, POST
from playwright.sync_api import Browser, Page, expect

expect.set_options(timeout=PATIENCE_MS)

ENDING_S = 60
FIRST, SECOND, THIRD = "Small Post", "Tall Post", "Wide Post"
# what a browser notes of an answer that the desk means to give: cannot be built, two changes met
MEANT = re.compile(r"Failed to load resource: .* status of (409|422) ")
AXE = "async () => (await axe.run()).violations"
GRAVE = ("serious", "critical")


def post_text(name: str) -> str:
    """A short post as a file, with a comment that must outlive every change of it."""
    told = {key: json.dumps(value) for key, value in ORDINARY.items()} | {"name": name}
    return "# As the hall wants it.\n" + POST.format(**told)


def file_of(name: str) -> str:
    """How the file of a design is called, without its ending."""
    return name.lower().replace(" ", "_")


def written_posts(folder: Path, *names: str) -> None:
    for name in names:
        (folder / f"{file_of(name)}.yaml").write_text(post_text(name), encoding="utf-8")


@contextmanager
def served(folder: Path, *options: str) -> Iterator[str]:
    """The address of a desk of a folder, which is ended as a person ends it: by Ctrl-C."""
    command = [sys.executable, "-m", "buildplan", "desk", str(folder), "--no-open", *options]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
    ) as process:
        assert process.stdout is not None
        try:
            yield process.stdout.readline().strip()
        finally:
            process.send_signal(signal.SIGINT)
            process.wait(ENDING_S)


@contextmanager
def at_desk(
    browser: Browser,
    address: str,
    place: str = "#home",
    *,
    size: tuple[int, int] = DESKTOP,
    scheme: str = "light",
) -> Iterator[Opened]:
    """The page of a desk; when it is left, nothing was said in its console and nothing was asked
    of anybody but this desk."""
    context = browser.new_context(
        viewport={"width": size[0], "height": size[1]},
        color_scheme="dark" if scheme == "dark" else "light",
        reduced_motion="reduce",
    )
    context.set_default_timeout(PATIENCE_MS)
    found = Opened(context.new_page())
    watch(found)
    try:
        found.page.goto(address)
        go_to(found.page, place)
        yield found
        said = [text for text in found.said if not MEANT.search(text)]
        assert said == [], said
        elsewhere = {urlsplit(asked).netloc for asked in found.asked if asked.startswith("http")}
        assert elsewhere == {urlsplit(address).netloc}
    finally:
        context.close()


def go_to(page: Page, place: str) -> None:
    """Go to a screen of the desk by the end of its address."""
    page.evaluate("place => { location.hash = place }", place)
    page.wait_for_selector("main:not(.alone)")


def violations(page: Page, axe: str) -> list[tuple[str, str]]:
    """What axe-core finds that is serious (WCAG 2.2 rules, as axe-core 4 ranks them)."""
    page.evaluate(axe)
    found = page.evaluate(AXE)
    return [(one["id"], one["nodes"][0]["html"]) for one in found if one["impact"] in GRAVE]


def tab_to(page: Page, selector: str, most: int = 60) -> None:
    """Go on by the Tab key until an element has the focus."""
    for _ in range(most):
        if page.evaluate("what => document.activeElement.matches(what)", selector):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"the Tab key never came to {selector}")


def page_texts(file: Path) -> list[str]:
    """What can be read on each page of a PDF."""
    with pypdfium2.PdfDocument(file) as pdf:
        return [page.get_textpage().get_text_range() for page in pdf]
