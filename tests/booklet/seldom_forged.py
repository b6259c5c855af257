"""What is less often changed in a sold copy, and files that cannot be judged: the suite tries some
of them, `forgeries.py` prints the table of all. Keys are those of ISO 32000-1."""

from __future__ import annotations

import io
from collections.abc import Callable
from typing import Any

import pikepdf
from forging import Forgery, Pdf, in_catalogue, nothing, on_page, opened, script
from pikepdf import Array, Dictionary, Name, String


def fonts_in(pdf: Pdf) -> list[Any]:
    """Fonts whose glyphs are in the file, each once."""
    found = {
        font.objgen: font for page in pdf.pages for _, font in sorted(page.resources.Font.items())
    }
    return [font for font in found.values() if "/ToUnicode" in font]


def fonts_exchanged(pdf: Pdf) -> None:
    """The programs of two fonts, each in place of the other."""
    one, other, *_ = (font.FontDescriptor for font in fonts_in(pdf))
    one.FontFile2, other.FontFile2 = other.FontFile2, one.FontFile2


def font_coded(pdf: Pdf) -> None:
    codes = Array([49, Name("/two")])
    fonts_in(pdf)[0].Encoding = Dictionary(Type=Name.Encoding, Differences=codes)


def drawn(pdf: Pdf, kind: str) -> list[Any]:
    """Pictures that a page draws again and again (8.10), by a word of their names."""
    return [one for name, one in sorted(pdf.pages[3].resources.XObject.items()) if kind in name]


def drawings_exchanged(pdf: Pdf) -> None:
    places = pdf.pages[3].resources.XObject
    one, other, *_ = sorted(name for name, _ in places.items() if "body" in name)
    places[one], places[other] = places[other], places[one]


def drawing_covered(pdf: Pdf) -> None:
    foot = drawn(pdf, "foot")[0]
    foot.write(foot.read_bytes() + b" 0 0 9 9 re f")


def of_drawing(key: str, value: Callable[[Pdf], Any]) -> Callable[[Pdf], None]:
    def change(pdf: Pdf) -> None:
        drawn(pdf, "body")[0][key] = value(pdf)

    return change


def in_resources(key: str, value: Callable[[Pdf], Any]) -> Callable[[Pdf], None]:
    def change(pdf: Pdf) -> None:
        pdf.pages[3].resources[key] = value(pdf)

    return change


def profile(pdf: Pdf) -> Dictionary:
    """A colour profile in place of the plain red, green and blue (8.6.5.6)."""
    return Dictionary(DefaultRGB=Array([Name.ICCBased, pdf.make_stream(b"x" * 200, N=3)]))


def script_by_name(pdf: Pdf) -> Dictionary:
    return Dictionary(JavaScript=Dictionary(Names=Array([String("a"), script(pdf)])))


def tags_turned_round(pdf: Pdf) -> None:
    first = pdf.Root.StructTreeRoot.K
    first = first[0] if isinstance(first, Array) else first
    first.K = Array(list(reversed(list(first.K))))


def tags_of_other_pages(pdf: Pdf) -> None:
    numbers = pdf.Root.StructTreeRoot.ParentTree.Nums
    numbers[1], numbers[3] = numbers[3], numbers[1]


def put_before(words: bytes) -> Callable[[Pdf], None]:
    return lambda pdf: pdf.pages[3].contents_add(words, prepend=True)


def page_behind(pdf: Pdf) -> None:
    """Another page of the same number, which no link leads to but the tree of pages does."""
    other = pdf.make_indirect(Dictionary(dict(pdf.pages[3].obj.items())))
    other.Contents = pdf.make_stream(b"0 0 9 9 re f")
    pdf.pages[3] = pikepdf.Page(other)


def only_metadata(pdf: Pdf) -> None:
    """The title as newer readers show it, the older place of it left as it was."""
    with pdf.open_metadata(set_pikepdf_as_editor=False, update_docinfo=False) as found:
        found["dc:title"] = "another"


def page_of_no_file(pdf: Pdf) -> Any:
    """What looks like the page that the first bookmark leads to, and stands in no tree of pages."""
    number = pdf.Root.Outlines.First.Dest[0]["/BPLN_Number"]
    return pdf.make_indirect(Dictionary(Type=Name.Page, BPLN_Number=number))


