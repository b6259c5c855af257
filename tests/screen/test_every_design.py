"""Every shipped design's companion opens in a browser and says nothing in the console."""

from __future__ import annotations

from pathlib import Path

import pytest
from browser import SMALL, begin, opened
from playwright.sync_api import Browser
from screen_pieces import DESIGNS, VOICES

from buildplan.booklet.common.book import gather_book
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.screen.page import companion

EVERY = sorted(
    path
    for path in DESIGNS.rglob("*.yaml")
    if "brand" not in path.parts and ".event" not in path.name
)
MOST_BYTES = 1_600_000  # of a piece of the star's size; none that is shipped is much larger


@pytest.mark.parametrize("design", EVERY, ids=lambda path: path.stem)
def test_it_opens_and_is_silent(browser: Browser, tmp_path: Path, design: Path) -> None:
    read = read_design(design)
    book = gather_book(read, PAPERS["a4"], read.units, "crew")
    file = tmp_path / "page.html"
    file.write_text(companion(book, VOICES), encoding="utf-8")
    assert file.stat().st_size < MOST_BYTES
    found = opened(browser, file, size=SMALL, fragment=f"#step-{len(book.steps) // 2}")
    page = found.page
    page.wait_for_selector(".stage[data-painter=webgl]")
    begin(page)
    page.click("nav [data-screen=find]")
    page.wait_for_selector(".printed-picture")
    labels = set(page.locator(".printed-picture text").all_text_contents())
    own = {joint.rpartition(".")[2] for joint in book.framework.joints}
    assert own <= labels | {label.rpartition(".")[2] for label in labels}
    assert found.said == []
    assert found.asked[1:] == []
    page.context.close()
