"""The work that a piece is worth: what fits is solved whole, the rest ends and says so. Work is
counted in multiplications and factors, never in seconds."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import replace
from itertools import combinations, product

import numpy as np
import pytest
from shape_pieces import arch, frame, graph, star

from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.bodies import bodies_of
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.examining import examine
from buildplan.shape.finding import at_rest, come_to_rest, find_shape, set_down
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import Holding
from buildplan.shape.relaxing import FEWEST_FACTORED
from buildplan.shape.relaxing_apart import MEETINGS
from buildplan.shape.settings import DEFAULT, Settings
from buildplan.shape.settling import settled
from buildplan.shape.starts import MANY, spread_starts

NO_WORK, ANY_WORK = Settings(work=1.0), Settings(work=np.inf)


def octet(side: int) -> Framework:
    """Links between the near points of the face-centred cubic lattice: all are of one length, so
    they fit (Conway and Sloane, Sphere Packings, Lattices and Groups, chapter 4; from memory)."""
    spots = [spot for spot in product(range(side), repeat=3) if sum(spot) % 2 == 0]
    near = [
        (i, j)
        for i, j in combinations(range(len(spots)), 2)
        if np.square(np.subtract(spots[i], spots[j])).sum() == 2
    ]
    return graph(len(spots), near)


FITTING: dict[str, Callable[[], Framework]] = {
    "star": star,
    "frame": frame,
    "arch": arch,
    "octet": lambda: octet(5),
}


def tangle(joints: int) -> Framework:
    """A string of links with twice as many others between joints that chance draws: it does not
    fit together."""
    drawn = random.Random(1)
    pairs = [sorted(drawn.sample(range(joints), 2)) for _ in range(2 * joints)]
    pairs += [[i, i + 1] for i in range(joints - 1)]
    return graph(joints, sorted({(one, other) for one, other in pairs}))


@pytest.mark.parametrize("name", FITTING)
def test_what_fits_needs_none_of_the_work_that_may_run_out(name: str) -> None:
    """The first start ends where it ends with any work at all, to the last bit."""
    piece = FITTING[name]()
    bodies = bodies_of(piece)
    least, any_work = at_rest(piece, bodies, NO_WORK)[0], at_rest(piece, bodies, ANY_WORK)[0]
    assert not least.cut
    assert least.positions_m.tobytes() == any_work.positions_m.tobytes()
    assert any_work.work < DEFAULT.work


def test_work_that_runs_out_ends_the_search() -> None:
    piece = tangle(30)
    bodies = bodies_of(piece)
    (cut,) = at_rest(piece, bodies, NO_WORK)
    whole = at_rest(piece, bodies)
    assert cut.cut
    assert cut.residual_n > NO_WORK.at_rest_n
    # a factor of a full matrix of n rows is the dearest that a band of it can be
    assert cut.work <= MEETINGS * FEWEST_FACTORED * (3 * bodies.joints) ** 3
    assert len(whole) == DEFAULT.starts
    assert not any(one.cut for one in whole)
    assert cut.work < whole[0].work


@pytest.mark.parametrize("share", [0.5, 0.75])
def test_all_runs_of_a_start_share_its_work(share: float) -> None:
    """Whatever is given, no more is spent but for the fewest factors of the run that it ends in."""
    piece = tangle(30)
    bodies = bodies_of(piece)
    most = share * at_rest(piece, bodies)[0].work
    first = at_rest(piece, bodies, Settings(work=most))[0]
    assert first.work <= most + FEWEST_FACTORED * (3 * bodies.joints) ** 3


def test_a_search_cut_short_is_told_and_names_no_rival_shape() -> None:
    told = find_shape(tangle(30), settings=NO_WORK).problems
    (unrest,) = [one for one in told if one.kind is ShapeKind.NOT_AT_REST]
    assert "the search was cut short" in Voice().tell(unrest.message)
    assert "other shapes were not looked for" in Voice().tell(unrest.message)
    assert ShapeKind.AMBIGUOUS not in [one.kind for one in told]
    whole = find_shape(tangle(30)).problems
    assert ShapeKind.NOT_AT_REST not in [one.kind for one in whole]


def test_a_later_start_cut_short_is_told_where_the_first_came_to_rest() -> None:
    piece = octet(3)
    whole = come_to_rest(piece)
    late = replace(whole, results=(*whole.results, replace(whole.results[0], cut=True)))
    told = {one.kind for one in examine(piece, set_down(late)).cautions}
    assert ShapeKind.OTHER_SHAPES_UNSOUGHT in told
    found = {one.kind for one in examine(piece, set_down(whole)).cautions}
    assert ShapeKind.OTHER_SHAPES_UNSOUGHT not in found


def test_a_search_for_how_it_settles_that_is_cut_short_is_told(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    piece = tangle(30)
    shape = find_shape(piece)
    whole = examine(piece, shape)
    assert whole.sag is not None
    assert ShapeKind.NOT_FOUND_TO_HOLD not in {one.kind for one in whole.problems}
    monkeypatch.setattr("buildplan.shape.near_rest.YIELDING_FACTORS", 0)
    monkeypatch.setattr("buildplan.shape.relaxing.FEWEST_FACTORED", 1)
    monkeypatch.setattr("buildplan.shape.examining.SETTLING_WORK", 1.0)
    cut = examine(piece, shape)
    assert cut.sag is None
    assert cut.sway is None
    told = [Voice().tell(one.message) for one in cut.problems]
    assert any("holds itself up was not found: the search was cut short" in one for one in told)
    hung = replace(shape, holding=Holding(hung=True))
    assert examine(piece, hung).sag is not None


def test_of_a_shape_that_is_not_at_rest_no_sag_is_told() -> None:
    piece = tangle(30)
    shape = find_shape(piece, settings=NO_WORK)
    assert not shape.converged
    found = examine(piece, shape)
    assert found.sag is None
    assert found.sway is None
    assert ShapeKind.NOT_FOUND_TO_HOLD not in [one.kind for one in found.problems]


def test_how_a_sheet_falls_from_a_ridge_is_sought_only_where_it_can_fall() -> None:
    """A square sheet stands on its edge as straight as it was built, and buckles when nudged (as
    Euler's column does); of what is held from above that is not asked."""
    side = 9
    across = [(i, i + 1) for i in range(side * side) if (i + 1) % side]
    sheet = graph(side * side, across + [(i, i + side) for i in range(side * (side - 1))])
    shape, bodies = find_shape(sheet), bodies_of(sheet)
    fallen = (shape.height_m, shape.height_m)
    assert settled(sheet, bodies, shape, CONSTANTS, CONSTANTS) == fallen
    assert settled(sheet, bodies, shape, CONSTANTS, CONSTANTS, work=0.0) is None
    hung = examine(sheet, replace(shape, holding=Holding(hung=True)))
    assert hung.sag is not None
    assert hung.sag.high < 0.01 * shape.height_m


def test_linked_joints_that_no_distance_tells_apart_start_apart() -> None:
    """Two joints linked to one another and to the same others are as far from all the rest: laid by
    those distances they lie in one place, where the link between them has no direction."""
    string = [(i, i + 1) for i in range(MANY)]
    twins = [(MANY + 1, MANY + 2), (3, MANY + 1), (3, MANY + 2)]
    bodies = bodies_of(graph(MANY + 3, string + twins))
    (start,) = spread_starts(bodies, 1, np.random.default_rng(1))
    apart = np.linalg.norm(start[bodies.ends[:, 0]] - start[bodies.ends[:, 1]], axis=1)
    assert apart.min() > 1e-6 * apart.mean()


def test_links_of_one_length_start_nearly_so_in_a_large_sheet() -> None:
    """Scaling by the distances to a few joints draws the links of a square sheet by a sixth longer
    or shorter than one another; with the links themselves asked after, alike."""
    side = int(MANY**0.5) + 2
    across = [(i, i + 1) for i in range(side * side) if (i + 1) % side]
    up = [(i, i + side) for i in range(side * (side - 1))]
    bodies = bodies_of(graph(side * side, across + up))
    (start,) = spread_starts(bodies, 1, np.random.default_rng(1))
    drawn = np.linalg.norm(start[bodies.ends[:, 0]] - start[bodies.ends[:, 1]], axis=1)
    assert drawn.std() < 0.08 * drawn.mean()
