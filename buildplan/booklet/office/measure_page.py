"""The sheet of what to measure, on paper: a box for each measurement, and how it is taken."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.document.blocks import Items, Shown, Words, heading
from buildplan.document.paper import Paper
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, plain, strong
from buildplan.drawing.marks import Ink, Label, Picture, Polyline
from buildplan.evaluation.evaluating import Evaluation
from buildplan.hands.forecast import MeasuringChoice, candidates
from buildplan.hands.learning import measured
from buildplan.hands.log_cells import METRES
from buildplan.hands.model import ChainOfTen, RingAcross
from buildplan.hands.sheet import work_counts
from buildplan.hands.words import EACH
from buildplan.language.voice import Voice

INK = "#1A1A1A"
BOX_WIDTH, BOX_HEIGHT, TYPE = 66.0, 15.5, 9.0
UNIT_ROOM = 24.0
CLOSE_ROWS = 2.0
BLANK = "____________________"


def print_sheet(piece: Evaluation, log: str, paper: Paper, voice: Voice) -> bytes:
    """The sheet for a piece as a tagged PDF, in the piece's units; `log` is the file that the
    numbers are copied to. The same piece gives the same bytes."""
    title = voice.say("What to measure: {piece}", piece=piece.facts.name)
    section = Section(title, sheet_blocks(piece, log, voice), titled=True)
    return print_document(Document([section], paper, voice, title, foot=piece.facts.name))


def sheet_blocks(piece: Evaluation, log: str, voice: Voice) -> list[Flowable]:
    """Whose hands, the lengths, the times, and what becomes of them."""
    who = voice.say("Built by: {name}   Date: {date}", name=BLANK * 2, date=BLANK)
    return [
        Words(who, after=8),
        heading(voice.say("Lengths")),
        _lengths(piece, voice),
        _how(voice),
        heading(voice.say("Times")),
        _times(piece, voice),
        Words(
            voice.say(
                "Minutes of one pair of hands: for two people who work together write twice the "
                "time. What was not measured stays empty."
            ),
            SMALL,
            after=5,
        ),
        Items(
            (
                plain(
                    voice.say(
                        "Copy the numbers into the last column of {log}, row by row.", log=log
                    )
                ),
                voice.say(
                    "Run {command}: from then on every plan is worked out with your own hands.",
                    command=strong(f"buildplan learn {log}"),
                ),
            ),
            gap=1.0,
            after=0,
        ),
    ]


def _lengths(piece: Evaluation, voice: Voice) -> Grid:
    rows = [
        (
            plain(_what(piece, one, voice)),
            plain(_expected(piece, one, voice)),
            Shown(_box(piece.units, voice), after=0),
        )
        for one in candidates(piece)
    ]
    head = (
        voice.say("What"),
        voice.say_in("what is expected to be measured", "Expected"),
        voice.say("Measured"),
    )
    return Grid(head, rows, (260, 90, 110), pad=CLOSE_ROWS, after=4)


def _what(piece: Evaluation, one: MeasuringChoice, voice: Voice) -> str:
    match one.measurement:
        case ChainOfTen():
            label = piece.framework.balloons[one.which].label
            return voice.say("Chain of ten {colour} links", colour=label)
        case RingAcross():
            return voice.say("Ring {ring}, across its outside", ring=one.which)
        case _:
            return voice.say("Height of the finished piece, as it stands")


def _expected(piece: Evaluation, one: MeasuringChoice, voice: Voice) -> str:
    length = measured(one.measurement) / METRES[piece.units]
    return f"{voice.decimal(length, 1)} {piece.units}"


def _times(piece: Evaluation, voice: Voice) -> Grid:
    rows = [
        (
            plain(voice.tell(EACH[kind])),
            voice.whole(count),
            Shown(_box("", voice), after=0),
            Shown(_box("min", voice), after=0),
        )
        for kind, count in work_counts(piece).items()
    ]
    head = (
        voice.say("Work"),
        voice.say("In the piece"),
        voice.say_in("how many were timed", "Timed"),
        voice.say("They took"),
    )
    return Grid(head, rows, (210, 80, 95, 95), pad=1.0, after=4)


def _box(unit: str, voice: Voice) -> Picture:
    """A box to write a number in, and its unit beside it."""
    corners = ((0.5, 0.5), (BOX_WIDTH, 0.5), (BOX_WIDTH, BOX_HEIGHT), (0.5, BOX_HEIGHT))
    box = Polyline(corners, Ink(stroke=INK, width=0.8), closed=True)
    said = Label((BOX_WIDTH + 5, 4.5), unit, TYPE, INK, anchor="start")
    alt = voice.say("box to write in, {unit}", unit=unit) if unit else voice.say("box to write in")
    return Picture(BOX_WIDTH + UNIT_ROOM, BOX_HEIGHT + 0.5, (box, said) if unit else (box,), alt)


def _how(voice: Voice) -> Items:
    return Items(
        (
            voice.say(
                "{what}: ten links of one colour and size, tied end to end, laid straight and not "
                "pulled; from the first knot to the last.",
                what=strong(voice.say_in("what is measured", "Chain")),
            ),
            voice.say(
                "{what}: laid round on the floor before it is braced; over its balloons, across "
                "the middle, twice crosswise, and the mean of both.",
                what=strong(voice.say_in("what is measured", "Ring")),
            ),
            voice.say(
                "{what}: once it stands; from the floor to the top of the highest balloon.",
                what=strong(voice.say("Height")),
            ),
            voice.say("Measure indoors, soon after sizing: air grows in the warm."),
        ),
        gap=1.0,
        after=6,
    )
