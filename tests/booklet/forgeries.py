"""Every single change that a PDF can carry, made to a sold copy, and what `verify` says of it.

    .venv/bin/python tests/booklet/forgeries.py

prints the table. What changes what a reader sees, hears or can open has to be found; what only
stores the same in another way has to be called good. Keys are those of ISO 32000-1; pikepdf (qpdf)
makes the changes, which shares no code with what looks for them but the reading of the file.
"""

from __future__ import annotations

import io
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pikepdf
from forging import Forgery, Pdf, in_catalogue, nothing, on_page, opened, script
from pikepdf import Array, Dictionary, Name, String
from raw_forgeries import SEEN_IN_BYTES, UNREAD_IN_BYTES, UNSEEN_IN_BYTES
from seldom_forged import SEEN_SELDOM, UNREAD, UNSEEN_SELDOM
from sold_copies import sold_copy

from buildplan.business.copies.verifying import (
    DamagedFileError,
    LockedFileError,
    PrintedAnewError,
    verify,
)


def words(pdf: Pdf) -> None:
    """The first text that is shown on a page, another."""
    instructions: list[Any] = list(pikepdf.parse_content_stream(pdf.pages[3]))
    at = next(n for n, one in enumerate(instructions) if str(one.operator) in ("Tj", "TJ"))
    instructions[at] = ([String("12")], pikepdf.Operator("Tj"))
    pdf.pages[3].Contents = pdf.make_stream(pikepdf.unparse_content_stream(instructions))


def font_of(pdf: Pdf) -> Any:
    """The first font of a page whose glyphs are in the file."""
    fonts = [font for _, font in sorted(pdf.pages[3].resources.Font.items())]
    return next(font for font in fonts if "/ToUnicode" in font)


def glyph_map(pdf: Pdf) -> None:
    font = font_of(pdf)
    font.ToUnicode.write(font.ToUnicode.read_bytes().replace(b"<0031>", b"<0032>") + b" ")


