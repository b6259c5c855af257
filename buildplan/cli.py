"""The commands. Exit status: 0 good; 1 the design was read and has problems, each listed;
2 it could not be read, or the call is wrong."""

from __future__ import annotations

import json
import os
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import asdict, replace
from datetime import datetime
from enum import StrEnum
from functools import partial
from pathlib import Path
from typing import Annotated, Any, TypeVar

import typer
from pikepdf import PdfError
from rich.console import Console

from buildplan import __version__
from buildplan.booklet.book import Book, gather_book
from buildplan.booklet.brand import branding
from buildplan.booklet.buyers import (
    Buyer,
    BuyersUnreadableError,
    name_problem,
    read_buyers,
    slug,
    tidy,
)
from buildplan.booklet.csv_text import csv_bytes
from buildplan.booklet.editions import print_booklet, print_folded
from buildplan.booklet.event_booklet import print_event
from buildplan.booklet.event_load import load_rows
from buildplan.booklet.event_plan import plan_event
from buildplan.booklet.event_times import timetable_rows
from buildplan.booklet.facts import examination_as_json, facts_as_json, problem_as_json
from buildplan.booklet.gallery import Exhibit, is_design_file, print_gallery
from buildplan.booklet.money import missing_prices
from buildplan.booklet.money import quote as quote_of
from buildplan.booklet.pages_shopping import print_shopping
from buildplan.booklet.paper import PAPERS
from buildplan.booklet.paper import large_print as enlarged
from buildplan.booklet.quote_words import quote_lines, quote_rows
from buildplan.booklet.report import check_report, steps_report
from buildplan.booklet.serial import NoSerialError
from buildplan.booklet.shopping import Asked, shopping_lines, shopping_list, shopping_rows
from buildplan.booklet.step_drawings import step_drawings
from buildplan.booklet.verifying import verified_lines, verify
from buildplan.booklet.watching import Glance, preview_path, saves
from buildplan.booklet.watching import watch as watch_design
from buildplan.design.beginnings import PIECES, TALL, USUAL_GAUGE, Wish
from buildplan.design.event import EVENT_SUFFIX, read_event
from buildplan.design.measures import Units, parse_speed, size_words
from buildplan.design.problems import (
    DesignProblemsError,
    Problem,
    UnreadableDesignError,
    in_words,
)
from buildplan.design.reading import read_brand, read_design
from buildplan.design.schema import design_schema, event_schema
from buildplan.design.starting import design_text, file_stem
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.forms import FORMS
from buildplan.drawing.marks import Picture
from buildplan.drawing.png import picture_png
from buildplan.drawing.scene import finished_picture
from buildplan.fitting.design_file import fit_text
from buildplan.fitting.fitting import GAUGES_IN, fit_outline, recommended
from buildplan.fitting.picture import fit_picture
from buildplan.fitting.report import fit_report, larger_words
from buildplan.fitting.sources import parse_gauges, parse_height, read_outline
from buildplan.framework.build import build_framework
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.tell_times import start_lines, steps_with_times, timetable_lines
from buildplan.sequence.time_log import TimeLogError, labour_lines, learn_minutes
from buildplan.sequence.timetable import crew_of, latest_starts, timetable
from buildplan.shape.constants import CONSTANTS

app = typer.Typer(
    name="buildplan",
    help=(
        "Design a freestanding link-balloon piece once, in a small text file; get its counts, "
        "its shape and whether it stands, the order of work, and a printed, illustrated "
        "booklet.\n\nStart with: buildplan check designs/reading_star.yaml"
    ),
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)
Answer = TypeVar("Answer", str, int, float)
Given = TypeVar("Given")
Parsed = TypeVar("Parsed")
# shorter keys could be guessed
LEAST_KEY = 16

errors = Console(stderr=True, highlight=False, soft_wrap=True)


class Edition(StrEnum):
    """Who the booklet is for."""

    TRAINING = "training"
    CREW = "crew"
    SALE = "sale"


class PaperName(StrEnum):
    """Paper the booklet is printed on."""

    A4 = "a4"
    LETTER = "letter"


class UnitsName(StrEnum):
    """Units in words and on gauges."""

    INCHES = "in"
    CENTIMETRES = "cm"


