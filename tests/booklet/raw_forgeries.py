"""Changes of a sold copy that are made byte by byte, since a program that saves a PDF mends them:
what readers of PDF read in two ways, and what is only stored in another. Keys and sections are of
ISO 32000-1."""

from __future__ import annotations

import io
import re
import zlib
from collections.abc import Callable
from typing import Any

import pikepdf
from forging import Forgery, Pdf, nothing, opened
from pikepdf import Array, Dictionary, Name

COVERED = b"<< /Length 16 >>\nstream\n0 0 800 800 re f\nendstream"
# a table of objects that is text (7.5.4), each object by itself
plainly = opened(
    nothing,
    object_stream_mode=pikepdf.ObjectStreamMode.disable,
    stream_decode_level=pikepdf.StreamDecodeLevel.none,
)


def named(data: bytes, which: Callable[[Pdf], pikepdf.Object]) -> int:
    """The number of an object."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        return which(pdf).objgen[0]


def text_of(data: bytes, number: int) -> bytes:
    """How the last version of an object is written in a file."""
    found = re.findall(rb"\n%d 0 obj\n(.*?)\nendobj" % number, data, re.DOTALL)
    return bytes(found[-1])


def revised(data: bytes, objects: dict[int, bytes]) -> bytes:
    """A file with a revision after its end (7.5.6) in which these objects are others."""
    before = int(re.findall(rb"startxref\s+(\d+)", data)[-1])
    trailer = re.findall(rb"/(?:Root|Info)\s+\d+ \d+ R", data[data.rindex(b"trailer") :])
    size = max([int(one) for one in re.findall(rb"/Size (\d+)", data)] + [n + 1 for n in objects])
    out, rows = data, b"xref\n0 0\n"
    for number, text in sorted(objects.items()):
        rows += b"%d 1\n%010d 00000 n \n" % (number, len(out))
        out += b"%d 0 obj\n%s\nendobj\n" % (number, text)
    keys = b" ".join(trailer)
    end = b"trailer\n<< /Size %d %s /Prev %d >>\n" % (size, keys, before)
    return out + rows + end + b"startxref\n%d\n%%%%EOF\n" % len(out)


def one_object(
    which: Callable[[Pdf], pikepdf.Object],
    change: Callable[[bytes], bytes],
    first: Forgery = plainly,
) -> Forgery:
    """One object written in another way."""

    def forged(data: bytes) -> bytes:
        plain = plainly(first(data))
        number = named(plain, which)
        return revised(plain, {number: change(text_of(plain, number))})

    return forged


def the_page(pdf: Pdf) -> pikepdf.Object:
    return pdf.pages[3].obj


def the_content(pdf: Pdf) -> pikepdf.Object:
    return pdf.pages[3].obj.Contents


def the_tree(pdf: Pdf) -> pikepdf.Object:
    return pdf.Root.Pages


def first_branch(pdf: Pdf) -> pikepdf.Object:
    return pdf.Root.Pages.Kids[0]


def counted(many: bytes) -> Callable[[bytes], bytes]:
    return lambda text: re.sub(rb"/Count \d+", b"/Count " + many, text)


def branched(depth: int = 1) -> Callable[[Pdf], None]:
    """The tree of pages with branches below it, the same pages in the same order."""

    def change(pdf: Pdf) -> None:
        top = pdf.Root.Pages
        pages = list(top.Kids)
        for box in ("/Rotate", "/MediaBox"):
            if box == "/MediaBox":
                top[box] = pages[0][box]
            for page in pages:
                del page[box]
        inner = pdf.make_indirect(Dictionary(Type=Name.Pages, Count=len(pages), Kids=Array(pages)))
        for page in pages:
            page.Parent = inner
        for _ in range(depth - 1):
            outer = pdf.make_indirect(
                Dictionary(Type=Name.Pages, Count=len(pages), Kids=Array([inner]))
            )
            inner.Parent = outer
            inner = outer
        inner.Parent = top
        top.Kids = Array([inner])

    return change


def key_twice(data: bytes) -> bytes:
    """A page whose content is named twice: one reader takes the first, another the last."""
    plain = plainly(data)
    page = named(plain, the_page)
    other = max(int(one) for one in re.findall(rb"/Size (\d+)", plain))
    text = text_of(plain, page).replace(b"/Contents", b"/Contents %d 0 R /Contents" % other, 1)
    return revised(plain, {page: text, other: COVERED})


def longer_than_told(text: bytes) -> bytes:
    """A stream that goes on after its length (7.3.8.2): some readers look for its end."""
    return text + b"\n0 0 800 800 re f\nendstream"


def packed_twice(data: bytes) -> bytes:
    """A content that is packed in two ways, one in the other (7.4)."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        packed = zlib.compress(the_content(pdf).read_bytes()).hex().encode() + b">"
    keys = b"<< /Filter [/ASCIIHexDecode /FlateDecode] /Length %d >>" % len(packed)
    return one_object(the_content, lambda _: keys + b"\nstream\n" + packed + b"\nendstream")(data)


