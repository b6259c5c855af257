"""Who a plan is sold to: one name, or a list of them from a CSV file."""

from __future__ import annotations

import csv
import hashlib
import io
import re
import unicodedata
from dataclasses import dataclass
from pathlib import Path

from buildplan.language.messages import Message, message
from buildplan.language.shown import sign_name
from buildplan.language.told import ToldError
from buildplan.source.bounded import bytes_within

LONGEST_NAME = 80
LONGEST_SLUG = 40
OWN_DIGITS = 8
MOST_BUYERS = 10_000
MOST_BYTES = 4 * 1024 * 1024
COLUMN = "name"
JOINERS = "\u200c\u200d"
VIRAMA = 9  # its combining class (Unicode Standard, 4.3)


@dataclass(frozen=True)
class Buyer:
    """A buyer's name, and what is added to the names of their files."""

    name: str
    slug: str

    def file_stem(self, stem: str) -> str:
        """What a file of this buyer's copy is called, where copies are called `stem`."""
        return f"{stem}-{self.slug}" if self.slug else stem


@dataclass(frozen=True)
class BadBuyerRow:
    """A row of the list that no copy can be made from: its line in the file, and why."""

    line: int
    why: Message


class BuyersUnreadableError(ToldError):
    """The list cannot be read at all; `told` says why."""


def name_problem(name: str) -> Message | None:
    """What is wrong with a buyer's name, or None."""
    if not name:
        return message("no name")
    if len(name) > LONGEST_NAME:
        return message("the name is longer than {most} letters", most=LONGEST_NAME)
    return unseen_problem(name)


def unseen_problem(text: str) -> Message | None:
    """Which sign of a line cannot be seen, so that two lines that look alike could differ."""
    for sign, before, after in zip(text, f" {text}", f"{text[1:]} ", strict=False):
        if _is_unseen(sign, before, after):
            return message(
                "{words} has {sign} in it, which cannot be seen", words=text, sign=sign_name(sign)
            )
    return None


def _is_unseen(sign: str, before: str, after: str) -> bool:
    """Whether a sign cannot be seen. The joiners are, by what they do to letters that join (RFC
    5892, A.1 and A.2, in short): after a virama, or between Arabic letters."""
    if sign in JOINERS:
        between = [unicodedata.bidirectional(one) == "AL" for one in (before, after)]
        return unicodedata.combining(before) != VIRAMA and not all(between)
    return unicodedata.category(sign) in ("Cc", "Cf", "Cs", "Zl", "Zp")


def tidy(name: str) -> str:
    """A name in one way of writing it: composed letters (NFC), single spaces."""
    return " ".join(unicodedata.normalize("NFC", name).split(" ")).strip()


def slug(name: str) -> str:
    """A name as part of a file name on any system: small letters a to z, digits, hyphens. What no
    such letters stand for, and what is too long, is told apart by digits of its SHA-256 (FIPS
    180-4)."""
    apart = unicodedata.normalize("NFKD", name)
    bare = apart.encode("ascii", "ignore").decode().lower()
    whole = re.sub(r"[^a-z0-9]+", "-", bare).strip("-")
    found = whole[:LONGEST_SLUG].strip("-")
    lost = any(not c.isascii() and unicodedata.category(c) != "Mn" for c in apart)
    if found == whole != "" and not lost:
        return found
    # two whose other letters differ are two
    told = hashlib.sha256((tidy(name) if lost or not whole else whole).encode()).hexdigest()
    kept = whole[: LONGEST_SLUG - OWN_DIGITS].strip("-") if len(whole) > LONGEST_SLUG else found
    return f"{kept or 'buyer'}-{told[:OWN_DIGITS]}"


def read_buyers(path: Path) -> tuple[tuple[Buyer, ...], tuple[BadBuyerRow, ...]]:
    """The buyers of a CSV file with a column `name`, and the rows that are no good.

    Raises as `buyers_in`, and OSError.
    """
    try:
        text = bytes_within(path, MOST_BYTES).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise BuyersUnreadableError(message("it is not UTF-8 text; save it as CSV UTF-8")) from None
    return buyers_in(text)


def buyers_in(text: str) -> tuple[tuple[Buyer, ...], tuple[BadBuyerRow, ...]]:
    """The buyers of a table (CSV) with a column `name`, and the rows that are no good.

    A name that comes again is a bad row: its copy would be the same file. Raises
    BuyersUnreadableError when the text is no such list.
    """
    rows = csv.reader(io.StringIO(text, newline=""), dialect=_dialect(text), strict=True)
    try:
        head = [cell.strip().lower() for cell in next(rows, [])]
        if head.count(COLUMN) != 1:
            raise BuyersUnreadableError(
                message("its first line must have one column called {name}", name=COLUMN)
            )
        at = head.index(COLUMN)
        return _sorted_out([(rows.line_num, tidy(r[at]) if at < len(r) else "") for r in rows if r])
    except csv.Error:
        raise BuyersUnreadableError(
            message(
                "its line {line} is not written as CSV is: is a quotation mark closed?",
                line=str(rows.line_num),
            )
        ) from None


def _dialect(text: str) -> type[csv.Dialect]:
    first = text.split("\n", 1)[0]

    class _Found(csv.excel):
        # spreadsheets of some countries write semicolons
        delimiter = max(",;\t", key=first.count)

    return _Found


def _sorted_out(rows: list[tuple[int, str]]) -> tuple[tuple[Buyer, ...], tuple[BadBuyerRow, ...]]:
    if len(rows) > MOST_BUYERS:
        raise BuyersUnreadableError(
            message("it has more than {count} rows; share them out", count=MOST_BUYERS)
        )
    buyers: list[Buyer] = []
    bad: list[BadBuyerRow] = []
    line_of: dict[str, int] = {}
    taken: set[str] = set()
    for line, name in rows:
        problem = name_problem(name)
        if problem is None and name in line_of:
            problem = message("{name} stands in line {line} already", name=name, line=line_of[name])
        if problem is not None:
            bad.append(BadBuyerRow(line, problem))
            continue
        line_of[name] = line
        buyers.append(Buyer(name, _unique(slug(name), taken)))
    return tuple(buyers), tuple(bad)


def _unique(wanted: str, taken: set[str]) -> str:
    found, number = wanted, 1
    while found in taken:
        number += 1
        found = f"{wanted}-{number}"
    taken.add(found)
    return found
