"""What is printed at the desk is what the commands print, byte for byte."""

from __future__ import annotations

import csv
import io
import json
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from certificates import seller
from conftest import Call
from desks import DESIGNS, AtOnce, Page, open_page, with_designs
from pypdf import PdfReader

from buildplan.business.copies.signing import Signature, signatures_in
from buildplan.design.starting import design_text
from buildplan.design.wishes import Wish
from buildplan.desk.print_task import Wishes
from buildplan.language.voice import Voice

AT_SMALL = "/api/design/small"
PRICES = """\
currency: GBP
prices: {long: 0.32, cross: 0.32, lock: 0.09}
rates: {hour: 18.0, margin: 0.35}
"""
EVENT = """\
event: 1
name: Our Day
designs:
  - {design: small.yaml}
crew: 2
opening: "10:00"
vehicles:
  - {name: Handcart, length: 65 cm, width: 65 cm, height: 95 cm}    # a bag at a time: several trips
"""


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    """A small frame, an event of it, and a brand: all invented."""
    root = tmp_path_factory.mktemp("printing") / "desk"
    root.mkdir()
    text = design_text(Wish("Small Frame", "frame", size=50), Voice())
    (root / "small.yaml").write_text(text + PRICES, "utf-8")
    (root / "day.event.yaml").write_text(EVENT, "utf-8")
    shutil.copytree(DESIGNS / "brand", root / "brand")
    with open_page(root) as page:
        yield page


def all_printed(page: Page, **asked: Any) -> dict[str, bytes]:
    """What is printed, by its name."""
    answer = page.send(f"{AT_SMALL}/print", asked)
    assert answer.status_code == 200, answer.text
    job = page.data(f"/api/jobs/{answer.json()['job']}")
    assert (job["state"], job["message"]) == ("done", "")
    return {file["name"]: page.get(file["url"]).content for file in job["files"]}


def printed(page: Page, **asked: str | int | bool) -> tuple[str, bytes]:
    """The name and the bytes of the first file that is printed: pages come before tables."""
    return next(iter(all_printed(page, **asked).items()))


def needed(table: bytes) -> list[int]:
    """How many of each balloon a shopping list asks for."""
    return [int(row["needed"]) for row in csv.DictReader(table.decode("utf-8-sig").splitlines())]


def by_command(call: Call, *words: object) -> dict[str, bytes]:
    """What a command says that it wrote, by its name."""
    status, out, told = call(*words)
    assert status == 0, told
    return {Path(line).name: Path(line).read_bytes() for line in out.split()}


def test_everything_that_can_be_printed_is_listed(page: Page) -> None:
    options = page.data("/api/print?language=es")
    keys = [one["key"] for one in options["whats"]]
    assert keys == ["booklet", "companion", "quote", "shopping", "gallery", "event day"]
    assert options["whats"][-1]["words"] == "Evento: Our Day"
    assert [one["value"] for one in options["brands"]] == ["brand/lantern_street.yaml"]
    assert {one["value"] for one in options["languages"]} >= {"en", "es"}
    assert all(one["words"] and one["about"] for one in options["whats"])


@pytest.mark.parametrize("edition", ["training", "crew", "sale"])
def test_booklets_are_those_of_the_command(page: Page, call: Call, edition: str) -> None:
    brand = "brand/lantern_street.yaml" if edition == "sale" else ""
    more = ["--brand", page.root / brand] if brand else []
    language, paper = ("es", "letter") if edition == "crew" else ("en", "a4")
    name, data = printed(
        page, what="booklet", edition=edition, paper=paper, language=language, brand=brand
    )
    _, out, _ = call(
        "booklet", page.root / "small.yaml", "--edition", edition, "--paper", paper,
        "--language", language, *more,
    )  # fmt: skip
    assert Path(out.strip()).name == name
    assert Path(out.strip()).read_bytes() == data
    served = page.get(f"/output/{name}").headers
    assert served["content-type"] == "application/pdf"
    assert "sandbox" not in served["content-security-policy"]  # browsers show no PDF in one
    about = PdfReader(io.BytesIO(data)).metadata
    assert about is not None
    assert "Small Frame" in str(about.title)


def test_the_rest_is_that_of_the_commands(page: Page, call: Call) -> None:
    small, day = page.root / "small.yaml", page.root / "day.event.yaml"
    name, data = printed(page, what="companion", edition="crew", language="es")
    assert name == "small-crew.html"  # every language is in it
    call("companion", small, "--edition", "crew", "--language", "es", "--out", "page.html")
    assert Path("page.html").read_bytes() == data
    _, data = printed(page, what="shopping")
    call("shopping", small, "--pdf", "list.pdf")
    assert Path("list.pdf").read_bytes() == data
    _, data = printed(page, what="quote", paper="letter")
    call("quote", small, "--pdf", "quote.pdf", "--paper", "letter")
    assert Path("quote.pdf").read_bytes() == data
    assert all_printed(page, what="event day", language="en") == by_command(call, "event", day)


