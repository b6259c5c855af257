"""Sold companions: the serial is its own, and every change of the page is found."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from screen_pieces import VOICES, book

from buildplan.business.copies.serial import NoSerialError, check_character
from buildplan.business.copies.verifying import Verdict
from buildplan.screen.page import companion
from buildplan.screen.sold import sold_companion, verify_companion

KEY = b"a key of sixteen or more bytes"


@pytest.fixture(scope="module")
def sold() -> str:
    copy = replace(book("reading_star"), edition="sale", buyer='Ana "Ex" <b>&ample</b>')
    return sold_companion(copy, VOICES, key=KEY)


def kept(folder: Path, page: str) -> Path:
    file = folder / "sold.html"
    file.write_text(page, encoding="utf-8")
    return file


def test_a_copy_as_it_was_written_is_good(sold: str, tmp_path: Path) -> None:
    found = verify_companion(kept(tmp_path, sold), KEY)
    assert found.whole
    letters = found.serial.replace("-", "")
    assert check_character(letters[:-1]) == letters[-1]
    assert found.copy.buyer == 'Ana "Ex" <b>&ample</b>'
    assert "<b>&ample" not in sold


def test_another_key_or_none_proves_nothing(sold: str, tmp_path: Path) -> None:
    file = kept(tmp_path, sold)
    assert verify_companion(file).verdict is Verdict.NEEDS_KEY
    assert not verify_companion(file, b"another key of sixteen bytes").whole


@pytest.mark.parametrize(
    ("was", "now"),
    [
        ('id="piece">eN', 'id="piece">eM'),  # where zlib begins
        ("Content-Security-Policy", "Content-Policy"),
        ('"serial":"', '"serial":"0'),
        ("Ana ", "Eva "),
        ("</html>", "</html> "),
    ],
)
def test_every_change_is_found(sold: str, tmp_path: Path, was: str, now: str) -> None:
    assert was in sold
    assert not verify_companion(kept(tmp_path, sold.replace(was, now, 1)), KEY).whole


def test_what_was_not_sold_has_no_serial(tmp_path: Path) -> None:
    page = companion(book("reading_star"), VOICES)
    with pytest.raises(NoSerialError):
        verify_companion(kept(tmp_path, page), KEY)
    assert '"copy":null' in page
