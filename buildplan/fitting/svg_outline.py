"""Outlines from an SVG file: its closed paths that lie apart from one another, and their holes.

Paths, polygons, circles, ellipses and rectangles are read with their transforms by svgelements.
The file is small text without entities of its own, so that nothing in it can expand or reach out.
"""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path as FilePath
from xml.etree import ElementTree

import numpy as np
from shapely import Polygon, STRtree, linestrings
from svgelements import SVG, Arc, Close, Line, Move, Path, Shape

from buildplan.fitting.outline import ComplexArray, Drawn, OutlineError, enclosed
from buildplan.language.messages import message
from buildplan.source.bounded import UnfitFileError, bytes_within
from buildplan.source.svg_size import drawn_elements

MOST_BYTES = 2 * 1024 * 1024
MOST_SEGMENTS = 20_000
MOST_POINTS = 100_000
MOST_CROSSINGS, LINES_AT_ONCE = 10_000, 200
FURTHEST = 1e9  # from where the drawing begins, in its own units
A_PIECE = 0.04  # of the largest: a smaller path is no piece of its own
POINTS_PER_CURVE, POINTS_PER_ARC = 24, 96


def svg_outline(file: FilePath) -> Drawn:
    """The largest closed path, its holes, and how many others there are. Raises OutlineError;
    OSError passes through."""
    return outline_in(_text(file), str(file))


def outline_in(text: str, called: str) -> Drawn:
    """As `svg_outline`, of the text of an SVG; `called` is its name in messages."""
    found = _closed_paths(text, called)
    largest = max(found, key=lambda closed: closed.region.area)
    holes = tuple(closed.points for closed in found if closed.hole_in(largest))
    return Drawn(largest.points, holes, len(found) - len(holes) - 1)


def svg_outlines(file: FilePath) -> tuple[Drawn, ...]:
    """The pieces of a drawing, from left to right: closed paths that neither touch nor lie within
    a larger one, each with its holes; the largest also has how many paths are left out: those that
    do, and what is much smaller. Raises OutlineError; OSError passes through."""
    found = _closed_paths(_text(file), str(file))
    apart: list[_Closed] = []
    for one in sorted(found, key=lambda closed: closed.region.area, reverse=True):
        large = not apart or one.region.area >= A_PIECE * apart[0].region.area
        if large and all(one.region.disjoint(other.region) for other in apart):
            apart.append(one)
    holes = {id(one): tuple(other.points for other in found if other.hole_in(one)) for one in apart}
    left_out = len(found) - len(apart) - sum(map(len, holes.values()))
    drawn = [Drawn(one.points, holes[id(one)], left_out if one is apart[0] else 0) for one in apart]
    return tuple(sorted(drawn, key=lambda one: float(one.points.real.min())))


def _closed_paths(text: str, file: str) -> list[_Closed]:
    """Every closed path of a file's text, one at least. Raises OutlineError."""
    _check_size(file, text)
    try:
        drawing = SVG.parse(io.StringIO(text), reify=True)
    except Exception as error:
        raise _unread(file) from error
    if not isinstance(drawing, SVG):
        raise OutlineError(
            message("{file} is no SVG: its outermost element is another", file=file),
            message("save it again as plain SVG"),
        )
    found: list[_Closed] = []
    segments = drawn = 0
    for number, element in enumerate(drawing.elements()):
        if not isinstance(element, Shape):
            continue
        try:
            parts = list(Path(element).as_subpaths())
        except ValueError as error:  # of points that are no numbers
            raise _unread(file) from error
        for part in parts:
            path = list(Path(part))
            segments += len(path)
            drawn += sum(map(_points_of, path))
            if segments > MOST_SEGMENTS or drawn > MOST_POINTS:
                raise _too_much(file)
            points = _closed(path)
            if points is not None:
                if float(np.abs(points).max()) > FURTHEST:
                    raise _too_far(file)
                if _tangled(points):
                    raise _too_tangled(file)
                found.append(_Closed(np.conj(points), number, _even_odd(element)))
    if not found:
        raise OutlineError(
            message("{file} holds no closed path", file=file),
            message("close the outline: end its path with Z"),
        )
    return found


def _check_size(file: str, text: str) -> None:
    """Raises OutlineError where a file draws too much, or is no XML."""
    try:
        elements = drawn_elements(text, MOST_SEGMENTS)
    except ElementTree.ParseError as error:
        raise OutlineError(
            message(
                "{file} is not written as SVG is: see its line {line}",
                file=file,
                line=str(error.position[0]),
            ),
            message("save it again as plain SVG"),
        ) from error
    except RecursionError as error:
        raise _unread(file) from error
    if elements > MOST_SEGMENTS:
        raise OutlineError(
            message(
                "{file} draws more than {count} shapes, or shapes that lie too deep in others or "
                "in themselves",
                file=str(file),
                count=MOST_SEGMENTS,
            ),
            message("simplify the drawing to one outline"),
        )


