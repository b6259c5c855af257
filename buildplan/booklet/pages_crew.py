"""The crew edition: what experts need on a floor, on as few pages as can be read there."""

from __future__ import annotations

import math
from collections.abc import Sequence

from buildplan.booklet.book import Book
from buildplan.booklet.cautions import CHOKING_HAZARD, CHOKING_SIGNAL, CHOKING_WORDS, LATEX_WORDS
from buildplan.booklet.crew_times import chart, clock, timed_jobs, who_words
from buildplan.booklet.flow import (
    COLUMN_GAP,
    Block,
    Boxed,
    Grid,
    Items,
    Shown,
    Words,
    beside,
    flow,
    heading,
    is_wide,
)
from buildplan.booklet.jobs import Job, Row, jobs
from buildplan.booklet.packing import Bag, bags
from buildplan.booklet.pages_front import TOOLS
from buildplan.booklet.pages_gauges import gauges_within
from buildplan.booklet.paper import Paper, landscape
from buildplan.booklet.placing import poses
from buildplan.booklet.press import HEADING, LEAD, SMALL, Leaf, Press, plain, strong
from buildplan.booklet.words import joined, minutes_words, weight_words
from buildplan.design.measures import Units, length_words, size_words
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.joint_map import joint_map
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import finished_picture, step_picture
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.timetable import RESERVE, Part, Place, Timetable, crew_of, timetable

# The cautions of cautions.py as a crew reads them again before each job.
SHORT_CAUTIONS: Sequence[tuple[str, str]] = (
    ("WARNING", "Keep exits, stairs, extinguishers and wheelchair ways clear. Ask the venue."),
    ("WARNING", "Keep off overhead lines, sockets and hot lamps. Wiring is for an electrician."),
    (
        "WARNING",
        "Ladders: firm, level ground, somebody to hold it, local rules for work at height.",
    ),
    ("WARNING", "Wind: ballast and ties that somebody competent has checked; take down in time."),
    ("CAUTION", "Safety glasses on; ear protection beside the inflator; face away."),
    (
        "CAUTION",
        "Two or more to lift, turn and carry. Clear the way first. Ask about latex allergy.",
    ),
    ("CAUTION", "Air only. Never breathe gas from a balloon."),
    ("NOTICE", "Heat makes balloons grow and burst. Sweep grit, staples and splinters away."),
)

# How hands work, for those who know it, in a line each.
MOVES: dict[Kind, str] = {
    Kind.SIZE: "Size against the gauge, a little over; let air out until it slips through.",
    Kind.PAIR: "Pair neck to neck: necks round each other twice, then tie.",
    Kind.CHAIN: "Chain pairs tail to tail with a double knot.",
    Kind.CLOSE_RING: "Close a ring without a twist; the closing knot is its joint 1.",
    Kind.BRACE: "Lead a brace through its joints in the row's order, knot on knot; settle it.",
    Kind.SINGLE: "Tie a single straight across, tail first, then its closed neck.",
    Kind.JOIN: "Bring the knots at a joint together before it is locked.",
    Kind.LOCK: "Lock: knot on the joint, a round to either side, twist until nothing slips.",
}

# Speeds that ballast is told for: a draught from a door (from memory), and the ends of Beaufort
# 2 and 3 (3.3 and 5.4 m/s; mean speeds, and gusts run above them).
DRAUGHT_M_PER_S = 2.0
WINDS = (
    ("Indoors, a draught from a door", DRAUGHT_M_PER_S),
    ("Outdoors, wind felt on the face", 3.3),
    ("Outdoors, leaves and twigs in movement", 5.4),
)
# Against people who brush past, even where the air is still (from memory).
LEAST_BALLAST_KG = 5.0
STILL_AIR_M_PER_S = 0.05
METRES_PER_SECOND_OF_MPH = 1609.344 / 3600
# Charles: volume goes with absolute temperature; 308.15 K / 293.15 K = 1.051.
WARMTH = "Air grows by about 5 in 100 from 20 to 35 degrees C (68 to 95 F)."
LITRES_PER_CUBIC_FOOT = 28.316846592
# The joint map is drawn as large as it can be on so many sheets.
MAP_SCALES = (1.5, 1.35, 1.25, 1.15, 1.0)
MAP_SHEETS = 2
RUN_PICTURE = 250.0
TABLE_SHARE = 0.7
CLOSE_ROWS = 2.5


