"""The training booklet of an assembly that is put together standing: two columns and an arch."""

from __future__ import annotations

import re

import numpy as np
import pytest
from page_words import words_of_pages
from references import Record, astray, recorded
from shipped import book_of

from buildplan.booklet.common.ballasting import is_ballasted
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.floor_plans import floor_plan_of
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.loads import joints_words
from buildplan.booklet.common.needs import tags_of
from buildplan.booklet.common.parts_together import tying_pictures
from buildplan.booklet.common.progress import BuildProgress
from buildplan.booklet.common.step_moves import act_moves
from buildplan.booklet.editions import print_booklet
from buildplan.booklet.training.practice_page import practice_of
from buildplan.booklet.training.same_work import in_full
from buildplan.drawing.closeup import close_up
from buildplan.drawing.marks import Circle, Label, Polyline
from buildplan.drawing.taped_lines import TAPED
from buildplan.sequence.model import Kind, Step


@pytest.fixture(scope="module")
def book() -> Book:
    return book_of("gallery/portal")


@pytest.fixture(scope="module")
def printed(book: Book) -> tuple[list[str], Record]:
    with recorded() as record:
        data = print_booklet(book)
    return words_of_pages(data), record


@pytest.fixture(scope="module")
def whole(printed: tuple[list[str], Record]) -> str:
    return " ".join(printed[0])


def _ties(book: Book) -> list[Step]:
    return [s for s in book.steps if s.kind is Kind.JOIN and "+" in s.operations[0].id]


def test_what_a_reference_names_is_on_the_page_that_it_says(
    book: Book, printed: tuple[list[str], Record]
) -> None:
    """Ties too: their pairs are on one sheet of the map, their joints on others."""
    texts, record = printed
    assert not astray(book, record, texts)
    for step in _ties(book):
        (page,) = {
            one.page
            for one in record.references
            if one.place.startswith("joint map") and f"step {step.number} " in one.words
        }
        assert "Between the parts" in texts[page - 1]


def test_work_beside_the_practice_piece_is_looked_up_where_it_is_the_same(book: Book) -> None:
    """The chains of its braces are tied as those of the piece's braces, not as its rings."""
    made = practice_of(book)
    assert made is not None
    titles = [made.words[step.number - 1].title for step in made.steps]
    (short,) = (
        n for n, title in enumerate(titles) if "four cream balloons for the braces" in title
    )
    full = in_full(book, made.framework, made.steps[short])
    assert full is not None
    assert "four cream balloons for the braces" in book.told(full).title


def test_an_equal_part_is_told_once(book: Book, whole: str) -> None:
    """The second column: a line that names the steps of the first, a row to tick for each of its
    own, and none of what was told."""
    again = [step for step in book.steps if step.repeats is not None]
    assert again
    first, last = (step.repeats for step in (again[0], again[-1]))
    assert f"do as steps {first} to {last} say, and read R for L" in whole
    for step in again:
        assert f"{step.number} {book.told(step).title}" in whole
        assert all(row not in whole for row in book.told(step).rows)
    assert book.told(again[-1]).check in whole


def test_the_head_of_each_part_says_how_many_people_its_words_ask_for(
    book: Book, whole: str
) -> None:
    """One holds while another locks; somebody lifts; so many bear while one more ties: what the
    words say, the heads say, and the cover has the most of them."""
    for step, people in zip(book.steps, book.people, strict=True):
        said = book.told(step).text
        if "another locks it" in said or "Somebody lifts" in said:
            assert people == 2
        if found := re.search(r"(\d) people take it at both sides.*One more ties", said):
            assert people == int(found[1]) + 1
    assert "People: 1 for step 13 and 2 for steps 14 to 17" in whole
    assert f"({max(book.people)} to lift)" in whole
    assert book.people[-1] == max(book.people)


def test_the_columns_are_turned_so_that_named_joints_face_the_front(book: Book, whole: str) -> None:
    """Of the four joints at its head the two that are nearest to who looks at the front, the left
    one first; the arch's joints that come on them are named with them."""
    told = book.figures.set_up
    assert told is not None
    at = book.shape.at
    for part in told.standing:
        ring = [f"{part}.E{i}" for i in range(1, 5)]
        facing = sorted(ring, key=lambda joint: -float(at[joint][2]))[:2]
        assert told.front[part] == tuple(sorted(facing, key=lambda joint: float(at[joint][0])))
        assert f"Turn part {part} so that {' and '.join(told.front[part])} face the front" in whole
        for joint in told.front[part]:
            (other,) = (one for one in book.framework.tie_of[joint].joints if one != joint)
            assert other in told.front["T"]


