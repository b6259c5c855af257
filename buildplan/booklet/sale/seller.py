"""The seller on a page: a band in the brand's colour, with logo, name and contact."""

from __future__ import annotations

import io

from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.business.copies.brand import Branding, Logo, svg_drawing
from buildplan.design.model import Brand
from buildplan.document.blocks import Words
from buildplan.document.layout import Boxed, Columns
from buildplan.document.paper import Paper, mm
from buildplan.document.text import BODY, HEADING, plain, strong
from buildplan.language.voice import Voice

BAND_PAD = mm(6)
LOGO_WIDTH, LOGO_HEIGHT, PLATE = mm(80), mm(18), 6.0
ACCENT = 3.0
PLAIN_BRAND = Branding(Brand.model_validate({"name": "buildplan"}))


def branding_of(book: Book) -> Branding:
    """The seller's brand, or a plain one where there is none."""
    return book.branding or PLAIN_BRAND


class LogoShown(Flowable):  # type: ignore[misc]
    """A logo on a white plate, for it may be dark itself."""

    def __init__(self, logo: Logo, alt: str) -> None:
        super().__init__()
        self._logo, self._alt = logo, alt
        self.wide = min(LOGO_WIDTH, LOGO_HEIGHT * logo.aspect)
        self._tall = self.wide / logo.aspect

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self.height = width, self._tall + 2 * PLATE
        return width, self.height

    def draw(self) -> None:
        canvas, wide, tall = self.canv, self.wide, self._tall
        with canvas.artifact():
            canvas.setFillColor("#FFFFFF")
            canvas.roundRect(0, 0, wide + 2 * PLATE, tall + 2 * PLATE, 4, stroke=0, fill=1)
        box = (PLATE, PLATE, PLATE + wide, PLATE + tall)
        with canvas.element("Figure", alt=self._alt, box=box), canvas.content():
            if self._logo.kind == "png":
                reader = ImageReader(io.BytesIO(self._logo.data))
                canvas.drawImage(reader, PLATE, PLATE, wide, tall, mask="auto")
            else:
                from reportlab.graphics import renderPDF  # as its reader: long to import

                drawing = svg_drawing(self._logo.data)
                assert drawing is not None, "it could be read before"
                canvas.saveState()
                canvas.translate(PLATE, PLATE)
                canvas.scale(wide / drawing.width, tall / drawing.height)
                # what lies outside a picture's own frame is not shown (SVG 2, 8.1: overflow)
                frame = canvas.beginPath()
                frame.rect(0, 0, drawing.width, drawing.height)
                canvas.clipPath(frame, stroke=0, fill=0)
                renderPDF.draw(drawing, canvas, 0, 0)
                canvas.restoreState()


def seller_band(paper: Paper, brand: Branding, voice: Voice) -> Flowable:
    """The seller's colour across the top of the sheet, with logo, name and contact."""
    name = ParagraphStyle(
        "seller", parent=HEADING, fontSize=17, leading=22, textColor=brand.on_colour
    )
    reach = ParagraphStyle("reach", parent=BODY, textColor=brand.on_colour)
    seller, contact = brand.name, brand.brand.contact
    if brand is PLAIN_BRAND:
        seller = voice.say("Build plan")
        contact = voice.say("step by step, with counts to check")
    words: list[Flowable] = [Words(strong(seller), name, after=0)]
    if contact:
        words.append(Words(plain(contact), reach, after=0))
    inner = words
    if brand.logo is not None:
        logo = LogoShown(brand.logo, voice.say("Logo of {seller}", seller=brand.name))
        wide = logo.wide + 2 * PLATE
        inner = [Columns([[logo], words], (wide, paper.measure - wide), gap=18.0, after=0.0)]
    band = Boxed(inner, BAND_PAD, after=0, line=None, fill=brand.brand.colour, side=paper.left)
    accent = Boxed([], ACCENT / 2, after=mm(4), line=None, fill=brand.brand.accent)
    return Columns([[band, accent]], after=0.0)