def crew_leaves(book: Book) -> list[Leaf]:
    """The pages of the crew edition, in the order in which a crew comes to need them."""
    work = jobs(book.steps)
    plan = timetable(
        book.steps, crew_of(book.facts.crew), {str(k): v for k, v in book.design.labour.items()}
    )
    packed = bags(book.framework)
    return [
        *flow(book, book.facts.name, front(book, work)),
        *flow(book, "Beforehand: prepare and pack", preparing(book, work, packed)),
        *flow(book, "Load list", loading(book, packed)),
        *flow(book, "Who does what when", times(book, work, plan)),
        *large_maps(book),
        *flow(book, "On the floor", assembling(book, work)),
        *flow(book, "Arrive, place, hold down", arriving(book, packed)),
        *flow(book, "While it stands, and taking it down", after(book)),
        *gauges_within(book),
    ]


# --- front ---------------------------------------------------------------------------------


def front(book: Book, work: Sequence[Job]) -> list[Block]:
    """What it is, how big, how many, how long; the regulation's words; the jobs."""
    facts, units = book.facts, book.units
    wide = min(book.paper.measure, 250.0)
    picture = finished_picture(
        book.framework,
        book.shape,
        CAMERAS["front"],
        wide,
        min(wide, 220.0),
        patterns=book.patterns,
        alt=f"{facts.name}, finished, from the front.",
    )
    size = " x ".join(size_words(m, units) for m in (facts.width_m, facts.height_m, facts.depth_m))
    figures = [
        f"{strong(str(facts.total))} balloons, {facts.braces} braces, {facts.singles} singles, "
        f"{facts.locks} locks",
        f"{strong(size)} wide, high, deep; {strong(weight_words(facts.mass_kg))} (estimates)",
        f"{strong(str(facts.crew))} people, about "
        f"{strong(minutes_words(facts.crew_minutes))} of practised work (estimate)",
        f"Stands on {strong(joined(book.shape.standing.feet))}",
    ]
    box = Boxed(
        (
            Words(strong(f"{CHOKING_SIGNAL} {CHOKING_HAZARD}"), HEADING),
            *(Words(strong(words)) for words in CHOKING_WORDS),
        )
    )
    rows = tuple(
        (
            strong(str(job.number)),
            plain(job.title),
            "beforehand" if job.portable else "on site",
        )
        for job in work
    )
    return [
        Words(strong("Crew edition"), LEAD, after=8),
        *beside(
            book.paper,
            [Shown(picture)],
            [Items(tuple(figures)), Grid(("Job", "", "Where"), rows, (14, 62, 40), pad=CLOSE_ROWS)],
            0.46,
        ),
        box,
        Words(strong(LATEX_WORDS)),
        Grid(
            ("", "Cautions in short; local codes and licensed practice come first"),
            tuple((strong(signal), plain(words)) for signal, words in SHORT_CAUTIONS),
            (21, 100),
            pad=CLOSE_ROWS,
        ),
    ]


# --- beforehand ----------------------------------------------------------------------------


def preparing(book: Book, work: Sequence[Job], packed: Sequence[Bag]) -> list[Block]:
    """What is sized and tied in the workshop, and what goes into which bag."""
    letters = book.colour_letters
    sizes = tuple(
        (
            strong(letters[p.balloon.key]),
            plain(
                f"{length_words(p.balloon.nominal_m, book.units)} {p.balloon.kind}, "
                f"{p.balloon.label}"
            ),
            strong(length_words(p.balloon.gauge_m, book.units)),
            strong(str(p.needed)),
        )
        for p in book.facts.purchases
    )
    blocks: list[Block] = [
        heading("Size"),
        Grid(("", "Balloon", "Gauge", "Count"), sizes, (10, 80, 28, 24), frozenset({3})),
    ]
    kinds = {step.kind for step in book.steps}
    blocks += [
        heading("How we tie"),
        Items(tuple(plain(words) for kind, words in MOVES.items() if kind in kinds)),
    ]
    for job in work:
        if job.portable:
            blocks.append(heading(f"Job {job.number}: {job.title}"))
            blocks.append(Items(tuple(_lines(job.steps)), ticked=True))
    rows = tuple(
        (
            strong(bag.label),
            plain(bag.holds),
            str(bag.balloons),
            _bulk(bag.bulk_m3, book.units),
            "",
        )
        for bag in packed
    )
    whole = (
        "",
        "all together",
        strong(str(sum(bag.balloons for bag in packed))),
        strong(_bulk(sum(bag.bulk_m3 for bag in packed), book.units)),
        "",
    )
    blocks += [
        heading("Bags: one label on each bag, the same words as here"),
        Grid(
            ("Label", "Holds", "Balloons", "Bulk", "Packed"),
            (*rows, whole),
            (32, 90, 27, 27, 25),
            frozenset({2, 3}),
            after=6,
        ),
        Words(
            "Bulk is loosely filled (an estimate). What is too much for one bag goes into more "
            "bags of the same label: write 1 of 2, 2 of 2. Smooth bags; keep them warm, out of "
            "the sun and off the floor.",
            SMALL,
        ),
    ]
    return blocks


