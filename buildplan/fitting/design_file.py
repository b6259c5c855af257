"""The text of a fit's design file, written for people."""

from __future__ import annotations

import json
from collections.abc import Sequence
from textwrap import wrap

from buildplan.design.model import Design
from buildplan.language.isolates import without_isolates
from buildplan.language.voice import Voice
from buildplan.patterns.extra_keys import Extra, ExtraBalloon
from buildplan.patterns.figure_keys import Figure, FigureRun, FigureStroke
from buildplan.patterns.tube_keys import CourseItem, Repeat, Tube
from buildplan.source.balloons import Balloon

WIDTH, COMMENT_WIDTH = 96, 90
ENGLISH = Voice()


def design_text(
    design: Design, head: Sequence[str] = (), voice: Voice = ENGLISH, stands: bool = True
) -> str:
    """The text of the design file of a tube or a figure, with what `head` says over it; `stands`
    tells whether it stands by itself on the joints of `stand_on`."""
    tube, figure = design.build.keys_of(Tube), design.build.keys_of(Figure)
    lines = [
        *(line for said in head for line in _comment(said, COMMENT_WIDTH)),
        "buildplan: 1",
        f"name: {_scalar(design.name)}",
        f"units: {design.units}",
        "",
        "balloons:",
        *balloon_lines(design),
        "",
        "build:",
        *(_tube(tube, voice) if tube is not None else []),
        *(_figure(figure, voice) if figure is not None else []),
    ]
    if design.colour_pattern:
        curving = voice.say(
            "Long links go straight on; a short one on one side makes the course curve gently to "
            "that side."
        )
        lines += ["", f"# {curving}", "colour_pattern:"]
        for letter, keys in design.colour_pattern.items():
            assert isinstance(keys, list), "a fit lists the balloons of a chain"
            lines += _wrapped(f"  {letter}: [", keys, "]")
    if design.stand_on:
        touching = (
            voice.say("The joints that touch the floor when it stands as it is drawn.")
            if stands
            else voice.say("Joints that are level when it is held the way up that it is drawn.")
        )
        lines += ["", f"# {touching}"]
        lines += _wrapped("stand_on: [", design.stand_on, "]")
    if design.pole:
        held = voice.say("It does not hold itself up: a pole that stands by itself holds it.")
        lines += ["", f"# {held}", "pole: true"]
    return without_isolates("\n".join(lines)) + "\n"


def _tube(tube: Tube, voice: Voice) -> list[str]:
    chains = voice.say("A outer front, B inner front, C inner back, D outer back")
    return [
        "  tube:",
        "    closed: true",
        f"    chains: 4         # {chains}",
        f"    long: {tube.long}",
        f"    brace: {tube.brace}",
        f"    single: {tube.single}",
        f"    lock: {tube.lock}",
        "    course:",
        *_course(tube.course, 6),
        *_extra(tube.extra, voice),
    ]


def _figure(figure: Figure, voice: Voice) -> list[str]:
    from_a_side = voice.say(
        "Each stroke but the first sets out from a side of a cell of one before."
    )
    return [
        "  figure:",
        f"    long: {figure.long}",
        f"    brace: {figure.brace}",
        f"    lock: {figure.lock}",
        f"    heading: {figure.heading:g}",
        *(f"    {line}" for line in _comment(from_a_side)),
        "    strokes:",
        *(line for stroke in figure.strokes for line in _stroke(stroke)),
    ]


def _stroke(stroke: FigureStroke) -> list[str]:
    out_of = (
        f"stroke: {stroke.stroke}, cell: {stroke.cell}, side: {stroke.side}, "
        if stroke.stroke is not None
        else ""
    )
    cells = [
        f"{{repeat: {item.repeat}, cells: [{', '.join(item.cells)}]}}"
        if isinstance(item, FigureRun)
        else str(item)
        for item in stroke.cells
    ]
    return _wrapped(f"      - {{{out_of}cells: [", cells, "]}")


def _comment(text: str, width: int = WIDTH) -> list[str]:
    return [f"# {line}" for line in wrap(text, width - 2)]


def _scalar(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def balloon_lines(design: Design) -> list[str]:
    """A line for each kind of balloon."""
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
        elif len(item.cells) == 1 and not isinstance(item.cells[0], Repeat):
            lines.append(f"{pad}- {{repeat: {item.repeat}, cells: [{item.cells[0]}]}}")
        else:
            lines += [f"{pad}- repeat: {item.repeat}", f"{pad}  cells:"]
            lines += _course(item.cells, indent + 4)
    return lines


def _extra(rungs: Sequence[Extra], voice: Voice) -> list[str]:
    if not rungs:
        return []
    across = voice.say(
        "Balloons across the spurs, where the outer chains run out to a point or an arm and back."
    )
    lines = ["    extra:"]
    for rung in rungs:
        if isinstance(rung, ExtraBalloon):
            ends = ", ".join(rung.joints)
            lines.append(f"      - {{joints: [{ends}], balloon: {rung.balloon}}}")
        else:
            lines.append(f"      - [{', '.join(rung)}]")
    return [f"    {line}" for line in _comment(across)] + lines


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