def other_glyphs(pdf: Pdf) -> None:
    file = font_of(pdf).FontDescriptor.FontFile2
    data = bytearray(file.read_bytes())
    data[len(data) // 2] ^= 255
    file.write(bytes(data))


def above_pages(key: str, value: Any) -> Callable[[Pdf], None]:
    """A key of the tree of pages, which pages have where they have none of their own."""

    def change(pdf: Pdf) -> None:
        for page in pdf.pages:
            if key in page.obj:
                del page.obj[key]
        pdf.Root.Pages[key] = value

    return change


def structure(key: str, value: str) -> Callable[[Pdf], None]:
    """A key of the first tag that has one, or else of the first tag."""

    def change(pdf: Pdf) -> None:
        tag = pdf.Root.StructTreeRoot.K
        while True:
            tag = tag[0] if isinstance(tag, Array) else tag
            if "/K" not in tag or isinstance(tag.K, int):
                break
            deeper = tag.K[0] if isinstance(tag.K, Array) else tag.K
            if not isinstance(deeper, Dictionary) or "/S" not in deeper:
                break
            tag = deeper
        tag[key] = String(value)

    return change


def note(kind: str, **more: Any) -> Callable[[Pdf], None]:
    def change(pdf: Pdf) -> None:
        given = {"/Type": Name.Annot, "/Subtype": Name("/" + kind), "/Rect": Array([9, 9, 99, 99])}
        mark = pdf.make_indirect(Dictionary({**given, **{f"/{k}": v for k, v in more.items()}}))
        page = pdf.pages[3].obj
        page.Annots = Array([*list(page.get("/Annots", [])), mark])

    return change


def link_elsewhere(pdf: Pdf) -> None:
    for page in pdf.pages:
        for mark in list(page.obj.get("/Annots", [])):
            if mark.get("/Subtype") == Name.Link:
                for key in ("/Dest", "/A"):
                    if key in mark:
                        del mark[key]
                mark.A = Dictionary(S=Name.URI, URI=String("https://elsewhere.example"))
                return
    raise AssertionError("no link in it")


def layer(pdf: Pdf) -> None:
    group = pdf.make_indirect(Dictionary(Type=Name.OCG, Name=String("over")))
    pdf.Root.OCProperties = Dictionary(OCGs=Array([group]), D=Dictionary(ON=Array([group])))


def swapped(pdf: Pdf) -> None:
    page = pdf.pages[3]
    del pdf.pages[3]
    pdf.pages.insert(5, page)


def doubled(pdf: Pdf) -> None:
    pdf.pages.append(pdf.pages[2])


def gone(pdf: Pdf) -> None:
    del pdf.pages[2]


def added(pdf: Pdf) -> None:
    pdf.add_blank_page(page_size=(595, 842))


def renumbered(pdf: Pdf) -> None:
    pdf.pages[3].obj["/BPLN_Number"] = 9


def described(key: str) -> Callable[[Pdf], None]:
    def change(pdf: Pdf) -> None:
        pdf.docinfo[key] = "another"

    return change


def meta(key: str, old: str, new: str) -> Callable[[Pdf], None]:
    def change(pdf: Pdf) -> None:
        with pdf.open_metadata(set_pikepdf_as_editor=False) as found:
            assert old in str(found[key])
            found[key] = str(found[key]).replace(old, new, 1)

    return change


def meta_sign(key: str) -> Callable[[Pdf], None]:
    """The last letter or digit of a field of the metadata, another."""

    def change(pdf: Pdf) -> None:
        with pdf.open_metadata(set_pikepdf_as_editor=False) as found:
            told = str(found[key])
            at = max(n for n, sign in enumerate(told) if sign.isalnum())
            found[key] = told[:at] + ("1" if told[at] == "0" else "0") + told[at + 1 :]

    return change


def appended(change: Callable[[Pdf], None]) -> Forgery:
    """A revision after the end of the file (7.5.6), written by pyHanko."""

    def forged(data: bytes) -> bytes:
        from pyhanko.pdf_utils.generic import ArrayObject, NameObject, NumberObject
        from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter

        writer: Any = IncrementalPdfFileWriter(io.BytesIO(data))
        if change is not nothing:
            page = writer.find_page_for_modification(3)[0].get_object()
            number: Any = NumberObject
            box = ArrayObject(map(number, (0, 0, 300, 300)))
            page[NameObject("/CropBox")] = box
            writer.update_container(page)
        else:
            writer.update_root()
        out = io.BytesIO()
        writer.write(out)
        return out.getvalue()

    return forged


def crop(pdf: Pdf) -> None:
    pdf.pages[3].obj.CropBox = Array([0, 0, 300, 300])


PACKED = {
    "object_stream_mode": pikepdf.ObjectStreamMode.generate,
    "recompress_flate": True,
    "linearize": True,
}
SEEN: dict[str, Forgery] = {
    "words drawn over": opened(
        lambda pdf: pdf.pages[3].contents_add(b" 0 0 80 80 re f", prepend=False)
    ),
    "words shown": opened(words),
    "glyph map (ToUnicode)": opened(glyph_map),
    "glyphs of the font": opened(other_glyphs),
    "actual text": opened(structure("/ActualText", "take 99")),
    "alternative text": opened(structure("/Alt", "another picture")),
    "language": opened(in_catalogue("/Lang", lambda _: String("tlh"))),
    "crop box": opened(crop),
    "media box": opened(on_page("/MediaBox", lambda _: Array([0, 0, 300, 300]))),
    "media box of all pages": opened(above_pages("/MediaBox", Array([0, 0, 300, 300]))),
    "rotation": opened(on_page("/Rotate", lambda _: 90)),
    "rotation of all pages": opened(above_pages("/Rotate", 180)),
    "scale of the page": opened(on_page("/UserUnit", lambda _: 2)),
    "layers": opened(layer),
    "note": opened(note("Text", Contents=String("take 99"))),
    "text over the page": opened(note("FreeText", Contents=String("99"), DA=String("/H 9 Tf"))),
    "field to fill": opened(note("Widget", FT=Name.Tx, T=String("a"), V=String("99"))),
    "signature with a picture": opened(note("Widget", FT=Name.Sig, T=String("a"))),
    "link elsewhere": opened(link_elsewhere),
    "attachment": opened(lambda pdf: pdf.attachments.__setitem__("more.txt", b"more")),
    "script at opening": opened(in_catalogue("/OpenAction", script)),
    "script of a page": opened(on_page("/AA", lambda pdf: Dictionary(O=script(pdf)))),
    "form that fills itself": opened(
        in_catalogue("/AcroForm", lambda _: Dictionary(Fields=Array([]), XFA=String("<xdp/>")))
    ),
    "page removed": opened(gone),
    "page doubled": opened(doubled),
    "pages reordered": opened(swapped),
    "page added": opened(added),
    "page's own number": opened(renumbered),
    "title": opened(described("/Title")),
    "bookmark": opened(lambda pdf: pdf.Root.Outlines.First.__setitem__("/Title", "Elsewhere")),
    "page labels": opened(
        in_catalogue("/PageLabels", lambda _: Dictionary(Nums=Array([0, Dictionary(S=Name.r)])))
    ),
    "buyer in the metadata": opened(meta("bpcopy:fields", "Inés", "Bea")),
    "serial in the metadata": opened(meta_sign("bpcopy:serial")),
    "list of pages": opened(meta_sign("bpcopy:pages")),
    "list of parts": opened(meta_sign("bpcopy:parts")),
    "seal": opened(meta_sign("bpcopy:seal")),
    "revision appended": appended(crop),
}
UNSEEN: dict[str, Forgery] = {
    "untouched": lambda data: data,
    "saved again": opened(nothing),
    "packed and linearised": opened(nothing, **PACKED),
    "unpacked": opened(
        nothing, compress_streams=False, stream_decode_level=pikepdf.StreamDecodeLevel.generalized
    ),
    "laid out as QDF": opened(nothing, qdf=True),
    "encrypted, open to all": opened(
        nothing, encryption=pikepdf.Encryption(owner="owner", user="")
    ),
    "another program's name": opened(described("/Producer")),
    "revision of nothing appended": appended(nothing),
    "bytes after the end": lambda data: data + b"\n% more\n",
}


def verdict(data: bytes, key: bytes = b"") -> str:
    """What `verify` says of a file, in a word."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "copy.pdf"
        file.write_bytes(data)
        try:
            return str(verify(file, key).verdict.value)
        except DamagedFileError:
            return "damaged"
        except LockedFileError:
            return "locked"
        except PrintedAnewError:
            return "printed anew"


def main() -> None:
    """Print the table."""
    for head, forgeries in (
        ("has to be found", SEEN | SEEN_SELDOM | SEEN_IN_BYTES),
        ("has to be whole", UNSEEN | UNSEEN_SELDOM | UNSEEN_IN_BYTES),
        ("cannot be judged", UNREAD | UNREAD_IN_BYTES),
    ):
        for name, forged in forgeries.items():
            print(f"{head:18}{name:32}{verdict(forged(sold_copy()))}")


if __name__ == "__main__":
    main()
