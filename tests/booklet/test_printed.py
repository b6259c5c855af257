"""The printed booklet, read back: paper, gauges, words of caution, and every number on it."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import pypdf
import pypdfium2
import pytest
import shipped
from page_words import origins
from pypdf.generic import ContentStream

from buildplan.booklet.common.book import Book
from buildplan.booklet.editions import print_booklet
from buildplan.evaluation.facts import facts_as_json

POINTS_PER_INCH = 72


@dataclass(frozen=True)
class Printed:
    """A shipped design's booklet: what it was made from, its bytes, and the words of its pages."""

    book: Book
    data: bytes
    pages: Sequence[str]

    @property
    def text(self) -> str:
        """All words, on one line."""
        return " ".join(self.pages)


@pytest.fixture(scope="module", params=shipped.SHIPPED)
def printed(request: pytest.FixtureRequest) -> Printed:
    name = request.param
    return Printed(shipped.book_of(name), shipped.printed(name), shipped.page_texts(name))


@pytest.fixture(scope="module")
def reader(printed: Printed) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(printed.data))


def normalised(text: str) -> str:
    """Letters and digits only, lower case: dashes, case and line breaks do not count."""
    return " ".join(re.findall(r"[a-z0-9]+", text.lower()))


def test_same_design_gives_the_same_bytes(printed: Printed) -> None:
    assert print_booklet(printed.book) == printed.data


def test_pages_are_a4(reader: pypdf.PdfReader) -> None:
    """ISO 216: A4 is 210 x 297 mm; 1 in = 25.4 mm, PDF unit 1/72 in (ISO 32000-1, 8.3.2.3)."""
    for page in reader.pages:
        assert float(page.mediabox.width) == pytest.approx(210 / 25.4 * 72, abs=0.01)
        assert float(page.mediabox.height) == pytest.approx(297 / 25.4 * 72, abs=0.01)


def test_letter_paper_is_letter() -> None:
    """US Letter, 8.5 x 11 in: 612 x 792 pt (page size tables; ANSI Y14.1 from memory)."""
    reader = pypdf.PdfReader(io.BytesIO(shipped.printed("picture_frame", "letter")))
    for page in reader.pages:
        assert [float(v) for v in page.mediabox] == pytest.approx([0, 0, 612, 792], abs=0.01)


# 16 CFR 1500.19(b)(2) by way of EDItEUR ONIX code list 143, value 02; punctuation and line
# layout are not compared.
REGULATION = (
    "WARNING: CHOKING HAZARD. Children under 8 yrs. can choke or suffocate on uninflated or "
    "broken balloons. Adult supervision required. Keep uninflated balloons from children. "
    "Discard broken balloons at once."
)
# 21 CFR 801.437 final rule, 62 FR 51021, as model wording.
LATEX = "Caution: This Product Contains Natural Rubber Latex Which May Cause Allergic Reactions."


def test_cautions_use_the_words_of_the_regulation(printed: Printed) -> None:
    second_page = normalised(printed.pages[1])
    assert normalised(REGULATION) in second_page
    assert normalised(LATEX) in second_page


def curved_paths(reader: pypdf.PdfReader, number: int) -> Iterator[np.ndarray]:
    """Points (n, 2) in page units of each path of a page that has Bezier curves in it."""
    page = reader.pages[number]
    stack, matrix, path = [], np.eye(3), []
    curved = False
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        v = [float(o) for o in operands] if operator in (b"cm", b"m", b"l", b"c") else []
        if operator == b"q":
            stack.append(matrix)
        elif operator == b"Q":
            matrix = stack.pop()
        elif operator == b"cm":
            matrix = np.array([[v[0], v[1], 0], [v[2], v[3], 0], [v[4], v[5], 1]]) @ matrix
        elif operator in (b"m", b"l", b"c"):
            curved |= operator == b"c"
            # the end of each curve lies on it; its control points do not
            path.append((np.array([v[-2], v[-1], 1]) @ matrix)[:2])
        elif operator in (b"S", b"s", b"f", b"f*", b"B", b"b", b"n"):
            if path and curved:
                yield np.array(path)
            path, curved = [], False


def test_gauges_have_their_true_diameter_on_paper(
    printed: Printed, reader: pypdf.PdfReader
) -> None:
    """The international inch is 25.4 mm; PDF user space is 1/72 in (ISO 32000-1, 8.3.2.3)."""
    book = printed.book
    pages = [i for i, text in enumerate(printed.pages) if "Gauges at true size" in text]
    extents = [
        extent
        for i in pages
        for path in curved_paths(reader, i)
        for extent in (np.ptp(path[:, 0]), np.ptp(path[:, 1]))
    ]
    wanted = {b.gauge_m for key, b in book.framework.balloons.items() if book.facts.counts[key]}
    for gauge_m in wanted:
        diameter = gauge_m / 0.0254 * POINTS_PER_INCH
        assert min(abs(extent - diameter) for extent in extents) < 0.02


