"""What is looked up in the steps of a piece to put them into words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from buildplan.design.measures import Units, gauged_words
from buildplan.framework.model import Framework, LongChain
from buildplan.instructions.model import Figures
from buildplan.instructions.moves import Move, first_taught
from buildplan.language.isolates import isolated
from buildplan.language.voice import Voice
from buildplan.sequence.assembly import lock_waits_for
from buildplan.sequence.model import Kind, Operation, Step
from buildplan.sequence.ordering import natural
from buildplan.sequence.piece import PieceIndex
from buildplan.sequence.work_names import Name


@dataclass(frozen=True)
class Context:
    """The steps of a piece, and what they are told with."""

    piece: PieceIndex
    steps: Sequence[Step]
    units: Units
    voice: Voice
    figures: Figures

    @property
    def framework(self) -> Framework:
        """The piece's framework."""
        return self.piece.framework

    @cached_property
    def names(self) -> Mapping[str, str]:
        """What each balloon is called: its label, with its gauge where labels alone would
        leave a doubt."""
        balloons = self.framework.balloons
        seen = Counter((b.kind, b.label) for b in balloons.values())
        return {
            key: isolated(b.label)
            if seen[b.kind, b.label] == 1
            else self.voice.say(
                "{colour} {gauge}", colour=b.label, gauge=gauged_words(b.gauge_m, self.units)
            )
            for key, b in balloons.items()
        }

    def names_of(self, links: Iterable[str]) -> list[str]:
        """What the balloons of links are called."""
        return [self.names[key] for key in self.piece.keys(links)]

    def balloons_of(self, links: Iterable[str]) -> str:
        """What the balloons of a short chain are called: `ivory`, `ivory and coral`."""
        return self.voice.listed(list(dict.fromkeys(self.names_of(links))))

    def lock_name(self, joint: str) -> str:
        """What the rounds of the lock at a joint are called."""
        return self.names[self.framework.lock_at[joint].balloon]

    @cached_property
    def long(self) -> Mapping[str, LongChain]:
        """Long chains by letter."""
        return {long.letter: long for long in self.framework.chains}

    def met_at(self, joint: str) -> tuple[str, ...]:
        """The balloons that meet at a joint when its knots are brought together: singles that are
        tied to it later, to another part or for stiffness, are not there yet."""
        joined = self._joined_in.get(joint, len(self.steps))
        links = self.framework.links_at[joint]
        return tuple(one for one in links if self._single_in.get(one, 0) <= joined)

    @cached_property
    def _joined_in(self) -> Mapping[str, int]:
        """The number of the step that brings the knots of each joint together."""
        joins = ((step.number, op) for step in self.steps for op in step.of_kind(Kind.JOIN))
        return {op.joints[0]: number for number, op in joins if len(op.joints) == 1}

    @cached_property
    def _single_in(self) -> Mapping[str, int]:
        """The number of the step that ties each single in."""
        singles = ((step.number, op) for step in self.steps for op in step.of_kind(Kind.SINGLE))
        return {link: number for number, op in singles for link in op.links}

    @cached_property
    def maker(self) -> Mapping[Name, Step]:
        """The step that makes each thing."""
        return {
            thing: step
            for step in self.steps
            for operation in step.operations
            for thing in operation.makes
        }

    @cached_property
    def place(self) -> Mapping[str, Mapping[str, int]]:
        """Where along each long chain (by letter) each of its joints lies."""
        return {
            letter: {joint: i for i, joint in enumerate(long.chain.joints)}
            for letter, long in self.long.items()
        }

    @cached_property
    def odd(self) -> Mapping[str, str]:
        """The letter of the long chain that each link without a partner ends."""
        chains = self.framework.chains
        return {c.chain.odd: c.letter for c in chains if c.chain.odd is not None}

    def long_of(self, operation: Operation) -> LongChain:
        """The long chain that an operation ties, closes or tags."""
        return self.long[operation.chain]

    @cached_property
    def _tally(self) -> Sequence[Counter[Kind]]:
        tally: list[Counter[Kind]] = [Counter()]
        for step in self.steps:
            tally.append(tally[-1] + Counter(operation.kind for operation in step.operations))
        return tally

    def progress(self, kind: Kind, step: Step) -> tuple[int, int]:
        """How many operations of a kind are done after a step, and how many there are in all."""
        return self._tally[step.number][kind], self._tally[-1][kind]

    def joined(self, step: Step) -> tuple[int, int]:
        """How many joins of the same parts' own joints, or of any parts to one another, are done
        after a step of an assembly, and how many there are in all."""

        def tied(head: Operation) -> tuple[str, ...]:
            parts = tuple(self.parts_at([head]))
            return parts if len(parts) == 1 else ()

        same = tied(step.of_kind(Kind.JOIN)[0])
        steps = [
            other.number
            for other in self.steps
            for head in other.of_kind(Kind.JOIN)
            if tied(head) == same
        ]
        return sum(number <= step.number for number in steps), len(steps)

    @cached_property
    def last_joined(self) -> Mapping[str, int]:
        """The number of the step that brings the last joint together of each long chain (by
        letter) all of whose joints are brought together."""
        joined = {
            joint: step.number
            for step in reversed(self.steps)
            for join in step.of_kind(Kind.JOIN)
            for joint in join.joints
        }
        return {
            letter: max(joined[joint] for joint in long.chain.joints)
            for letter, long in self.long.items()
            if joined.keys() >= set(long.chain.joints)
        }

    @cached_property
    def lock_waits_for(self) -> Mapping[str, int]:
        """Number of the brace after which each joint is locked."""
        return lock_waits_for(self.framework)

    def parts_at(self, heads: Iterable[Operation]) -> list[str]:
        """The names of the parts that `heads` tie together."""
        found = (self.framework.part_at(joint) for head in heads for joint in head.joints)
        return sorted({part.name for part in found if part is not None}, key=natural)

    @cached_property
    def _taught(self) -> Mapping[Move, int]:
        return first_taught(self.piece, self.steps, self.figures.flat)

    def teacher(self, move: Move, step: Step) -> int | None:
        """The number of the step before `step` that teaches a hand move, None for `step` itself
        and where no step does."""
        taught = self._taught.get(move, step.number)
        return taught if taught < step.number else None
