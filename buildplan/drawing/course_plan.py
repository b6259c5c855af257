"""The plan of a course: its balloons from above in their colours, each chain's letter on them,
those by themselves dotted, the joints that are tied now with their turns, those that are tied later
open, where one begins and which way one goes round."""

from __future__ import annotations

import math
import statistics
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from buildplan.drawing.course_places import places_from_above, places_lying
from buildplan.drawing.eye import EYE_PT, Eye, eye_marks
from buildplan.drawing.line_art import INK, PAPER, SOFT, TYPE, between
from buildplan.drawing.map_style import HALF_HIGH, half_wide, named_joint, to_edge
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.order_discs import NUMBER_RADIUS, order_disc
from buildplan.drawing.plan_locks import UPRIGHT_PT, rounds_of_locks, ways_of_rounds
from buildplan.drawing.techniques.props import link, signs
from buildplan.drawing.techniques.rings import round_points
from buildplan.drawing.way_round import pointed
from buildplan.framework.model import Framework, LongChain
from buildplan.sequence.laid import RoundCourse
from buildplan.shape.model import Shape

# A balloon is drawn so stout for its length; the way round runs so far, in degrees, outside.
STOUT, STOUTEST, WAY_DEG = 0.5, 0.62, 62.0
BESIDE_EYE_DEG = 6.0
ROUND_PT = 19.0  # between a joint and the way round: its turn has room there
OFF_MIDDLE = 0.15  # of the course: a joint nearer to its middle is no way round
LETTER_PT = TYPE + 0.5
ROOMY = math.radians(70.0)  # between two balloons
ALIKE = math.radians(8.0)  # gaps that are as wide, but for so much
AT_LEAST_M = 1e-6
AT_LEAST_RAD = 0.05
SINGLE = Ink(stroke=PAPER, width=1.6, dash=(1.4, 2.4))


@dataclass(frozen=True)
class PlannedCourse:
    """What a course brings together: the chains that come in, the balloons that are tied in
    between two joints, those of chains that lie there since before, those that stand already, its
    joints in the order in which they are tied, and those of the other ends that are tied before
    and later; whether they are locked. A first ring lies `flat`, its zigzag round it."""

    chains: tuple[LongChain, ...]
    between: tuple[str, ...]
    lying: tuple[str, ...]
    standing: tuple[str, ...]
    tied: tuple[str, ...]
    before: frozenset[str]
    later: frozenset[str]
    locked: bool = False
    flat: RoundCourse | None = None

    @property
    def links(self) -> tuple[str, ...]:
        """All that is drawn, what stands first."""
        new = (id_ for one in self.chains for id_ in one.chain.links)
        return (*self.standing, *self.lying, *new, *self.between)


def course_plan(
    framework: Framework,
    shape: Shape,
    course: PlannedCourse,
    across: float,
    alt: str,
    seen: str,
) -> Picture:
    """A course from above, opened out so that no joint lies over another, `across` points wide and
    high; `seen` is written on it."""
    page = _on_page(framework, shape, course, across)
    spots = page.spots
    marks = _bodies(framework, course, spots)
    for id_ in (*course.between, *course.standing):
        one = framework.link[id_]
        if len(_chain_of(framework)[id_].chain.links) == 1:
            marks.append(Polyline((spots[one.start], spots[one.finish]), SINGLE))
    rounds = ways_of_rounds(framework, shape, course.tied, spots)
    marks += rounds_of_locks(framework, rounds, spots)
    for joint, spot in sorted(spots.items()):
        before, later = joint in course.before, joint in course.later
        marks += named_joint(spot, joint, later=later, before=before)
    for place, joint in enumerate(course.tied, 1):
        taken = [way for way in rounds.get(joint, ()) if way is not None]
        marks += order_disc(joint, place, _number_at(framework, course, joint, spots, taken))
    marks += page.way
    marks.append(Label((2, page.high - TYPE), seen, TYPE, INK, anchor="start"))
    return Picture(across, page.high, tuple(marks), alt, (("picture", "plan of a course"),))


def balloon_long(framework: Framework, shape: Shape, course: PlannedCourse, across: float) -> float:
    """How long a balloon is on a plan `across` points wide, most of them, in points."""
    spots = _on_page(framework, shape, course, across).spots
    ends = [(framework.link[id_].start, framework.link[id_].finish) for id_ in course.links]
    return statistics.median(math.dist(spots[start], spots[finish]) for start, finish in ends)


@dataclass(frozen=True)
class _Opened:
    """Where the joints of all that is drawn lie on the page, the marks of the way round them, and
    how high that is."""

    spots: Mapping[str, Point]
    way: tuple[Mark, ...]
    high: float


