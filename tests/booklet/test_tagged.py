"""Tags, links and fonts of the printed booklets, read back with pikepdf.

Outside references: ISO 32000-1 (PDF 1.7), clauses named beside each check, and the `pdfua`
checker, which looks at 16 of the 106 rules of ISO 14289-1 (PDF/UA-1). None of this is a
claim that the booklets conform to PDF/UA.

Longer than 300 lines for its reader of tags, which all its tests share.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import networkx as nx
import pdfua
import pikepdf
import pytest
from references import astray
from shipped import ON_PAPER, SHIPPED, book_of, page_texts, printed, record_of

from buildplan.booklet.common.book import Book
from buildplan.sequence.model import Kind

Node = pikepdf.Object


@pytest.fixture(params=ON_PAPER, ids="-".join)
def booklet(request: pytest.FixtureRequest) -> Iterator[tuple[Book, pikepdf.Pdf]]:
    with pikepdf.open(io.BytesIO(printed(*request.param))) as pdf:
        yield book_of(*request.param), pdf


Booklet = tuple[Book, pikepdf.Pdf]


def kids(element: Node) -> list[Node]:
    """What is below a structure element, a single kid as a list of one."""
    below = element.get("/K", pikepdf.Array())
    return list(below) if isinstance(below, pikepdf.Array) else [below]


def elements(node: Node) -> Iterator[Node]:
    """A structure element and every one below it, in reading order."""
    yield node
    for kid in kids(node):
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            yield from elements(kid)


def document(pdf: pikepdf.Pdf) -> Node:
    """The root of the structure."""
    return pdf.Root.StructTreeRoot.K[0]


def role(element: Node) -> str:
    return str(element.S).lstrip("/")


@pytest.mark.parametrize(("name", "paper"), ON_PAPER)
def test_checker_finds_nothing(name: str, paper: str, tmp_path: Path) -> None:
    """pdfua (a subset of ISO 14289-1): every rule is evaluated and none has a finding."""
    path = tmp_path / "booklet.pdf"
    path.write_bytes(printed(name, paper))
    report = pdfua.validate(str(path))
    for outcome in report.outcomes:
        assert outcome.skipped_reason is None, f"{outcome.rule_id}: {outcome.skipped_reason}"
        assert not outcome.findings, outcome.findings


@pytest.mark.parametrize(("name", "paper"), ON_PAPER)
def test_what_a_reference_names_is_on_the_page_that_it_says(name: str, paper: str) -> None:
    record = record_of(name, paper)
    assert len(record.references) > len(book_of(name).steps) / 2
    assert not astray(book_of(name, paper), record, page_texts(name, paper))


# ISO 32000-1, 14.8.4.2 and 14.8.4.3: what lists, tables and tables of contents may hold.
HOLDS = {
    "TOC": {"TOC", "TOCI"},
    "TOCI": {"Lbl", "Reference", "NonStruct", "P", "TOC"},
    "L": {"L", "LI"},
    "LI": {"Lbl", "LBody"},
    "Table": {"TR"},
    "TR": {"TH", "TD"},
}
LIVES_IN = {
    "LI": {"L"},
    "Lbl": {"LI", "TOCI"},
    "LBody": {"LI"},
    "TR": {"Table"},
    "TH": {"TR"},
    "TD": {"TR"},
    "TOCI": {"TOC"},
}
# ISO 32000-1, 14.8.4: the standard structure types that the booklets use.
STANDARD = {*HOLDS, *LIVES_IN, "Document", "Sect", "P", "H1", "H2", "Figure", "Link", "Reference"}


def test_elements_nest_as_the_standard_says(booklet: Booklet) -> None:
    for element in elements(document(booklet[1])):
        assert role(element) in STANDARD
        assert kids(element), f"an empty {role(element)}"
        below = [kid for kid in kids(element) if isinstance(kid, pikepdf.Dictionary)]
        roles = {role(kid) for kid in below if "/S" in kid}
        if role(element) in HOLDS:
            assert roles <= HOLDS[role(element)]
        for kid in below:
            if "/S" in kid:
                assert role(element) in LIVES_IN.get(role(kid), {role(element)})
                assert kid.P.objgen == element.objgen


def test_table_rows_are_even_and_heads_have_scope(booklet: Booklet) -> None:
    """ISO 32000-1, 14.8.5.7: a header cell says by its Scope what it heads."""
    for table in (e for e in elements(document(booklet[1])) if role(e) == "Table"):
        rows = [[role(cell) for cell in kids(row)] for row in kids(table)]
        assert len({len(row) for row in rows}) == 1
        assert set(rows[0]) == {"TH"}
        for row in kids(table):
            for cell in kids(row):
                if role(cell) == "TH":
                    assert str(cell.A.Scope) in ("/Column", "/Row")
                    assert kids(cell)


def test_headings_go_down_one_level_at_a_time(booklet: Booklet) -> None:
    """WCAG 2.2 technique G141; ISO 32000-1, 14.8.4.3.2."""
    book, pdf = booklet
    levels = [int(role(e)[1]) for e in elements(document(pdf)) if re.fullmatch("H[1-6]", role(e))]
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert levels.count(2) >= len(book.steps)


def marks(page: pikepdf.Page) -> Iterator[tuple[str, int | None]]:
    """The marked pieces of a page, in order: tag, and number unless an artifact.

    Fails where marks nest, or where a saved state, a text object or a painted path lies
    across the edge of a mark (ISO 32000-1, 14.6.1).
    """
    inside, depth, text = False, 0, False
    for instruction in pikepdf.parse_content_stream(page):
        operator, operands = str(instruction.operator), instruction.operands
        if operator in ("BDC", "BMC"):
            assert not inside
            assert not text
            inside, depth = True, 0
            yield str(operands[0]), int(operands[1].MCID) if operator == "BDC" else None
        elif operator == "EMC":
            assert inside
            assert depth == 0
            assert not text
            inside = False
        elif operator in ("q", "Q"):
            depth += 1 if operator == "q" else -1
            assert depth >= 0 or not inside
        elif operator in ("BT", "ET"):
            text = operator == "BT"
        if operator in ("Tj", "TJ", "Do", "S", "f", "B", "s", "b", "f*", "B*"):
            assert inside, f"{operator} outside any mark"


def test_every_mark_belongs_to_one_element(booklet: Booklet) -> None:
    """ISO 32000-1, 14.7.4.4: numbers on a page are unique, and the parent tree leads from
    each back to the element that has it."""
    pdf = booklet[1]
    root = pdf.Root.StructTreeRoot
    nums = list(root.ParentTree.Nums)
    parents = dict(zip((int(n) for n in nums[::2]), nums[1::2], strict=True))
    owner: dict[tuple[tuple[int, int], int], Node] = {}
    for element in elements(document(pdf)):
        for kid in kids(element):
            if isinstance(kid, int):
                key = (element.Pg.objgen, kid)
                assert key not in owner
                owner[key] = element
    used = 0
    for page in pdf.pages:
        assert str(page.obj.Tabs) == "/S"
        for tag, number in marks(page):
            if number is None:
                assert tag == "/Artifact"
                continue
            element = owner[page.obj.objgen, number]
            assert tag == str(element.S)
            assert parents[int(page.obj.StructParents)][number].objgen == element.objgen
            used += 1
    assert used == len(owner)


def links(pdf: pikepdf.Pdf) -> Iterator[tuple[int, Node, int]]:
    """Every link of a document: the page it is on, the annotation, the page it leads to."""
    index = {page.obj.objgen: number for number, page in enumerate(pdf.pages)}
    for number, page in enumerate(pdf.pages):
        for annotation in page.obj.get("/Annots", []):
            assert str(annotation.Subtype) == "/Link"
            yield number, annotation, index[annotation.Dest[0].objgen]


def test_links_are_tagged_and_say_where_they_lead(booklet: Booklet) -> None:
    """ISO 32000-1, 14.8.4.4.2 (Link), 14.7.4.3 (OBJR) and 12.5.2 (Contents)."""
    pdf = booklet[1]
    nums = list(pdf.Root.StructTreeRoot.ParentTree.Nums)
    parents = dict(zip((int(n) for n in nums[::2]), nums[1::2], strict=True))
    tagged = {
        kid.Obj.objgen: element
        for element in elements(document(pdf))
        if role(element) == "Link"
        for kid in kids(element)
        if isinstance(kid, pikepdf.Dictionary) and str(kid.get("/Type")) == "/OBJR"
    }
    found = list(links(pdf))
    assert len(found) == len(tagged)
    for number, annotation, target in found:
        element = tagged[annotation.objgen]
        assert parents[int(annotation.StructParent)].objgen == element.objgen
        assert any(isinstance(kid, int) for kid in kids(element)), "a link has words to read"
        assert str(annotation.Contents).endswith(f"page {target + 1}")
        low_x, low_y, high_x, high_y = (float(v) for v in annotation.Rect)
        _, _, width, height = (float(v) for v in pdf.pages[number].mediabox)
        assert 0 <= low_x < high_x <= width
        assert 0 <= low_y < high_y <= height


@pytest.mark.parametrize(("name", "paper"), ON_PAPER)
def test_steps_lead_to_the_map_and_the_map_back(name: str, paper: str) -> None:
    book, texts = book_of(name, paper), page_texts(name, paper)
    maps = {number for number, text in enumerate(texts) if re.match(r"Joint map(, sheet|\b)", text)}
    with pikepdf.open(io.BytesIO(printed(name, paper))) as pdf:
        found = [(at, str(link.Contents), to) for at, link, to in links(pdf)]
    on_piece = (Kind.BRACE, Kind.SINGLE)
    for step in (s for s in book.steps if s.kind in on_piece):
        words = f"From step {step.number} to the joint map"
        ((at, _, to),) = (link for link in found if link[1].startswith(words))
        assert f"{step.number} {book.told(step).title}" in texts[at]
        assert to in maps
        assert set(step.turns[0].joints) <= set(texts[to].split())
    for step in (s for s in book.steps if s.kind is Kind.BRACE):
        back = [link for link in found if link[1].startswith(f"To step {step.number},")]
        assert {at for at, _, _ in back} <= maps
        # one link by words, and one from each number of its braces on the map
        assert len(back) >= 1 + step.times
        for _, _, to in back:
            assert f"{step.number} {book.told(step).title}" in texts[to]


@pytest.mark.parametrize(("name", "paper"), ON_PAPER)
def test_contents_and_bookmarks_lead_to_the_same_pages(name: str, paper: str) -> None:
    texts = page_texts(name, paper)
    at = next(i for i, text in enumerate(texts) if "In this booklet" in text)
    with pikepdf.open(io.BytesIO(printed(name, paper))) as pdf:
        contents = {
            re.sub(r"^To (.*), page \d+$", r"\1", str(link.Contents)): to
            for number, link, to in links(pdf)
            if number == at
        }
        with pdf.open_outline() as outline:
            index = {page.obj.objgen: number for number, page in enumerate(pdf.pages)}
            marks = {}
            for item in outline.root:
                entry: Any = item.destination or (item.action and item.action.D)
                marks[item.title] = index[entry[0].objgen]
    assert len(contents) >= 8
    assert {title: marks[title] for title in contents} == contents
    for title, to in contents.items():
        assert f"{title} {to + 1}" in texts[at]


def fonts(resources: Node, seen: set[tuple[int, int]]) -> Iterator[Node]:
    """Every font of a page's resources and of the forms in them."""
    yield from (font for _, font in resources.get("/Font", pikepdf.Dictionary()).items())
    for _, form in resources.get("/XObject", pikepdf.Dictionary()).items():
        if form.objgen not in seen and "/Resources" in form:
            seen.add(form.objgen)
            yield from fonts(form.Resources, seen)


