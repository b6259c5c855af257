"""Checking a sold copy: is every page as it was printed, and does the serial belong to it."""

from __future__ import annotations

import io
import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, replace
from difflib import SequenceMatcher
from enum import StrEnum
from pathlib import Path

import pikepdf
import pypdfium2

from buildplan.business.copies.digests import FORM, INFO, OUTLINES, page_digests, part_digests
from buildplan.business.copies.serial import (
    NoSerialError,
    SoldCopy,
    seal_holds,
    serial_of,
    stored_in,
)
from buildplan.business.copies.signing import Signature, signatures_in
from buildplan.language.messages import mark
from buildplan.language.shown import shown
from buildplan.language.voice import Voice
from buildplan.source.bounded import bytes_within

PROVES = mark(
    "This proves that no page was changed, added, removed or moved since the file was printed, "
    "and that serial, buyer and plan belong together."
)
KEYED = mark("The seal was made with the key that you gave.")
UNKEYED = mark(
    "All pages are as the file's own list has them, and serial, buyer and plan belong together. It "
    "was sealed without a seller's key: this proves nothing, for anybody with buildplan could have "
    "made such a file."
)
OTHER_KEY = mark(
    "It was sealed without a key, so whether it is yours cannot be told: the key that you gave "
    "says nothing of it, and anybody with buildplan could have made such a file."
)
NOT_PROVED = mark("It does not prove who has read, copied or passed on the file.")
NOT_JUDGED = mark(
    "It was sealed with a seller's key, and without that key it cannot be judged: give the key "
    "with --key. All its pages are there as its own list has them."
)
NAME_WIDTH = 10
MOST_BYTES = 256 * 1024 * 1024
# parts of a file beside its pages, by their keys in its catalogue (ISO 32000-1, 7.7.2)
PARTS = {
    OUTLINES: mark("bookmarks"),
    INFO: mark("title or author"),
    FORM: mark("a form"),
    "/Names": mark("attachments, scripts or places that links lead to"),
    "/StructTreeRoot": mark("the words that are read aloud"),
    "/OCProperties": mark("layers"),
    "/OpenAction": mark("what happens when it is opened"),
    "/AA": mark("what happens when it is opened"),
}
BETWEEN_WORDS = r"[\s()\[\]{}<>.,:;'\"&/+-]+"
OTHER_PART = mark("how it is shown or read aloud")


class Verdict(StrEnum):
    """What a check comes to."""

    GOOD = "good"
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
        """Good if everything holds; what is plainly wrong is so without a key too."""
        broken = not all(signature.holds for signature in self.signatures)
        if not self.changes.none or self.parts or broken:
            return Verdict.NOT_GOOD
        if self.copy.keyed and not self.key_given:
            return Verdict.NEEDS_KEY
        if not (self.serial_holds and self.seal_holds):
            return Verdict.NOT_GOOD
        return Verdict.KEYLESS if self.key_given and not self.copy.keyed else Verdict.GOOD

    @property
    def good(self) -> bool:
        """Whether everything holds."""
        return self.verdict is Verdict.GOOD


class DamagedFileError(Exception):
    """A file that is no PDF, or one of which parts cannot be read."""


def verify(path: Path, key: bytes = b"") -> Verified:
    """Check a printed file. Raises NoSerialError when it has none, DamagedFileError when it is no
    PDF that can be read, and OSError."""
    data = bytes_within(path, MOST_BYTES)
    try:
        return _verified(data, key)
    except NoSerialError:
        raise
    except Exception as error:  # the readers of PDF raise errors of many kinds
        raise DamagedFileError from error


def _verified(data: bytes, key: bytes) -> Verified:
    with pikepdf.open(io.BytesIO(data)) as pdf:
        stored = stored_in(pdf)
        found, parts = page_digests(pdf), part_digests(pdf)
        signed = FORM in pdf.Root
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
        parts=tuple(
            sorted(
                one for one in {**stored.parts, **parts} if stored.parts.get(one) != parts.get(one)
            )
        ),
        signatures=signatures_in(data) if signed else (),
    )


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


def verified_lines(found: Verified, voice: Voice) -> list[str]:
    """What was found, in words."""
    copy, judged = found.copy, found.key_given or not found.copy.keyed
    # only copies of the sale edition have a serial
    plan = voice.say("{piece}, sale edition", piece=copy.piece)
    serial = _fits(found.serial_holds, judged, voice)
    named = [
        (voice.say("Plan"), ", ".join(filter(None, (shown(plan), shown(copy.brand))))),
        (voice.say("For"), shown(copy.buyer) or voice.say("nobody named")),
        (voice.say("Serial"), f"{shown(found.serial)}: {serial}"),
        (voice.say("Seal"), _fits(found.seal_holds, judged, voice)),
        (voice.say("Pages"), f"{voice.whole(found.pages)}: {_pages_words(found.changes, voice)}"),
    ]
    if found.parts:
        named.append((voice.say("Beside"), _parts_words(found.parts, voice)))
    named += [(voice.say("Signed"), _signature_words(one, voice)) for one in found.signatures]
    wide = max(NAME_WIDTH, *(len(name) + 2 for name, _ in named))
    lines = [*(f"{name:<{wide}}{words}" for name, words in named), ""]
    match found.verdict:
        case Verdict.GOOD:
            said = (PROVES, KEYED, NOT_PROVED) if copy.keyed else (UNKEYED,)
            return [*lines, voice.say("Good."), *(voice.say(one) for one in said)]
        case Verdict.KEYLESS:
            return [*lines, voice.say(OTHER_KEY)]
        case Verdict.NEEDS_KEY:
            return [*lines, voice.say(NOT_JUDGED)]
    return [*lines, voice.say("NOT GOOD: this is not the file that was printed.")]


def _fits(holds: bool, judged: bool, voice: Voice) -> str:
    if not judged:
        return voice.say("cannot be judged without the key")
    return voice.say("good") if holds else voice.say("DOES NOT FIT")


def _pages_words(changes: PageChanges, voice: Voice) -> str:
    said = (
        (changes.missing, mark("TAKEN OUT, as numbered in print: {pages}")),
        (changes.added, mark("ADDED: {pages}")),
        (changes.moved, mark("MOVED: {pages}")),
        (changes.changed, mark("CHANGED: {pages}")),
        (changes.unmarked, mark("without the serial or the name: {pages}")),
    )
    wrong = [voice.say(words, pages=", ".join(map(str, pages))) for pages, words in said if pages]
    return "; ".join(wrong) or voice.say("none changed")


def _parts_words(parts: Sequence[str], voice: Voice) -> str:
    """What is not as it was beside the pages."""
    told = dict.fromkeys(voice.say(PARTS.get(part, OTHER_PART)) for part in parts)
    return voice.say("CHANGED: {pages}", pages=", ".join(told))


def _signature_words(signature: Signature, voice: Voice) -> str:
    if not signature.holds:
        return voice.say("BROKEN: {name}", name=shown(signature.name))
    return voice.say(
        "by {name}, unbroken; ask whether that is the seller", name=shown(signature.name)
    )
