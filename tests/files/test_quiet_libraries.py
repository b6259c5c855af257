"""No library speaks to the user in words of its own, by a log or a warning."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

SPEAKS = """\
import logging, warnings
import buildplan.__main__ as main
if not {debug}:
    main._quieten()
logging.getLogger("a.library").error("raw words", exc_info=ValueError("raw"))
warnings.warn("raw words")
"""


@pytest.mark.parametrize("debug", [False, True])
def test_what_libraries_log_and_warn_of_is_not_shown(debug: bool) -> None:
    """Unless it is asked for: Python's own `logging` writes to standard error where nobody has
    said otherwise (Python library reference, logging.lastResort)."""
    plain = {key: value for key, value in os.environ.items() if key != "PYTHONWARNINGS"}
    ran = subprocess.run(
        [sys.executable, "-c", SPEAKS.format(debug=debug)],
        capture_output=True,
        text=True,
        check=True,
        env=plain,
    )
    assert ("raw" in ran.stderr) is debug