def drawn_and_taken_back(data: bytes) -> bytes:
    """Two revisions: a page covered, and as it was."""
    plain = plainly(data)
    number = named(plain, the_content)
    as_it_was = text_of(plain, number)
    return revised(revised(plain, {number: COVERED}), {number: as_it_was})


def drawings_without_end(pdf: Pdf) -> None:
    """Twenty-five drawings, of which each draws the next ten times (8.10)."""
    form: dict[str, Any] = {"Type": Name.XObject, "Subtype": Name.Form, "BBox": Array([0, 0, 9, 9])}
    drawing = pdf.make_stream(b"0 0 1 1 re f", **form)
    for _ in range(25):
        inner = Dictionary(XObject=Dictionary(A=drawing))
        drawing = pdf.make_stream(b"/A Do " * 10, **form, Resources=inner)
    pdf.pages[3].resources.XObject.A = drawing
    pdf.pages[3].contents_add(b" /A Do ", prepend=False)


def packed_tightly(pdf: Pdf) -> None:
    """A content that takes a megabyte in the file, and a thousand of them unpacked."""
    small = zlib.compressobj(9)
    pieces = [small.compress(b" " * 2**20) for _ in range(1024)]
    packed = b"".join([*pieces, small.flush()])
    pdf.pages[3].Contents.write(packed, filter=Name.FlateDecode)


SEEN_IN_BYTES: dict[str, Forgery] = {
    "fewer pages told": one_object(the_tree, counted(b"2")),
    "no pages told": one_object(the_tree, counted(b"-1")),
    "fewer pages told of a branch": one_object(first_branch, counted(b"1"), opened(branched())),
    "turned far above": one_object(
        the_tree, lambda text: text.replace(b"/Type", b"/Rotate 90 /Type"), opened(branched(70))
    ),
    "content of another file": one_object(
        the_content, lambda text: text.replace(b"/Length", b"/F (other.txt) /Length", 1)
    ),
}
UNSEEN_IN_BYTES: dict[str, Forgery] = {
    "another tree of pages": opened(branched()),
    "a deep tree of pages": opened(branched(70)),
    "packed twice": packed_twice,
    "revision by hand": lambda data: revised(plainly(data), {}),
    "covered and taken back": drawn_and_taken_back,
    "object that nothing leads to": lambda data: plainly(data) + b"4 0 obj\n" + COVERED,
}
UNREAD_IN_BYTES: dict[str, Forgery] = {
    "key that stands twice": key_twice,
    "content after its end": one_object(the_content, longer_than_told),
    "something before it": lambda data: b"\n" + data,
    "much after its end": lambda data: data + b"%" + b"x" * 2000,
    "another file after it": lambda data: data + data[:2000],
    "more pages told": one_object(the_tree, counted(b"60")),
    "drawings without end": opened(drawings_without_end),
    "packed tightly": opened(packed_tightly),
}
