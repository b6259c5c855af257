"""What is made wrong, and how each kind is read: as the commands read it."""

from __future__ import annotations

import io
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from random import Random

from judging import Read, problem_lines
from mutating import (
    Mutate,
    mutated_bytes,
    mutated_png,
    mutated_tokens,
    mutated_xml,
    mutated_yaml,
)
from PIL import Image, ImageDraw

from buildplan.booklet.sale.seller import LogoShown
from buildplan.business.copies.brand import branding
from buildplan.business.copies.buyers import read_buyers
from buildplan.design.building import build_framework
from buildplan.design.event import read_event
from buildplan.design.model import Brand
from buildplan.design.reading import read_brand, read_design
from buildplan.document.paper import PAPERS
from buildplan.document.printing import Document, Section, print_document
from buildplan.evaluation.evaluating import Evaluation, evaluate
from buildplan.evaluation.seating import seated
from buildplan.fitting.sources import read_outlines
from buildplan.framework.counts import balloon_counts
from buildplan.hands.file import read_hands
from buildplan.hands.log import minutes_learned, read_log
from buildplan.language.voice import Voice
from buildplan.shape.constants import CONSTANTS
from buildplan.source.bounded import bytes_within
from buildplan.source.file_text import MOST_BYTES

ROOT = Path(__file__).parents[2]
DESIGNS = ROOT / "designs"
LARGE, CHECKED = (
    3000,
    90,
)  # balloons: of more the framework is not built, of fewer all is worked out
HEIGHT_M = 1.5


@dataclass(frozen=True)
class Kind:
    """A kind of file: those that are right, how they are made wrong, its ending, how it is read."""

    name: str
    right: Callable[[], Sequence[bytes]]
    mutate: tuple[Mutate, ...]
    ending: str
    read: Read

    def case(self, number: int) -> bytes:
        """The case of a number, always the same."""
        random = Random(f"{self.name} {number}")
        return random.choice(self.mutate)(random, random.choice(self.right()))


def _kept(files: Sequence[Path]) -> Callable[[], Sequence[bytes]]:
    data = tuple(file.read_bytes() for file in files)
    return lambda: data


def _texts(*texts: str) -> Callable[[], Sequence[bytes]]:
    data = tuple(text.encode() for text in texts)
    return lambda: data


# --- what is read ------------------------------------------------------------------------


def _design(path: Path) -> Sequence[str]:
    design = read_design(path, CONSTANTS)
    balloon_counts(build_framework(design))
    return ()


def _checked(path: Path) -> Sequence[str]:
    """A small design is worked out as `check` does."""
    found = seated(read_design(path, CONSTANTS))
    if found.problems:
        return problem_lines(found.problems)
    framework = build_framework(found.design)
    if sum(balloon_counts(framework).values()) > CHECKED:
        return ()
    return problem_lines(evaluate(found.design, found.design.units, 12).facts.problems)


def _event(path: Path) -> Sequence[str]:
    read_event(path)
    return ()


def _brand(path: Path) -> Sequence[str]:
    branding(read_brand(path), path)
    return ()


def _hands(path: Path) -> Sequence[str]:
    read_hands(path)
    return ()


def _buyers(path: Path) -> Sequence[str]:
    _, bad = read_buyers(path)
    return [Voice().tell(row.why) for row in bad[:20]]


def _log(path: Path) -> Sequence[str]:
    """As `times` does; a sheet names no design that is there."""
    try:
        text = bytes_within(path, MOST_BYTES).decode("utf-8-sig")
    except UnicodeDecodeError:
        return ["it is no text"]  # told by the command itself
    minutes_learned(read_log(text, lambda name: _no_design(path.parent / name)))
    return ()


def _no_design(path: Path) -> Evaluation:
    design = read_design(path)
    return evaluate(design, design.units, 12)


def _outline(path: Path) -> Sequence[str]:
    read_outlines(str(path), HEIGHT_M)
    return ()


def _logo(path: Path) -> Sequence[str]:
    """Read, and drawn on a page as it is on a cover."""
    found = branding(Brand.model_validate({"name": "x", "logo": path.name}), path)
    assert found.logo is not None
    shown = [LogoShown(found.logo, "x")]
    print_document(Document([Section("x", shown)], PAPERS["a4"], Voice(), "x"))
    return ()


# --- what is right -----------------------------------------------------------------------

