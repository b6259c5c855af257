"""Digests of what a PDF shows and holds, page by page and of each part beside the pages.

They do not change when a file is merely stored in another way (packed, renumbered, linearised,
signed so that nothing is seen of it). References by key are to ISO 32000-1. Digests are SHA-256
(FIPS 180-4).
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import TypeAlias

import pikepdf

from buildplan.business.copies.readings import can_be_unpacked, tree_is_sound
from buildplan.business.copies.shown_metadata import shown_metadata

# The number that a page was printed with: a key of our own in its dictionary (ISO 32000-1,
# annex E).
NUMBER = "/BPLN_Number"
# What leads from a thing to the one that it is part of.
UPWARD = frozenset({"/Parent", "/P"})
# What a page has of its parents where it has none of its own (7.7.3.4).
INHERITED = ("/Resources", "/MediaBox", "/CropBox", "/Rotate")
# An object's name in its file: number and generation; an object within another has none.
ObjectName: TypeAlias = tuple[int, int]
UNNAMED = (0, 0)
HOW_STORED = frozenset({"/Length", "/Filter", "/DecodeParms", "/DL"})
# Parts of the catalogue (7.7.2) that are judged page by page, or say how the file is stored.
NOT_PARTS = frozenset({"/Type", "/Pages", "/Metadata", "/Version", "/Extensions", "/DSS"})
# What of the file's own description (14.3.3) programs write anew; the rest is shown to a reader.
OF_PROGRAMS = frozenset({"/Creator", "/Producer", "/CreationDate", "/ModDate", "/Trapped"})
INFO, OUTLINES, FORM, ANNOTATIONS = "/Info", "/Outlines", "/AcroForm", "/Annots"
METADATA, PAGES = "/Metadata", "/Pages"
# All that the field of a signature that is not seen may have (12.7.4.5, 12.8.1).
OF_SIGNATURE = frozenset(
    ("/Type", "/Subtype", "/FT", "/T", "/V", "/Rect", "/F", "/P", "/AP", "/Lock", "/SV")
)
SHORT = 32  # digits of a digest that are kept: 128 bits


def number_pages(pdf: pikepdf.Pdf) -> None:
    """Give each page the number that it is printed with."""
    for number, page in enumerate(pdf.pages, start=1):
        page.obj[NUMBER] = number


def page_digests(pdf: pikepdf.Pdf, known: Mapping[ObjectName, str] | None = None) -> list[str]:
    """A digest of each page: all that is drawn on it, its size, and where its links lead.

    It does not change when a file is merely stored in another way (packed, renumbered), nor when
    other pages go or come: a link leads to a page by the number that it was printed with.
    """
    hasher = _Hasher(pdf, known or {})
    return [hasher.page(page.obj)[:SHORT] for page in pdf.pages]


def part_digests(pdf: pikepdf.Pdf, known: Mapping[ObjectName, str] | None = None) -> dict[str, str]:
    """A digest of each part of the file beside its pages, by its key in the catalogue, and of its
    title and author."""
    return _parts(pdf, _Hasher(pdf, known or {}))


def _parts(pdf: pikepdf.Pdf, hasher: _Hasher) -> dict[str, str]:
    found = {}
    for key, value in pdf.Root.items():
        if key == OUTLINES:
            told = "\n".join(_bookmarks(value, hasher))
        elif key in NOT_PARTS or (key == FORM and _only_signatures(value)):
            continue
        else:
            told = hasher.digest(value)
        found[key] = _sha(told.encode())[:SHORT]
    info = pdf.trailer.get(INFO)
    if isinstance(info, pikepdf.Dictionary):
        shown = {key: hasher.digest(told) for key, told in info.items() if key not in OF_PROGRAMS}
        found[INFO] = _sha(_canonical(shown))[:SHORT]
    if METADATA in pdf.Root:
        found[METADATA] = _sha(_canonical(shown_metadata(pdf)))[:SHORT]
    if not tree_is_sound(pdf):
        found[PAGES] = ""
    return found


def _bookmarks(outlines: pikepdf.Object, hasher: _Hasher) -> Iterator[str]:
    """What each bookmark says and where it leads, in their order, however they are chained."""
    waiting: list[tuple[int, object]] = [(0, outlines.get("/First"))]
    seen: set[ObjectName] = set()
    chain = {"/First", "/Last", "/Next", "/Prev", "/Count"}
    while waiting:
        depth, item = waiting.pop()
        if not isinstance(item, pikepdf.Dictionary) or item.objgen in seen:
            continue
        seen.add(item.objgen)
        yield f"{depth} {_sha(_canonical(hasher.keys(item, frozenset(chain))))}"
        waiting += [(depth, item.get("/Next")), (depth + 1, item.get("/First"))]


def _only_signatures(form: pikepdf.Object) -> bool:
    """Whether a form has no fields but signatures of which nothing is seen."""
    fields = form.get("/Fields") if isinstance(form, pikepdf.Dictionary) else None
    plain = isinstance(form, pikepdf.Dictionary) and set(form.keys()) <= {"/Fields", "/SigFlags"}
    return plain and isinstance(fields, pikepdf.Array) and all(map(_signature, list(fields)))


def _signature(field: object) -> bool:
    """Whether this is the field of a signature that takes no room on the page and shows nothing.
    What is no widget may be shown whatever room it takes (12.5.6.4)."""
    if not isinstance(field, pikepdf.Dictionary) or field.get("/FT") != pikepdf.Name.Sig:
        return False
    place = [float(number) for number in list(field.get("/Rect", []))]
    widget = field.get("/Subtype") == pikepdf.Name.Widget and place == [0.0] * 4
    alone = "/Subtype" not in field and "/Rect" not in field and "/AP" not in field
    return set(field.keys()) <= OF_SIGNATURE and (widget or alone)


def lasting_digests(pdf: pikepdf.Pdf, changing: Collection[ObjectName]) -> dict[ObjectName, str]:
    """The digests of an open file's objects that stay the same when those named `changing` get
    other content; its pages have been numbered."""
    hasher = _Hasher(pdf, {}, frozenset(changing))
    for page in pdf.pages:
        hasher.page(page.obj)
    _parts(pdf, hasher)
    return hasher.lasting


class _Hasher:
    """Digests of PDF objects; shared ones are worked out once.

    It keeps apart which of them hang on an object of those that are `changing`.
    """

    def __init__(
        self,
        pdf: pikepdf.Pdf,
        known: Mapping[ObjectName, str],
        changing: frozenset[ObjectName] = frozenset(),
    ) -> None:
        self._numbers = {page.obj.objgen: page.obj.get(NUMBER) for page in pdf.pages}
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
        whole = {**dict(_inherited(page)), **dict(page.items())}
        if "/CropBox" in whole and list(whole["/CropBox"]) == list(whole.get("/MediaBox", [])):
            del whole["/CropBox"]
        if whole.get("/Rotate") == 0:
            del whole["/Rotate"]
        marks = [one for one in list(whole.pop(ANNOTATIONS, [])) if not _signature(one)]
        rest = {
            key: self.digest(value)
            for key, value in whole.items()
            if key not in UPWARD and key != "/Contents"
        }
        if marks:
            rest[ANNOTATIONS] = _sha("\n".join(map(self.digest, marks)).encode())
        return _sha(_canonical({"content": content, "rest": rest}))

    def _content(self, parts: Sequence[pikepdf.Object]) -> str:
        name = parts[0].objgen if len(parts) == 1 else UNNAMED
        if name == UNNAMED:
            return _sha(b"\n".join(map(_drawn, parts)))
        if name not in self._known:
            self._known[name] = _sha(_drawn(parts[0]))
        return self._known[name]

    def digest(self, thing: object) -> str:
        """The digest of any object."""
        if not isinstance(thing, pikepdf.Object):
            return _sha(repr(_plain(thing)).encode())
        name = thing.objgen
        if isinstance(thing, pikepdf.Dictionary) and thing.get("/Type") == pikepdf.Name.Page:
            number = thing.get(NUMBER)
            # what stands beside the page of that number leads nowhere
            beside = name not in self._numbers and number in self._numbers.values()
            return f"page of no file {number}" if beside else f"page {number}"
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
            return _sha("\n".join(self.digest(kid) for kid in list(thing)).encode())
        if isinstance(thing, pikepdf.Stream):
            how = HOW_STORED
            try:
                content = _unpacked(thing)
            except pikepdf.PdfError:  # a picture stored in a way of its own
                content, how = thing.read_raw_bytes(), frozenset({"/Length"})
            keys = self.keys(thing, how)
            return _sha(_canonical({"content": _sha(content), "keys": keys}))
        if isinstance(thing, pikepdf.Dictionary):
            return _sha(_canonical(self.keys(thing, frozenset())))
        return _sha(repr(_plain(thing)).encode())

    def keys(self, thing: pikepdf.Object, left_out: frozenset[str]) -> dict[str, str]:
        """The digests of what a dictionary or stream holds, by key."""
        return {
            key: self.digest(value)
            for key, value in thing.items()
            if key not in UPWARD and key not in left_out
        }


def _unpacked(stream: pikepdf.Object) -> bytes:
    if not can_be_unpacked(stream):
        raise pikepdf.PdfError("packed in a way of its own")
    return stream.read_bytes()


def _drawn(content: pikepdf.Object) -> bytes:
    """What a stream of content draws, which may have no keys but how it is stored: with others it
    may lie in another file (7.3.8.2)."""
    told = _unpacked(content)
    return told if set(content.keys()) <= HOW_STORED else told + repr(content).encode()


def _plain(thing: object) -> object:
    """A number, name or text in one way of writing it."""
    if isinstance(thing, bool) or thing is None:
        return thing
    if isinstance(thing, pikepdf.Object):
        return (
            ("bytes", bytes(thing)) if isinstance(thing, pikepdf.String) else ("name", str(thing))
        )
    return ("number", format(float(str(thing)), ".6g"))


def _inherited(page: pikepdf.Object) -> Iterator[tuple[str, pikepdf.Object]]:
    """What a page has of its parents, nearer ones last."""
    above: list[pikepdf.Object] = []
    seen: set[ObjectName] = set()
    parent = page.get("/Parent")
    while isinstance(parent, pikepdf.Dictionary) and parent.objgen not in seen:
        seen.add(parent.objgen)
        above.append(parent)
        parent = parent.get("/Parent")
    for one in reversed(above):
        yield from ((key, one[key]) for key in INHERITED if key in one)


def _sha(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def _canonical(data: Mapping[str, object]) -> bytes:
    return json.dumps(data, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()
