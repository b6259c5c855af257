"""Pictures in other languages show what they show in English, and their words fit into them."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator

import pytest
from diagram_pieces import assert_inside, assert_readable, pieces

from buildplan.drawing.cell_diagrams import cell_diagram
from buildplan.drawing.gauge import gauge_sheets
from buildplan.drawing.maps.joint_map import joint_map
from buildplan.drawing.marks import Picture
from buildplan.drawing.section_diagram import section_diagram
from buildplan.drawing.techniques import TECHNIQUES, technique_pictures
from buildplan.framework.model import Framework
from buildplan.language.voice import ENGLISH, LOCALES, Voice

FIGURES = re.compile(r"[A-Za-z]?\d+")
JOINTS = re.compile(r"\b[A-Z]\d+\b")
PIECES = pieces()
OTHERS = [language for language in LOCALES if language != ENGLISH]


def maps(framework: Framework, voice: Voice) -> tuple[Picture, ...]:
    return joint_map(framework, 520, 700, voice)


def others(framework: Framework, voice: Voice) -> Iterator[Picture]:
    for cell in framework.cells[:4]:
        yield cell_diagram(framework, cell.number, 240, 180, voice)
    for brace in framework.braces[:4]:
        yield section_diagram(framework, brace.number, framework.lock_at, voice)
    for kind in TECHNIQUES:
        yield from technique_pictures(framework, kind, voice)
    for sheet in gauge_sheets(framework, (595, 842), "in", voice):
        yield sheet.picture


def spoken(
    language: str, draw: Callable[[Framework, Voice], Iterable[Picture]], framework: Framework
) -> list[Picture]:
    return list(draw(framework, Voice(language)))


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("name", PIECES)
def test_alternative_texts_name_the_same_things(name: str, language: str) -> None:
    told = (spoken(each, others, PIECES[name]) for each in (ENGLISH, language))
    for english, other in zip(*told, strict=True):
        assert Counter(FIGURES.findall(english.alt)) == Counter(FIGURES.findall(other.alt))
        assert english.alt != other.alt


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("name", PIECES)
def test_maps_name_the_same_joints(name: str, language: str) -> None:
    english, other = (
        {joint for sheet in spoken(lg, maps, PIECES[name]) for joint in JOINTS.findall(sheet.alt)}
        for lg in (ENGLISH, language)
    )
    assert english == other != set()


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("name", PIECES)
def test_words_stay_within_their_pictures(name: str, language: str) -> None:
    for draw in (maps, others):
        for picture in spoken(language, draw, PIECES[name]):
            assert_inside(picture)
            assert_readable(picture)
