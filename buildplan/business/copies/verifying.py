"""Checking a sold copy: is every page as it was printed, and does the serial belong to it."""

from __future__ import annotations

import io
import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from difflib import SequenceMatcher
from enum import StrEnum
from pathlib import Path

import pikepdf

from buildplan.business.copies.digests import FORM, METADATA, page_digests, part_digests
from buildplan.business.copies.readings import (
    limit_unpacking,
    refuse_endless,
    refuse_mended,
    refuse_two_ways,
)
from buildplan.business.copies.serial import (
    NoSerialError,
    SoldCopy,
    check_character,
    seal_holds,
    serial_of,
    stored_in,
)
from buildplan.business.copies.signing import Signature, signatures_in
from buildplan.source.bounded import bytes_within

MOST_BYTES = 256 * 1024 * 1024
PRINTED_SERIAL = r"[0-9A-Z]{4}(?:-[0-9A-Z]{4}){3}"
BETWEEN_WORDS = r"[\s()\[\]{}<>.,:;'\"&/+-]+"


class Verdict(StrEnum):
    """What a check comes to: good is what the seller's key has sealed, whole what was sealed
    without one and fits together."""

    GOOD = "good"
    WHOLE = "whole"
    NOT_GOOD = "not good"
    NEEDS_KEY = "needs the key"
    KEYLESS = "made without a key"


@dataclass(frozen=True)
class PageChanges:
    """How the pages of a file differ from those that were sealed.

    `changed`, `added`, `moved` and `unmarked` are numbers of pages in the file, `missing` of pages
    as printed; all from 1. An unmarked page does not carry the serial and the buyer's name.
    """

    changed: tuple[int, ...] = ()
    added: tuple[int, ...] = ()
    moved: tuple[int, ...] = ()
    missing: tuple[int, ...] = ()
    unmarked: tuple[int, ...] = ()

    @property
    def none(self) -> bool:
        """Whether all pages are there as they were printed."""
        return self == PageChanges()


@dataclass(frozen=True)
class Verified:
    """What the check of a file found. Without the key of a keyed copy, serial and seal cannot be
    judged, and do not hold. `parts` are those beside the pages that are not as they were sealed, by
    their keys in the file."""

    copy: SoldCopy
    serial: str
    pages: int
    serial_holds: bool
    seal_holds: bool
    changes: PageChanges
    key_given: bool
    parts: tuple[str, ...] = ()
    signatures: tuple[Signature, ...] = ()

    @property
    def verdict(self) -> Verdict:
        """Good or whole if everything holds; what is plainly wrong is so without a key too."""
        broken = not all(signature.holds for signature in self.signatures)
        if not self.changes.none or self.parts or broken:
            return Verdict.NOT_GOOD
        if self.copy.keyed and not self.key_given:
            return Verdict.NEEDS_KEY
        if not (self.serial_holds and self.seal_holds):
            return Verdict.NOT_GOOD
        if self.copy.keyed:
            return Verdict.GOOD
        return Verdict.KEYLESS if self.key_given else Verdict.WHOLE

    @property
    def whole(self) -> bool:
        """Whether everything holds."""
        return self.verdict in (Verdict.GOOD, Verdict.WHOLE)


class LockedFileError(Exception):
    """A file that opens with a password alone."""


class PrintedAnewError(NoSerialError):
    """A file whose pages carry a serial, but that has nothing of what was sealed."""

    def __init__(self, serial: str) -> None:
        super().__init__(serial)
        self.serial = serial


class DamagedFileError(Exception):
    """A file that is no PDF, or one of which parts cannot be read."""


def verify(path: Path, key: bytes = b"") -> Verified:
    """Check a printed file. Raises NoSerialError when it has none (PrintedAnewError when its pages
    have), LockedFileError, DamagedFileError when it is no PDF that can be read, and OSError."""
    data = bytes_within(path, MOST_BYTES)
    try:
        return _verified(data, key)
    except NoSerialError:
        raise
    except pikepdf.PasswordError as error:
        raise LockedFileError from error
    except Exception as error:  # the readers of PDF raise errors of many kinds
        raise DamagedFileError from error


