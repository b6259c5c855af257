"""How fast pictures are drawn, as ratios measured in one run:
`python tests/bench/bench_drawing.py`.

Forty pages of a piece of 300 balloons, as it grows brace by brace, drawn by us and by
matplotlib's PdfPages. Matplotlib is handed our finished pictures, their paths worked out
beforehand for nothing; ours works everything out from the scene. It draws them twice: every
path (the same picture), and flat, one patch for each balloon (less than the same picture).
Then the figures of a booklet of 10,000 balloons, and what research's rules come to on the
shipped designs, and how many pages and words their booklets have and how full the pages are.
"""

from __future__ import annotations

import buildplan  # noqa: F401 - before numpy, so that its linear algebra is in one thread

# isort: split
import io
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path
from statistics import median
from typing import Any

import matplotlib as mpl
import numpy as np
from matplotlib.backends.backend_pdf import PdfPages
from matplotlib.collections import PathCollection
from matplotlib.figure import Figure
from matplotlib.path import Path as Outline
from reportlab.pdfgen.canvas import Canvas

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.closeups import ON_THE_PIECE, plan_views
from buildplan.booklet.common.picture_figures import figures
from buildplan.booklet.editions import print_booklet
from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.drawing.bodies import Scene
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.fonts import REGULAR, register_fonts
from buildplan.drawing.marks import Circle, Curve, Ink, PathMark, Picture, Polyline, Stamp
from buildplan.drawing.pdf import draw_picture
from buildplan.drawing.scene import step_picture
from buildplan.drawing.symbols import look_marks
from buildplan.framework.counts import balloon_counts
from buildplan.shape.finding import find_shape

sys.path.insert(0, str(Path(__file__).parents[1] / "booklet"))
from page_fill import page_fill
from random_tubes import RANDOM, random_book

mpl.use("Agg")
PAGES = 40
SIZE = (480.0, 600.0)
KINDS = (
    ("long", "link", 12, 8, "#1F5F8B"),
    ("cross", "link", 12, 8, "#F7F3E8"),
    ("lock", "round", 5, 3.5, "#C9A227"),
)
BALLOONS = {
    key: {"kind": kind, "nominal": size, "inflate_to": gauge, "colour": colour, "label": key}
    for key, kind, size, gauge, colour in KINDS
}


def design(name: str, course: Sequence[object], closed: bool) -> Design:
    """A tube of four chains."""
    tube = {
        "closed": closed,
        "chains": 4,
        "long": "long",
        "brace": "cross",
        "single": "cross",
        "lock": "lock",
        "course": list(course),
    }
    data = {"buildplan": 1, "name": name, "units": "in", "balloons": BALLOONS}
    return Design.model_validate(data | {"build": {"tube": tube}})


def growing(pages: int) -> list[Scene]:
    """Scenes of a bent tube of 300 balloons, one brace (or its locks) more on each page."""
    course = [{"repeat": 6, "cells": ["straight"]}, "fan", {"repeat": 6, "cells": ["straight"]}]
    course += ["fan", {"repeat": 5, "cells": ["straight"]}]
    framework = build_framework(design("bench", course, closed=False))
    shape = find_shape(framework)
    chains = frozenset(id_ for id_, link in framework.link.items() if link.role == "chain")
    scenes = []
    links, locks = set(chains), set[str]()
    for page in range(pages):
        brace = framework.braces[page // 2 % len(framework.braces)]
        new_links = frozenset(brace.links) - links if page % 2 == 0 else frozenset[str]()
        new_locks = frozenset(brace.section) - locks if page % 2 else frozenset[str]()
        scenes.append(
            Scene(
                framework,
                shape,
                new_links=new_links,
                done_links=frozenset(links),
                new_locks=new_locks,
                done_locks=frozenset(locks),
            )
        )
        links |= new_links
        locks |= new_locks
    whole = len(framework.links) + 2 * len(framework.locks)
    print(f"piece of {whole} balloons, {pages} pages")
    return scenes


def by_us(scenes: Sequence[Scene]) -> bytes:
    """The pages as we draw them, from the scenes on."""
    register_fonts()
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=SIZE, invariant=1, pageCompression=1, initialFontName=REGULAR)
    for scene in scenes:
        draw_picture(canvas, step_picture(scene, CAMERAS["corner"], *SIZE), 0, 0)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def outline_of(mark: PathMark) -> Outline:
    """One of our paths as matplotlib's."""
    if isinstance(mark, Circle):
        return Outline.circle(mark.centre, mark.radius)
    if isinstance(mark, Polyline):
        return Outline([*mark.points, mark.points[0]] if mark.closed else mark.points)
    points = [mark.start, *(point for piece in mark.pieces for point in piece)]
    return Outline(points, [Outline.MOVETO, *[Outline.CURVE4] * (len(points) - 1)])


def outlines_of(picture: Picture, flat: bool) -> list[tuple[Outline, Ink, float]]:
    """Every path of a picture; flat, only the outlines of the balloons."""
    found = []
    for mark in picture.marks:
        if isinstance(mark, Polyline | Curve | Circle):
            found.append((outline_of(mark), mark.ink, 1.0))
        elif isinstance(mark, Stamp):
            if flat and mark.look.form not in ("link", "round"):
                continue
            a, b, c, d, e, f = mark.matrix
            scale = float(np.hypot(a, b))
            paths = look_marks(mark.look)
            for path in paths[-1:] if flat else paths:
                outline = outline_of(path)
                at = outline.vertices @ np.array([[a, b], [c, d]]) + np.array([e, f])
                found.append((Outline(at, outline.codes), path.ink, scale))
    return found


