"""What was printed of a design is told from what was printed of another whose name begins alike."""

from __future__ import annotations

import os
from pathlib import Path

from buildplan.desk.folder import Folder
from buildplan.desk.printed import printed_of


def test_what_was_printed_is_that_of_its_own_design_newest_first(tmp_path: Path) -> None:
    for name in ("moon", "moon-gate"):
        (tmp_path / f"{name}.yaml").write_text("buildplan: 1\n")
    output = tmp_path / "output"
    output.mkdir()
    names = "moon-crew-a4.pdf", "moon-training-a4.pdf", "moon-gate-crew-a4.pdf", "moon-notes.txt"
    for made, name in enumerate(names):
        (output / name).write_bytes(b"")
        os.utime(output / name, (made, made))
    folder = Folder(tmp_path)
    assert [one.name for one, _ in printed_of(folder, "moon")] == [names[1], names[0]]
    assert [one.name for one, _ in printed_of(folder, "moon-gate")] == [names[2]]