def _lines(steps: Sequence[Step]) -> list[str]:
    """A line for each step, and one for each turn that says something of its own."""
    lines = []
    for step in steps:
        lines.append(f"{strong(step.title)}. {plain(step.check)}")
        if len(step.turns) > 1:
            lines += [plain(turn.words) for turn in step.turns if turn.words]
    return lines


def _bulk(volume_m3: float, units: Units) -> str:
    litres = volume_m3 * 1000
    if units == "in":
        return f"{math.ceil(litres / LITRES_PER_CUBIC_FOOT)} cu ft"
    return f"{math.ceil(litres / 10) * 10} L"


# --- load list -----------------------------------------------------------------------------


def loading(book: Book, packed: Sequence[Bag]) -> list[Block]:
    """Everything that goes on the vehicle, and everybody."""
    facts = book.facts
    tags = [j for s in book.steps if s.kind is Kind.TAG for o in s.operations for j in o.joints]
    spares = tuple(
        f"{strong(str(p.spare))} {plain(_balloon(book, p.balloon.key))}, not inflated"
        for p in facts.purchases
    )
    tools = [plain(tool) for tool in TOOLS if "label joints" not in tool]
    if tags:
        tools.insert(2, f"{strong(str(len(tags)))} tags, written before: {plain(_some(tags))}")
    first: list[Block] = [
        heading("Bags"),
        Items(tuple(f"{strong(bag.label)}: {bag.balloons} balloons" for bag in packed), True),
        heading("Spares to carry"),
        Items(spares, ticked=True),
    ]
    second: list[Block] = [
        heading("Tools"),
        Items(
            (*tools, "Extension lead, and tape to hold it to the floor", "Broom and dustpan"),
            ticked=True,
        ),
        heading("To hold it down"),
        Items(
            (
                f"Ballast for each foot: {plain(_ballast_words(book))}",
                "Soft ties or webbing, no wire",
                "Clear lines and fixings, if the venue allows them",
            ),
            ticked=True,
        ),
        heading("People and papers"),
        Items(
            (
                f"{strong(str(max(2, facts.crew)))} people: two at least to lift and stand it up",
                "This booklet; the gauges cut from card; a pen",
                "First aid kit; the venue's telephone number",
            ),
            ticked=True,
        ),
    ]
    return list(beside(book.paper, first, second, 0.46))


def _balloon(book: Book, key: str) -> str:
    balloon = book.framework.balloons[key]
    size = length_words(balloon.nominal_m, book.units)
    return f"{balloon.label} {balloon.kind}s, {size}"


def _some(labels: Sequence[str]) -> str:
    by_chain: dict[str, list[str]] = {}
    for label in labels:
        by_chain.setdefault(label.rstrip("0123456789"), []).append(label)
    return "; ".join(" ".join(same) for same in by_chain.values())


def ballast_kg(book: Book, gust_m_per_s: float) -> float:
    """Ballast on the foot that holds a gust, at the safe end of the estimate.

    Drag's moment goes with the square of the speed and just tips the bare piece, of mass m, at
    the speed v0; so ballast at the same arm is m ((v / v0)^2 - 1).
    """
    mass, tips_at = book.examination.mass.low, book.examination.wind.tips_at.low
    needed = mass * ((gust_m_per_s / max(tips_at, STILL_AIR_M_PER_S)) ** 2 - 1)
    return max(LEAST_BALLAST_KG, float(math.ceil(round(needed, 6))))


def _speed(gust_m_per_s: float, units: Units) -> str:
    if units == "in":
        return f"{gust_m_per_s / METRES_PER_SECOND_OF_MPH:.0f} mph"
    return f"{gust_m_per_s * 3.6:.0f} km/h"


