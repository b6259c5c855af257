"""One picture in three formats, read back with other programs' readers."""

import io
import xml.etree.ElementTree as ET

import numpy as np
import pikepdf
import pypdf
import pypdfium2
import pytest
from drawn_pieces import brace_scene, straight_tube
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.closeup import close_up
from buildplan.drawing.fonts import REGULAR, register_fonts
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.marks import (
    Circle,
    Curve,
    Ink,
    Inset,
    Label,
    Look,
    Mark,
    Picture,
    Polyline,
    Stamp,
)
from buildplan.drawing.panel import Panel
from buildplan.drawing.pdf import draw_picture, form_name, picture_pdf
from buildplan.drawing.png import picture_png
from buildplan.drawing.scene import finished_picture, step_picture
from buildplan.drawing.svg import picture_svg
from buildplan.drawing.way_round import TiedRow

SVG = "{http://www.w3.org/2000/svg}"


def sample() -> Picture:
    scene = brace_scene()
    section = scene.framework.braces[1].section
    row = TiedRow(section, closed=True)
    panel = Panel(scene, CAMERAS["corner"], section, (row,), frozenset(section[2:]))
    return close_up(panel, 240, 200, alt="A & <B>", data=(("turn", "Brace <2>"),))


def looks(picture: Picture) -> set[Look]:
    return {mark.look for mark in picture.marks if isinstance(mark, Stamp)}


def forms(pdf: pikepdf.Pdf) -> int:
    streams = [item for item in pdf.objects if isinstance(item, pikepdf.Stream)]
    return sum(item.get("/Subtype") == "/Form" for item in streams)


def test_each_look_is_one_form_of_the_document() -> None:
    framework, shape = straight_tube(6)
    pictures = [finished_picture(framework, shape, CAMERAS["corner"], 300, 200)] * 3
    register_fonts()
    out = io.BytesIO()
    canvas = Canvas(out, invariant=1, initialFontName=REGULAR)
    for picture in pictures:
        draw_picture(canvas, picture, 20, 30)
        canvas.showPage()
    canvas.save()
    with pikepdf.open(io.BytesIO(out.getvalue())) as pdf:
        assert forms(pdf) == len(looks(pictures[0]))
        stream = pikepdf.parse_content_stream(pdf.pages[1])
    stamped = sum(str(instruction.operator) == "Do" for instruction in stream)
    assert stamped == sum(isinstance(mark, Stamp) for mark in pictures[1].marks)


def test_form_names_differ_when_looks_do() -> None:
    framework, shape = straight_tube(3)
    found = looks(finished_picture(framework, shape, CAMERAS["corner"], 300, 200)) | looks(sample())
    assert len({form_name(look) for look in found}) == len(found)


def test_pdf_page_is_the_picture() -> None:
    picture = sample()
    reader = pypdf.PdfReader(io.BytesIO(picture_pdf(picture)))
    assert len(reader.pages) == 1
    size = reader.pages[0].mediabox
    assert (float(size.width), float(size.height)) == pytest.approx((240, 200))
    words = reader.pages[0].extract_text().split()
    assert sorted(words) == sorted(m.text for m in picture.marks if isinstance(m, Label))


def test_pdf_embeds_its_only_fonts() -> None:
    picture = Picture(200, 40, (Label((100, 15), "Žižkov Ωμέγα Лавка", 12),), "names")
    data = picture_pdf(picture)
    assert "Žižkov Ωμέγα Лавка" in pypdf.PdfReader(io.BytesIO(data)).pages[0].extract_text()
    with pikepdf.open(io.BytesIO(data)) as pdf:
        fonts = [o for o in pdf.objects if isinstance(o, pikepdf.Dictionary)]
        names = [str(o.BaseFont) for o in fonts if o.get("/Type") == "/Font"]
        held = [o for o in fonts if o.get("/Type") == "/FontDescriptor"]
        assert names
        assert all("DejaVu" in name for name in names)
        assert all("/FontFile2" in o for o in held)


def test_pdf_draws_circles_true() -> None:
    # read back with another renderer: a disc of radius 30 covers pi 30^2 square points
    picture = Picture(100, 100, (Circle((50, 50), 30, Ink(fill="#000000")),), "disc")
    page = pypdfium2.PdfDocument(picture_pdf(picture))[0]
    dark = np.asarray(page.render(scale=8).to_pil().convert("L")) < 128
    assert dark.sum() / 64 == pytest.approx(np.pi * 900, rel=0.003)


def test_nothing_is_drawn_outside_the_picture() -> None:
    marks = (Circle((0, 0), 50, Ink(fill="#000000")),)
    register_fonts()
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(200, 200), invariant=1, initialFontName=REGULAR)
    draw_picture(canvas, Picture(40, 40, marks, ""), 100, 100)
    canvas.save()
    page = pypdfium2.PdfDocument(out.getvalue())[0]
    dark = np.asarray(page.render(scale=1).to_pil().convert("L")) < 128
    rows, columns = np.nonzero(dark)
    assert columns.min() >= 99
    assert rows.max() <= 100


