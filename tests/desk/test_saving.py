"""Designs at the desk: saved at every change, taken back, brought back, never written over."""

from __future__ import annotations

import errno
import hashlib
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from desks import DESIGNS, AtOnce, Page, open_page, with_designs

from buildplan.desk import history, saving
from buildplan.desk.folder import Folder
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import SENT_S, prune
from buildplan.desk.titles import titled

STAR = DESIGNS / "reading_star.yaml"
AT_STAR = "/api/design/reading_star"


@pytest.fixture
def page(tmp_path: Path) -> Iterator[Page]:
    with open_page(with_designs(tmp_path, [STAR]), AtOnce(waits=True)) as page:
        yield page


def coloured(colour: str) -> dict[str, object]:
    return {"op": "put", "path": ["balloons", "long", "colour"], "value": colour}


def test_a_version_is_the_sha_256_of_the_file(page: Page) -> None:
    """FIPS 180-4, as hashlib has it."""
    design = page.data(AT_STAR)
    assert design["version"] == hashlib.sha256(STAR.read_bytes()).hexdigest()
    assert design["text"] == STAR.read_text("utf-8")
    assert (design["title"], design["read_only"]) == ("Reading Star", False)


def test_every_change_can_be_taken_back_and_brought_back_by_another_desk(page: Page) -> None:
    texts = [page.text("reading_star")]
    for colour in ("crimson", "teal", "gold"):
        answer = page.edit("reading_star", coloured(colour))
        assert answer.status_code == 200, answer.text
        texts.append(page.text("reading_star"))
        assert answer.json()["text"] == texts[-1]
    assert len(set(texts)) == 4
    for wanted in reversed(texts[:-1]):
        with open_page(page.root, AtOnce(waits=True)) as another:  # a desk begun anew knows it all
            base = another.data(AT_STAR)["version"]
            answer = another.send(f"{AT_STAR}/undo", {"base": base})
            assert answer.json()["text"] == wanted == page.text("reading_star")
    assert page.data(AT_STAR)["can_undo"] is False
    assert page.send(f"{AT_STAR}/undo", {"base": answer.json()["version"]}).status_code == 409
    for wanted in texts[1:]:
        base = page.data(AT_STAR)["version"]
        assert page.send(f"{AT_STAR}/redo", {"base": base}).json()["text"] == wanted
    assert page.data(AT_STAR)["can_redo"] is False


def test_a_change_after_taking_back_begins_a_new_line(page: Page) -> None:
    page.edit("reading_star", coloured("crimson"))
    base = page.data(AT_STAR)["version"]
    page.send(f"{AT_STAR}/undo", {"base": base})
    page.edit("reading_star", coloured("teal"))
    design = page.data(AT_STAR)
    assert (design["can_undo"], design["can_redo"]) == (True, False)
    page.send(f"{AT_STAR}/undo", {"base": design["version"]})
    assert page.text("reading_star") == STAR.read_text("utf-8")


def test_a_change_made_outside_is_a_version_like_any_other(page: Page) -> None:
    page.edit("reading_star", coloured("crimson"))
    outside = page.text("reading_star") + "# by an editor\n"
    (page.root / "reading_star.yaml").write_text(outside, "utf-8")
    page.edit("reading_star", coloured("teal"))
    base = page.data(AT_STAR)["version"]
    assert page.send(f"{AT_STAR}/undo", {"base": base}).json()["text"] == outside


@pytest.mark.parametrize("by", ["put", "edit"])
def test_where_two_changes_meet_neither_is_lost(page: Page, by: str) -> None:
    base = page.data(AT_STAR)["version"]
    first = page.edit("reading_star", coloured("crimson"), base=base).json()
    mine = STAR.read_text("utf-8").replace("Reading Star", "Mine")
    if by == "put":
        answer = page.send(AT_STAR, {"base": base, "text": mine}, "PUT")
    else:
        answer = page.edit(
            "reading_star", {"op": "put", "path": ["name"], "value": "Mine"}, base=base
        )
    assert answer.status_code == 409
    said = answer.json()
    assert (said["version"], said["text"]) == (first["version"], first["text"])
    assert page.text("reading_star") == first["text"]
    assert "name: Mine" in (page.root / said["kept"]).read_text("utf-8")
    assert "both versions are kept" in said["message"]


def test_a_text_that_is_no_design_is_kept_and_said(page: Page) -> None:
    base = page.data(AT_STAR)["version"]
    answer = page.send(AT_STAR, {"base": base, "text": "name: [half"}, "PUT")
    assert answer.status_code == 200
    assert page.text("reading_star") == "name: [half"
    said = answer.json()
    assert said["unreadable"]
    assert said["problems"][0]["line"] == 1
    assert said["problems"][0]["suggestion"]["words"]


def test_copies_have_a_title_and_a_file_of_their_own(page: Page) -> None:
    made = page.send(f"{AT_STAR}/copy", {"name": "Star for Ann's shop"}).json()
    assert made == {"name": "star_for_ann_s_shop"}
    text = page.text("star_for_ann_s_shop")
    assert "name: Reading Star" not in text
    assert """name: "Star for Ann's shop"\n""" in text
    assert text.splitlines()[-1] == STAR.read_text("utf-8").splitlines()[-1]
    spanish = page.data("/api/design/star_for_ann_s_shop?language=es")
    assert spanish["title"] == "Star for Ann's shop"
    assert "Estrella" not in text  # the old name in another language
    again = page.send(f"{AT_STAR}/copy", {"name": "Star for Ann's shop"}).json()
    assert again == {"name": "star_for_ann_s_shop_2"}
    assert page.data("/api/home")["designs"][-1]["name"] == "star_for_ann_s_shop_2"


