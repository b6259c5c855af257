"""The sale edition's pages, brands, buyers."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import numpy as np
import pypdfium2
import pytest
from page_words import words_of_pages
from sold_copies import BRAND, DESIGNS, sold_book, sold_copy

from buildplan.booklet.sale.seller import LogoShown
from buildplan.business.copies.brand import Branding, Logo, branding
from buildplan.business.copies.buyers import (
    BuyersUnreadableError,
    name_problem,
    read_buyers,
    slug,
)
from buildplan.design.model import Brand
from buildplan.design.reading import read_brand
from buildplan.document.paper import PAPERS
from buildplan.document.printing import Document, Section, print_document
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.colouring import colouring_picture
from buildplan.drawing.colours import contrast
from buildplan.drawing.marks import Label, Stamp
from buildplan.drawing.png import picture_png
from buildplan.evaluation.skill import skill
from buildplan.language.voice import Voice
from buildplan.source.problems import DesignProblemsError
from buildplan.source.suggestions import suggestion_words


def texts() -> list[str]:
    return words_of_pages(sold_copy())


def test_cover_names_seller_piece_and_warning() -> None:
    cover = texts()[0]
    for words in ("Lantern Street Balloons", "Bent Post", "CHOKING HAZARD", "skill: some practice"):
        assert words in cover


def test_cautions_use_the_words_of_the_regulation() -> None:
    """16 CFR 1500.19(b)(2) by way of EDItEUR ONIX code list 143, value 02."""
    flat = " ".join(re.findall(r"[a-z0-9]+", texts()[1].lower()))
    assert "children under 8 yrs can choke or suffocate on uninflated or broken balloons" in flat
    assert "discard broken balloons at once" in flat


def test_no_price_is_shown() -> None:
    whole = " ".join(texts())
    assert not re.search(r"price|[£$€]|0\.32|GBP", whole)


def test_licence_page_has_the_sellers_words_and_says_what_is_not_proved() -> None:
    last = texts()[-1]
    assert "One licence, one business" in last
    assert "does not prove" in last


def test_colours_page_has_a_box_for_every_letter() -> None:
    book = sold_book()
    page = next(
        t
        for t in texts()
        if t.startswith("Choose your own colours")
        or "Choose your own colours Colour the picture" in t
    )
    for purchase in book.facts.purchases:
        assert book.colour_letters[purchase.balloon.key] in page
        assert f" {purchase.needed} " in page


def test_colouring_picture_is_white_and_lettered() -> None:
    book = sold_book()
    letters = book.colour_letters
    picture = colouring_picture(
        book.framework, book.shape, CAMERAS["front"], letters, 480, 500, alt="x"
    )
    looks = {mark.look.colour for mark in picture.marks if isinstance(mark, Stamp)}
    assert looks == {"#FFFFFF"}
    found = {mark.text for mark in picture.marks if isinstance(mark, Label)}
    assert found == set(letters.values())


@pytest.mark.parametrize(
    ("balloons", "height_m", "level"), [(64, 1.0, 2), (201, 1.0, 3), (391, 2.5, 4), (501, 2.5, 5)]
)
def test_skill_is_by_the_printed_rule(balloons: int, height_m: float, level: int) -> None:
    """The post turns by fans alone, which is one level; the rest is size."""
    book = sold_book()
    facts = replace(book.facts, counts={"long": balloons}, height_m=height_m)
    found = skill(book.framework, facts)
    assert found.level == level == 1 + len(found.reasons)


# --- brand ---------------------------------------------------------------------------------


@pytest.mark.parametrize("colour", ["#000000", "#FFFFFF", "#C9A227", "#3A2E4F", "#777777"])
def test_type_on_the_brands_colour_is_readable(colour: str) -> None:
    """WCAG 2.2, 1.4.3: 4.5 to 1, or 3 to 1 for large type; the seller's name is set large."""
    brand = Branding(Brand.model_validate({"name": "x", "colour": colour}))
    assert contrast(brand.on_colour, colour) >= 3


@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        ("logo.svg", None, "cannot be read"),
        ("logo.gif", b"GIF89a", "neither .png nor .svg"),
        ("logo.png", b"not a picture", "no PNG"),
        ("logo.png", b"\x89PNG\r\n\x1a\nbroken", "broken PNG"),
        ("logo.svg", b"<svg", "no SVG"),
        ("logo.svg", b"<svg xmlns='http://www.w3.org/2000/svg'><text>a</text></svg>", "as text"),
        ("logo.svg", b"<!DOCTYPE svg [<!ENTITY a 'b'>]><svg/>", "definitions"),
        ("logo.svg", b"<svg><image href='file:///etc/passwd'/></svg>", "picture inside"),
    ],
)
def test_logo_that_cannot_be_used_is_told(
    tmp_path: Path, name: str, data: bytes | None, said: str
) -> None:
    if data is not None:
        (tmp_path / name).write_bytes(data)
    brand = Brand.model_validate({"name": "x", "logo": name})
    with pytest.raises(DesignProblemsError) as told:
        branding(brand, tmp_path / "brand.yaml")
    (problem,) = told.value.problems
    assert said in Voice().tell(problem.message)
    assert suggestion_words(problem.suggestion, Voice())


