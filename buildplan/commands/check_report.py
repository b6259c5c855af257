"""What `check` says to a person."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from buildplan.design.measures import Units, length_words, size_words
from buildplan.evaluation.evaluating import Evaluation
from buildplan.evaluation.facts import Facts
from buildplan.evaluation.figures import (
    air_words,
    estimate_words,
    minutes_words,
    weight_words,
    wind_words,
)
from buildplan.framework.model import Framework
from buildplan.instructions.model import StepWords
from buildplan.instructions.stages import stage_name
from buildplan.language.grammar import decimal, listed
from buildplan.language.speaking import mark, say, say_in, spoken_voice, whole
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step
from buildplan.shape.calibration import RingCheck, at_gauge_step, at_warmth, ring_checks
from buildplan.shape.constants import constants_with
from buildplan.shape.holding import conditions
from buildplan.shape.model import Shape
from buildplan.shape.stiffness import stiffening_brace
from buildplan.source.problems import in_words

# A quarter inch or half a centimetre: the finest step of a gauge.
GAUGE_STEP_M = {"in": 0.00635, "cm": 0.005}
COOL_CELSIUS, WARM_CELSIUS = 20.0, 30.0
NAME_WIDTH = 12
MOST_CARRIED_KG = 25.0  # what one person lifts at most; common practice, no source


def check_report(piece: Evaluation, height: Sequence[str] = ()) -> str:
    """The figures of a piece in plain words and the reader's units, problems last; `height` is
    what is said of how high it will stand."""
    facts = piece.facts
    lines = [facts.name, "", *_counts(facts), "", *_shape(piece, height), ""]
    lines += [*_measuring(piece.framework, piece.shape, facts.units), ""]
    if piece.examination.cautions:
        lines.append(say("Take note:"))
        lines += [
            f"- {in_words(caution, spoken_voice())}" for caution in piece.examination.cautions
        ]
        lines.append("")
    if facts.problems:
        lines.append(say("Problems:"))
        lines += [f"- {in_words(problem, spoken_voice())}" for problem in facts.problems]
    else:
        lines.append(say("No problems found."))
    return "\n".join(lines)


def _line(name: str, words: str) -> str:
    return f"{name:<{NAME_WIDTH}}{words}"


def _counts(facts: Facts) -> Iterator[str]:
    yield _line(say("Balloons"), whole(facts.total))
    for purchase in facts.purchases:
        for balloon in purchase.balloons:
            nominal = length_words(balloon.nominal_m, facts.units)
            gauge = length_words(balloon.gauge_m, facts.units)
            yield _line(
                f"{whole(facts.counts[balloon.key]):>{NAME_WIDTH - 2}}",
                say(
                    balloon.kind.words.in_stock,
                    colour=balloon.label,
                    size=nominal,
                    gauge=gauge,
                    key=balloon.key,
                ),
            )
    if facts.rings:
        rings = ", ".join(whole(count) for count in facts.rings)
        words = say("{count}, of {balloons} balloons", count=len(facts.rings), balloons=rings)
        yield _line(say("Rings"), words)
    open_chains = {
        letter: count for letter, count in facts.chains.items() if letter not in facts.closed
    }
    if open_chains:
        chains = ", ".join(f"{letter} {whole(count)}" for letter, count in open_chains.items())
        yield _line(say("Chains"), say("{chains} balloons", chains=chains))
    yield _line(say("Joints"), whole(facts.joints))
    yield _line(
        say("Braces"),
        say(
            "{braces}, singles {singles}, locks {locks} ({rounds} rounds)",
            braces=facts.braces,
            singles=facts.singles,
            locks=facts.locks,
            rounds=2 * facts.locks,
        ),
    )


def _shape(piece: Evaluation, height: Sequence[str]) -> Iterator[str]:
    facts, examination = piece.facts, piece.examination
    wind, stiffness = examination.wind, examination.stiffness
    size = " x ".join(
        spoken_voice().tell(size_words(length, facts.units))
        for length in (facts.width_m, facts.height_m, facts.depth_m)
    )
    yield _line(
        say_in("how large", "Size"), say("{size} (width x height x depth, estimate)", size=size)
    )
    for number, words in enumerate(height):
        yield _line("" if number else say("Height"), words)
    weight = say("{weight} (estimate)", weight=weight_words(facts.mass_kg, spoken_voice()))
    yield _line(say("Weight"), weight)
    closes = say_in("does it close", "no")
    if facts.closes:
        closes = say("yes") if facts.rings else say("nothing to close: the chains are open")
    yield _line(say("Closes"), closes)
    lean = estimate_words(examination.tip_angle, 1, say("degrees"), spoken_voice())
    feet = ", ".join(piece.shape.standing.feet)
    stands = say_in("does it stand", "no")
    if facts.stands and piece.shape.standing.stands:
        stands = say(
            "yes, on {joints}; goes over when it leans {angle} (estimate)", joints=feet, angle=lean
        )
    held = [spoken_voice().tell(one) for one in conditions(piece.shape.holding)]
    if facts.stands and held and not piece.shape.standing.stands:
        stands = say("not by itself")
    yield _line(say("Stands"), stands)
    for number, words in enumerate(held):
        yield _line("" if number else say("Held"), words)
    tips = wind_words(wind.tips_at.value, facts.units, spoken_voice())
    yield _line(
        say("Wind"),
        say("a gust of {speed} tips it when nothing holds it down (estimate)", speed=tips),
    )
    if wind.ballast is not None and wind.gust_m_per_s is not None:
        gust = wind_words(wind.gust_m_per_s, facts.units, spoken_voice())
        carried = wind.ballast.value <= MOST_CARRIED_KG
        message = (
            mark("{weight} on its foot hold {speed} (estimate)")
            if carried
            else mark(
                "its foot is too small to be held by weight alone at {speed}: fix it to a wall, or "
                "to a base that reaches {reach} out and weighs {base} (estimate)"
            )
        )
        reach_m = _reach_with_m(piece, MOST_CARRIED_KG)
        words = say(
            message,
            weight=weight_words(wind.ballast.value, spoken_voice()),
            speed=gust,
            reach=size_words(reach_m, facts.units),
            base=weight_words(MOST_CARRIED_KG, spoken_voice()),
        )
        yield _line(say("Ballast"), words)
    sag = examination.sag
    yield _line(
        say("Sags"),
        say(
            "{length} at the top under its own weight ({low} to {high}, estimate)",
            length=length_words(sag.value, facts.units),
            low=length_words(sag.low, facts.units),
            high=length_words(sag.high, facts.units),
        ),
    )
    yield _line(
        say("Stiffness"),
        say(
            "{bare} loose movements of the bare links; {crowded} left when the balloons crowd, "
            "{locked} with the locks",
            bare=facts.mechanisms,
            crowded=stiffness.folds,
            locked=stiffness.folds_locked,
        ),
    )
    yield _line("", say("it gives most at {joints}", joints=", ".join(stiffness.locked.joints)))
    extra = stiffening_brace(piece.framework, piece.shape, constants_with(piece.design.constants))
    if extra is not None and extra.gain is not None:
        first, second = extra.joints
        yield _line(
            "",
            say(
                "one more balloon between {first} and {second} would stiffen it by {gain} %",
                first=first,
                second=second,
                gain=decimal(100 * (extra.gain - 1), 0),
            ),
        )
    yield _line(
        say("Work"),
        say(
            "{work} in all, {time} for {people} people (estimate)",
            work=minutes_words(facts.work_minutes, spoken_voice()),
            time=minutes_words(facts.crew_minutes, spoken_voice()),
            people=facts.crew,
        ),
    )
    air = air_words(facts.air_m3, facts.pump_minutes, facts.units, spoken_voice())
    yield _line(say("Air"), say("{air} (estimate)", air=air))


def _reach_with_m(piece: Evaluation, base_kg: float) -> float:
    """How far a base of that weight has to reach out from below the middle of the piece, in metres,
    to hold the gust that was asked for: the moment of the wind is that of both weights."""
    reach, own = piece.examination.wind.reach, piece.examination.mass.value
    return 0.0 if reach is None else reach.value * own / (own + base_kg)


def _measuring(framework: Framework, shape: Shape, units: Units) -> Iterator[str]:
    alike: dict[tuple[float, float, float], list[RingCheck]] = {}
    for ring in ring_checks(framework):
        alike.setdefault((ring.outside_m, ring.low_m, ring.high_m), []).append(ring)
    for (outside_m, low_m, high_m), rings in alike.items():
        names = listed([ring.chain for ring in rings])
        message = (
            mark("ring {rings}, laid round on the floor, is {length} across its outside")
            if rings[0].measured
            else mark(
                "ring {rings}, laid round on the floor, is {length} across its outside "
                "({low} to {high}, estimate)"
            )
        )
        words = say(
            message,
            rings=names,
            length=size_words(outside_m, units),
            low=size_words(low_m, units),
            high=size_words(high_m, units),
        )
        yield _line(say("Measure"), words)
    warm = at_warmth(shape, COOL_CELSIUS, WARM_CELSIUS)
    yield _line(
        say("Warmth"),
        say(
            "sized at {cool} C and stood at {warm} C it grows by {share} %, to {height} high",
            cool=round(COOL_CELSIUS),
            warm=round(WARM_CELSIUS),
            share=decimal(100 * (warm.factor - 1), 1),
            height=size_words(warm.height_m, units),
        ),
    )
    step = GAUGE_STEP_M[units]
    larger = at_gauge_step(framework, shape, step)
    yield _line(
        say("Gauge"),
        say(
            "sized {step} larger it is {height} high",
            step=length_words(step, units),
            height=size_words(larger.height_m, units),
        ),
    )


def steps_report(steps: Sequence[Step], words: Sequence[StepWords], voice: Voice) -> str:
    """The steps in order, each with its rows and its check."""
    lines: list[str] = []
    stage = None
    for step, said in zip(steps, words, strict=True):
        if step.stage is not stage:
            stage = step.stage
            lines += ["", stage_name(voice, stage).upper()]
        title = said.title
        if step.times > 1:
            title = voice.say("{step} (x {times})", step=title, times=step.times)
        lines += [f"{step.number:4}. {title}", f"      {said.text}"]
        lines += [f"      - {row}" for row in said.rows]
        lines.append("      " + voice.say("Check: {count}", count=said.check))
    return "\n".join(lines[1:])