def _ballast_words(book: Book) -> str:
    gust = _speed(DRAUGHT_M_PER_S, book.units)
    mass = weight_words(ballast_kg(book, DRAUGHT_M_PER_S))
    return f"{mass} in all, for a draught of {gust} (estimate)"


# --- timetable -----------------------------------------------------------------------------


def times(book: Book, work: Sequence[Job], plan: Timetable) -> list[Block]:
    """Each part of the work as a chart by person and a table by job."""
    blocks: list[Block] = []
    for part in plan.parts:
        blocks += _part(book, work, part)
    blocks.append(
        Words(
            "Times are estimates for practised hands, from the start of each part; "
            f"{RESERVE:.0%} are held back for breaks, bursts and mistakes where it says latest. "
            "A person who waits holds the work, hands on locks and picks up.",
            SMALL,
        )
    )
    return blocks


def _part(book: Book, work: Sequence[Job], part: Part) -> list[Block]:
    in_workshop = part.place is Place.WORKSHOP
    name = "Beforehand, in the workshop" if in_workshop else "On site"
    rows = tuple(
        (
            strong(str(one.job.number)),
            plain(one.job.title),
            f"{clock(one.start)} – {clock(one.finish)}",
            plain(who_words(one)),
            "",
        )
        for one in timed_jobs(part, work)
    )
    latest = minutes_words(part.minutes * (1 + RESERVE))
    before = "the vehicle leaves" if in_workshop else "it must stand"
    return [
        heading(f"{name}: {clock(part.minutes)} h for {book.facts.crew} people"),
        Words(f"Begin at the latest {strong(latest)} before {before}. We begin at: ____________"),
        Shown(chart(part, work, book.paper.measure, f"{name}, by person")),
        Grid(
            ("Job", "", "From – to", "Person: what", "Done at"),
            rows,
            (14, 46, 32, 66, 22),
        ),
    ]


# --- joint map -----------------------------------------------------------------------------


def large_maps(book: Book) -> list[Leaf]:
    """The joint map, drawn as large as few sheets allow, upright or across."""
    tried = [
        (paper, scale, _map_sheets(book, paper, scale))
        for scale in MAP_SCALES
        for paper in (book.paper, landscape(book.paper))
    ]
    few = [option for option in tried if len(option[2]) <= MAP_SHEETS]
    paper, scale, sheets = few[0] if few else min(tried, key=lambda option: len(option[2]))

    def leaf(number: int) -> Leaf:
        def draw(press: Press) -> None:
            of = f", sheet {number + 1} of {len(sheets)}" if len(sheets) > 1 else ""
            top = press.title(f"Joint map{of}")
            picture = sheets[number]
            press.picture(picture, paper.left, top - picture.height * scale, scale)

        title = "Joint map" if number == 0 else f"Joint map, sheet {number + 1}"
        return Leaf(title, draw, running="Joint map", listed=number == 0, paper=paper)

    return [leaf(number) for number in range(len(sheets))]


def _map_sheets(book: Book, paper: Paper, scale: float) -> tuple[Picture, ...]:
    room = paper.top - paper.bottom - 40
    return joint_map(book.framework, paper.measure / scale, room / scale)


# --- on the floor --------------------------------------------------------------------------


def assembling(book: Book, work: Sequence[Job]) -> list[Block]:
    """The jobs on site: each run of braces a table beside one picture."""
    blocks: list[Block] = []
    for job in work:
        if job.portable:
            continue
        blocks.append(heading(f"Job {job.number}: {job.title}  ({_steps(job)})"))
        if job.rows:
            blocks += _run(book, job)
        else:
            blocks.append(Items(tuple(_floor_lines(job.steps)), ticked=True))
    return blocks


def _steps(job: Job) -> str:
    first, last = job.steps[0].number, job.steps[-1].number
    return f"step {first}" if first == last else f"steps {first} to {last}"


def _floor_lines(steps: Sequence[Step]) -> list[str]:
    lines = []
    for step in steps:
        lines.append(
            f"{strong(step.title)}. {plain(step.text if step.kind is Kind.LAY else '')} "
            f"{plain(step.check)}"
        )
        if len(step.turns) > 1:
            lines += [plain(turn.words) for turn in step.turns if turn.words]
    return lines


