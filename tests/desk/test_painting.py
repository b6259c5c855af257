"""Painting: what is written into the file gives just the balloons that were painted."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import yaml

from buildplan.design.building import build_framework
from buildplan.design.reading import joined_data, read_design
from buildplan.desk.painting import (
    CannotPaintError,
    PaintedPart,
    paint_changes,
    painted_parts,
    unpainted,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.source.file_changes import changed_data

DESIGNS = Path(__file__).parents[2] / "designs"
Choose = Callable[[dict[str, PaintedPart]], set[str]]


def painted(file: str, choose: Choose, balloon: str) -> tuple[Any, Framework, Framework, set[str]]:
    """The data after painting, the frameworks before and after it, and what was to be painted."""
    path = DESIGNS / file
    data = yaml.safe_load(path.read_text("utf-8"))
    before = build_framework(design := read_design(path))
    parts = painted_parts(design, data)
    links = choose({".".join((*map(str, one.colours_at), one.part)): one for one in parts})
    changed = changed_data(data, paint_changes(parts, data, before, links, balloon))
    return changed, before, build_framework(joined_data(changed, path.parent, ())), links


def part(name: str, *places: int) -> Choose:
    """Some places of a part; all of it where none is named."""

    def chosen(parts: dict[str, PaintedPart]) -> set[str]:
        one = parts[name]
        return {
            link
            for number, place in enumerate(one.places)
            if not places or number in places
            for link in place
        }

    return chosen


@pytest.mark.parametrize(
    ("file", "choose", "balloon"),
    [
        ("reading_star.yaml", part("colour_pattern.A", 3), "cross"),
        ("reading_star.yaml", part("colour_pattern.B"), "cross"),
        ("reading_star.yaml", part("colour_pattern.brace", 0, 7), "long"),
        ("reading_star.yaml", part("colour_pattern.brace"), "long"),
        ("reading_star.yaml", part("colour_pattern.long", 1, 2), "cross"),
        ("gallery/story_wall.yaml", part("colour_pattern.row", 1), "upright"),
        ("gallery/slim_column.yaml", part("colour_pattern.ring", 2), "between"),
        ("gallery/portal.yaml", part("build.assembly.parts.1.colour_pattern.ring", 0), "between"),
        ("gallery/portal.yaml", part("build.assembly.parts.2.colour_pattern.A", 4), "between"),
    ],
)
def test_what_was_painted_changes_and_nothing_else(file: str, choose: Choose, balloon: str) -> None:
    _, before, after, links = painted(file, choose, balloon)
    assert links
    for old, new in zip(before.links, after.links, strict=True):
        assert new.balloon == (balloon if old.id in links else old.balloon), old.id


def test_all_of_a_part_is_its_balloon_and_no_pattern() -> None:
    data, *_ = painted("reading_star.yaml", part("colour_pattern.brace"), "long")
    assert data["build"]["tube"]["brace"] == "long"
    assert "colour_pattern" not in data


def test_stripes_are_written_no_longer_than_they_repeat() -> None:
    every_other = part("colour_pattern.brace", *range(0, 40, 2))
    data, *_ = painted("reading_star.yaml", every_other, "long")
    assert data["colour_pattern"] == {"brace": ["long", "cross"]}


def test_one_ring_of_a_faded_column_is_refused_with_the_reason() -> None:
    with pytest.raises(CannotPaintError) as refused:
        painted("gallery/dawn_column.yaml", part("colour_pattern.ring", 2), "ivory")
    assert "take it out" in Voice().tell(refused.value.why)


def test_a_piece_without_chains_says_why() -> None:
    path = DESIGNS / "gallery" / "reading_globe.yaml"
    design, data = read_design(path), yaml.safe_load(path.read_text("utf-8"))
    assert painted_parts(design, data) == []
    said = [Voice().tell(one) for one in unpainted(design, data)]
    assert said == [
        "a globe has no long chains to lay a colour pattern along",
        "name other balloons in long and short",
    ]
