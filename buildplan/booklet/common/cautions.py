"""The words of caution, each with where it comes from."""

from __future__ import annotations

from dataclasses import dataclass

from reportlab.platypus import Flowable

from buildplan.document.blocks import Words
from buildplan.document.layout import Boxed, beside
from buildplan.document.paper import Paper
from buildplan.document.text import HEADING, plain, strong
from buildplan.language.messages import mark
from buildplan.language.voice import ENGLISH, Voice

# 16 CFR 1500.19(b)(2), the statement for latex balloons (United States); punctuation and
# line layout of the printed rule from memory. 15 U.S.C. 1278(b)(1) asks for it on
# descriptive material that goes with the balloons as well.
CHOKING_HAZARD = mark("WARNING: CHOKING HAZARD")
CHOKING_WORDS = (
    mark(
        "Children under 8 yrs. can choke or suffocate on uninflated or broken balloons. "
        "Adult supervision required."
    ),
    mark("Keep uninflated balloons from children. Discard broken balloons at once."),
)

# European Commission clarification of Directive 2009/48/EC (toy safety), latex balloons.
# It is given in every language of the Union; the Spanish from memory.
CHOKING_EUROPE = mark(
    "Warning! Children under eight years can choke or suffocate on uninflated or broken "
    "balloons. Adult supervision required. Keep uninflated balloons from children. "
    "Discard broken balloons at once."
)

# 21 CFR 801.437 (62 FR 51021), written for medical devices; model wording here.
LATEX_WORDS = mark(
    "Caution: This Product Contains Natural Rubber Latex Which May Cause Allergic Reactions."
)


# Such that the hazard stands on one line on both sides.
OWN_SHARE, OWN_PAD = 0.548, 5.0


def choking_box(paper: Paper, voice: Voice) -> Boxed:
    """The box of the regulation: signal word and hazard in capitals, words below. In another
    language the words that Europe has for it stand beside."""
    said = [Words(strong(voice.say(CHOKING_HAZARD)), HEADING)]
    if voice.language == ENGLISH:
        return Boxed((*said, *(Words(strong(voice.say(words))) for words in CHOKING_WORDS)))
    said.append(Words(strong(voice.say(CHOKING_EUROPE))))
    own = [Words(strong(CHOKING_HAZARD), HEADING), *(Words(strong(w)) for w in CHOKING_WORDS)]
    return Boxed(beside(paper, said, own, OWN_SHARE), OWN_PAD)


def choking_blocks(paper: Paper, voice: Voice) -> list[Flowable]:
    """The words of both regulations: the box, and Europe's below unless they stand in it."""
    europe = Words(plain(voice.say(CHOKING_EUROPE)), after=6)
    below = [europe] if voice.language == ENGLISH else []
    return [choking_box(paper, voice), *below]


@dataclass(frozen=True)
class Caution:
    """A caution of our own, to be said. Signal words after ANSI Z535.4: WARNING could result in
    death or serious injury, CAUTION in minor or moderate injury, NOTICE is about property."""

    signal: str
    topic: str
    words: str


CAUTIONS: tuple[Caution, ...] = (
    Caution(
        mark("WARNING"),
        mark("Exits and ways"),
        mark(
            "Never block an exit, a stair, an extinguisher or a wheelchair way. Follow the venue "
            "and the local fire code."
        ),
    ),
    Caution(
        mark("WARNING"),
        mark("Electricity"),
        mark(
            "Keep away from overhead lines, open sockets and hot lamps. Wiring is for a licensed "
            "electrician."
        ),
    ),
    Caution(
        mark("WARNING"),
        mark("Ladders"),
        mark(
            "Use one only on firm, level ground, with someone holding it, and as local rules for "
            "work at height say."
        ),
    ),
    Caution(
        mark("WARNING"),
        mark("Wind"),
        mark(
            "The piece is a sail. Keep it indoors unless someone competent has checked ballast and "
            "ties; keep people clear, and take it down when the wind rises."
        ),
    ),
    Caution(
        mark("CAUTION"),
        mark("Eyes and ears"),
        mark(
            "Balloons burst. Wear safety glasses, keep your face away, protect your ears beside "
            "a loud inflator."
        ),
    ),
    Caution(
        mark("CAUTION"),
        mark("Lifting"),
        mark(
            "Lift, turn and carry with as many people as this booklet asks for, never alone. Clear "
            "the floor first."
        ),
    ),
    Caution(
        mark("CAUTION"),
        mark("Air only"),
        mark("No helium or other gas; never breathe gas from a balloon."),
    ),
    Caution(
        mark("NOTICE"),
        mark("Heat, sun and sharp things"),
        mark(
            "Heat makes balloons grow and burst; sun dulls them. Clear the floor of grit and "
            "staples. Keep animals away from broken pieces."
        ),
    ),
)