def by_matplotlib(pages: Sequence[list[tuple[Outline, Ink, float]]]) -> bytes:
    """The pages as PdfPages draws them: one collection of paths a page."""
    out = io.BytesIO()
    with PdfPages(out) as pdf:
        for page in pages:
            figure = Figure(figsize=(SIZE[0] / 72, SIZE[1] / 72))
            axes = figure.add_axes((0, 0, 1, 1))
            axes.set(xlim=(0, SIZE[0]), ylim=(0, SIZE[1]))
            axes.set_axis_off()
            paths = PathCollection(
                [outline for outline, _, _ in page],
                facecolors=[ink.fill or "none" for _, ink, _ in page],
                edgecolors=[ink.stroke or "none" for _, ink, _ in page],
                linewidths=[ink.width * scale for _, ink, scale in page],
            )
            axes.add_collection(paths)
            pdf.savefig(figure)
    return out.getvalue()


def timed(work: Callable[[], Any], times: int = 1) -> tuple[float, Any]:
    """Least wall time of `times` runs, and the last result."""
    least, result = float("inf"), None
    for _ in range(times):
        start = time.perf_counter()
        result = work()
        least = min(least, time.perf_counter() - start)
    return least, result


def against_matplotlib() -> None:
    scenes = growing(PAGES)
    ours, data = timed(lambda: by_us(scenes), 3)
    print(f"  ours            {ours:6.2f} s  {len(data) / 1e6:5.2f} MB")
    pictures = [step_picture(scene, CAMERAS["corner"], *SIZE) for scene in scenes]
    for name, flat in (("every path", False), ("flat", True)):
        pages = [outlines_of(picture, flat) for picture in pictures]
        theirs, data = timed(partial(by_matplotlib, pages), 1)
        print(
            f"  PdfPages, {name:10} {theirs:6.2f} s  {len(data) / 1e6:5.2f} MB"
            f"   {theirs / ours:5.1f} times ours"
        )


def ten_thousand() -> None:
    """The booklet of a large piece as a user prints it, by the command, from file to file; a
    draft (exit status 1), for no frame of that size stands by itself."""
    side = {"repeat": 155, "cells": ["straight"]}
    large = design("large", [{"repeat": 4, "cells": [side, "tip"]}], closed=True)
    total = sum(balloon_counts(build_framework(large)).values())
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "large.yaml"
        file.write_text(large.model_dump_json(exclude_defaults=True, exclude_none=True), "utf-8")
        command = [
            sys.executable,
            "-m",
            "buildplan",
            "booklet",
            str(file),
            "--out",
            folder,
            "--draft",
        ]
        taken, _ = timed(lambda: subprocess.run(command, check=False, capture_output=True))
        (booklet,) = Path(folder).glob("*.pdf")
        size = booklet.stat().st_size
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    print(
        f"booklet of a piece of {total} balloons, by the command: {taken:.0f} s "
        f"({used.ru_utime + used.ru_stime:.0f} s of one processor), {size / 1e6:.1f} MB"
    )


def rules() -> None:
    """What research's rules come to on the shipped designs and on three random tubes, and how
    their close-ups keep to the builder's seat."""
    print(
        "design               steps kinds  new parts (median, most)  close-ups  across a corner"
        "  flips of A-B-C-D  joints out of their quarter  joints apart, least  least uncovered"
        "  lines over new work"
    )
    for name, book in books():
        views = plan_views(book)
        found = figures(book, views)
        new = [len(step.links) for step in book.steps if step.kind in ON_THE_PIECE]
        kinds = len({step.kind for step in book.steps})
        print(
            f"{name:20} {len(book.steps):5} {kinds:5}  {median(new):8.0f} {max(new):6}"
            f" {found.closeups:17} {found.across:16} {found.flips:17} {found.moved:28}"
            f" {found.least_apart:20.2f} {found.least_seen:16.2f} {found.crossing:20}"
        )


def pages() -> None:
    """How many pages and words each booklet has, and how full its pages are."""
    print("design               pages (training, crew, sale)  words  filled (mean)  half empty")
    for name, book in books():
        printed = {
            edition: page_fill(
                print_booklet(gather_book(book.design, book.paper, book.units, edition))
            )
            for edition in ("training", "crew", "sale")
        }
        training = printed["training"]
        counts = "".join(f"{len(one.filled):6}" for one in printed.values())
        print(
            f"{name:20} {counts:>28} {training.words:6} {np.mean(training.filled):14.2f}"
            f" {len(training.short):11}"
        )


def books() -> Iterator[tuple[str, Book]]:
    """The shipped designs and three random tubes, gathered for the training edition."""
    folder = Path(__file__).parents[2] / "designs"
    for path in sorted((*folder.glob("*.yaml"), *(folder / "gallery").glob("*.yaml"))):
        if not path.stem.endswith(".event"):
            read = read_design(path)
            yield path.stem, gather_book(read, PAPERS["a4"], read.units, "training")
    for seed in RANDOM:
        yield f"random tube {seed}", random_book(seed)


if __name__ == "__main__":
    against_matplotlib()
    ten_thousand()
    rules()
    pages()
    sys.stdout.flush()
