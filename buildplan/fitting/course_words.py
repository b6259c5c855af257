"""A course as lines of a design file, to be copied into it."""

from __future__ import annotations

from textwrap import wrap

from buildplan.patterns.course_edits import Cells, as_items

WIDTH = 84


def course_words(cells: Cells) -> list[str]:
    """`course:` with its cells in brackets, broken where the line is full."""
    items = ", ".join(map(_item, as_items(cells)))
    return wrap(f"course: [{items}]", WIDTH, subsequent_indent=" " * len("course: ["))


def _item(item: object) -> str:
    match item:
        case dict():
            cells = ", ".join(map(_item, item["cells"]))
            return f"{{repeat: {item['repeat']}, cells: [{cells}]}}"
        case list():
            return f"[{', '.join(map(str, item))}]"
    return str(item)
