"""Whatever prints or shows the words of steps reads them back first, and writes nothing that does
not build the piece again: a defect of ours, said as such."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path
from typing import Any

import pytest

from buildplan.cli import main
from buildplan.instructions import rows
from buildplan.language.voice import Voice

LAMP = Path(__file__).parent.parent / "designs" / "gallery" / "lamp_octahedron.yaml"
EVENT = """\
event: 1
name: Fair
crew: 2
opening: "10:00"
designs: [{design: lamp.yaml}]
"""
CALLS = {
    "booklet": ["booklet", "lamp.yaml"],
    "large": ["booklet", "lamp.yaml", "--edition", "crew", "--draft", "--language", "es"],
    "event": ["event", "fair.event.yaml"],
    "companion": ["companion", "lamp.yaml"],
    "export": ["export", "lamp.yaml"],
}


@pytest.mark.parametrize("name", CALLS)
def test_words_that_do_not_build_the_piece_are_not_printed(
    name: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    shutil.copy(LAMP, tmp_path / "lamp.yaml")
    (tmp_path / "fair.event.yaml").write_text(EVENT, "utf-8")
    before = sorted(tmp_path.rglob("*"))
    monkeypatch.chdir(tmp_path)
    real = rows.join

    def wrong(voice: Voice, name: str, passing: Any, *others: Any) -> Any:
        """A joint where a chain passes once more than it does."""
        return real(voice, name, [(letter, times + 1) for letter, times in passing], *others)

    monkeypatch.setattr(rows, "join", wrong)
    monkeypatch.setattr(sys, "argv", ["buildplan", *CALLS[name]])
    with pytest.raises(SystemExit) as ended:
        main()
    told = capsys.readouterr().err
    assert ended.value.code == 1
    assert "lamp.yaml: " in told
    assert "a row brings other knots together" in told
    assert "buildplan" in told, "whose defect it is"
    assert sorted(tmp_path.rglob("*")) == before, "nothing is written"
