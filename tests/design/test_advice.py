"""Advice that mends: every suggestion that names a change is made, and the problem is gone."""

from __future__ import annotations

import pytest
from design_texts import RING, TRIANGLE, changed, problems
from kinds_by_hand import BY_HAND

from buildplan.source.file_changes import changed_text
from buildplan.source.kinds import FileKind as K
from buildplan.source.problems import Problem
from buildplan.source.suggestions import Put

HEAD = RING[: RING.index("  tube:")]
LETTERS = HEAD + "  letters: {text: LEO, cells: 7, long: long, brace: cross, lock: lock}\n"
WALL = HEAD + (
    "  wall: {across: 4, up: 4, layers: 2, row: long, upright: long, between: cross, lock: lock}\n"
)
ASSEMBLY = (
    HEAD
    + """\
  assembly:
    lock: lock
    parts:
      - {name: L, build: {solid: {shape: cube, edge: long, lock: lock}}}
      - {name: T, build: {solid: {shape: cube, edge: long, lock: lock}}}
    ties: [[L.P1, T.P1]]
"""
)
SAME = RING.replace("#1F5F8B", "#F7F3E8")  # two balloons out of the same packs
# the ring's balloons as a metric shop sells them, sized in centimetres, and sized in inches
IN_CM, GAUGES = (
    RING.replace("units: in", "units: cm")
    .replace("nominal: 12", "nominal: 30")
    .replace("nominal: 5", "nominal: 13")
    .replace("inflate_to: 8", f"inflate_to: {link}")
    .replace("inflate_to: 3.5", f"inflate_to: {lock}")
    for link, lock in ((20, 9), (10, 3.5))
)
# its balloons in metres, in millimetres, and in feet; 1 in is about 25 mm
METRES, MILLIMETRES, FEET = (
    RING.replace("nominal: 12", f"nominal: {12 * inch}")
    .replace("nominal: 5", f"nominal: {5 * inch}")
    .replace("inflate_to: 8", f"inflate_to: {8 * inch}")
    .replace("inflate_to: 3.5", f"inflate_to: {4 * inch}")
    for inch in (0.025, 25, 0.1)
)
SPARE, CROSS = "spare: 0.05", "  cross: {kind: link, "
# a file, what is made wrong in it, the code, and how many ways of mending it are named
BROKEN = [
    (RING, "name: Ring", "nmae: Ring", K.UNKNOWN_KEY, 1),
    (RING, "units: in", "units: inn", K.WRONG_TYPE, 1),
    (RING, "nominal: 12", "nominal: '12'", K.WRONG_TYPE, 1),
    (RING, "name: Ring", "name: 12", K.WRONG_TYPE, 1),
    (RING, "closed: true", "closed: yes", K.WRONG_TYPE, 1),
    (RING, "[straight, fan]", "straight", K.WRONG_TYPE, 1),
    (RING, "repeat: 6", "repeat: 6.0", K.WRONG_TYPE, 1),
    *((RING, "repeat: 6", f"repeat: {six}", K.WRONG_TYPE, 1) for six in ("six", "6x", "seis")),
    (RING, SPARE, "pole: 2 m", K.WRONG_TYPE, 1),
    (RING, SPARE, "hung: 1", K.WRONG_TYPE, 1),
    (RING, SPARE, "crew: 2 people", K.WRONG_TYPE, 1),
    (RING, SPARE, "prices: {long: 0.12 GBP}", K.WRONG_TYPE, 1),
    (RING, SPARE, "colour_pattern: {A: {stripes: [long, cross, cross]}}", K.WRONG_TYPE, 1),
    (RING, SPARE, "colour_pattern: {A: {stripes: [long, cross, long]}}", K.WRONG_TYPE, 0),
    (RING, SPARE, "colour_pattern: {A: [deep blue]}", K.NO_SUCH_BALLOON, 1),
    (RING, SPARE, "prices: {Deep Blue: 1}", K.NO_SUCH_BALLOON, 1),
    (RING, "long: long\n", "long: deep blue\n", K.NO_SUCH_BALLOON, 1),
    (RING, "[straight, fan]", "straight, fan", K.WRONG_TYPE, 1),
    (RING, "[straight, fan]", "[straight x1, fan]", K.WRONG_TYPE, 1),
    *((RING, "nominal: 12", f"nominal: {foot}", K.WRONG_TYPE, 1) for foot in ("12-inch", "12''")),
    (RING, "inflate_to: 8", "inflate_to: 20cms", K.WRONG_TYPE, 1),
    (RING, SPARE, "spare: 5", K.OUT_OF_RANGE, 1),
    (RING, "long: long\n", "long: lnog\n", K.NO_SUCH_BALLOON, 1),
    (RING, SPARE, "prices: {lnog: 1}", K.NO_SUCH_BALLOON, 1),
    (RING, "lock: lock", "lock: cross", K.WRONG_KIND_OF_BALLOON, 1),
    (RING, SPARE, "stand_on: a12", K.NO_SUCH_JOINT, 1),
    (RING, SPARE, "stand_on: [B 3]", K.NO_SUCH_JOINT, 1),
    (RING, SPARE, "stand_on: middle", K.NO_SUCH_JOINT, 1),
    (RING, SPARE, "stand_on: cell 99", K.NO_SUCH_JOINT, 1),
    (RING, SPARE, "stand_on: [A1, A1]", K.LISTED_TWICE, 1),
    (RING, SPARE, "currency: GBB", K.NO_SUCH_CURRENCY, 1),
    *((RING, SPARE, f"currency: {one}", K.WRONG_FORM, 1) for one in ("Euro", "£", "gbp")),
    (RING, "name: Ring", "title: Ring", K.UNKNOWN_KEY, 1),
    (RING, "repeat: 6", "times: 6", K.UNKNOWN_KEY, 1),
    (RING, SPARE, "extra: [[A2, D3]]", K.UNKNOWN_KEY, 1),
    (RING, "lock: lock\n", "lock: lock\n    stand_on: [A1]\n", K.UNKNOWN_KEY, 1),
    (RING, "[straight, fan]", "[straight fan]", K.WRONG_TYPE, 0),
    (RING, "closed: true", "closed: ture", K.WRONG_TYPE, 1),
    (RING, "inflate_to: 8", "inflate_to: 18", K.GAUGE_OVER_NOMINAL, 3),
    (RING, "inflate_to: 8", "inflate_to: 18 in", K.GAUGE_OVER_NOMINAL, 2),
    (IN_CM, "nominal: 30", "nominal: 12", K.GAUGE_OVER_NOMINAL, 3),
    (RING, "inflate_to: 8", "inflate_to: 3", K.HARDLY_FILLED, 2),
    (RING, "nominal: 12", "nominal: 30 in", K.HARDLY_FILLED, 1),
    (RING, "inflate_to: 3.5", "inflate_to: 3 1/2", K.WRONG_TYPE, 1),
    (RING, "inflate_to: 3.5", "inflate_to: 3½", K.WRONG_TYPE, 1),
    (RING, "lock:  {kind: round", "lock:  {kind: link", K.WRONG_KIND_OF_BALLOON, 1),
    (RING, "nominal: 12", "nominal: 30", K.HARDLY_FILLED, 2),
    (RING, "units: in", "units: cm", K.SIZES_IN_OTHER_UNITS, 2),
    (IN_CM, "units: cm", "units: in", K.SIZES_IN_OTHER_UNITS, 2),
    (IN_CM, "inflate_to: 20", "inflate_to: 8", K.HARDLY_FILLED, 2),
    (GAUGES, "units: cm", "units:  cm", K.HARDLY_FILLED, 1),
    (RING, CROSS, CROSS + "tie_to_tie: 9, chain_of_ten: 90, ", K.MEASURED_TWICE, 2),
    (RING, "{kind: round,", "{kind: round, tie_to_tie: 4,", K.ROUND_HAS_NO_LENGTH, 2),
    (RING, SPARE, "prices: {long: 1}\npack_prices: {long: 9}", K.PRICED_TWICE, 2),
    (RING, "long: long\n", "long: {A: long, B: long}\n", K.CHAIN_WITHOUT_BALLOON, 1),
    (
        RING,
        "chains: 4\n    long: long",
        "chains: 3\n    long: {A: long, B: long, C: long, D: long}",
        K.NO_SUCH_CHAIN,
        1,
    ),
    (RING, "fan]", "fan, [0, 0]]", K.CELL_WITHOUT_ADVANCE, 1),
    (RING, "fan]\n", "fan]\n      - {repeat: 2, cells: [tip, dip]}\n", K.SINGLE_MISSING, 1),
    (RING, "repeat: 6", "repeat: 5", K.NOT_COMING_ROUND, 3),
    (RING, "repeat: 6", "repeat: 7", K.NOT_COMING_ROUND, 4),
    (RING, "[straight, fan]", "[straight, fan_in]", K.NOT_COMING_ROUND, 1),
    (RING, "cells: [straight, fan]", "cells: [straight, straight]", K.NOT_COMING_ROUND, 2),
    (RING, SPARE, "colour_pattern: {A: {stripes: {long: 5}}}", K.UNEVEN_ROUND_RING, 1),
    (
        RING,
        SPARE,
        "colour_pattern: {A: {stripes: {long: 1}, pitch: 3}}",
        K.COLOUR_KEY_OUT_OF_PLACE,
        1,
    ),
    (RING, SPARE, "colour_pattern: {long: {spiral: {long: 4}, pitch: 6}}", K.UNEVEN_PITCH, 2),
    (LETTERS, "cells: 7, ", "", K.CELLS_OR_HEIGHT, 1),
    (LETTERS, "cells: 7, ", "cells: 7, height: 60, ", K.CELLS_OR_HEIGHT, 2),
    (LETTERS, "LEO, cells: 7", "M, cells: 5", K.LETTER_TOO_LOW, 1),
    (LETTERS, "LEO, cells: 7", "M, height: 50", K.LETTER_TOO_LOW, 1),
    (LETTERS, "cells: 7", "height: 60 cm", K.LETTERS_NOT_SO_HIGH, 1),
    (LETTERS, "cells: 7", "height: 20 ft", K.LETTERS_NOT_SO_HIGH, 1),
    (WALL, ", between: cross", "", K.KEY_MISSING, 1),
    (
        WALL,
        "layers: 2",
        "layers: 2, openings: [{along: 0, up: 3, wide: 4, high: 1}]",
        K.OPENING_AT_EDGE,
        1,
    ),
    (RING, "inflate_to: 3.5", "inflate_to: 3,5", K.COMMA_IN_NUMBER, 1),
    (RING, "inflate_to: 3.5", "inflate_to: 3,5 in", K.COMMA_IN_NUMBER, 1),
    (RING, SPARE, "prices: {long: 0,12, lock: 0,05}", K.COMMA_IN_NUMBER, 1),
    (RING, SPARE, "base: {width: 1,2 m, depth: 40 cm, weight: 8,5}", K.COMMA_IN_NUMBER, 1),
    (RING, SPARE, "prices: {long: 0,12 €}", K.COMMA_IN_NUMBER, 1),
    (RING, SPARE, "prices: {long: £0.12}", K.WRONG_TYPE, 1),
    (METRES, "units: in", "units: m", K.WRONG_TYPE, 1),
    (MILLIMETRES, "units: in", "units: mm", K.WRONG_TYPE, 1),
    (FEET, "units: in", "units: feet", K.WRONG_TYPE, 1),
    (RING, "units: in", "units: m", K.WRONG_TYPE, 1),
    (IN_CM, "units: cm", "units: mm", K.WRONG_TYPE, 1),
    (RING, SPARE, "stand_on: A1, D1", K.NO_SUCH_JOINT, 1),
    (RING, SPARE, "base: 8 kg", K.WRONG_TYPE, 0),
    (RING, SPARE, "crew: 0", K.OUT_OF_RANGE, 1),
    (WALL, "across: 4", "across: 0", K.OUT_OF_RANGE, 1),
    (RING, SPARE, "stand_on: Z99", K.NO_SUCH_JOINT, 1),
    (ASSEMBLY, "name: T, ", "name: L, ", K.NAME_TAKEN, 1),
    (ASSEMBLY, "name: T, ", "name: T, on: T, ", K.NO_SUCH_PART, 1),
    (TRIANGLE, "from: P", "from: p", K.NO_SUCH_JOINT, 2),
    (TRIANGLE, "[P, Q, R]", "[P, Q, R, R]", K.LISTED_TWICE, 1),
    (TRIANGLE, "[P, Q, R]", "[P, Q, R, S]", K.LOOSE_JOINT, 1),
    (ASSEMBLY, "T.P1]", "T.P9]", K.NO_SUCH_JOINT, 1),
    (ASSEMBLY, "name: T, ", "name: T, to_next: [[P1, P2]], ", K.NO_NEXT_PART, 2),
    (ASSEMBLY, "ties: [[L.P1, T.P1]]", "", K.LOOSE_PART, 1),
    (ASSEMBLY, "name: T, ", "name: T, on: l, ", K.WRONG_FORM, 1),
    (ASSEMBLY, "name: T, ", "name: T, on: LL, ", K.NO_SUCH_PART, 1),
    (ASSEMBLY, "name: T, ", "name: T, on: L, between: [L, L], ", K.ON_OR_BETWEEN, 2),
    (ASSEMBLY, "name: T, ", "name: T, on: L, lower: 1, ", K.LOWER_ALONE, 1),
    (RING, '"#1F5F8B"', "nawy", K.WRONG_FORM, 1),
    (RING, "name: Ring", "stand_on: A1\ntop: A3\nname: Ring", K.WAY_UP_TWICE, 2),
    (RING, "spare: 0.05", "spare: 0,05", K.WRONG_TYPE, 1),
    (RING, SPARE, "constants: {lock_stifness: 1}", K.NO_SUCH_CONSTANT, 1),
    (SAME, SPARE, "pack_sizes: {long: 50, cross: 100}", K.UNLIKE_PACKS, 2),
    (RING, "lock: lock\n", "lock: lock\n    extra: [[A1, A2]]\n", K.JOINED_ALREADY, 1),
    (RING, "[straight, fan]", "[fan]", K.SIDE_TOO_SHORT, 1),
    (
        RING,
        "6\n        cells: [straight, fan]",
        "1\n        cells: [[4, 4]]",
        K.CELL_GOES_ALL_ROUND,
        0,
    ),
]