def link_nowhere(pdf: Pdf) -> None:
    for page in pdf.pages:
        for mark in list(page.obj.get("/Annots", [])):
            if isinstance(mark.get("/Dest"), Array):
                lost = page_of_no_file(pdf)
                lost["/BPLN_Number"] = mark.Dest[0]["/BPLN_Number"]
                mark.Dest[0] = lost
                return
    raise AssertionError("no link in it")


def in_metadata(old: bytes, new: bytes) -> Callable[[Pdf], None]:
    """The metadata as text (XMP, ISO 16684-1), which keeps what a program would put right."""

    def change(pdf: Pdf) -> None:
        told = pdf.Root.Metadata.read_bytes()
        assert old in told
        pdf.Root.Metadata.write(told.replace(old, new, 1))

    return change


def signature_seen(kind: Name, place: list[int]) -> Callable[[Pdf], None]:
    """A mark that says it is the field of a signature, and is shown whatever room it takes."""

    def change(pdf: Pdf) -> None:
        told: dict[str, Any] = {"Type": Name.Annot, "FT": Name.Sig, "T": String("a"), "F": 4}
        mark = pdf.make_indirect(Dictionary(Subtype=kind, Rect=Array(place), **told))
        page = pdf.pages[3].obj
        page.Annots = Array([*list(page.get("/Annots", [])), mark])

    return change


def signature_made_up(pdf: Pdf) -> None:
    """The field of a signature in which none is."""
    value = Dictionary(Type=Name.Sig, ByteRange=Array([0, 9, 9, 9]), Contents=String("x" * 99))
    mark = pdf.make_indirect(
        Dictionary(Subtype=Name.Widget, FT=Name.Sig, T=String("a"), Rect=Array([0] * 4), V=value)
    )
    pdf.pages[0].obj.Annots = Array([*list(pdf.pages[0].obj.get("/Annots", [])), mark])
    pdf.Root.AcroForm = Dictionary(Fields=Array([mark]), SigFlags=3)


def bookmarks_exchanged(pdf: Pdf) -> None:
    one, other = pdf.Root.Outlines.First, pdf.Root.Outlines.First.Next
    one.Title, other.Title = other.Title, one.Title


def mask_over_all(pdf: Pdf) -> None:
    """A mask (11.5.3) through which nothing is seen."""
    form: dict[str, Any] = {"Type": Name.XObject, "Subtype": Name.Form, "BBox": Array([0] * 4)}
    group = pdf.make_stream(b"", **form, Group=Dictionary(S=Name.Transparency, CS=Name.DeviceGray))
    mask = Dictionary(S=Name.Luminosity, G=group)
    pdf.pages[3].resources.ExtGState = Dictionary(masked=Dictionary(SMask=mask))
    pdf.pages[3].contents_add(b"/masked gs ", prepend=True)


def in_parts(pdf: Pdf) -> None:
    """The content of a page in two streams, cut where a line ends (7.8.2)."""
    content = pdf.pages[3].Contents.read_bytes()
    at = content.index(b"\n", len(content) // 2)
    parts = (content[:at], content[at + 1 :])
    pdf.pages[3].Contents = Array([pdf.make_stream(part) for part in parts])


def lost_table(data: bytes) -> bytes:
    """A file that says of its table of objects that it is where none is (7.5.5)."""
    return data[: data.rindex(b"startxref")] + b"startxref\n99999999\n%%EOF\n"


def printed_anew(data: bytes) -> bytes:
    """The pages alone, as a program has them that prints a file into another."""
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(data)) as pdf, pikepdf.new() as other:
        other.pages.extend(pdf.pages)
        other.save(out)
    return out.getvalue()


