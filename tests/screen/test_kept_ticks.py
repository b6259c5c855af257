"""Ticks, notes and minutes: kept on the device, carried to another, read as a log."""

from __future__ import annotations

import csv
import io
from io import BytesIO
from pathlib import Path

import pytest
import zxingcpp
from browser import another, begin, opened
from companions import go, post
from PIL import Image
from playwright.sync_api import Browser, expect

from buildplan.hands.log import minutes_learned, read_log
from buildplan.hands.model import TimedWork

TAKEN = 250  # milliseconds until a drawing has begun
CAMERA = (640, 480)
FRAMES = 5
REFUSED = """() => {
  navigator.mediaDevices.getUserMedia = () => Promise.reject(new Error('refused'))
}"""


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


FULL = "Storage.prototype.setItem = () => { throw new DOMException('x', 'QuotaExceededError') }"
FORBIDDEN = """Object.defineProperty(window, 'localStorage', {
  get() { throw new DOMException('x', 'SecurityError') }
})"""


@pytest.mark.parametrize("storage", [FULL, FORBIDDEN], ids=["full", "forbidden"])
def test_where_nothing_can_be_kept_the_page_says_so(
    browser: Browser, tmp_path: Path, storage: str
) -> None:
    """Web Storage (WHATWG HTML, 12.2): a full one and a forbidden one throw these."""
    found = opened(browser, post(tmp_path), first=storage)
    page = found.page
    begin(page)
    page.check("#c1")
    assert "does not let the page keep" in page.inner_text(".notice")
    page.keyboard.press("ArrowRight")
    expect(page.locator("#c1")).to_have_count(0)
    page.keyboard.press("ArrowLeft")
    expect(page.locator("#c1")).to_be_checked()
    assert found.said == []


def test_what_is_kept_for_another_page_or_is_broken_does_no_harm(
    browser: Browser, tmp_path: Path
) -> None:
    """Anything may lie in a store that pages from files share."""
    rubbish = {"theme": '"><b>', "language": "zz", "type": "9", "piece:0": "{", "piece:1": "7"}
    first = "".join(f"localStorage.setItem('buildplan:{k}', '{v}');" for k, v in rubbish.items())
    found = opened(browser, post(tmp_path), first=first)
    begin(found.page)
    assert found.page.locator(".notice").count() == 0
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


def filmed(code: bytes, file: Path) -> Path:
    """What a camera sees of another phone: its code, tilted, before a wall (Motion JPEG)."""
    shown = Image.open(BytesIO(code)).convert("RGB").resize((300, 300))
    wall = Image.new("RGB", CAMERA, "#6f7a86")
    wall.paste(shown.rotate(9, expand=True, fillcolor="#6f7a86"), (150, 60))
    frame = BytesIO()
    wall.save(frame, "JPEG", quality=80)
    file.write_bytes(frame.getvalue() * FRAMES)
    return file


def test_the_camera_reads_the_other_phones_code(browser: Browser, tmp_path: Path) -> None:
    """All the way: one phone shows its code, the other's camera sees it, its ticks come over."""
    file = post(tmp_path)
    one = opened(browser, file)
    begin(one.page)
    one.page.check("#c1")
    go(one, "more")
    film = filmed(one.page.locator(".qr").screenshot(), tmp_path / "seen.mjpeg")
    with another(browser, f"--use-file-for-fake-video-capture={film}") as beside:
        other = opened(beside, file)
        begin(other.page)
        go(other, "more")
        other.page.click(".scan")
        other.page.wait_for_selector("text=New ticks: 1")
        assert other.page.is_hidden("video")
        go(other, "step")
        assert other.page.is_checked("#c1")
        assert other.said == []
        assert other.asked == [other.page.url.partition("#")[0]]


def test_a_camera_that_sees_no_code_is_stopped_and_one_that_is_refused_is_told(
    browser: Browser, tmp_path: Path
) -> None:
    found = opened(browser, post(tmp_path))
    page = found.page
    begin(page)
    go(found, "more")
    page.click(".scan")
    page.wait_for_selector("video:not([hidden])")
    page.wait_for_function("() => document.querySelector('video').videoWidth > 0")
    page.wait_for_timeout(TAKEN)
    page.click(".scan")
    assert page.is_hidden("video")
    page.evaluate(REFUSED)
    page.click(".scan")
    page.wait_for_selector("text=The camera cannot be used here")
    assert page.is_hidden("video")
    assert found.said == []


def test_a_code_that_was_saved_as_a_file_is_taken(browser: Browser, tmp_path: Path) -> None:
    file = post(tmp_path)
    one = opened(browser, file)
    begin(one.page)
    one.page.check("#c1")
    go(one, "more")
    with one.page.expect_download() as waiting:
        one.page.click("text=Save this code as a file")
    other = opened(browser, file)
    begin(other.page)
    go(other, "more")
    other.page.set_input_files("#code-file", waiting.value.path())
    other.page.wait_for_selector("text=New ticks: 1")
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
    row = next(csv.DictReader(io.StringIO(log.removeprefix("\ufeff"), newline="")))
    read = read_log(log, lambda design: pytest.fail(design))
    assert [type(one) for one in read] == [TimedWork]
    learned = minutes_learned(read)
    assert sum(one.minutes * one.count for one in learned.values()) == pytest.approx(7.5)
    assert row["note"].startswith("'=")
