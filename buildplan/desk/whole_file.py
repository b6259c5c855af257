"""What a control has to know of the rest of its file: the balloons, the unit, the joints."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from buildplan.desk.piece_words import SIZED_TO
from buildplan.language.voice import Voice
from buildplan.patterns.pattern import ANY
from buildplan.patterns.registry import PATTERNS, joints_of, patterns_in
from buildplan.source.mistake import Path
from buildplan.source.partial_validation import mapping_in
from buildplan.source.trade_words import units_in

LINK, ROUND = "link", "round"


@dataclass(frozen=True)
class WholeFile:
    """A design file as plain data, right or wrong, and the voice that its controls speak in."""

    data: Mapping[str, Any]
    voice: Voice

    @property
    def units(self) -> str:
        """The unit of its lengths, as it is written behind a number."""
        return units_in(self.data).get("units", "in")

    @cached_property
    def balloons(self) -> Mapping[str, Mapping[str, Any]]:
        """Its balloons by key."""
        return {key: mapping_in(one) for key, one in mapping_in(self.data.get("balloons")).items()}

    def balloon_label(self, key: str) -> str:
        """What people call a balloon."""
        label = self.balloons.get(key, {}).get("label")
        return label if isinstance(label, str) and label.strip() else key

    def balloon_choices(self, at: Path) -> list[dict[str, str]]:
        """The balloons that can be named at a place, those of one name told apart by their size."""
        wanted = kind_at(at)
        keys = [
            key
            for key, one in self.balloons.items()
            if wanted is None or one.get("kind", wanted) == wanted
        ]
        told = self._told_apart()
        return [{"value": key, "label": told[key]} for key in keys]

    def _told_apart(self) -> Mapping[str, str]:
        """What each balloon is called: by its label; those of one label by their size too, or by
        what they are sized to; and by their key where nothing else tells them apart."""
        told = {key: self.balloon_label(key) for key in self.balloons}
        for further in (self._by_size, self._by_gauge, self._by_key):
            alike = [key for key in told if list(told.values()).count(told[key]) > 1]
            told |= {key: further(key) for key in alike}
        return told

    def _by_size(self, key: str) -> str:
        return f"{self.balloon_label(key)}, {self._length(key, 'nominal')}"

    def _by_gauge(self, key: str) -> str:
        gauge = self._length(key, "inflate_to")
        return self.voice.say(SIZED_TO, label=self.balloon_label(key), gauge=gauge)

    def _by_key(self, key: str) -> str:
        return f"{self.balloon_label(key)} ({key})"

    def _length(self, key: str, of: str) -> str:
        length = self.balloons[key].get(of)
        return f"{length:g} {self.units}" if isinstance(length, int | float) else str(length)

    def coloured_parts(self, at: Path) -> Sequence[str]:
        """The parts that colours can be laid along, of the piece that has its `colour_pattern` at a
        place: the whole, or a part of an assembly."""
        around: Any = self.data
        for step in at[:-1]:
            around = around[step]
        return [
            part
            for pattern, _ in patterns_in(mapping_in(mapping_in(around).get("build")))
            for part in pattern.coloured_parts
        ]

    def first_balloon(self, at: Path, other: bool = False) -> str:
        """A balloon to begin with at a place."""
        keys = [one["value"] for one in self.balloon_choices(at)] or list(self.balloons) or [""]
        return keys[-1] if other else keys[0]

    @cached_property
    def joints(self) -> Sequence[str]:
        """The labels of the piece's joints, none where they cannot be told."""
        found = joints_of(mapping_in(self.data.get("build")))
        return [] if found is None else list(found.labels)


def kind_at(at: Path) -> str | None:
    """The kind of balloon that is named at a place of the file; None where it may be any."""
    if "colour_pattern" in at:
        return LINK
    inner = max((i for i, step in enumerate(at) if step == "build"), default=None)
    if inner is None or len(at) < inner + 3:
        return None
    pattern, rest = PATTERNS.get(str(at[inner + 1])), at[inner + 2 :]
    if pattern is None:
        return None
    for use in pattern.uses:
        if len(use.at) == len(rest) and all(map(_fits, use.at, rest)):
            return use.kind
    return ROUND if rest[-1] == "lock" else LINK


def _fits(step: str, given: str | int) -> bool:
    return step in (ANY, given)