def test_header_version_and_embedded_fonts(booklet: Booklet) -> None:
    """ISO 32000-1, 7.5.2 (header) and 9.9 (embedded font programs); every font also maps its
    codes to Unicode (9.10.3), so that text can be read out and copied."""
    pdf = booklet[1]
    assert pdf.pdf_version == "1.7"
    seen: set[tuple[int, int]] = set()
    found = [font for page in pdf.pages for font in fonts(page.obj.Resources, seen)]
    assert found
    for font in found:
        assert "/FontFile2" in font.FontDescriptor
        assert "/ToUnicode" in font


@pytest.mark.parametrize("name", SHIPPED)
def test_alternative_texts_are_enough_to_rebuild_the_piece(name: str) -> None:
    """The joint map read aloud: long chains, what each brace ties, singles; together they
    make the framework's graph, edge for edge."""
    framework = book_of(name).framework
    with pikepdf.open(io.BytesIO(printed(name))) as pdf:
        texts = [str(e.Alt) for e in elements(document(pdf)) if role(e) == "Figure"]
    heard = " ".join(text for text in texts if text.startswith("Joint map"))
    built = nx.Graph()
    closed = "again" in heard
    for letter, balloons in re.findall(r"\b([A-D]) \([a-z ]+, (\d+) balloons\)", heard):
        count = int(balloons)
        built.add_edges_from(
            (f"{letter}{i}", f"{letter}{i % count + 1 if closed else i + 1}")
            for i in range(1, count + 1)
        )
    for section in re.findall(r"Brace \d+ ties ([A-D0-9, ]+?)(?:, sharing|\.)", heard):
        joints = section.split(", ")
        built.add_edges_from(zip(joints, [*joints[1:], joints[0]], strict=True))
    for singles in re.findall(r"Singles: ([A-D0-9, -]+)\.", heard):
        built.add_edges_from(single.split("-") for single in singles.split(", "))
    wanted = nx.Graph([(link.start, link.finish) for link in framework.links])
    assert {frozenset(edge) for edge in built.edges} == {frozenset(edge) for edge in wanted.edges}
