"""What answers a call for help or a wrong call: never the packages that do the work."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest

# the command library itself brings pydantic where it is installed
HEAVY = {"matplotlib", "networkx", "numpy", "pikepdf", "reportlab", "scipy", "shapely"}
CALL = """
import json, sys
from buildplan.cli import main
sys.argv = ["buildplan", *json.loads(sys.argv[1])]
try:
    main()
finally:
    names = {name.partition(".")[0] for name in sys.modules}
    print(json.dumps(sorted(names)), file=sys.stderr)
"""


@pytest.mark.parametrize(
    ("call", "status", "answer"),
    [
        (["--version"], 0, "buildplan"),
        (["--help"], 0, "booklet"),
        (["booklet", "--help"], 0, "--edition"),
        (["fit", "--help"], 0, "--height"),
        ([], 2, "booklet"),
        (["bookelt"], 2, "bookelt"),
        (["booklet", "--nope"], 2, "--nope"),
    ],
)
def test_the_packages_that_do_the_work_are_not_imported(
    call: list[str], status: int, answer: str
) -> None:
    run = [sys.executable, "-c", CALL, json.dumps(call)]
    ended = subprocess.run(run, capture_output=True, text=True, check=False)
    assert ended.returncode == status
    assert answer in ended.stdout + ended.stderr
    imported = set(json.loads(ended.stderr.splitlines()[-1]))
    assert "typer" in imported
    assert not imported & HEAVY
