"""Files that are no files, endless, enormous once drawn, or say the same twice: each is told, and
nothing is taken in before it is looked at. All sizes are counted, none is timed.

References: POSIX.1-2017 (device files, FIFOs); SVG 2, 5.6 (`use`); PNG (Third Edition), 11.2.1.
"""

from __future__ import annotations

import os
import struct
import sys
import zlib
from pathlib import Path

import pytest
from conftest import Call

from buildplan.business.copies import brand
from buildplan.business.copies.buyers import slug
from buildplan.business.copies.page_link import leads_to
from buildplan.fitting import svg_outline
from buildplan.fitting.outline import OutlineError
from buildplan.source.bounded import UnfitFileError, bytes_within
from buildplan.source.svg_size import drawn_elements

WHOLE = """\
buildplan: 1
name: Whole
units: in
balloons:
  long: {kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  lock: {kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  assembly:
    parts: [{name: A, design: FILE.yaml}]
    lock: lock
"""
LAMP = Path(__file__).parents[2] / "designs" / "gallery" / "lamp_octahedron.yaml"
posix = pytest.mark.skipif(sys.platform == "win32", reason="files of POSIX")


def pipe(folder: Path) -> Path:
    os.mkfifo(folder / "pipe")
    return folder / "pipe"


@posix
def test_devices_and_pipes_are_not_read(tmp_path: Path) -> None:
    for path in (Path("/dev/zero"), pipe(tmp_path)):
        with pytest.raises(UnfitFileError):
            bytes_within(path, 99)


@posix
def test_a_file_of_the_system_that_waits_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A file that only looks plain gives nothing where it would have to wait (POSIX, read)."""
    opened = os.fdopen

    def waiting(handle: int, mode: str) -> object:
        opened(handle, mode).close()
        ours, theirs = os.pipe()
        os.set_blocking(ours, False)
        ends.append(theirs)
        return opened(ours, mode)

    ends: list[int] = []
    file = tmp_path / "file"
    file.write_bytes(b"12345")
    monkeypatch.setattr("buildplan.source.bounded.os.fdopen", waiting)
    monkeypatch.setattr("buildplan.source.bounded.os.fstat", lambda handle: os.stat(file))
    with pytest.raises(UnfitFileError):
        bytes_within(file, 99)
    os.close(ends[0])


@posix
def test_a_folder_that_is_a_link_to_itself_is_told(call: Call, tmp_path: Path) -> None:
    (tmp_path / "loop").symlink_to("loop")
    status, _, said = call("gallery", "loop")
    assert status == 2
    assert "loop is no folder" in said


def test_a_file_is_read_to_its_most_and_no_further(tmp_path: Path) -> None:
    file = tmp_path / "file"
    file.write_bytes(b"12345")
    assert bytes_within(file, 5) == b"12345"
    with pytest.raises(UnfitFileError):
        bytes_within(file, 4)


@posix
@pytest.mark.parametrize("there", ["pipe", "/dev/zero"])
@pytest.mark.parametrize(
    "words",
    [
        "learn FILE",
        "times FILE",
        "check FILE",
        "event FILE",
        "check lamp.yaml --hands FILE",
        "booklet lamp.yaml --edition sale --key FILE",
        "booklet lamp.yaml --edition sale --sign FILE",
        "booklet lamp.yaml --edition sale --buyers FILE",
        "booklet lamp.yaml --edition sale --brand FILE",
        "booklet lamp.yaml --edition sale --brand brand.yaml",
        "check whole.yaml",
        "verify FILE",
        "verify FILE.html",
        "fit FILE.svg",
        "fit FILE.png",
        "gallery .",
    ],
)
def test_a_pipe_or_device_where_a_file_is_asked_for_is_told(
    call: Call, tmp_path: Path, words: str, there: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("BUILDPLAN_SIGN_PASSWORD", "x")
    (tmp_path / "lamp.yaml").write_bytes(b"" if "gallery" in words else LAMP.read_bytes())
    (tmp_path / "whole.yaml").write_text(WHOLE, "utf-8")
    (tmp_path / "brand.yaml").write_text("name: S\nlogo: FILE.png\n", "utf-8")
    for name in ("FILE", "FILE.html", "FILE.svg", "FILE.png", "FILE.yaml"):
        if there == "pipe":
            os.mkfifo(tmp_path / name)
        else:
            (tmp_path / name).symlink_to(there)
    status, out, said = call(*words.split())
    assert status in (1, 2)
    assert "fault" not in said
    assert "FILE" in said or "no design" in said
    assert out == ""


NESTED = "".join(f'<g id="g{n}">' + f'<use href="#g{n - 1}"/>' * 10 + "</g>" for n in range(1, 9))
BOMB = f'<svg xmlns="http://www.w3.org/2000/svg"><g id="g0"><path d="M0 0h9v9z"/></g>{NESTED}</svg>'
SNAKE = '<svg xmlns="http://www.w3.org/2000/svg"><g id="a"><use href="#a"/></g></svg>'


def test_what_is_used_again_and_again_is_counted_before_it_is_drawn() -> None:
    assert drawn_elements(BOMB, 1000) == 1001
    assert drawn_elements(SNAKE, 1000) == 1001
    once = '<svg xmlns="http://www.w3.org/2000/svg"><g id="a"><path/></g><use href="#a"/></svg>'
    assert drawn_elements(once, 1000) == 6  # svg, g, path; use, and g and path again


@pytest.mark.parametrize(
    "text",
    [
        BOMB,
        SNAKE,
        "<html/>",
        '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0'
        + "".join(f"A 9 9 0 0 1 {n} {n % 7} " for n in range(6000))
        + 'z"/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0'
        + "".join(f"C 1 2 3 4 {n} {n % 7} " for n in range(19000))
        + 'z"/></svg>',
        # of n chords drawn at random about a third of all pairs cross
        '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0'
        + "".join(f"L{n * 7919 % 1000} {n * 104729 % 997} " for n in range(19000))
        + 'z"/></svg>',
    ],
    ids=["uses", "itself", "html", "arcs", "curves", "tangle"],
)
def test_an_outline_that_is_too_much_is_refused(text: str, tmp_path: Path) -> None:
    file = tmp_path / "outline.svg"
    file.write_text(text, "utf-8")
    with pytest.raises(OutlineError):
        svg_outline.svg_outline(file)


def png_of(width: int, height: int) -> bytes:
    """A PNG of one grey, which packs to next to nothing."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    rows = zlib.compress((b"\0" + bytes(width)) * height)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def test_a_logo_is_looked_at_before_it_is_drawn() -> None:
    assert brand._png(png_of(30, 20)).aspect == 1.5
    with pytest.raises(brand._LogoError, match="too many pixels"):
        brand._png(png_of(5000, 4000))
    vast = png_of(1, 1).replace(struct.pack(">II", 1, 1), struct.pack(">II", 1 << 30, 1 << 30))
    head = vast[12:29]
    vast = vast[:29] + struct.pack(">I", zlib.crc32(head)) + vast[33:]
    assert len(vast) < 100
    with pytest.raises(brand._LogoError, match="too many pixels"):
        brand._png(vast)
    plain = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><path d="M0 0h9v9z"/></svg>'
    )
    assert brand._svg(plain.encode()).aspect == 1
    for bad in (
        plain.encode("utf-16"),
        plain.replace('width="9"', 'width="NaN"').encode(),
        BOMB.encode(),
    ):
        with pytest.raises(brand._LogoError):
            brand._svg(bad)