class FormName(StrEnum):
    """Form of a drawing's file."""

    SVG = "svg"
    PNG = "png"
    PDF = "pdf"


class View(StrEnum):
    """Where the piece is seen from."""

    FRONT = "front"
    BACK = "back"
    SIDE = "side"
    TOP = "top"
    CORNER = "corner"


DesignArgument = Annotated[
    Path, typer.Argument(metavar="DESIGN", help="The design file, a .yaml.", show_default=False)
]
DesignsArgument = Annotated[
    list[Path],
    typer.Argument(metavar="DESIGN...", help="One or more design files.", show_default=False),
]
JsonOption = Annotated[
    bool, typer.Option("--json", help="Print plain data for scripts, not words.")
]


class ProblemsFoundError(Exception):
    """The design was read and has problems that have been listed."""


def _book(
    path: Path,
    paper: str = "a4",
    units: UnitsName | None = None,
    edition: str = "training",
    gust_m_per_s: float | None = None,
) -> Book:
    design = read_design(path, CONSTANTS)
    with errors.status(f"Finding the shape and the order of work of {design.name} ..."):
        chosen: Units = design.units if units is None else "in" if units == "in" else "cm"
        return gather_book(design, PAPERS[paper], chosen, edition, gust_m_per_s)


def _asked(parse: Callable[[Given], Parsed], text: Given) -> Parsed:
    """What a user gave, read; a wrong call where it cannot be."""
    try:
        return parse(text)
    except ValueError as error:
        raise typer.BadParameter(str(error)) from error


def _list_problems(file: Path, problems: tuple[Problem, ...]) -> None:
    for problem in problems:
        errors.print(in_words(problem, str(file)), markup=False)


read_known = partial(read_design, known_constants=CONSTANTS)


def _read_all(paths: Iterable[Path], read: Callable[[Path], Parsed]) -> dict[Path, Parsed]:
    """Each file read; when some cannot be, the problems of all of them are listed first."""
    found: dict[Path, Parsed] = {}
    worst: Exception | None = None
    for path in paths:
        try:
            found[path] = read(path)
        except DesignProblemsError as error:
            _list_problems(path, error.problems)
            worst = worst or ProblemsFoundError()
        except UnreadableDesignError as error:
            errors.print(in_words(error.problem, error.file), markup=False)
            worst = typer.Exit(2)
    if worst is not None:
        raise worst
    return found


def _without_events(paths: Sequence[Path]) -> list[Path]:
    """The design files of `designs/*.yaml`, which names event files too."""
    events = [path for path in paths if path.name.endswith(EVENT_SUFFIX)]
    for path in events:
        errors.print(f"{path} is an event file: see buildplan event", markup=False)
    if len(events) == len(paths):
        raise typer.BadParameter("name at least one design file")
    return [path for path in paths if path not in events]


def _write_whole(path: Path, data: bytes) -> None:
    with _whole_file(path) as part:
        part.write_bytes(data)


@contextmanager
def _whole_file(path: Path) -> Iterator[Path]:
    """A path to write to that becomes `path` only when all is written."""
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(prefix=f".{path.name}-", dir=path.parent)
    os.close(handle)
    part = Path(name)
    try:
        yield part
        # a temporary file is private; a booklet is as open as any new file
        umask = os.umask(0)
        os.umask(umask)
        part.chmod(0o666 & ~umask)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


