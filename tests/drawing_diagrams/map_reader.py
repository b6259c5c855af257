"""A reader of joint maps that knows nothing of how they are drawn: from the SVG of the sheets alone
it says which joints there are and which of them a line joins."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from xml.etree import ElementTree

from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Picture, Point
from buildplan.drawing.svg import picture_svg
from buildplan.framework.model import Framework

SVG = "{http://www.w3.org/2000/svg}"
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


@dataclass(frozen=True)
class ReadJoint:
    """A joint's label: what it is called in each of equal parts, and its box."""

    names: tuple[str, ...]
    text: str
    again: bool
    middle: Point
    half: Point
    tied: tuple[str, ...]


@dataclass(frozen=True)
class ReadLine:
    """The line of a balloon: its two ends on the paper, and what it says that it joins."""

    ends: tuple[Point, Point]
    said: tuple[tuple[str, ...], tuple[str, ...]]
    again: bool


@dataclass
class ReadMap:
    """All sheets of a map."""

    joints: list[ReadJoint] = field(default_factory=list)
    lines: list[tuple[int, ReadLine]] = field(default_factory=list)  # with the number of the sheet
    on_sheet: list[list[ReadJoint]] = field(default_factory=list)

    def joined(self, sheet: int, line: ReadLine) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The joints whose labels are nearest to the two ends of a line."""
        first, second = (self._nearest(sheet, end) for end in line.ends)
        return first.names, second.names

    def _nearest(self, sheet: int, end: Point) -> ReadJoint:
        found = min(self.on_sheet[sheet], key=lambda joint: _away(joint, end))
        assert _away(found, end) < 4, (found, end)
        return found


def _away(joint: ReadJoint, point: Point) -> float:
    across, up = (
        max(abs(point[axis] - joint.middle[axis]) - joint.half[axis], 0.0) for axis in (0, 1)
    )
    inside = math.dist(point, joint.middle) / 1000
    return math.hypot(across, up) + inside


def read_map(sheets: Sequence[Picture]) -> ReadMap:
    """Read the sheets of a map from their SVG."""
    found = ReadMap()
    for number, sheet in enumerate(sheets):
        root = ElementTree.fromstring(picture_svg(sheet))
        assert root.find(f"{SVG}g").get("data-picture") == "joint map"  # type: ignore[union-attr]
        here = list(_joints(root))
        found.joints += here
        found.on_sheet.append(here)
        found.lines += [(number, line) for line in _lines(root)]
    return found


def _joints(root: ElementTree.Element) -> Iterator[ReadJoint]:
    for text in root.iter(f"{SVG}text"):
        names = text.get("data-joint")
        if names is None:
            continue
        *_, x, y = map(float, NUMBER.findall(text.get("transform", "")))
        size = float(text.get("font-size", "0"))
        wide = text_width(text.text or "", size, text.get("font-weight") == "bold")
        left = {"middle": x - wide / 2, "start": x, "end": x - wide}[text.get("text-anchor", "")]
        yield ReadJoint(
            tuple(names.split()),
            text.text or "",
            text.get("data-again") == "yes",
            (left + wide / 2, y + 0.36 * size),
            (wide / 2, 0.36 * size),
            tuple((text.get("data-tie") or "").split()),
        )


def _lines(root: ElementTree.Element) -> Iterator[ReadLine]:
    for path in root.iter(f"{SVG}path"):
        start = path.get("data-from")
        if start is None:
            continue
        numbers = [float(one) for one in NUMBER.findall(path.get("d", ""))]
        ends = (numbers[0], numbers[1]), (numbers[-2], numbers[-1])
        said = tuple(start.split()), tuple(path.get("data-to", "").split())
        yield ReadLine(ends, said, path.get("data-again") == "yes")


def assert_rebuilds(framework: Framework, sheets: Sequence[Picture]) -> None:
    """The map shows each joint and each balloon of a piece once in full, each line between the
    labels of its joints, and says what it shows."""
    found = read_map(sheets)
    drawn = Counter(name for one in found.joints if not one.again for name in one.names)
    assert drawn == Counter(framework.joints)
    edges: Counter[frozenset[str]] = Counter()
    for sheet, line in found.lines:
        ends = found.joined(sheet, line)
        assert set(ends) == set(line.said)
        if not line.again:
            edges.update(frozenset(pair) for pair in zip(*ends, strict=True))
    assert edges == Counter(frozenset((link.start, link.finish)) for link in framework.links)
    ties = {one.tied for one in found.joints if one.tied}
    assert ties == {tie.joints for tie in framework.ties}
