"""Crew pages for the place: does it fit, holding it down, taking it down."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import (
    balloon_words,
    bulk_words,
    joints_words,
    mass_words,
)
from buildplan.booklet.common.manner import hold_words
from buildplan.business.buying.packing import Bag
from buildplan.design.measures import size_words
from buildplan.document.blocks import Items, heading
from buildplan.document.layout import beside
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.evaluation.ballast import DRAUGHT_M_PER_S, ballast_kg
from buildplan.evaluation.figures import speed_words
from buildplan.evaluation.passing_words import pose_how, pose_name
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.shape.carrying import poses, whole

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


def arriving(book: Book, packed: Sequence[Bag]) -> list[Flowable]:
    """Whether it fits, in which pose and in how many pieces; ballast; sun and wind."""
    voice = book.voice
    units, facts = book.units, book.facts
    rows = tuple(
        (
            f"{strong(pose_name(pose, voice))}: {plain(pose_how(pose, voice))}",
            voice.tell(size_words(pose.width_m, units)),
            voice.tell(size_words(pose.height_m, units)),
            voice.tell(size_words(pose.length_m, units)),
            "",
        )
        for pose in poses(whole(book.framework, book.shape))
    )
    measured = tuple((voice.say(name), "", "", "", "") for name in OPENINGS)
    bulk = bulk_words(sum(bag.bulk_m3 for bag in packed), units, voice)
    feet = joints_words(book.shape.standing.feet, voice)
    return [
        heading(voice.say("Does it fit? Measure on arrival, before a bag is opened")),
        Grid(
            (
                voice.say("Pose of the finished piece"),
                voice.say("Needs width"),
                voice.say("Needs height"),
                voice.say("Length behind"),
                voice.say("Fits where"),
            ),
            rows,
            (70, 34, 36, 42, 32),
            frozenset({1, 2, 3}),
            pad=CLOSE_ROWS,
            after=8,
        ),
        Grid(
            (
                voice.say("On the way"),
                voice.say("Clear width"),
                voice.say("Clear height"),
                voice.say("Length inside"),
                voice.say("Pose"),
            ),
            measured,
            (70, 34, 36, 42, 32),
            pad=CLOSE_ROWS,
            after=8,
        ),
        Items(
            (
                voice.say(
                    "{in_one_piece} when one pose fits every opening on the way, with a hand's "
                    "breadth to spare on each side (estimated sizes: measure your own piece).",
                    in_one_piece=strong(voice.say("In one piece")),
                ),
                voice.say(
                    "{in_loads} otherwise: chains, braces and locks in their bags, {bulk} in all, "
                    "built in the room where it will stand. Once braced it does not come apart "
                    "again.",
                    in_loads=strong(voice.say("In {count} labelled loads", count=len(packed))),
                    bulk=bulk,
                ),
                voice.say(
                    "Cover hinges, handles and latches; look out for thorns, screws and hot "
                    "lamps. One person walks ahead and opens doors."
                ),
            )
        ),
        *beside(
            book.paper,
            [
                heading(voice.say("Place it and hold it down")),
                Items(
                    (
                        voice.say("Ask the venue which spot; exits, stairs and sockets stay clear"),
                        sentences(
                            voice.say(
                                "Stand it on {joints}, lift together on a count.",
                                joints=strong(feet),
                            ),
                            hold_words(book),
                        ),
                        voice.say(
                            "Ballast low at {joints}, the same on each foot", joints=strong(feet)
                        ),
                        voice.say(
                            "It goes over when it leans {angle} in its worst direction (estimate)",
                            angle=strong(
                                voice.say(
                                    "{angle} degrees", angle=voice.decimal(facts.tip_angle_deg, 1)
                                )
                            ),
                        ),
                    ),
                    ticked=True,
                ),
            ],
            [
                heading(voice.say("Sun and wind")),
                Items(
                    (
                        voice.say(
                            "Air grows by about 5 in 100 from 20 to 35 degrees C (68 to 95 F). In "
                            "the sun far more: stand it in shade, or size a little smaller where "
                            "it will stand"
                        ),
                        voice.say(
                            "Sun dulls latex within hours; cold balloons shrink and grow again "
                            "indoors"
                        ),
                        voice.say(
                            "Outdoors tie it to something that holds as well, keep people clear, "
                            "or keep it indoors"
                        ),
                        voice.say(
                            "Wind rising, rain or lightning: take it down at once. Who decides: "
                            "____________________"
                        ),
                    )
                ),
            ],
        ),
        Grid(
            (
                voice.say("Ballast that holds it (estimates, the safe end)"),
                voice.say("Gust"),
                voice.say("On the foot, in all"),
            ),
            tuple(
                (
                    voice.say(name),
                    speed_words(gust, units, voice),
                    mass_words(ballast_kg(book.examination, gust), voice),
                )
                for name, gust in WINDS
            ),
            (96, 26, 40),
            pad=CLOSEST_ROWS,
        ),
    ]


def after(book: Book) -> list[Flowable]:
    """While it stands; taking down; waste; what was different this time."""
    voice = book.voice
    facts = book.facts
    spare = "; ".join(
        voice.say("{count} {balloons}", count=p.spare, balloons=balloon_words(book, p.balloon.key))
        for p in facts.purchases
    )
    return [
        heading(voice.say("While it stands")),
        Items(
            (
                voice.say(
                    "Spares stay near, with a hand pump and the gauges: {spares}",
                    spares=plain(spare),
                ),
                voice.say(
                    "A burst balloon: size a new one to the same gauge, tie it between the same "
                    "two joints, lock on again"
                ),
                voice.say(
                    "Look it over each morning: locks on, feet down, ballast in place, exits clear"
                ),
                voice.say("Pick up every piece of a broken balloon at once"),
            ),
            ticked=True,
        ),
        heading(voice.say("Take it down")),
        Items(
            (
                voice.say(
                    "Clear people away; safety glasses on; hold the piece while the upper ties go"
                ),
                voice.say("Lay it flat, ballast last; then untie the ballast"),
                voice.say(
                    "Let air out: snip each neck beside its knot with blunt scissors, never burst "
                    "near people"
                ),
                voice.say(
                    "Count into the bags: {count} balloons were in the piece",
                    count=strong(voice.whole(facts.total)),
                ),
                voice.say("Take off tags, ties and tape; keep ballast and gauges for next time"),
                voice.say(
                    "Sweep; look under furniture. Nothing goes outdoors, nothing down a drain"
                ),
                voice.say(
                    "Tie the waste bags shut, out of the reach of children and animals; latex "
                    "goes where local rules say"
                ),
            ),
            ticked=True,
        ),
        heading(voice.say("This time")),
        Grid(
            ("", voice.say("Planned"), voice.say("Took")),
            (
                (voice.say("Beforehand, minutes"), "", ""),
                (voice.say("On site, minutes"), "", ""),
                (
                    voice.say("Balloons burst"),
                    voice.whole(sum(p.spare for p in facts.purchases)),
                    "",
                ),
                (
                    voice.say("Width x height, measured"),
                    f"{book.voice.tell(size_words(facts.width_m, book.units))} x "
                    f"{book.voice.tell(size_words(facts.height_m, book.units))}",
                    "",
                ),
            ),
            (60, 50, 50),
        ),
    ]
