"""What becomes of files when writing them goes wrong, for every command that writes.

    .venv/bin/python tests/files/table.py [--moments 200] [--workers 1] [WRITER ...]

prints a row for each: killed at so many moments, most of them (SIGKILL) at a line of the writer,
some spread over the whole run and the rest over what follows the first write; no file larger than n
bytes; a small disk that has too little room (mounted, as root alone may); no permission; two at
once; links as targets; a folder that goes while it is written into. `old` and `new` count how often
all files were as before and as after; in between, each file is one of the two.
"""

from __future__ import annotations

import argparse
import os
import tempfile
import time
from collections.abc import Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor
from itertools import repeat
from multiprocessing import get_context
from pathlib import Path

from attempts import Attempts, Ended, Files
from desk_writers import AT_DESK
from disturbances import (
    forbidden,
    killed_after,
    killed_at,
    linked,
    no_more_than,
    small_disk,
    vanished_at,
)
from writers import COMMANDS, INPUTS

from buildplan.source import whole_files

MISSED = "there is no such file"
PAGE = os.sysconf("SC_PAGESIZE")
HEAD = (
    *("writer", "files", "moments", "old", "between", "new", "broken", "left"),
    *("largest", "full", "forbidden", "two", "links", "vanished"),
)


def whole(ended: Ended, tries: Attempts) -> bool:
    """Whether each file is as it was or as it was to be, and none is there that was in neither, but
    for what goes by."""
    states = (tries.old, tries.new, tries.writer.by)
    return all(
        any(state.get(name) == data for state in states) for name, data in ended.files.items()
    ) and all(name in ended.files for name in tries.old.keys() & tries.new.keys())


def told(ended: Ended) -> bool:
    """Whether it ended well, or in one clear message."""
    bad = ("Traceback", "None", whole_files.PREFIX, "has a fault", "Errno")
    if any(word in ended.said for word in bad):
        return False
    # a file that goes at once after it was written is missed where it is read again
    written, missed = (ended.said.count(words) for words in ("cannot write ", MISSED))
    clear = max(written, missed) == 1 if ended.status == 2 else ended.status == 1 and missed > 0
    return ended.status == 0 or clear


