"""Font files: which are found on a machine, which are refused, what each holds, and bold without a
bold face."""

from __future__ import annotations

from pathlib import Path

import pytest
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen
from square_fonts import square_font

from buildplan.drawing.typeset import font_files
from buildplan.drawing.typeset.font_files import FontFile, UnfitFontError, opened, read_font

CHINESE = "阅读之星"


def test_a_bold_line_in_a_font_without_a_bold_face_is_drawn_thicker(tmp_path: Path) -> None:
    font = read_font(square_font(tmp_path / "squares.ttf", CHINESE))
    thick = opened(FontFile(font.path, font.index, bold=True))
    glyph = thick.get_nominal_glyph(ord(CHINESE[0]))
    more = thick.get_glyph_extents(glyph).width - opened(font).get_glyph_extents(glyph).width
    assert 0 < more <= 0.05 * thick.face.upem  # "typical values" of its own documentation


@pytest.mark.parametrize(
    ("made", "said"),
    [
        (lambda file: file.write_text("no font at all"), "is no font"),
        (lambda file: square_font(file, "星", licence=2), "may not be embedded"),
    ],
)
def test_a_font_that_cannot_be_used_is_refused(tmp_path: Path, made: object, said: str) -> None:
    file = tmp_path / "named.ttf"
    assert callable(made)
    made(file)
    with pytest.raises(UnfitFontError, match=said):
        read_font(file)


def test_a_sign_that_a_font_draws_nothing_for_is_not_held(tmp_path: Path) -> None:
    file = square_font(tmp_path / "squares.ttf", "星")
    assert font_files.holds(FontFile(str(file)), "星")
    builder = FontBuilder(1000, isTTF=True)
    builder.setupGlyphOrder([".notdef", "empty"])
    builder.setupCharacterMap({ord("星"): "empty"})
    empty = TTGlyphPen(None).glyph()
    builder.setupGlyf({".notdef": empty, "empty": empty})
    builder.setupHorizontalMetrics({".notdef": (900, 0), "empty": (900, 0)})
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupPost()
    bare = tmp_path / "empty.ttf"
    builder.save(str(bare))
    assert not font_files.holds(FontFile(str(bare)), "星")


def test_fonts_of_the_machine_are_found_plain_styles_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("B-BoldItalic.ttf", "Z-Sans.ttf", "Y-Regular.ttf", "A-Bold.ttf"):
        square_font(tmp_path / name, "星")
    (tmp_path / "broken.ttf").write_bytes(b"nothing")
    square_font(tmp_path / "ours alone.ttf", "星", licence=2)
    monkeypatch.setattr(font_files, "_folders", lambda: [tmp_path])
    font_files.fonts_of_machine.cache_clear()
    try:
        found = [Path(font.path).name for font in font_files.fonts_of_machine()]
    finally:
        font_files.fonts_of_machine.cache_clear()
    assert found == ["Z-Sans.ttf", "Y-Regular.ttf", "A-Bold.ttf", "B-BoldItalic.ttf"]
