"""What `check` says to a person: counts, measures and problems. How the piece stands is said by
`standing_report`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from buildplan.design.measures import Units, gauged_words, length_words, nominal_words, size_words
from buildplan.evaluation.evaluating import Evaluation
from buildplan.evaluation.facts import Facts
from buildplan.evaluation.passing import Door, ways
from buildplan.evaluation.passing_words import opening_caution, opening_words, way_lines
from buildplan.fitting.mending import Stiffer
from buildplan.fitting.standing_report import Row, standing_rows
from buildplan.framework.model import Framework
from buildplan.language.messages import mark
from buildplan.language.voice import Voice
from buildplan.shape.calibration import RingCheck, at_gauge_step, at_warmth, ring_checks
from buildplan.shape.carrying import walk_through
from buildplan.source.problems import in_words
from buildplan.source.runs import chains_in_runs

# A quarter inch or half a centimetre: the finest step of a gauge.
GAUGE_STEP_M = {"in": 0.00635, "cm": 0.005}
COOL_CELSIUS, WARM_CELSIUS = 20.0, 30.0
NAME_WIDTH = 12
MOST_NAMED = 8  # chains that are named one by one
# a ring, or several of one size; as it was measured, or as it is estimated
_RING = {
    (False, True): mark("ring {rings}, laid round on the floor, is {length} across its outside"),
    (False, False): mark(
        "ring {rings}, laid round on the floor, is {length} across its outside "
        "({low} to {high}, estimate)"
    ),
    (True, True): mark(
        "rings {rings}, each laid round on the floor, are {length} across their outside"
    ),
    (True, False): mark(
        "rings {rings}, each laid round on the floor, are {length} across their outside "
        "({low} to {high}, estimate)"
    ),
}


def check_report(
    piece: Evaluation,
    voice: Voice,
    height: Sequence[str] = (),
    doors: Sequence[Door] = (),
    stiffer: Stiffer | None = None,
) -> str:
    """The figures of a piece in plain words and the reader's units, problems last; `height` is
    what is said of how high it will stand, `doors` are those that it has to go through,
    `stiffer` is what was tried that stiffens it."""
    facts = piece.facts
    lines = [facts.name, "", *_lines(_counts(facts, piece.units, voice)), ""]
    lines += [*_lines(standing_rows(piece, height, voice, stiffer))]
    lines += [*_lines(_passing(piece, doors, voice)), ""]
    lines += [*_lines(_measuring(piece, voice)), ""]
    cautions = piece.examination.cautions
    if cautions:
        lines.append(voice.say("Take note:"))
        lines += [*(f"- {in_words(caution, voice)}" for caution in cautions), ""]
    if facts.problems:
        lines.append(voice.say("Problems:"))
        lines += [f"- {in_words(problem, voice)}" for problem in facts.problems]
    else:
        lines.append(voice.say("No problems found."))
    return "\n".join(lines)


def _lines(rows: Iterator[Row]) -> Iterator[str]:
    return (f"{name:<{NAME_WIDTH - 1}} {words}" for name, words in rows)


def _counts(facts: Facts, units: Units, voice: Voice) -> Iterator[Row]:
    yield voice.say("Balloons"), voice.whole(facts.total)
    yield from _balloons(facts, units, voice)
    if facts.rings:
        rings = ", ".join(voice.whole(count) for count in facts.rings)
        words = voice.say("{count}, of {balloons} balloons", count=len(facts.rings), balloons=rings)
        yield voice.say("Rings"), _by_length(facts.rings, voice) or words
    chains = {letter: n for letter, n in facts.chains.items() if letter not in facts.closed}
    if chains:
        named = ", ".join(f"{letter} {voice.whole(count)}" for letter, count in chains.items())
        words = voice.say("{chains} balloons", chains=named)
        yield voice.say("Chains"), _by_length([*chains.values()], voice) or words
    yield voice.say("Joints"), voice.whole(facts.joints)
    words = voice.say(
        "{braces}, singles {singles}, locks {locks} ({rounds} rounds)",
        braces=facts.braces,
        singles=facts.singles,
        locks=facts.locks,
        rounds=2 * facts.locks,
    )
    yield voice.say("Braces"), words


def _by_length(counts: Sequence[int], voice: Voice) -> str:
    """Chains that are too many to be named one by one: how many there are of each length."""
    if len(counts) <= MOST_NAMED:
        return ""
    groups = [
        voice.say("{number} of {balloons}", number=number, balloons=balloons)
        for balloons, number in sorted(Counter(counts).items(), reverse=True)
    ]
    return voice.say("{count}: {groups} balloons", count=len(counts), groups=voice.listed(groups))


def _passing(piece: Evaluation, doors: Sequence[Door], voice: Voice) -> Iterator[Row]:
    """What goes through the piece, and what the piece goes through."""
    units = piece.units
    opening = walk_through(piece.framework, piece.shape)
    if opening is not None:
        yield voice.say("Way through"), opening_words(opening, units, voice)
        caution = opening_caution(opening, units, voice)
        yield from [("", caution)] if caution else []
    for number, line in enumerate(way_lines(ways(piece, doors), units, voice)):
        yield "" if number else voice.say("Doors"), line


def _balloons(facts: Facts, units: Units, voice: Voice) -> Iterator[Row]:
    """How many of each balloon there are."""
    for key, words in balloon_rows(facts, units, voice):
        yield f"{voice.whole(facts.counts[key]):>{NAME_WIDTH - 2}}", words


def balloon_rows(facts: Facts, units: Units, voice: Voice) -> Iterator[Row]:
    """Each balloon of a piece by its key: what it is, how large and where its gauge is."""
    for purchase in facts.purchases:
        for balloon in purchase.balloons:
            words = voice.say(
                balloon.kind.words.in_stock,
                colour=balloon.label,
                size=nominal_words(balloon.nominal_m, units),
                gauge=gauged_words(balloon.gauge_m, units),
                key=balloon.key,
            )
            yield balloon.key, words


def _measuring(piece: Evaluation, voice: Voice) -> Iterator[Row]:
    """What can be measured to know the size better, and what changes it."""
    units, tall = piece.units, piece.standing_height_m
    yield from _rings(piece.framework, units, voice)
    warm = at_warmth(tall, COOL_CELSIUS, WARM_CELSIUS)
    words = voice.say(
        "sized at {cool} C and stood at {warm} C it grows by {share} %, to {height} high",
        cool=round(COOL_CELSIUS),
        warm=round(WARM_CELSIUS),
        share=voice.decimal(100 * (warm.factor - 1), 1),
        height=size_words(warm.height_m, units),
    )
    yield voice.say("Warmth"), words
    step = GAUGE_STEP_M[units]
    larger = at_gauge_step(piece.framework, tall, step)
    words = voice.say(
        "sized {step} larger it is {height} high",
        step=length_words(step, units),
        height=size_words(larger.height_m, units),
    )
    yield voice.say("Gauge"), words


def _rings(framework: Framework, units: Units, voice: Voice) -> Iterator[Row]:
    alike: dict[tuple[float, float, float], list[RingCheck]] = {}
    for ring in ring_checks(framework):
        alike.setdefault((ring.outside_m, ring.low_m, ring.high_m), []).append(ring)
    for (outside_m, low_m, high_m), rings in alike.items():
        words = voice.say(
            _RING[len(rings) > 1, rings[0].measured],
            rings=voice.tell(chains_in_runs([ring.chain for ring in rings])),
            length=size_words(outside_m, units),
            low=size_words(low_m, units),
            high=size_words(high_m, units),
        )
        yield voice.say("Measure"), words
