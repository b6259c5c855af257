"""What is made at the desk: from a picture that is dropped, from words, and every kind of print."""

from __future__ import annotations

import base64
import io
from collections.abc import Iterator
from pathlib import Path

import pytest
from desk_pages import at_desk, page_texts, post_text, served
from PIL import Image, ImageDraw
from playwright.sync_api import Browser, Page, expect

PRICES = "currency: GBP\nprices: {long: 0.32, lock: 0.09}\nrates: {hour: 18.0, margin: 0.35}\n"
EVENT = "event: 1\nname: Our Day\ndesigns:\n  - {design: post.yaml}\ncrew: 2\nopening: '10:00'\n"
SVG = b'<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0L90 0L90 90L0 90Z"/></svg>'
# a file is dropped as a browser tells of it (HTML, 6.11.5: the drag-and-drop processing model)
DROP = """([name, type, data]) => {
  const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
  const held = new DataTransfer();
  held.items.add(new File([bytes], name, { type }));
  for (const kind of ["dragover", "drop"])
    document.body.dispatchEvent(
      new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer: held }));
}"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One small post with prices, and an event of it: all invented."""
    made = tmp_path_factory.mktemp("designs")
    (made / "post.yaml").write_text(post_text("Small Post") + PRICES, "utf-8")
    (made / "day.event.yaml").write_text(EVENT, "utf-8")
    return made


@pytest.fixture(scope="module")
def address(folder: Path, browser: Browser) -> Iterator[str]:
    with served(folder) as found:
        yield found


def png() -> bytes:
    drawn = Image.new("RGB", (120, 120), "white")
    ImageDraw.Draw(drawn).rectangle((10, 10, 110, 110), fill="black")
    out = io.BytesIO()
    drawn.save(out, "PNG")
    return out.getvalue()


def dropped(page: Page, name: str, kind: str, data: bytes) -> None:
    page.evaluate(DROP, [name, kind, base64.b64encode(data).decode("ascii")])


@pytest.mark.parametrize(
    ("name", "kind", "data"),
    [("house.png", "image/png", png()), ("house.svg", "image/svg+xml", SVG)],
    ids=["picture", "svg"],
)
def test_a_picture_that_is_dropped_is_taken_and_its_work_can_be_stopped(
    browser: Browser, address: str, folder: Path, name: str, kind: str, data: bytes
) -> None:
    with at_desk(browser, address) as found:
        page = found.page
        dropped(page, name, kind, data)
        expect(page.locator(".drop")).to_contain_text(name)
        shown = page.locator(".drop img")
        expect(shown).to_be_visible()
        page.get_by_role("textbox", name="Height").fill("1.5 m")
        page.get_by_role("button", name="Make it").click()
        expect(page.get_by_role("heading", name="The design is being made")).to_be_visible()
        page.get_by_role("button", name="Stop").click()
        expect(page.locator(".drop")).to_contain_text(name)  # nothing chosen is lost
    assert not (folder / "house.yaml").exists()


def test_words_become_letters(browser: Browser, address: str, folder: Path) -> None:
    with at_desk(browser, address, "#new") as found:
        page = found.page
        page.get_by_role("radio", name="Words").check()
        page.get_by_role("textbox", name="Text").fill("LI")
        page.get_by_role("button", name="Make it").click()
        expect(page.locator(".figures")).to_have_attribute("data-old", "false")
        expect(page.get_by_label("Text", exact=True)).to_have_value("LI")
    (folder / "li.yaml").unlink()


KINDS = (
    ("Booklet", "post-training-a4.pdf"),
    ("Page for phones", "post-training.html"),
    ("Quote", "post-quote-a4.pdf"),
    ("Shopping list", "post-shopping-a4.pdf"),
    ("Gallery of designs", "gallery-a4.pdf"),
    ("Event: Our Day", "day-event-a4.pdf"),
)


def test_designs_that_are_ticked_are_quoted_together(
    browser: Browser, address: str, folder: Path
) -> None:
    (folder / "hall.yaml").write_text(post_text("Hall Post") + PRICES, "utf-8")
    with at_desk(browser, address, "#post/print") as found:
        page = found.page
        page.get_by_role("radio", name="Quote").check()
        page.get_by_role("group", name="Together with").get_by_label("Hall Post").check()
        with page.context.expect_page() as opened:
            page.get_by_role("button", name="Make it").click()
            page.locator(".jobs li[data-state=done]").wait_for()
        file = folder / "output" / opened.value.url.rpartition("/")[2]
        opened.value.close()
    text = "\n".join(page_texts(file))
    assert "Small Post" in text
    assert "Hall Post" in text
    (folder / "hall.yaml").unlink()


def test_every_kind_is_printed_by_its_button(browser: Browser, address: str, folder: Path) -> None:
    """Each opens by itself when it is ready, and is whole."""
    with at_desk(browser, address, "#post/print") as found:
        page = found.page
        for number, (words, file) in enumerate(KINDS, 1):
            page.get_by_role("radio", name=words).check()
            with page.context.expect_page() as opened:
                page.get_by_role("button", name="Make it").click()
                expect(page.locator(".jobs li[data-state=done]")).to_have_count(number)
            assert opened.value.url.endswith(file)
            opened.value.close()
            made = folder / "output" / file
            if file.endswith(".pdf"):
                text = "\n".join(page_texts(made))
                assert "Small Post" in text
            else:
                assert "</html>" in made.read_text("utf-8")
        tables = {path.name for path in (folder / "output").glob("*.csv")}
        assert tables >= {"post-quote.csv", "post-shopping.csv", "day-timetable.csv"}