def test_the_names_at_a_tie_stand_as_the_parts_do(book: Book) -> None:
    """The arch is above the columns (the design says so), and so are its names, and its joint where
    the tying is shown."""
    views = plan_views(book)
    for step in _ties(book):
        for closeup in views.of(step):
            drawn = close_up(closeup.panel, 200, 116)
            at = {mark.text: mark.at[1] for mark in drawn.marks if isinstance(mark, Label)}
            for joint in closeup.panel.joints:
                tied = book.framework.tie_of[joint].joints
                (above,) = (one for one in tied if one.startswith("T."))
                assert all(at[above] > at[one] for one in tied if one != above)
    shown = tying_pictures(book, _ties(book)[0])[Kind.JOIN][0]
    height = {mark.text: mark.at[1] for mark in shown.marks if isinstance(mark, Label)}
    assert height["T.A1"] > height["L.E1"]


def test_the_arch_is_drawn_above_the_columns_on_which_it_is_lifted(book: Book) -> None:
    picture = tying_pictures(book, _ties(book)[0])[Kind.LAY][0]
    height = {mark.text: mark.at[1] for mark in picture.marks if isinstance(mark, Label)}
    assert height["T"] > height["L"] == pytest.approx(height["R"])
    assert {"L.E1", "L.E4", "R.E1", "R.E2", "T.A1", "T.A13"} <= set(height)
    assert any(text.startswith("46") for text in height)


def test_the_first_of_equal_parts_says_how_many(book: Book) -> None:
    told = [said.text for said in book.words if "this one is built here" in said.text]
    again = next(step for step in book.steps if step.repeats is not None)
    assert len(told) == 1
    assert "L and R are alike" in told[0]
    assert f"the other from step {again.number} on" in told[0]


def test_the_columns_are_set_as_far_apart_as_the_feet_of_the_arch(book: Book) -> None:
    """The feet of the arch are tied on the columns, joint on joint."""
    told = book.figures.set_up
    assert told is not None
    at = book.shape.at
    feet = [np.mean([at[f"T.{joint}"] for joint in row.split()], axis=0) for row in FEET]
    assert told.standing == ("L", "R")
    assert told.lifted == told.lying == ("T",)
    assert told.apart_m == pytest.approx([np.linalg.norm(feet[1] - feet[0])], rel=0.03)


FEET = ("A1 B1 C1 D1", "A13 B9 C9 D13")


def test_parts_are_set_up_before_the_first_is_tied_and_once(book: Book) -> None:
    first, *others = _ties(book)
    assert "Part T was built lying" in book.told(first).text
    assert all("built lying" not in book.told(step).text for step in others)


def test_a_part_is_drawn_alone_until_it_is_tied(book: Book) -> None:
    progress = BuildProgress(book)
    laid = next(step for step in book.steps if step.kind is Kind.LAY)
    assert {name[0] for name in progress.finished(laid).bodies.names} == {"T"}
    braced = next(step for step in book.steps if step.kind is Kind.BRACE)
    shown = progress.at_turns(braced, [0], braced.turns[0].joints)
    assert {name[0] for name in shown.bodies.names} == {"T"}
    tied = _ties(book)[-1]
    assert {name[0] for name in progress.whole(tied).bodies.names} == {"L", "R", "T"}


def test_no_length_is_drawn_on_the_line_of_another(book: Book) -> None:
    """Between the feet of the arch as it is laid the outer and the inner chain have one each: the
    shorter is drawn a line of type above the other."""
    laid = next(step for step in book.steps if step.kind is Kind.LAY)
    plan = floor_plan_of(book, plan_views(book), laid, 480.0, 300.0)
    lines = [one.points for one in plan.marks if isinstance(one, Polyline) and one.ink == TAPED]
    level = [ends for ends in lines if abs(ends[0][1] - ends[1][1]) < 2.0]
    outer, inner = sorted(level, key=lambda ends: ends[0][1])[:2]
    wide = [abs(ends[0][0] - ends[1][0]) for ends in (outer, inner)]
    assert wide[1] < wide[0]
    assert 9.0 < inner[0][1] - outer[0][1] < 20.0


def test_each_part_has_its_own_head_and_its_own_count(book: Book, whole: str) -> None:
    for head in ("Part L: steps", "Part R: steps", "Part T: steps", "Tie together: steps"):
        assert head in whole
    assert "Brace and lock joints:" not in whole
    assert "Part L: 20/20 joints" in whole
    assert "8/8 ties between parts" in whole