def _on_page(framework: Framework, shape: Shape, course: PlannedCourse, across: float) -> _Opened:
    """A course fitted into a width, no higher than it must be."""
    links = [framework.link[id_] for id_ in course.links]
    joints = {joint for one in links for joint in (one.start, one.finish)} | set(course.tied)
    own = framework.built_with(course.tied[0]).joints
    flat = (
        places_from_above(shape.at, own, joints)
        if course.flat is None
        else places_lying(shape.at, framework, course.flat)
    )
    reach = max(max(math.hypot(*spot) for spot in flat.values()), AT_LEAST_M)
    radius = max(map(half_wide, joints))
    scale = (across / 2 - radius - ROUND_PT - EYE_PT / 2) / reach
    ways = [
        math.atan2(y, x)
        for x, y in map(flat.__getitem__, course.tied)
        if math.hypot(x, y) > OFF_MIDDLE * reach
    ]
    far = across / 2 - EYE_PT / 2
    round_it = _way_round(ways, far)
    about = HALF_HIGH + 2 * NUMBER_RADIUS
    heights = [scale * y + side * about for _, y in flat.values() for side in (-1, 1)]
    for one in links:  # no body is cut off where it is stouter than the names are high
        ends = flat[one.start], flat[one.finish]
        half, y = STOUTEST / 2 * math.dist(*ends), (ends[0][1] + ends[1][1]) / 2
        heights += [scale * (y + side * half) for side in (-1, 1)]
    heights += [y + side * EYE_PT / 2 for _, y in round_it for side in (-1, 1)]
    low, high = min(heights), max(heights) + TYPE
    middle = (across / 2, -low)
    spots = {j: (middle[0] + scale * x, middle[1] + scale * y) for j, (x, y) in flat.items()}
    way: list[Mark] = []
    if round_it:
        (at, *line) = [(middle[0] + x, middle[1] + y) for x, y in round_it]
        look = math.atan2(middle[1] - at[1], middle[0] - at[0])
        way = [*pointed(line), *eye_marks([Eye(at, look, ())], (across, high - low))]
    return _Opened(spots, tuple(way), high - low)


def _way_round(ways: Sequence[float], far: float) -> list[Point]:
    """Where an eye is that begins, then the line of an arrow the way one goes round, so far from
    the middle; `ways` are the directions of joints in their turn, radians. None of fewer than
    two."""
    if len(ways) < 2:
        return []
    turn = math.copysign(1.0, (ways[1] - ways[0] + math.pi) % (2 * math.pi) - math.pi)
    at = (far * math.cos(ways[0]), far * math.sin(ways[0]))
    begun = math.degrees(ways[0]) + turn * BESIDE_EYE_DEG
    return [at, *round_points((0.0, 0.0), far, far, 10, begun, turn * WAY_DEG)]


def _bodies(framework: Framework, course: PlannedCourse, spots: Mapping[str, Point]) -> list[Mark]:
    """The balloons, what stands first. A chain's letter is on all of its own; those of another
    colour than most of it bear the sign of theirs."""
    sign, chain_of = signs(framework), _chain_of(framework)
    marks: list[Mark] = []
    lengths = [
        math.dist(spots[framework.link[id_].start], spots[framework.link[id_].finish])
        for id_ in course.links
    ]
    lying = [length for length in lengths if length > UPRIGHT_PT]
    usual_wide = STOUT * statistics.median(lying) if lying else 0.0
    for id_, length in zip(course.links, lengths, strict=True):
        if length <= UPRIGHT_PT:  # straight up from its joint: from above its disc is all of it
            continue
        one, chain = framework.link[id_], chain_of[id_]
        ends = spots[one.start], spots[one.finish]
        standing = id_ in course.standing
        colour = framework.balloons[one.balloon].colour
        usual = one.balloon == _usual(framework, chain)
        state, wide = "done" if standing else "new", min(STOUTEST * length, usual_wide)
        own = 0 if usual or standing else sign[one.balloon]
        marks += link(*ends, wide, colour, state, own)
        if len(chain.chain.links) > 1:
            x, y = between(*ends)
            ink = SOFT if standing else INK
            foot = (x, y - LETTER_PT * 0.36)
            marks.append(Label(foot, chain.letter, LETTER_PT, ink, bold=True, halo=PAPER))
    return marks


def _chain_of(framework: Framework) -> Mapping[str, LongChain]:
    """The long chain that each link is of."""
    return {id_: one for one in framework.chains for id_ in one.chain.links}


def _usual(framework: Framework, chain: LongChain) -> str:
    """The balloon that a chain has most of."""
    count = Counter(framework.link[id_].balloon for id_ in chain.chain.links)
    return max(count, key=lambda key: count[key])


def _number_at(
    framework: Framework,
    course: PlannedCourse,
    joint: str,
    spots: Mapping[str, Point],
    taken: Sequence[float],
) -> Point:
    """Where the turn of a joint stands: beside its disc, in the widest gap between balloons that is
    not `taken`."""
    x, y = spots[joint]
    ways = sorted(
        math.atan2(spots[end][1] - y, spots[end][0] - x)
        for id_ in course.links
        for end in (framework.link[id_].start, framework.link[id_].finish)
        if joint in (framework.link[id_].start, framework.link[id_].finish) and end != joint
    )
    after = [*ways[1:], ways[0] + 2 * math.pi]
    gaps = [(round(b - a, 6), (a + b) / 2) for a, b in zip(ways, after, strict=True)]
    free = [(gap, way) for gap, way in gaps if not any(_is_near(way, one) for one in taken)]
    widest = max(gap for gap, _ in free or gaps)
    alike = [(gap, way) for gap, way in free or gaps if gap > widest - ALIKE]
    middle = [statistics.fmean(spot[axis] for spot in spots.values()) for axis in (0, 1)]
    out = math.atan2(y - middle[1], x - middle[0])  # of gaps as wide the same at all joints
    gap, way = min(alike, key=lambda one: (one[1] - out) % (2 * math.pi))
    far = to_edge(joint, way) + NUMBER_RADIUS * (0.9 if gap > ROOMY else 0.6)
    return x + far * math.cos(way), y + far * math.sin(way)


def _is_near(way: float, other: float) -> bool:
    return abs((way - other + math.pi) % (2 * math.pi) - math.pi) < AT_LEAST_RAD