def test_buyers_whose_letters_differ_have_files_that_differ() -> None:
    names = ("Анна", "Олег", "Anna", "Anna Иванова", "Anna Петрова", "山田", "שרה", "Zoë")
    assert len({slug(name) for name in names}) == len(names)
    assert slug("Zoë Vermeulen") == "zoe-vermeulen"
    # longer than a file's name takes of them, and alike as far as that; accents tell nobody apart
    long = [
        f"Lantern Street Balloons and Decorations of {town}" for town in ("Ash", "Birch", "Ásh")
    ]
    ash, birch, accented = map(slug, long)
    assert (ash, ash != birch) == (accented, True)


def test_bytes_that_are_no_text_are_told_where_text_is_asked_for(
    call: Call, tmp_path: Path
) -> None:
    """PEP 383: Python reads such bytes of a call as single surrogates, which no file can hold."""
    (tmp_path / "lamp.yaml").write_bytes(LAMP.read_bytes())
    sold = ("booklet", "lamp.yaml", "--edition", "sale")
    for option, text, said in (
        ("--for", "An\udcff", "An<U+DCFF> has U+DCFF in it"),
        ("--link", "https://lantern-street.example/\udcff", "is no address of a page"),
    ):
        status, _, told = call(*sold, option, text)
        assert status == 2
        assert said in told
    assert leads_to("https://x.example/{piece}", None, Path("a\udcff.yaml")).endswith("/a%FF")


def test_an_event_that_names_a_file_two_ways_is_told(call: Call, tmp_path: Path) -> None:
    (tmp_path / "lamp.yaml").write_bytes(LAMP.read_bytes())
    text = "event: 1\nname: E\ndesigns: [{design: lamp.yaml}, {design: ./lamp.yaml}]\ncrew: 2\n"
    (tmp_path / "e.event.yaml").write_text(text + 'opening: "10:00"\n', "utf-8")
    status, _, said = call("event", "e.event.yaml")
    assert status == 1
    assert "listed twice" in said


@pytest.mark.parametrize(
    "row", ["pair,2,1e300", "pair,1e300,3", "pair,1e-300,3", f"pair,{9**3000},1"]
)
def test_a_log_with_a_number_that_no_hands_come_to_is_told(
    call: Call, tmp_path: Path, row: str
) -> None:
    (tmp_path / "log.csv").write_text(f"kind,count,minutes\n{row}\n", "utf-8")
    status, _, said = call("times", "log.csv")
    assert status in (1, 2)
    assert "fault" not in said


def test_of_ten_thousand_bad_rows_the_first_are_told(call: Call, tmp_path: Path) -> None:
    (tmp_path / "log.csv").write_text("kind,count,minutes\n" + "zzz,x,y\n" * 10_000, "utf-8")
    status, _, said = call("times", "log.csv")
    assert status == 1
    assert len(said.splitlines()) == 21
    assert "9,980" in said


def test_of_ten_thousand_bad_buyers_the_first_are_told(call: Call, tmp_path: Path) -> None:
    (tmp_path / "lamp.yaml").write_bytes(LAMP.read_bytes())
    sale = ("booklet", "lamp.yaml", "--edition", "sale", "--buyers", "buyers.csv")
    (tmp_path / "buyers.csv").write_text("name\n" + '""\n' * 10_000, "utf-8")
    status, _, said = call(*sale)
    assert status == 1
    assert len(said.splitlines()) == 22
    assert "9,980" in said


def test_a_letter_that_the_font_has_not_is_refused(call: Call) -> None:
    status, _, said = call("fit", "letter:灯")
    assert status in (1, 2)
    assert "draws nothing" in said
