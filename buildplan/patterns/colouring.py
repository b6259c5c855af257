"""Colour patterns laid on a framework: the balloons of its links, whatever pattern made it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from buildplan.framework.model import Framework
from buildplan.patterns.build import Build
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.patterns.colour_patterns import lay_colours
from buildplan.patterns.pattern import Uncoloured
from buildplan.patterns.registry import pattern_of


def coloured(
    framework: Framework, build: Build, patterns: Mapping[ColouredPart, ColourOrder]
) -> Framework:
    """The framework with the balloons that `patterns` lay along its parts. A chain's own pattern
    goes before that of all long chains. The design must have been checked."""
    if not patterns:
        return framework
    pattern, given = pattern_of(build)
    if isinstance(pattern.colours, Uncoloured):
        return framework
    keys: dict[str, str] = {}
    # what is told of one chain comes after what is told of all, and stands
    for part, order in sorted(patterns.items(), key=lambda item: len(item[0]) == 1):
        for run in pattern.colours.runs(framework, given, part):
            laid = lay_colours(order, run.places, run.length, run.closed)
            for ids, key in zip(run.links, laid, strict=True):
                keys.update(dict.fromkeys(ids, key))
    parts = (replace(one, framework=_recoloured(one.framework, keys)) for one in framework.parts)
    return replace(_recoloured(framework, keys), parts=tuple(parts))


def _recoloured(framework: Framework, keys: Mapping[str, str]) -> Framework:
    """The framework with other balloons for some of its links, by their ids."""
    links = (
        link if keys.get(link.id, link.balloon) == link.balloon
        else replace(link, balloon=keys[link.id])
        for link in framework.links
    )  # fmt: skip
    return replace(framework, links=tuple(links))
