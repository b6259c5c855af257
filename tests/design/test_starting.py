"""Files that `new` begins: each passes the check of the file, about as large as was asked."""

from __future__ import annotations

import numpy as np
import pytest
import yaml
from design_texts import problems, read
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon

from buildplan.design.beginnings import PIECES, STAR_WIDTH
from buildplan.design.building import METRES_PER_UNIT, build_framework
from buildplan.design.measures import Units
from buildplan.design.starting import design_text, file_stem
from buildplan.design.wishes import GAUGE_STEP, TALL, USUAL_GAUGE, Wish
from buildplan.evaluation.evaluating import resting_shape
from buildplan.evaluation.seating import seated
from buildplan.framework.counts import ring_lengths
from buildplan.language.voice import Voice
from buildplan.shape.finding import find_shape
from buildplan.source.colour_names import hex_of


@pytest.mark.parametrize("units", ["in", "cm"])
@pytest.mark.parametrize("piece", PIECES)
def test_the_usual_of_each_piece_is_read(piece: str, units: Units) -> None:
    text = design_text(Wish("Evening", piece, units), Voice())
    assert "repeat: 1," not in text, "what is laid once is no repeat"
    design = read(text)
    assert (design.name, design.units) == ("Evening", units)
    assert build_framework(design).links


@pytest.mark.parametrize("piece", PIECES)
def test_its_colour_pattern_serves_once_the_hash_is_taken_away(piece: str) -> None:
    text = design_text(Wish("Evening", piece), Voice())
    coloured = piece not in ("globe", "entrance")
    assert ("# colour_pattern" in text) == coloured
    design = read(text.replace("# colour_pattern", "colour_pattern"))
    plain = build_framework(read(text))
    assert (build_framework(design) != plain) == coloured


@given(
    piece=st.sampled_from(list(PIECES)),
    units=st.sampled_from(["in", "cm"]),
    points=st.integers(3, 9),
    steps=st.integers(4, 60),
    links=st.floats(1, 40),
)
@settings(max_examples=200)
def test_what_is_asked_for_is_written_rightly_or_refused(
    piece: str, units: Units, points: int, steps: int, links: float
) -> None:
    gauge = steps * GAUGE_STEP[units]
    wish = Wish("Evening", piece, units, points, links * gauge, gauge)
    try:
        text = design_text(wish, Voice())
    except ValueError:
        return
    assert not problems(text), "what is written passes the check"


def test_a_star_has_its_points_and_a_frame_four_corners() -> None:
    for points in STAR_WIDTH:
        framework = build_framework(read(design_text(Wish("Star", "star", points=points), Voice())))
        names = [cell.name for cell in framework.cells]
        assert names.count("tip") == names.count("dip") == points
        assert len(set(ring_lengths(framework))) == 1, "a tip and a dip for each point"
    framework = build_framework(read(design_text(Wish("Frame", "frame"), Voice())))
    assert [cell.name for cell in framework.cells].count("tip") == 4


# sizes in inches; a star of 5 points and two straight cells, or three, on a side: see starting
@pytest.mark.parametrize(
    ("piece", "size", "step"),
    [
        ("frame", 65, 9.2),
        ("ring", 92, 14),
        ("arch", 80, 9.2),
        ("wall", 45, 9.2),
        ("column", 50, 8),
        ("drop", 65, 9.2),
        ("crescent", 72, 6),
        ("crescent", 92, 6),
        ("entrance", 83, 16),
        ("sign", 72, 18.4),
    ],
)
def test_a_piece_is_about_as_large_as_was_asked(piece: str, size: float, step: float) -> None:
    """Within half of what one cell more or less makes, by the solved shape."""
    design = seated(read(design_text(Wish("Eve", piece, size=size), Voice()))).design
    shape = resting_shape(design, build_framework(design))
    length_m = shape.height_m if piece in TALL else shape.width_m
    assert length_m / METRES_PER_UNIT["in"] == pytest.approx(size, abs=step / 2 + 1)
    assert shape.closes
    assert shape.standing.stands
    assert not shape.problems


