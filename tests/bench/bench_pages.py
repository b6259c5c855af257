"""How many pages the booklets have and how full they are: `python tests/bench/bench_pages.py`.

Every shipped design, or those that are named, in the three editions on both papers: pages, and
the numbers of those less than half full, the last of a part aside (research asks for at most one
in fifteen), and the references to pages where what they name is not. `--language es` prints them in
another language, `--large-print` in large print, `--out FOLDER` keeps them.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from buildplan.booklet.common.book import book_of_piece
from buildplan.booklet.editions import SECTIONS, print_booklet
from buildplan.design.translating import translated_design
from buildplan.document.paper import PAPERS, large_print
from buildplan.evaluation.evaluating import NEW_PARTS, evaluate
from buildplan.evaluation.seating import read_whole

sys.path.insert(0, str(Path(__file__).parents[1]))
sys.path.insert(0, str(Path(__file__).parents[1] / "booklet"))
from page_fill import page_fill
from page_words import words_of_pages
from references import astray, recorded

DESIGNS = Path(__file__).parents[2] / "designs"
MOST = 1 / 15


def shipped() -> list[Path]:
    """The designs and those of the gallery."""
    files = sorted((*DESIGNS.glob("*.yaml"), *(DESIGNS / "gallery").glob("*.yaml")))
    return [file for file in files if not file.stem.endswith(".event")]


def table(files: Sequence[Path], language: str, large: bool, out: Path | None) -> None:
    """A line for each booklet, and what all of them come to."""
    print("design               edition   paper   pages  words  less than half full")
    totals: dict[str, list[int]] = {edition: [0, 0, 0] for edition in SECTIONS}
    for file in files:
        design = translated_design(read_whole(file), language)
        found = evaluate(design, design.units if language == "en" else "cm", NEW_PARTS)
        for edition in SECTIONS:
            for name, paper in PAPERS.items():
                on = large_print(paper) if large else paper
                book = book_of_piece(found, on, edition, language)
                with recorded() as record:
                    data = print_booklet(book)
                if out is not None:
                    (out / f"{file.stem}-{edition}-{name}.pdf").write_bytes(data)
                fill = page_fill(data)
                pages, short = len(fill.filled), len(fill.short)
                over = " <- too many" if short > MOST * pages else ""
                totals[edition][0] += pages
                totals[edition][1] += short
                totals[edition][2] += bool(over)
                which = " ".join(f"{n} ({fill.filled[n - 1]:.2f})" for n in fill.short)
                print(
                    f"{file.stem:20} {edition:9} {name:7} {pages:5} {fill.words:6}  {which}{over}",
                    flush=True,
                )
                for wrong in astray(book, record, words_of_pages(data)):
                    print("    astray:", wrong, flush=True)
    for edition, (all_pages, all_short, many) in totals.items():
        print(
            f"{edition}: {all_pages} pages, {all_short} less than half full; over 1 in 15: {many}"
        )


def main() -> None:
    """Read the command line."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("files", nargs="*", type=Path)
    asked.add_argument("--language", default="en")
    asked.add_argument("--large-print", action="store_true")
    asked.add_argument("--out", type=Path)
    given = asked.parse_args()
    table(given.files or shipped(), given.language, given.large_print, given.out)


if __name__ == "__main__":
    main()
