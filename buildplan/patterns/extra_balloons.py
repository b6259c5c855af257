"""Balloons more (`extra`) of any pattern that does not tie them itself: tied, and checked."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from pydantic import ValidationError

from buildplan.framework.extras import joined_pairs, with_extras
from buildplan.framework.model import Framework
from buildplan.patterns.extra_keys import check_extras, extra_links
from buildplan.patterns.palette import balloon_type
from buildplan.patterns.pattern import Given, Making, Pattern, Whole
from buildplan.patterns.pattern_joints import first_to_last
from buildplan.source.mistake import Mistake

EXTRA = "extra"


def with_own_extras(framework: Framework, pattern: Pattern[Any], keys: Any) -> Framework:
    """The framework that a pattern made of `keys`, with the balloons more that these list."""
    if not pattern.extra_as:
        return framework
    usual = getattr(keys, pattern.extra_as, None) or next(iter(framework.links)).balloon
    return with_extras(framework, extra_links(keys.extra, usual), keys.lock)


def check_own_extras(pattern: Pattern[Any], given: Given, whole: Whole) -> Iterator[Mistake]:
    """What is wrong with the balloons more of a pattern whose other keys are right; nothing is
    said where these are not."""
    if not pattern.extra_as or not given.get(EXTRA):
        return
    try:
        keys = pattern.keys.model_validate({**given, EXTRA: []})
        palette = {
            key: balloon_type(key, one.part, 1.0)
            for key, one in whole.balloons.items()
            if not one.wrong
        }
        plain = pattern.build(keys, Making("", palette, 1.0, _no_part))
    except (ValidationError, KeyError):
        return  # said of the key that is wrong
    words = first_to_last(list(plain.joints)).words
    at = ("build", pattern.name, EXTRA)
    yield from check_extras(at, given[EXTRA], plain.joints, words, joined_pairs(plain))


def _no_part(*_: object) -> Framework:
    raise KeyError("a pattern with balloons more of its own has no parts that are pieces")
