"""The serial of a sold copy, the seal on its pages, and how both are checked.

The serial is made from what the copy is (design, edition, buyer, brand, paper, units, language),
so the same copy always has the same serial; it is printed on every page. The seal binds it to
the pages: a digest of each page, and of each part of the file beside its pages (bookmarks, words
that are read aloud, attachments, scripts), stands in the file's metadata.
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
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field

import pikepdf
from pikepdf.models.metadata import PdfMetadata

from buildplan.business.copies.digests import ObjectName, number_pages, page_digests, part_digests
from buildplan.design.model import Design

NAMESPACE, PREFIX = "urn:buildplan:copy:1/", "bpcopy"
FORMAT = 3
SERIAL_LETTERS = 15
GROUP = 4
ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
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

    @property
    def well_formed(self) -> bool:
        """Whether all of it is of its kind, as what a file says of itself need not be."""
        told = asdict(self)
        keyed, made = told.pop("keyed"), told.pop("format")
        texts = all(isinstance(one, str) for one in told.values())
        return texts and isinstance(keyed, bool) and made == FORMAT


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
    pages, parts = page_digests(pdf, known), part_digests(pdf, known)
    serial = serial_of(copy, key)
    with pdf.open_metadata(set_pikepdf_as_editor=False) as meta:
        meta[f"{PREFIX}:fields"] = _canonical(asdict(copy)).decode("utf-8")
        meta[f"{PREFIX}:serial"] = serial
        meta[f"{PREFIX}:pages"] = " ".join(pages)
        meta[f"{PREFIX}:parts"] = _canonical(parts).decode("utf-8")
        meta[f"{PREFIX}:seal"] = seal_of(copy, serial, pages, key, parts)


@dataclass(frozen=True)
class Stored:
    """What a file's metadata says of its copy."""

    copy: SoldCopy
    serial: str
    pages: tuple[str, ...]
    seal: str
    parts: Mapping[str, str] = field(default_factory=dict)


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
            parts = {
                str(name): str(one) for name, one in json.loads(meta[f"{PREFIX}:parts"]).items()
            }
        except (AttributeError, KeyError, TypeError, ValueError):
            raise NoSerialError from None
    if not copy.well_formed:
        raise NoSerialError
    return Stored(copy, serial, pages, seal, parts)


def seal_holds(stored: Stored, key: bytes = b"") -> bool:
    """Whether the list of pages and the fields are those that were sealed."""
    wanted = seal_of(stored.copy, stored.serial, stored.pages, key, stored.parts)
    return hmac.compare_digest(wanted.encode(), stored.seal.encode())


def seal_of(
    copy: SoldCopy,
    serial: str,
    pages: Sequence[str],
    key: bytes,
    parts: Mapping[str, str] | None = None,
) -> str:
    """The seal of a copy: binds its fields and its serial to the digests of its pages and of what
    is beside them."""
    told = {
        "copy": asdict(copy),
        "serial": serial,
        "pages": list(pages),
        "parts": dict(parts or {}),
    }
    return hmac.new(key, _canonical(told), hashlib.sha256).hexdigest()


def _canonical(data: Mapping[str, object]) -> bytes:
    return json.dumps(data, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()


def _sha(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
