"""What the desk draws beside the piece: pictures of steps, courses that it offers, cards."""

from __future__ import annotations

import io
import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import Call
from desks import AtOnce, Page, open_page
from PIL import Image

from buildplan.design.starting import design_text
from buildplan.design.wishes import Wish
from buildplan.desk.task import CountWork
from buildplan.desk.workers import Errand
from buildplan.language.voice import Voice

AT_SMALL = "/api/design/small"


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    """A small frame."""
    root = tmp_path_factory.mktemp("drawing") / "desk"
    root.mkdir()
    text = design_text(Wish("Small Frame", "frame", size=50), Voice())
    (root / "small.yaml").write_text(text, "utf-8")
    with open_page(root) as page:
        yield page


def test_pictures_of_steps_are_those_that_draw_makes(page: Page, call: Call) -> None:
    call("draw", page.root / "small.yaml", "--step", "3", "--out", "three.svg")
    drawn = page.get(f"{AT_SMALL}/step/3.svg")
    assert drawn.headers["content-type"] == "image/svg+xml"
    assert drawn.content == Path("three.svg").read_bytes()
    assert page.get(f"{AT_SMALL}/step/1.svg").status_code == 200
    assert page.get(f"{AT_SMALL}/step/900.svg").status_code == 404


def test_offers_are_those_of_course(page: Page, call: Call) -> None:
    offers = page.data(f"{AT_SMALL}/offers")
    _, out, _ = call("course", page.root / "small.yaml", "--json")
    assert [one["words"] for one in offers] == [one["text"] for one in json.loads(out)]
    for offer in offers:
        assert offer["picture"].startswith("data:image/png;base64,")
    if offers:
        version = page.data(AT_SMALL)["version"]
        answer = page.edit("small", *offers[0]["edits"])
        assert answer.status_code == 200
        assert page.data(f"{AT_SMALL}/facts")["check"]["problems"] == []
        undo = {"base": answer.json()["version"]}
        assert page.send(f"{AT_SMALL}/undo", undo).json()["version"] == version


def test_card_pictures_are_pictures(page: Page) -> None:
    page.data(f"{AT_SMALL}/facts")
    (card,) = [one for one in page.data("/api/home")["designs"] if one["name"] == "small"]
    drawn = Image.open(io.BytesIO(page.get(card["picture"]).content))
    assert drawn.size == (360, 360)
    page.send(f"{AT_SMALL}/away", {})
    assert page.get(card["picture"]).status_code == 200  # asked for by a page that has not heard
    assert page.get("/api/pictures/..%2Fsmall.png").status_code == 404
    page.send(f"{AT_SMALL}/back", {})


def test_what_was_printed_is_listed_with_its_covers(page: Page) -> None:
    """The newest first; another design's files and what is no PDF have none."""
    at = f"{AT_SMALL}/printed"
    output = page.root / "output"
    output.mkdir(exist_ok=True)
    page.send(f"{AT_SMALL}/print", {"what": "shopping"})
    for name in ("small-torn.pdf", "smaller-quote.pdf", "small-notes.txt"):
        (output / name).write_bytes(b"nothing that a reader of PDF knows")
    listed = {one["name"]: one for one in page.data(at)["files"]}
    assert listed.keys() >= {"small-shopping-a4.pdf", "small-shopping.csv", "small-torn.pdf"}
    assert not listed.keys() & {"smaller-quote.pdf", "small-notes.txt"}
    cover = page.get(listed["small-shopping-a4.pdf"]["cover"])
    wide, high = Image.open(io.BytesIO(cover.content)).size
    assert high / wide == pytest.approx(297 / 210, rel=0.01)  # A4 (ISO 216)
    assert listed["small-shopping.csv"]["cover"] is None
    assert page.get(listed["small-torn.pdf"]["cover"]).status_code == 404
    assert page.get("/api/printed/..%2Fsmall.yaml.png").status_code == 404
    (output / "small-torn.pdf").unlink()


class Counting(AtOnce):
    """Counts balloons, and leaves what takes longer for later."""

    def ask(self, errand: Errand) -> None:
        """Do an errand that only counts."""
        self.waits = not isinstance(errand.work, CountWork)
        super().ask(errand)
        if self.waits:
            super(AtOnce, self).ask(errand)


def test_home_counts_before_it_draws_and_what_is_in_sight_is_drawn_first(
    tmp_path: Path, call: Call
) -> None:
    names = ("first", "second", "third")
    for name in names:
        text = design_text(Wish(f"The {name}", "frame", size=50), Voice())
        (tmp_path / f"{name}.yaml").write_text(text, "utf-8")
    (tmp_path / "torn.yaml").write_text("buildplan: 1\nname: Torn\n", "utf-8")
    _, out, _ = call("check", tmp_path / "first.yaml", "--json")
    count = f"{sum(json.loads(out)['counts'].values())} balloons"
    with open_page(tmp_path, Counting()) as page:
        page.data("/api/home")
        *cards, torn = page.data("/api/home")["designs"]
        assert [(one["title"], one["balloons"]) for one in cards] == [
            (f"The {name}", count) for name in names
        ]
        assert {(one["state"], one["picture"], one["height"]) for one in cards} == {
            ("working", None, "")
        }
        assert (torn["state"], torn["problems"] > 0) == ("broken", True)
        assert page.send("/api/home/seen", {"names": ["third", "gone"]}).status_code == 200
        lanes = ["card third", "card first", "card second", "card torn"]
        assert page.desk.workers.waiting == lanes