def row(called: str, moments: int) -> tuple[object, ...]:
    """What becomes of one writer's files."""
    writer = next(one for one in (*COMMANDS, *AT_DESK) if one.name == called)
    with tempfile.TemporaryDirectory() as name:
        place = Path(name).resolve()
        place.chmod(0o755)
        for file, text in INPUTS.items():
            (place / file).write_text(text, "utf-8")
        tries = Attempts(writer, place)
        took = tries.learn()
        over_all = max(1, moments // 40)
        timed = [tries.timed(took * (n + 0.5) / over_all) for n in range(over_all)]
        two = both(tries)
        return writer.name, len(tries.new), *tries.parked(lambda: cells(tries, timed, moments, two))


def cells(tries: Attempts, timed: Sequence[Ended], moments: int, two: str) -> tuple[object, ...]:
    """The cells of a row, of a writer that is parked at its first write."""
    ended = [*timed, *tries.at_lines(killed_at, spread(tries.lines, moments * 3 // 4))]
    (undisturbed,) = tries.from_first_write([lambda: None])
    rest = moments - len(ended)
    ended += tries.from_first_write(
        [killed_after(undisturbed.took * (n + 0.5) / rest) for n in range(rest)]
    )
    killed = kills(ended, tries)  # before the folder goes, and what was left in it
    full, disks, closed, links, gone = others(tries)
    return len(ended), *killed, full, disks, closed, two, links, gone


def spread(count: int, most: int) -> list[int]:
    """The numbers from 1 to `count`, or so many of them evenly spread."""
    return sorted({1 + number * count // most for number in range(most)})


def kills(ended: Sequence[Ended], tries: Attempts) -> tuple[int, ...]:
    """How often all was as before, between, as after, broken; what is left after the next run."""
    old, new = tries.old, tries.new
    counted = [
        sum(one.files == old for one in ended),
        sum(whole(one, tries) and one.files not in (old, new) for one in ended),
        sum(one.files == new for one in ended),
        sum(not whole(one, tries) for one in ended),
    ]
    (after,) = tries.from_first_write([lambda: None])
    if after.files != new or after.status:
        raise RuntimeError(f"the next run: {after.status} {after.said}")
    return (*counted, after.left)


def others(tries: Attempts) -> tuple[str, ...]:
    """The other ways to fail: how many attempts ended as they should, of how many."""
    old, new, folder = tries.old, tries.new, tries.folder
    most = max(len(data) for name, data in new.items() if data != old.get(name))
    sizes = (0, 1, most // 3, most // 2, most - 1)
    gone = tries.at_lines(lambda line: vanished_at(line, folder), spread(tries.lines, 25))
    closed, *tried = tries.from_first_write(
        [
            forbidden(folder),
            *(no_more_than(size) for size in sizes),
            *([linked(folder, tries.place / "away")] if tries.writer.over else []),
        ]
    )
    full, links = tried[: len(sizes)], tried[len(sizes) :]
    # what only gets another name has room on any disk
    good_full = sum(
        told(one) and whole(one, tries) and (one.status == 2 or one.files == new) for one in full
    )
    good_gone = sum(told(one) and b"" not in one.files.values() for one in gone)
    good_closed = told(closed) and closed.status == 2 and closed.files == old
    disks = [on_a_disk_of(size, tries) for size in rooms(old, new)]
    stay = all((folder / name).is_symlink() and one.files == new for one in links for name in old)
    return (
        f"{good_full}/{len(full)}",
        f"{disks.count(True)}/{len(disks) - disks.count(None)}",
        "good" if good_closed else f"BAD {closed.status} {closed.said}",
        ("good" if stay else "BAD") if links else "-",
        f"{good_gone}/{len(gone)}",
    )


def both(tries: Attempts) -> str:
    """What becomes of two at once."""
    statuses, ended = tries.two_at_once()
    # a new design at the desk gets a name of its own, the second time as well
    good = tries.new.items() <= ended.files.items() and sorted(statuses) in ([0, 0], [0, 2])
    good &= set(ended.files.values()) <= set(tries.new.values())
    return "good" if good else f"BAD {statuses}"


def rooms(old: Files, new: Files) -> tuple[int, ...]:
    """The pages of disks on which the old files have room, and not all of the new: none of it, one
    page, half of the largest, all of that but a page, all of all but a page."""
    stand, most = pages(old.values()), [data for name, data in new.items() if data != old.get(name)]
    largest = max(pages([data]) for data in most)
    free = {0, 1, largest // 2, largest - 1, pages(most) - 1}
    return tuple(sorted(stand + room for room in free if room < pages(most)))


def pages(files: Iterable[bytes]) -> int:
    """The pages of a disk that files take."""
    return sum(-(-len(data) // PAGE) for data in files)


def on_a_disk_of(pages: int, tries: Attempts) -> bool | None:
    """Whether all ended as it should on a disk of so many pages; None where none can be had."""
    with small_disk(tries.folder, pages * PAGE) as mounted:
        if not mounted:
            return None
        (one,) = tries.from_first_write([lambda: None])
    ended = one.status == 2 or one.files == tries.new
    return ended and told(one) and whole(one, tries) and not one.left


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("writers", nargs="*")
    parser.add_argument("--moments", type=int, default=200)
    parser.add_argument("--workers", type=int, default=1)
    asked = parser.parse_args()
    names = [
        one.name for one in (*COMMANDS, *AT_DESK) if not asked.writers or one.name in asked.writers
    ]
    begun = time.monotonic()
    print("\t".join(HEAD), flush=True)
    with ProcessPoolExecutor(asked.workers, get_context("fork")) as workers:
        for told in workers.map(row, names, repeat(asked.moments)):
            print("\t".join(map(str, told)), flush=True)
    print(f"{len(names)} writers, {(time.monotonic() - begun) / 60:.0f} minutes")


if __name__ == "__main__":
    main()
