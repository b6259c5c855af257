"""Text of any script: its shapes, the fonts that hold it, and what is refused.

Outside references: the presentation forms of the Unicode Character Database for the shapes of
Arabic letters; pdfium and pypdf for what a reader finds on the page.
"""

from __future__ import annotations

import io
import re
import unicodedata
from collections.abc import Iterator
from pathlib import Path

import pypdf
import pypdfium2
import pytest
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from square_fonts import square_font

from buildplan.document.blocks import paragraph_of_own
from buildplan.document.paper import PAPERS
from buildplan.document.paragraphs import OrderedParagraph
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.text import BODY, plain
from buildplan.drawing.fonts import BOLD, REGULAR, register_fonts, text_width
from buildplan.drawing.typeset import font_files, setting
from buildplan.drawing.typeset.clusters import clusters
from buildplan.drawing.typeset.face import Typeface
from buildplan.drawing.typeset.font_files import read_font, with_fonts
from buildplan.drawing.typeset.setting import Letterform, set_line
from buildplan.language.told import NoSignError
from buildplan.language.voice import Voice

HEBREW, ARABIC, CHINESE = "כוכב קריאה", "نجمة القراءة", "阅读之星"


@pytest.fixture(autouse=True)
def no_fonts_of_the_machine(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """What is tested does not rest on the fonts that this machine has."""
    register_fonts()
    set_line.cache_clear()
    monkeypatch.setattr(setting, "fonts_of_machine", lambda: ())
    yield
    set_line.cache_clear()


def face(name: str = REGULAR) -> Typeface:
    found = pdfmetrics.getFont(name)
    assert isinstance(found, Typeface)
    return found


def pieces(text: str) -> tuple[str | Letterform, ...]:
    return set_line(text, face().own, font_files.named_fonts())


def printed(*lines: str, name: str = REGULAR) -> bytes:
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(400, 40 * len(lines)), invariant=1, initialFontName=REGULAR)
    for number, line in enumerate(lines):
        canvas.setFont(name, 20)
        canvas.drawString(10, 40 * number + 12, line)
    canvas.save()
    return out.getvalue()


def read_back(data: bytes) -> str:
    document = pypdfium2.PdfDocument(data)
    text = str(document[0].get_textpage().get_text_bounded())
    document.close()
    return text


def places_of(data: bytes, *found: str) -> list[float]:
    """How far from the left each of some signs of the first page stands."""
    with pypdfium2.PdfDocument(data) as document:
        page = document[0].get_textpage()
        text = page.get_text_range()
        return [page.get_charbox(text.index(sign))[0] for sign in found]


def test_a_name_keeps_its_own_direction_wherever_it_stands() -> None:
    """As isolates have it (UAX 9, 2.4): a reader of the name begins at its right end."""
    name = "\u05db\u05d5\u05db\u05d1 30 Foxglove"
    for sentence in ("", "Zed "):
        canvas = Canvas(out := io.BytesIO(), pagesize=(400, 100), initialFontName=REGULAR)
        shown = OrderedParagraph(sentence + plain(name), BODY)
        shown.wrapOn(canvas, 380, 90)
        shown.drawOn(canvas, 10, 30)
        canvas.save()
        begins, ends = places_of(out.getvalue(), "\u05d5", "F")
        assert ends < begins
        if sentence:
            assert places_of(out.getvalue(), "Z")[0] < ends
    assert plain("R&B <b>") == "R&amp;B &lt;b&gt;"


def test_a_space_stays_at_the_end_that_it_parts_from_what_is_beside() -> None:
    seen = ["".join(p if isinstance(p, str) else p.text for p in pieces(f" {HEBREW} 12 "))]
    seen += ["".join(p if isinstance(p, str) else p.text for p in pieces(f"{HEBREW} "))]
    assert seen == [f" 12 {HEBREW[::-1]} ", f"{HEBREW[::-1]} "]


def test_a_paragraph_from_the_right_stays_so_on_every_line() -> None:
    """Its lines end at the left, their full stops too, though one begins with Latin letters."""
    words = paragraph_of_own("\u05d0\u05d1\u05d2 " * 27 + "Foxglove.")
    section = Section("-", [words], bare=True)
    data = print_document(Document([section], PAPERS["a4"], Voice(), "-"))
    stop, letter = places_of(data, ".", "F")
    assert stop < letter


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("abc", ["a", "b", "c"]),
        ("e\u0301a", ["e\u0301", "a"]),
        # by hand, of UAX 29, 3.1.1: consonants that a virama joins; signs of Thai; joined emoji
        ("\u0915\u094d\u0937\u093f\u0924", ["\u0915\u094d\u0937\u093f", "\u0924"]),
        ("\u0e19\u0e49\u0e33\u0e01", ["\u0e19\u0e49\u0e33", "\u0e01"]),
        ("\u0e40\u0e01\u0e01", ["\u0e40\u0e01", "\u0e01"]),
        ("\U0001f469\u200d\U0001f3a4x", ["\U0001f469\u200d\U0001f3a4", "x"]),
    ],
)
def test_what_stays_together(text: str, parts: list[str]) -> None:
    assert clusters(text) == parts


