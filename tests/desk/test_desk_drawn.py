"""What the desk draws beside the piece: pictures of steps, courses that it offers, cards."""

from __future__ import annotations

import io
import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import Call
from desks import Page, open_page
from PIL import Image

from buildplan.design.starting import design_text
from buildplan.design.wishes import Wish
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
    assert drawn.size == (480, 480)
    page.send(f"{AT_SMALL}/away", {})
    assert page.get(card["picture"]).status_code == 200  # asked for by a page that has not heard
    assert page.get("/api/pictures/..%2Fsmall.png").status_code == 404
    page.send(f"{AT_SMALL}/back", {})
