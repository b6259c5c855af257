"""Pictures as SVG 1.1 documents."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from xml.sax.saxutils import escape, quoteattr

from buildplan.drawing.fonts import FAMILY
from buildplan.drawing.marks import (
    Circle,
    Ink,
    Inset,
    Label,
    Look,
    Mark,
    MarkData,
    Picture,
    Point,
    Polyline,
    Stamp,
)
from buildplan.drawing.symbols import look_marks

NUMBERS_KEPT = 1 << 16  # the pictures of a piece share most of theirs


@lru_cache(maxsize=NUMBERS_KEPT)
def _number(value: float) -> str:
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _at(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _ink(ink: Ink) -> str:
    parts = [f'fill="{ink.fill or "none"}"']
    if ink.stroke is not None:
        parts.append(f'stroke="{ink.stroke}" stroke-width="{_number(ink.width)}"')
        if ink.dash:
            parts.append(f'stroke-dasharray="{" ".join(_number(d) for d in ink.dash)}"')
    return " ".join(parts)


def _data(data: MarkData) -> str:
    return "".join(f" data-{name}={quoteattr(value)}" for name, value in data)


def _label(label: Label) -> str:
    x, y = label.at
    halo = ""
    if label.halo is not None:
        width = _number(label.size * 0.22)
        halo = f' paint-order="stroke" stroke="{label.halo}" stroke-width="{width}"'
    weight = ' font-weight="bold"' if label.bold else ""
    return (
        f'<text transform="matrix(1 0 0 -1 {_number(x)} {_number(y)})" '
        f'font-size="{_number(label.size)}" text-anchor="{label.anchor}"{weight}'
        f' fill="{label.colour}"{halo}{_data(label.data)}>{escape(label.text)}</text>'
    )


def _element(mark: Mark, ids: dict[Look, str]) -> str:
    if isinstance(mark, Stamp):
        matrix = " ".join(_number(round(value, 3)) for value in mark.matrix)
        return f'<use href="#{ids[mark.look]}" transform="matrix({matrix})"/>'
    if isinstance(mark, Label):
        return _label(mark)
    if isinstance(mark, Inset):
        return _inset(mark, ids)
    if isinstance(mark, Circle):
        x, y = (_number(value) for value in mark.centre)
        return f'<circle cx="{x}" cy="{y}" r="{_number(mark.radius)}" {_ink(mark.ink)}/>'
    if isinstance(mark, Polyline):
        path = "L".join(_at(point) for point in mark.points)
    else:
        pieces = "".join(f"C{_at(a)} {_at(b)} {_at(c)}" for a, b, c in mark.pieces)
        path = f"{_at(mark.start)}{pieces}"
    end = "Z" if mark.closed else ""
    return f'<path d="M{path}{end}" {_ink(mark.ink)}{_data(mark.data)}/>'


def _inset(inset: Inset, ids: dict[Look, str]) -> str:
    """A nested picture; its own <svg> clips it, so that its y axis points down again."""
    picture, (x, y) = inset.picture, inset.at
    width, height = _number(picture.width), _number(picture.height)
    shapes = "".join(_element(mark, ids) for mark in picture.marks)
    return (
        f"<g{_data(picture.data)} "
        f'transform="matrix(1 0 0 -1 {_number(x)} {_number(y + picture.height)})">'
        f'<svg width="{width}" height="{height}" viewBox="0 0 {width} {height}">'
        f'<g transform="matrix(1 0 0 -1 0 {height})">{shapes}</g></svg></g>'
    )


def _looks(picture: Picture) -> Iterator[Look]:
    for mark in picture.marks:
        if isinstance(mark, Stamp):
            yield mark.look
        elif isinstance(mark, Inset):
            yield from _looks(mark.picture)


def picture_svg(picture: Picture, title: str = "") -> str:
    """The picture as SVG, each look defined once. The same picture gives the same text."""
    ids: dict[Look, str] = {}
    for look in _looks(picture):
        if look not in ids:
            ids[look] = f"look{len(ids) + 1}"
    width, height = _number(picture.width), _number(picture.height)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}pt" height="{height}pt" '
        f'viewBox="0 0 {width} {height}" role="img" font-family={quoteattr(_families())}>',
        f"<title>{escape(title or picture.alt)}</title>",
        f"<desc>{escape(picture.alt)}</desc>",
        "<defs>",
    ]
    for look, name in ids.items():
        shapes = "".join(_element(mark, ids) for mark in look_marks(look))
        lines.append(f'<g id="{name}">{shapes}</g>')
    lines += [
        "</defs>",
        f"<g{_data(picture.data)} "
        f'transform="matrix(1 0 0 -1 0 {height})" stroke-linejoin="round" '
        'stroke-linecap="round">',
        *(_element(mark, ids) for mark in picture.marks),
        "</g>",
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def _families() -> str:
    return f"'{FAMILY}', sans-serif"
