"""Crew pages for the place: does it fit, holding it down, taking it down."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.booklet.book import Book
from buildplan.booklet.crew_words import (
    DRAUGHT_M_PER_S,
    ballast_kg,
    balloon_words,
    bulk_words,
    joints_words,
    mass_words,
    speed_words,
)
from buildplan.booklet.flow import (
    Block,
    Grid,
    Items,
    beside,
    heading,
)
from buildplan.booklet.packing import Bag
from buildplan.booklet.placing import poses
from buildplan.booklet.press import plain, strong
from buildplan.design.measures import size_words

# Speeds that ballast is told for; outdoors the ends of Beaufort 2 and 3 (mean speeds: gusts run
# above them).
WINDS = (
    ("Indoors, a draught from a door", DRAUGHT_M_PER_S),
    ("Outdoors, wind felt on the face", 3.3),
    ("Outdoors, leaves and twigs in movement", 5.4),
)
# Charles: volume goes with absolute temperature; 308.15 K / 293.15 K = 1.051.
WARMTH = "Air grows by about 5 in 100 from 20 to 35 degrees C (68 to 95 F)."
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
    measured = tuple((name, "", "", "", "") for name in OPENINGS)
    bulk = bulk_words(sum(bag.bulk_m3 for bag in packed), units)
    feet = joints_words(book.shape.standing.feet)
    return [
        heading("Does it fit? Measure on arrival, before a bag is opened"),
        Grid(
            (
                "Pose of the finished piece",
                "Needs width",
                "Needs height",
                "Length behind",
                "Fits where",
            ),
            rows,
            (70, 34, 36, 42, 32),
            frozenset({1, 2, 3}),
            pad=CLOSE_ROWS,
            after=8,
        ),
        Grid(
            ("On the way", "Clear width", "Clear height", "Length inside", "Pose"),
            measured,
            (70, 34, 36, 42, 32),
            pad=CLOSE_ROWS,
            after=8,
        ),
        Items(
            (
                f"{strong('In one piece')} when one pose fits every opening on the way, with a "
                "hand's breadth to spare on each side (estimated sizes: measure your own piece).",
                f"{strong(f'In {len(packed)} labelled loads')} otherwise: chains, braces and locks "
                f"in their bags, {bulk} in all, built in the room where it will stand. Once braced "
                "it does not come apart again.",
                "Cover hinges, handles and latches; look out for thorns, screws and hot lamps. "
                "One person walks ahead and opens doors.",
            )
        ),
        *beside(
            book.paper,
            [
                heading("Place it and hold it down"),
                Items(
                    (
                        "Ask the venue which spot; exits, stairs and sockets stay clear",
                        f"Stand it on {strong(feet)}, lift together on a count, hold the braced "
                        "tube and never a single balloon",
                        f"Ballast low at {strong(feet)}, the same on each foot",
                        f"It goes over when it leans {strong(f'{facts.tip_angle_deg:.0f} degrees')}"
                        " in its worst direction (estimate)",
                    ),
                    ticked=True,
                ),
            ],
            [
                heading("Sun and wind"),
                Items(
                    (
                        f"{WARMTH} In the sun far more: stand it in shade, or size a little "
                        "smaller where it will stand",
                        "Sun dulls latex within hours; cold balloons shrink and grow again indoors",
                        "Outdoors tie it to something that holds as well, keep people clear, or "
                        "keep it indoors",
                        "Wind rising, rain or lightning: take it down at once. Who decides: "
                        "____________________",
                    )
                ),
            ],
        ),
        Grid(
            ("Ballast that holds it (estimates, the safe end)", "Gust", "On the foot, in all"),
            tuple(
                (name, speed_words(gust, units), mass_words(ballast_kg(book, gust)))
                for name, gust in WINDS
            ),
            (80, 30, 50),
            pad=CLOSEST_ROWS,
        ),
    ]


OPENINGS = (
    "Vehicle: opening",
    "Vehicle: inside",
    "Outer door",
    "Lift: door",
    "Lift: inside",
    "Inner door, corridor",
)


def after(book: Book) -> list[Block]:
    """While it stands; taking down; waste; what was different this time."""
    facts = book.facts
    spare = ", ".join(f"{p.spare} {balloon_words(book, p.balloon.key)}" for p in facts.purchases)
    return [
        heading("While it stands"),
        Items(
            (
                f"Spares stay near, with a hand pump and the gauges: {plain(spare)}",
                "A burst balloon: size a new one to the same gauge, tie it between the same two "
                "joints, lock on again",
                "Look it over each morning: locks on, feet down, ballast in place, exits clear",
                "Pick up every piece of a broken balloon at once",
            ),
            ticked=True,
        ),
        heading("Take it down"),
        Items(
            (
                "Clear people away; safety glasses on; hold the piece while the upper ties go",
                "Lay it flat, ballast last; then untie the ballast",
                "Let air out: snip each neck beside its knot with blunt scissors, never burst near "
                "people",
                f"Count into the bags: {strong(str(facts.total))} balloons were in the piece",
                "Take off tags, ties and tape; keep ballast and gauges for next time",
                "Sweep; look under furniture. Nothing goes outdoors, nothing down a drain",
                "Tie the waste bags shut, out of the reach of children and animals; latex goes "
                "where local rules say",
            ),
            ticked=True,
        ),
        heading("This time"),
        Grid(
            ("", "Planned", "Took"),
            (
                ("Beforehand, minutes", "", ""),
                ("On site, minutes", "", ""),
                ("Balloons burst", str(sum(p.spare for p in facts.purchases)), ""),
                (
                    "Width x height, measured",
                    f"{size_words(facts.width_m, book.units)} x "
                    f"{size_words(facts.height_m, book.units)}",
                    "",
                ),
            ),
            (60, 50, 50),
        ),
    ]
