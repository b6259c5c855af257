"""How the parts of an assembly come together: a word on a beam across two columns, and the arch of
the portal on its two. That one ties while others hold, on both sides, and that a stool serves up to
about 1.9 m is common practice, no source."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest
from shipped import book_of

from buildplan.booklet.common.after import carrying
from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.course_plans import plan_of
from buildplan.booklet.common.going_down import going_down
from buildplan.booklet.common.known_steps import is_known
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.map_sheets import map_sheets
from buildplan.booklet.common.step_moves import act_moves
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.drawing.bodies import every_body
from buildplan.drawing.maps.blocks import ties_shown
from buildplan.drawing.marks import Label
from buildplan.drawing.seat import BESIDE, seat_before
from buildplan.evaluation.seating import read_whole
from buildplan.framework.chain_roles import Layer
from buildplan.instructions.model import LiesAt
from buildplan.instructions.setting_up import is_tying
from buildplan.instructions.stages import part_of_step
from buildplan.sequence.hand_reach import HandReach
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.reach import lifters
from buildplan.shape.tied_parts import doubled, part_of

WORD_ON_A_BEAM = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
  assembly:
    parts:
      - {name: P, build: {column: {around: 4, rings: 2, ring: a, between: a, lock: k}}}
      - {name: Q, build: {column: {around: 4, rings: 2, ring: a, between: a, lock: k}}}
      - {name: B, on: [P, Q], build: {wall: {across: 7, up: 1, layers: 2, row: a, upright: a, between: a, lock: k}}}
      - {name: W, on: B, build: {letters: {text: LI, cells: 5, long: a, brace: a, bar: a, lock: k}}}
    lock: k
"""  # noqa: E501


@pytest.fixture(scope="module")
def word(tmp_path_factory: pytest.TempPathFactory) -> Book:
    file: Path = tmp_path_factory.mktemp("word") / "trial.yaml"
    file.write_text(WORD_ON_A_BEAM, "utf-8")
    design = read_whole(file)
    return gather_book(design, PAPERS["a4"], design.units, "training")


@pytest.fixture(scope="module")
def portal() -> Book:
    return book_of("gallery/portal")


def _tying(book: Book) -> list[Step]:
    return [step for step in book.steps if is_tying(step)]


def test_letters_that_are_tied_to_one_another_come_up_as_one_and_once(word: Book) -> None:
    """The letters of a word are tied to one another lying, by the balloons between them."""
    letters = sorted(p.name for p in word.framework.parts if p.name.startswith("W."))
    assert len(letters) > 1
    told = [word.told(step).text for step in _tying(word)]
    lifting = [text for text in told if "people take them" in text and "W." in text]
    assert len(lifting) == 1
    assert all(name in lifting[0] for name in letters)
    assert "tied together by now" in lifting[0]
    (beam,) = (text for text in told if "take part B" in text)
    assert "each tie at its joint of P and Q, knot inside" in beam, "the word comes up later"
    assert "each tie at its joint of B, knot inside" in lifting[0]
    assert "until their last tie is locked" in lifting[0], "no number: a crew has jobs, no steps"


def test_a_later_letter_is_told_in_rows_once_its_moves_are_drawn(word: Book, portal: Book) -> None:
    """The L has the pictures; what is tied at the I as there has its rows, a line each."""
    known = [step for step in word.steps if is_known(word, step)]
    braced = [step for step in word.steps if step.kind is Kind.BRACE]
    parts = {part_of(word.framework, step.operations[0].joints[0]) for step in known}
    first = part_of(word.framework, braced[0].operations[0].joints[0])
    assert parts
    assert first not in parts
    drawn = [step for step in braced if step not in known]
    moves = {
        (len(op.joints), op.joints[0] == op.joints[-1])
        for step in drawn
        for op in step.of_kind(Kind.BRACE)
    }
    for step in known:
        own = {(len(op.joints), op.joints[0] == op.joints[-1]) for op in step.of_kind(Kind.BRACE)}
        assert own <= moves
        assert any(drawn_.number < step.number for drawn_ in drawn)
    assert not any(is_known(portal, step) for step in portal.steps)  # one part alone is braced


def test_what_is_lifted_is_held_until_all_of_it_is_tied(portal: Book) -> None:
    """The arch has a foot on each of the columns, a step for each."""
    first, _ = _tying(portal)
    text = portal.told(first).text
    people = lifters(portal.shape, HandReach())
    taken = f"Part T was built lying. {people} people take it at both sides"
    assert taken in text
    assert "until its last tie is locked: nothing else does" in text
    assert first.operations[0].people == people + 1
    assert portal.steps[-1].operations[0].people == people + 1, "nobody is sent away meanwhile"
    assert text.index(taken) < text.index("turn it up") < text.index("Lay the joints of each row")


