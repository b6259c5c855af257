"""The serial of a sold copy, the seal on its pages, and how both are checked.

The serial is made from what the copy is (design, edition, buyer, brand, paper, units, language),
so the same copy always has the same serial; it is printed on every page. The seal binds it to
the pages: a digest of each page and of all of them together stands in the file's metadata.
Digests are SHA-256 (FIPS 180-4), keyed by HMAC (RFC 2104).

What a good check proves: no page has been changed, added, taken out or moved since the file
was printed, and the fields, the serial and the name on the pages belong together. With the
seller's own key it also proves that somebody with that key made the file. Without a key anybody
with this program could have made it; and no check shows who passed a copy on.
"""

from __future__ import annotations

import base64
import hashlib
import hmac
import json
from collections.abc import Collection, Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import TypeAlias

import pikepdf
from pikepdf.models.metadata import PdfMetadata

from buildplan.design.model import Design

NAMESPACE, PREFIX = "urn:buildplan:copy:1/", "bpcopy"
FORMAT = 2
SERIAL_LETTERS = 15
GROUP = 4
ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
# The number that a page was printed with: a key of our own in its dictionary (ISO 32000-1,
# annex E).
NUMBER = "/BPLN_Number"
# What places a page in its document, and says nothing of what is on it.
PLACING = frozenset({"/Parent", "/P", "/StructParent", "/StructParents", "/Tabs"})
# An object's name in its file: number and generation; an object within another has none.
ObjectName: TypeAlias = tuple[int, int]
UNNAMED = (0, 0)
HOW_STORED = frozenset({"/Length", "/Filter", "/DecodeParms"})

PdfMetadata.register_xml_namespace(NAMESPACE, PREFIX)


@dataclass(frozen=True)
class SoldCopy:
    """What a sold copy is. `design` is the digest of the design as it was read."""

    piece: str
    design: str
    edition: str
    buyer: str
    brand: str
    paper: str
    units: str
    language: str
    keyed: bool
    format: int = FORMAT


def design_digest(design: Design) -> str:
    """The digest of everything a design file says, however it is laid out."""
    return _sha(_canonical(design.model_dump(mode="json")))


def serial_of(copy: SoldCopy, key: bytes = b"") -> str:
    """The copy's serial: fifteen letters and digits and a check character, in fours."""
    digest = hmac.new(key, _canonical(asdict(copy)), hashlib.sha256).digest()
    letters = base64.b32encode(digest).decode("ascii")[:SERIAL_LETTERS]
    whole = letters + check_character(letters)
    return "-".join(whole[i : i + GROUP] for i in range(0, len(whole), GROUP))


def check_character(letters: str) -> str:
    """The check character of ISO/IEC 7064, MOD 37,36: it catches every single wrong character
    and nearly every two that changed places."""
    modulus = len(ALPHABET)
    check = modulus
    for letter in letters:
        check = (check + ALPHABET.index(letter)) % modulus or modulus
        check = check * 2 % (modulus + 1)
    return ALPHABET[(1 - check) % modulus]


def seal(
    pdf: pikepdf.Pdf,
    copy: SoldCopy,
    key: bytes = b"",
    known: Mapping[ObjectName, str] | None = None,
) -> None:
    """Put copy, serial and seal into the metadata of an open file, whose pages stay as they are
    from now on. Digests of its objects that are `known` are taken as they are."""
    number_pages(pdf)
    pages = page_digests(pdf, known)
    serial = serial_of(copy, key)
    with pdf.open_metadata(set_pikepdf_as_editor=False) as meta:
        meta[f"{PREFIX}:fields"] = _canonical(asdict(copy)).decode("utf-8")
        meta[f"{PREFIX}:serial"] = serial
        meta[f"{PREFIX}:pages"] = " ".join(pages)
        meta[f"{PREFIX}:seal"] = seal_of(copy, serial, pages, key)


@dataclass(frozen=True)
class Stored:
    """What a file's metadata says of its copy."""

    copy: SoldCopy
    serial: str
    pages: tuple[str, ...]
    seal: str


class NoSerialError(Exception):
    """The file carries no copy, serial and seal that could be checked."""


def stored_in(pdf: pikepdf.Pdf) -> Stored:
    """Read the metadata of a file. Raises NoSerialError where it is not there or broken."""
    with pdf.open_metadata(set_pikepdf_as_editor=False, update_docinfo=False) as meta:
        try:
            fields = json.loads(str(meta[f"{PREFIX}:fields"]))
            copy = SoldCopy(**fields)
            serial, seal = str(meta[f"{PREFIX}:serial"]), str(meta[f"{PREFIX}:seal"])
            pages = tuple(str(meta[f"{PREFIX}:pages"]).split())
        except (KeyError, TypeError, ValueError):
            raise NoSerialError from None
    if copy.format != FORMAT:
        raise NoSerialError
    return Stored(copy, serial, pages, seal)


