"""What goes on each vehicle of an event: bags by piece, grouped, each with a box to tick."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import fsum

from reportlab.platypus import Flowable

from buildplan.booklet.common.holding import holders
from buildplan.booklet.common.loads import bulk_words, mass_words
from buildplan.booklet.common.needs import TOOLS
from buildplan.booklet.office.event_ways import sides_words
from buildplan.business.events.event_plan import Copy, EventPlan
from buildplan.business.events.loading import Item, Load, LoadKind, ballast_of, by_item
from buildplan.business.events.stowing import Box, volume_m3
from buildplan.document.blocks import Items, Words, heading
from buildplan.document.layout import beside
from buildplan.document.paper import Paper
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong
from buildplan.evaluation import balloon_words
from buildplan.evaluation.ballast import sand_l, water_l
from buildplan.language.voice import Voice
from buildplan.source.csv_text import Cell

CLOSE_ROWS = 2.0
TICK = "☐"


@dataclass(frozen=True)
class LoadLine:
    """Boxes of a design's pieces that are loaded alike: what they are, what is in each, how many
    there are, and how many balloons they hold in all."""

    design: int
    what: str
    holds: str
    boxes: int
    balloons: int


def load_lines(plan: EventPlan, load: Load, boxes: Iterable[Box], voice: Voice) -> list[LoadLine]:
    """Boxes of the pieces, design by design, the pieces of a design together and chains of one
    length on one line."""
    groups: dict[tuple[object, ...], list[tuple[Item, int]]] = {}
    for number, count in by_item(boxes).items():
        item = load.items[number]
        if item.piece is not None:
            design = plan.copies[item.piece].design
            groups.setdefault((design, *_alike(item)), []).append((item, count))
    return [_line(plan, group, voice) for group in groups.values()]


def carried_words(plan: EventPlan, load: Load, trip: int, voice: Voice) -> list[str]:
    """What a trip carries, in short: the pieces, and the tools."""
    items = [load.items[number] for number in by_item(load.on_trip(trip))]
    names = [plan.copies[item.piece].name for item in items if item.piece is not None]
    tools = [voice.say("Tools")] if any(item.kind is LoadKind.TOOLS for item in items) else []
    return [*dict.fromkeys(names), *tools]


def _alike(item: Item) -> tuple[object, ...]:
    """What bags that stand on one line have in common."""
    if item.bag is None:
        return (item.kind,)
    if item.chain:
        return ("chains", tuple(sorted(item.bag.counts.items())))
    return (item.bag.label,)


def _line(plan: EventPlan, group: Sequence[tuple[Item, int]], voice: Voice) -> LoadLine:
    first = group[0][0]
    assert first.piece is not None, "lines are of pieces"
    copy, count = plan.copies[first.piece], sum(number for _, number in group)
    if first.kind is LoadKind.BALLAST:
        holds = voice.say("up to 10 kg (22 lb) in each")
        return LoadLine(copy.design, voice.say("Ballast"), holds, count, 0)
    if first.bag is None:
        facts, units = copy.book.facts, plan.units
        size = sides_words((facts.width_m, facts.height_m, facts.depth_m), units, voice)
        what, balloons = voice.say("Whole, {size}", size=size), facts.total * count
        return LoadLine(copy.design, what, voice.say("built in the workshop"), count, balloons)
    # a label's balloons are shared among its bags
    balloons = sum(
        round(item.bag.balloons * number / len(item.boxes)) for item, number in group if item.bag
    )
    if not first.chain:
        return LoadLine(copy.design, first.bag.label, first.bag.holds, count, balloons)
    letters = list(dict.fromkeys(item.chain for item, _ in group))
    what = (
        first.bag.label
        if len(letters) == 1
        else voice.say("Chains {letters}", letters=voice.listed(letters))
    )
    holds = voice.say_count(
        "{number} balloon, first joint marked, ends free",
        "{number} balloons each, first joint marked, ends free",
        first.bag.balloons,
    )
    return LoadLine(copy.design, what, holds, count, balloons)


def load_blocks(plan: EventPlan, load: Load, paper: Paper, voice: Voice) -> list[Flowable]:
    """The load list: a table for each vehicle, then what serves all pieces."""
    blocks: list[Flowable] = [
        Words(
            voice.say(
                "Every bag carries the name of its piece and its own label: write both on it "
                "before it is filled."
            ),
            after=6,
        )
    ]
    for trip in range(1, load.trips + 1):
        for number, vehicle in enumerate(load.vehicles):
            name = vehicle.name
            if load.trips > 1:
                name = voice.say("{vehicle}, trip {trip}", vehicle=vehicle.name, trip=trip)
            blocks += _table(plan, load, load.aboard(number, trip), name, voice)
    if not load.vehicles:
        blocks += _table(plan, load, load.boxes, voice.say("All pieces"), voice)
    else:
        blocks += _table(plan, load, load.left, voice.say("No place found"), voice)
    return [*blocks, *_for_all(plan, paper, voice)]


def _table(
    plan: EventPlan, load: Load, boxes: Sequence[Box], vehicle: str, voice: Voice
) -> list[Flowable]:
    rows: list[tuple[str, ...]] = []
    design = None
    for line in load_lines(plan, load, boxes, voice):
        name = strong(_piece(plan, line.design, voice))
        piece = name if line.design != design else ""
        design = line.design
        ticks = " ".join([TICK] * line.boxes)
        rows.append((piece, plain(line.what), plain(line.holds), ticks))
    tools = [box for box in boxes if load.items[box.item].kind is LoadKind.TOOLS]
    if tools:
        ticks = " ".join([TICK] * len(tools))
        all_pieces = strong(voice.say("All pieces"))
        rows.append((all_pieces, voice.say("Tools"), voice.say("see below"), ticks))
    if not rows:
        return []
    head = (
        voice.say("Piece"),
        voice.say("Label"),
        voice.say("Holds"),
        voice.say_in("column of boxes to tick", "Loaded"),
    )
    title = voice.say_count(
        "{name}: {number} box, {bulk}",
        "{name}: {number} boxes, {bulk}",
        len(boxes),
        name=vehicle,
        bulk=bulk_words(volume_m3(boxes), plan.units, voice),
    )
    return [heading(title), Grid(head, rows, (96, 104, 190, 100), pad=CLOSE_ROWS, after=10)]


def _piece(plan: EventPlan, design: int, voice: Voice) -> str:
    copy = next(one for one in plan.copies if one.design == design)
    name = copy.book.facts.name
    return name if copy.of == 1 else voice.say("{times} x {piece}", times=copy.of, piece=name)


def _for_all(plan: EventPlan, paper: Paper, voice: Voice) -> list[Flowable]:
    """Spares, tools, what holds the pieces down, papers."""
    lists = [
        [heading(title), Items(tuple(map(plain, lines)), ticked=True, gap=2.0)]
        for title, lines in shared_lists(plan, voice)
    ]
    spares, tools, held, papers = lists
    return list(beside(paper, [*spares, *papers], [*tools, *held], 0.42))


def shared_lists(plan: EventPlan, voice: Voice) -> list[tuple[str, list[str]]]:
    """What is taken once for all pieces, list by list."""
    units = plan.units
    spares = [
        voice.say(
            "{times} x {piece}",
            times=purchase.spare,
            piece=balloon_words.bought(purchase, units),
        )
        for purchase in plan.shopping.purchases
        if purchase.spare
    ]
    papers = [
        *(voice.say("the booklet of {piece}", piece=copy.book.facts.name) for copy in plan.firsts),
        voice.say("these pages, and a pen"),
        voice.say("first aid kit; the venue's telephone number"),
    ]
    return [
        (voice.say("Spares, not inflated"), spares),
        (voice.say("Tools"), [voice.say(tool) for tool in TOOLS]),
        (voice.say("To hold it down"), list(_holding_down(plan, voice))),
        (voice.say("Papers"), papers),
    ]


def _holding_down(plan: EventPlan, voice: Voice) -> Iterator[str]:
    for copy, mass in zip(plan.copies, ballast_of(plan.copies), strict=True):
        for held in holders(copy.book.shape.holding, plan.units, voice):
            yield voice.say("{piece}: {held}", piece=copy.name, held=held)
        if not mass:
            continue
        yield voice.say(
            "{piece}: {mass}, {water} L of water or {sand} L of dry sand, {where}",
            piece=copy.name,
            mass=mass_words(mass, voice, len(copy.book.examination.wind.ballast_at)),
            water=water_l(mass),
            sand=sand_l(mass, copy.book.constants),
            where=_on(copy, voice),
        )
    yield voice.say("soft ties or webbing, no wire")


def _on(copy: Copy, voice: Voice) -> str:
    places = copy.book.examination.wind.ballast_at
    if len(places) == 1:
        return voice.say("at joint {joint}", joint=places[0])
    return voice.say("the same on each of {number} joints on the floor", number=len(places))


def load_rows(plan: EventPlan, load: Load, voice: Voice) -> list[list[Cell]]:
    """The load list as rows of a table, the head first: boxes by vehicle (none where no vehicles
    are named or no place was found), then what is taken for all pieces."""
    head: list[Cell] = [
        voice.say_in("column", "vehicle"),
        voice.say_in("column", "piece"),
        voice.say_in("column", "part"),
        voice.say_in("column", "what"),
        voice.say_in("column", "boxes"),
        voice.say_in("column", "balloons"),
        voice.say_in("column", "litres"),
        voice.say_in("column", "kg"),
    ]
    placed = [
        (vehicle.name if trip == 1 else f"{vehicle.name} ({trip})", load.aboard(number, trip))
        for trip in range(1, load.trips + 1)
        for number, vehicle in enumerate(load.vehicles)
    ]
    rows = [
        _row(plan, load.items[number], vehicle, count, voice)
        for vehicle, boxes in [*placed, ("", load.left)]
        for number, count in by_item(boxes).items()
    ]
    for title, lines in shared_lists(plan, voice):
        rows += [["", "", title, line, None, None, None, None] for line in lines]
    return [head, *rows]


def _row(plan: EventPlan, item: Item, vehicle: str, boxes: int, voice: Voice) -> list[Cell]:
    name = "" if item.piece is None else plan.copies[item.piece].name
    share = boxes / len(item.boxes)
    litres = round(1000 * fsum(box.volume_m3 for box in item.boxes) * share)
    what, part, balloons = "", voice.say("Tools"), None
    if item.bag is not None:
        part, balloons = voice.say("Bags"), round(item.bag.balloons * share)
        what = voice.say("{name}: {words}", name=item.bag.label, words=item.bag.holds)
    elif item.kind is LoadKind.BALLAST:
        part = voice.say("Ballast")
    elif item.piece is not None:
        part = voice.say("Whole")
        balloons = plan.copies[item.piece].book.facts.total
    return [vehicle, name, part, what, boxes, balloons, litres, round(item.mass_kg * share, 1)]
