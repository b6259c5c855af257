"""Copies of one design: drawn once, each with the bytes that it has when it is printed alone."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest
from page_words import words_of_pages
from sold_copies import sold_book

from buildplan.booklet import editions
from buildplan.booklet.editions import (
    copy_of,
    print_booklet,
    print_copies,
    print_folded,
    print_folded_copies,
)
from buildplan.business.copies import filling
from buildplan.business.copies.buyers import LONGEST_NAME
from buildplan.business.copies.serial import serial_of
from buildplan.business.copies.verifying import verify
from buildplan.document import printing
from buildplan.document.printing import Document
from buildplan.document.tagged import BLANK
from buildplan.drawing.fonts import text_width

LONGEST = "Wilhelmina " * 7 + "Wxy"
BUYERS = ["Ana Example", "Бен & <Söhne>", LONGEST, "דָּוִד כהן (אב 12)", "محمد (لا) علي‌رضا"]
KEY = b"invented, for this test only"


@pytest.fixture
def drawings(monkeypatch: pytest.MonkeyPatch) -> list[Document]:
    """What was drawn while a test ran."""
    drawn: list[Document] = []
    really = printing.print_document

    def counted(document: Document) -> bytes:
        drawn.append(document)
        return really(document)

    monkeypatch.setattr(editions, "print_document", counted)
    return drawn


def test_each_copy_has_the_bytes_of_one_printed_alone(
    drawings: list[Document], tmp_path: Path
) -> None:
    copies = [data for (data,) in print_copies(sold_book(), BUYERS, KEY)]
    assert len(drawings) == 1
    assert len(set(copies)) == len(BUYERS)
    for buyer, data in zip(BUYERS, copies, strict=True):
        file = tmp_path / "copy.pdf"
        file.write_bytes(data)
        found = verify(file, KEY)
        assert found.whole
        assert found.copy.buyer == buyer
    assert copies[1] == print_booklet(replace(sold_book(), buyer=BUYERS[1]), KEY)


def test_folded_copies_too(drawings: list[Document], tmp_path: Path) -> None:
    copies = list(print_folded_copies(sold_book(), BUYERS))
    assert len(drawings) == 2, "the sheets, and the gauges"
    for sheets, alone in copies:
        for data in (sheets, alone):
            (tmp_path / "copy.pdf").write_bytes(data)
            assert verify(tmp_path / "copy.pdf").whole
    assert copies[1] == print_folded(replace(sold_book(), buyer=BUYERS[1]))


def test_many_copies_come_from_all_cores_in_their_order(monkeypatch: pytest.MonkeyPatch) -> None:
    here = list(print_copies(sold_book(), BUYERS))
    monkeypatch.setattr(filling, "WORTH_PROCESSES", len(BUYERS))
    assert list(print_copies(sold_book(), BUYERS)) == here


def test_nobody_named_is_told_on_the_licence_and_nowhere_else() -> None:
    data = print_booklet(replace(sold_book(), buyer=""))
    texts = words_of_pages(data)
    assert sum("nobody named" in text for text in texts) == 1
    assert not any("rinted for" in text for text in texts)


def test_the_longest_name_has_room() -> None:
    """It ends within the lines that are left free for it: on the cover there are two, elsewhere it
    is set smaller."""
    assert len(LONGEST) == LONGEST_NAME
    (data,) = next(print_copies(sold_book(), [LONGEST]))
    serial = serial_of(copy_of(replace(sold_book(), buyer=LONGEST), keyed=False))
    with pikepdf.open(io.BytesIO(data)) as pdf:
        for form in (one for one in pdf.objects if isinstance(one, pikepdf.Stream)):
            if BLANK not in form:
                continue
            how, sizes, lines = form[BLANK], [], 0
            for told in pikepdf.parse_content_stream(form):
                if str(told.operator) == "Tf":
                    sizes.append(float(str(told.operands[1])))
                lines += str(told.operator) == "Tj"
            wide = {
                "foot": f"{serial} · printed for {LONGEST}",
                "cover-buyer": f"Printed for {LONGEST}",
                "licence-buyer": LONGEST,
            }.get(str(how.Words), "")
            on_cover = str(how.Words) == "cover-buyer"
            assert lines == (2 if on_cover else 1)
            room = lines * float(how.Room) + 0.01
            assert text_width(wide, sizes[-1], bold=bool(how.Bold)) <= room
            assert sizes[-1] > (9 if on_cover else 5), "still to be read"
