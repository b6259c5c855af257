"""What a crew checks when a job is done: once a side, once a course, and not joint by joint."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.instructions.context import Context
from buildplan.instructions.corners import bare
from buildplan.instructions.courses import new_widths
from buildplan.instructions.joining import meeting
from buildplan.instructions.measuring import rings_above_floor, sides_together
from buildplan.sequence.model import Kind, Step


def job_checks(context: Context, steps: Sequence[Step]) -> list[str]:
    """Whole sentences, each of which would fail if a joint were wrong: what skipped
    joints carry, how long straight sides and wide rings are, how many balloons meet."""
    braces = [op for step in steps for op in step.of_kind(Kind.BRACE)]
    joints = [
        op.joints[0] for step in steps for op in step.of_kind(Kind.JOIN) if len(op.joints) == 1
    ]
    return [
        *bare(context, steps),
        *sides_together(context, braces),
        *(meeting(context, joints) if joints else []),
        *(said for step in steps for said in new_widths(context, step)),
        *(said for step in steps if joints for said in rings_above_floor(context, step)),
    ]
