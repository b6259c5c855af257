"""Gauges are true to size: read back from the PDF's own drawing operators.

1 in = 25.4 mm exactly (international yard and pound agreement, 1959; from memory), and a PDF
unit is 1/72 in (ISO 32000-1, 8.3.2.3; from memory).
"""

from __future__ import annotations

import io
import math

import pytest
from diagram_pieces import assert_inside, assert_readable, sized, star
from pypdf import PdfReader
from pypdf.generic import ContentStream

from buildplan.design.measures import Units
from buildplan.drawing.gauge import GaugeSheet, gauge_sheets
from buildplan.drawing.gauge_ruler import ruler_words
from buildplan.drawing.marks import Label, Picture
from buildplan.drawing.pdf import picture_pdf
from buildplan.framework.model import Framework
from buildplan.language.voice import LOCALES, Voice

# ISO 216 A4 is 210 x 297 mm; US Letter 8.5 x 11 in (tests/../checks: paper sizes)
A4 = (210 / 25.4 * 72, 297 / 25.4 * 72)
LETTER = (612.0, 792.0)
Path = list[tuple[float, float]]


def pdf_paths(picture: Picture) -> list[tuple[Path, bool]]:
    """Each path of the page as points along it, and whether it has curves."""
    reader = PdfReader(io.BytesIO(picture_pdf(picture)))
    page = reader.pages[0]
    assert float(page.mediabox.width) == pytest.approx(picture.width, abs=0.01)
    paths: list[tuple[Path, bool]] = []
    now: Path = []
    curved = False
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        values = [float(v) for v in operands if isinstance(v, int | float)]
        if operator == b"m":
            now, curved = [(values[0], values[1])], False
        elif operator == b"l":
            now.append((values[0], values[1]))
        elif operator == b"c":
            curved = True
            (x0, y0), (x1, y1, x2, y2, x3, y3) = now[-1], values
            for i in range(1, 33):
                t = i / 32
                a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t**2 * (1 - t), t**3
                now.append((a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3))
        elif operator in (b"S", b"B", b"s", b"b"):
            paths.append((now, curved))
    return paths


def extent(path: Path) -> tuple[float, float]:
    xs, ys = [x for x, _ in path], [y for _, y in path]
    return max(xs) - min(xs), max(ys) - min(ys)


def forms(sheets: tuple[GaugeSheet, ...]) -> list[list[tuple[str, float]]]:
    return [[(g.form, round(g.diameter_m * 1000, 3)) for g in s.gauges] for s in sheets]


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_star_gauges_fit_one_page(paper: tuple[float, float]) -> None:
    """A 12 in link is sized to 8 in, a 5 in lock to 3.5 in (common practice, no source)."""
    sheets = gauge_sheets(star(), paper, "in", Voice(), head=40, foot=16)
    assert forms(sheets) == [[("notch", 203.2), ("notch", 88.9)]]
    assert (sheets[0].picture.width, sheets[0].picture.height) == paper


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize(("inches", "true_points"), [(8.0, 576.0), (3.5, 252.0)])
def test_notch_is_true_in_the_pdf(
    paper: tuple[float, float], inches: float, true_points: float
) -> None:
    picture = gauge_sheets(star(), paper, "in", Voice())[0].picture
    notches = [path for path, curved in pdf_paths(picture) if curved and len(path) > 30]
    (notch,) = [path for path in notches if abs(extent(path)[1] - true_points) < 1]
    assert extent(notch)[1] == pytest.approx(true_points, abs=0.01)
    # from jaw to jaw, square across
    assert math.dist(notch[0], notch[-1]) == pytest.approx(true_points, abs=0.01)
    assert notch[0][0] == pytest.approx(notch[-1][0], abs=0.01)
    # the half circle is round: every point of it one radius from its centre
    deep = max(abs(x - notch[0][0]) for x, _ in notch)
    inward = 1 if max(x for x, _ in notch) > notch[0][0] + 1 else -1
    centre = (notch[0][0] + inward * (deep - true_points / 2), (notch[0][1] + notch[-1][1]) / 2)
    beyond = [p for p in notch if (p[0] - centre[0]) * inward > 1e-6]
    assert len(beyond) > 60
    for point in beyond:
        assert math.dist(point, centre) == pytest.approx(true_points / 2, abs=0.02)