def test_every_stated_number_agrees_with_check(printed: Printed) -> None:
    book, text = printed.book, printed.text
    facts = facts_as_json(book.facts, book.voice)
    balloons, locks = facts["balloons"], facts["locks"]
    assert f"{balloons} balloons" in printed.pages[0]
    assert f"{locks}/{locks} locks" in text
    assert f"{facts['braces']}/{facts['braces']} braces" in text
    for long in book.framework.chains:
        assert f"Chain {long.letter}: {len(long.chain.links)} balloons (" in text
        assert f"), joints {long.chain.joints[0]}" in text
    # running totals of braces and locks never run past the end nor backwards; the piece to practise
    # on, before the first stage, has its own
    built = text[text.rindex("Size and pair: steps") :]
    for noun, total in (("locks", facts["locks"]), ("braces", facts["braces"])):
        found = [(int(a), int(b)) for a, b in re.findall(rf"(\d+)/(\d+) {noun}", built)]
        assert len(found) > 1
        assert {b for _, b in found} == {total}
        assert [a for a, _ in found] == sorted(a for a, _ in found)


def test_needs_page_counts_as_check_does(printed: Printed) -> None:
    book = printed.book
    page = next(text for text in printed.pages if text.startswith("What you need"))
    for purchase in book.facts.purchases:
        assert f"{purchase.needed} {purchase.spare}" in page
        assert purchase.needed == book.facts.counts[purchase.balloon.key]
        # spares are rounded up to whole balloons, and packs to whole packs
        assert purchase.spare >= purchase.needed * book.design.spare - 1e-9
        assert purchase.to_buy >= purchase.needed + purchase.spare
        if purchase.pack_size and purchase.packs:
            assert (purchase.packs - 1) * purchase.pack_size < purchase.needed + purchase.spare
    assert f"all together {book.facts.total}" in page


def test_every_step_is_printed_once_in_order(printed: Printed) -> None:
    book, text = printed.book, printed.text
    at = -1
    for step in book.steps:
        found = text.find(f"{step.number} {' '.join(book.told(step).title.split())}", at + 1)
        assert found > at, f"step {step.number} is missing or out of order"
        at = found


def test_every_turn_names_its_joints_on_paper(printed: Printed) -> None:
    book, text = printed.book, printed.text
    for step in book.steps:
        for row in book.told(step).rows:
            assert " ".join(row.split()) in text


def dictionary(of: pypdf.generic.DictionaryObject, key: str) -> pypdf.generic.DictionaryObject:
    found = of[key].get_object()
    assert isinstance(found, pypdf.generic.DictionaryObject)
    return found


def test_document_is_tagged_and_titled(printed: Printed, reader: pypdf.PdfReader) -> None:
    """ISO 32000-1, 14.7 and 14.8: structure tree, marked, language, title shown."""
    book = printed.book
    root = reader.root_object
    assert dictionary(root, "/MarkInfo")["/Marked"]
    assert str(root["/Lang"]) == "en-GB"
    assert dictionary(root, "/ViewerPreferences")["/DisplayDocTitle"]
    assert book.facts.name in str(reader.metadata and reader.metadata.title)
    figures = list(alternatives(root["/StructTreeRoot"]))
    assert all(figures)
    assert len(set(figures)) == len(figures), "each picture has words of its own"
    assert len(figures) >= len(book.steps)


def alternatives(node: object) -> Iterator[str]:
    """The alternative text of every figure below a structure element."""
    if isinstance(node, pypdf.generic.IndirectObject):
        node = node.get_object()
    if isinstance(node, list):
        for kid in node:
            yield from alternatives(kid)
    elif isinstance(node, dict):
        if node.get("/S") == "/Figure":
            yield str(node.get("/Alt", ""))
        if "/K" in node and node.get("/Type") != "/MCR":
            yield from alternatives(node["/K"])


def test_nothing_is_printed_outside_the_page(printed: Printed) -> None:
    with pypdfium2.PdfDocument(printed.data) as pdf:
        for page, text in zip(pdf, printed.pages, strict=True):
            placed = np.array(list(origins(page)))
            assert len(placed)
            assert (placed >= -1).all()
            assert (placed <= page.get_size()).all()
            if "true size" not in text:
                # the running foot stands on 32 and 21 pt; nothing runs down into it
                y = placed[:, 1]
                assert not ((y < 15) | ((y > 36) & (y < 50))).any()