def _unread(file: str) -> OutlineError:
    return OutlineError(
        message("{file} cannot be read as SVG", file=file),
        message("save it again as plain SVG"),
    )


def _too_much(file: str) -> OutlineError:
    return OutlineError(
        message("{file} holds more than {count} path segments", file=file, count=MOST_SEGMENTS),
        message("simplify the drawing to one outline"),
    )


def _too_far(file: str) -> OutlineError:
    return OutlineError(
        message("{file} draws further out than any sheet reaches", file=file),
        message("save it again as plain SVG"),
    )


def _too_tangled(file: str) -> OutlineError:
    return OutlineError(
        message("a path of {file} crosses itself too often for an outline", file=file),
        message("simplify the drawing to one outline"),
    )


def _tangled(points: ComplexArray) -> bool:
    """Whether a path crosses itself so often that the regions between would be too many."""
    points = points[points != np.roll(points, 1)]
    ends = np.stack([points, np.roll(points, -1)], axis=1)
    lines = linestrings(np.stack([ends.real, ends.imag], axis=2))
    tree, found = STRtree(lines), 0
    # each line meets itself and its two neighbours
    most = 3 * len(lines) + 2 * MOST_CROSSINGS
    for start in range(0, len(lines), LINES_AT_ONCE):
        found += tree.query(lines[start : start + LINES_AT_ONCE], "intersects").shape[1]
        if found > most:
            return True
    return False


def _points_of(segment: object) -> int:
    """How many points a segment is taken at."""
    if isinstance(segment, Move | Line | Close):
        return 1
    return POINTS_PER_ARC if isinstance(segment, Arc) else POINTS_PER_CURVE


@dataclass(frozen=True)
class _Closed:
    """A closed subpath, y up: the element that it is of, and the rule by which that is filled."""

    points: ComplexArray
    element: int
    even_odd: bool

    @cached_property
    def region(self) -> Polygon:
        return enclosed(self.points).buffer(0)

    @cached_property
    def anticlockwise(self) -> bool:
        return bool(enclosed(self.points).exterior.is_ccw)

    def hole_in(self, other: _Closed) -> bool:
        """Whether the fill rule leaves it empty within `other` (SVG 2, section 13.4.2): a
        subpath of the same element that runs the other way round, or either way by even-odd."""
        empty = self.even_odd or self.anticlockwise != other.anticlockwise
        same = self.element == other.element and self is not other
        return same and empty and bool(other.region.contains(self.region))


def _even_odd(element: Shape) -> bool:
    return str(element.values.get("fill-rule", "")).strip() == "evenodd"


def _text(file: FilePath) -> str:
    try:
        data = bytes_within(file, MOST_BYTES)
    except UnfitFileError:
        raise OutlineError(
            message(
                "{file} is larger than {size} KiB, which no outline is",
                file=str(file),
                size=MOST_BYTES // 1024,
            ),
            message("save only the outline, as plain SVG without pictures in it"),
        ) from None
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise OutlineError(
            message("{file} is not UTF-8 text", file=str(file)), message("save it as plain SVG")
        ) from error
    if "<!ENTITY" in text:
        raise OutlineError(
            message("{file} defines entities of its own, which are not read", file=str(file)),
            message("save it as plain SVG"),
        )
    return text


def _closed(path: list[object]) -> ComplexArray | None:
    """The points of a subpath that comes back to where it began; None for any other."""
    points: list[complex] = []
    for segment in path:
        if isinstance(segment, Move):
            points.append(complex(segment.end))
        elif isinstance(segment, Line | Close):
            if segment.end is not None:
                points.append(complex(segment.end))
        else:
            steps = np.linspace(0, 1, _points_of(segment) + 1)[1:]
            at = [segment.point(float(step)) for step in steps]  # type: ignore[attr-defined]
            points += [complex(float(point.x), float(point.y)) for point in at]
    shut = any(isinstance(segment, Close) for segment in path)
    array = np.array(points, dtype=np.complex128)
    if len(array) < 3 or not np.isfinite(array).all():
        return None
    size = float(np.ptp(array.real) + np.ptp(array.imag))
    return array if shut or abs(array[0] - array[-1]) <= 1e-6 * size else None
