"""The joint map of a tube in words, for those who cannot see it."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.drawing.map_layout import Strip, TubePlan


def map_words(plan: TubePlan, strips: Sequence[Strip], sheet: int, sheets: int) -> str:
    """What a sheet shows: the long chains, and what each brace ties."""
    framework = plan.framework
    chains = ", ".join(
        f"{chain.letter} ({chain.place}, {len(chain.chain.links)} balloons)"
        for chain in framework.chains
    )
    parts = [f"Joint map, sheet {sheet} of {sheets}. Long chains: {chains}."]
    for strip in strips:
        parts += [brace_words(plan, section) for section in range(strip.first, strip.last)]
    last = strips[-1].last
    if last < len(framework.cells):
        parts.append(f"Goes on at brace {plan.brace_number(last)}.")
    elif framework.closed:
        parts.append(f"Then comes brace {plan.brace_number(last)} again.")
    else:
        parts.append(brace_words(plan, last))
    return " ".join(parts)


def brace_words(plan: TubePlan, section: int) -> str:
    """What the brace at a section ties, and which joints are skipped after it."""
    framework = plan.framework
    brace = framework.braces[section]
    words = f"Brace {brace.number} ties {', '.join(brace.section)}"
    if brace.shared:
        words += f", sharing {', '.join(brace.shared)}"
    words += "."
    skipped = framework.cells[section].skipped if section < len(framework.cells) else ()
    if skipped:
        words += f" Skipped: {', '.join(skipped)}."
    singles = [id_ for id_ in framework.singles if framework.link[id_].start in skipped]
    if singles:
        words += f" Singles: {', '.join(singles)}."
    return words
