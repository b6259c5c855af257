"""Parts that stand one behind the other: how they come to where they are tied."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from trial_file import HEAD

from buildplan.booklet.common.book import gather_book
from buildplan.document.paper import PAPERS
from buildplan.evaluation.seating import read_whole
from buildplan.instructions.setting_up import is_tying


def test_arches_one_behind_the_other_are_tied_standing(tmp_path: Path) -> None:
    """Lying, one would lie on the other, and no hand come between: each is turned up, the hindmost
    first, and no step stands the whole up again. That z is to the front is our axes'."""
    arch = "{arch: {kind: square, leg: 2, span: 3, long: a, brace: a, lock: k}}"
    text = f"{HEAD}  assembly:\n    parts:\n"
    for name, place in (("P", ""), ("Q", "behind: P, ")):
        text += f"      - {{name: {name}, {place}build: {arch}}}\n"
    file = tmp_path / "tunnel.yaml"
    file.write_text(f"{text}    lock: k\n", "utf-8")
    design = read_whole(file)
    book = gather_book(design, PAPERS["a4"], design.units, "training")
    z = {one: np.mean([book.shape.at[f"{one}.{j}"][2] for j in ("A1", "B1", "D1")]) for one in "PQ"}
    assert z["Q"] < z["P"]
    told = book.told(next(one for one in book.steps if is_tying(one))).text
    assert told.index("Part Q was built lying") < told.index("Part P was built lying")
    assert "Set parts Q and P upright" in told
    assert "from the back to the front" in told
    assert "face the front" not in told, "their front is known"
    assert not any(book.told(step).title == "Stand the piece up" for step in book.steps)
