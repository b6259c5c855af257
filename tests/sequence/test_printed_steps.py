"""The printed page says enough: pieces rebuilt from the text of their booklets alone."""

from __future__ import annotations

import io
import re
from collections import Counter
from pathlib import Path

import pypdf
import pytest
from sequence_reader import read_words

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS

PROGRESS = re.compile(r"step \d+/\d+")
# another piece, which stands among the steps, before the next part of the work
PRACTICE = re.compile(
    r"A first practice piece.*?(?=\n[^\n]*: steps? \d+(?: to \d+)?\s*\n)", re.DOTALL
)
BALLOONS = """
buildplan: 1
name: Trial
units: in
balloons:
  long:  {kind: link,  nominal: 12, inflate_to: 8,   colour: "#1F5F8B", label: deep blue}
  coral: {kind: link,  nominal: 12, inflate_to: 8,   colour: "#FF7F50", label: coral}
  cross: {kind: link,  nominal: 12, inflate_to: 8,   colour: "#F7F3E8", label: ivory}
  lock:  {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
"""
TUBE = """
colour_pattern: {A: [long, long, coral]}
build:
  tube:
    closed: false
    chains: 4
    long: long
    brace: cross
    single: cross
    lock: lock
    course: [straight, tip, fan, dip, fan_in, [2, 1]]
"""
OCTAHEDRON = """
build:
  graph:
    joints: [v1, v2, v3, v4, v5, v6]
    lock: lock
    balloons:
"""
EDGES = ["12", "13", "14", "15", "23", "34", "45", "52", "62", "63", "64", "65"]


@pytest.mark.parametrize("build", [TUBE, OCTAHEDRON])
def test_a_piece_can_be_rebuilt_from_its_printed_booklet(build: str, tmp_path: Path) -> None:
    if build == OCTAHEDRON:
        for edge in EDGES:
            build += f"      - {{from: v{edge[0]}, to: v{edge[1]}, balloon: long}}\n"
    file = tmp_path / "trial.yaml"
    file.write_text(BALLOONS + build, encoding="utf-8")
    design = read_design(file)
    book = gather_book(design, PAPERS["a4"], design.units, "training")
    reader = pypdf.PdfReader(io.BytesIO(print_booklet(book)))
    pages = [page.extract_text() for page in reader.pages]
    steps = "\n".join(page for page in pages if PROGRESS.search(page))
    told = read_words(PRACTICE.sub("", steps))

    framework = book.framework
    label = {key: balloon.label for key, balloon in framework.balloons.items()}
    assert told.links == Counter(
        (link.neck, link.tail, label[link.balloon], str(link.role)) for link in framework.links
    )
    assert told.locks == {lock.joint: label[lock.balloon] for lock in framework.locks}