def test_a_crescent_has_two_pointed_horns_and_a_hollow() -> None:
    """By the solved outer chain: it comes to a point of about 60 degrees at the end of each horn
    (three balloons of one length), and the nearest way between these is not filled."""
    design = read(design_text(Wish("Moon", "crescent"), Voice()))
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    at = np.array([shape.at[joint][:2] for joint in framework.chains[0].chain.joints])
    before, after = np.roll(at, 1, axis=0) - at, np.roll(at, -1, axis=0) - at
    cosine = (before * after).sum(axis=1) / np.hypot(*before.T) / np.hypot(*after.T)
    turned = np.degrees(np.arccos(np.clip(cosine, -1, 1)))
    horns = np.flatnonzero(turned < 75)
    assert len(horns) == 2
    one, other = at[horns]
    along = one + np.linspace(0.1, 0.9, 9)[:, None] * (other - one)
    outline = Polygon(at)
    assert not any(outline.contains(Point(*point)) for point in along)


def test_colours_by_name_or_by_number() -> None:
    text = design_text(Wish("Star", "star", colours=("Leaf Green", " #A1B2C3", "gold")), Voice())
    balloons = read(text).balloons
    assert balloons["long"].colour == hex_of("leaf green")
    assert balloons["cross"].colour == "#A1B2C3"
    assert (balloons["lock"].colour, balloons["lock"].label) == (hex_of("gold"), "gold")
    one = read(design_text(Wish("Star", "star", colours=("red",)), Voice())).balloons
    assert {balloon.label for balloon in one.values()} == {"red"}


@pytest.mark.parametrize(
    ("wish", "words"),
    [
        (Wish("X", "tower"), "star, ring, frame, drop, crescent, arch, wall"),
        (Wish("X", "star", points=3), "4 to 8 points"),
        (Wish("X", "star", size=10), "wide, not 10"),
        (Wish("X", "arch", size=1e6), "high, not 1e"),
        (Wish("X", "globe", size=100), "wide, not 100"),
        (Wish("X", "star", size=float("nan")), "more than 0"),
        (Wish("X", "star", gauge=50), "links are sized to"),
        (Wish("X", "star", colours=("blurple",)), "no colour"),
        (Wish("X", "star", colours=("red",) * 4), "one to three"),
        (Wish(" ", "star"), "1 to 80 characters"),
        (Wish("a\nb", "star"), "one line"),
    ],
)
def test_what_cannot_be_had_is_told_with_what_can(wish: Wish, words: str) -> None:
    with pytest.raises(ValueError, match=words):
        design_text(wish, Voice())


@pytest.mark.parametrize("name", ['Say "hello"', "Star: one", "# one", "Étoile", "yes", "1"])
def test_any_name_is_kept(name: str) -> None:
    assert read(design_text(Wish(name, "star"), Voice())).name == name


def test_the_file_is_commented_and_its_comments_can_be_let_in() -> None:
    text = design_text(Wish("Star", "star"), Voice())
    assert sum("#" in line for line in text.splitlines()) > 10
    # the keys behind comments at its end are right as they stand
    let_in = "\n".join(
        line.removeprefix("# ") if ":" in line and line.startswith("# ") else line
        for line in text.splitlines()[3:]
        if not line.startswith(("# Cells", "# One", "# nominal", "# All"))
    )
    design = read("buildplan: 1\n" + let_in.replace("buildplan: 1\n", ""))
    assert design.currency == "GBP"
    assert set(yaml.safe_load(let_in)) >= {"crew", "pack_sizes", "prices", "rates"}


# CSS Color Module Level 4, section 6.1; `deep blue` is our own
@pytest.mark.parametrize(
    ("name", "value"),
    [("ivory", "#FFFFF0"), ("gold", "#FFD700"), ("Sea Green", "#2E8B57"), ("deep blue", "#1F5F8B")],
)
def test_a_colour_is_the_same_begun_by_name_and_named_in_a_file(name: str, value: str) -> None:
    text = design_text(Wish("Star", "star", colours=(name,)), Voice())
    assert read(text).balloons["long"].colour == value
    by_name = text.replace(f'"{value}"', f'"{name}"')
    assert by_name != text
    assert read(by_name).balloons["long"].colour == value


def test_letters_on_an_entrance_are_a_comment_away() -> None:
    text = design_text(Wish("Way In", "entrance"), Voice())
    design = seated(read(text.replace("# - {name: S", "- {name: S")))
    assert set(design.ties) == {("T",), ("S",)}
    assert not design.problems
    assert not find_shape(build_framework(design.design)).problems


def test_file_names_are_plain() -> None:
    assert file_stem("Reading Star") == "reading_star"
    assert file_stem("Étoile / 2") == "etoile_2"
    assert file_stem("星") == "design"
    assert USUAL_GAUGE["in"] == 8