def _verified(data: bytes, key: bytes) -> Verified:
    refuse_two_ways(data)
    limit_unpacking()
    # a file whose table of objects has to be guessed may show each reader something else
    with pikepdf.open(io.BytesIO(data), attempt_recovery=False) as pdf:
        refuse_endless(pdf)
        try:
            stored = stored_in(pdf)
        except NoSerialError:
            _refuse_printed_anew(data)
            raise
        found, parts = page_digests(pdf), part_digests(pdf)
        signed = FORM in pdf.Root
        refuse_mended(pdf)
    wanted = (stored.serial, stored.copy.buyer)
    texts = _texts(data)
    unmarked = {
        i for i, text in enumerate(texts, start=1) if not all(_stands_in(w, text) for w in wanted)
    }
    unmarked |= set(range(len(texts) + 1, len(found) + 1))  # pages that only one reader sees
    used = key if stored.copy.keyed else b""
    return Verified(
        copy=stored.copy,
        serial=stored.serial,
        pages=len(found),
        serial_holds=serial_of(stored.copy, used) == stored.serial,
        seal_holds=seal_holds(stored, used),
        changes=replace(page_changes(stored.pages, found), unmarked=tuple(sorted(unmarked))),
        key_given=bool(key),
        parts=tuple(_changed_parts(stored.parts, parts)),
        signatures=signatures_in(data) if signed else (),
    )


def _refuse_printed_anew(data: bytes) -> None:
    """Raise PrintedAnewError where a page carries a serial."""
    for text in _texts(data):
        for found in filter(_is_serial, re.findall(PRINTED_SERIAL, text)):
            raise PrintedAnewError(found)


def _is_serial(text: str) -> bool:
    letters = text.replace("-", "")
    return check_character(letters[:-1]) == letters[-1]


def _changed_parts(sealed: Mapping[str, str], found: Mapping[str, str]) -> Iterator[str]:
    """Parts that are not as they were sealed; of older copies the metadata is not."""
    for part in sorted({**sealed, **found}):
        unsealed = part == METADATA and part not in sealed
        if sealed.get(part) != found.get(part) and not unsealed:
            yield part


def page_changes(printed: Sequence[str], found: Sequence[str]) -> PageChanges:
    """How pages differ, by their digests: the longest runs that are alike are set against one
    another, so that one page taken out is told as that page and not as all after it."""
    changed: list[int] = []
    added: list[int] = []
    missing: list[int] = []
    matcher = SequenceMatcher(None, list(printed), list(found), autojunk=False)
    for what, first, end, here, there in matcher.get_opcodes():
        if what == "equal":
            continue
        both = min(end - first, there - here)
        changed += range(here + 1, here + both + 1)
        missing += range(first + both + 1, end + 1)
        added += range(here + both + 1, there + 1)
    gone = {printed[i - 1] for i in missing}
    moved = [i for i in added if found[i - 1] in gone]
    come = {found[i - 1] for i in moved}
    return PageChanges(
        changed=tuple(changed),
        added=tuple(i for i in added if i not in moved),
        moved=tuple(moved),
        missing=tuple(i for i in missing if printed[i - 1] not in come),
    )


def _texts(data: bytes) -> list[str]:
    import pypdfium2  # a program of its own to load, and most of this is asked without it

    document = pypdfium2.PdfDocument(data)
    try:
        texts = []
        for number in range(len(document)):
            page = document[number]
            text_page = page.get_textpage()
            texts.append(_squeezed(text_page.get_text_bounded()))
            text_page.close()
            page.close()
        return texts
    finally:
        document.close()


def _squeezed(text: str) -> str:
    # where words are broken or spaced on paper says nothing, nor whether letters are joined
    plain = unicodedata.normalize("NFKC", "".join(text.split()))
    return "".join(c for c in plain if unicodedata.category(c) != "Cf").replace("\ufffe", "-")


def _stands_in(words: str, text: str) -> bool:
    """Whether words are among those of a page. Of what is written from the right, readers of PDF
    put words, brackets and letters with marks in orders of their own: there the letters of each
    word are looked for, side by side. (What was changed is found by the pages' digests.)"""
    bare = _squeezed(words)
    if bare in text:
        return True
    from_right = any(unicodedata.bidirectional(c) in ("R", "AL") for c in bare)
    if not from_right:
        return False
    seen = _letters(text)
    parts = map(_letters, map(_squeezed, re.split(BETWEEN_WORDS, words)))
    return all(
        any(sorted(seen[at : at + len(part)]) == sorted(part) for at in range(len(seen) + 1))
        for part in parts
    )


def _letters(text: str) -> str:
    """Without the marks above and below."""
    apart = unicodedata.normalize("NFKD", text)
    return "".join(c for c in apart if unicodedata.category(c) != "Mn")