def test_ballast_is_on_before_anything_is_lifted_on_top(book: Book, whole: str) -> None:
    """Common practice, no source: what stands is weighed down before more comes on it."""
    at = joints_words(book.examination.wind.ballast_at, book.voice)
    ballast, lifted = whole.index("Tie ballast of"), whole.index("people take it at both sides")
    assert whole.index("upright on the floor") < ballast < lifted
    assert at in whole[ballast:lifted]
    last = book.steps[-1]
    assert not is_ballasted(book, last)
    before = whole.rindex("Before you let go")
    assert f"{last.number} Let the piece stand" in whole[:before]
    assert before < whole.index("Let go only when its ballast is on")


def test_a_tie_says_what_it_is_tied_with(book: Book) -> None:
    """The rounds that the graph has for the lock of the tie."""
    step = _ties(book)[0]
    colour = book.framework.balloons[book.framework.lock_at[step.locks[0]].balloon].label
    text = book.told(step).text
    assert f"a pair of {colour} rounds: its knot inside" in text
    laid = text.index("Now lay the pair of rounds of each tie at its joint of L and R")
    holds = text.index("The rounds are wider than the gaps")
    assert laid < holds < text.index("lift it to its place"), "before the upper part shuts it"
    assert [Kind.SETTLE for act in book.told(step).acts if "Now lay the pair" in act.said] == [
        act.kind for act in book.told(step).acts if act.kind is Kind.SETTLE
    ], "with a picture of its own"
    assert len(act_moves(book, step)[Kind.SETTLE]) == 1


def test_a_long_step_is_told_in_the_order_of_the_work(book: Book) -> None:
    """What hands do one after another, each with its own pictures; together they are its text."""
    step = next(step for step in book.steps if Kind.CLOSE_RING in step.kinds)
    acts = book.told(step).acts
    kinds = [act.kind for act in acts]
    assert kinds == [Kind.CLOSE_RING, Kind.LAY, Kind.JOIN, Kind.LOCK, Kind.STAND_UP]
    assert book.told(step).text.endswith(" ".join(act.said for act in acts))
    pictures = act_moves(book, step)
    assert set(pictures) == set(kinds) - {Kind.LAY}, "the plan is where the chains are laid"
    assert is_planned(book, step)
    assert all(len(shown) == 1 for shown in pictures.values())
    for picture in (shown[0] for shown in pictures.values()):  # no name is cut off
        discs = [mark for mark in picture.marks if isinstance(mark, Circle)]
        assert all(disc.radius <= disc.centre[1] + 1 for disc in discs)
        assert all(disc.centre[1] + disc.radius <= picture.height + 1 for disc in discs)


def test_the_way_through_is_told_with_the_finished_piece(book: Book, whole: str) -> None:
    """How wide it is between the nearest balloons of the columns, each a spheroid that reaches
    sqrt(r^2 + (c^2 - r^2) a^2) across (a the share of its axis that lies across)."""
    framework, at = book.framework, book.shape.at

    def reach(part: str, side: int) -> float:
        ends = []
        for link in framework.links:
            if link.start.startswith(f"{part}.") and link.finish.startswith(f"{part}."):
                balloon = framework.balloons[link.balloon]
                one, other = at[link.start], at[link.finish]
                share = float((other - one)[0] / np.linalg.norm(other - one))
                r, c = balloon.gauge_m / 2, balloon.tie_to_tie_m / 2
                out = float(np.sqrt(r**2 + (c**2 - r**2) * share**2))
                ends.append(side * float((one + other)[0] / 2) + out)
        return side * max(ends)

    clear_m = reach("R", -1) - reach("L", 1)
    feet, inches = divmod(round(clear_m / 0.0254), 12)
    assert f"Walked through: {feet} ft {inches} in wide and" in whole
    assert whole.count("before or behind its foot, none in the way through") == 2
    assert "The way to its place is clear" not in whole, "it stands there already"


def test_only_chains_that_wait_for_their_ring_get_a_letter(book: Book, whole: str) -> None:
    """The arch is laid out ring by ring, so that its chains are told apart as they lie: its chains
    of twelve have no tag of their own among those that are counted."""
    assert "Tag one end of every chain of parts L and R with its letter" in whole
    assert "Tag one end of every chain with its letter" not in whole
    letters = {long.letter for long in book.framework.chains}
    lettered = [tag for tag in tags_of(book.steps) if tag in letters]
    assert sorted(lettered) == sorted(one for one in letters if one[0] in "LR")