SVG = """<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="120mm"
 height="90" viewBox="0 0 120 90"><defs><linearGradient id="g"><stop offset="0" stop-color="#f00"/>
</linearGradient><g id="h"><path d="M1 1h9v9z" fill="url(#g)"/></g></defs><g transform="rotate(9)
 scale(1.5 -2) matrix(1 0 0 1 3 4)" style="fill:#1F5F8B;fill-rule:evenodd"><path id="p"
 d="M10 10 L50 10 C 60 10 60 40 50 40 S 20 60 10 40 Q 5 20 10 10 Z M20 20 v9 h9 z"/>
<circle cx="70" cy="30" r="12"/><ellipse cx="9" cy="9" rx="4" ry="8"/><rect x="80" y="5" width="20"
 height="9" rx="2"/><polygon points="5,60 30,80 55,60"/><polyline points="1 2 3 4"/><line x1="0"
 y1="0" x2="9" y2="9" stroke="navy" stroke-width=".5"/><use xlink:href="#h" x="5"/></g></svg>
"""
SMALL = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">
<path d="M1,1 a3 2 30 1 0 5 5z"/></svg>
"""
BRAND = """name: Lantern Street Balloons
colour: "#3A2E4F"
accent: gold
contact: lantern-street.example
licence: One licence, one business.
link: https://lantern-street.example/{piece}
"""
HANDS = """buildplan_hands: 1
units: cm
chains_of_ten: [{nominal: 30.48, gauge: 20.32, length: 260}]
rings: [{links: [{nominal: 30.48, gauge: 20.32, count: 8}], across: 80}]
heights:
  - links: [{count: 40}, {nominal: 30.48, gauge: 20.32, count: 8}]
    span: 150
    body: 20
    sag: 1
    height: 168
work: [{kind: brace, count: 12, minutes: 30}]
"""
LOG = "kind,count,minutes\nbrace,12,30\nlock,40,25.5\npair,8,4\n"
# as the companion exports it (screen/web/src/log.ts)
TICKS = 'kind,count,minutes,step,note\r\nbrace,3,12.5,7,"a, note"\r\nlock,4,2,8,\r\n'
SHEET = (
    "design;what;which;count;expected;unit;measured\nlamp.yaml;chain of ten;long;10;2,6;m;2,61\n"
    "lamp.yaml;work;brace;4;;min;9\n"
)
BUYERS = 'name,mail\nAna Example,a@x.example\n"Zoë, Vermeulen",\nАнна,b\n山田,c\n'


def _pictures() -> Sequence[bytes]:
    """Small drawings as PNG and JPEG, in the modes that programs save."""
    found = []
    for mode, ground, ink in (("RGB", "white", "navy"), ("L", 255, 0), ("RGBA", (0,) * 4, "red")):
        picture = Image.new(mode, (48, 36), ground)
        ImageDraw.Draw(picture).ellipse((8, 6, 40, 30), fill=ink)
        for form in ("PNG", "JPEG") if mode == "RGB" else ("PNG",):
            stream = io.BytesIO()
            picture.save(stream, form)
            found.append(stream.getvalue())
    picture = Image.new("P", (20, 20), 0)
    stream = io.BytesIO()
    picture.save(stream, "PNG", transparency=0)
    return (*found, stream.getvalue())


PICTURES = tuple(_pictures())
PNGS = tuple(data for data in PICTURES if data.startswith(b"\x89PNG"))
YAML = (mutated_yaml, mutated_yaml, mutated_tokens, mutated_bytes)
DRAWN = (mutated_xml, mutated_xml, mutated_xml, mutated_tokens, mutated_bytes)
TEXT = (mutated_tokens, mutated_tokens, mutated_bytes)
GALLERY = sorted((DESIGNS / "gallery").glob("*.yaml"), key=lambda path: path.stat().st_size)

KINDS = (
    Kind(
        "design",
        _kept([*GALLERY, *sorted((ROOT / "tests" / "design" / "files").glob("*.yaml"))]),
        YAML,
        ".yaml",
        _design,
    ),
    Kind("checked", _kept(GALLERY[:5]), (mutated_yaml,), ".yaml", _checked),
    Kind("event", _kept([DESIGNS / "reopening.event.yaml"]), YAML, ".event.yaml", _event),
    Kind("brand", _texts(BRAND), YAML, ".yaml", _brand),
    Kind("hands", _texts(HANDS), YAML, ".yaml", _hands),
    Kind("buyers", _texts(BUYERS), TEXT, ".csv", _buyers),
    Kind("log", _texts(LOG, SHEET), TEXT, ".csv", _log),
    Kind("ticks", _texts(TICKS), TEXT, ".csv", _log),
    Kind("svg outline", _texts(SVG, SMALL), DRAWN, ".svg", _outline),
    Kind("picture", lambda: PICTURES, (mutated_bytes,), ".jpg", _outline),
    Kind("png outline", lambda: PNGS, (mutated_png, mutated_bytes), ".png", _outline),
    Kind("svg logo", _texts(SVG, SMALL), DRAWN, ".svg", _logo),
    Kind("png logo", lambda: PNGS, (mutated_png, mutated_bytes), ".png", _logo),
)
