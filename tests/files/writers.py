"""The commands that write files."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from hashlib import sha256
from pathlib import Path

from attempts import Writer

from buildplan import cli
from buildplan.business.copies.signing import Signer
from buildplan.commands import watching
from buildplan.fitting import effort

sys.path.append(str(Path(__file__).parents[1]))
from certificates import seller

for threads in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[threads] = "1"  # a process with one thread can be copied

ROOT = Path(__file__).parent.parent.parent
LAMP = ROOT / "designs" / "gallery" / "lamp_octahedron.yaml"
FRAME = ROOT / "designs" / "picture_frame.yaml"
PEAR = ROOT / "designs" / "gallery" / "pear_outline.png"
BRAND = ROOT / "designs" / "brand" / "lantern_street.yaml"
EVENT = """event: 1
name: Lamp for the Foxglove Lane Library
designs: [{design: lamp.yaml, count: 2}]
crew: 2
opening: "10:00"
vehicles: [{name: Van, length: 3.4 m, width: 1.8 m, height: 1.9 m}]
"""
LINK = '{kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: deep blue}'
ROUND = '{kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}'
COLUMN = "build: {column: {around: 4, rings: 2, ring: a, between: a, lock: b}}"
POST = f"""buildplan: 1
name: Post
units: in
balloons: {{a: {LINK}, b: {ROUND}}}
{COLUMN}
currency: GBP
prices: {{a: 0.32, b: 0.09}}
rates: {{hour: 18.0, margin: 0.35}}
"""
GATE = f"""buildplan: 1
name: Two Posts
units: in
balloons: {{a: {LINK}, b: {ROUND}}}
build:
  assembly:
    parts:
      - {{name: L, {COLUMN}}}
      - {{name: S, on: L, {COLUMN}}}
    lock: b
"""
LOG = "kind,count,minutes\npair,20,10\npair,30,16\n"
TWO_LAMPS = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 260 100">
<circle cx="50" cy="50" r="50"/><circle cx="180" cy="50" r="50"/></svg>
"""
HANDS = "buildplan_hands: 1\nwork:\n- {kind: pair, count: 5, minutes: 4}\n"
BUYERS = "name\nAna Example\nBo Example\n"
OUT = "OUT"
FOR_SALE = ("--edition", "sale", "--brand", BRAND, "--key", "own.key")
FOR_ANA = ("--for", "Ana Example")
QUICKLY = ("--height", "100cm", "--effort", "quick", "--workers", "1")
LITTLE = replace(effort.QUICK, courses=12, first=3, kept=1, tries=1, judged=1, taller=0)


def command(*arguments: str | Path) -> Callable[[Path], None]:
    """Run a command in the folder that holds the inputs; `OUT` in its arguments is the other."""

    def run(folder: Path) -> None:
        os.chdir(folder.parent)
        sys.argv = ["buildplan", *(str(one).replace(OUT, str(folder)) for one in arguments)]
        cli.main()

    return run


INPUTS = {
    "lamp.yaml": LAMP.read_text("utf-8"),
    "post.yaml": POST,
    "gate.yaml": GATE,
    "two.svg": TWO_LAMPS,
    "lamp.event.yaml": EVENT,
    "post.event.yaml": EVENT.replace("lamp.yaml", "post.yaml"),
    "log.csv": LOG,
    "buyers.csv": BUYERS,
    "own.key": "a key of our own, long enough to be one\n",
}


def watched(folder: Path) -> None:
    """A preview, drawn at the first look at a design file; no further one comes."""

    def once(path: Path, pause: object = None) -> Iterator[None]:
        yield None

    watching.saves = once
    command("check", f"{OUT}/lamp.yaml", "--watch")(folder)


def several(folder: Path) -> None:
    """The booklets of two designs, printed one after the other: a process that others work for
    cannot be copied."""
    os.cpu_count = lambda: 1
    command("booklet", "lamp.yaml", "post.yaml", "--edition", "crew", "--out", OUT)(folder)


def signed(folder: Path) -> None:
    """A sold copy, signed. A signature says when it was made: the first is kept, for all to be
    alike."""
    own, sign = folder.parent / "own.p12", Signer.signed
    if not own.exists():
        seller(own, "lamp")

    def once(signer: Signer, pdf: bytes) -> bytes:
        kept = folder.parent / sha256(pdf).hexdigest()
        if not kept.exists():
            kept.write_bytes(sign(signer, pdf))
        return kept.read_bytes()

    os.environ["BUILDPLAN_SIGN_PASSWORD"] = "lamp"
    Signer.signed = once  # type: ignore[method-assign, assignment]
    command("booklet", "post.yaml", *FOR_SALE, *FOR_ANA, "--sign", own, "--out", OUT)(folder)


