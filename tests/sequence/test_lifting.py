"""When what was built lying may first be lifted, by counting what is still to come on."""

from __future__ import annotations

from sequence_pieces import tube

from buildplan.framework.model import Framework
from buildplan.sequence.lifting import first_lifts
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.steps import plan_steps

STRAIGHT = ["straight"] * 4


def still_to_come(framework: Framework, steps: tuple[Step, ...]) -> int:
    """Locks and link balloons that these steps do not bring into the piece."""
    operations = [operation for step in steps for operation in step.operations]
    locks = {j for op in operations if op.kind is Kind.LOCK for j in op.locks}
    links = {link for op in operations if op.adds for link in op.links}
    return len(framework.locks) + len(framework.links) - len(locks) - len(links)


def test_nothing_is_lifted_before_all_of_it_is_tied_and_locked() -> None:
    piece = tube([*STRAIGHT, "tip", *STRAIGHT])
    steps = plan_steps(piece)
    (lift,) = first_lifts(piece, steps)
    assert still_to_come(piece, steps[: lift.last]) == 0
    assert still_to_come(piece, steps[: lift.last - 1]) > 0
    assert not any(step.of_kind(Kind.LOCK) for step in steps[: lift.first_lock - 1])
    assert steps[lift.first_lock - 1].of_kind(Kind.LOCK)
    assert all(step.kind is not Kind.STAND_UP for step in steps[: lift.last])
