"""Ticks, notes and minutes: kept on the device, carried to another, read as a log."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
import zxingcpp
from browser import begin, chromium, opened
from companions import go, post
from PIL import Image
from playwright.sync_api import Browser

from buildplan.hands.log import minutes_learned, read_log
from buildplan.hands.model import TimedWork

TAKEN = 250  # milliseconds until a drawing has begun
READER = """() => {
  window.BarcodeDetector = class {
    constructor(options) { this.formats = options.formats }
    async detect(video) {
      const reads = this.formats[0] === 'qr_code' && video.videoWidth > 0
      return reads ? [{rawValue: window.shown}] : []
    }
  }
}"""


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


def test_ticks_come_back_and_another_design_keeps_its_own(browser: Browser, tmp_path: Path) -> None:
    file = post(tmp_path)
    found = opened(browser, file)
    page = found.page
    begin(page)
    page.check("#c1")
    page.reload()
    page.wait_for_selector("main.step h1")
    assert page.is_checked("#c1")
    post(tmp_path, label="pale blue")
    page.reload()
    page.wait_for_selector("main h1")
    assert "another version of this design" in page.inner_text(".notice")
    post(tmp_path)
    page.reload()
    page.wait_for_selector("main.step h1")
    assert page.is_checked("#c1")


def test_where_nothing_can_be_kept_the_page_says_so(browser: Browser, tmp_path: Path) -> None:
    found = opened(browser, post(tmp_path))
    page = found.page
    page.evaluate("() => { Storage.prototype.setItem = () => { throw new Error('full') } }")
    begin(page)
    page.check("#c1")
    assert "does not let the page keep" in page.inner_text(".notice")
    page.keyboard.press("ArrowRight")
    page.wait_for_timeout(TAKEN)
    page.keyboard.press("ArrowLeft")
    page.wait_for_timeout(TAKEN)
    assert page.is_checked("#c1")
    assert found.said == []


def test_opened_twice_the_ticks_of_both_are_kept(browser: Browser, tmp_path: Path) -> None:
    file = post(tmp_path)
    first = opened(browser, file).page
    begin(first)
    second = first.context.new_page()
    second.goto(file.as_uri())
    second.wait_for_selector("main.step h1")
    first.check("[id='t1.0']")
    second.check("#c1")
    second.reload()
    second.wait_for_selector("main.step h1")
    assert second.is_checked("[id='t1.0']")
    assert second.is_checked("#c1")


def test_a_code_carries_ticks_to_another_phone(browser: Browser, tmp_path: Path) -> None:
    file = post(tmp_path)
    one = opened(browser, file)
    begin(one.page)
    one.page.check("#c1")
    go(one, "more")
    code = one.page.inner_text(".code")
    shot = one.page.locator(".qr").screenshot()
    assert [found.text for found in zxingcpp.read_barcodes(Image.open(BytesIO(shot)))] == [code]
    other = opened(browser, file)
    begin(other.page)
    go(other, "more")
    other.page.fill("#code", code[:-1])
    other.page.click("text=Take these ticks over")
    assert "not a whole code" in other.page.inner_text("main")
    other.page.fill("#code", code)
    other.page.click("text=Take these ticks over")
    assert "New ticks: 1" in other.page.inner_text("main")
    go(other, "step")
    assert other.page.is_checked("#c1")


def test_the_camera_reads_the_other_phones_code(browser: Browser, tmp_path: Path) -> None:
    """With Chromium's camera for tests; its reader of codes, which Linux lacks, stands in."""
    file = post(tmp_path)
    one = opened(browser, file)
    begin(one.page)
    one.page.check("#c1")
    go(one, "more")
    assert one.page.locator(".scan").count() == 0
    code = one.page.inner_text(".code")
    other = opened(browser, file)
    other.page.evaluate(READER)
    begin(other.page)
    go(other, "more")
    other.page.evaluate("code => { window.shown = code }", code)
    other.page.click(".scan")
    other.page.wait_for_selector("text=New ticks: 1")
    assert other.page.is_hidden("video")
    other.page.set_input_files(
        "#code-file", {"name": "t.txt", "mimeType": "text/plain", "buffer": f"{code}\n".encode()}
    )
    other.page.wait_for_selector("text=New ticks: 0")
    assert other.said == []


def test_the_log_is_one_that_times_and_learn_read(browser: Browser, tmp_path: Path) -> None:
    found = opened(browser, post(tmp_path))
    page = found.page
    begin(page)
    page.click(".timing summary")
    page.fill("#minutes", "7.5")
    page.fill("#note", '=1+1, "quoted"\nsecond line')
    go(found, "more")
    with page.expect_download() as waiting:
        page.click("button.log")
    log = Path(waiting.value.path()).read_bytes().decode()
    row = next(csv.DictReader(io.StringIO(log, newline="")))
    read = read_log(log, lambda design: pytest.fail(design))
    assert [type(one) for one in read] == [TimedWork]
    learned = minutes_learned(read)
    assert sum(one.minutes * one.count for one in learned.values()) == pytest.approx(7.5)
    assert row["note"].startswith("'=")
