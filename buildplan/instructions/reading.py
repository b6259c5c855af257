"""The words of each step read against what it does."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from buildplan.framework.model import LongChain
from buildplan.instructions.grammar import ALONG
from buildplan.instructions.heard_rows import ChainRow, Names, Rows, must
from buildplan.instructions.heard_texts import Taken, Texts
from buildplan.instructions.model import RowWords, StepWords, TurnWords
from buildplan.instructions.reading_made import ReadingMade
from buildplan.instructions.right_words import Edge, Right, alternating
from buildplan.sequence.model import Kind, Operation, Step, Turn


@dataclass(frozen=True)
class Reading:
    """A reader of the steps of a piece, in their order. `taken` and `order` grow as it reads: what
    it takes, and what the balloons of each long chain are called, by its letter."""

    right: Right
    words: Sequence[StepWords]
    taken: Taken = field(default_factory=Taken)
    order: dict[str, Names] = field(default_factory=dict)

    @cached_property
    def rows(self) -> Rows:
        """Its reader of rows."""
        return Rows(self.right.voice, frozenset(self.right.called.values()))

    @cached_property
    def texts(self) -> Texts:
        """Its reader of texts."""
        return Texts(self.rows)

    @cached_property
    def made(self) -> ReadingMade:
        """Its reader of what is made ready."""
        return ReadingMade(self.right, self.rows, self.texts)

    def step(self, step: Step, said: StepWords) -> None:
        """Read a step. Raises MisreadError where its words do not say what it does."""
        text = said.text
        again = self.texts.as_step(text)
        if again is not None:
            text = self.words[again - 1].text
        self.texts.take(text, self.taken)
        if step.kind in (Kind.PAIR, Kind.TIE_OFF):
            self.made.sized(step, text)
        for turn, told in zip(step.turns, said.turns, strict=True):
            self._turn(step, turn, told)

    # --- turns --------------------------------------------------------------------------------

    def _turn(self, step: Step, turn: Turn, told: TurnWords) -> None:
        """The rows of a turn against what it does."""
        head, rows = turn.operations[0], told.rows
        if not told.name:
            for row in rows:
                if row.name:
                    self._at(row, head.joints)
                else:
                    self.made.made(step, turn, row)
            return
        match step.kind:
            case Kind.BRACE | Kind.SINGLE:
                self._tied(turn, rows)
            case Kind.JOIN if head.kind is Kind.JOIN:
                self._joined(head, turn, rows)
            case Kind.TURN_OVER:
                self._locked(turn, rows)
            case Kind.CLOSE_RING:
                chain = self._chain_of(head, rows[0]).chain
                found = self.rows.ring(rows[0].said)
                must(found == (chain.joints[0], len(chain.links)), "a ring is closed otherwise")
            case Kind.TAG:
                self._chain_of(head, rows[0])
                self._at(rows[0], turn.joints)
            case _:
                self._chain(head, rows)

    def _chain_of(self, head: Operation, row: RowWords) -> LongChain:
        """The long chain that a row is about, which its name must say."""
        self._about(row, head.chain)
        return self.right.long[head.chain]

    def _about(self, row: RowWords, name: str) -> None:
        must(name in row.name.split(), "a row has the name of something else")

    def _at(self, row: RowWords, joints: Iterable[str]) -> None:
        """A row of joints, against those that it must name."""
        must(self.rows.is_printed(row), "a row as printed is not its name and its words")
        must(row.said == ", ".join(joints), "a row names other joints")

    # --- long chains --------------------------------------------------------------------------

    def _chain(self, head: Operation, rows: Sequence[RowWords]) -> None:
        """The row of a long chain, and what is told of it below."""
        long, row = self._chain_of(head, rows[0]), rows[0]
        chain = long.chain
        walk = (*chain.joints, *(chain.joints[:1] if chain.closed else ()))
        found = self.rows.chain(row.said)
        if found is None:  # its colours were told when it was tied
            self._at(row, walk)
            return
        names = tuple(self.right.names(chain.links))
        must(self.rows.is_printed(row), "a row as printed is not its name and its words")
        must(found.joints == walk, "a row takes a chain along other joints")
        must(found.length == len(names), "a row gives a chain more or fewer balloons")
        must(names in self._orders(found, rows[1:]), "a row gives a chain other colours")
        must(
            [self.right.edge(link) for link in chain.links] == list(alternating(walk, names)),
            "a row ties the balloons of a chain the other way round",
        )
        self.order[long.letter] = names

    def _orders(self, found: ChainRow, below: Sequence[RowWords]) -> Iterable[Names]:
        """The orders of colours that a row, with those below it, can be read to tell."""
        if self.rows.is_below(found.order):
            return self._sections(below)
        letter = self.rows.as_chain(found.order)
        if letter:
            return [self.order[letter]] if letter in self.order else []
        return self.rows.orders(found.order, found.length)

    def _sections(self, below: Sequence[RowWords]) -> list[Names]:
        """The orders that sections, each from where the last ended, can be read to tell."""
        told: list[Names] = [()]
        for row in below:
            first, last, order = self.rows.section(row)
            must(order == row.said, "a row as printed is not its name and its words")
            told = [
                (*before, *names)
                for before in told
                if len(before) == first - 1
                for names in self.rows.orders(order, last - first + 1)
            ]
        return told

    # --- braces, singles, joints --------------------------------------------------------------

    def _tied(self, turn: Turn, rows: Sequence[RowWords]) -> None:
        """The rows of a brace, of its singles and of its locks."""
        ways = [row for row in rows if ALONG in row.said]
        heads = [one for one in turn.operations if one.kind in (Kind.BRACE, Kind.SINGLE)]
        must(len(ways) == len(heads), "a row names no joints that are tied")
        for head, row in zip(heads, ways, strict=True):
            told = Counter(
                self._single(head, row) if head.kind is Kind.SINGLE else self._brace(head, row)
            )
            right = Counter(self.right.edge(link) for link in head.links)
            must(_joints(told) == _joints(right), "a row names other joints than are tied")
            must(told == right, "a row names other colours, or the other ends, than are tied")
        self._locked(turn, [row for row in rows if ALONG not in row.said])

    def _single(self, head: Operation, row: RowWords) -> Iterator[Edge]:
        colour = self.rows.colour_of(row)
        for way in self.rows.ways(row.said):
            yield from alternating(way, (colour or self.taken.single,) * (len(way) - 1))

    def _brace(self, head: Operation, row: RowWords) -> Iterator[Edge]:
        """What a row says a brace is: in the colours that it tells, else in those of the text."""
        self._about(row, self.right.voice.whole(head.brace))
        shared = self.right.shared[head.brace]
        listed = self.right.voice.listed(shared) if shared else ""
        must(self.rows.shared(row.said) == listed, "a row says that it shares other balloons")
        colour = self.rows.colour_of(row)
        for way in self.rows.ways(row.said):
            length = len(way) - 1
            if not colour:
                yield from alternating(way, (self.taken.short.get(length, ""),) * length)
                continue
            self.taken.short.pop(length, None)
            named = colour in self.rows.called
            orders = [(colour,) * length] if named else list(self.rows.orders(colour, length))
            right = tuple(self.right.names(head.links))[:length]
            yield from alternating(way, right if right in orders else orders[0])

    def _joined(self, head: Operation, turn: Turn, rows: Sequence[RowWords]) -> None:
        """The rows of joints that are tied to one another, or of chains that meet at one."""
        if len(head.joints) > 1:
            self._about(rows[0], "+".join(head.joints))
            must(self.rows.is_printed(rows[0]), "a row as printed is not its name and its words")
            self._tied_to(head, turn, rows)
            return
        (joint,) = head.joints
        self._about(rows[0], joint)
        must(self.rows.is_printed(rows[0]), "a row as printed is not its name and its words")
        found = self.rows.join(rows[0].said)
        knots, ends = self.right.meeting[joint]
        loose = Counter({letter: 1 for letter in ends if self._loose(letter, found.balloons)})
        must(found.knots == knots, "a row brings other knots together")
        must(found.ends == ends - loose, "a row brings other free ends together")
        must(found.locked == bool(turn.of_kind(Kind.LOCK)), "a row locks another joint")
        if found.locked:
            must([self.taken.rounds] == self.right.rounds([joint]), "a joint is locked with others")
        told = Counter(edge for row in rows[1:] for edge in self._balloon(row))
        right = Counter(self.right.edge(link) for link in head.links)
        must(told == right, "a row ties in another balloon")
        self.order.update(
            {self.right.alone[link]: tuple(self.right.names([link])) for link in head.links}
        )

    def _tied_to(self, head: Operation, turn: Turn, rows: Sequence[RowWords]) -> None:
        """The row of joints that are tied to one another, by a lock or without."""
        must(len(rows) == 1, "joints are tied to one another in more rows than one")
        if not turn.of_kind(Kind.LOCK):
            must(tuple(rows[0].said.split(ALONG)) == head.joints, "a row ties other joints")
            return
        must(self.rows.is_tied_by_lock(rows[0]), "a row locks no joints that are tied")
        rounds = self.right.rounds([one for op in turn.of_kind(Kind.LOCK) for one in op.locks])
        must(set(rounds) == {self.taken.rounds}, "joints are locked with other rounds")

    def _loose(self, letter: str, balloons: Counter[str]) -> bool:
        """Whether a chain is a balloon by itself that a row names."""
        links = self.right.long[letter].chain.links
        return len(links) == 1 and links[0] in balloons

    def _balloon(self, row: RowWords) -> Iterator[Edge]:
        tail, neck = row.said.split(ALONG)
        yield neck, tail, self.rows.colour_of(row)

    def _locked(self, turn: Turn, rows: Sequence[RowWords]) -> None:
        """Rows of locks, against the joints that are locked and their rounds."""
        joints = [joint for one in turn.of_kind(Kind.LOCK) for joint in one.locks]
        told = [joint for row in rows for joint in row.said.split(", ")]
        must(all(map(self.rows.is_printed, rows)), "a row as printed is not its name and words")
        must(told == joints, "a row names other joints than are locked")
        if joints:
            others = set(self.right.rounds(joints)) - {self.taken.rounds}
            must(not others, "joints are locked with other rounds")


def _joints(edges: Counter[Edge]) -> Counter[frozenset[str]]:
    return Counter(frozenset((neck, tail)) for neck, tail, _ in edges.elements())
