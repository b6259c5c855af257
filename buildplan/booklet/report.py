"""What `check` says to a person."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from buildplan.booklet.book import Book
from buildplan.booklet.facts import Facts
from buildplan.booklet.words import (
    air_words,
    estimate_words,
    minutes_words,
    speed_words,
    weight_words,
)
from buildplan.design.measures import Units, length_words, size_words
from buildplan.design.problems import in_words
from buildplan.framework.model import Framework
from buildplan.language.grammar import listed
from buildplan.sequence.model import Step
from buildplan.shape.calibration import RingCheck, at_gauge_step, at_warmth, ring_checks
from buildplan.shape.model import Shape

# A quarter inch or half a centimetre: the finest step of a gauge.
GAUGE_STEP_M = {"in": 0.00635, "cm": 0.005}
COOL_CELSIUS, WARM_CELSIUS = 20.0, 30.0
NAME_WIDTH = 12


def check_report(book: Book) -> str:
    """The figures of a piece in plain words and the reader's units, problems last."""
    facts = book.facts
    lines = [facts.name, "", *_counts(facts), "", *_shape(book), ""]
    lines += [*_measuring(book.framework, book.shape, facts.units), ""]
    if book.examination.cautions:
        lines.append("Take note:")
        lines += [f"- {in_words(caution)}" for caution in book.examination.cautions]
        lines.append("")
    if facts.problems:
        lines.append("Problems:")
        lines += [f"- {in_words(problem)}" for problem in facts.problems]
    else:
        lines.append("No problems found.")
    return "\n".join(lines)


def _line(name: str, words: str) -> str:
    return f"{name:<{NAME_WIDTH}}{words}"


def _counts(facts: Facts) -> Iterator[str]:
    yield _line("Balloons", str(facts.total))
    for purchase in facts.purchases:
        for balloon in purchase.balloons:
            nominal = length_words(balloon.nominal_m, facts.units)
            gauge = length_words(balloon.gauge_m, facts.units)
            yield _line(
                f"{facts.counts[balloon.key]:>{NAME_WIDTH - 2}}",
                f"{balloon.label} {nominal} {balloon.kind}, sized to {gauge} ({balloon.key})",
            )
    if facts.rings:
        rings = ", ".join(str(count) for count in facts.rings)
        yield _line("Rings", f"{len(facts.rings)}, of {rings} balloons")
    open_chains = {
        letter: count for letter, count in facts.chains.items() if letter not in facts.closed
    }
    if open_chains:
        chains = ", ".join(f"{letter} {count}" for letter, count in open_chains.items())
        yield _line("Chains", f"{chains} balloons")
    yield _line("Joints", str(facts.joints))
    yield _line(
        "Braces",
        f"{facts.braces}, singles {facts.singles}, locks {facts.locks} ({2 * facts.locks} rounds)",
    )


def _shape(book: Book) -> Iterator[str]:
    facts, examination = book.facts, book.examination
    wind, stiffness = examination.wind, examination.stiffness
    size = " x ".join(
        size_words(length, facts.units) for length in (facts.width_m, facts.height_m, facts.depth_m)
    )
    yield _line("Size", f"{size} (width x height x depth, estimate)")
    yield _line("Weight", f"{weight_words(facts.mass_kg)} (estimate)")
    if facts.rings:
        yield _line("Closes", "yes" if facts.closes else "no")
    else:
        yield _line("Closes", "nothing to close: the chains are open" if facts.closes else "no")
    lean = estimate_words(examination.tip_angle, 1, "degrees")
    feet = ", ".join(book.shape.standing.feet)
    yield _line(
        "Stands",
        f"yes, on {feet}; goes over when it leans {lean} (estimate)" if facts.stands else "no",
    )
    tips = speed_words(wind.tips_at.value, facts.units)
    yield _line("Wind", f"a gust of {tips} tips it when nothing holds it down (estimate)")
    if wind.ballast is not None and wind.gust_m_per_s is not None:
        gust = speed_words(wind.gust_m_per_s, facts.units)
        yield _line(
            "Ballast",
            f"{weight_words(wind.ballast.value)} on its foot hold {gust} (estimate)",
        )
    sag = examination.sag
    yield _line(
        "Sags",
        f"{length_words(sag.value, facts.units)} at the top under its own weight "
        f"({length_words(sag.low, facts.units)} to {length_words(sag.high, facts.units)}, "
        "estimate)",
    )
    yield _line(
        "Stiffness",
        f"{facts.mechanisms} loose movements of the bare links; "
        f"{stiffness.folds} left when the balloons crowd, {stiffness.folds_locked} with the locks",
    )
    yield _line("", f"it gives most at {', '.join(stiffness.locked.joints)}")
    if stiffness.extra is not None and stiffness.extra.gain is not None:
        first, second = stiffness.extra.joints
        yield _line(
            "",
            f"one more balloon between {first} and {second} would stiffen it by "
            f"{100 * (stiffness.extra.gain - 1):.0f} %",
        )
    yield _line(
        "Work",
        f"{minutes_words(facts.work_minutes)} in all, "
        f"{minutes_words(facts.crew_minutes)} for {facts.crew} people (estimate)",
    )
    yield _line("Air", f"{air_words(facts.air_m3, facts.pump_minutes, facts.units)} (estimate)")


def _measuring(framework: Framework, shape: Shape, units: Units) -> Iterator[str]:
    alike: dict[tuple[float, float, float], list[RingCheck]] = {}
    for ring in ring_checks(framework):
        alike.setdefault((ring.outside_m, ring.low_m, ring.high_m), []).append(ring)
    for (outside_m, low_m, high_m), rings in alike.items():
        names = listed([ring.chain for ring in rings])
        words = (
            f"ring {names}, laid round on the floor, is {size_words(outside_m, units)} across "
            "its outside"
        )
        bounds = f"{size_words(low_m, units)} to {size_words(high_m, units)}"
        yield _line("Measure", words if rings[0].measured else f"{words} ({bounds}, estimate)")
    warm = at_warmth(shape, COOL_CELSIUS, WARM_CELSIUS)
    yield _line(
        "Warmth",
        f"sized at {COOL_CELSIUS:.0f} C and stood at {WARM_CELSIUS:.0f} C it grows by "
        f"{100 * (warm.factor - 1):.1f} %, to {size_words(warm.height_m, units)} high",
    )
    step = GAUGE_STEP_M[units]
    larger = at_gauge_step(framework, shape, step)
    yield _line(
        "Gauge",
        f"sized {length_words(step, units)} larger it is {size_words(larger.height_m, units)} high",
    )


def steps_report(steps: Sequence[Step]) -> str:
    """The steps in order, each with its rows and its check."""
    lines: list[str] = []
    stage = None
    for step in steps:
        if step.stage is not stage:
            stage = step.stage
            lines += ["", stage.value.upper()]
        times = f" (x {step.times})" if step.times > 1 else ""
        lines += [f"{step.number:4}. {step.title}{times}", f"      {step.text}"]
        lines += [f"      - {row}" for row in step.rows]
        lines.append(f"      Check: {step.check}")
    return "\n".join(lines[1:])