def little(*arguments: str | Path) -> Callable[[Path], None]:
    """A fit for which little is searched: what it writes, and when, is the same."""

    def run(folder: Path) -> None:
        vars(effort)["EFFORTS"] = {"quick": LITTLE}
        command("fit", *arguments, "--height", "100cm", "--effort", "quick", "--workers", "1")(
            folder
        )

    return run


COMMANDS = (
    Writer("booklet", command("booklet", "lamp.yaml", "--out", OUT)),
    Writer(
        "sold copies",
        command(
            *("booklet", "lamp.yaml", *FOR_SALE),
            *("--buyers", "buyers.csv", "--out", OUT),
        ),
    ),
    Writer("signed", signed),
    Writer("folded", command("booklet", "lamp.yaml", "--fold", "--out", OUT)),
    Writer("event", command("event", "lamp.event.yaml", "--out", OUT)),
    Writer("companion", command("companion", "lamp.yaml", "--out", f"{OUT}/lamp.html")),
    Writer("model", command("export", "lamp.yaml", "--out", f"{OUT}/lamp.glb")),
    Writer("picture", command("draw", "lamp.yaml", "--out", f"{OUT}/lamp.png")),
    Writer("chart", command("check", "lamp.yaml", "--chart", f"{OUT}/chart.svg")),
    Writer(
        "shopping",
        command("shopping", "lamp.yaml", "--csv", f"{OUT}/a.csv", "--pdf", f"{OUT}/a.pdf"),
    ),
    Writer(
        "sheet",
        command("measure", "lamp.yaml", "--out", f"{OUT}/log.csv", "--pdf", f"{OUT}/log.pdf"),
        over=False,
    ),
    Writer(
        "resized",
        command("resize", FRAME, "--height", "240cm", "--by", "gauge", "--out", f"{OUT}/a.yaml"),
    ),
    Writer(
        "hands",
        command("learn", "log.csv", "--hands", f"{OUT}/hands.yaml"),
        {"hands.yaml": HANDS.encode()},
    ),
    Writer("gallery", command("gallery", ".", "--out", f"{OUT}/gallery.pdf")),
    Writer("steps", command("draw", "post.yaml", "--all", "--out", OUT)),
    Writer("labels", command("draw", "gate.yaml", "--labels", "--out", f"{OUT}/labels.pdf")),
    Writer(
        "event's quote",
        command("quote", "post.event.yaml", "--csv", f"{OUT}/q.csv", "--pdf", f"{OUT}/q.pdf"),
    ),
    Writer("quote", command("quote", FRAME, "--csv", f"{OUT}/q.csv", "--pdf", f"{OUT}/q.pdf")),
    Writer(
        "courses",
        command(
            *("course", FRAME, "--count", "1", "--effort", "2"),
            *("--picture", f"{OUT}/c.png", "--out", f"{OUT}/c.yaml"),
        ),
    ),
    Writer(
        "ties",
        command("check", f"{OUT}/gate.yaml", "--write"),
        {"gate.yaml": GATE.encode()},
        over=False,
    ),
    Writer("fit", little("drop", "--out", f"{OUT}/f.yaml", "--picture", f"{OUT}/f.png")),
    Writer(
        "fit taken",
        little(
            *(PEAR, "--taken", f"{OUT}/taken.png"),
            *("--out", f"{OUT}/f.yaml", "--picture", f"{OUT}/f.png"),
        ),
    ),
    Writer(
        "fit apart",
        little("two.svg", "--out", f"{OUT}/two.yaml", "--picture", f"{OUT}/two.png"),
    ),
    Writer("new", command("new", "Star", "--usual", "--out", f"{OUT}/star.yaml"), over=False),
    Writer("several", several),
    Writer("data", command("export", "lamp.yaml", "--out", f"{OUT}/lamp.json")),
    Writer("preview", watched, {"lamp.yaml": LAMP.read_bytes()}),
    Writer(
        "sold page",
        command(
            *("companion", "lamp.yaml", *FOR_SALE, *FOR_ANA),
            *("--out", f"{OUT}/sold.html"),
        ),
    ),
)