def test_copies_are_sold_to_a_list_of_buyers_and_sealed(page: Page, call: Call) -> None:
    """A name on each line, or the table that the command takes; pages for phones as well."""
    small, key = page.root / "small.yaml", page.root / "mine.key"
    key.write_bytes(b"sixteen bytes or more")
    Path("buyers.csv").write_text("name,town\nAna Example,Here\nBen Example,There\n", "utf-8")
    names = "Ana Example\nBen Example\n"
    more = ("--edition", "sale", "--key", key)
    wanted = by_command(call, "booklet", small, *more, "--buyers", "buyers.csv")
    assert len(wanted) == 2
    sale = {"what": "booklet", "edition": "sale", "key": "mine.key"}
    assert all_printed(page, **sale, buyers=names) == wanted
    assert all_printed(page, **sale, buyers=Path("buyers.csv").read_text("utf-8")) == wanted
    pages = all_printed(
        page, what="companion", edition="sale", key="mine.key", buyers="Ana Example"
    )
    assert pages == by_command(call, "companion", small, *more, "--for", "Ana Example")


def test_copies_are_signed_and_their_password_is_kept_nowhere(page: Page, call: Call) -> None:
    """The signature is the one thing that the command's booklet has not (ISO 32000-2, 12.8: it
    stands after the file as it was); pyHanko finds it good."""
    small, password = page.root / "small.yaml", "open, lamp 4711"
    seller(page.root / "mine.p12", password)
    assert page.data("/api/print")["signers"] == [{"value": "mine.p12", "label": "mine.p12"}]
    asked = {"what": "booklet", "edition": "sale", "sign": "mine.p12"}
    ((name, data),) = all_printed(page, **asked, password=password).items()
    ((plain_name, plain),) = by_command(call, "booklet", small, "--edition", "sale").items()
    assert name == plain_name
    assert data.startswith(plain)
    assert signatures_in(data) == (Signature("Lantern Street (invented)", holds=True),)

    answer = page.send(f"{AT_SMALL}/print", {**asked, "password": "another"})
    job = page.data(f"/api/jobs/{answer.json()['job']}")
    assert (job["state"], job["files"]) == ("failed", [])
    assert "mine.p12" in job["message"]
    assert "password" in job["message"]
    assert "another" not in json.dumps(job).replace("is another", "")
    assert password not in repr(Wishes(sign="mine.p12", password=password))
    kept = [path for path in page.root.rglob("*") if path.is_file()]
    assert not [path for path in kept if password.encode() in path.read_bytes()]
    (page.root / "mine.p12").unlink()


def test_codes_lead_where_it_is_said(page: Page, call: Call) -> None:
    link = "https://lantern-street.example/{piece}"
    wanted = by_command(call, "booklet", page.root / "small.yaml", "--link", link)
    assert all_printed(page, what="booklet", link=link) == wanted
    assert b"https://lantern-street.example/small" in next(iter(wanted.values()))


def test_crews_have_doors_and_large_print_and_pages_fold(page: Page, call: Call) -> None:
    small = page.root / "small.yaml"
    doors = ("--door", "90x205cm", "--door", "Lift=80x200cm")
    wanted = by_command(call, "booklet", small, "--edition", "crew", "--large-print", *doors)
    crew = {"what": "booklet", "edition": "crew", "doors": "90x205cm\nLift=80x200cm\n"}
    assert all_printed(page, **crew, large=True) == wanted
    folded = by_command(call, "booklet", small, "--edition", "crew", "--fold", *doors)
    assert all_printed(page, **crew, fold=True) == folded


def test_a_quote_says_whom_it_is_for_and_on_what_terms(page: Page, call: Call) -> None:
    terms: dict[str, str | int] = {
        "customer": "Ana Example",
        "number": "7",
        "date": "1 May",
        "deposit": 30,
        "valid": 14,
    }
    made = all_printed(page, what="quote", address="1 Foxglove Lane\nHere", **terms)
    call(
        "quote", page.root / "small.yaml", "--pdf", "quote.pdf", "--csv", "quote.csv",
        "--for", "Ana Example", "--address", "1 Foxglove Lane;Here", "--number", "7",
        "--date", "1 May", "--deposit", "30%", "--valid", "14",
    )  # fmt: skip
    assert list(made.values()) == [Path("quote.pdf").read_bytes(), Path("quote.csv").read_bytes()]