@pytest.mark.parametrize(("text", "old", "new", "kind", "ways"), BROKEN)
def test_every_change_that_is_suggested_mends_its_problem(
    text: str, old: str, new: str, kind: K, ways: int
) -> None:
    broken = changed(text, (old, new))
    found = [one for one in problems(broken) if one.kind is kind]
    assert found, "this file has the mistake"
    assert len(found[0].suggestion.ways) == ways
    for problem in problems(broken):
        assert not (problem.suggestion.ways and problem.kind in BY_HAND)
        for way in problem.suggestion.ways:
            mended, _ = changed_text(broken, way.changes)
            assert not like(problem, mended), way


def test_sizes_as_they_are_sold_are_not_told_of() -> None:
    """From memory: 12-inch links are sold as 30 cm, 5-inch rounds as 13 cm."""
    assert not problems(IN_CM)
    assert not problems(RING)


def like(problem: Problem, text: str) -> list[Problem]:
    """Problems of a text that are the one given."""
    return [one for one in problems(text) if (one.kind, one.path) == (problem.kind, problem.path)]


def test_what_does_not_mend_is_not_suggested() -> None:
    """The nearest name is that of a round, which no brace can be made of."""
    text = changed(RING, ("brace: cross", "brace: lokc"))
    (problem,) = problems(text)
    assert all(
        isinstance(change, Put) and change.value != "lock"
        for way in problem.suggestion.ways
        for change in way.changes
    )


def test_units_that_no_file_has_are_told_with_the_number_in_those_it_has() -> None:
    """The metre has 100 centimetres (BIPM, The International System of Units, 9th edition)."""
    (told,) = [
        one for one in problems(changed(METRES, ("units: in", "units: m"))) if one.path == "units"
    ]
    (way,) = told.suggestion.ways
    assert dict(way.words.values)["size"] == "nominal: 30"
    puts = {one.at: one.value for one in way.changes if isinstance(one, Put)}
    assert puts["units",] == "cm"
    assert puts["balloons", "lock", "nominal"] == pytest.approx(12.5)