@pytest.mark.parametrize(("gauge", "units", "mm"), [(15, "cm", 150.0), (2.5, "in", 63.5)])
def test_hole_is_true_in_the_pdf(gauge: float, units: Units, mm: float) -> None:
    (sheet,) = gauge_sheets(sized([gauge], units), A4, units, Voice())
    assert forms((sheet,)) == [[("hole", mm)]]
    circles = [path for path, curved in pdf_paths(sheet.picture) if curved]
    wide, tall = extent(circles[0])
    assert wide == pytest.approx(mm / 25.4 * 72, abs=0.01)
    assert tall == pytest.approx(mm / 25.4 * 72, abs=0.01)
    x, y = sheet.gauges[0].mouth
    for point in circles[0]:
        # a circle by four cubic curves is true within 0.028 %
        assert math.dist(point, (x, y)) == pytest.approx(mm / 25.4 * 36, rel=3e-4)


@pytest.mark.parametrize(
    ("gauge", "units", "words"),
    [
        (3.5, "in", "3 1/2 in (88.9 mm)"),
        (8, "in", "8 in (203.2 mm)"),
        (3.4, "in", "3.4 in (86.4 mm)"),
        (20, "cm", "20 cm (200 mm)"),
        (20.32, "cm", "20.3 cm (203.2 mm)"),
    ],
)
def test_a_gauge_is_called_as_in_the_steps(gauge: float, units: Units, words: str) -> None:
    (sheet, *_) = gauge_sheets(sized([gauge], units), A4, units, Voice())
    assert words in [mark.text for mark in sheet.picture.marks if isinstance(mark, Label)]
    assert words in sheet.picture.alt


def test_ruler_is_true() -> None:
    """100 mm and 4 in: 283.465 and 288 points."""
    picture = gauge_sheets(star(), A4, "in", Voice())[0].picture
    level = [
        abs(path[1][0] - path[0][0])
        for path, curved in pdf_paths(picture)
        if not curved and len(path) == 2 and abs(path[0][1] - path[1][1]) < 1e-6
    ]
    assert any(length == pytest.approx(100 / 25.4 * 72, abs=0.01) for length in level)
    assert any(length == pytest.approx(288, abs=0.01) for length in level)


def test_too_large_for_one_piece_comes_in_two_halves() -> None:
    sheets = gauge_sheets(sized([11], "in"), A4, "in", Voice())
    assert forms(sheets) == [[("half", 279.4)], [("half", 279.4)]]
    for sheet in sheets:
        curves = [path for path, curved in pdf_paths(sheet.picture) if curved]
        (x, y), radius = sheet.gauges[0].mouth, 11 * 36
        assert abs(curves[0][0][1] - y) == pytest.approx(radius, abs=0.01)
        assert curves[0][0][0] == pytest.approx(x, abs=0.01)
        assert curves[0][-1][1] == pytest.approx(y, abs=0.01)


def test_far_too_large_says_what_a_tape_shows_round_it() -> None:
    """Circumference pi d: 24 in across is 75.4 in round."""
    (sheet,) = gauge_sheets(sized([24], "in"), A4, "in", Voice())
    assert forms((sheet,)) == [[("tape", 609.6)]]
    assert "75.4 in" in sheet.picture.alt
    assert any("75.4 in" in m.text for m in sheet.picture.marks if isinstance(m, Label))