def _run(book: Book, job: Job) -> tuple[Block, ...]:
    with_locks = any(row.locks for row in job.rows)
    rows = tuple(
        (
            f"{strong(_short_name(row))} {plain(row.cell)}".strip(),
            plain(_tersely(row)),
            *((plain(" ".join(row.locks)),) if with_locks else ()),
            "",
        )
        for row in job.rows
    )
    head = ("", "Joints in order", *(("Then lock",) if with_locks else ()), "Done")
    shares = (36, 78, *((60,) if with_locks else ()), 24)
    checks = [step.check for step in job.steps]
    # the last word of each kind of count: braces, singles, locks
    last: dict[str, str] = {}
    for check in checks:
        for sentence in check.split(". "):
            if " of " in sentence:
                last[sentence.split(":")[0]] = sentence.rstrip(".")
    picture = _run_picture(book, job)
    table: list[Block] = [
        Grid(head, rows, shares, pad=CLOSE_ROWS, after=5),
        Words(f"{strong('Check')} {plain('; '.join(last.values()))}."),
    ]
    if not is_wide(book.paper):
        return (Shown(picture), *table)
    return beside(book.paper, table, [Shown(picture)], TABLE_SHARE)


def _short_name(row: Row) -> str:
    # the joints of a single stand beside it
    return "Single" if row.name.startswith("Single ") else row.name


def _tersely(row: Row) -> str:
    """A row without what goes without saying: a brace closes where it began."""
    joints, *more = row.words.split(", ")
    said = [word.split(" with ")[0] for word in more if not word.startswith("closed at")]
    return ", ".join([joints.replace(" – ", " "), *said])


def _brought(steps: Sequence[Step]) -> tuple[frozenset[str], frozenset[str]]:
    adding = [op for step in steps for op in step.operations if op.adds]
    links = frozenset(link for op in adding for link in op.links)
    return links, frozenset(joint for op in adding for joint in op.locks)


def _run_picture(book: Book, job: Job) -> Picture:
    first = job.steps[0].number
    done_links, done_locks = _brought([s for s in book.steps if s.number < first])
    links, locks = _brought(job.steps)
    scene = Scene(
        book.framework,
        book.shape,
        new_links=links,
        done_links=done_links,
        new_locks=locks,
        done_locks=done_locks,
        patterns=book.patterns,
    )
    measure = book.paper.measure
    wide = (measure - COLUMN_GAP) * (1 - TABLE_SHARE) if is_wide(book.paper) else measure
    facts = book.facts
    tall = min(RUN_PICTURE, max(120.0, wide * facts.height_m / max(facts.width_m, 0.1)))
    rows = "; ".join(f"{row.name}: {row.words}; locks {' '.join(row.locks)}" for row in job.rows)
    return step_picture(
        scene,
        CAMERAS["front"],
        wide,
        tall,
        labels=_corners(book, job),
        alt=f"Job {job.number} on the whole piece, from the front. {rows}.",
    )


def _corners(book: Book, job: Job) -> tuple[str, ...]:
    """Joints that tell where a run is: the front ones at its first and last brace."""
    joints = [row.words for row in job.rows if row.name.startswith("Brace")]
    ends = [words.split(",")[0].split(" – ") for words in (joints[0], joints[-1])] if joints else []
    letters = [long.letter for long in book.framework.chains if "back" not in long.place]
    named = [j for end in ends for j in end if j in book.shape.at and j[0] in letters]
    return tuple(dict.fromkeys(named))


# --- arriving, placing ---------------------------------------------------------------------


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
    bulk = _bulk(sum(bag.bulk_m3 for bag in packed), units)
    feet = joined(book.shape.standing.feet)
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
                        "Turn locks outward, front as back; look for what has slipped",
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
                (name, _speed(gust, units), weight_words(ballast_kg(book, gust)))
                for name, gust in WINDS
            ),
            (80, 30, 50),
            pad=CLOSE_ROWS,
        ),
    ]


OPENINGS = (
    "Vehicle: opening",
    "Vehicle: inside",
    "Outer door",
    "Lift: door",
    "Lift: inside",
    "Inner door, corridor",
    "Where it stands",
)


# --- afterwards ----------------------------------------------------------------------------


def after(book: Book) -> list[Block]:
    """While it stands; taking down; waste; what was different this time."""
    facts = book.facts
    spare = ", ".join(f"{p.spare} {_balloon(book, p.balloon.key)}" for p in facts.purchases)
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
