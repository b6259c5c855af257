"""Paragraphs in which somebody's words keep their own direction, on however many lines they stand.

platypus parts a paragraph into lines before its signs are ordered, and draws pieces of one style
from left to right. So an isolate from the right (`language/isolates.py`) becomes a piece in a face
whose lines are written from there; one from the left keeps its signs, which are known on each line.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

from reportlab.platypus import Paragraph

from buildplan.document import parting as _parting  # noqa: F401 (paragraphs part words by it)
from buildplan.drawing.fonts import BOLD, face_from_right
from buildplan.language.isolates import END, FROM_LEFT, OPENING, begins_from_right


class OrderedParagraph(Paragraph):  # type: ignore[misc]
    """A paragraph of markup."""

    def _setup(self, text: str, style: Any, bullet: Any, frags: Any, cleaner: Any) -> None:
        super()._setup(text, style, bullet, frags, cleaner)
        if frags is None:  # what is parted from another has been ordered with it
            self.frags: list[Any] = list(_ordered(self.frags))


def _ordered(frags: Sequence[Any]) -> Iterator[Any]:
    whole = "".join(getattr(frag, "text", "") for frag in frags)
    if not OPENING.intersection(whole):
        yield from frags
        return
    signs = _turned(whole)
    at = 0
    for frag in frags:
        text = getattr(frag, "text", "")
        its, at = signs[at : at + len(text)], at + len(text)
        if not text:
            yield frag
        for turned, group in groupby(its, lambda one: one[1]):
            words = "".join(sign for sign, _ in group)
            if words and turned:
                yield frag.clone(text=words, fontName=face_from_right(frag.fontName == BOLD))
            elif words:
                yield frag.clone(text=words)


def _turned(whole: str) -> list[tuple[str, bool]]:
    """What is left of each sign, and whether it stands in an isolate from the right. Isolates
    within such a one stay in it."""
    found = list[tuple[str, bool]]()
    depth, turned_at = 0, 0  # the depth of the isolate from the right that the sign is in
    for at, sign in enumerate(whole):
        if sign in OPENING:
            depth += 1
            if not turned_at and begins_from_right(_within(whole[at + 1 :])):
                turned_at = depth
                found.append(("", True))
            else:
                found.append((sign if turned_at else FROM_LEFT, bool(turned_at)))
        elif sign == END:
            ends = depth == turned_at
            found.append(("" if ends else sign, bool(turned_at)))
            turned_at = 0 if ends else turned_at
            depth = max(0, depth - 1)
        else:
            found.append((sign, bool(turned_at)))
    return found


def _within(rest: str) -> str:
    """What an isolate holds that has just been opened."""
    depth = 1
    for at, sign in enumerate(rest):
        depth += (sign in OPENING) - (sign == END)
        if not depth:
            return rest[:at]
    return rest
