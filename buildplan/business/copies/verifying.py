"""Checking a sold copy: is every page as it was printed, and does the serial belong to it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pikepdf
import pypdfium2

from buildplan.business.copies.serial import Copy, page_digests, seal_holds, serial_of, stored_in
from buildplan.language.speaking import mark, say, whole

PROVES = mark(
    "This proves that no page was changed, added, removed or moved since the file was printed, "
    "and that serial, buyer and plan belong together."
)
KEYED = mark("The seal was made with the key that you gave.")
UNKEYED = mark(
    "It was sealed without a seller's key, so anybody with buildplan could have made such a file."
)
NOT_PROVED = mark("It does not prove who has read, copied or passed on the file.")
NAME_WIDTH = 10


@dataclass(frozen=True)
class Verified:
    """What the check of a file found. Pages are counted from 1."""

    copy: Copy
    serial: str
    pages: int
    serial_holds: bool
    seal_holds: bool
    changed_pages: tuple[int, ...]
    unmarked_pages: tuple[int, ...]
    pages_expected: int

    @property
    def good(self) -> bool:
        """Whether everything holds."""
        return (
            self.serial_holds
            and self.seal_holds
            and not self.changed_pages
            and not self.unmarked_pages
            and self.pages == self.pages_expected
        )


def verify(path: Path, key: bytes = b"") -> Verified:
    """Check a printed file. Raises NoSerialError when it has none, and pikepdf.PdfError when it
    is no readable PDF."""
    with pikepdf.open(path) as pdf:
        stored = stored_in(pdf)
        found = page_digests(pdf)
    pairs = zip(found, stored.pages, strict=False)
    changed = [i for i, (here, sealed) in enumerate(pairs, start=1) if here != sealed]
    changed += range(len(stored.pages) + 1, len(found) + 1)
    texts = _texts(path)
    wanted = (stored.serial, stored.copy.buyer)
    unmarked = [
        i for i, text in enumerate(texts, start=1) if not all(_squeezed(w) in text for w in wanted)
    ]
    return Verified(
        copy=stored.copy,
        serial=stored.serial,
        pages=len(found),
        serial_holds=serial_of(stored.copy, key) == stored.serial,
        seal_holds=seal_holds(stored, key),
        changed_pages=tuple(changed),
        unmarked_pages=tuple(unmarked),
        pages_expected=len(stored.pages),
    )


def _texts(path: Path) -> list[str]:
    document = pypdfium2.PdfDocument(path)
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
    # where words are broken or spaced on paper says nothing
    return "".join(text.split()).replace("\u00ad", "").replace("\ufffe", "-")


def verified_lines(found: Verified) -> list[str]:
    """What was found, in words."""
    copy = found.copy
    # only copies of the sale edition have a serial
    plan = say("{piece}, sale edition", piece=copy.piece)
    named = (
        (say("Plan"), ", ".join(filter(None, (plan, copy.brand)))),
        (say("For"), copy.buyer or say("nobody named")),
        (say("Serial"), f"{found.serial}: {_fits(found.serial_holds)}"),
        (say("Seal"), _fits(found.seal_holds)),
        (say("Pages"), f"{whole(found.pages)}: {_pages_words(found)}"),
    )
    wide = max(NAME_WIDTH, *(len(name) + 2 for name, _ in named))
    lines = [*(f"{name:<{wide}}{words}" for name, words in named), ""]
    if not found.good:
        if copy.keyed and not found.serial_holds:
            lines.append(say("It was sealed with a seller's key: check it with --key."))
        return [*lines, say("NOT GOOD: this is not the file that was printed.")]
    return [
        *lines,
        say("Good."),
        say(PROVES),
        say(KEYED if copy.keyed else UNKEYED),
        say(NOT_PROVED),
    ]


def _fits(holds: bool) -> str:
    return say("good") if holds else say("DOES NOT FIT")


def _pages_words(found: Verified) -> str:
    wrong = []
    if found.pages != found.pages_expected:
        wrong.append(say("{number} WERE PRINTED", number=found.pages_expected))
    if found.changed_pages:
        wrong.append(say("CHANGED: {pages}", pages=_listed(found.changed_pages)))
    if found.unmarked_pages:
        pages = _listed(found.unmarked_pages)
        wrong.append(say("without the serial or the name: {pages}", pages=pages))
    return "; ".join(wrong) or say("none changed")


def _listed(numbers: tuple[int, ...]) -> str:
    return ", ".join(map(str, numbers))