@app.command()
def booklet(
    designs: Annotated[
        list[Path],
        typer.Argument(metavar="DESIGN...", help="One or more design files.", show_default=False),
    ],
    edition: Annotated[
        Edition, typer.Option(help="Who it is for.", show_choices=True)
    ] = Edition.TRAINING,
    paper: Annotated[PaperName, typer.Option(help="Paper size.")] = PaperName.A4,
    units: Annotated[
        UnitsName | None, typer.Option(help="Inches or centimetres; else as in the file.")
    ] = None,
    out: Annotated[Path, typer.Option(help="Folder to write to; made if it is not there.")] = Path(
        "output"
    ),
    draft: Annotated[
        bool, typer.Option("--draft", help="Print even a piece that has problems.")
    ] = False,
    large_print: Annotated[
        bool, typer.Option("--large-print", help="Crew edition: text at 16 points or more.")
    ] = False,
    fold: Annotated[
        bool,
        typer.Option(
            "--fold",
            help="Lay the pages out for folding (A5 from A4), gauges in a file of their own.",
        ),
    ] = False,
    brand: Annotated[
        Path | None,
        typer.Option(
            help="Sale edition: a brand file, in place of the design's own brand.",
            show_default=False,
        ),
    ] = None,
    buyer: Annotated[
        str | None,
        typer.Option(
            "--for",
            metavar="NAME",
            help="Sale edition: the buyer, marked on every page.",
            show_default=False,
        ),
    ] = None,
    buyers: Annotated[
        Path | None,
        typer.Option(
            help="Sale edition: a CSV file with a column 'name', a copy for each row.",
            show_default=False,
        ),
    ] = None,
    key: Annotated[
        Path | None,
        typer.Option(
            help="Sale edition: a file of your own, kept secret, that seals the copies.",
            show_default=False,
        ),
    ] = None,
) -> None:
    """Print the numbered, illustrated booklet of a design as a PDF.

    Prints the path of each booklet it wrote. A piece that has problems (see check) is not
    printed, unless as a draft.
    """
    if edition is not Edition.SALE:
        for_sale = {"--brand": brand, "--for": buyer, "--buyers": buyers, "--key": key}
        for option, given in for_sale.items():
            if given is not None:
                raise typer.BadParameter(f"{option} is for the sale edition: add --edition sale")
    sold_to, failed = _sold_to(buyer, buyers)
    secret = _secret(key)
    marked_as = branding(read_brand(brand), brand) if brand is not None else None
    if large_print and edition is not Edition.CREW:
        raise typer.BadParameter("--large-print is for the crew edition: add --edition crew")
    for path in _without_events(designs):
        book = _book(path, paper.value, units, edition.value)
        own = book.design.brand
        if marked_as is not None:
            book = replace(book, branding=marked_as)
        elif edition is Edition.SALE and own is not None:
            book = replace(book, branding=branding(own, path))
        if large_print:
            book = replace(book, paper=enlarged(book.paper))
        if book.facts.problems:
            failed = True
            _list_problems(path, book.facts.problems)
            if not draft:
                errors.print(f"{path}: no booklet printed; mend it, or print it with --draft")
                continue
        size = f"{paper.value}-large" if large_print else paper.value
        for one in sold_to:
            stem = f"{path.stem}-{edition.value}-{size}" + (f"-{one.slug}" if one.slug else "")
            with errors.status(f"Printing {book.facts.name} {one.name} ..."):
                copy = replace(book, buyer=one.name)
                if fold:
                    sheets, alone = print_folded(copy, secret)
                    files = {f"{stem}-fold.pdf": sheets, f"{stem}-gauges.pdf": alone}
                else:
                    files = {f"{stem}.pdf": print_booklet(copy, secret)}
            for name, data in files.items():
                with _whole_file(out / name) as part:
                    part.write_bytes(data)
                typer.echo(out / name)
    if failed:
        raise ProblemsFoundError


def _sold_to(name: str | None, listed: Path | None) -> tuple[tuple[Buyer, ...], bool]:
    """Whom copies are for (nobody named when none is given), and whether rows of the list were
    no good; those are told."""
    if name is not None and listed is not None:
        raise typer.BadParameter("give --for or --buyers, not both")
    if name is not None:
        problem = name_problem(tidy(name))
        if problem is not None:
            raise typer.BadParameter(f"--for: {problem}")
        return (Buyer(tidy(name), slug(name)),), False
    if listed is None:
        return (Buyer("", ""),), False
    try:
        buyers, bad = read_buyers(listed)
    except OSError as error:
        raise typer.BadParameter(f"{listed} cannot be read ({error.strerror})") from error
    except BuyersUnreadableError as error:
        raise typer.BadParameter(f"{listed}: {error}") from error
    for row in bad:
        errors.print(f"{listed}:{row.line}: {row.why}; no copy printed", markup=False)
    if not buyers:
        errors.print(f"{listed}: no buyer in it, nothing printed", markup=False)
    return buyers, bool(bad) or not buyers