# what is less often thought of; the suite tries some of them, the command all
SEEN_SELDOM: dict[str, Forgery] = {
    "programs of two fonts": opened(fonts_exchanged),
    "codes of a font": opened(font_coded),
    "widths of a font": opened(lambda pdf: fonts_in(pdf)[0].Widths.__setitem__(3, 999)),
    "drawings exchanged": opened(drawings_exchanged),
    "drawing covered": opened(drawing_covered),
    "drawing larger": opened(of_drawing("/Matrix", lambda _: Array([2, 0, 0, 2, 0, 0]))),
    "drawing of another file": opened(of_drawing("/Ref", lambda _: Dictionary(F=String("x.pdf")))),
    "drawing of a layer": opened(
        of_drawing("/OC", lambda pdf: pdf.make_indirect(Dictionary(Type=Name.OCG)))
    ),
    "colour profile": opened(in_resources("/ColorSpace", profile)),
    "colours of the printer": opened(
        in_catalogue("/OutputIntents", lambda _: Array([Dictionary(S=Name.GTS_PDFX)]))
    ),
    "what is seen through": opened(
        in_resources("/ExtGState", lambda _: Dictionary(x=Dictionary(ca=0)))
    ),
    "order of the tags": opened(tags_turned_round),
    "kinds of the tags": opened(
        lambda pdf: pdf.Root.StructTreeRoot.__setitem__("/RoleMap", Dictionary(P=Name.Artifact))
    ),
    "tags of another page": opened(tags_of_other_pages),
    "scripts by name": opened(in_catalogue("/Names", script_by_name)),
    "places by name": opened(in_catalogue("/Dests", lambda _: Dictionary())),
    "file within": opened(
        in_catalogue("/AF", lambda pdf: Array([Dictionary(EF=pdf.make_stream(b"x"))]))
    ),
    "a folder of files": opened(in_catalogue("/Collection", lambda _: Dictionary())),
    "where links begin": opened(
        in_catalogue("/URI", lambda _: Dictionary(Base=String("https://elsewhere.example")))
    ),
    "read from the right": opened(
        in_catalogue("/ViewerPreferences", lambda _: Dictionary(Direction=Name.R2L))
    ),
    "full screen": opened(in_catalogue("/PageMode", lambda _: Name.FullScreen)),
    "page turns by itself": opened(on_page("/Dur", lambda _: 1)),
    "picture of the page": opened(on_page("/Thumb", lambda pdf: pdf.make_stream(b"x"))),
    "state that is not given back": opened(put_before(b"q 2 0 0 2 0 0 cm")),
    "state given back too often": opened(put_before(b"Q Q Q 1 0 0 RG")),
    "page behind a page": opened(page_behind),
    "title in the metadata alone": opened(only_metadata),
    "title in another language": opened(
        in_metadata(b"<rdf:Alt>", b'<rdf:Alt><rdf:li xml:lang="en">Another</rdf:li>')
    ),
    "publisher in the metadata": opened(
        in_metadata(
            b"<dc:language",
            b'<dc:source xmlns:dc="http://purl.org/dc/elements/1.1/">Another'
            b"</dc:source><dc:language",
        )
    ),
    "buyer twice in the metadata": opened(
        in_metadata(
            b"</rdf:RDF>",
            b'<rdf:Description rdf:about=""><bpcopy:fields xmlns:bpcopy="urn:buildplan:copy:1/">'
            b"{}</bpcopy:fields></rdf:Description></rdf:RDF>",
        )
    ),
    "the file's own word": opened(lambda pdf: pdf.docinfo.__setitem__("/Company", "another")),
    "link that leads nowhere": opened(link_nowhere),
    "bookmark that leads nowhere": opened(
        lambda pdf: pdf.Root.Outlines.First.Dest.__setitem__(0, page_of_no_file(pdf))
    ),
    "bookmarks exchanged": opened(bookmarks_exchanged),
    "note that calls itself signature": opened(signature_seen(Name.Text, [0, 0, 0, 0])),
    "stamp that calls itself signature": opened(signature_seen(Name.Stamp, [])),
    "signature made up": opened(signature_made_up),
    "mask over all": opened(mask_over_all),
    "picture within the content": opened(
        put_before(b"q 200 0 0 200 99 99 cm BI /W 1 /H 1 /CS /G /BPC 8 ID \x00 EI Q ")
    ),
}
UNSEEN_SELDOM: dict[str, Forgery] = {
    "content in parts": opened(in_parts),
    "said to be trapped": opened(lambda pdf: pdf.docinfo.__setitem__("/Trapped", Name.Unknown)),
}
# what cannot be read in one way alone, or not at all
UNREAD: dict[str, Forgery] = {
    "table of objects lost": lost_table,
    "half of it": lambda data: data[: len(data) // 2],
    "opens with a password": opened(
        nothing, encryption=pikepdf.Encryption(owner="owner", user="user")
    ),
    "printed anew": printed_anew,
}
