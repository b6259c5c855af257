"""Editions from the command line: whom they are for, how they fold, and checking a sold copy."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pypdf
import pytest
from conftest import Call
from square_fonts import square_font

POST = """\
buildplan: 1
name: Short Post
units: in
balloons:
  long: {kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: deep blue}
  lock: {kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  tube: {closed: false, chains: 4, long: long, brace: long, lock: lock, course: [straight]}
"""


@pytest.fixture
def call(call: Call, tmp_path: Path) -> Call:
    """Run a command on the post, in a folder of its own."""
    (tmp_path / "post.yaml").write_text(POST, encoding="utf-8")
    return call


def test_a_copy_for_each_good_row(call: Call, tmp_path: Path) -> None:
    (tmp_path / "buyers.csv").write_text("name\nAna Example\n\n,\nBen Example\nAna Example\n")
    status, out, messages = call(
        "booklet", "post.yaml", "--edition", "sale", "--buyers", "buyers.csv", "--paper", "letter"
    )
    written = [f"post-sale-letter-{slug}.pdf" for slug in ("ana-example", "ben-example")]
    assert status == 1
    assert out.split() == [f"output/{name}" for name in written]
    assert "buyers.csv:4: no name" in messages
    assert "buyers.csv:6: Ana Example stands in line 2 already" in messages
    assert sorted(path.name for path in (tmp_path / "output").iterdir()) == written
    status, out, _ = call("verify", f"output/{written[0]}", "--json")
    found = json.loads(out)
    assert status == 0
    assert (found["whole"], found["good"], found["verdict"]) == (True, False, "whole")
    assert found["copy"]["buyer"] == "Ana Example"


def test_names_of_any_script_and_one_that_no_font_has(call: Call, tmp_path: Path) -> None:
    square_font(tmp_path / "squares.otf", "\u661f\u4e2d", curves="CFF")
    (tmp_path / "brand.yaml").write_text("name: \u661f \u2606\nfont: squares.otf\n", "utf-8")
    # the second has a sign that Unicode has not assigned
    (tmp_path / "buyers.csv").write_text("name\n\u4e2d\nA\u0378\n\u05d3\u05d5\u05d3\n", "utf-8")
    sale = ("booklet", "post.yaml", "--edition", "sale", "--brand", "brand.yaml")
    status, out, messages = call(*sale, "--buyers", "buyers.csv")
    assert (status, len(out.split())) == (1, 2)
    assert "no font has U+0378 of A\u0378" in messages
    for file, name in zip(out.split(), ("\u4e2d", "\u05d3\u05d5\u05d3"), strict=True):
        status, told, _ = call("verify", file, "--json")
        assert (status, json.loads(told)["copy"]["buyer"]) == (0, name)
    status, out, messages = call(*sale, "--for", "A\u0378")
    assert (status, out) == (1, "")
    assert messages.startswith("--for: no font has U+0378 of A\u0378: put")


SIGNED = {
    "booklet": ("booklet", "post.yaml", "odd.yaml"),
    "shopping": ("shopping", "post.yaml", "odd.yaml", "--pdf", "made.pdf"),
    "measure": ("measure", "odd.yaml", "--pdf", "made.pdf"),
    "gallery": ("gallery", ".", "--out", "made.pdf"),
    "check": ("check", "odd.yaml", "--chart", "made.png"),
}


@pytest.mark.parametrize("command", SIGNED)
def test_a_sign_that_no_font_has_is_told_once_at_its_place(call: Call, command: str) -> None:
    text = Path("post.yaml").read_text("utf-8")
    name = next(line for line in text.splitlines() if line.startswith("name: "))
    Path("odd.yaml").write_text(text.replace(name, "name: A\u0378"), "utf-8")
    status, _, messages = call(*SIGNED[command])
    assert status == 1
    (line,) = messages.splitlines()
    assert line.startswith("odd.yaml:2: name: no font has U+0378 of A\u0378")
    assert not list(Path().glob("made.*"))


JOB = """event: 1
name: Our Day
place: Side \u0378 Door
designs: [{design: post.yaml}]
crew: 2
opening: "10:00"
translations:
  de: {name: Tag \u0378}
"""
SOLD = ("--edition", "sale", "--brand", "brand.yaml")


@pytest.mark.parametrize(
    ("command", "told"),
    [
        (("booklet", "post.yaml", *SOLD), ["brand.yaml:2: contact:"]),
        (("booklet", "post.yaml", *SOLD, "--for", "B\u0378"), ["--for:"]),
        (("booklet", "post.yaml", "--edition", "crew", "--door", "\u0378=1x2m"), ["--door:"]),
        (("quote", "post.yaml", "--pdf", "made.pdf", "--brand", "brand.yaml"), ["brand.yaml:2:"]),
        (("quote", "post.yaml", "--pdf", "made.pdf", "--number", "\u0378"), ["--number:"]),
        (
            ("event", "job.event.yaml"),
            ["job.event.yaml:3: place:", "job.event.yaml:8: translations.de.name:"],
        ),
    ],
)
def test_it_is_told_where_it_was_written(
    call: Call, command: tuple[str, ...], told: list[str]
) -> None:
    """In a brand, an event or a choice, and by the name of the sign."""
    prices = "currency: GBP\nprices: {long: 0.3, lock: 0.1}\nrates: {hour: 18, margin: 0.3}\n"
    Path("post.yaml").write_text(POST + prices, "utf-8")
    Path("brand.yaml").write_text("name: Lamps\ncontact: A\u0378\n", "utf-8")
    Path("job.event.yaml").write_text(JOB, "utf-8")
    status, _, messages = call(*command)
    assert status == 1
    lines = messages.splitlines()
    assert len(lines) == len(told)
    for line, place in zip(lines, told, strict=True):
        assert line.startswith(place), line
        assert "no font has U+0378 of" in line


def test_changed_copy_is_told_with_its_page(call: Call, tmp_path: Path) -> None:
    assert call("booklet", "post.yaml", "--edition", "sale", "--for", "Ana Example")[0] == 0
    file = tmp_path / "output" / "post-sale-a4-ana-example.pdf"
    writer = pypdf.PdfWriter(clone_from=io.BytesIO(file.read_bytes()))
    writer.pages[2].rotate(90)
    writer.write(file)
    status, out, _ = call("verify", str(file))
    assert status == 1
    assert "CHANGED: 3" in out
    assert "NOT GOOD" in out


def test_fold_writes_sheets_and_gauges(call: Call, tmp_path: Path) -> None:
    status, out, _ = call("booklet", "post.yaml", "--edition", "crew", "--large-print", "--fold")
    assert status == 0
    assert out.split() == [
        "output/post-crew-a4-large-fold.pdf",
        "output/post-crew-a4-large-gauges.pdf",
    ]
    sheets = pypdf.PdfReader(tmp_path / "output" / "post-crew-a4-large-fold.pdf")
    assert len(sheets.pages) % 2 == 0


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--for", "Ana"), "--edition sale"),
        (("--large-print",), "--edition crew"),
        (("--edition", "sale", "--for", ""), "no name"),
        (("--edition", "sale", "--for", "a", "--buyers", "b.csv"), "not both"),
        (("--edition", "sale", "--buyers", "none.csv"), "none.csv"),
        (("--edition", "sale", "--key", "post.key"), "post.key"),
        (("--edition", "sale", "--brand", "none.yaml"), "none.yaml"),
    ],
)
def test_wrong_call_says_what_would_be_right(
    call: Call, arguments: tuple[str, ...], said: str
) -> None:
    status, out, messages = call("booklet", "post.yaml", *arguments)
    assert status == 2
    assert not out
    assert said in " ".join(messages.replace("│", " ").split())
    assert "Traceback" not in messages


def test_file_without_serial_is_no_sold_copy(call: Call) -> None:
    call("booklet", "post.yaml", "--edition", "crew")
    status, _, messages = call("verify", "output/post-crew-a4.pdf")
    assert status == 2
    assert "no serial" in " ".join(messages.replace("│", " ").split())