def test_png_logo_is_read(tmp_path: Path) -> None:
    book = sold_book()
    picture = colouring_picture(book.framework, book.shape, CAMERAS["front"], {}, 120, 60, alt="x")
    (tmp_path / "logo.png").write_bytes(picture_png(picture))
    brand = branding(Brand.model_validate({"name": "x", "logo": "logo.png"}), tmp_path / "b.yaml")
    assert brand.logo is not None
    assert brand.logo.aspect == pytest.approx(2, rel=0.02)


def test_mistakes_in_a_brand_file_are_told_with_their_lines(tmp_path: Path) -> None:
    file = tmp_path / "brand.yaml"
    file.write_text('name: Us\ncolour: "rredd"\nprice: 3\n', encoding="utf-8")
    with pytest.raises(DesignProblemsError) as told:
        read_brand(file)
    assert [problem.line for problem in told.value.problems] == [2, 3]
    assert read_brand(BRAND).name == "Lantern Street Balloons"


# --- buyers --------------------------------------------------------------------------------


def listed(tmp_path: Path, text: str | bytes) -> Path:
    file = tmp_path / "buyers.csv"
    file.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    return file


def test_buyers_have_safe_and_unique_file_names(tmp_path: Path) -> None:
    names = ["Ana", "ANA", "ana!", "../../etc/passwd", "O’Hara & Sons", "Åsa Ünal", "!!!", "a" * 80]
    rows = "\n".join(f'"{name}"' for name in names)
    buyers, bad = read_buyers(listed(tmp_path, f"\ufeffName\n{rows}\n"))
    assert not bad
    assert [buyer.name for buyer in buyers] == names
    slugs = [buyer.slug for buyer in buyers]
    assert len({s.casefold() for s in slugs}) == len(names)
    assert all(re.fullmatch(r"[a-z0-9-]{1,44}", s) for s in slugs)


def test_bad_rows_are_listed_with_line_and_reason(tmp_path: Path) -> None:
    text = f"email,name\na,Ana\nb,\nc,Ana\nd,{'x' * 81}\ne,a\u200bb\nf,a\u202eb\ng\nh,Ben\n"
    buyers, bad = read_buyers(listed(tmp_path, text))
    assert [buyer.name for buyer in buyers] == ["Ana", "Ben"]
    assert [row.line for row in bad] == [3, 4, 5, 6, 7, 8]
    assert "line 2" in Voice().tell(bad[1].why)


@pytest.mark.parametrize(
    ("name", "good"),
    [
        ("\u0639\u0644\u06cc\u200c\u0631\u0636\u0627", True),  # between Arabic letters
        ("\u0915\u094d\u200d\u0937", True),  # after a virama
        ("Ana\u200c", False),
        ("A\u200dna", False),
        ("\u200d\u0639", False),
    ],
)
def test_joiners_stand_where_they_do_something(name: str, good: bool) -> None:
    """RFC 5892, A.1 and A.2: elsewhere two names that look alike could differ."""
    assert (name_problem(name) is None) == good


def test_a_sign_that_cannot_be_seen_is_told_by_its_name_and_shown_by_its_number() -> None:
    problem = name_problem("Zed\u202eevil")
    assert problem is not None
    told = Voice().tell(problem)
    assert "Zed<U+202E>evil" in told
    assert "U+202E RIGHT-TO-LEFT OVERRIDE" in told


def test_a_name_written_two_ways_is_one_name(tmp_path: Path) -> None:
    """Unicode Standard Annex 15: composed and decomposed letters are canonically equal."""
    buyers, bad = read_buyers(listed(tmp_path, "name\nIn\u00e9s\nIne\u0301s\n"))
    assert (len(buyers), len(bad)) == (1, 1)


def test_semicolons_of_spreadsheets_are_read(tmp_path: Path) -> None:
    buyers, _ = read_buyers(listed(tmp_path, "name;town\nAna, Ben;x\n"))
    assert [buyer.name for buyer in buyers] == ["Ana, Ben"]


@pytest.mark.parametrize(
    "text", ["", "who\nAna\n", "name,name\na,b\n", b"name\n\xff\n", 'name\n"a\n']
)
def test_what_is_no_list_is_refused(tmp_path: Path, text: str | bytes) -> None:
    with pytest.raises(BuyersUnreadableError):
        read_buyers(listed(tmp_path, text))


def test_slug_is_never_empty() -> None:
    assert re.fullmatch("buyer-[0-9a-f]{8}", slug("\u4e2d"))
    assert np.all([slug(s) for s in ("", "-", "..")])


def test_shipped_brand_is_beside_no_design() -> None:
    assert BRAND.parent != DESIGNS


def test_what_lies_outside_a_logos_frame_is_not_shown() -> None:
    """SVG 2, 8.1: what lies outside the outermost frame is clipped. All that is far too large is
    black, and the page is not."""
    drawing = (
        b'<svg xmlns="http://www.w3.org/2000/svg" width="90" height="30">'
        b'<path d="M-9999 -9999h20000v20000h-20000z"/></svg>'
    )
    shown = LogoShown(Logo("svg", drawing, 3.0), "a logo")
    paper, voice = PAPERS["a4"], Voice()
    page = Document([Section("Page", [shown])], paper, voice, "Page", foot="")
    image = pypdfium2.PdfDocument(print_document(page))[0].render(scale=1).to_pil().convert("L")
    dark = float((np.asarray(image) < 64).mean())
    frame = shown.wide * shown.wide / 3 / (paper.sheet[0] * paper.sheet[1])
    assert 0.9 * frame < dark < 1.2 * frame
