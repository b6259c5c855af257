"""What cannot be written is told by the name that was given for it, and by no other."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
from conftest import Call

DESIGNS = Path(__file__).parents[2] / "designs"
FRAME, PEAR = DESIGNS / "picture_frame.yaml", DESIGNS / "gallery" / "pear_outline.png"
TOO_LONG = "n" * 300  # more than a name may have anywhere (POSIX.1-2017, NAME_MAX; 255 on Linux)


@pytest.mark.skipif(sys.platform == "win32", reason="names of POSIX")
@pytest.mark.parametrize(
    "command",
    [
        ("resize", FRAME, "--height", "240cm", "--by", "gauge", "--out"),
        ("course", FRAME, "--count", "1", "--effort", "2", "--out"),
        ("learn", "log.csv", "--hands"),
    ],
)
def test_a_name_that_is_too_long_to_be_looked_at_is_told_as_that(
    command: tuple[str | Path, ...], call: Call, tmp_path: Path
) -> None:
    (tmp_path / "log.csv").write_text("kind,count,minutes\npair,20,10\n", "utf-8")
    status, _, messages = call(*command, f"{TOO_LONG}.yaml")
    assert (status, messages) == (2, f"cannot write {TOO_LONG}.yaml: its name is too long\n")


def test_what_is_taken_of_a_picture_is_told_as_what_it_is_not_as_the_picture(
    call: Call, tmp_path: Path
) -> None:
    (tmp_path / "taken.png").mkdir()
    status, out, messages = call("fit", PEAR, "--height", "100cm", "--taken", "taken.png")
    assert (status, out) == (2, "")
    assert messages == "cannot write taken.png: this is a folder\n"
