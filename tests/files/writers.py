"""Whatever writes files: the commands, and what the desk does in its folder."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

from attempts import Writer

from buildplan import cli
from buildplan.commands import watching
from buildplan.desk import saving
from buildplan.desk.folder import Folder, version_of
from buildplan.desk.outcome import Refused
from buildplan.desk.print_task import PrintWork, Wishes
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import results_of
from buildplan.desk.titles import titled
from buildplan.language.voice import ENGLISH, Voice

for threads in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[threads] = "1"  # a process with one thread can be copied

ROOT = Path(__file__).parent.parent.parent
LAMP = ROOT / "designs" / "gallery" / "lamp_octahedron.yaml"
FRAME = ROOT / "designs" / "picture_frame.yaml"
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
HANDS = "buildplan_hands: 1\nwork:\n- {kind: pair, count: 5, minutes: 4}\n"
BUYERS = "name\nAna Example\nBo Example\n"
OUT = "OUT"


def command(*arguments: str | Path) -> Callable[[Path], None]:
    """Run a command in the folder that holds the inputs; `OUT` in its arguments is the other."""

    def run(folder: Path) -> None:
        os.chdir(folder.parent)
        sys.argv = ["buildplan", *(str(one).replace(OUT, str(folder)) for one in arguments)]
        cli.main()

    return run


INPUTS = {
    "lamp.yaml": LAMP.read_text("utf-8"),
    "lamp.event.yaml": EVENT,
    "log.csv": LOG,
    "buyers.csv": BUYERS,
    "own.key": "a key of our own, long enough to be one\n",
}
BEFORE, NOW = LAMP.read_bytes(), LAMP.read_bytes() + b"# more\n"
CHANGED_ONCE = {
    "lamp.yaml": NOW,
    ".desk/history/lamp/000001.yaml": BEFORE,
    ".desk/history/lamp/000002.yaml": NOW,
    ".desk/history/lamp/position": b"2\n",
}


TAKEN_BACK = {**CHANGED_ONCE, "lamp.yaml": BEFORE, ".desk/history/lamp/position": b"1\n"}
AWAY = {
    name.replace("lamp.yaml", ".desk/away/lamp.yaml") if "/" not in name else name: data
    for name, data in CHANGED_ONCE.items()
}
TITLE = "Evening Lamp"
# so titled already: only its file has another name
TITLED = titled(NOW, TITLE)
NAMED = {
    **CHANGED_ONCE,
    "lamp.yaml": TITLED,
    ".desk/history/lamp/000002.yaml": TITLED,
}
MET = 409  # the answer where two changes meet (RFC 9110, 15.5.10)


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
    command("booklet", "lamp.yaml", FRAME, "--edition", "crew", "--out", OUT)(folder)


def at_desk(act: Callable[[Folder], object]) -> Callable[[Path], None]:
    """What is done in a folder of the desk; what it refuses is said as a command would."""

    def run(folder: Path) -> None:
        try:
            act(Folder(folder))
        except RefusedError as error:
            print("cannot write it:", Voice(ENGLISH).tell(error.told))
            sys.exit(2)

    return run


def saved(folder: Folder) -> None:
    """A change at the desk."""
    saving.save(folder, "lamp", version_of(BEFORE), NOW.decode())


def met(folder: Folder) -> None:
    """A change at the desk made on a version that is no longer there: it is kept beside."""
    try:
        saving.save(folder, "lamp", version_of(b"another"), NOW.decode())
    except RefusedError as error:
        if error.status != MET:
            raise


def redone(folder: Folder) -> None:
    """A change at the desk, brought back."""
    saving.redo(folder, "lamp", version_of(BEFORE))


def renamed(folder: Folder) -> None:
    """A design at the desk whose file gets the name of its title."""
    saving.rename(folder, "lamp", TITLE)


def put_away(folder: Folder) -> None:
    """A design out of sight."""
    saving.put_away(folder, "lamp")


def brought_back(folder: Folder) -> None:
    """A design that was put away, back on the desk."""
    saving.bring_back(folder, "lamp")


def worked_out(folder: Folder) -> None:
    """What was worked out of a design, kept; what cannot be is told as by a process at work."""
    with saving.writing():
        results_of(folder, BEFORE, ENGLISH).put("card.json", b'{"balloons": 72}\n' * 500)


def undone(folder: Folder) -> None:
    """A change at the desk, taken back."""
    saving.undo(folder, "lamp", version_of(NOW))


def begun(folder: Folder) -> None:
    """A new design at the desk."""
    saving.begin(folder, "star", NOW)


def printed(folder: Folder) -> None:
    """A booklet to fold, printed at the desk."""
    wishes = Wishes(fold=True)
    work = PrintWork(folder.root, "lamp", "booklet", "training", "a4", "en", "", "", wishes)

    def told(report: object) -> None:
        if isinstance(report, Refused):
            print("cannot write it:", report.words)
            sys.exit(2)

    work(told)


WRITERS = (
    Writer("booklet", command("booklet", "lamp.yaml", "--out", OUT)),
    Writer(
        "sold copies",
        command(
            *("booklet", "lamp.yaml", "--edition", "sale", "--brand", BRAND),
            *("--buyers", "buyers.csv", "--key", "own.key", "--out", OUT),
        ),
    ),
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
    Writer(
        "fit",
        command(
            *("fit", "drop", "--height", "100cm", "--effort", "quick", "--out", f"{OUT}/f.yaml"),
            *("--picture", f"{OUT}/f.png"),
        ),
    ),
    Writer("new", command("new", "Star", "--usual", "--out", f"{OUT}/star.yaml"), over=False),
    Writer("several", several),
    Writer("data", command("export", "lamp.yaml", "--out", f"{OUT}/lamp.json")),
    Writer("preview", watched, {"lamp.yaml": BEFORE}),
    Writer(
        "sold page",
        command(
            *("companion", "lamp.yaml", "--edition", "sale", "--brand", BRAND),
            *("--for", "Ana Example", "--key", "own.key", "--out", f"{OUT}/sold.html"),
        ),
    ),
    Writer("desk's save", at_desk(saved), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's undo", at_desk(undone), CHANGED_ONCE, over=False),
    Writer("desk's redo", at_desk(redone), TAKEN_BACK, over=False),
    Writer("desk's both", at_desk(met), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's name", at_desk(renamed), NAMED, over=False),
    Writer("desk's away", at_desk(put_away), CHANGED_ONCE, over=False),
    Writer("desk's back", at_desk(brought_back), AWAY, over=False),
    Writer("desk's results", at_desk(worked_out), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's new", at_desk(begun), {"lamp.yaml": BEFORE}, over=False),
    Writer("desk's printing", at_desk(printed), {"lamp.yaml": BEFORE}, over=False),
)
