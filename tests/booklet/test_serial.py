"""Serials, seals, and what `verify` notices."""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pikepdf
import pypdf
import pytest
from hypothesis import given
from hypothesis import strategies as st
from page_words import words_of_pages
from sold_copies import BUYER, sold_book, sold_copy

from buildplan.booklet.editions import copy_of, print_booklet
from buildplan.business.copies.serial import (
    ALPHABET,
    NoSerialError,
    SoldCopy,
    check_character,
    seal,
    serial_of,
)
from buildplan.business.copies.verified_words import verified_lines
from buildplan.business.copies.verifying import (
    PageChanges,
    Verdict,
    Verified,
    page_changes,
    verify,
)
from buildplan.language.voice import Voice

Change = Callable[[pikepdf.Pdf], None]


def test_check_character_is_that_of_iso_7064() -> None:
    """ISO/IEC 7064 MOD 37,36; A1-2425G-ABC1234002-M is the worked example of the GRid standard
    (IFPI), which uses it (from memory)."""
    assert check_character("A12425GABC1234002") == "M"


@given(st.text(ALPHABET, min_size=15, max_size=15), st.integers(0, 14), st.sampled_from(ALPHABET))
def test_one_wrong_character_is_always_noticed(letters: str, place: int, other: str) -> None:
    """ISO/IEC 7064: every single substitution is detected."""
    whole = letters + check_character(letters)
    wrong = whole[:place] + other + whole[place + 1 :]
    assert (check_character(wrong[:-1]) == wrong[-1]) == (other == whole[place])


def test_serial_is_of_design_buyer_and_edition() -> None:
    copy = copy_of(sold_book(), keyed=False)
    assert serial_of(copy) == serial_of(copy_of(sold_book(), keyed=False))
    others = [
        replace(copy, buyer="somebody else"),
        replace(copy, design="0" * 64),
        replace(copy, edition="crew"),
        replace(copy, keyed=True),
        replace(copy, language="es"),
    ]
    assert len({serial_of(other) for other in [copy, *others]}) == 6
    assert serial_of(copy) != serial_of(copy, b"a key of the seller's own")
    assert re.fullmatch(r"([0-9A-Z]{4}-){3}[0-9A-Z]{4}", serial_of(copy))


def test_serial_and_buyer_stand_on_every_page() -> None:
    serial = serial_of(copy_of(sold_book(), keyed=False))
    for text in words_of_pages(sold_copy()):
        assert serial in text
        assert BUYER in text


def test_same_copy_has_the_same_bytes() -> None:
    assert print_booklet(sold_book()) == sold_copy()


def checked(tmp_path: Path, data: bytes, key: bytes = b"") -> Verified:
    file = tmp_path / "copy.pdf"
    file.write_bytes(data)
    return verify(file, key)


def changed(data: bytes, change: Change, **how: Any) -> bytes:
    with pikepdf.open(io.BytesIO(data)) as pdf:
        change(pdf)
        out = io.BytesIO()
        pdf.save(out, **how)
    return out.getvalue()


def test_untouched_copy_is_good(tmp_path: Path) -> None:
    found = checked(tmp_path, sold_copy())
    assert found.whole
    assert found.copy.buyer == BUYER
    assert "none changed" in "\n".join(verified_lines(found, Voice()))


def test_storing_it_another_way_changes_nothing(tmp_path: Path) -> None:
    packed = changed(
        sold_copy(),
        lambda pdf: None,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
        recompress_flate=True,
        linearize=True,
    )
    assert packed != sold_copy()
    assert checked(tmp_path, packed).whole


def draw_on(number: int) -> Change:
    def change(pdf: pikepdf.Pdf) -> None:
        pdf.pages[number].contents_add(b"0 0 50 50 re f", prepend=False)

    return change


def another_buyer(pdf: pikepdf.Pdf) -> None:
    with pdf.open_metadata(set_pikepdf_as_editor=False) as meta:
        meta["bpcopy:fields"] = str(meta["bpcopy:fields"]).replace(BUYER, "Somebody Else")


def swap(pdf: pikepdf.Pdf) -> None:
    page = pdf.pages[4]
    del pdf.pages[4]
    pdf.pages.insert(7, page)


def one_less(pdf: pikepdf.Pdf) -> None:
    del pdf.pages[3]


def last_gone(pdf: pikepdf.Pdf) -> None:
    del pdf.pages[-1]


def one_more(pdf: pikepdf.Pdf) -> None:
    pdf.add_blank_page(page_size=(595, 842))


def other_picture(pdf: pikepdf.Pdf) -> None:
    """A balloon's look replaced inside its form, the page's own content left alone."""
    forms = pdf.pages[0].resources.XObject
    name = sorted(forms.keys())[0]
    forms[name].write(b"0 0 m 9 9 l S")


