"""Sold companions: the copy, its serial and its seal in the page, and how they are checked.

The seal binds what the copy is to the digest of the page without the block that holds it. What a
check proves and does not prove is the same as of a printed copy (`copies/serial.py`).
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Sequence
from dataclasses import asdict, replace
from pathlib import Path

from buildplan.booklet.common.book import Book
from buildplan.booklet.editions import copy_of
from buildplan.business.copies.serial import (
    NoSerialError,
    SoldCopy,
    Stored,
    seal_holds,
    seal_of,
    serial_of,
)
from buildplan.business.copies.verifying import DamagedFileError, PageChanges, Verified
from buildplan.language.voice import ENGLISH, Voice
from buildplan.screen.page import DATA_START, companion, script_safe
from buildplan.source.bounded import bytes_within

START, END = '<script type="application/json" id="copy">', "</script>"
BLOCK = re.compile(re.escape(START) + r"([^<]*)" + re.escape(END))
MOST_BYTES = 256 * 1024 * 1024
ON_SCREEN = "screen"  # where a printed copy names its paper


def sold_companion(
    book: Book, voices: Sequence[Voice], language: str = ENGLISH, key: bytes = b""
) -> str:
    """The companion of a sale edition, with its serial on it and sealed. Same input, same text."""
    copy = replace(copy_of(book, keyed=bool(key)), paper=ON_SCREEN, language=language)
    serial = serial_of(copy, key)
    page = companion(replace(book, serial=serial), voices, language)
    seal = seal_of(copy, serial, [_digest(page)], key)
    told = script_safe({"copy": asdict(copy), "serial": serial, "seal": seal})
    return page.replace("</body>", f"{START}{told}{END}</body>", 1)


def verify_companion(file: Path, key: bytes = b"") -> Verified:
    """Check a companion. Raises DamagedFileError where it is none, NoSerialError where it carries
    no serial, and OSError."""
    page = bytes_within(file, MOST_BYTES).decode("utf-8", errors="replace")
    stored = _stored(page)
    bare = BLOCK.sub("", page, count=1)
    used = key if stored.copy.keyed else b""
    holds = seal_holds(replace(stored, pages=(_digest(bare),)), used)
    judged = bool(key) or not stored.copy.keyed  # else nothing can be said of the page
    changed = (1,) if judged and not holds else ()
    marked = script_safe({"serial": stored.serial, "buyer": stored.copy.buyer}) in bare
    return Verified(
        copy=stored.copy,
        serial=stored.serial,
        pages=1,
        serial_holds=serial_of(stored.copy, used) == stored.serial,
        seal_holds=holds,
        changes=PageChanges(changed=changed, unmarked=() if marked else (1,)),
        key_given=bool(key),
    )


def _stored(page: str) -> Stored:
    block = BLOCK.search(page)
    if block is None:
        raise NoSerialError if DATA_START in page else DamagedFileError
    try:
        told = json.loads(block[1])
        copy = SoldCopy(**told["copy"])
        stored = Stored(copy, str(told["serial"]), (), str(told["seal"]))
    except (KeyError, TypeError, ValueError):
        raise NoSerialError from None
    if not copy.well_formed:
        raise NoSerialError
    return stored


def _digest(page: str) -> str:
    return hashlib.sha256(page.encode()).hexdigest()
