"""Home of the desk: designs as cards, copied, renamed, put away and brought back."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

import pytest
from browser import DESKTOP, PHONE, node_module
from conftest import Call
from desk_pages import FIRST, SECOND, at_desk, served, tab_to, violations, written_posts
from playwright.sync_api import Browser, Locator, Page, expect

SIZES = ((360, 640), (390, 844), (768, 1024), (1440, 900), (3840, 2160))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("designs")
    written_posts(made, FIRST, SECOND)
    (made / "mine.p12").write_bytes(b"a certificate, to be chosen")
    (made / "torn.yaml").write_text("buildplan: 1\nname: Torn\n  build: [\n", encoding="utf-8")
    return made


@pytest.fixture(scope="module")
def address(folder: Path, browser: Browser) -> Iterator[str]:
    with served(folder) as found:
        yield found


def card(page: Page, title: str) -> Locator:
    return page.locator("li.card").filter(has=page.get_by_role("link", name=title, exact=True))


def name_field(page: Page) -> Locator:
    return page.get_by_role("dialog").get_by_role("textbox", name="Name")


def test_a_card_says_what_check_says(
    browser: Browser, address: str, folder: Path, call: Call
) -> None:
    _, out, _ = call("check", folder / "small_post.yaml", "--json")
    facts = json.loads(out)
    with at_desk(browser, address) as found:
        shown = card(found.page, FIRST)
        expect(shown).to_have_attribute("data-state", "ready")
        expect(shown.locator(".size")).to_contain_text(f"{sum(facts['counts'].values())} balloons")
        expect(shown.locator(".stands")).to_have_attribute(
            "data-stands", "stands" if facts["stands"] else "falls"
        )
        drawn = shown.locator("img")
        expect(drawn).to_be_visible()
        assert drawn.evaluate("picture => picture.decode().then(() => picture.naturalWidth)") > 100
        torn = card(found.page, "torn")
        expect(torn.locator(".broken")).to_contain_text("Line 3")
        torn.get_by_role("link").click()
        expect(found.page.locator("aside .problems")).to_contain_text("ine 3")


def test_copied_renamed_put_away_and_back_by_keyboard(
    browser: Browser, address: str, folder: Path
) -> None:
    """Each by Tab, Enter and letters alone; the focus is never lost, and files follow."""
    with at_desk(browser, address) as found:
        page = found.page
        keys = page.keyboard
        expect(card(page, SECOND)).to_be_visible()
        tab_to(page, f"[aria-label='Copy: {SECOND}']")
        keys.press("Enter")
        expect(name_field(page)).to_be_focused()
        keys.type("Post for the Hall")
        keys.press("Enter")
        expect(card(page, "Post for the Hall")).to_be_visible()
        assert page.evaluate("document.activeElement !== document.body")
        made = folder / "post_for_the_hall.yaml"
        assert "# As the hall wants it." in made.read_text(encoding="utf-8")
        assert (folder / "tall_post.yaml").exists()
        tab_to(page, "[aria-label='Rename: Post for the Hall']")
        keys.press("Enter")
        expect(name_field(page)).to_be_focused()
        keys.type("Hall Post")
        keys.press("Enter")
        expect(card(page, "Hall Post")).to_be_visible()
        assert not made.exists()
        tab_to(page, "[aria-label='Put away: Hall Post']")
        keys.press("Enter")
        expect(card(page, "Hall Post")).to_have_count(0)
        assert not (folder / "hall_post.yaml").exists()
        tab_to(page, ".shelf summary")
        keys.press("Enter")
        tab_to(page, "[aria-label='Bring back: Hall Post']")
        keys.press("Enter")
        expect(card(page, "Hall Post")).to_be_visible()
        assert (folder / "hall_post.yaml").exists()


def test_escape_leaves_all_as_it_was(browser: Browser, address: str, folder: Path) -> None:
    before = sorted(path.name for path in folder.glob("*.yaml"))
    with at_desk(browser, address) as found:
        page = found.page
        opener = page.get_by_role("button", name=f"Rename: {FIRST}")
        opener.click()
        expect(name_field(page)).to_be_focused()
        page.keyboard.type("Anything")
        page.keyboard.press("Escape")
        expect(page.locator("dialog")).to_have_count(0)
        expect(opener).to_be_focused()
    assert sorted(path.name for path in folder.glob("*.yaml")) == before


def test_a_design_that_comes_from_outside_has_its_card_at_once(
    browser: Browser, address: str, folder: Path
) -> None:
    with at_desk(browser, address) as found:
        expect(card(found.page, FIRST)).to_be_visible()
        written_posts(folder, "Post of a Friend")
        expect(card(found.page, "Post of a Friend")).to_be_visible()
        (folder / "post_of_a_friend.yaml").unlink()
        expect(card(found.page, "Post of a Friend")).to_have_count(0)


SCHEMES: tuple[Literal["light", "dark"], ...] = ("light", "dark")
PLACES = ("#home", "#new", "#small_post/file", "#small_post/print")


@pytest.mark.parametrize("place", PLACES)
def test_every_screen_is_for_everybody(browser: Browser, address: str, place: str) -> None:
    """No serious violation of axe-core 4's rules (WCAG 2.2), names for every control among them,
    by day and by night; nothing runs out of the page from 360 px to a wall screen."""
    axe = node_module("axe-core", "axe.min.js").read_text(encoding="utf-8")
    with at_desk(browser, address, place, size=PHONE) as found:
        page = found.page
        page.locator("main h1").wait_for(state="attached")
        assert violations(page, axe) == []
        page.emulate_media(color_scheme="dark")
        assert violations(page, axe) == []
        for wide, high in SIZES:
            page.set_viewport_size({"width": wide, "height": high})
            assert page.evaluate("document.documentElement.scrollWidth") <= wide


FINGER = 24  # CSS pixels at least (WCAG 2.2, 2.5.8)
# what is asked for is another for each
ASKED = (("Booklet", "crew"), ("Booklet", "sale"), ("Quote", ""))


def test_all_that_is_asked_for_a_print_is_for_everybody(browser: Browser, address: str) -> None:
    """As above (axe-core 4), of every field that the print screen shows: doors, buyers, terms."""
    axe = node_module("axe-core", "axe.min.js").read_text(encoding="utf-8")
    with at_desk(browser, address, "#small_post/print") as found:
        page = found.page
        seen: set[str] = set()
        for what, edition in ASKED:
            page.get_by_role("radio", name=what).check()
            if edition:
                page.get_by_label("Edition").select_option(edition)
            if edition == "sale":
                page.get_by_label("Signed with").select_option(label="mine.p12")
                written = page.get_by_label("Password of the certificate").bounding_box()
                assert written is not None
                assert written["height"] >= FINGER
            shown = page.locator(".asked label, .wishes label")
            seen |= {text.split("\n")[0].strip() for text in shown.all_inner_texts()}
            for wide, high in (PHONE, DESKTOP):
                page.set_viewport_size({"width": wide, "height": high})
                assert page.evaluate("document.documentElement.scrollWidth") <= wide
                for scheme in SCHEMES:
                    page.emulate_media(color_scheme=scheme)
                    assert violations(page, axe) == []
        assert seen >= {"Doors on the way in", "Large print", "Buyers", "For whom", "Date"}
        assert any(text.startswith("Password") for text in seen)


def test_said_in_spanish_from_the_same_catalogue(browser: Browser, address: str) -> None:
    with at_desk(browser, address) as found:
        page = found.page
        page.get_by_label("Language").select_option("es")
        expect(page.get_by_role("heading", name="Diseños")).to_be_visible()
        assert page.evaluate("document.documentElement.lang") == "es"
        expect(card(page, FIRST).locator(".size")).to_contain_text("globos")
        page.reload()
        expect(page.get_by_role("heading", name="Diseños")).to_be_visible()
