"""Pictures on a reportlab canvas.

Each look becomes one form XObject of the document (ISO 32000-1, 8.10), stamped by a matrix
wherever it is needed. The forms hold paths only and need no resources.
"""

from __future__ import annotations

import io
from functools import lru_cache

from reportlab import rl_config
from reportlab.lib.colors import Color, HexColor
from reportlab.pdfbase import pdfdoc
from reportlab.pdfgen.canvas import Canvas

from buildplan.drawing.curves import ellipse
from buildplan.drawing.fonts import REGULAR, face, register_fonts
from buildplan.drawing.marks import (
    Circle,
    Ink,
    Inset,
    Label,
    Look,
    PathMark,
    Picture,
    Point,
    Polyline,
    Stamp,
)
from buildplan.drawing.symbols import look_marks

# Streams stay binary: written as text they would be a quarter larger.
rl_config.useA85 = 0

_STAMP = "q %.3f %.3f %.3f %.3f %.3f %.3f cm /%s Do Q"

# A form's box, in body diameters: the longest link that looks.py makes, with its ends.
_FORM_BOX = (-2.0, -1.0, 2.0, 1.0)


@lru_cache(maxsize=1 << 16)
def _number(value: float) -> str:
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


@lru_cache(maxsize=4096)
def _colour(colour: str) -> str:
    return " ".join(_number(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))


def _at(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _set_ink(ink: Ink) -> str:
    parts = []
    if ink.fill is not None:
        parts.append(f"{_colour(ink.fill)} rg")
    if ink.stroke is not None:
        dash = " ".join(_number(d) for d in ink.dash)
        parts.append(f"{_colour(ink.stroke)} RG {_number(ink.width)} w [{dash}] 0 d")
    return " ".join(parts)


def _paint(ink: Ink) -> str:
    if ink.fill is None:
        return "S" if ink.stroke is not None else "n"
    return "f" if ink.stroke is None else "B"


def _path(mark: PathMark) -> str:
    if isinstance(mark, Circle):
        return _path(ellipse(mark.centre, mark.radius, mark.radius, 0.0, mark.ink))
    if isinstance(mark, Polyline):
        lines = [f"{_at(mark.points[0])} m", *(f"{_at(p)} l" for p in mark.points[1:])]
    else:
        lines = [f"{_at(mark.start)} m"]
        n = _number  # a page has thousands of these
        lines += [
            f"{n(a)} {n(b)} {n(c)} {n(d)} {n(e)} {n(f)} c" for (a, b), (c, d), (e, f) in mark.pieces
        ]
    if mark.closed:
        lines.append("h")
    return " ".join(lines)


def path_operators(mark: PathMark) -> str:
    """The content-stream operators that draw one path."""
    return f"{_set_ink(mark.ink)} {_path(mark)} {_paint(mark.ink)}"


def form_name(look: Look) -> str:
    """The name of a look's form in the document."""
    fields = (
        look.form,
        look.colour.lstrip("#"),
        look.state,
        _number(look.aspect),
        str(look.pattern),
        _number(look.length),
        look.near or "x",
        str(look.tone),
        _number(look.line),
        look.finish,
    )
    return "-".join(fields)


def _need_form(canvas: Canvas, look: Look) -> str:
    """Define the look's form unless the document has it; return its name there."""
    name = form_name(look)
    document = canvas._doc
    if not document.hasForm(name):
        form = pdfdoc.PDFFormXObject(*_FORM_BOX)
        form.Resources = pdfdoc.PDFDictionary({})
        form.compression = canvas._pageCompression
        operators = [path_operators(mark) for mark in look_marks(look)]
        form.setStreamList(["1 J 1 j", *operators])
        drawing_in = document.inObject
        document.addForm(name, form)
        document.inObject = drawing_in
    canvas._formsinuse.append(name)
    return str(document.getXObjectName(name))


@lru_cache(maxsize=1024)
def _ink(colour: str) -> Color:
    return HexColor(colour)


def _draw_label(canvas: Canvas, label: Label) -> None:
    x, y = label.at
    canvas.setFont(face(label.bold), label.size)
    draw = {
        "start": canvas.drawString,
        "middle": canvas.drawCentredString,
        "end": canvas.drawRightString,
    }[label.anchor]
    if label.halo is not None:
        canvas.setStrokeColor(_ink(label.halo))
        canvas._code.append("[] 0 d 1 j")
        canvas.setLineWidth(label.size * 0.22)
        draw(x, y, label.text, mode=1)
    canvas.setFillColor(_ink(label.colour))
    draw(x, y, label.text, mode=0)


def draw_picture(canvas: Canvas, picture: Picture, x: float, y: float, scale: float = 1.0) -> None:
    """Draw a picture with its lower left corner at (x, y), in points, on the current page.

    Nothing is drawn outside the picture's box. Leaves the canvas' state as it was. Draws no
    marked content of its own.
    """
    _draw(canvas, picture, x, y, scale, {})


def _draw(
    canvas: Canvas, picture: Picture, x: float, y: float, scale: float, names: dict[int, str]
) -> None:
    """As `draw_picture`. `names` are those of the looks' forms, by the looks' identities: the
    picture keeps its looks, and to compare them by their fields takes as long as to draw."""
    canvas.saveState()
    canvas.transform(scale, 0, 0, scale, x, y)
    size = f"{_number(picture.width)} {_number(picture.height)}"
    canvas._code.append(f"0 0 {size} re W n 1 J 1 j")
    for mark in picture.marks:
        if isinstance(mark, Stamp):
            name = names.get(id(mark.look))
            if name is None:
                name = names[id(mark.look)] = _need_form(canvas, mark.look)
            canvas._code.append(_STAMP % (*mark.matrix, name))
        elif isinstance(mark, Label):
            _draw_label(canvas, mark)
        elif isinstance(mark, Inset):
            _draw(canvas, mark.picture, *mark.at, 1.0, names)
        else:
            canvas._code.append(path_operators(mark))
    canvas.restoreState()


def picture_pdf(picture: Picture, title: str = "") -> bytes:
    """One picture as a PDF document with a page of its own size.

    The same picture gives the same bytes.
    """
    register_fonts()
    out = io.BytesIO()
    canvas = Canvas(
        out,
        pagesize=(picture.width, picture.height),
        invariant=1,
        pageCompression=1,
        initialFontName=REGULAR,
    )
    canvas.setTitle(title or picture.alt)
    draw_picture(canvas, picture, 0, 0)
    canvas.showPage()
    canvas.save()
    return out.getvalue()
