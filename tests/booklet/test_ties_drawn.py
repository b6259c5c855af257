"""How the ties of an assembly that is put together standing are drawn: from where they are seen,
which locks meet, who holds and who ties."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from shipped import book_of
from trial_pieces import BEAM, COLUMN, LOCKED, design

from buildplan.booklet.common.ballasting import tags_beside
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.parts_together import tying_pictures
from buildplan.booklet.common.walking_through import walked_through
from buildplan.drawing.ballast_bags import SAND
from buildplan.drawing.ballast_plan import BAG_M, ballast_plan
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.marks import Circle, Label, Picture, Stamp
from buildplan.drawing.parts_apart import parts_apart
from buildplan.drawing.standing_place import standing_eyes, standing_place
from buildplan.drawing.techniques.tied_joints import pair_ready, tie_joints
from buildplan.evaluation.measured import measure
from buildplan.framework.counts import multigraph
from buildplan.instructions.model import LiesAt, PartsApart
from buildplan.instructions.setting_up import is_tying
from buildplan.sequence.model import Kind, Step
from buildplan.shape.ballasting import bag_places
from buildplan.shape.tied_parts import part_of


@pytest.fixture(scope="module")
def book() -> Book:
    return book_of("gallery/portal")


def _ties(book: Book) -> list[Step]:
    return [step for step in book.steps if is_tying(step)]


def test_an_eye_before_the_piece_is_drawn_before_it_on_the_plan(book: Book) -> None:
    """From above, the front at the foot of the page: who looks at the front of a column is below
    it and looks up the page, who looks at its back is above it."""
    views, size = plan_views(book), (150.0, 108.0)
    for step in _ties(book):
        scene, panels = views.progress.whole(step), [one.panel for one in views.of(step)]
        eyes = standing_eyes(scene, size, panels)
        assert len(eyes) == len(panels) == 2
        z = {joint: float(book.shape.at[joint][2]) for joint in book.framework.joints}
        before = [bool(np.mean([z[joint] for joint in panel.joints]) > 0) for panel in panels]
        assert sorted(before) == [False, True]
        front, back = (eyes[before.index(side)] for side in (True, False))
        assert front.at[1] < back.at[1]
        assert np.sin(front.turn) > 0.7 > -0.7 > np.sin(back.turn)
        shown = standing_place(scene, size, panels[0].joints, eyes, "From above", "")
        assert any(isinstance(mark, Label) and mark.text == "From above" for mark in shown.marks)


def test_beams_from_both_sides_come_apart_on_both_sides_of_their_column() -> None:
    """Three parts that meet at one joint have three places in its picture, left to right as the
    parts lie, and the new lock waits at the column between them."""
    beam = {"wall": {**BEAM, "across": 3}}
    parts = [{"name": name, "build": COLUMN} for name in "LMR"]
    parts += [{"name": "B", "on": ["L", "M"], "build": beam}]
    parts += [{"name": "D", "on": ["M", "R"], "build": beam}]
    piece = measure(design({"assembly": {"parts": parts, **LOCKED}}))
    framework, shape = piece.framework, piece.shape
    tie = next(tie for tie in framework.ties if len(tie.joints) == 3)
    scene = Scene(framework, shape, done_links=frozenset(framework.link))
    apart = parts_apart(scene, [tie], CAMERAS["front"])
    x = {part_of(framework, joint): float(apart.shape.at[joint][0]) for joint in tie.joints}
    assert x["B"] < x["M"] < x["D"]
    moved = apart.every_body
    assert moved is not None
    rounds = [
        float(place[0])
        for name, is_link, place in zip(moved.names, moved.is_link, moved.centre, strict=True)
        if name == tie.name and not is_link
    ]
    assert sum(rounds) / 2 == pytest.approx(x["M"], abs=0.05)


def test_a_tie_is_drawn_with_the_three_locks_that_meet(book: Book) -> None:
    """Two rounds of each joint's own lock, pale, and two of the tie's, before and after; nothing
    pale where the joints have none. The words say where the new ones come out."""
    locked = tie_joints(book.framework, book.voice, ("L.E1", "T.A1"), up=True)
    assert len(_rounds(locked)) == 2 * (4 + 2)
    bare = replace(book.framework, locks=())
    assert len(_rounds(tie_joints(bare, book.voice, ("L.E1", "T.A1"), up=True))) == 2 * 2
    assert "left and right of the knots" in book.told(_ties(book)[0]).text
    assert book.figures.apart["L.E1+T.A1"] == PartsApart(LiesAt.ON_TOP, forward=True)


def _rounds(picture: Picture) -> list[Stamp]:
    stamps = [mark for mark in picture.marks if isinstance(mark, Stamp)]
    return [one for one in stamps if one.look.form == "round"]


def test_the_lock_of_a_tie_is_drawn_where_it_waits_for_the_part_above(book: Book) -> None:
    """From outside with the lock of the joint, from above alone: two rounds each."""
    ready = pair_ready(book.framework, book.voice, "L.E1")
    assert len(_rounds(ready)) == 2 * 2 + 2
    assert {"L.E1", "inside", "from outside", "from above"} <= label_boxes(ready).keys()
    (shown,) = tying_pictures(book, _ties(book)[0])[Kind.SETTLE]
    assert shown == ready


def test_who_holds_and_who_ties_is_written_under_them(book: Book) -> None:
    step = _ties(book)[0]
    picture = tying_pictures(book, step)[Kind.LAY][0]
    told = [mark.text for mark in picture.marks if isinstance(mark, Label)]
    assert told.count("holds") == step.operations[0].people - 1
    assert told.count("ties") == 1


def test_ballast_at_a_joint_without_a_tag_is_found_from_the_next_one() -> None:
    """The star is ballasted at A30 and A36, one balloon from its tags A29 and A37."""
    star = book_of("reading_star")
    bags = bag_places(star.framework, star.shape)
    tags = tags_beside(star, bags)
    assert tags == {"A30": "A29", "A36": "A37"}
    for joint, tag in tags.items():
        assert multigraph(star.framework).has_edge(joint, tag)
    plan = ballast_plan(star.framework, star.shape, bags, 252.0, "", "", tags)
    assert {"A29", "A37", *bags} <= label_boxes(plan).keys()


def test_no_bag_lies_in_the_way_through(book: Book) -> None:
    """Each before or behind the piece, and no nearer to the way than the balloons beside it (exits
    are kept clear: common practice, no source)."""
    bags = bag_places(book.framework, book.shape)
    assert tuple(bags) == book.examination.wind.ballast_at
    deep = np.abs(book.shape.positions_m[:, 2]).max()
    for joint, (x, z) in bags.items():
        assert abs(z) - BAG_M > deep
        assert x == book.shape.at[joint][0]
    plan = ballast_plan(book.framework, book.shape, bags, 252.0, "", "")
    drawn = [mark for mark in plan.marks if isinstance(mark, Circle) and mark.ink == SAND]
    assert len(drawn) == len(bags)
    assert "not in this way" in walked_through(book)[0]