MANY = [27.94, 20, 15, 9, 6, 50, 80]


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize("framework", [star(), sized(MANY, "cm")], ids=["star", "many"])
def test_sheets_hold_every_gauge_inside_the_margins(
    framework: Framework, paper: tuple[float, float]
) -> None:
    sheets = gauge_sheets(framework, paper, "cm", Voice(), head=36, foot=14)
    wanted = {round(b.gauge_m, 6) for b in framework.balloons.values()}
    assert {round(g.diameter_m, 6) for sheet in sheets for g in sheet.gauges} == wanted
    margin = 12 / 25.4 * 72
    for sheet in sheets:
        assert_inside(sheet.picture)
        assert_readable(sheet.picture)
        for path, _ in pdf_paths(sheet.picture):
            for x, y in path:
                assert margin - 0.6 <= x <= paper[0] - margin + 0.6
                assert margin + 14 - 0.6 <= y <= paper[1] - margin - 36 + 0.6


def test_cards_do_not_overlap() -> None:
    for sheet in gauge_sheets(sized(MANY, "cm"), A4, "cm", Voice()):
        cards = [
            path
            for path, curved in pdf_paths(sheet.picture)
            if not curved and len(path) == 4 and min(extent(path)) > 60
        ]
        boxes = [
            (min(x for x, _ in c), min(y for _, y in c), max(x for x, _ in c), max(y for _, y in c))
            for c in cards
        ]
        for i, a in enumerate(boxes):
            for b in boxes[:i]:
                wide = min(a[2], b[2]) - max(a[0], b[0])
                tall = min(a[3], b[3]) - max(a[1], b[1])
                assert wide < 0.01 or tall < 0.01


def test_jaws_are_20_mm_long_where_there_is_room() -> None:
    """A balloon is laid between jaws that reach as far as a thumb (common practice, no source)."""
    sheets = gauge_sheets(sized([8.0], "in"), A4, "in", Voice())
    (gauge,) = (gauge for sheet in sheets for gauge in sheet.gauges if gauge.form == "notch")
    assert gauge.jaw == pytest.approx(20 / 25.4 * 72)


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_large_words_on_the_gauges_are_large_and_within_them(paper: tuple[float, float]) -> None:
    """16 pt is the usual least for large print (from memory); only the ruler's own figures stay
    small, and what has no room beside it is left out."""
    (sheet,) = gauge_sheets(star(), paper, "in", Voice(), head=40, foot=16, words_pt=16)
    said = [mark for mark in sheet.picture.marks if isinstance(mark, Label)]
    words = [mark for mark in said if mark.text not in {"mm", "in"} and not mark.text.isdigit()]
    assert min(mark.size for mark in words) >= 16
    assert {"ivory, 5 in", "round"} <= {mark.text for mark in words}
    assert_inside(sheet.picture)


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_much_card_is_left_where_a_page_has_room_for_it(paper: tuple[float, float]) -> None:
    """Arms of 5 mm bend when a balloon is held between them (common practice, no source)."""
    (sheet,) = gauge_sheets(sized([7, 3.5], "in"), paper, "in", Voice(), head=23, foot=17)
    millimetres = [gauge.arm / 72 * 25.4 for gauge in sheet.gauges]
    assert millimetres == pytest.approx([20, 20])


def test_two_that_have_room_side_by_side_share_a_page() -> None:
    """6 in and 5 1/2 in as holes would take a page each; as notches half its width is enough."""
    assert forms(gauge_sheets(sized([6, 5.5], "in"), A4, "in", Voice())) == [
        [("notch", 152.4), ("notch", 139.7)]
    ]


@pytest.mark.parametrize("language", LOCALES)
def test_what_is_done_with_gauges_stands_beside_the_ruler(language: str) -> None:
    voice = Voice(language)
    picture = gauge_sheets(star(), A4, "in", voice, head=23, foot=17)[0].picture
    said = " ".join(mark.text for mark in picture.marks if isinstance(mark, Label))
    for line in ruler_words("in", voice):
        assert line in said
    assert_inside(picture)
    assert_readable(picture)
