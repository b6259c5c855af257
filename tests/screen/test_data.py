"""The data of a piece: against its schema, against the steps that it tells, and in themselves."""

from __future__ import annotations

import json
import re
from collections import Counter
from pathlib import Path

import jsonschema
import numpy as np
import pytest
from screen_pieces import NAMES, book, piece

import buildplan.screen
from buildplan.language.voice import LOCALES
from buildplan.screen.model import Piece, piece_json, piece_schema
from buildplan.sequence.model import Kind

SCHEMA = Path(buildplan.screen.__file__).parent / "piece.schema.json"


@pytest.fixture(params=NAMES)
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def test_the_published_schema_is_that_of_the_model_and_a_schema() -> None:
    published = json.loads(SCHEMA.read_text("utf-8"))
    assert published == piece_schema()
    jsonschema.Draft202012Validator.check_schema(published)


def test_data_keep_to_the_published_schema(name: str) -> None:
    data = json.loads(piece_json(piece(name)))
    jsonschema.Draft202012Validator(json.loads(SCHEMA.read_text("utf-8"))).validate(data)
    data["moments"] = "no list"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(data, piece_schema())


def test_every_balloon_comes_in_once_in_the_step_that_adds_it(name: str) -> None:
    data = piece(name)
    counts: Counter[str] = Counter()
    for step in data.steps:
        counts.update(step.adds)
    links = Counter(link.balloon for link in data.links)
    links.update({b: 2 * n for b, n in Counter(lock.balloon for lock in data.locks).items()})
    assert counts == links == Counter({b.key: b.count for b in data.balloons})
    for link in data.links:
        number, turn = data.moments[link.moment]
        told = data.steps[number - 1].turns[turn]
        assert link.id in told.links or (
            link.role == "chain" and data.steps[number - 1].kind == "lay"
        )


def test_words_are_there_in_every_language(name: str) -> None:
    data = piece(name)
    assert data.languages == list(LOCALES)
    for step in data.steps:
        for words in (step.title, step.text, data.stages[step.stage]):
            assert set(words) == set(LOCALES)
            assert all(words.values())
    assert any(step.text["en"] != step.text["es"] for step in data.steps)


def test_links_are_as_long_as_their_balloons(name: str) -> None:
    """Tie-to-tie lengths hold within the strain that the shape allows."""
    data = piece(name)
    at = {joint.label: np.array(joint.at) for joint in data.joints}
    length = {balloon.key: balloon.tie_to_tie_m for balloon in data.balloons}
    for link in data.links:
        apart = np.linalg.norm(at[link.start] - at[link.finish])
        assert apart == pytest.approx(length[link.balloon], rel=0.1)


def test_joints_know_the_steps_that_touch_them(name: str) -> None:
    data = piece(name)
    for joint in data.joints:
        for number in joint.steps:
            turns = data.steps[number - 1].turns
            assert any(joint.label in turn.joints for turn in turns)


def test_minutes_of_every_step_count_as_a_kind_of_work(name: str) -> None:
    """What is timed on a phone goes into the log by these."""
    for step, planned in zip(piece(name).steps, book(name).steps, strict=True):
        assert Kind(step.kind)
        ties = any(operation.knots for operation in planned.operations)
        # pairs that are chains as they are: nothing to time, and the page asks for no minutes
        assert step.work[step.kind] > 0 or (step.kind == "chain" and not ties)


def test_same_book_same_text() -> None:
    data = piece("reading_star")
    assert piece_json(data) == piece_json(Piece.model_validate_json(piece_json(data)))


@pytest.mark.parametrize("tube", ["reading_star", "picture_frame", "gallery/ribbon_arch"])
def test_from_the_seat_every_brace_lies_the_same_way(tube: str) -> None:
    """From the builder's seat A lies right of B and above D, B above C, at every brace."""
    data = piece(tube)
    at = {joint.label: np.array(joint.at) for joint in data.joints}
    braces = {brace.number: brace for brace in book(tube).framework.braces}
    seen = 0
    for step in data.steps:
        if step.kind != "brace":
            continue
        for turn in step.turns:
            brace = next(b for b in braces.values() if set(b.links) & set(turn.links))
            if len(brace.section) != 4:
                continue
            eye, up = np.array(turn.seat.to_eye), np.array(turn.seat.up)
            right = np.cross(up, eye)
            upward = np.cross(eye, right / np.linalg.norm(right))
            x, y = ([float(at[j] @ axis) for j in brace.section] for axis in (right, upward))
            a, b, c, d = range(4)
            assert x[a] > x[b]
            assert x[d] > x[c]
            assert y[a] > y[d]
            assert y[b] > y[c]
            seen += 1
    assert seen > 5


def test_steps_that_texts_name_are_where_the_data_say(name: str) -> None:
    """Every number after the word for a step is told, in each language, and no other."""
    said = {
        "en": r"\bsteps? ((?:\d+(?:, | and | to )?)+)",
        "es": r"\bpasos? ((?:\d+(?:, | y | a )?)+)",
        "de": r"\bSchritt(?:en|e)? ((?:\d+(?:, | und | bis )?)+)",
        "fr": r"\bétapes? ((?:\d+(?:, | et | à )?)+)",
        "pt": r"\bpassos? ((?:\d+(?:, | e | a )?)+)",
    }
    seen = 0
    for step in piece(name).steps:
        for language, text in step.text.items():
            told = [(text[at : at + long], number) for at, long, number in step.refers[language]]
            assert all(digits == str(number) != str(step.number) for digits, number in told)
            read = [
                n for found in re.findall(said[language], text) for n in re.findall(r"\d+", found)
            ]
            assert [digits for digits, _ in told] == read
            seen += len(told)
    assert seen > 0


def test_a_chain_comes_in_with_the_turn_that_names_it() -> None:
    """Each ring of a column's course is shown as its own, not all with the last."""
    data = piece("gallery/portal")
    chains = {chain.letter: set(chain.links) for chain in data.chains}
    for step in data.steps:
        for turn in step.turns:
            named = re.fullmatch(r"Chain (\S+)", turn.name["en"])
            if step.kind == "join" and named:
                assert set(turn.links) == chains[named[1]]
