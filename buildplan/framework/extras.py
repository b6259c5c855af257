"""Balloons more, between joints that a design names one by one: in a piece of any pattern."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from buildplan.framework.ends import start_end
from buildplan.framework.locks import Lock
from buildplan.framework.model import Framework, Link, Part, Role

ExtraLink = tuple[str, str, str]
"""Two joints, and the key of the balloon between them."""


def with_extras(framework: Framework, extras: Sequence[ExtraLink], lock: str) -> Framework:
    """The framework with further balloons between joints that it has, each a single; joints that
    no lock held are locked. One between joints of a part is part of that part."""
    if not extras:
        return framework
    parts = tuple(_with_own(part, extras, lock) for part in framework.parts)
    made = [Link(f"{a}-{b}", key, Role.SINGLE, a, b, start_end(0)) for a, b, key in extras]
    held = {one.joint for one in framework.locks}
    ends = dict.fromkeys(joint for a, b, _ in extras for joint in (a, b))
    ids = tuple(link.id for link in made)
    return replace(
        framework,
        links=(*framework.links, *made),
        singles=(*framework.singles, *ids),
        extras=framework.extras | frozenset(ids),
        locks=(*framework.locks, *(Lock(joint, lock) for joint in ends if joint not in held)),
        parts=parts,
    )


def _with_own(part: Part, extras: Sequence[ExtraLink], lock: str) -> Part:
    """A part with those balloons more that are between two joints of its own."""
    own = set(part.framework.joints)
    of_it = [one for one in extras if own.issuperset(one[:2])]
    return replace(part, framework=with_extras(part.framework, of_it, lock))


def before_singles(framework: Framework) -> Framework:
    """A framework as it is where its chains have been joined and locked: its singles, and what ties
    its parts to one another, come later."""
    singles = set(framework.singles)
    links = tuple(link for link in framework.links if link.id not in singles)
    return replace(framework, links=links, singles=(), extras=frozenset())


def joined_pairs(framework: Framework) -> set[frozenset[str]]:
    """The pairs of joints that a balloon joins."""
    return {frozenset((link.start, link.finish)) for link in framework.links}
