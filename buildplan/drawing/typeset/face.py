"""Our faces as reportlab knows them, which set text of any script.

What is plain is set as reportlab sets it. Shapes of other signs are gathered for each document into
fonts of their own, each shape a code; what they stand for is told in their ToUnicode maps (ISO
32000-1, 9.10.3), so that they can be searched, copied and read aloud.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import groupby
from math import fsum
from pathlib import Path
from typing import Any, cast
from weakref import WeakKeyDictionary

from reportlab.pdfbase import pdfdoc
from reportlab.pdfbase.ttfonts import TTFont

from buildplan.drawing.typeset.font_files import FontFile, named_fonts, opened
from buildplan.drawing.typeset.setting import (
    UNSEEN,
    WITH_BEFORE,
    Letterform,
    OwnFace,
    set_line,
)
from buildplan.language.isolates import LETTERS_FROM_RIGHT

# Codes that a font of shapes uses: 32 is left out, which PDF takes for a space between words.
FIRST_CODE, LAST_CODE = 33, 255
FIRST_SUBSET = 1000  # those of reportlab are numbered from 0
# A subset of a font has six letters before its name (ISO 32000-1, 9.6.4).
TAG = "SHAPES"
MOST_IN_BLOCK = 100  # of a map to Unicode (Adobe Technical Note 5411)
LAST_LATIN = "\u02ff"
NOT_SHARED = ("Co", "Cn")  # signs of private use, and none
SYMBOLIC = 4  # ISO 32000-1, table 123
DESCRIBED = {"Type": "/FontDescriptor", "Flags": SYMBOLIC, "ItalicAngle": 0, "StemV": 80}


@dataclass
class _Gathered:
    """The shapes of one document: fonts of shapes, each by code, and where each shape stands."""

    fonts: list[dict[int, Letterform]] = field(default_factory=list)
    places: dict[Letterform, tuple[int, int]] = field(default_factory=dict)

    def place(self, shape: Letterform) -> tuple[int, int]:
        """The font and the code of a shape, which gets the next one where it is new."""
        if shape not in self.places:
            self.places[shape] = self._next(shape)
        return self.places[shape]

    def _next(self, shape: Letterform) -> tuple[int, int]:
        with_room = (
            number
            for number, font in enumerate(self.fonts)
            if font[FIRST_CODE].font == shape.font and LAST_CODE not in font
        )
        number = next(with_room, len(self.fonts))
        if number == len(self.fonts):
            self.fonts.append({})
        code = FIRST_CODE + len(self.fonts[number])
        self.fonts[number][code] = shape
        return number, code


class Typeface(TTFont):  # type: ignore[misc]
    """One of our faces, with whatever other fonts a text needs."""

    def __init__(self, name: str, file: Path, *, bold: bool, from_right: bool = False) -> None:
        super().__init__(name, str(file), shapable=False)
        if from_right:  # reportlab takes fonts whose faces have one name for one font
            self.face.name = name.encode()
        plain = frozenset(filter(_is_plain, map(chr, self.face.charToGlyph)))
        self.own = OwnFace(FontFile(str(file)), bold, plain, from_right)
        self._of_documents: WeakKeyDictionary[object, _Gathered] = WeakKeyDictionary()

    def stringWidth(self, text: str, size: float, encoding: str = "utf8") -> float:  # noqa: N802
        """Width of a line in points. Raises NoSignError."""
        if self.own.plain.issuperset(text):
            return float(super().stringWidth(text, size, encoding))
        plain = super().stringWidth
        return fsum(
            plain(piece, size, encoding)
            if isinstance(piece, str)
            else piece.advance * size / opened(piece.font).face.upem
            for piece in set_line(text, self.own, named_fonts())
        )

    def splitString(  # noqa: N802
        self, text: str, doc: object, encoding: str = "utf-8"
    ) -> list[tuple[int, bytes]]:
        """A line in parts of one font of the document each, from left to right: the font's number
        and the codes in it. Raises NoSignError."""
        if self.own.plain.issuperset(text) and not self.own.from_right:
            return cast("list[tuple[int, bytes]]", super().splitString(text, doc, encoding))
        gathered = self._of_documents.setdefault(doc, _Gathered())
        parts: list[tuple[int, bytes]] = []
        for piece in set_line(text, self.own, named_fonts()):
            if isinstance(piece, str):
                parts += super().splitString(piece, doc, encoding)
            else:
                number, code = gathered.place(piece)
                parts.append((FIRST_SUBSET + number, bytes([code])))
        return [
            (number, b"".join(codes for _, codes in group))
            for number, group in groupby(parts, lambda part: part[0])
        ]

    def getSubsetInternalName(self, subset: int, doc: object) -> str:  # noqa: N802
        """The name of one of those fonts among the resources of the document's pages."""
        if subset < FIRST_SUBSET:
            return str(super().getSubsetInternalName(subset, doc))
        whole = str(super().getSubsetInternalName(0, doc)).removesuffix("+0")
        return f"{whole}+{subset}"

    def addObjects(self, doc: Any) -> None:  # noqa: N802
        """Put the fonts that a document uses into it."""
        names = {
            number: self.getSubsetInternalName(FIRST_SUBSET + number, doc)[1:]
            for number in range(len(self._of_documents.get(doc, _Gathered()).fonts))
        }
        super().addObjects(doc)
        gathered = self._of_documents.pop(doc, _Gathered())
        for number, shapes in enumerate(gathered.fonts):
            doc.idToObject["BasicFonts"].dict[names[number]] = _font(
                doc, names[number], f"{self.fontName}-{number}", shapes
            )