def test_another_title_takes_the_history_along(page: Page) -> None:
    page.edit("reading_star", coloured("crimson"))
    made = page.send(f"{AT_STAR}/rename", {"name": "Night Star"}).json()
    assert made == {"name": "night_star"}
    assert not (page.root / "reading_star.yaml").exists()
    for wanted in ("crimson", "Reading Star"):
        design = page.data("/api/design/night_star")
        assert wanted in design["text"]
        page.send("/api/design/night_star/undo", {"base": design["version"]})
    assert page.text("night_star") == STAR.read_text("utf-8")


def test_the_file_of_a_part_keeps_its_name(page: Page) -> None:
    """Another design names it."""
    part = "{name: a, design: reading_star.yaml}"
    whole = f"buildplan: 1\nbuild:\n  assembly:\n    parts:\n      - {part}\n"
    (page.root / "whole.yaml").write_text(whole, "utf-8")
    assert page.send(f"{AT_STAR}/rename", {"name": "Night Star"}).json() == {"name": "reading_star"}
    assert "name: Night Star" in page.text("reading_star")


def test_what_is_put_away_is_there_and_comes_back(page: Page) -> None:
    page.edit("reading_star", coloured("crimson"))
    text = page.text("reading_star")
    assert page.send(f"{AT_STAR}/away", {}).status_code == 200
    home = page.data("/api/home")
    assert home["designs"] == []
    assert [(one["name"], one["title"]) for one in home["away"]] == [
        ("reading_star", "Reading Star")
    ]
    assert page.get(AT_STAR).status_code == 404
    with_designs(page.root, [STAR])  # a new one of the same name meanwhile
    back = page.send(f"{AT_STAR}/back", {}).json()
    assert back == {"name": "reading_star_2"}
    assert page.text("reading_star_2") == text
    assert page.text("reading_star") == STAR.read_text("utf-8")
    design = page.data("/api/design/reading_star_2")
    assert (
        page.send("/api/design/reading_star_2/undo", {"base": design["version"]}).status_code == 200
    )
    assert page.text("reading_star_2") == STAR.read_text("utf-8")


def test_home_shows_what_is_there_when_one_goes_while_it_is_listed(
    page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    for names in ("names", "names_away"):
        listed = getattr(Folder, names)
        monkeypatch.setattr(Folder, names, lambda self, of=listed: [*of(self), "gone_since"])
    home = page.data("/api/home")
    assert [one["name"] for one in home["designs"]] == ["reading_star"]
    assert home["away"] == []


def test_a_design_never_takes_the_place_of_one_that_came_meanwhile(
    page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An editor, or another desk, writes a file after it was looked for a name that is free."""
    folder, quicker = Folder(page.root), b"buildplan: 1\n# an editor was quicker\n"
    free_name = Folder.free_name
    found: list[str] = []

    def taken_at_once(self: Folder, wanted: str) -> str:
        found.append(free_name(self, wanted))
        if len(found) == 1:
            self.file(found[0]).write_bytes(quicker)
        return found[-1]

    monkeypatch.setattr(Folder, "free_name", taken_at_once)
    wanted = titled(STAR.read_bytes(), "Evening Star").decode()
    named = saving.rename(folder, "reading_star", "Evening Star")
    assert found == ["evening_star", "evening_star_2"]
    assert named == "evening_star_2"
    assert folder.file("evening_star").read_bytes() == quicker
    assert page.text(named) == wanted
    # and the same on its way back, where its name is taken by then
    away = saving.put_away(folder, named)
    folder.file(away).write_bytes(quicker)
    back = saving.bring_back(folder, away)
    assert folder.file(away).read_bytes() == quicker
    assert page.text(back) == wanted


def test_a_change_for_which_the_disk_has_no_room_loses_nothing_that_was_taken_back(
    page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = Folder(page.root)
    for colour in ("crimson", "teal"):
        page.edit("reading_star", coloured(colour))
    teal = page.text("reading_star")
    for _ in range(2):
        saving.undo(folder, "reading_star", page.data(AT_STAR)["version"])

    def full(path: Path, data: bytes) -> None:
        raise OSError(errno.ENOSPC, "")

    with monkeypatch.context() as patched:
        patched.setattr(history, "write_whole", full)
        with pytest.raises(RefusedError) as refused:
            saving.save(folder, "reading_star", page.data(AT_STAR)["version"], "# another\n")
    assert refused.value.status == 507
    for _ in range(2):
        saving.redo(folder, "reading_star", page.data(AT_STAR)["version"])
    assert page.text("reading_star") == teal


def test_a_picture_that_nobody_came_to_read_goes_when_a_desk_begins(tmp_path: Path) -> None:
    """Its work was stopped, or the desk was killed."""
    folder = Folder(tmp_path)
    folder.sent.mkdir(parents=True)
    fresh, left = folder.sent / "fresh.png", folder.sent / "left.png"
    for path in (fresh, left):
        path.write_bytes(b"picture")
    long_ago = left.stat().st_mtime - SENT_S - 1
    os.utime(left, (long_ago, long_ago))
    prune(folder)
    assert list(folder.sent.iterdir()) == [fresh]