def test_several_designs_are_quoted_and_shopped_for_as_one(page: Page, call: Call) -> None:
    """Those that are ticked beside the one that is open, as the commands take several files."""
    small, other = page.root / "small.yaml", page.root / "other.yaml"
    text = page.text("small")
    other.write_text(text.replace("Small Frame", "Other Frame"), "utf-8")
    named = {"value": "other", "label": "Other Frame"}
    assert named in page.data("/api/print")["designs"]
    asked = "designs:\n  - {design: small.yaml, count: 3}\n  - {design: other.yaml, count: 2}"
    event = page.root / "both.event.yaml"
    event.write_text(EVENT.replace("designs:\n  - {design: small.yaml}", asked), "utf-8")
    many = {"count": 3, "beside": {"other": 2}}
    quoted = all_printed(page, what="quote", **many)
    call("quote", event, "--csv", "quote.csv")
    assert quoted.keys() == {"small-and-1-quote-a4.pdf", "small-and-1-quote.csv"}
    assert quoted["small-and-1-quote.csv"] == Path("quote.csv").read_bytes()
    bought = all_printed(page, what="shopping", **many)
    event.unlink()
    one_each = all_printed(page, what="shopping", beside={"other": 1})
    call("shopping", small, other, "--pdf", "list.pdf", "--csv", "list.csv")
    assert list(one_each.values()) == [Path("list.pdf").read_bytes(), Path("list.csv").read_bytes()]
    two, five = (needed(every["small-and-1-shopping.csv"]) for every in (one_each, bought))
    assert [2 * count for count in five] == [5 * count for count in two]
    for wrong in ({"small": 1}, {"other": 0}, {"../other": 1}, {"other": 1000}):
        asked_so = {"what": "quote", "beside": wrong}
        assert page.send(f"{AT_SMALL}/print", asked_so).status_code == 400
    for written, told in (("hour: 18.0", "different rates"), ("currency: GBP\n", "other.yaml")):
        other.write_text(text.replace(written, "hour: 19.0" if "hour" in written else ""), "utf-8")
        answer = page.send(f"{AT_SMALL}/print", {"what": "quote", "beside": {"other": 1}})
        job = page.data(f"/api/jobs/{answer.json()['job']}")
        assert job["state"] == "failed"
        assert told in job["message"]
    other.unlink()


def test_the_gallery_shows_every_design_of_the_folder(page: Page) -> None:
    name, data = printed(page, what="gallery", paper="letter", language="es")
    assert name == "gallery-letter-es.pdf"
    words = " ".join(one.extract_text() for one in PdfReader(io.BytesIO(data)).pages)
    assert "Small Frame" in words
    assert "Galería" in words


def test_what_cannot_be_printed_is_said(page: Page) -> None:
    text = page.text("small")
    (page.root / "half.yaml").write_text(text.replace(PRICES, ""), "utf-8")
    for asked, status in (
        ({"what": "poster"}, 400),
        ({"what": "booklet", "brand": "../brand.yaml"}, 400),
        ({"what": "booklet", "language": "xx"}, 400),
        ({"what": "booklet", "paper": "a0"}, 400),
        ({"what": "booklet", "key": "../mine.key"}, 400),
        ({"what": "booklet", "edition": "crew", "doors": "wide"}, 422),
        ({"what": "booklet", "edition": "sale", "buyers": "Ana\nAna"}, 422),
        ({"what": "booklet", "edition": "sale", "sign": "../mine.p12"}, 400),
        ({"what": "booklet", "link": "lantern street"}, 422),
        ({"what": "quote", "address": "a\n" * 7}, 422),
    ):
        assert page.send(f"{AT_SMALL}/print", asked).status_code == status
    answer = page.send("/api/design/half/print", {"what": "quote"})
    job = page.data(f"/api/jobs/{answer.json()['job']}")
    assert (job["state"], job["files"]) == ("failed", [])
    assert "currency" in job["message"] or "price" in job["message"]
    (page.root / "half.yaml").unlink()


def test_a_job_that_waits_can_be_stopped(tmp_path: Path) -> None:
    designs = with_designs(tmp_path / "desk", [DESIGNS / "reading_star.yaml"])
    with open_page(designs, AtOnce(waits=True)) as page:
        answer = page.send("/api/design/reading_star/print", {"what": "booklet"})
        at = f"/api/jobs/{answer.json()['job']}"
        assert page.data(at)["state"] == "waiting"
        assert page.http.delete(at).json()["state"] == "stopped"
        assert page.data(at)["state"] == "stopped"
        assert page.get("/api/jobs/none").status_code == 404
