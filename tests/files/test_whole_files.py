"""Whatever is written to a disk is written whole or not at all, and what cannot be is told clearly.

Reference: POSIX.1-2017, rename (the name is there throughout), link (fails where the name is
taken), write (ENOSPC, EFBIG); `/dev/full` is Linux's own file on which every write finds the disk
full (man 4 full).
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import threading
from pathlib import Path

import pytest

from buildplan.language.voice import ENGLISH, Voice
from buildplan.source import whole_files
from buildplan.source.whole_files import NotWrittenError, why_not, write_new, write_whole

posix = pytest.mark.skipif(sys.platform == "win32", reason="files of POSIX")
BEFORE, AFTER = b"before\n", b"after\n" * 1000


def why(path: Path) -> str:
    """What is said where a file cannot be written."""
    with pytest.raises(NotWrittenError) as caught:
        write_whole(path, AFTER)
    assert caught.value.filename == str(path)
    return Voice(ENGLISH).tell(caught.value.told)


@pytest.fixture(autouse=True)
def _folders_anew() -> None:
    whole_files._clear.cache_clear()


def test_folders_are_made_and_nothing_else_is_left(tmp_path: Path) -> None:
    write_whole(tmp_path / "a" / "b" / "plan.pdf", BEFORE)
    write_whole(tmp_path / "a" / "b" / "plan.pdf", AFTER)
    assert [path.name for path in (tmp_path / "a" / "b").iterdir()] == ["plan.pdf"]
    assert (tmp_path / "a" / "b" / "plan.pdf").read_bytes() == AFTER


@posix
def test_a_file_keeps_its_mode_and_a_new_one_is_as_open_as_any(tmp_path: Path) -> None:
    kept, fresh, usual = tmp_path / "kept", tmp_path / "fresh", tmp_path / "usual"
    kept.write_bytes(BEFORE)
    kept.chmod(0o640)
    usual.write_bytes(BEFORE)
    write_whole(kept, AFTER)
    write_whole(fresh, AFTER)
    assert kept.stat().st_mode & 0o777 == 0o640
    assert fresh.stat().st_mode == usual.stat().st_mode


@posix
def test_a_link_stays_and_its_file_is_written(tmp_path: Path) -> None:
    target, link = tmp_path / "away" / "plan.pdf", tmp_path / "plan.pdf"
    write_whole(target, BEFORE)
    link.symlink_to(Path("away") / "plan.pdf")
    write_whole(link, AFTER)
    assert link.is_symlink()
    assert target.read_bytes() == AFTER
    ahead = tmp_path / "ahead.pdf"
    ahead.symlink_to(Path("away") / "new.pdf")
    write_whole(ahead, AFTER)
    assert (tmp_path / "away" / "new.pdf").read_bytes() == AFTER


@posix
def test_a_pipe_is_written_to_and_stays_one(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    heard: list[bytes] = []
    reader = threading.Thread(target=lambda: heard.append(pipe.read_bytes()))
    reader.start()
    write_whole(pipe, AFTER)
    reader.join()
    assert heard == [AFTER]
    assert pipe.is_fifo()


@posix
def test_a_place_that_takes_no_file_is_told_by_its_own_name(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(BEFORE)
    (tmp_path / "round").symlink_to("round")
    assert why(tmp_path) == "this is a folder"
    assert why(tmp_path / "file" / "plan.pdf") == "a part of its path is a file, not a folder"
    assert why(tmp_path / "round") == "it is a link that leads back to itself"
    assert why(tmp_path / ("n" * 300)) == "its name is too long"
    if Path("/dev/full").exists():
        assert why(Path("/dev/full")) == "the disk is full"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["file", "round"]


ASK = """
import os, sys
from pathlib import Path
from buildplan.source.whole_files import NotWrittenError, may_write, write_whole
folder = Path(sys.argv[1])
if os.geteuid() == 0:  # nothing is forbidden to root
    os.setuid(int(sys.argv[2]))
for name in ("closed/plan.pdf", "kept"):
    try:
        write_whole(folder / name, b"after")
    except NotWrittenError as error:
        print(error.told.text)
