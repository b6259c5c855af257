"""What becomes of files when writing them goes wrong, for every command that writes.

    .venv/bin/python tests/files/table.py [--moments 200] [WRITER ...]

prints a row for each: killed at so many moments, most of them (SIGKILL) at a line of the writer,
some spread over the whole run and the rest over what follows the first write; a disk that takes no
more from byte n on; no permission; two at once; links as targets; a folder that goes while it is
written into. `old` and `new` count how often all files were as before and as after; in between,
each file is one of the two.
"""

from __future__ import annotations

import argparse
import os
import sys
import tempfile
from collections.abc import Callable, Sequence
from pathlib import Path

from attempts import Attempts, Ended, Files, Writer
from disturbances import (
    forbidden,
    killed_after,
    killed_at,
    linked,
    no_more_than,
    vanished_at,
)

from buildplan import cli
from buildplan.desk.folder import Folder, version_of
from buildplan.desk.refusals import RefusedError
from buildplan.desk.saving import save
from buildplan.language.voice import ENGLISH, Voice
from buildplan.source import whole_files

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


def saved(folder: Path) -> None:
    """A change at the desk."""
    text = f"{LAMP.read_text('utf-8')}# more\n"
    try:
        save(Folder(folder), "lamp", version_of(LAMP.read_bytes()), text)
    except RefusedError as error:
        print("cannot write it:", Voice(ENGLISH).tell(error.told))
        sys.exit(2)


WRITERS = (
    Writer("booklet", command("booklet", "lamp.yaml", "--out", OUT)),
    Writer(
        "sold copies",
        command(
            *("booklet", "lamp.yaml", "--edition", "sale", "--brand", BRAND),
            *("--buyers", "buyers.csv", "--out", OUT),
        ),
    ),
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
    Writer("desk's save", saved, {"lamp.yaml": LAMP.read_bytes()}, over=False),
)
HEAD = (
    *("writer", "files", "moments", "old", "between", "new", "broken", "left"),
    *("full", "forbidden", "two", "links", "vanished"),
)


def whole(ended: Ended, old: Files, new: Files) -> bool:
    """Whether each file is as it was or as it was to be, and none is there that was in neither."""
    known = {None} if not old else set()
    return all(
        data in {old.get(name), new.get(name)} - known for name, data in ended.files.items()
    ) and all(name in ended.files for name in old.keys() & new.keys())


def told(ended: Ended) -> bool:
    """Whether it ended well, or in one clear message."""
    bad = ("Traceback", "None", whole_files.PREFIX, "has a fault", "Errno")
    if any(word in ended.said for word in bad):
        return False
    # a file that goes at once after it was written is missed where it is read again
    clear = sum(ended.said.count(words) for words in ("cannot write ", "there is no such file"))
    return ended.status == 0 or (ended.status == 2 and clear == 1)


def row(writer: Writer, moments: int) -> tuple[object, ...]:
    """What becomes of one writer's files."""
    with tempfile.TemporaryDirectory() as name:
        place = Path(name).resolve()
        place.chmod(0o755)
        for file, text in (
            ("lamp.yaml", LAMP.read_text("utf-8")),
            ("lamp.event.yaml", EVENT),
            ("log.csv", LOG),
            ("buyers.csv", BUYERS),
        ):
            (place / file).write_text(text, "utf-8")
        tries = Attempts(writer, place)
        lines, took = tries.learn()
        stops = spread(lines, moments * 3 // 4)
        ended = tries.from_first_write([killed_at(line) for line in stops])
        over_all = max(1, moments // 40)
        ended += [tries.timed(took * (n + 0.5) / over_all) for n in range(over_all)]
        (undisturbed,) = tries.from_first_write([lambda: None])
        rest = moments - len(ended)
        ended += tries.from_first_write(
            [killed_after(undisturbed.took * (n + 0.5) / rest) for n in range(rest)]
        )
        return (
            writer.name,
            len(tries.new),
            len(ended),
            *kills(ended, tries),
            *others(tries, lines),
        )


def spread(count: int, most: int) -> list[int]:
    """The numbers from 1 to `count`, or so many of them evenly spread."""
    return sorted({1 + number * count // most for number in range(most)})


def kills(ended: Sequence[Ended], tries: Attempts) -> tuple[int, ...]:
    """How often all was as before, between, as after, broken; what is left after the next run."""
    old, new = tries.old, tries.new
    counted = [
        sum(one.files == old for one in ended),
        sum(whole(one, old, new) and one.files not in (old, new) for one in ended),
        sum(one.files == new for one in ended),
        sum(not whole(one, old, new) for one in ended),
    ]
    (after,) = tries.from_first_write([lambda: None])
    if after.files != new or after.status:
        raise RuntimeError(f"the next run: {after.status} {after.said}")
    return (*counted, after.left)


def others(tries: Attempts, lines: int) -> tuple[str, ...]:
    """The other ways to fail: how many attempts ended as they should, of how many."""
    old, new, folder = tries.old, tries.new, tries.folder
    most = max(len(data) for data in new.values())
    sizes, goings = (0, 1, most // 3, most // 2, most - 1), spread(lines, 25)
    tried = tries.from_first_write(
        [
            *(no_more_than(size) for size in sizes),
            *(vanished_at(line, folder) for line in goings),
            forbidden(folder),
            *([linked(folder, tries.place / "away")] if tries.writer.over else []),
        ]
    )
    full, gone = tried[: len(sizes)], tried[len(sizes) :][: len(goings)]
    closed, *links = tried[len(sizes) + len(goings) :]
    good_full = sum(told(one) and one.status == 2 and whole(one, old, new) for one in full)
    good_gone = sum(told(one) and b"" not in one.files.values() for one in gone)
    good_closed = told(closed) and closed.status == 2 and closed.files == old
    stay = all((folder / name).is_symlink() and one.files == new for one in links for name in old)
    statuses, both = tries.two_at_once()
    good_both = both.files == new and sorted(statuses) in ([0, 0], [0, 2])
    return (
        f"{good_full}/{len(full)}",
        "good" if good_closed else f"BAD {closed.status} {closed.said}",
        "good" if good_both else f"BAD {statuses}",
        ("good" if stay else "BAD") if links else "-",
        f"{good_gone}/{len(gone)}",
    )


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("writers", nargs="*")
    parser.add_argument("--moments", type=int, default=200)
    asked = parser.parse_args()
    print("\t".join(HEAD))
    for writer in WRITERS:
        if not asked.writers or writer.name in asked.writers:
            print("\t".join(map(str, row(writer, asked.moments))), flush=True)


if __name__ == "__main__":
    main()
