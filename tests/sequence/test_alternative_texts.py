"""Pictures that say enough: pieces rebuilt from the alternative texts of a booklet alone."""

from __future__ import annotations

import io
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest
from pypdf.generic import IndirectObject
from sequence_reader import read_words

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS

DESIGNS = Path(__file__).parent.parent.parent / "designs"
# a row of work, as far as it goes; work that several pictures show is told in each of them
ROW = re.compile(r"(?:Chain \w+|Brace \d+|Single(?: \S+)?|Locks): (?:[^;.]|; and )+")
NEW = re.compile(r"New: ([^.]*)\.")
BALLOONS = re.compile(r"\d+ ([^.,(]+?) (link balloon|round)s? \(")


def alternative_texts(node: object) -> Iterator[str]:
    """The alternative text of every figure below a structure element, in reading order."""
    if isinstance(node, IndirectObject):
        node = node.get_object()
    if isinstance(node, list):
        for kid in node:
            yield from alternative_texts(kid)
    elif isinstance(node, dict) and node.get("/Type") not in ("/MCR", "/OBJR"):
        if node.get("/S") == "/Figure":
            yield str(node["/Alt"])
        yield from alternative_texts(node.get("/K", []))


def told_once(texts: Iterator[str]) -> Iterator[str]:
    """The words on what is new, and each row of work the first time that it is told."""
    told: set[str] = set()
    for text in texts:
        for balloon, kind in BALLOONS.findall(" ".join(NEW.findall(text))):
            yield (
                f"a pair of {balloon} rounds" if kind == "round" else f"Take any {balloon} balloon"
            )
        for row in ROW.findall(text):
            if row not in told:
                told.add(row)
                yield row


@pytest.mark.parametrize("name", ["picture_frame", "walk_through_gate", "gallery/broad_star"])
def test_a_piece_can_be_rebuilt_from_its_pictures_words(name: str) -> None:
    design = read_design(DESIGNS / f"{name}.yaml")
    book = gather_book(design, PAPERS["a4"], design.units, "training")
    reader = pypdf.PdfReader(io.BytesIO(print_booklet(book)))
    texts = alternative_texts(reader.root_object["/StructTreeRoot"])
    told = read_words("; ".join(told_once(texts)))

    framework = book.framework
    label = {key: balloon.label for key, balloon in framework.balloons.items()}
    assert told.links == Counter(
        (link.neck, link.tail, label[link.balloon], str(link.role)) for link in framework.links
    )
    assert told.locks == {lock.joint: label[lock.balloon] for lock in framework.locks}
