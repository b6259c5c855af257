"""Rows read as whoever builds reads them, in any language: what each says is tied, and where."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from buildplan.instructions import read_back
from buildplan.instructions.grammar import ALONG
from buildplan.instructions.model import RowWords
from buildplan.language.heard import Heard, heard, heard_count, number_in
from buildplan.language.phrases import FIRST_TO_LAST
from buildplan.language.voice import Voice

Names = tuple[str, ...]
_ENDS = ("first", "last", "back_to")


class MisreadError(Exception):
    """Words that do not say what they must: why, in English, for those who mend them."""


def must(holds: bool, else_wrong: str) -> None:
    """Refuse words that do not say what they must."""
    if not holds:
        raise MisreadError(else_wrong)


@dataclass(frozen=True)
class ChainRow:
    """What the row of a chain says: how many balloons, their order of colours, their joints (the
    first again at the end of a ring)."""

    length: int
    order: str
    joints: Names


@dataclass(frozen=True)
class JoinRow:
    """What the row of a joint says: how often each chain is knotted there and how often it ends
    there, the balloons that end there, and whether it is locked then."""

    knots: Counter[str]
    ends: Counter[str]
    balloons: Counter[str]
    locked: bool


@dataclass(frozen=True)
class Rows:
    """A reader of rows; `called` is all that balloons of the piece are called."""

    voice: Voice
    called: frozenset[str]

    @cached_property
    def colour(self) -> str:
        """What stands for a colour: one of those that there are, before anything else."""
        longest = sorted(self.called, key=lambda name: (-len(name), name))
        return "|".join([*map(re.escape, longest), "[^.]+?"])

    @cached_property
    def _forms(self) -> Mapping[str, Heard]:
        voice, letter, joint = self.voice, r"[^\s,;()]+", r"[^\s,;]+"
        return {
            "coloured": heard(voice, read_back.COLOURED_ROW, colour=".+"),
            "chain": heard_count(voice, *read_back.CHAIN, order=".+", joints=".+"),
            "as chain": heard(voice, read_back.AS_CHAIN, letter=letter),
            "section": heard(voice, read_back.SECTION, first=r"\d+", last=r"\d+", order=".+"),
            "section of one": heard(voice, read_back.SECTION_OF_ONE, number=r"\d+", order=".+"),
            "and back": heard(voice, read_back.AND_BACK, **dict.fromkeys(_ENDS, joint)),
            "to": heard(voice, FIRST_TO_LAST, first=joint, last=joint),
            "another": heard(voice, read_back.AND_ANOTHER, way=".+"),
            "shares": heard(voice, read_back.SHARES, links=".+"),
            "ring": heard_count(voice, *read_back.RING, joint=joint),
            "then locked": heard(voice, read_back.THEN_LOCKED, joint=".+"),
            "knots": heard_count(voice, *read_back.KNOTS, chains=".+"),
            "free ends": heard_count(voice, *read_back.FREE_ENDS, chains=".+"),
            "passes": heard(voice, read_back.PASSES, letter=letter),
            "passes often": heard_count(voice, *read_back.PASSES_OFTEN, letter=letter),
            "balloon": heard(voice, read_back.BALLOON_END, link=joint),
            "all of": heard(voice, read_back.ALL_OF, colour=self.colour),
            "run": heard(voice, read_back.RUN, count=r"\d+", colour=self.colour),
            "over": heard(voice, read_back.OVER_AND_OVER, colours=".+"),
        }

    # --- what a row is about ------------------------------------------------------------------

    def colour_of(self, row: RowWords) -> str:
        """The colour beside the name of a row; empty where it tells none. Raises MisreadError where
        the row as printed is not its name and its words."""
        if row.line == self.voice.say(read_back.ROW, name=row.name, words=row.said):
            return ""
        found = self._forms["coloured"].whole(row.line)
        colour = "" if found is None else found["colour"]
        told = {"name": row.name, "colour": colour, "words": row.said}
        if not colour or row.line != self.voice.say(read_back.COLOURED_ROW, **told):
            raise MisreadError("a row as printed is not its name and its words")
        return colour

    def is_printed(self, row: RowWords) -> bool:
        """Whether a row without a colour is printed as its name and its words."""
        if row.line == self.voice.say(read_back.ROW, name=row.name, words=row.said):
            return True
        locked = self._forms["then locked"].whole(row.said)
        if locked is None:
            return False
        joint = self.voice.say(read_back.ROW, name=row.name, words=locked["joint"])
        return row.line == self.voice.say(read_back.THEN_LOCKED, joint=joint)

    def is_tied_by_lock(self, row: RowWords) -> bool:
        """Whether a row says that one lock ties the joints of its name."""
        return row.said == self.voice.say(read_back.TIED_BY_LOCK)

    # --- chains -------------------------------------------------------------------------------

    def chain(self, said: str) -> ChainRow | None:
        """What a row says of a chain; None where it says something else."""
        found = self._forms["chain"].whole(said)
        if found is None:
            return None
        return ChainRow(number_in(found["number"]), found["order"], self._joints(found["joints"]))

    def _joints(self, said: str) -> Names:
        """Joints one by one, or counted from the first to the last."""
        if ALONG in said:
            return tuple(said.split(ALONG))
        found = self._forms["and back"].whole(said) or self._forms["to"].whole(said)
        if found is None:
            return (said,)
        part = re.fullmatch(r"(.*?)(\d+)", found["first"])
        last = re.fullmatch(r"(.*?)(\d+)", found["last"])
        if part is None or last is None or part[1] != last[1]:
            raise MisreadError("a chain's joints are counted from one sort to another")
        counted = [f"{part[1]}{i}" for i in range(int(part[2]), int(last[2]) + 1)]
        return (*counted, *([found["back_to"]] if "back_to" in found else []))

    def is_below(self, order: str) -> bool:
        """Whether the rows below tell an order of colours."""
        return order == self.voice.say(read_back.AS_BELOW)

    def as_chain(self, order: str) -> str:
        """The letter of the chain that has this order of colours too; empty where it is told."""
        found = self._forms["as chain"].whole(order)
        return "" if found is None else found["letter"]

    def section(self, row: RowWords) -> tuple[int, int, str]:
        """The first and the last balloon of a section, and its order of colours."""
        found = self._forms["section"].whole(row.line)
        if found is not None:
            return number_in(found["first"]), number_in(found["last"]), found["order"]
        found = self._forms["section of one"].whole(row.line)
        if found is None:
            raise MisreadError("a row below a chain is no section of it")
        return number_in(found["number"]), number_in(found["number"]), found["order"]

    def orders(self, said: str, count: int) -> Iterator[Names]:
        """What so many balloons in an order of colours are called, one by one, in every way that
        it can be read (a user's name of a colour may look like an order itself)."""
        found = self._forms["all of"].whole(said)
        if found is not None:
            yield (found["colour"],) * count
        over = self._forms["over"].whole(said)
        for runs in self._runs(said):
            if len(runs) == count:
                yield runs
        for runs in self._runs(over["colours"]) if over is not None else ():
            yield tuple(runs[i % len(runs)] for i in range(count))

    def _runs(self, said: str) -> Iterator[Names]:
        """Runs of one colour, parted by commas."""
        ends = [found.start() for found in re.finditer(", ", said)]
        for end in (*ends, len(said)):
            run = self._forms["run"].whole(said[:end])
            if run is not None:
                names = (run["colour"],) * int(run["count"])
                if end == len(said):
                    yield names
                for rest in self._runs(said[end + 2 :]) if end < len(said) else ():
                    yield names + rest

    def ring(self, said: str) -> tuple[str, int]:
        """The joint at which a ring is closed, and how many balloons it has."""
        found = self._forms["ring"].whole(said)
        if found is None:
            raise MisreadError("a row of a ring does not say where it is closed")
        return found["joint"], number_in(found["number"])

    # --- braces, singles, joints --------------------------------------------------------------

    def ways(self, said: str) -> list[Names]:
        """The ways that the short chains of a brace, or a single, are led."""
        found = self._forms["shares"].whole(said)
        if found is not None:
            return self.ways(found["way"])
        found = self._forms["another"].whole(said)
        if found is not None:
            return [*self.ways(found["way"]), *self.ways(found["other"])]
        return [tuple(said.split(ALONG))]

    def shared(self, said: str) -> str:
        """The balloons of other braces that a brace has too, as they are listed; empty without."""
        found = self._forms["shares"].whole(said)
        return "" if found is None else found["links"]

    def join(self, said: str) -> JoinRow:
        """What is brought together at a joint."""
        locked = self._forms["then locked"].whole(said)
        knots, ends, balloons = Counter[str](), Counter[str](), Counter[str]()
        for part in re.split(r"\s?; ", said if locked is None else locked["joint"]):
            tied = self._forms["knots"].whole(part)
            free = self._forms["free ends"].whole(part)
            if tied is not None:
                knots += self._passing(tied["chains"])
            elif free is not None:
                ends += self._passing(free["chains"])
                balloons += Counter(
                    one["link"] for _, one in self._forms["balloon"].within(free["chains"])
                )
            else:
                raise MisreadError("a row of a joint says neither knots nor free ends")
        return JoinRow(knots, ends, balloons, locked is not None)

    def _passing(self, said: str) -> Counter[str]:
        """How often each chain passes, by letter."""
        once = {one["letter"]: 1 for _, one in self._forms["passes"].within(said)}
        often = {
            one["letter"]: number_in(one["number"])
            for _, one in self._forms["passes often"].within(said)
        }
        return Counter(once | often)

    # --- what is made ready -------------------------------------------------------------------

    @cached_property
    def _made(self) -> Mapping[str, Heard]:
        voice, any_colour = self.voice, ".+"
        return {
            "pairs": heard_count(
                voice, *read_back.LINK_PAIRS, first=self.colour, second=self.colour
            ),
            "locks": heard_count(voice, *read_back.LOCK_PAIRS, colour=any_colour),
            "tied off": heard_count(voice, *read_back.TIED_OFF, colour=any_colour),
            "short": heard_count(voice, *read_back.SHORT_CHAINS, length=r"\w+", colour=any_colour),
            "in order": heard_count(
                voice, *read_back.CHAINS_IN_ORDER, length=r"\d+", order=any_colour
            ),
        }

    def made(self, sort: str, said: str) -> Mapping[str, str]:
        """What a row says is made ready, of a sort: pairs, locks, tied off, short, in order."""
        found = self._made[sort].whole(said)
        if found is None:
            raise MisreadError("a row does not say what is made ready")
        return found