print(may_write(folder / "closed"), may_write(folder))
"""


@posix
def test_what_may_not_be_written_is_not() -> None:
    nobody = 65534
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "closed").mkdir()
        (folder / "kept").write_bytes(BEFORE)
        for path, mode in ((folder, 0o700), (folder / "closed", 0o500), (folder / "kept", 0o400)):
            path.chmod(mode)
            if os.geteuid() == 0:
                os.chown(path, nobody, -1)
        run = [sys.executable, "-c", ASK, name, str(nobody)]
        ended = subprocess.run(run, capture_output=True, text=True, check=True)
        assert ended.stdout.splitlines() == ["you may not write there"] * 2 + ["False True"]
        assert (folder / "kept").read_bytes() == BEFORE
        assert sorted(path.name for path in folder.iterdir()) == ["closed", "kept"]


FILL = """
import resource, sys
from pathlib import Path
from buildplan.source.whole_files import NotWrittenError, write_whole
resource.setrlimit(resource.RLIMIT_FSIZE, (int(sys.argv[2]), resource.RLIM_INFINITY))
try:
    write_whole(Path(sys.argv[1]), b"after" * 1000)
except NotWrittenError as error:
    print(error.told.text)
"""


@posix
@pytest.mark.parametrize("most", [0, 1, 4096, 4999])
def test_a_writer_that_fails_at_any_byte_leaves_what_stood_there(tmp_path: Path, most: int) -> None:
    (tmp_path / "plan.pdf").write_bytes(BEFORE)
    run = [sys.executable, "-c", FILL, str(tmp_path / "plan.pdf"), str(most)]
    ended = subprocess.run(run, capture_output=True, text=True, check=True)
    assert "larger than a file may be" in ended.stdout
    assert (tmp_path / "plan.pdf").read_bytes() == BEFORE
    assert [path.name for path in tmp_path.iterdir()] == ["plan.pdf"]


@posix
def test_what_a_killed_process_left_goes_and_what_another_writes_stays(tmp_path: Path) -> None:
    left, written = (tmp_path / f".buildplan-{name}.part" for name in ("left", "written"))
    left.write_bytes(b"half")
    (tmp_path / ".buildplan-note").write_bytes(b"of somebody else")
    handle = os.open(written, os.O_WRONLY | os.O_CREAT)
    assert whole_files._locked(handle)
    write_whole(tmp_path / "plan.pdf", AFTER)
    os.close(handle)
    names = sorted(path.name for path in tmp_path.iterdir())
    assert names == [".buildplan-note", ".buildplan-written.part", "plan.pdf"]


def test_of_many_who_make_a_new_file_one_has_it(tmp_path: Path) -> None:
    path = tmp_path / "new.yaml"
    made: list[bytes] = []
    start = threading.Barrier(8)

    def make(data: bytes) -> None:
        start.wait()
        try:
            write_new(path, data)
        except FileExistsError:
            return
        made.append(data)

    writers = [threading.Thread(target=make, args=(bytes([n]) * 9999,)) for n in range(8)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    assert made == [path.read_bytes()]
    assert [found.name for found in tmp_path.iterdir()] == ["new.yaml"]


def test_of_many_who_write_one_file_each_writes_it_whole(tmp_path: Path) -> None:
    path = tmp_path / "plan.pdf"
    seen: set[bytes] = set()

    def write(sign: bytes) -> None:
        for _ in range(10):
            write_whole(path, sign * 99999)
            seen.add(path.read_bytes())

    writers = [threading.Thread(target=write, args=(bytes([65 + n]),)) for n in range(4)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    assert all(len(data) == 99999 and len(set(data)) == 1 for data in seen)
    assert [found.name for found in tmp_path.iterdir()] == ["plan.pdf"]


LEARN = """
import sys
from buildplan.cli import main
sys.argv = ["buildplan", "learn", sys.argv[1]]
main()
"""


@posix
def test_two_who_learn_at_once_lose_none_of_what_the_other_measured(tmp_path: Path) -> None:
    logs = []
    for number in range(1, 4):
        logs.append(tmp_path / f"log{number}.csv")
        logs[-1].write_text(f"kind,count,minutes\npair,{number},{number}\n", "utf-8")
    with whole_files.alone_in(tmp_path):  # all of them have read their logs before any may go on
        running = [
            subprocess.Popen([sys.executable, "-c", LEARN, str(log)], stdout=subprocess.DEVNULL)
            for log in logs
        ]
    assert [one.wait() for one in running] == [0, 0, 0]
    text = (tmp_path / "hands.yaml").read_text("utf-8")
    assert all(f"count: {number}," in text for number in range(1, 4))


def test_what_has_no_number_of_the_system_is_told_in_its_words() -> None:
    """As a socket whose name is too long: Python numbers none of it."""
    told = Voice().tell(why_not(OSError("AF_UNIX path too long")))
    assert told == "the system says: AF_UNIX path too long"
