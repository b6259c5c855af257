"""How much an SVG comes to when what it uses again and again is drawn each time, counted before any
of it is drawn (SVG 2, 5.6: `use` shows a copy of what it refers to, which may itself hold others).
"""

from __future__ import annotations

from collections.abc import Iterator
from xml.etree import ElementTree

MOST_DEEP = 100
HREFS = ("href", "{http://www.w3.org/1999/xlink}href")


def drawn_elements(text: str, most: int) -> int:
    """The number of elements that are drawn, or `most` + 1 where there are more, or where they hold
    themselves. The text has no entities of its own. Raises ElementTree.ParseError."""
    root = ElementTree.fromstring(text)
    named = {one.get("id"): one for one in root.iter() if one.get("id")}
    known: dict[int, int] = {}

    def count(element: ElementTree.Element, deep: int) -> int:
        if deep > MOST_DEEP:
            return most + 1
        if id(element) not in known:
            known[id(element)] = most + 1  # until it is known: what holds itself never ends
            found = 1
            for held in (*element, *used(element)):
                found += count(held, deep + 1)
                if found > most:
                    break
            known[id(element)] = min(found, most + 1)
        return known[id(element)]

    def used(element: ElementTree.Element) -> Iterator[ElementTree.Element]:
        if element.tag.rpartition("}")[2] == "use":
            for key in HREFS:
                held = named.get((element.get(key) or "").removeprefix("#"))
                if held is not None:
                    yield held

    return count(root, 0)
