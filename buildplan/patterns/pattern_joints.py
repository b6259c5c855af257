"""The labels of joints as they are told."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.messages import Message, message
from buildplan.patterns.pattern import Joints


def first_to_last(labels: Sequence[str]) -> Joints:
    """Joints that are told by the first and the last of them."""
    return Joints(labels, run_words(labels[0], labels[-1]))


def run_words(first: str, last: str) -> Message:
    """A run of joints: `A1 to A12`."""
    return message("{first} to {last}", first=first, last=last)
