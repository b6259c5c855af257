"""A file is whole after whatever has happened while it was written; all writers by `table.py`."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest


@pytest.mark.skipif(sys.platform == "win32", reason="fork")
def test_files_are_whole_whatever_happens() -> None:
    table = Path(__file__).parent / "table.py"
    run = [sys.executable, str(table), "--moments", "24", "desk's save"]
    ended = subprocess.run(run, capture_output=True, text=True, check=True)
    head, row = (line.split("\t") for line in ended.stdout.splitlines()[:2])
    found = dict(zip(head, row, strict=True))
    killed = [int(found[key]) for key in ("old", "between", "new", "broken", "left")]
    assert sum(killed[:3]) == 24
    assert killed[3:] == [0, 0]
    assert found["largest"] == "5/5"
    good, disks = found["full"].split("/")  # of none, where none may be mounted
    assert good == disks
    assert found["vanished"] == "25/25"
    assert found["forbidden"] == found["two"] == "good"
