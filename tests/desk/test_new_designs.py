"""New designs: from a pattern, from words, from an outline, from a picture that is dropped."""

from __future__ import annotations

import io
import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from desks import DESIGNS, Page, open_page
from PIL import Image, ImageDraw

from buildplan.design.reading import read_design
from buildplan.desk import beginnings, fit_working
from buildplan.desk.fit_task import FitWork
from buildplan.desk.new_calls import kind_of, pictures
from buildplan.desk.outcome import Refused
from buildplan.fitting.effort import QUICK

SHIELD = "M50 90L10 50L10 15L90 15L90 50Z"


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The pictures of beginnings, as a desk has drawn them."""
    with open_page(tmp_path_factory.mktemp("drawn")) as page:
        page.data("/api/beginnings")
        return pictures(page.desk)


@pytest.fixture
def page(tmp_path: Path, drawn: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Page]:
    little = replace(QUICK, courses=12, first=3, kept=1, tries=1, judged=1, taller=0)
    monkeypatch.setattr(fit_working, "USUAL", little)
    (tmp_path / "desk").mkdir()
    with open_page(tmp_path / "desk") as page:
        shutil.copytree(drawn, pictures(page.desk))
        yield page


def picture(kind: str = "PNG", size: tuple[int, int] = (200, 200)) -> bytes:
    drawn = Image.new("RGB", size, "white")
    corners = [(20, 20), (180, 20), (180, 180), (20, 180)]
    ImageDraw.Draw(drawn).polygon(corners, fill="black")
    out = io.BytesIO()
    drawn.save(out, kind)
    return out.getvalue()


def sent(
    page: Page, data: bytes, name: str = "Our House", file: str = "house.png"
) -> dict[str, str]:
    answer = page.http.post(
        "/api/new/picture", data={"name": name, "height": "1.5 m"}, files={"file": (file, data)}
    )
    assert answer.status_code == 200, answer.text
    job: dict[str, str] = page.data(f"/api/jobs/{answer.json()['job']}")
    return job


def test_every_beginning_has_a_picture_and_begins_a_design(page: Page) -> None:
    listed = page.data("/api/beginnings?language=es")
    assert {one["kind"] for one in listed} == {"pattern", "outline"}
    for one in listed:
        if one["kind"] == "outline":
            assert one["picture"].startswith("data:image/svg+xml;base64,")
            continue
        drawn = Image.open(io.BytesIO(page.get(one["picture"]).content))
        assert drawn.format == "PNG"
        asked = {"kind": "pattern", "key": one["key"]}
        made = page.send("/api/new?language=es", {"name": one["title"], "from": asked})
        design = read_design(page.root / f"{made.json()['name']}.yaml")
        assert design.name == one["title"]
        # metric, as Spain and all of Latin America measure (Unicode CLDR, measurementData)
        assert design.units == "cm"
    assert next(one["title"] for one in listed if one["key"] == "arch") == "Arco"


def test_whole_pieces_of_the_folders_within_begin_a_design(page: Page) -> None:
    """With the picture that is kept beside them; what names other files would not find them."""
    within = page.root / "gallery"
    within.mkdir()
    for name in ("slim_column.yaml", "slim_column.png", "leo_5.yaml"):
        shutil.copy(DESIGNS / "gallery" / name, within)
    text = (within / "leo_5.yaml").read_text("utf-8")
    (within / "of_parts.yaml").write_text(f"{text}\n# design: leo_5.yaml\n", "utf-8")
    (within / "torn.yaml").write_text("build: [", "utf-8")
    listed = {one["key"]: one for one in page.data("/api/beginnings") if one["kind"] == "gallery"}
    assert list(listed) == ["gallery/leo_5", "gallery/slim_column"]
    assert listed["gallery/leo_5"]["picture"] is None
    shown = page.get(listed["gallery/slim_column"]["picture"])
    assert shown.content == (within / "slim_column.png").read_bytes()
    asked = {"kind": "gallery", "key": "gallery/leo_5"}
    assert page.send("/api/new", {"name": "For Mia", "from": asked}).json() == {"name": "for_mia"}
    begun = read_design(page.root / "for_mia.yaml")
    assert (begun.name, begun.build) == ("For Mia", read_design(within / "leo_5.yaml").build)
    for key in ("gallery/of_parts", "../leo_5", "gallery/../for_mia", ".desk/pictures/x"):
        asked = {"kind": "gallery", "key": key}
        assert page.send("/api/new", {"name": "No", "from": asked}).status_code == 404
    assert page.get("/api/beginnings/gallery/torn.png").status_code == 404


def test_pictures_of_another_program_are_not_shown(
    page: Page, drawn: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def address() -> str:
        beginnings.drawn_from.cache_clear()
        if not pictures(page.desk).exists():
            shutil.copytree(drawn, pictures(page.desk))
        return str(page.data("/api/beginnings")[0]["picture"])

    before = address()
    with monkeypatch.context() as patch:
        patch.setattr(beginnings, "__version__", "another")
        assert address() != before
    assert address() == before


def test_a_beginning_is_drawn_as_it_will_stand(page: Page) -> None:
    """Its arch on its columns: the picture is that of the design that is begun with it."""
    page.send("/api/new", {"name": "Door", "from": {"kind": "pattern", "key": "entrance"}})
    page.data("/api/design/door/facts")  # worked out, and its card drawn
    drawn = page.get("/api/beginnings/entrance.png").content
    (card,) = page.data("/api/home")["designs"]
    assert page.get(card["picture"]).content == drawn


def test_words_become_letters_of_the_height_asked_for(page: Page) -> None:
    asked = {"kind": "words", "text": "Leo 5", "height": "1.6 m"}
    made = page.send("/api/new", {"name": "For Leo", "from": asked}).json()
    assert made == {"name": "for_leo"}
    facts = page.data("/api/design/for_leo/facts")
    assert facts["check"]["size"]["height"] == pytest.approx(160, rel=0.15)
    assert page.data("/api/design/for_leo")["title"] == "For Leo"


def test_an_outline_that_is_drawn_becomes_a_piece_as_high(page: Page) -> None:
    asked = {"kind": "outline", "path": SHIELD, "height": "1.5 m"}
    answer = page.send("/api/new", {"name": "My Outline", "from": asked})
    job = page.data(f"/api/jobs/{answer.json()['job']}")
    assert (job["state"], job["name"], job["share"]) == ("done", "my_outline", 1)
    facts = page.data("/api/design/my_outline/facts")
    assert facts["check"]["size"]["height"] == pytest.approx(150, rel=0.1)
    assert facts["name"] == "My Outline"


def test_a_picture_becomes_a_piece(page: Page) -> None:
    assert kind_of(picture("JPEG")) == ".jpg"
    job = sent(page, picture())
    assert (job["state"], job["name"]) == ("done", "our_house")
    assert read_design(page.root / "our_house.yaml").name == "Our House"
    assert list((page.root / ".desk" / "sent").iterdir()) == []  # nothing of it is kept


def test_a_drawing_becomes_a_piece(page: Page) -> None:
    drawing = (
        f'<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><path d="{SHIELD}"/></svg>'
    )
    assert sent(page, drawing.encode(), file="shield.svg")["state"] == "done"


def test_what_is_no_picture_is_refused_before_it_is_looked_at(page: Page) -> None:
    """By what is in it, whatever it is called."""
    for data in (b"%PDF-1.7 ...", b"GIF89a...", b"", b"%!PS-Adobe-3.0 EPSF-3.0", b"MZ\x90\x00"):
        answer = page.http.post(
            "/api/new/picture",
            data={"name": "a", "height": "1.5 m"},
            files={"file": ("house.png", data)},
        )
        assert answer.status_code == 415
        assert "PNG, JPEG or SVG" in answer.json()["message"]
    assert page.data("/api/home")["designs"] == []


def test_a_broken_picture_says_so_by_its_name(page: Page) -> None:
    job = sent(page, picture()[:120])
    assert job["state"] == "failed"
    assert "Our House" in job["message"]
    assert ".desk" not in job["message"]
    assert list((page.root / ".desk" / "sent").iterdir()) == []


def test_a_picture_of_too_many_points_is_not_decoded(page: Page) -> None:
    """Its header says how large it is (PNG, ISO/IEC 15948, 11.2.1); nothing more of it is read."""
    header = bytearray(picture(size=(200, 200)))
    header[16:24] = (60_000).to_bytes(4, "big") * 2
    job = sent(page, bytes(header))
    assert job["state"] == "failed"
    assert job["message"]


def test_more_is_not_taken_than_a_picture_may_have(page: Page) -> None:
    answer = page.http.post(
        "/api/new/picture",
        data={"name": "a", "height": "1.5 m"},
        files={"file": ("a.png", picture() + bytes(17 * 1024**2))},
    )
    assert answer.status_code == 413


def test_what_cannot_be_had_is_said(page: Page) -> None:
    for beginning in (
        {"kind": "outline", "key": "star", "height": "tall"},
        {"kind": "outline", "key": "star", "height": "90 m"},
        {"kind": "words", "text": "¿?"},
    ):
        answer = page.send("/api/new", {"name": "x", "from": beginning})
        assert answer.status_code == 422
        assert answer.json()["message"]
    answer = page.send(
        "/api/new", {"name": "x", "from": {"kind": "outline", "key": "owl", "height": "1.5m"}}
    )
    job = page.data(f"/api/jobs/{answer.json()['job']}")
    assert job["state"] == "failed"
    assert "owl" in job["message"]
    crossing = {"kind": "outline", "path": "M0 0L90 90L90 0L0 90Z", "height": "1.5m"}
    answer = page.send("/api/new", {"name": "x", "from": crossing})
    assert page.data(f"/api/jobs/{answer.json()['job']}")["state"] == "failed"
    assert page.data("/api/home")["designs"] == []


def test_a_picture_that_went_before_it_was_read_is_told(tmp_path: Path) -> None:
    told: list[object] = []
    work = FitWork(tmp_path, "Pear", 1.0, "cm", "en", sent=tmp_path / "sent.png")
    fit_working.begin_fitted(work, told.append)
    assert told[-1] == Refused("Pear: there is no such file")
    assert not any(tmp_path.iterdir())