def test_canvas_state_is_left_as_it_was() -> None:
    register_fonts()
    streams = []
    for pictures in ([], [sample()]):
        canvas = Canvas(io.BytesIO(), invariant=1, initialFontName=REGULAR)
        canvas.setFillColorRGB(1, 0, 0)
        for picture in pictures:
            draw_picture(canvas, picture, 0, 0)
        streams.append((canvas._fillColorObj, canvas._fontname, canvas._lineWidth))
        depth = sum(line.split().count("q") - line.split().count("Q") for line in canvas._code)
        assert depth == 0
    assert streams[0] == streams[1]


def test_svg_is_well_formed_with_the_same_marks() -> None:
    picture = sample()
    root = ET.fromstring(picture_svg(picture, title="Brace 2"))
    title, description, defs, drawing = root
    assert title.text == "Brace 2"
    assert description.text == "A & <B>"
    assert len(defs) == len(looks(picture))
    kinds: dict[type[Mark], str] = {
        Stamp: "use",
        Label: "text",
        Circle: "circle",
        Curve: "path",
        Polyline: "path",
        Inset: "g",
    }
    assert [item.tag for item in drawing] == [SVG + kinds[type(mark)] for mark in picture.marks]
    names = {item.attrib["id"] for item in defs}
    used = {item.attrib["href"].lstrip("#") for item in drawing if item.tag == f"{SVG}use"}
    assert used == names
    # what a program may read: of which kind the picture is, and what it shows
    assert drawing.attrib["data-picture"] == "close-up"
    assert drawing.attrib["data-turn"] == "Brace <2>"


def test_svg_text_is_text() -> None:
    picture = Picture(100, 40, (Label((50, 10), "R&D <1>", 9, bold=True, halo="#FFFFFF"),), "")
    (text,) = ET.fromstring(picture_svg(picture)).iter(f"{SVG}text")
    assert text.text == "R&D <1>"
    assert text.attrib["font-weight"] == "bold"


def test_png_has_the_size_asked_for() -> None:
    image = Image.open(io.BytesIO(picture_png(sample(), dpi=144)))
    assert image.size == (480, 400)
    assert len(np.unique(np.asarray(image.convert("L")))) > 20


def test_same_picture_same_bytes() -> None:
    for write in (picture_pdf, picture_svg, picture_png):
        assert write(sample()) == write(sample())


def test_empty_picture() -> None:
    empty = Picture(50, 50, (), "nothing")
    assert picture_pdf(empty)
    assert ET.fromstring(picture_svg(empty)) is not None


def test_small_file_for_many_balloons() -> None:
    framework, shape = straight_tube(80)
    picture = step_picture(brace_scene(80, 3), CAMERAS["corner"], 500, 300)
    whole = finished_picture(framework, shape, CAMERAS["corner"], 500, 300)
    assert len(picture_pdf(picture)) < 60_000
    assert len(picture_pdf(whole)) < 120_000


def nested() -> Picture:
    """A red square with its own box half outside it, set into a white picture; a look in it."""
    square = Polyline(((-20, -20), (30, -20), (30, 30), (-20, 30)), Ink(fill="#FF0000"), True)
    look = Stamp(Look("round", "#1F5F8B", "new"), (10, 0, 0, 10, 10, 10))
    inner = Picture(20, 20, (square, look, Label((10, 4), "in", 8)), "inner")
    ground = Polyline(((0, 0), (60, 0), (60, 60), (0, 60)), Ink(fill="#FFFFFF"), True)
    return Picture(60, 60, (ground, Inset(inner, (30, 10))), "outer")


def test_an_inset_is_moved_and_clipped_to_its_own_box() -> None:
    image = np.asarray(Image.open(io.BytesIO(picture_png(nested(), dpi=144))).convert("RGB"))
    red = (image[..., 0] > 200) & (image[..., 1] < 60)
    rows, columns = np.nonzero(red)
    # 2 pixels a point, row 0 at the top: the box from (30, 10) to (50, 30)
    assert (columns.min(), columns.max() + 1) == (60, 100)
    assert (rows.min(), rows.max() + 1) == (60, 100)


def test_an_inset_is_a_nested_svg_with_its_looks_defined() -> None:
    root = ET.fromstring(picture_svg(nested()))
    _, inner = root.iter(f"{SVG}svg")
    assert inner.get("viewBox") == "0 0 20 20"
    defined = {group.get("id") for group in root.iter(f"{SVG}g") if group.get("id")}
    used = {use.get("href", "")[1:] for use in inner.iter(f"{SVG}use")}
    assert used
    assert used <= defined


def test_labels_of_an_inset_are_found_where_they_are() -> None:
    ((left, low, right, high),) = label_boxes(nested())["in"]
    assert (left + right) / 2 == pytest.approx(40)
    assert low < 14 < high
