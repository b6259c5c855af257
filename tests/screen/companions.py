"""Companions to open: of a small post in anybody's words, and how to go to their screens."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from browser import Opened
from screen_pieces import VOICES

from buildplan.booklet.common.book import gather_book
from buildplan.business.copies.brand import Branding
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.screen.page import companion
from buildplan.screen.sold import sold_companion

POST = """\
buildplan: 1
name: {name}
units: in
balloons:
  long: {{kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: {label}}}
  lock: {{kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}}
build:
  tube:
    {{closed: false, chains: 4, long: long, brace: long, lock: lock, course: [straight, straight]}}
text: {{brace: {note}}}
brand: {{name: {brand}, contact: {contact}, licence: {licence}}}
translations: {{es: {{name: {name}, text: {{brace: {note}}}}}}}
"""
ORDINARY = {
    "name": "Short Post",
    "label": "deep blue",
    "note": "z",
    "brand": "Lantern",
    "contact": "x",
    "licence": "y",
}


def written(folder: Path, name: str, text: str) -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


@cache
def page_of(design: str, edition: str, buyer: str) -> str:
    """The companion of a design."""
    with TemporaryDirectory() as folder:
        read = read_design(written(Path(folder), "post.yaml", design))
    gathered = gather_book(read, PAPERS["a4"], read.units, edition)
    if edition != "sale":
        return companion(gathered, VOICES)
    seller = Branding(read.brand) if read.brand else None
    return sold_companion(replace(gathered, branding=seller, buyer=buyer), VOICES)


def post(folder: Path, edition: str = "crew", buyer: str = "", **words: str) -> Path:
    """The companion of a small post whose words are anybody's."""
    told = {key: json.dumps(value) for key, value in (ORDINARY | words).items()}
    return written(folder, "post.html", page_of(POST.format(**told), edition, buyer))


def go(found: Opened, screen: str) -> None:
    found.page.click(f"nav [data-screen={screen}]")
    found.page.wait_for_selector(f"main.{screen}")