def seal_holds(stored: Stored, key: bytes = b"") -> bool:
    """Whether the list of pages and the fields are those that were sealed."""
    wanted = seal_of(stored.copy, stored.serial, stored.pages, key)
    return hmac.compare_digest(wanted, stored.seal)


def seal_of(copy: SoldCopy, serial: str, pages: Sequence[str], key: bytes) -> str:
    """The seal of a copy: binds its fields and its serial to the digests of its pages."""
    told = _canonical({"copy": asdict(copy), "serial": serial, "pages": list(pages)})
    return hmac.new(key, told, hashlib.sha256).hexdigest()


def _canonical(data: Mapping[str, object]) -> bytes:
    return json.dumps(data, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()


def _sha(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


# --- pages ---------------------------------------------------------------------------------


def number_pages(pdf: pikepdf.Pdf) -> None:
    """Give each page the number that it is printed with."""
    for number, page in enumerate(pdf.pages, start=1):
        page.obj[NUMBER] = number


def page_digests(pdf: pikepdf.Pdf, known: Mapping[ObjectName, str] | None = None) -> list[str]:
    """A digest of each page: all that is drawn on it, its size, and where its links lead.

    It does not change when a file is merely stored in another way (packed, renumbered), nor when
    other pages go or come: a link leads to a page by the number that it was printed with.
    """
    hasher = _Hasher(known or {})
    return [hasher.page(page.obj)[:32] for page in pdf.pages]


def lasting_digests(pdf: pikepdf.Pdf, changing: Collection[ObjectName]) -> dict[ObjectName, str]:
    """The digests of an open file's objects that stay the same when those named `changing` get
    other content; its pages have been numbered."""
    hasher = _Hasher({}, frozenset(changing))
    for page in pdf.pages:
        hasher.page(page.obj)
    return hasher.lasting


class _Hasher:
    """Digests of PDF objects; shared ones are worked out once.

    It keeps apart which of them hang on an object of those that are `changing`.
    """

    def __init__(
        self, known: Mapping[ObjectName, str], changing: frozenset[ObjectName] = frozenset()
    ) -> None:
        self._known = dict(known)
        self._open: set[ObjectName] = set()
        self._changing = set(changing)

    @property
    def lasting(self) -> dict[ObjectName, str]:
        """The digests that hang on nothing that changes."""
        return {name: told for name, told in self._known.items() if name not in self._changing}

    def page(self, page: pikepdf.Object) -> str:
        parts = [page.get("/Contents")]
        if isinstance(parts[0], pikepdf.Array):
            parts = list(parts[0])
        content = self._content([part for part in parts if part is not None])
        rest = {
            key: self.digest(value)
            for key, value in page.items()
            if key not in PLACING and key != "/Contents"
        }
        return _sha(_canonical({"content": content, "rest": rest}))

    def _content(self, parts: Sequence[pikepdf.Object]) -> str:
        name = parts[0].objgen if len(parts) == 1 else UNNAMED
        if name == UNNAMED:
            return _sha(b"\n".join(part.read_bytes() for part in parts))
        if name not in self._known:
            self._known[name] = _sha(parts[0].read_bytes())
        return self._known[name]

    def digest(self, thing: object) -> str:
        """The digest of any object."""
        if not isinstance(thing, pikepdf.Object):
            return _sha(repr(_plain(thing)).encode())
        name = thing.objgen
        if isinstance(thing, pikepdf.Dictionary) and thing.get("/Type") == pikepdf.Name.Page:
            return f"page {thing.get(NUMBER)}"
        if name == UNNAMED:
            return self._worked_out(thing)
        if name in self._open:
            return "round again"
        if name not in self._known:
            self._open.add(name)
            self._known[name] = self._worked_out(thing)
            self._open.discard(name)
        if name in self._changing:
            self._changing |= self._open
        return self._known[name]

    def _worked_out(self, thing: pikepdf.Object) -> str:
        if isinstance(thing, pikepdf.Array):
            return _sha("".join(self.digest(kid) for kid in list(thing)).encode())
        if isinstance(thing, pikepdf.Stream):
            try:
                content = thing.read_bytes()
            except pikepdf.PdfError:  # a picture stored in a way of its own
                content = thing.read_raw_bytes()
            keys = self._keys(thing, HOW_STORED)
            return _sha(_canonical({"content": _sha(content), "keys": keys}))
        if isinstance(thing, pikepdf.Dictionary):
            return _sha(_canonical(self._keys(thing, frozenset())))
        return _sha(repr(_plain(thing)).encode())

    def _keys(self, thing: pikepdf.Object, left_out: frozenset[str]) -> dict[str, str]:
        return {
            key: self.digest(value)
            for key, value in thing.items()
            if key not in PLACING and key not in left_out
        }


def _plain(thing: object) -> object:
    """A number, name or text in one way of writing it."""
    if isinstance(thing, bool) or thing is None:
        return thing
    if isinstance(thing, pikepdf.Object):
        return (
            ("bytes", bytes(thing)) if isinstance(thing, pikepdf.String) else ("name", str(thing))
        )
    return ("number", format(float(str(thing)), ".6g"))
