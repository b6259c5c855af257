"""A Chromium for the tests of pages: run where one is found, told as skipped elsewhere."""

from __future__ import annotations

import os
import re
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page, sync_playwright

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
NEEDED = "BUILDPLAN_NEEDS_CHROMIUM" in os.environ
# Of a whole browser what no page here needs: the pages of its address bar (two processes for each
# page opened: half its time) and a process in reserve. The last such flag counts alone, so that
# Playwright's own are named again.
WITHOUT = (
    "WebUIOmniboxPopup",
    "WebUIOmniboxAimPopup",
    "WebUIOmniboxFullPopup",
    "SpareRendererForSitePerProcess",
    "AimEnabled",
    "AvoidCorsURLLoaderRestartOnRedirect",
    "AvoidUnnecessaryBeforeUnloadCheckSync",
    "DestroyProfileOnBrowserClose",
    "HttpsFirstBalancedModeAutoEnable",
    "HttpsUpgrades",
    "LensOverlay",
    "MediaRouter",
    "NetworkTimeServiceQuerying",
    "OptimizationHints",
    "PaintHolding",
    "PreconnectToSearch",
    "ThirdPartyStoragePartitioning",
)
FLAGS = (
    "--no-sandbox",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
    # the GPU is one of software: what is drawn in WebGL alone is left to it
    "--disable-gpu-rasterization",
    "--disable-gpu-compositing",
    "--use-fake-device-for-media-stream",
    "--use-fake-ui-for-media-stream",
    f"--disable-features={','.join(WITHOUT)}",
)
# what the driver notes where pictures in WebGL are put together without a GPU, as FLAGS has it
READ_BACK = re.compile(r"\[\.WebGL-0x[0-9a-f]+\]GL Driver Message .*GPU stall due to ReadPixels")
WEB = Path(__file__).parents[2] / "buildplan" / "screen" / "web"
FLAT = "?flat"  # plain pictures: making WebGL ready by software takes long
PHONE, DESKTOP = (390, 844), (1280, 860)
SMALL = (480, 480)  # for what is the same at any size: a fifth of the points to draw
PATIENCE_MS = 60_000  # the drawing is done by the processor, which others use too


def node_module(*name: str) -> Path:
    """A file that `npm ci` puts beside the viewer's sources; the test is skipped without it."""
    file = WEB.joinpath("node_modules", *name)
    if not file.exists():
        if NEEDED:
            pytest.fail(f"no {file}, and BUILDPLAN_NEEDS_CHROMIUM is set")
        pytest.skip("needs `npm ci` in buildplan/screen/web; .ci/run has it")
    return file


@contextmanager
def chromium() -> Iterator[Browser]:
    """A Chromium of its own; the test is skipped where none is installed."""
    if CHROMIUM is None:
        if NEEDED:
            pytest.fail("no Chromium found, and BUILDPLAN_NEEDS_CHROMIUM is set")
        pytest.skip("no Chromium found: install the package chromium to run this test")
    with sync_playwright() as tool:
        browser = tool.chromium.launch(executable_path=CHROMIUM, args=list(FLAGS))
        try:
            yield browser
        finally:
            browser.close()


@contextmanager
def another(browser: Browser, *flags: str) -> Iterator[Browser]:
    """A Chromium beside one that runs, with flags of its own."""
    beside = browser.browser_type.launch(executable_path=CHROMIUM, args=[*FLAGS, *flags])
    try:
        yield beside
    finally:
        beside.close()


@dataclass
class Opened:
    """A page that was opened, with all that it said and asked for."""

    page: Page
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)


def opened(
    browser: Browser,
    file: Path,
    *,
    fragment: str = FLAT,
    size: tuple[int, int] = PHONE,
    first: str = "",
) -> Opened:
    """Open a companion from its file and wait for its first picture; `first` is a script that
    runs before the page's own."""
    context = browser.new_context(
        viewport={"width": size[0], "height": size[1]}, accept_downloads=True
    )
    context.set_default_timeout(PATIENCE_MS)
    if first:
        context.add_init_script(first)
    found = Opened(context.new_page())
    watch(found)
    found.page.goto(f"{file.as_uri()}{fragment}")
    found.page.wait_for_selector(".stage[data-drawn]")
    return found


def watch(found: Opened) -> None:
    """Note what a page says in the console, and every request that it makes."""

    def said(message: ConsoleMessage) -> None:
        if not READ_BACK.match(message.text):
            found.said.append(message.text)

    found.page.on("console", said)
    found.page.on("pageerror", lambda error: found.said.append(str(error)))
    found.page.on("request", lambda request: found.asked.append(request.url))


def begin(page: Page) -> None:
    """Say that the cautions were read."""
    page.click(".start button.large")
    page.wait_for_selector("main.step h1")
