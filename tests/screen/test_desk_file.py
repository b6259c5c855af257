"""The file tab of the desk: the design's own text, in step with its file whoever changes it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from desk_pages import FIRST, SECOND, THIRD, at_desk, post_text, served, written_posts
from playwright.sync_api import Browser, Locator, Page, Route, expect


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("designs")
    written_posts(made, FIRST, SECOND, THIRD)
    return made


@pytest.fixture(scope="module")
def address(folder: Path, browser: Browser) -> Iterator[str]:
    with served(folder) as found:
        yield found


def editor(page: Page) -> Locator:
    return page.get_by_role("textbox", name="The file", exact=False)


def put_at_end_of(page: Page, words: str, more: str) -> None:
    """Write at the end of the line that has these words."""
    editor(page).locator(".cm-line", has_text=words).first.click()
    page.keyboard.press("End")
    page.keyboard.type(more)


def text_of(page: Page) -> str:
    return "\n".join(editor(page).locator(".cm-line").all_inner_texts())


def saved(page: Page) -> None:
    expect(page.locator("header .saving")).to_have_text("Saved")


def test_what_is_written_stands_in_the_file_and_can_be_undone(
    browser: Browser, address: str, folder: Path
) -> None:
    """Undo and redo by buttons and by keys: the file's bytes are those of before and after."""
    file = folder / "small_post.yaml"
    before = file.read_bytes()
    with at_desk(browser, address, "#small_post/file") as found:
        page = found.page
        put_at_end_of(page, "units: in", "  # inches")
        expect(page.get_by_role("button", name="Undo")).to_be_enabled()
        saved(page)
        after = file.read_bytes()
        assert after == before.replace(b"units: in\n", b"units: in  # inches\n")
        page.get_by_role("button", name="Undo").click()
        expect(editor(page)).not_to_contain_text("# inches")
        saved(page)
        assert file.read_bytes() == before
        page.locator("main").press("Control+Shift+Z")
        expect(editor(page)).to_contain_text("# inches")
        saved(page)
        assert file.read_bytes() == after
        page.locator("main").press("Control+Z")
        expect(editor(page)).not_to_contain_text("# inches")


def test_a_problem_is_said_at_its_line_and_mended_by_its_button(
    browser: Browser, address: str, folder: Path
) -> None:
    with at_desk(browser, address, "#small_post/file") as found:
        page = found.page
        put_at_end_of(page, "brand:", "\ncolor_of_the_hall: blue")
        line = (
            post_text(FIRST)
            .splitlines()
            .index(next(one for one in post_text(FIRST).splitlines() if one.startswith("brand:")))
            + 2
        )
        page.get_by_role("button", name=f"Line {line}", exact=True).click()
        expect(editor(page)).to_be_focused()
        expect(editor(page).locator(".cm-lintRange-error")).to_have_text("color_of_the_hall: blue")


def test_a_change_from_outside_shows_at_once(browser: Browser, address: str, folder: Path) -> None:
    file = folder / "tall_post.yaml"
    with at_desk(browser, address, "#tall_post/file") as found:
        page = found.page
        expect(editor(page)).to_contain_text("units: in")
        file.write_text(post_text(SECOND).replace("units: in", "units: cm"), encoding="utf-8")
        expect(editor(page)).to_contain_text("units: cm")
        expect(page.locator(".notices")).to_contain_text("tall_post.yaml was changed by another")


def test_two_tabs_are_in_step(browser: Browser, address: str) -> None:
    with (
        at_desk(browser, address, "#tall_post/file") as first,
        at_desk(browser, address, "#tall_post/file") as second,
    ):
        put_at_end_of(first.page, "text:", "  # of the foot")
        expect(editor(second.page)).to_contain_text("# of the foot")


@pytest.mark.parametrize("mine", [True, False], ids=["mine", "theirs"])
def test_two_changes_that_meet_are_both_kept(
    browser: Browser, address: str, folder: Path, mine: bool
) -> None:
    """Another program writes just before what was written here is saved: it stands, what was
    written here is kept in a file of its own, and the reader chooses."""
    file = folder / "wide_post.yaml"
    file.write_text(post_text(THIRD), encoding="utf-8")
    other = post_text(THIRD) + "# by another program\n"
    with at_desk(browser, address, "#wide_post/file") as found:
        page = found.page
        expect(editor(page)).not_to_contain_text("# by")

        sent: list[str] = []

        def between(route: Route) -> None:
            if route.request.method == "PUT":
                sent.append(route.request.url)
                if len(sent) == 1:
                    file.write_text(other, encoding="utf-8")
            route.continue_()

        page.route("**/api/design/wide_post*", between)
        put_at_end_of(page, "units: in", "  # by hand")
        expect(page.get_by_role("alert").filter(has_text="was changed elsewhere")).to_be_visible()
        assert file.read_text(encoding="utf-8") == other
        kept = list((folder / ".desk" / "kept").rglob("wide_post*"))
        assert any("# by hand" in one.read_text(encoding="utf-8") for one in kept)
        choice = "Put my version in its place" if mine else "Leave it as it is now"
        page.get_by_role("button", name=choice).click()
        expect(editor(page)).to_contain_text("# by hand" if mine else "# by another program")
        saved(page)
        now = file.read_text(encoding="utf-8")
        assert ("# by hand" in now, "# by another program" in now) == (mine, not mine)
