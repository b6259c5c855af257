"""Names from the right, everywhere: whatever is printed has them in isolates (UAX 9, 2.4) beside
words of ours, so that none turns round a line of ours.
"""

from __future__ import annotations

from pathlib import Path
from unicodedata import bidirectional

import pytest
from conftest import Call

from buildplan.drawing.typeset import face
from buildplan.drawing.typeset.font_files import FontFile
from buildplan.drawing.typeset.setting import Letterform, OwnFace, set_line
from buildplan.language.isolates import END, LETTERS_FROM_RIGHT, OPENING
from buildplan.language.shown import DIRECTIONS

NAME, LABEL, LOCK = "שער 30 (קריאה) Foxglove!", "Heather כחול 12", "زهري 3 (فاتح)"
EVENT, PLACE, VAN, BRAND, BUYER = (
    "פתיחה 2027 (חדש)",
    "רחוב 12, Foxglove",
    "משאית 2",
    "בלונים 7",
    "חנה 5",
)
OWN = (NAME, LABEL, LOCK, EVENT, PLACE, VAN, BRAND, BUYER)
DESIGN = f"""buildplan: 1
name: {NAME}
units: in
balloons:
  a: {{kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: {LABEL}}}
  b: {{kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: {LOCK}}}
build: {{column: {{around: 4, rings: 3, ring: a, between: a, lock: b}}}}
pack_sizes: {{a: 50, b: 100}}
pack_prices: {{a: 15, b: 9}}
currency: GBP
rates: {{hour: 18, margin: 0.3}}
"""
JOB = f"""event: 1
name: {EVENT}
place: {PLACE}
designs: [{{design: gate.yaml, count: 2}}]
crew: 2
opening: "10:00"
vehicles: [{{name: {VAN}, length: 3 m, width: 1.8 m, height: 1.8 m}}]
doors: [{{name: {VAN}, width: 1 m, height: 2 m}}]
"""


@pytest.fixture
def lines(monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """The lines that are set from the left while it is in use."""
    found = set[str]()

    def heard(text: str, own: OwnFace, named: tuple[FontFile, ...]) -> tuple[str | Letterform, ...]:
        if not own.from_right:
            found.add(text)
        return set_line(text, own, named)

    monkeypatch.setattr(face, "set_line", heard)
    return found


def outside_isolates(text: str) -> str:
    """The signs of a line that are in no isolate; one may have begun on the line before."""
    depth, found = 0, ""
    for sign in text:
        if sign == END and not depth:
            found = ""
        elif sign == END or sign in OPENING:
            depth += 1 if sign in OPENING else -1
        elif not depth:
            found += sign
    return found


@pytest.mark.parametrize(
    "command",
    [
        "booklet gate.yaml",
        "booklet gate.yaml --edition crew --language de",
        f"booklet gate.yaml --edition sale --brand brand.yaml --language fr --for|{BUYER}",
        f"quote job.event.yaml --pdf quote.pdf --for|{BUYER}",
        "event job.event.yaml",
        "shopping gate.yaml --pdf list.pdf",
        "measure gate.yaml --out log.csv --pdf sheet.pdf",
        "gallery . --out gallery.pdf",
        "check gate.yaml --chart chart.svg",
        "draw gate.yaml --labels --out gate.png",
    ],
)
def test_no_line_of_ours_is_turned_round(
    command: str, call: Call, tmp_path: Path, lines: set[str]
) -> None:
    (tmp_path / "gate.yaml").write_text(DESIGN, encoding="utf-8")
    (tmp_path / "job.event.yaml").write_text(JOB, encoding="utf-8")
    (tmp_path / "brand.yaml").write_text(f"name: {BRAND}\ncontact: {PLACE}\n", encoding="utf-8")
    words, *buyer = command.split("|")
    status, _, told = call(*words.split(), *buyer)
    assert status == 0, told
    for line in lines:
        bare = outside_isolates(line)
        if any(bidirectional(sign) in LETTERS_FROM_RIGHT for sign in bare):
            # a name by itself, or words of one that are measured by themselves
            assert any(bare.rstrip(",;") in own for own in OWN), line


@pytest.mark.parametrize(
    "command",
    [
        "new|שער (3) ab|--out|made.yaml",
        "resize|שער.yaml|--height|1m|--by|cells|--out|made.yaml",
        "measure|שער.yaml|--out|made.csv",
        "shopping|שער.yaml|--csv|made.csv",
    ],
)
def test_what_is_written_for_others_holds_no_sign_of_direction(
    command: str, call: Call, tmp_path: Path
) -> None:
    """Files of designs, in which such signs are refused, and cells that a table looks up."""
    (tmp_path / "שער.yaml").write_text(DESIGN, encoding="utf-8")
    status, _, told = call(*command.split("|"), answers="\n" * 12)
    assert status == 0, told
    (made,) = tmp_path.glob("made.*")
    text = made.read_text("utf-8")
    assert "שער" in text or LABEL in text
    if made.suffix == ".yaml":
        assert not DIRECTIONS & set(text)
        assert call("check", made)[0] == 0
