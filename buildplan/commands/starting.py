"""Commands that begin a design."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from buildplan.commands.app import app
from buildplan.commands.aside import answer, aside
from buildplan.commands.options import FLAG, IN_ENGLISH, LanguageOption, UnitsName
from buildplan.design.beginnings import PIECES
from buildplan.design.measures import Units, size_words
from buildplan.language.messages import mark, message
from buildplan.language.voice import Voice

if TYPE_CHECKING:
    from buildplan.design.wishes import Wish


@dataclass(frozen=True)
class _Question:
    """What is asked for one part of a wish, what is usual, and the only answers if they are few."""

    words: str
    usual: str
    known: tuple[str, ...] = ()

    def ask(self, voice: Voice) -> str:
        """The answer; one that is none of a few is asked for again."""

        try:
            answer = self._typed()
            while self.known and answer not in self.known:
                aside(voice.say("answer one of {names}", names=", ".join(self.known)))
                answer = self._typed()
        except typer.Abort as ended:
            if not isinstance(ended.__context__, EOFError):
                raise  # Ctrl-C
            typer.echo(err=True)
            raise typer.BadParameter(
                voice.say("the answers end here; give the rest as options, or add --usual")
            ) from None
        return answer

    def _typed(self) -> str:
        return str(typer.prompt(self.words, default=self.usual, err=True))


def _question(about: str, answers: Mapping[str, str], voice: Voice) -> _Question | None:
    """The question for one part of a wish, in the light of the answers before it; None where it is
    not asked."""
    from buildplan.design.measures import units_read
    from buildplan.design.starting import colour_names
    from buildplan.design.wishes import TALL, USUAL_COLOURS, USUAL_GAUGE

    unit: Units = "cm" if answers.get("units") == "cm" else "in"
    match about:
        case "name":
            return _Question(voice.say("What is it called"), voice.say("New piece"))
        case "piece":
            kinds = tuple(PIECES)
            return _Question(
                voice.say("What is it ({names})", names=", ".join(kinds)), "ring", kinds
            )
        case "points" if answers["piece"] == "star":
            return _Question(voice.say("How many points"), "5")
        case "units":
            usual = units_read(voice, "in")
            return _Question(voice.say("Inches or centimetres (in, cm)"), usual, ("in", "cm"))
        case "gauge":
            gauge = f"{USUAL_GAUGE[unit]:g}"
            return _Question(voice.say("Links sized to ({units})", units=unit), gauge)
        case "size":
            how_large = (
                mark("About how high ({units}; 0 for the usual)")
                if answers["piece"] in TALL
                else mark("About how wide ({units}; 0 for the usual)")
            )
            return _Question(voice.say(how_large, units=unit), "0")
        case "colours":
            colours = colour_names(USUAL_COLOURS, voice)
            return _Question(voice.say("Colours of long chains, braces, locks"), colours)
    return None


def _written(given: Mapping[str, str | None], usual: bool, voice: Voice) -> tuple[str, Wish]:
    """The file that is wished for. What is not given is asked for, and what turns out wrong is
    asked for again; the other answers are kept. With `usual` nothing is asked."""
    from buildplan.design.starting import design_text
    from buildplan.design.wishes import WishError

    answers: dict[str, str] = {}
    for about, value in given.items():
        question = _question(about, answers, voice)
        if value is not None or question is None:
            answers[about] = value or ""
        else:
            answers[about] = question.usual if usual else question.ask(voice)
    while True:
        try:
            wish = _wish(answers)
            return design_text(wish, voice), wish
        except WishError as error:
            again = _question(error.about, answers, voice)
            if usual or again is None:
                raise typer.BadParameter(voice.tell(error.told)) from error
            aside(voice.tell(error.told))
            answers[error.about] = again.ask(voice)


def _wish(answers: Mapping[str, str]) -> Wish:
    from buildplan.design.wishes import Wish

    units: Units = "cm" if answers["units"] == "cm" else "in"
    points = answers["points"] or "5"
    return Wish(
        answers["name"],
        answers["piece"],
        units,
        int(points) if points.isdecimal() else 0,
        _length(answers["size"], units, "size") or None,
        _length(answers["gauge"], units, "gauge"),
        tuple(answers["colours"].split(",")),
    )


def _length(answer: str, units: Units, about: str) -> float:
    """A length as it is answered: a number of the units, or one with a unit of its own."""
    from buildplan.design.wishes import WishError
    from buildplan.source.trade_words import length_in

    try:
        return float(answer.replace(",", "."))
    except ValueError:
        length = length_in(answer, units)
    if length is None:
        raise WishError(
            message("{text} is no length; write it like 8, 8in, 20cm or 1.5m", text=repr(answer)),
            about,
        )
    return length


NameArgument = Annotated[str | None, typer.Argument(help="What the piece is called.")]
PieceOption = Annotated[
    str | None, typer.Option(help=f"What it is: {', '.join(PIECES)}.", show_default=False)
]
PointsOption = Annotated[
    int | None, typer.Option(help="How many points a star has.", show_default=False)
]
UnitsOption = Annotated[UnitsName | None, typer.Option(help="Inches or centimetres.")]
SizeOption = Annotated[
    str | None,
    typer.Option(
        help="About how wide it is (an arch, a column, a drop, an entrance, a sign: how "
        "high): 60, 60in, 1.5m.",
        show_default=False,
    ),
]
GaugeOption = Annotated[
    str | None,
    typer.Option(help="What its links are sized to: 8, 8in, 20cm.", show_default=False),
]
ColoursOption = Annotated[
    str | None,
    typer.Option(
        help='Long chains, braces, locks: "deep blue, ivory, gold"; any name of CSS, and # and '
        "six hex digits, do as well.",
        show_default=False,
    ),
]
OutOption = Annotated[
    Path | None, typer.Option(help="The file to write; else by its name.", show_default=False)
]
UsualOption = Annotated[
    bool,
    typer.Option("--usual", metavar=FLAG, help="Ask nothing: the usual for all that is not given."),
]


@app.command()
def new(
    name: NameArgument = None,
    piece: PieceOption = None,
    points: PointsOption = None,
    units: UnitsOption = None,
    size: SizeOption = None,
    gauge: GaugeOption = None,
    colours: ColoursOption = None,
    out: OutOption = None,
    usual: UsualOption = False,
    language: LanguageOption = IN_ENGLISH,
) -> None:
    """Begin a design: writes a commented file that passes check, to change as you like.

    Asks for what is not given.
    """
    from buildplan.design.starting import file_stem
    from buildplan.source.whole_files import write_new

    voice = Voice(language)
    given = {
        "name": name,
        "piece": piece,
        "points": None if points is None else str(points),
        "units": None if units is None else str(units.value),
        "gauge": gauge,
        "size": size,
        "colours": colours,
    }
    text, wish = _written(given, usual, voice)
    path = out or Path(f"{file_stem(wish.name)}.yaml")
    try:
        write_new(path, text.encode())
    except FileExistsError:
        raise typer.BadParameter(
            voice.say(
                "{file} is there already; choose another with --out, or another name",
                file=str(path),
            )
        ) from None
    answer(path)
    _sum_up(path, wish.units, voice)


def _sum_up(path: Path, units: Units, voice: Voice) -> None:
    """How many balloons a new design has and how high it is; its problems end the command."""
    from buildplan.commands.files import ProblemsFoundError, list_problems
    from buildplan.commands.pieces import evaluation_of

    facts = evaluation_of(path, voice).facts
    summary = voice.say_count(
        "{number} balloon, about {height} high; see buildplan check",
        "{number} balloons, about {height} high; see buildplan check",
        facts.total,
        height=size_words(facts.height_m, units),
    )
    answer(summary, err=True)
    if facts.problems:
        list_problems(path, facts.problems, voice)
        raise ProblemsFoundError