def test_arabic_letters_join() -> None:
    glyph_of = face().face.charToGlyph
    shapes = [piece for piece in pieces("نجمة") if isinstance(piece, Letterform)]
    # Unicode's presentation forms: final teh marbuta, medial meem and jeem, initial noon
    forms = ("\ufe94", "\ufee4", "\ufea0", "\ufee7")
    assert [unicodedata.decomposition(form).split()[0] for form in forms] == [
        "<final>",
        "<medial>",
        "<medial>",
        "<initial>",
    ]
    assert [shape.glyphs[0].number for shape in shapes] == [glyph_of[ord(f)] for f in forms]
    # lam and alef are one shape, which stands for both
    (ligature,) = (piece for piece in pieces("لا") if isinstance(piece, Letterform))
    assert ligature.glyphs[0].number == glyph_of[0xFEFB]


@pytest.mark.parametrize("name", [REGULAR, BOLD])
def test_what_is_printed_is_read_again_and_as_wide_as_it_is_drawn(name: str) -> None:
    lines = [HEBREW, ARABIC, "שָׁלוֹם", "Ångström Ελληνικά Русский", "x\u0302"]
    found = read_back(printed(*lines, name=name))
    for line in lines:
        assert unicodedata.normalize("NFC", line) in unicodedata.normalize("NFC", found), line
    document = pypdfium2.PdfDocument(printed(HEBREW, name=name))
    page = document[0].get_textpage()
    right = max(page.get_charbox(at)[2] for at in range(page.count_chars()))
    assert right == pytest.approx(10 + text_width(HEBREW, 20, bold=name == BOLD), abs=2.0)
    document.close()


def test_what_our_type_has_is_printed_as_reportlab_prints_it() -> None:
    line = "Ana, Žižek – Ελληνικά, Русский ½ º “…”"
    file = face().face.filename
    ours = printed(line)
    pdfmetrics.registerFont(TTFont(REGULAR, file))
    try:
        theirs = printed(line)
    finally:
        register_fonts.cache_clear()
        register_fonts()
    assert ours == theirs


def test_what_no_font_has_is_refused_by_its_name() -> None:
    with pytest.raises(NoSignError, match=r"U\+0939 DEVANAGARI LETTER HA"):
        printed("हिन्दी")
    with pytest.raises(NoSignError, match="阅读之星"):
        OrderedParagraph(plain(f"{CHINESE} 3"), BODY).wrap(200, 200)
    with pytest.raises(NoSignError, match="U\\+1F388 BALLOON"):
        text_width("🎈", 10)


def test_a_sign_that_chooses_a_form_needs_no_font_that_knows_it() -> None:
    """A heart as telephones write it: with variation selector 16 (Unicode Standard, 23.4)."""
    heart = "\u2764\ufe0f"
    assert heart in read_back(printed(f"With {heart} yours"))
    assert text_width(heart, 10) == pytest.approx(text_width("\u2764", 10))


@pytest.mark.parametrize("curves", ["glyf", "CFF"])
def test_a_font_that_is_named_prints_what_ours_has_not(tmp_path: Path, curves: str) -> None:
    font = read_font(square_font(tmp_path / "squares.ttf", CHINESE, curves=curves))
    line = f"{CHINESE} for {HEBREW}"
    with with_fonts([font]):
        data = printed(line)
        printed("Something else before it, with 星")
        assert printed(line) == data
        assert text_width(CHINESE, 10) == pytest.approx(4 * 9.0)
    assert CHINESE in read_back(data)
    assert CHINESE in pypdf.PdfReader(io.BytesIO(data)).pages[0].extract_text()
    with pytest.raises(NoSignError):
        printed(line)


def test_shapes_beyond_one_font_of_a_document_go_on_in_the_next(tmp_path: Path) -> None:
    signs = "".join(map(chr, range(0x4E00, 0x4E00 + 300)))
    font = read_font(square_font(tmp_path / "squares.ttf", signs))
    with with_fonts([font]):
        data = printed(signs)
    found = pypdf.PdfReader(io.BytesIO(data)).pages[0].extract_text()
    assert "".join(found.split()) == signs


def test_a_page_never_holds_the_box_of_a_missing_sign() -> None:
    """Code 0 draws `.notdef` in reportlab's fonts: no text of the page uses it."""
    data = printed(HEBREW, ARABIC, "Ελληνικά")
    content = pypdf.PdfReader(io.BytesIO(data)).pages[0].get_contents()
    assert content is not None
    assert not re.search(rb"\([^)]*\\000", content.get_data())
