"""What is sized and made ready read against what is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from buildplan.design.measures import gauged_words, nominal_words
from buildplan.framework.counts import BALLOONS_PER_LOCK
from buildplan.instructions.heard_rows import Rows, must
from buildplan.instructions.heard_texts import SizedTold, Texts
from buildplan.instructions.model import RowWords
from buildplan.instructions.right_words import Right
from buildplan.language.heard import number_in
from buildplan.sequence.model import Kind, Operation, Step, Turn


@dataclass(frozen=True)
class ReadingMade:
    """A reader of what is sized and made ready."""

    right: Right
    rows: Rows
    texts: Texts

    def sized(self, step: Step, text: str) -> None:
        """What is sized, against the balloons that are."""
        counts = Counter[tuple[str, bool]]()
        for one in step.of_kind(Kind.SIZE):
            rounds = BALLOONS_PER_LOCK * len(one.locks)
            counts[one.balloon, bool(one.locks)] += len(one.links) + rounds
        balloons = self.right.framework.balloons
        sized = [
            SizedTold(
                count,
                self.right.called[key],
                self.right.voice.tell(nominal_words(balloons[key].nominal_m, self.right.units)),
                self.right.voice.tell(gauged_words(balloons[key].gauge_m, self.right.units)),
                rounds,
            )
            for (key, rounds), count in counts.items()
        ]
        must(Counter(self.texts.sized(text)) == Counter(sized), "other balloons are sized")

    def made(self, step: Step, turn: Turn, row: RowWords) -> None:
        """A row without a name, against the pairs, balloons or short chains that are made."""
        made = turn.of_kind(step.kind)
        first = made[0]
        match step.kind:
            case Kind.PAIR if first.locks:
                found = self.rows.made("locks", row.said)
                right = [found["colour"]] == self.right.rounds(first.locks)
            case Kind.PAIR:
                found = self.rows.made("pairs", row.said)
                told = sorted((found["first"], found["second"]))
                right = told == sorted(self.right.names(first.links))
            case Kind.TIE_OFF:
                found = self.rows.made("tied off", row.said)
                right = [found["colour"]] == self.right.names(first.links)
            case _:
                found, right = self._chains_made(first, row)
        must(right, "other balloons are made ready")
        must(number_in(found["number"]) == len(made), "more or fewer are made ready")

    def _chains_made(self, first: Operation, row: RowWords) -> tuple[Mapping[str, str], bool]:
        """What a row says of chains that are all alike, and whether they are."""
        names = self.right.names(first.links)
        if first.links[0] in self.right.long_links:
            found = self.rows.made("in order", row.said)
            length = number_in(found["length"])
            return found, tuple(names) in self.rows.orders(found["order"], length)
        found = self.rows.made("short", row.said)
        listed = self.right.voice.listed(list(dict.fromkeys(names)))
        length = self.texts.length_of(found["length"])
        return found, (length, found["colour"]) == (len(names), listed)
