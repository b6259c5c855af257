"""What readers of PDF show of a file's metadata (ISO 32000-1, 14.3.2; XMP, ISO 16684-1), which
programs that store a file keep as it is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from xml.etree import ElementTree

import pikepdf

SHOWN = ("dc:title", "dc:creator", "dc:description", "dc:subject", "dc:rights")
RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
LANGUAGE = "{http://www.w3.org/XML/1998/namespace}lang"
DC, XMP = "{http://purl.org/dc/elements/1.1/}", "{http://ns.adobe.com/xap/1.0/}"
PDF = "{http://ns.adobe.com/pdf/1.3/}"
KNOWN = frozenset(key.replace("dc:", DC) for key in SHOWN)
# what programs write anew or say of how a file is stored, and what the seal holds by itself
OF_PROGRAMS = frozenset(
    {f"{DC}{word}" for word in ("format", "language", "date")}
    | {f"{PDF}{word}" for word in ("Producer", "PDFVersion", "Trapped")}
    | {f"{XMP}{word}" for word in ("CreateDate", "ModifyDate", "MetadataDate", "CreatorTool")}
    | {f"{RDF}about"}
)
OF_SPACES = (
    "{http://ns.adobe.com/xap/1.0/mm/}",
    "{http://www.aiim.org/pdfua/ns/id/}",
    "{http://www.aiim.org/pdfa/ns/id/}",
)
SEALED = "{urn:buildplan:copy:1/}"


def shown_metadata(pdf: pikepdf.Pdf) -> dict[str, object]:
    """The words of the metadata by what they are; under `more` what a sold copy has none of:
    others, one that stands twice, and one in several languages, of which readers choose."""
    with pdf.open_metadata(set_pikepdf_as_editor=False, update_docinfo=False) as meta:
        words: dict[str, object] = {key: str(meta[key]) for key in SHOWN if key in meta}
        told = list(_told(ElementTree.fromstring(str(meta))))
    often = Counter(name for name, _ in told)
    more = [
        (name, texts)
        for name, texts in told
        if often[name] > 1
        or (name in KNOWN and len(texts) > 1)
        or not (name in KNOWN or name in OF_PROGRAMS or name.startswith((SEALED, *OF_SPACES)))
    ]
    return {**words, "more": sorted(more)} if more else words


def _told(tree: ElementTree.Element) -> Iterator[tuple[str, list[tuple[str, str]]]]:
    """Each word of the description with its texts, and the language of each."""
    for about in tree.iter(f"{RDF}Description"):
        for name, text in about.attrib.items():
            yield name, [("", text)]
        for word in about:
            each = list(word.iter(f"{RDF}li")) or [word]
            yield word.tag, [(one.get(LANGUAGE, ""), "".join(one.itertext())) for one in each]