def _is_plain(sign: str) -> bool:
    """Whether a sign is drawn alone, and from the left."""
    kind = unicodedata.category(sign)
    if kind == "Lo" and sign > LAST_LATIN:  # of scripts whose letters may move one another
        return False
    unplain = kind in WITH_BEFORE or kind in UNSEEN or kind in NOT_SHARED
    return not unplain and unicodedata.bidirectional(sign) not in (*LETTERS_FROM_RIGHT, "AN")


def _font(
    doc: Any, name: str, base: str, shapes: Mapping[int, Letterform]
) -> pdfdoc.PDFTrueTypeFont:
    """A simple TrueType font (ISO 32000-1, 9.6.3) of shapes, by their codes."""
    called = f"{TAG}+{base}"
    from buildplan.drawing.typeset.program import font_program  # few documents need it

    upem = opened(next(iter(shapes.values())).font).face.upem
    program = font_program(shapes, base)
    stream = _stream(doc, program.data)
    stream.dictionary["Length1"] = len(program.data)
    left, below, right, above = program.box
    described = pdfdoc.PDFDictionary(
        DESCRIBED
        | {
            "FontName": pdfdoc.PDFName(called),
            "FontBBox": pdfdoc.PDFArray([left, below, right, above]),
            "Ascent": above,
            "CapHeight": above,
            "Descent": below,
            "FontFile2": doc.Reference(stream, f"fontFile:{called}"),
        }
    )
    font = pdfdoc.PDFTrueTypeFont()
    font.Name, font.BaseFont = name, called
    font.FirstChar, font.LastChar = min(shapes), max(shapes)
    widths = [1000 * shapes[code].advance / upem for code in sorted(shapes)]
    font.Widths = pdfdoc.PDFArray([round(width, 3) for width in widths])
    meaning = _stream(doc, _to_unicode(called, shapes).encode())
    font.ToUnicode = doc.Reference(meaning, f"toUnicodeCMap:{called}")
    font.FontDescriptor = doc.Reference(described, f"fontDescriptor:{called}")
    return font


def _stream(doc: Any, content: bytes) -> pdfdoc.PDFStream:
    stream = pdfdoc.PDFStream()
    stream.content = content
    if doc.compression:
        stream.filters = [pdfdoc.PDFZCompress]
    return stream


def _to_unicode(called: str, shapes: Mapping[int, Letterform]) -> str:
    """What each code stands for, as UTF-16 (ISO 32000-1, 9.10.3)."""
    meant = [
        f"<{code:02X}> <{shape.text.encode('utf-16-be').hex().upper()}>"
        for code, shape in sorted(shapes.items())
    ]
    blocks: list[str] = []
    for at in range(0, len(meant), MOST_IN_BLOCK):
        block = meant[at : at + MOST_IN_BLOCK]
        blocks += [f"{len(block)} beginbfchar", *block, "endbfchar"]
    return "\n".join(
        (
            "/CIDInit /ProcSet findresource begin",
            "12 dict begin",
            "begincmap",
            "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def",
            f"/CMapName /{called.replace('+', '-')} def",
            "/CMapType 2 def",
            "1 begincodespacerange",
            "<00> <FF>",
            "endcodespacerange",
            *blocks,
            "endcmap",
            "CMapName currentdict /CMap defineresource pop",
            "end",
            "end",
        )
    )