def test_ties_within_reach_ask_for_no_stool(word: Book, portal: Book) -> None:
    """Shoulder and arm of a small adult standing reach 1.92 m; the stool is 0.45 m high."""
    for book in (word, portal):
        told = book.figures.set_up
        assert told is not None
        height = {tie.name: float(book.shape.at[tie.joints[0]][1]) for tie in book.framework.ties}
        assert told.high == {name for name, y in height.items() if y > 1.92}
        assert told.higher == {name for name, y in height.items() if y > 1.92 + 0.45}
        said = any("step stool" in book.told(step).text for step in _tying(book))
        assert said == bool(told.high)


def test_of_two_balloons_that_share_their_knots_the_upper_parts_lies_on_top(portal: Book) -> None:
    """The ring at the head of each column and the brace at each foot of the arch: four balloons
    between the same four knots, so eight pairs; they touch, and so are nearly a gauge apart."""
    framework, shape = portal.framework, portal.shape
    pairs = list(doubled(framework, shape))
    assert len(pairs) == 2 * 4
    bodies = every_body(framework, shape)
    row = {str(name): i for i, name in enumerate(bodies.names) if bodies.is_link[i]}
    for pair in pairs:
        upper = pair.second if pair.way[1] > 0 else pair.first
        lower = pair.first if upper == pair.second else pair.second
        assert part_of(framework, framework.link[upper].start) == "T"
        gauge = framework.balloons[framework.link[upper].balloon].gauge_m
        apart = bodies.centre[row[upper]] - bodies.centre[row[lower]]
        assert 0.7 * gauge < apart[1] < gauge
        assert np.hypot(apart[0], apart[2]) < 0.05 * gauge
    assert {one.placed for one in portal.figures.shared} == {LiesAt.ON_TOP}
    assert "that of part T on top of that of part L" in portal.told(_tying(portal)[0]).text


def test_a_tie_is_drawn_with_both_parts_in_their_colours_and_its_lock_below(portal: Book) -> None:
    """Every balloon that ends at a joint of a row is drawn as what is new, of the one part and of
    the other; the rounds of the row's lock lie at either side of the lower of its joints, where
    they are before the upper comes down."""
    framework, views = portal.framework, plan_views(portal)
    for step in _tying(portal):
        shown = views.of(step)
        assert shown
        for panel in (one.panel for one in shown):
            for joint in panel.joints:
                assert set(framework.links_at[joint]) <= panel.scene.new_links
            bodies, at = panel.scene.bodies, panel.scene.shape.at
            for tie in {framework.tie_of[joint] for joint in panel.joints}:
                heights = sorted(float(at[joint][1]) for joint in tie.joints)
                rounds = bodies.centre[(bodies.names == tie.name) & ~bodies.is_link]
                assert len(rounds) == 2
                radius = bodies.radius[(bodies.names == tie.name) & ~bodies.is_link].max()
                assert np.allclose(rounds[:, 1], heights[0], atol=radius)
                assert heights[0] + 2 * radius < heights[1]
                low = min((at[joint] for joint in tie.joints), key=lambda place: float(place[1]))
                assert np.allclose(rounds.mean(axis=0), low)


def test_what_came_on_last_comes_off_first(word: Book, portal: Book) -> None:
    """The word off the beam, then the beam off the columns, each by as many ties as the graph has
    there."""
    told = [row for row in going_down(word) if "at both sides while one undoes" in row]
    assert len(told) == 2
    letters = [p.name for p in word.framework.parts if p.name.startswith("W.")]
    assert all(name in told[0] for name in letters)
    assert " part B " in told[1]
    on_columns = [t for t in word.framework.ties if {j[0] for j in t.joints} & {"P", "Q"}]
    assert f"undoes the {len(on_columns)} ties" in told[1]
    (arch,) = (row for row in going_down(portal) if "while one undoes" in row)
    assert f"undoes the {len(portal.framework.ties)} ties" in arch


def test_the_longest_part_is_told_for_the_door(portal: Book) -> None:
    """The arch: from the outside of one foot to that of the other, as far as its joints go and a
    balloon's gauge."""
    joints = [j for j in portal.framework.joints if j.startswith("T.")]
    across = np.ptp([portal.shape.at[joint][0] for joint in joints])
    gauge = max(b.gauge_m for b in portal.framework.balloons.values())
    text = re.sub("<[^>]*>", "", " ".join(carrying(portal))).replace("\u00a0", " ")
    assert "the longest, T, is" in text
    inches = round((across + gauge) / 0.0254)
    told = [f"{feet} ft {left} in" for feet, left in (divmod(inches + o, 12) for o in (-1, 0, 1))]
    assert any(f"{wide} wide" in text.split("the longest")[1] for wide in told)


