"""A fit as a design file, with comments."""

from __future__ import annotations

import json
from collections.abc import Sequence
from textwrap import wrap

from buildplan.design.model import Design
from buildplan.fitting.fitting import Fit
from buildplan.fitting.report import holes_words, share_words
from buildplan.language.grammar import decimal
from buildplan.language.speaking import say
from buildplan.patterns.tube_keys import CourseItem, Repeat, Tube
from buildplan.source.balloons import Balloon

WIDTH, COMMENT_WIDTH = 96, 90


def fit_text(fit: Fit) -> str:
    """The text of the design file: the same design, written for people."""
    design, close = fit.design, fit.close
    tube = design.build.keys_of(Tube)
    assert tube is not None, "a fit is a tube"
    fitted = say(
        "{piece}: fitted to the outline {name}, {height} cm high.",
        piece=design.name,
        name=fit.outline.name,
        height=round(fit.outline.height_m * 100),
    )
    how_close = say(
        "It covers {share} of what it and the outline cover together; nowhere are the two edges "
        "farther apart than {distance} of a long link. Measure ten tied links and give "
        "chain_of_ten to make the size your own.",
        share=share_words(close.overlap),
        distance=decimal(close.farthest, 2),
    )
    chains = say("A outer front, B inner front, C inner back, D outer back")
    lines = [
        f"# {fitted}",
        *_comment(how_close, COMMENT_WIDTH),
        *(line for said in holes_words(fit) for line in _comment(said)),
        "buildplan: 1",
        f"name: {_scalar(design.name)}",
        f"units: {design.units}",
        "",
        "balloons:",
        *_balloons(design),
        "",
        "build:",
        "  tube:",
        "    closed: true",
        f"    chains: 4         # {chains}",
        f"    long: {tube.long}",
        f"    brace: {tube.brace}",
        f"    single: {tube.single}",
        f"    lock: {tube.lock}",
        "    course:",
        *_course(tube.course, 6),
    ]
    if design.colour_pattern:
        curving = say(
            "Long links go straight on; a short one on one side makes the course curve gently to "
            "that side."
        )
        lines += ["", f"# {curving}", "colour_pattern:"]
        for letter, keys in design.colour_pattern.items():
            assert isinstance(keys, list), "a fit lists the balloons of a chain"
            lines += _wrapped(f"  {letter}: [", keys, "]")
    if design.stand_on:
        touching = say("The joints that touch the floor when it stands as it is drawn.")
        lines += ["", f"# {touching}"]
        lines += _wrapped("stand_on: [", design.stand_on, "]")
    return "\n".join(lines) + "\n"


def _comment(text: str, width: int = WIDTH) -> list[str]:
    return [f"# {line}" for line in wrap(text, width - 2)]


def _scalar(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _balloons(design: Design) -> list[str]:
    names = [f"{key}:" for key in design.balloons]
    width = max(map(len, names))
    return [
        f"  {name:{width}} {_balloon(balloon)}"
        for name, balloon in zip(names, design.balloons.values(), strict=True)
    ]


def _balloon(balloon: Balloon) -> str:
    kind = f"{balloon.kind}," + " " * (5 - len(balloon.kind))
    return (
        f"{{kind: {kind} nominal: {balloon.nominal:g}, inflate_to: {balloon.inflate_to:g}, "
        f'colour: "{balloon.colour}", label: {balloon.label}}}'
    )


def _course(items: Sequence[CourseItem], indent: int) -> list[str]:
    pad = " " * indent
    lines: list[str] = []
    for item in items:
        if not isinstance(item, Repeat):
            lines.append(f"{pad}- {item}")
        elif len(item.cells) == 1:
            lines.append(f"{pad}- {{repeat: {item.repeat}, cells: [{item.cells[0]}]}}")
        else:
            lines += [f"{pad}- repeat: {item.repeat}", f"{pad}  cells:"]
            lines += _course(item.cells, indent + 4)
    return lines


def _wrapped(begin: str, words: Sequence[str], end: str) -> list[str]:
    """Words with commas, on as many lines as it takes."""
    lines, line = [], begin
    for i, word in enumerate(words):
        piece = word + (end if i == len(words) - 1 else ", ")
        if len(line) + len(piece) > WIDTH:
            lines.append(line.rstrip())
            line = " " * len(begin)
        line += piece
    return [*lines, line]
