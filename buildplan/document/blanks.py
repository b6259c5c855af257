"""Blanks: lines of a page that are left free when it is drawn, and filled in afterwards.

What is printed many times over with other names on it is drawn once. A blank is a form XObject
(ISO 32000-1, 8.10) whose dictionary says in keys of our own (annex E) what line it is for; filling
it in puts the words there, in type of their own, and touches nothing else of the file.
"""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import count

import pikepdf
from pikepdf import Dictionary, Name, String
from reportlab.lib.colors import HexColor
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfdoc
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable

from buildplan.document.paragraphs import OrderedParagraph
from buildplan.document.tagged import BLANK, TaggedCanvas
from buildplan.document.text import fitting_size, plain
from buildplan.drawing.fonts import BOLD, REGULAR, register_fonts

DEEP, TALL = 0.35, 1.15  # of the size of the type: what its letters need below and above the line
# A subset of a font has a tag of six letters before its name (ISO 32000-1, 9.6.4): another one
# than that of reportlab's, for the letters are others.
TAG = "BPLNCP+"
SMALLER = 0.97


@dataclass(frozen=True)
class Blank:
    """A line of one style left free; `name` (letters and hyphens) tells which
    words go there. What is too long for it goes on `lines` above one another, the last of them
    there."""

    name: str
    style: ParagraphStyle
    lines: int = 1

    def draw(self, canvas: TaggedCanvas, x: float, baseline: float, room: float) -> None:
        """Leave it free from x on, `room` points wide."""
        size, document = self.style.fontSize, canvas._doc
        above = (self.lines - 1) * self.style.leading
        name = f"blank-{self.name}-{room:.2f}"
        if not document.hasForm(name):
            form = pdfdoc.PDFFormXObject(0, -DEEP * size, room, TALL * size + above)
            form.Resources = pdfdoc.PDFDictionary({})
            form.stream = "n"
            drawing_in = document.inObject
            document.addForm(name, form)
            document.inObject = drawing_in
            canvas.blanks[str(document.getXObjectName(name))] = Dictionary(
                Words=String(self.name),
                Bold=self.style.fontName == BOLD,
                Size=round(size, 3),
                Leading=round(self.style.leading, 3),
                Lines=self.lines,
                Colour=String(self.style.textColor),
                Room=round(room, 3),
            )
        canvas._formsinuse.append(name)
        placed = f"q 1 0 0 1 {x:.3f} {baseline:.3f} cm /{document.getXObjectName(name)} Do Q"
        canvas._code.append(placed)


class LeftFree(Flowable):  # type: ignore[misc]
    """A paragraph of so many lines at most that is filled in later; `after` is the space below."""

    def __init__(
        self, name: str, style: ParagraphStyle, after: float = 4.0, *, lines: int = 1
    ) -> None:
        super().__init__()
        self._blank, self.spaceAfter = Blank(name, style, lines), after

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self.height = width, self._blank.style.leading * self._blank.lines
        return width, self.height

    def draw(self) -> None:
        with self.canv.element("P"), self.canv.content():
            baseline = self._blank.style.leading - self._blank.style.fontSize
            self._blank.draw(self.canv, 0.0, baseline, self.width)


def blanks_of(pdf: pikepdf.Pdf) -> tuple[tuple[int, int], ...]:
    """The objects of an open file that are blanks: number and generation of each."""
    return tuple(
        thing.objgen
        for thing in pdf.objects
        if isinstance(thing, pikepdf.Stream) and BLANK in thing
    )


def fill_blanks(
    pdf: pikepdf.Pdf, blanks: Sequence[tuple[int, int]], words: Mapping[str, str]
) -> None:
    """Put words into the blanks of an open file, on the lines that each has, made smaller where
    that is not room enough.

    KeyError when a blank has no words.
    """
    forms = [pdf.get_object(name) for name in blanks]
    if not forms:
        return
    told = [words[str(form[BLANK].Words)] for form in forms]
    with pikepdf.open(io.BytesIO(_set(list(zip(forms, told, strict=True))))) as source:
        fonts = pdf.make_indirect(Dictionary())
        for form, page in zip(forms, source.pages, strict=True):
            for name, font in page.obj.Resources.Font.items():
                if name not in fonts:
                    fonts[name] = _tagged(pdf.copy_foreign(font))
            form.write(page.Contents.read_bytes())
            form.Resources = Dictionary(Font=fonts)


def _set(lines: list[tuple[pikepdf.Object, str]]) -> bytes:
    """A file with each line on a page of its own, in the order given."""
    register_fonts()
    out = io.BytesIO()
    canvas = Canvas(out, invariant=1, pageCompression=0, initialFontName=REGULAR)
    for form, text in lines:
        _draw(canvas, form[BLANK], text)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _draw(canvas: Canvas, how: pikepdf.Object, text: str) -> None:
    bold, size, room = bool(how.Bold), float(how.Size), float(how.Room)
    face, colour, tall = BOLD if bold else REGULAR, HexColor(str(how.Colour)), float(how.Leading)
    fitting = fitting_size(text, room, size, bold=bold)
    if fitting == size or int(how.Lines) == 1:
        canvas.setFillColor(colour)
        canvas.setFont(face, fitting)
        canvas.drawString(0, 0, text)
        return
    for smaller in count():
        type_size = size * SMALLER**smaller
        style = ParagraphStyle(
            "blank", fontName=face, fontSize=type_size, leading=tall, textColor=colour
        )
        words = OrderedParagraph(plain(text), style)
        _, high = words.wrapOn(canvas, room, 10_000)
        if high <= int(how.Lines) * tall:
            words.drawOn(canvas, 0, type_size - tall)
            return


def _tagged(font: pikepdf.Object) -> pikepdf.Object:
    for thing, key in ((font, Name.BaseFont), (font.FontDescriptor, Name.FontName)):
        thing[key] = Name("/" + TAG + str(thing[key]).partition("+")[2])
    return font