@pytest.mark.parametrize(
    "change",
    [draw_on(0), draw_on(9), another_buyer, swap, one_less, last_gone, one_more, other_picture],
    ids=["cover", "page 10", "buyer", "swapped", "less", "last gone", "more", "form"],
)
def test_change_is_noticed(tmp_path: Path, change: Change) -> None:
    assert not checked(tmp_path, changed(sold_copy(), change)).whole


def test_changed_page_is_named(tmp_path: Path) -> None:
    found = checked(tmp_path, changed(sold_copy(), draw_on(9)))
    assert found.changes == PageChanges(changed=(10,))


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (one_less, PageChanges(missing=(4,))),
        (last_gone, PageChanges(missing=(-1,))),
        (swap, PageChanges(moved=(8,))),
    ],
    ids=["less", "last gone", "swapped"],
)
def test_only_the_page_that_went_is_named(
    tmp_path: Path, change: Change, told: PageChanges
) -> None:
    found = checked(tmp_path, changed(sold_copy(), change))
    last = len(pypdf.PdfReader(io.BytesIO(sold_copy())).pages)
    missing = tuple(last if page == -1 else page for page in told.missing)
    assert found.changes == replace(told, missing=missing)


@given(st.lists(st.text("abc", min_size=1, max_size=2), max_size=12))
def test_pages_that_are_alike_have_no_changes(pages: list[str]) -> None:
    assert page_changes(pages, pages).none


@given(st.permutations(list("abcdefg")), st.sets(st.sampled_from("abcdefg")))
def test_every_page_is_accounted_for(order: list[str], kept: set[str]) -> None:
    """What was printed is found, changed, moved or missing; what is found was printed or added."""
    printed = list("abcdefg")
    found = [page for page in order if page in kept]
    told = page_changes(printed, found)
    gone = {printed[i - 1] for i in told.missing}
    assert len(printed) - len(told.missing) == len(found) - len(told.added)
    if not told.changed:
        assert gone == set(printed) - kept


def sealed(data: bytes, copy: SoldCopy) -> bytes:
    """A file sealed again by somebody who has no key."""
    return changed(data, lambda pdf: seal(pdf, copy))


def test_sealing_changed_pages_again_does_not_give_another_name(tmp_path: Path) -> None:
    """Whoever seals the pages again under another name is betrayed by what is printed."""
    copy = replace(copy_of(sold_book(), keyed=False), buyer="Somebody Else")
    found = checked(tmp_path, sealed(sold_copy(), copy))
    assert found.serial_holds
    assert found.seal_holds
    assert len(found.changes.unmarked) == found.pages
    assert not found.whole


def test_a_copy_without_a_key_is_said_to_be_whole_and_no_more(tmp_path: Path) -> None:
    """Anybody can change such a copy and seal it anew; what is said of one is true of the other."""
    anew = sealed(changed(sold_copy(), draw_on(9)), copy_of(sold_book(), keyed=False))
    told = []
    for data in (sold_copy(), anew):
        found = checked(tmp_path, data)
        assert found.verdict is Verdict.WHOLE
        told.append(verified_lines(found, Voice()))
    assert told[0] == told[1]
    assert told[0][0] == "Whole."
    assert "anybody with buildplan can change such a file and seal it anew" in told[0][1]
    assert not any("good." in line.lower() or "this proves" in line.lower() for line in told[0])


def test_key_is_needed_to_seal_and_to_check(tmp_path: Path) -> None:
    key = b"invented, for this test only"
    data = print_booklet(sold_book(), key)
    assert checked(tmp_path, data, key).verdict is Verdict.GOOD
    unjudged = checked(tmp_path, data)
    assert unjudged.verdict is Verdict.NEEDS_KEY
    assert "NOT GOOD" not in "\n".join(verified_lines(unjudged, Voice()))
    # what is plainly wrong needs no key
    assert checked(tmp_path, changed(data, one_less)).verdict is Verdict.NOT_GOOD
    with_another = checked(tmp_path, data, b"another key")
    assert with_another.verdict is Verdict.NOT_GOOD
    assert "did not seal this file" in verified_lines(with_another, Voice())[0]
    spoilt = checked(tmp_path, changed(data, one_less), b"another key")
    assert "not the file that was printed" in verified_lines(spoilt, Voice())[0]
    # a forger without the key cannot seal a changed page again
    forged = sealed(changed(data, draw_on(9)), copy_of(sold_book(), keyed=True))
    assert not checked(tmp_path, forged, key).whole


def test_file_without_a_serial_is_told(tmp_path: Path) -> None:
    def bare(pdf: pikepdf.Pdf) -> None:
        del pdf.Root.Metadata

    with pytest.raises(NoSerialError):
        checked(tmp_path, changed(sold_copy(), bare))
