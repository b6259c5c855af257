"""What `check` says to a person."""

from __future__ import annotations

from buildplan.booklet.facts import Facts
from buildplan.booklet.words import minutes_words, weight_words
from buildplan.design.measures import length_words, size_words
from buildplan.design.problems import in_words


def check_report(facts: Facts) -> str:
    """The figures of a piece in plain words and the reader's units, problems last."""
    lines = [facts.name, ""]
    lines.append(f"Balloons    {facts.total}")
    for purchase in facts.purchases:
        balloon = purchase.balloon
        nominal = length_words(balloon.nominal_m, facts.units)
        gauge = length_words(balloon.gauge_m, facts.units)
        lines.append(
            f"  {purchase.needed:6}    {balloon.label} {nominal} {balloon.kind}, sized to "
            f"{gauge} ({balloon.key})"
        )
    if facts.rings:
        rings = ", ".join(str(count) for count in facts.rings)
        lines.append(f"Rings       {len(facts.rings)}, of {rings} balloons")
    else:
        chains = ", ".join(f"{letter} {count}" for letter, count in facts.chains.items())
        lines.append(f"Chains      {chains} balloons")
    lines.append(f"Joints      {facts.joints}")
    lines.append(
        f"Braces      {facts.braces}, singles {facts.singles}, locks {facts.locks} "
        f"({2 * facts.locks} rounds)"
    )
    size = " x ".join(
        size_words(length, facts.units) for length in (facts.width_m, facts.height_m, facts.depth_m)
    )
    lines.append(f"Size        {size} (width x height x depth, estimate)")
    lines.append(f"Weight      {weight_words(facts.mass_kg)} (estimate)")
    lines.append(f"Closes      {'yes' if facts.closes else 'no'}")
    stands = f"yes, tips at {facts.tip_angle_deg:.0f} degrees of lean (estimate)"
    lines.append(f"Stands      {stands if facts.stands else 'no'}")
    lines.append(
        f"Stiffness   {facts.mechanisms} loose movements of the bare links; crowding and locks "
        "hold these"
    )
    lines.append(
        f"Work        {minutes_words(facts.work_minutes)} in all, "
        f"{minutes_words(facts.work_minutes / facts.crew)} for {facts.crew} people (estimate)"
    )
    lines.append("")
    if facts.problems:
        lines.append("Problems:")
        lines += [f"- {in_words(problem)}" for problem in facts.problems]
    else:
        lines.append("No problems found.")
    return "\n".join(lines)
