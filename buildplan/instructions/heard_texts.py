"""Texts of steps read as whoever builds reads them, in any language: what balloons are taken."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from buildplan.instructions import read_back
from buildplan.instructions.heard_rows import MisreadError, Rows
from buildplan.language.heard import Heard, heard, heard_count, number_in
from buildplan.language.phrases import count_word

LONGEST_SHORT_CHAIN = 10  # whose length is told in a word


@dataclass(frozen=True)
class SizedTold:
    """Balloons that are sized: how many, what they are called, as bought, and to which gauge."""

    count: int
    name: str
    nominal: str
    gauge: str
    rounds: bool


@dataclass
class Taken:
    """What a reader has been told to take, and takes until told otherwise: what the balloons of
    short chains are called, by how many they have; those of singles; and the rounds of locks."""

    short: dict[int, str] = field(default_factory=dict)
    single: str = ""
    rounds: str = ""


@dataclass(frozen=True)
class Texts:
    """A reader of texts."""

    rows: Rows

    @cached_property
    def _forms(self) -> Mapping[str, Heard]:
        voice, colour = self.rows.voice, self.rows.colour
        size = {"nominal": "[^()]+?", "gauge": r"\d(?:[^.]|\.(?=\d))*"}
        return {
            "links": heard_count(voice, *read_back.TAKE_LINKS, colour=colour, **size),
            "rounds": heard_count(voice, *read_back.TAKE_ROUNDS, colour=colour, **size),
            "one": heard(voice, read_back.TAKE_ONE, colour=colour),
            "pair": heard(voice, read_back.TAKE_PAIR, colour=colour),
            "chain": heard(voice, read_back.TAKE_CHAIN, length=r"\w+", colour=colour),
            "single": heard(voice, read_back.TAKE_SINGLE, colour=colour),
            "lock": heard(voice, read_back.TAKE_LOCK, colour=colour),
            "lying lock": heard(voice, read_back.TAKE_LOCK_LYING, colour=colour),
            "layer lock": heard(voice, read_back.TAKE_LOCK_OF_ONE_LAYER, colour=colour),
            "these": heard(voice, read_back.THESE_ROUNDS, colour=colour),
            "like": heard(voice, read_back.LIKE_PART, step=r"\d[\d.,]*?"),
            "mirrored": heard(voice, read_back.MIRRORED_PART, step=r"\d[\d.,]*?"),
        }

    @cached_property
    def lengths(self) -> Mapping[str, int]:
        """The words for how many balloons a short chain has."""
        told = range(LONGEST_SHORT_CHAIN + 1)
        return {count_word(self.rows.voice, length): length for length in told}

    def length_of(self, word: str) -> int:
        """How many balloons a short chain has."""
        if word in self.lengths:
            return self.lengths[word]
        if not word.isdecimal():
            raise MisreadError("a short chain's length is no number")
        return int(word)

    def take(self, text: str, taken: Taken) -> None:
        """Take what a text tells to take from now on."""
        for length, sort in ((1, "one"), (2, "pair")):
            for found in self._told(sort, text):
                taken.short[length] = found["colour"]
        for found in self._told("chain", text):
            taken.short[self.length_of(found["length"])] = found["colour"]
        for found in self._told("single", text):
            taken.single = found["colour"]
        for sort in ("lock", "lying lock", "layer lock", "these"):
            for found in self._told(sort, text):
                taken.rounds = found["colour"]

    def sized(self, text: str) -> list[SizedTold]:
        """What balloons a text tells to size."""
        return [
            SizedTold(number_in(one["number"]), one["colour"], one["nominal"], one["gauge"], rounds)
            for sort, rounds in (("links", False), ("rounds", True))
            for one in self._told(sort, text)
        ]

    def as_step(self, text: str) -> int | None:
        """The number of the step that a text says to do again at another part, or None."""
        for sort in ("like", "mirrored"):
            for found in self._told(sort, text):
                return number_in(found["step"])
        return None

    def _told(self, sort: str, text: str) -> Iterator[Mapping[str, str]]:
        return (found for _, found in self._forms[sort].within(text))
