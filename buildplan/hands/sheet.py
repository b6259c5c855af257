"""The sheet that measurements are written on, as rows."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.evaluation.evaluating import Evaluation
from buildplan.hands.forecast import candidates
from buildplan.hands.learning import measured
from buildplan.hands.log import COLUMNS, WORK, what_of
from buildplan.hands.log_cells import METRES
from buildplan.hands.model import ChainOfTen
from buildplan.sequence.labour import units
from buildplan.sequence.model import Kind


def sheet_rows(piece: Evaluation, design: str) -> list[tuple[str, ...]]:
    """What to measure on a piece, a row each with an empty last column, after the heads.

    `design` is what the file is called, as seen from where the log will be kept. Lengths are in
    the piece's own units.
    """
    unit = piece.units
    rows: list[tuple[str, ...]] = [COLUMNS]
    for one in candidates(piece):
        length = f"{measured(one.measurement) / METRES[unit]:.1f}"
        count = "10" if isinstance(one.measurement, ChainOfTen) else "1"
        rows.append((design, what_of(one), one.which, count, length, unit, ""))
    rows += [
        (design, WORK, str(kind), str(n), "", "min", "") for kind, n in work_counts(piece).items()
    ]
    return rows


def work_counts(piece: Evaluation) -> Mapping[Kind, int]:
    """How many of each kind of work a piece takes, in the order of the work."""
    counts: dict[Kind, int] = {}
    for step in piece.steps:
        for operation in step.operations:
            counts[operation.kind] = counts.get(operation.kind, 0) + units(operation)
    return counts
