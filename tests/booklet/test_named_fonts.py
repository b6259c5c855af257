"""A font that a design's brand names serves all that is printed of it, also of several together."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import Call
from page_words import words_of
from square_fonts import square_font

from buildplan.drawing.typeset import setting

LAMP = Path(__file__).parents[2] / "designs" / "gallery" / "lamp_octahedron.yaml"
SIGNS = "\u661f\u4e2d"
COMMANDS = {
    "shopping": ("shopping", "lamp.yaml", "--pdf", "made.pdf"),
    "gallery": ("gallery", ".", "--out", "made.pdf"),
    "measure": ("measure", "lamp.yaml", "--pdf", "made.pdf"),
    "event": ("event", "lamp.event.yaml", "--out", "."),
}


@pytest.fixture
def no_fonts_of_the_machine(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    setting.set_line.cache_clear()
    monkeypatch.setattr(setting, "fonts_of_machine", lambda: ())
    yield
    setting.set_line.cache_clear()


@pytest.mark.usefixtures("no_fonts_of_the_machine")
@pytest.mark.parametrize("command", COMMANDS)
def test_the_font_of_a_design_serves_its_names_and_labels(command: str, call: Call) -> None:
    square_font(Path("squares.ttf"), SIGNS)
    text = LAMP.read_text("utf-8").replace("foxglove pink", SIGNS)
    text = text.replace("name: Octahedron of Light\n", f"name: {SIGNS}\n")
    Path("lamp.yaml").write_text(f"{text}brand: {{name: Invented, font: squares.ttf}}\n", "utf-8")
    event = (
        'event: 1\nname: An evening\ndesigns: [{design: lamp.yaml}]\ncrew: 2\nopening: "10:00"\n'
    )
    Path("lamp.event.yaml").write_text(event, "utf-8")
    status, _, messages = call(*COMMANDS[command])
    assert status == 0, messages
    (made,) = Path().glob("*.pdf")
    assert SIGNS in words_of(made)
