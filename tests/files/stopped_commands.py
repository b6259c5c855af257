"""The commands that are stopped at work, and what they are given."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

sys.path.append(str(Path(__file__).parents[1]))
from awkward_pieces import tube

ROOT = Path(__file__).parent.parent.parent
DESIGNS = ROOT / "designs"
STAR, FRAME = DESIGNS / "reading_star.yaml", DESIGNS / "picture_frame.yaml"
LAMPS = sorted((DESIGNS / "gallery").glob("lamp_*.yaml"))
FOR_SALE = ("--edition", "sale", "--brand", DESIGNS / "brand" / "lantern_street.yaml")
# what a call has in their place: the folder that it writes to, and that of what it is given
OUT, GIVEN = "OUT", "GIVEN"
Call = tuple[str | Path, ...]

COMMANDS: Mapping[str, Call] = {
    "booklet": ("booklet", STAR, "--out", OUT),
    "several": ("booklet", *LAMPS, "--out", OUT),
    "fit": (
        *("fit", "crescent", "--height", "120cm", "--effort", "quick"),
        *("--out", f"{OUT}/a.yaml", "--picture", f"{OUT}/a.png"),
    ),
    "event": ("event", DESIGNS / "reopening.event.yaml", "--out", OUT),
    "gallery": ("gallery", DESIGNS, "--out", f"{OUT}/gallery.pdf"),
    "desk": ("desk", OUT, "--no-open"),
    "check": ("check", f"{GIVEN}/large.yaml", "--chart", f"{OUT}/chart.svg"),
    "steps": ("steps", f"{GIVEN}/large.yaml", "--crew", "4"),
    "resize": ("resize", FRAME, "--height", "240cm", "--by", "gauge", "--out", f"{OUT}/a.yaml"),
    "course": (
        *("course", FRAME, "--effort", "12", "--picture", f"{OUT}/c.png"),
        *("--out", f"{OUT}/c.yaml"),
    ),
    "learn": ("learn", f"{GIVEN}/log.csv", "--hands", f"{OUT}/hands.yaml"),
    "measure": ("measure", STAR, "--out", f"{OUT}/log.csv", "--pdf", f"{OUT}/log.pdf"),
    "draw": ("draw", STAR, "--all", "--out", OUT),
    "export": ("export", STAR, "--out", f"{OUT}/star.json"),
    "companion": ("companion", STAR, "--out", f"{OUT}/star.html"),
    "shopping": ("shopping", *LAMPS, "--csv", f"{OUT}/a.csv", "--pdf", f"{OUT}/a.pdf"),
    "quote": ("quote", FRAME, "--csv", f"{OUT}/q.csv", "--pdf", f"{OUT}/q.pdf"),
    "copies": ("booklet", LAMPS[0], *FOR_SALE, "--buyers", f"{GIVEN}/buyers.csv", "--out", OUT),
    "verify": ("verify", f"{GIVEN}/sold.pdf"),
    "times": ("times", f"{GIVEN}/log.csv"),
    "new": ("new", "Star", "--usual", "--out", f"{OUT}/star.yaml"),
    "schema": ("schema",),
}
# the desk has no other end, once it says that it is open
ENDLESS: Mapping[str, str] = {"desk": "The desk is open"}


def lay_out(folder: Path) -> None:
    """Put what the commands are given into a folder."""
    large = tube(1600).model_dump_json(by_alias=True, exclude_unset=True)
    (folder / "large.yaml").write_text(large, "utf-8")
    lines = [f"pair,{20 + n % 7},{10 + n % 5}" for n in range(2000)]
    (folder / "log.csv").write_text("\n".join(["kind,count,minutes", *lines, ""]), "utf-8")
    names = [f"Ana Example {n}" for n in range(60)]
    (folder / "buyers.csv").write_text("\n".join(["name", *names, ""]), "utf-8")
    printed = folder / "printed"
    call = ("booklet", STAR, *FOR_SALE, "--for", "Ana Example", "--out", printed)
    run = [sys.executable, "-m", "buildplan", *map(str, call)]
    subprocess.run(run, cwd=ROOT, stdout=subprocess.DEVNULL, check=True)
    (file,) = printed.iterdir()
    file.rename(folder / "sold.pdf")
