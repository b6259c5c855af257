"""Crew pages for the place: does it fit, holding it down, taking it down."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import (
    DRAUGHT_M_PER_S,
    ballast_kg,
    balloon_words,
    bulk_words,
    joints_words,
    mass_words,
    speed_words,
)
from buildplan.booklet.common.placing import poses
from buildplan.business.buying.packing import Bag
from buildplan.design.measures import size_words
from buildplan.document.flow import (
    Block,
    Grid,
    Items,
    beside,
    heading,
)
from buildplan.document.renderer import plain, strong
from buildplan.language.grammar import decimal
from buildplan.language.speaking import mark, say, whole

# Speeds that ballast is told for; outdoors the ends of Beaufort 2 and 3 (mean speeds: gusts run
# above them).
WINDS = (
    (mark("Indoors, a draught from a door"), DRAUGHT_M_PER_S),
    (mark("Outdoors, wind felt on the face"), 3.3),
    (mark("Outdoors, leaves and twigs in movement"), 5.4),
)
OPENINGS = (
    mark("Vehicle: opening"),
    mark("Vehicle: inside"),
    mark("Outer door"),
    mark("Lift: door"),
    mark("Lift: inside"),
    mark("Inner door, corridor"),
)
# Charles: volume goes with absolute temperature; 308.15 K / 293.15 K = 1.051.
CLOSE_ROWS, CLOSEST_ROWS = 2.5, 1.2


def arriving(book: Book, packed: Sequence[Bag]) -> list[Block]:
    """Whether it fits, in which pose and in how many pieces; ballast; sun and wind."""
    units, facts = book.units, book.facts
    rows = tuple(
        (
            f"{strong(pose.name)}: {plain(pose.how)}",
            size_words(pose.width_m, units),
            size_words(pose.height_m, units),
            size_words(pose.length_m, units),
            "",
        )
        for pose in poses(book.framework, book.shape)
    )
    measured = tuple((say(name), "", "", "", "") for name in OPENINGS)
    bulk = bulk_words(sum(bag.bulk_m3 for bag in packed), units)
    feet = joints_words(book.shape.standing.feet)
    return [
        heading(say("Does it fit? Measure on arrival, before a bag is opened")),
        Grid(
            (
                say("Pose of the finished piece"),
                say("Needs width"),
                say("Needs height"),
                say("Length behind"),
                say("Fits where"),
            ),
            rows,
            (70, 34, 36, 42, 32),
            frozenset({1, 2, 3}),
            pad=CLOSE_ROWS,
            after=8,
        ),
        Grid(
            (
                say("On the way"),
                say("Clear width"),
                say("Clear height"),
                say("Length inside"),
                say("Pose"),
            ),
            measured,
            (70, 34, 36, 42, 32),
            pad=CLOSE_ROWS,
            after=8,
        ),
        Items(
            (
                say(
                    "{in_one_piece} when one pose fits every opening on the way, with a hand's "
                    "breadth to spare on each side (estimated sizes: measure your own piece).",
                    in_one_piece=strong(say("In one piece")),
                ),
                say(
                    "{in_loads} otherwise: chains, braces and locks in their bags, {bulk} in all, "
                    "built in the room where it will stand. Once braced it does not come apart "
                    "again.",
                    in_loads=strong(say("In {count} labelled loads", count=len(packed))),
                    bulk=bulk,
                ),
                say(
                    "Cover hinges, handles and latches; look out for thorns, screws and hot "
                    "lamps. One person walks ahead and opens doors."
                ),
            )
        ),
        *beside(
            book.paper,
            [
                heading(say("Place it and hold it down")),
                Items(
                    (
                        say("Ask the venue which spot; exits, stairs and sockets stay clear"),
                        say(
                            "Stand it on {joints}, lift together on a count, hold the braced tube "
                            "and never a single balloon",
                            joints=strong(feet),
                        ),
                        say("Ballast low at {joints}, the same on each foot", joints=strong(feet)),
                        say(
                            "It goes over when it leans {angle} in its worst direction (estimate)",
                            angle=strong(
                                say("{angle} degrees", angle=decimal(facts.tip_angle_deg, 1))
                            ),
                        ),
                    ),
                    ticked=True,
                ),
            ],
            [
                heading(say("Sun and wind")),
                Items(
                    (
                        say(
                            "Air grows by about 5 in 100 from 20 to 35 degrees C (68 to 95 F). In "
                            "the sun far more: stand it in shade, or size a little smaller where "
                            "it will stand"
                        ),
                        say(
                            "Sun dulls latex within hours; cold balloons shrink and grow again "
                            "indoors"
                        ),
                        say(
                            "Outdoors tie it to something that holds as well, keep people clear, "
                            "or keep it indoors"
                        ),
                        say(
                            "Wind rising, rain or lightning: take it down at once. Who decides: "
                            "____________________"
                        ),
                    )
                ),
            ],
        ),
        Grid(
            (
                say("Ballast that holds it (estimates, the safe end)"),
                say("Gust"),
                say("On the foot, in all"),
            ),
            tuple(
                (say(name), speed_words(gust, units), mass_words(ballast_kg(book, gust)))
                for name, gust in WINDS
            ),
            (96, 26, 40),
            pad=CLOSEST_ROWS,
        ),
    ]


def after(book: Book) -> list[Block]:
    """While it stands; taking down; waste; what was different this time."""
    facts = book.facts
    spare = "; ".join(
        say("{count} {balloons}", count=p.spare, balloons=balloon_words(book, p.balloon.key))
        for p in facts.purchases
    )
    return [
        heading(say("While it stands")),
        Items(
            (
                say(
                    "Spares stay near, with a hand pump and the gauges: {spares}",
                    spares=plain(spare),
                ),
                say(
                    "A burst balloon: size a new one to the same gauge, tie it between the same "
                    "two joints, lock on again"
                ),
                say(
                    "Look it over each morning: locks on, feet down, ballast in place, exits clear"
                ),
                say("Pick up every piece of a broken balloon at once"),
            ),
            ticked=True,
        ),
        heading(say("Take it down")),
        Items(
            (
                say("Clear people away; safety glasses on; hold the piece while the upper ties go"),
                say("Lay it flat, ballast last; then untie the ballast"),
                say(
                    "Let air out: snip each neck beside its knot with blunt scissors, never burst "
                    "near people"
                ),
                say(
                    "Count into the bags: {count} balloons were in the piece",
                    count=strong(whole(facts.total)),
                ),
                say("Take off tags, ties and tape; keep ballast and gauges for next time"),
                say("Sweep; look under furniture. Nothing goes outdoors, nothing down a drain"),
                say(
                    "Tie the waste bags shut, out of the reach of children and animals; latex "
                    "goes where local rules say"
                ),
            ),
            ticked=True,
        ),
        heading(say("This time")),
        Grid(
            ("", say("Planned"), say("Took")),
            (
                (say("Beforehand, minutes"), "", ""),
                (say("On site, minutes"), "", ""),
                (say("Balloons burst"), whole(sum(p.spare for p in facts.purchases)), ""),
                (
                    say("Width x height, measured"),
                    f"{size_words(facts.width_m, book.units)} x "
                    f"{size_words(facts.height_m, book.units)}",
                    "",
                ),
            ),
            (60, 50, 50),
        ),
    ]