def _secret(key: Path | None) -> bytes:
    if key is None:
        return b""
    try:
        secret = key.read_bytes()
    except OSError as error:
        raise typer.BadParameter(f"{key} cannot be read ({error.strerror})") from error
    if len(secret) < LEAST_KEY:
        raise typer.BadParameter(f"{key} is too short for a key: {LEAST_KEY} bytes or more")
    return secret


@app.command(name="verify")
def verify_copy(
    file: Annotated[
        Path, typer.Argument(metavar="FILE.pdf", help="A sold copy.", show_default=False)
    ],
    key: Annotated[
        Path | None,
        typer.Option(help="The file that sealed it, if one did.", show_default=False),
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """Check the serial of a sold copy, and that no page of it was changed."""
    secret = _secret(key)
    try:
        found = verify(file, secret)
    except OSError as error:
        raise typer.BadParameter(f"{file} cannot be read ({error.strerror})") from error
    except PdfError:
        raise typer.BadParameter(f"{file} is no PDF that can be read") from None
    except NoSerialError:
        raise typer.BadParameter(f"{file} carries no serial: only the sale edition does") from None
    if as_json:
        typer.echo(json.dumps(asdict(found) | {"good": found.good}, indent=2, ensure_ascii=False))
    else:
        typer.echo("\n".join(verified_lines(found)))
    if not found.good:
        raise ProblemsFoundError


@app.command()
def check(
    design: DesignArgument,
    as_json: JsonOption = False,
    gust: Annotated[
        str | None,
        typer.Option(
            help="A gust that ballast is to hold: 25km/h, 15mph or 7m/s.", show_default=False
        ),
    ] = None,
    watch: Annotated[
        bool,
        typer.Option(
            "--watch", help="Look again at each save, and draw a preview; Ctrl-C ends it."
        ),
    ] = False,
) -> None:
    """Count the balloons of a design, find its shape, and say whether it closes and stands,
    how it gives and what wind it bears."""
    if watch:
        if as_json or gust is not None:
            raise typer.BadParameter("--watch goes without --json and --gust")
        _watch(design)
        return
    gust_m_per_s = _asked(parse_speed, gust) if gust is not None else None
    try:
        book = _book(design, gust_m_per_s=gust_m_per_s)
    except DesignProblemsError as error:
        if not as_json:
            raise
        listed = [problem_as_json(p) | {"text": in_words(p, str(design))} for p in error.problems]
        typer.echo(json.dumps({"name": error.name, "problems": listed}, indent=2))
        raise ProblemsFoundError from error
    if as_json:
        facts = facts_as_json(book.facts) | examination_as_json(book.examination)
        typer.echo(json.dumps(facts, indent=2, ensure_ascii=False))
    else:
        typer.echo(check_report(book))
    if book.facts.problems:
        raise ProblemsFoundError


def _watch(design: Path) -> None:
    """Show the design at each save until Ctrl-C."""
    preview = preview_path(design)

    def show(seen: Glance) -> None:
        if seen.picture is not None:
            _write_whole(preview, picture_png(seen.picture))
        typer.echo("\n".join([*seen.lines, f"  {preview}" if seen.picture else ""]).rstrip())

    try:
        watch_design(design, saves(design), show, CONSTANTS)
    except KeyboardInterrupt:
        typer.echo("")


def _one_of(known: Sequence[str]) -> Callable[[str], str]:
    """Reads an answer that is one of a few; any other is asked for again."""

    def read(answer: str) -> str:
        if answer not in known:
            raise typer.BadParameter(f"answer one of {', '.join(known)}")
        return answer

    return read


@app.command()
def new(
    name: Annotated[str | None, typer.Argument(help="What the piece is called.")] = None,
    piece: Annotated[
        str | None, typer.Option(help=f"What it is: {', '.join(PIECES)}.", show_default=False)
    ] = None,
    points: Annotated[
        int | None, typer.Option(help="How many points a star has.", show_default=False)
    ] = None,
    units: Annotated[UnitsName | None, typer.Option(help="Inches or centimetres.")] = None,
    size: Annotated[
        float | None,
        typer.Option(
            help="About how wide it is (an arch, a column: how high).", show_default=False
        ),
    ] = None,
    gauge: Annotated[
        float | None, typer.Option(help="What its links are sized to.", show_default=False)
    ] = None,
    colours: Annotated[
        str | None,
        typer.Option(
            help='Long chains, braces, locks: "deep blue, ivory, gold"; # and six hex digits '
            "do as well.",
            show_default=False,
        ),
    ] = None,
    out: Annotated[
        Path | None, typer.Option(help="The file to write; else by its name.", show_default=False)
    ] = None,
    usual: Annotated[
        bool, typer.Option("--usual", help="Ask nothing: the usual for all that is not given.")
    ] = False,
) -> None:
    """Begin a design: writes a commented file that passes check, to change as you like.

    Asks for what is not given.
    """

    def asked(given: Answer | None, question: str, default: Answer, **more: Any) -> Answer:
        if given is not None or usual:
            return default if given is None else given
        answer: Answer = typer.prompt(question, default=default, err=True, **more)
        return answer

    name = asked(name, "What is it called", "New piece")
    kinds = list(PIECES)
    piece = asked(piece, f"What is it ({', '.join(kinds)})", "ring", value_proc=_one_of(kinds))
    points = asked(points, "How many points", 5) if piece == "star" else 5
    measure = asked(units, "Inches or centimetres (in, cm)", "in", value_proc=_one_of(["in", "cm"]))
    unit: Units = "cm" if measure == "cm" else "in"
    gauge = asked(gauge, f"Links sized to ({unit})", USUAL_GAUGE[unit])
    across = "high" if piece in TALL else "wide"
    wide = asked(size, f"About how {across} ({unit}; 0 for the usual)", 0.0, type=float)
    named = asked(colours, "Colours of long chains, braces, locks", "deep blue, ivory, ivory")
    wish = Wish(name, piece, unit, points, wide or None, gauge, tuple(named.split(",")))
    text = _asked(design_text, wish)
    path = out or Path(f"{file_stem(name)}.yaml")
    try:
        with path.open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        raise typer.BadParameter(
            f"{path} is there already; choose another with --out, or another name"
        ) from None
    typer.echo(path)
    facts = _book(path).facts
    tall = size_words(facts.height_m, unit)
    typer.echo(f"{facts.total} balloons, about {tall} high; see buildplan check", err=True)
    if facts.problems:
        _list_problems(path, facts.problems)
        raise ProblemsFoundError


@app.command()
def steps(
    design: DesignArgument,
    as_json: JsonOption = False,
    crew: Annotated[
        int | None,
        typer.Option(
            min=1, max=100, help="Share the work among so many people.", show_default=False
        ),
    ] = None,
    inflate_only: Annotated[
        int, typer.Option(min=0, help="How many of them cannot tie, only inflate.")
    ] = 0,
    on_site: Annotated[
        bool, typer.Option("--on-site", help="Nothing is made beforehand in the workshop.")
    ] = False,
    opening: Annotated[
        datetime | None,
        typer.Option(
            formats=["%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M"],
            help="When it must stand; says when to start at the latest.",
            show_default=False,
        ),
    ] = None,
) -> None:
    """List the steps of the work in order, each with what it adds and a count to check.

    With --crew, also who does what when, who waits for whom, and the longest way through.
    """
    book = _book(design)
    planned = None
    if crew is not None:
        people = _asked(lambda text: crew_of(int(text), inflate_only), str(crew))
        minutes = {str(kind): value for kind, value in book.design.labour.items()}
        planned = timetable(book.steps, people, minutes, in_workshop=not on_site)
    if as_json:
        listed = steps_as_json(book.steps)
        if planned is not None:
            listed = steps_with_times(listed, planned)
        typer.echo(json.dumps(listed, indent=2, ensure_ascii=False))
        return
    typer.echo(steps_report(book.steps))
    if planned is not None:
        typer.echo("\n" + "\n".join(timetable_lines(planned)))
        if opening is not None:
            typer.echo("\n" + "\n".join(start_lines(latest_starts(planned, opening))))


@app.command()
def times(
    log: Annotated[
        Path, typer.Argument(metavar="LOG.csv", help="Your own times: kind, count, minutes.")
    ],
) -> None:
    """Learn minutes for each kind of work from a log of your own times.

    Prints a `labour` block to paste into a design file.
    """
    try:
        learned = learn_minutes(log.read_text("utf-8"))
    except (OSError, UnicodeDecodeError) as error:
        raise typer.BadParameter(f"{log} cannot be read: {error}") from error
    except TimeLogError as error:
        for mistake in error.mistakes:
            errors.print(f"{log}: {mistake}", markup=False)
        raise ProblemsFoundError from error
    typer.echo("\n".join(labour_lines(learned)))


@app.command()
def draw(
    design: DesignArgument,
    view: Annotated[
        View | None, typer.Option(help="The finished piece, seen from here.", show_default="front")
    ] = None,
    step: Annotated[
        int | None, typer.Option(help="The pictures of this step.", show_default=False)
    ] = None,
    every: Annotated[
        bool, typer.Option("--all", help="The pictures of every step, a file each.")
    ] = False,
    out: Annotated[
        Path | None,
        typer.Option(
            help="File to write: .pdf, .svg or .png; with --all, a folder.", show_default=False
        ),
    ] = None,
    form: Annotated[
        FormName | None,
        typer.Option("--format", help="Form of the files of --all.", show_default="svg"),
    ] = None,
) -> None:
    """Draw the finished piece as seen from one side, or the pictures of steps.

    Prints the path of each file it wrote.
    """
    if (view is not None) + (step is not None) + every > 1:
        raise typer.BadParameter("choose one of --view, --step and --all")
    if form is not None and not every:
        raise typer.BadParameter("--format goes with --all; else the name given by --out tells it")
    if every:
        _draw_all(design, out or Path("output"), f".{(form or FormName.SVG).value}")
        return
    what = f"step-{step}" if step is not None else (view or View.FRONT).value
    target = out or Path(f"{design.stem}-{what}.pdf")
    if target.suffix.lower() not in FORMS:
        raise typer.BadParameter(f"{target}: the name must end in .pdf, .svg or .png")
    book = _book(design)
    if step is not None:
        if not 1 <= step <= len(book.steps):
            raise typer.BadParameter(
                f"--step {step}: {book.facts.name} has {len(book.steps)} steps, numbered from 1"
            )
        picture = step_drawings(book)[step]
    else:
        camera = CAMERAS[(view or View.FRONT).value]
        picture = finished_picture(book.framework, book.shape, camera, 720, 720)
    _write_picture(picture, target)


def _draw_all(design: Path, folder: Path, suffix: str) -> None:
    book = _book(design)
    digits = len(str(len(book.steps)))
    with errors.status(f"Drawing {len(book.steps)} steps of {book.facts.name} ..."):
        for number, picture in step_drawings(book).items():
            name = f"{design.stem}-step-{number:0{digits}}{suffix}"
            _write_picture(picture, folder / name)


def _write_picture(picture: Picture, target: Path) -> None:
    with _whole_file(target) as part:
        part.write_bytes(FORMS[target.suffix.lower()](picture))
    typer.echo(target)


CsvOption = Annotated[
    Path | None,
    typer.Option("--csv", help="Write a table for spreadsheets too.", show_default=False),
]


@app.command()
def shopping(
    designs: DesignsArgument,
    csv: CsvOption = None,
    pdf: Annotated[
        Path | None, typer.Option(help="Write a page to tick off too.", show_default=False)
    ] = None,
    paper: Annotated[PaperName, typer.Option(help="Paper size of the page.")] = PaperName.A4,
) -> None:
    """List the balloons to buy for one design or several, in whole packs with spares.

    Balloons of one colour, kind and size are one line, whichever design they are for.
    """
    read = _read_all(_without_events(designs), read_known)
    found = shopping_list([Asked(str(p), d, build_framework(d)) for p, d in read.items()])
    if csv is not None:
        _write_whole(csv, csv_bytes(shopping_rows(found)))
    if pdf is not None:
        _write_whole(pdf, print_shopping(found, PAPERS[paper.value]))
    typer.echo("\n".join(shopping_lines(found)))


@app.command()
def event(
    file: Annotated[
        Path, typer.Argument(metavar="EVENT", help="The event file.", show_default=False)
    ],
    paper: Annotated[PaperName, typer.Option(help="Paper size.")] = PaperName.A4,
    out: Annotated[Path, typer.Option(help="Folder to write to; made if it is not there.")] = Path(
        "output"
    ),
    draft: Annotated[
        bool, typer.Option("--draft", help="Print even when a piece has problems.")
    ] = False,
) -> None:
    """Plan several designs at one event: one shopping list, one timetable, one load list.

    Writes a PDF and a table of each list, and prints the path of each.
    """
    asked = read_event(file)
    paths = [file.parent / piece.design for piece in asked.designs]
    read = _read_all(paths, read_known)
    needed = [
        Asked(str(path), design, build_framework(design), piece.count)
        for (path, design), piece in zip(read.items(), asked.designs, strict=True)
    ]
    found = shopping_list(needed)
    books = [_book(path, paper.value, edition="crew") for path in paths]
    if any(book.facts.problems for book in books):
        for path, book in zip(paths, books, strict=True):
            _list_problems(path, book.facts.problems)
        if not draft:
            errors.print(f"{file}: nothing printed; mend the pieces, or print with --draft")
            raise ProblemsFoundError
    plan = plan_event(asked, books, found)
    name = file.name.removesuffix(EVENT_SUFFIX).removesuffix(".yaml")
    for written, data in (
        (f"{name}-event-{paper.value}.pdf", print_event(plan, PAPERS[paper.value])),
        (f"{name}-shopping.csv", csv_bytes(shopping_rows(found))),
        (f"{name}-timetable.csv", csv_bytes(timetable_rows(plan))),
        (f"{name}-load.csv", csv_bytes(load_rows(plan))),
    ):
        _write_whole(out / written, data)
        typer.echo(out / written)


@app.command()
def quote(design: DesignArgument, csv: CsvOption = None) -> None:
    """Price a design: material, work and margin, all at the design file's own prices."""
    book = _book(design)
    missing = missing_prices(book.design, book.facts.purchases)
    if missing:
        raise DesignProblemsError(str(design), missing)
    currency, rates = book.design.currency, book.design.rates
    assert currency is not None, "missing_prices names it"
    assert rates is not None, "missing_prices names them"
    priced = quote_of(book.facts.purchases, book.facts.work_minutes, currency, rates)
    if csv is not None:
        _write_whole(csv, csv_bytes(quote_rows(priced, book.units)))
    typer.echo("\n".join(quote_lines(priced, book.facts.name, book.units)))
    if book.facts.problems:
        _list_problems(design, book.facts.problems)
        raise ProblemsFoundError


@app.command()
def gallery(
    folder: Annotated[
        Path,
        typer.Argument(
            metavar="FOLDER", help="A folder of designs, with those below it.", show_default=False
        ),
    ],
    paper: Annotated[PaperName, typer.Option(help="Paper size.")] = PaperName.A4,
    out: Annotated[Path | None, typer.Option(help="PDF to write.", show_default=False)] = None,
) -> None:
    """Print an index and contact sheets of every design in a folder."""
    target = out or Path("output") / f"{folder.resolve().name}-gallery-{paper.value}.pdf"
    if target.suffix.lower() != ".pdf":
        raise typer.BadParameter(f"{target}: the name must end in .pdf")
    if not folder.is_dir():
        raise typer.BadParameter(f"{folder} is no folder")
    files = sorted(f for f in folder.rglob("*.yaml") if is_design_file(f))
    if not files:
        raise typer.BadParameter(f"{folder} holds no design files (.yaml)")
    exhibits = [Exhibit(str(f.relative_to(folder)), _book(f, paper.value)) for f in files]
    for exhibit in exhibits:
        _list_problems(folder / exhibit.file, exhibit.book.facts.problems)
    with _whole_file(target) as part:
        part.write_bytes(print_gallery(exhibits, PAPERS[paper.value], "Gallery of designs"))
    typer.echo(target)
    if any(exhibit.book.facts.problems for exhibit in exhibits):
        raise ProblemsFoundError


@app.command(name="fit")
def fit_design(
    outline: Annotated[
        str,
        typer.Argument(
            metavar="OUTLINE",
            help="An .svg file with a closed path; letter:A and the like; or one of star (star-6), "
            "crescent, shield, arrow, drop, cloud, house, ring, rounded-square, leaf, fish, "
            "lightning.",
            show_default=False,
        ),
    ],
    height: Annotated[
        str, typer.Option(help="How high the piece is to be: 150cm, 1.5m, 60in, 5ft.")
    ] = "150cm",
    gauges: Annotated[
        str, typer.Option(help="Gauges that links may be sized to, in inches.")
    ] = ",".join(f"{gauge:g}" for gauge in GAUGES_IN),
    out: Annotated[
        Path | None, typer.Option(help="Design file to write, a .yaml.", show_default=False)
    ] = None,
    picture: Annotated[
        Path | None,
        typer.Option(
            help="Picture of the outline over the piece: .png, .pdf or .svg.", show_default=False
        ),
    ] = None,
) -> None:
    """Find the tube whose solved shape comes closest to an outline.

    Prints how close one design for each gauge comes; the one marked * is written.
    """
    for target, forms in ((out, {".yaml", ".yml"}), (picture, FORMS)):
        if target is not None and target.suffix.lower() not in forms:
            raise typer.BadParameter(f"{target}: the name must end in {' or '.join(sorted(forms))}")
    height_m, gauges_in = _asked(parse_height, height), _asked(parse_gauges, gauges)
    try:
        wanted = _asked(lambda source: read_outline(source, height_m), outline)
    except OSError as error:
        raise typer.BadParameter(f"{outline} cannot be read ({error.strerror})") from error
    with errors.status(f"Fitting {wanted.name} ..."):
        fits = fit_outline(wanted, gauges_in)
    if not fits:
        errors.print(f"{outline}: no closed tube follows this outline; make it larger or simpler")
        raise ProblemsFoundError
    chosen = recommended(fits)
    typer.echo(fit_report(fits))
    if not chosen.good:
        with errors.status("Looking for a size at which it can be had ..."):
            typer.echo(larger_words(wanted, min(gauges_in)))
    if out is not None:
        with _whole_file(out) as part:
            part.write_text(fit_text(chosen), "utf-8")
        typer.echo(out)
    if picture is not None:
        with _whole_file(picture) as part:
            part.write_bytes(FORMS[picture.suffix.lower()](fit_picture(chosen)))
        typer.echo(picture)
    if not chosen.good:
        raise ProblemsFoundError


@app.command()
def schema(
    event: Annotated[bool, typer.Option("--event", help="Of event files, not designs.")] = False,
) -> None:
    """Print the JSON Schema of the design file, for editors that complete and check it."""
    chosen = event_schema() if event else design_schema()
    typer.echo(json.dumps(chosen, indent=2, ensure_ascii=False))


def _version(asked: bool) -> None:
    if asked:
        typer.echo(f"buildplan {__version__}")
        raise typer.Exit


@app.callback()
def _options(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Print the version.")
    ] = False,
) -> None:
    pass


def main() -> None:
    """Run a command; every error that a user can cause ends in one clear message."""
    try:
        app()
    except UnreadableDesignError as error:
        errors.print(in_words(error.problem, error.file), markup=False)
        sys.exit(2)
    except DesignProblemsError as error:
        _list_problems(Path(error.file), error.problems)
        sys.exit(1)
    except ProblemsFoundError:
        sys.exit(1)
    except BrokenPipeError:
        # the reader of our output has gone; nothing is left to say
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(1)
    except OSError as error:
        errors.print(f"cannot write {error.filename}: {error.strerror}", markup=False)
        sys.exit(2)
    except Exception as error:
        if os.environ.get("BUILDPLAN_DEBUG"):
            raise
        errors.print(
            f"buildplan has a fault ({type(error).__name__}: {error}). Please report it; "
            "BUILDPLAN_DEBUG=1 shows where it is.",
            markup=False,
        )
        sys.exit(2)