def test_a_low_wall_has_no_plan_that_opens_like_a_flower(tmp_path: Path) -> None:
    """It does not go round. That plan puts what stands on the axis in the middle: asked for all the
    same, it leaves the upright balloons there out and does not stop."""
    file = tmp_path / "wall.yaml"
    wall = "{wall: {across: 12, up: 2, layers: 2, row: a, upright: a, between: a, lock: k}}"
    file.write_text(WORD_ON_A_BEAM.partition("build:")[0] + f"build: {wall}\n", "utf-8")
    design = read_design(file)
    book = gather_book(design, PAPERS["a4"], design.units, "training")
    joining = [step for step in book.steps if step.kind is Kind.JOIN]
    assert not any(is_planned(book, step) for step in joining)
    assert not book.figures.flat  # as high as deep, it is built standing
    for step in joining:
        assert plan_of(book, step, 240.0).marks


def test_balloons_between_parts_are_looked_up_where_their_pairs_are(word: Book) -> None:
    """The bar between two letters: the sheet that has the pairs; and nobody is told that the back
    of writing looks as its front."""
    sheets = map_sheets(word)
    between = [
        step
        for step in word.steps
        if step.kind is Kind.SINGLE and part_of_step(word.framework, step) is None
    ]
    assert between
    for step in between:
        joints = {joint for operation in step.of_kind(Kind.SINGLE) for joint in operation.joints}
        (sheet,) = sheets.sheets_of[step.number]
        assert joints <= ties_shown(sheets.pictures[sheet])
    told = next(word.told(step).text for step in word.steps if step.kind is Kind.INSPECT)
    assert "exactly like the front" not in told


def test_what_is_tied_beside_locks_is_shown_once_and_the_backs_come_last(word: Book) -> None:
    """Between two letters that lie the balloons at the front are tied before those at the back, for
    which both are lifted once; that an end goes in at a locked joint is drawn where it first does
    (common practice, no source)."""
    between = [
        step
        for step in word.steps
        if step.kind is Kind.SINGLE and part_of_step(word.framework, step) is None
    ]
    behind = {
        j for long in word.framework.chains if long.layer is Layer.BACK for j in long.chain.joints
    }
    for step in between:
        at_back = [op.joints[0] in behind for op in step.of_kind(Kind.SINGLE)]
        assert at_back == sorted(at_back)
        assert any(at_back)
    first, *later = between
    moves = act_moves(word, first)
    (tying,) = [move for move in moves[Kind.SINGLE] if "A joint with its lock" in move.alt]
    assert tying.marks
    (lifting,) = moves[Kind.LAY]
    assert "lifts both" in lifting.alt
    assert "push a round of the lock aside" in word.told(first).text
    assert later
    for step in later:
        assert Kind.LAY not in act_moves(word, step)
        assert "push a round" not in word.told(step).text


def test_a_bar_is_laid_ring_on_ring_and_held_apart_from_its_sides(word: Book) -> None:
    """Its rings are closed before they are laid: they lie in its figure, one on the other, and the
    balloons between them stand up from the floor, front upwards in the picture."""
    bar = next(part for part in word.framework.parts if ".BAR" in part.name)
    steps = [step for step in word.steps if part_of_step(word.framework, step) is bar]
    laid = next(step for step in steps if step.kind is Kind.LAY)
    told = word.told(laid).text
    first, second = (long.chain.joints[0] for long in bar.framework.chains)
    assert f"Lay joint on joint: {first} on {second}" in told
    assert "loosely" not in told
    held = next(step for step in steps if step.kind is Kind.SINGLE)
    assert "a balloon high, as you tie" in word.told(held).text
    for operation in held.of_kind(Kind.SINGLE):
        seat = seat_before(word.framework, word.shape, operation.joints)
        assert seat.name == BESIDE
        assert seat.up == (0.0, 0.0, 1.0)
        out = word.shape.at[operation.joints[0]] - np.mean(
            [word.shape.at[joint] for joint in bar.framework.joints], axis=0
        )
        assert seat.direction[0] * out[0] > 0, "from its own side"


def test_each_part_that_comes_up_is_drawn_with_what_stands_then(word: Book) -> None:
    """First the beam over its columns, later the letters over all of them."""
    up = [move for step in _tying(word) for move in act_moves(word, step).get(Kind.LAY, ())]
    beam, letters = ({m.text for m in one.marks if isinstance(m, Label)} for one in up)
    assert {"P", "Q", "B"} <= beam
    assert not any(text.startswith("W.") for text in beam)
    assert {"P", "Q", "B"} < letters
    assert {p.name for p in word.framework.parts if p.name.startswith("W.")} <= letters
