"""A command that writes, brought to its first write and from there on made to fail in many ways.

The command runs in a process of its own up to its first write; there that process is copied (fork)
once for each attempt, so that nothing is worked out twice. What is to happen in a later write
begins there. Every attempt begins with the same files and ends with what they have become.
"""

from __future__ import annotations

import contextlib
import itertools
import json
import os
import signal
import sys
import time
import traceback
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, TypeVar

from disturbances import traced

from buildplan.source import whole_files

Files = dict[str, bytes]
Disturbance = Callable[[], None]
Answers = TypeVar("Answers")


@dataclass(frozen=True)
class Writer:
    """A command, or a call, that writes into a folder; `inputs` are there before, and where it
    writes `over` files, old ones of those names; what goes `by` is there meanwhile."""

    name: str
    run: Callable[[Path], None]
    inputs: Mapping[str, bytes] = field(default_factory=dict)
    over: bool = True
    by: Mapping[str, bytes] = field(default_factory=dict)


@dataclass(frozen=True)
class Ended:
    """How an attempt ended: status (negative: the signal), what was said, the files then; how many
    seconds it took from the first write on, where it began there."""

    status: int
    said: str
    files: Files
    left: int
    took: float = 0.0


def files_in(folder: Path) -> tuple[Files, int]:
    """The files of a folder, and how many more were left half written."""
    found: Files = {}
    left = 0
    for path in sorted(folder.rglob("*")) if folder.is_dir() else ():
        if path.name.startswith(whole_files.PREFIX):
            left += 1
        elif path.is_file():
            found[str(path.relative_to(folder))] = path.read_bytes()
    return found, left


def laid(folder: Path, files: Files) -> None:
    """Make the folder hold these files; what is half written stays as it lies."""
    folder.mkdir(parents=True, exist_ok=True)
    folder.chmod(0o755)
    for path in sorted(folder.rglob("*"), reverse=True):
        if path.is_file() and not path.name.startswith(whole_files.PREFIX):
            path.unlink()
    for name, data in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(data)


@dataclass(frozen=True)
class Copy:
    """A copy of this process, and where what it says is heard."""

    pid: int
    hearing: int

    def end(self) -> tuple[int, str]:
        """Wait for its end: the status, and what it has said (less than a pipe holds)."""
        status = os.waitstatus_to_exitcode(os.waitpid(self.pid, 0)[1])
        with open(self.hearing, encoding="utf-8", errors="replace") as heard:
            return status, heard.read()


def copied() -> Copy | None:
    """A copy of this process; None in the copy itself."""
    hearing, saying = os.pipe()
    pid = os.fork()
    if pid:
        os.close(saying)
        return Copy(pid, hearing)
    os.dup2(saying, 1)
    os.dup2(saying, 2)
    os.close(saying)
    os.close(hearing)
    return None


def doing(work: Callable[[], None]) -> Copy:
    """A copy of this process that does some work and ends."""
    copy = copied()
    if copy is not None:
        return copy
    status = 0
    try:
        work()
    except SystemExit as ended:
        status = int(ended.code or 0)
    except BaseException:  # noqa: BLE001 - a copy of a process never returns
        traceback.print_exc()
        status = 99
    with contextlib.suppress(OSError, ValueError):
        sys.stdout.flush()
        sys.stderr.flush()
    os._exit(status)


class _GoOnError(BaseException):
    """Raised in a copy of a process that is parked: it goes on with what it was about to do."""


class Attempts:
    """The attempts on one writer, in a folder of its own below `place`."""

    def __init__(self, writer: Writer, place: Path) -> None:
        self.writer = writer
        self.folder = place / "out"
        self.place = place
        self.old: Files = dict(writer.inputs)
        self.new: Files = {}
        self.writes: list[int] = []  # lines done when each write begins, and in all

    def learn(self) -> float:
        """Run it once undisturbed; the seconds that it takes."""
        laid(self.folder, self.old)
        begun = time.monotonic()
        status, said = doing(lambda: self.writer.run(self.folder)).end()
        took = time.monotonic() - begun
        self.new, left = files_in(self.folder)
        if status or left or self.new == self.old:
            raise RuntimeError(f"{self.writer.name}: {status} {said}")
        if self.writer.over:
            made = {name: b"old\n" for name in self.new if name not in self.writer.inputs}
            self.old = {**made, **self.writer.inputs}
        return took

    def parked(self, attempts: Callable[[], Answers]) -> Answers:
        """Run it to its first write; there count the lines of the writer that are to come, and do
        something, most of all other attempts. Its answers are plain data."""
        answers, lines = self.place / "answers", self.place / "lines"
        laid(self.folder, self.old)

        def work() -> None:
            written = whole_files._written

            def first(*given: Any) -> None:
                _put_in_place(written)
                try:
                    self.from_first_write([lambda: _counting(lines)])
                    self.writes = json.loads(lines.read_text("ascii"))
                    answers.write_text(json.dumps(attempts()), "utf-8")
                except _GoOnError:
                    whole_files._written(*given)
                else:
                    os._exit(0)

            _put_in_place(first)
            self.writer.run(self.folder)

        _, said = doing(work).end()
        if not answers.exists():
            raise RuntimeError(f"{self.writer.name}: {said}")
        found: Answers = json.loads(answers.read_text("utf-8"))
        return found

    @property
    def lines(self) -> int:
        """The lines of the writer from its first write to its end."""
        return self.writes[-1]

    def timed(self, after: float) -> Ended:
        """Killed so many seconds after its beginning."""
        laid(self.folder, self.old)
        copy = doing(lambda: self.writer.run(self.folder))
        time.sleep(after)
        os.kill(copy.pid, signal.SIGKILL)
        return self._ended(*copy.end())

    def from_first_write(self, disturbances: Sequence[Disturbance]) -> list[Ended]:
        """Of what is parked: one attempt for each disturbance, just before the first write."""
        return self._at_writes([(0, disturb) for disturb in disturbances])

    def at_lines(self, disturb: Callable[[int], Disturbance], lines: Sequence[int]) -> list[Ended]:
        """Of what is parked: one attempt for each line, counted from the first write on. It begins
        with the write that the line is of, those before it done and the files as they then are."""
        stops = []
        for line in lines:
            number = max(at for at, begun in enumerate(self.writes[:-1]) if begun < line)
            stops.append((number, disturb(line - self.writes[number])))
        return self._at_writes(stops)

    def _at_writes(self, stops: Sequence[tuple[int, Disturbance]]) -> list[Ended]:
        """One attempt for each disturbance, called just before a write, by its number; in order."""
        answers = self.place / "ended"
        answers.unlink(missing_ok=True)
        laid(self.folder, self.old)
        going_on = copied()
        if going_on is None:
            self._stop_at(stops, answers)
            raise _GoOnError
        _, said = going_on.end()
        if not answers.exists():
            raise RuntimeError(said)
        found = json.loads(answers.read_text("utf-8"))
        return [
            Ended(status, said, {n: bytes.fromhex(data) for n, data in files.items()}, left, took)
            for status, said, files, left, took in found
        ]

    def _stop_at(self, stops: Sequence[tuple[int, Disturbance]], answers: Path) -> None:
        """From now on this process is copied for each attempt at its write; at the last of them it
        tells how they ended, and ends."""
        written, ended, numbers = whole_files._written, list[Any](), itertools.count()

        def write(*given: Any) -> None:
            number, (before, _) = next(numbers), files_in(self.folder)
            for disturb in [one for at, one in stops if at == number]:
                laid(self.folder, before)
                begun = time.monotonic()
                copy = copied()
                if copy is None:
                    _put_in_place(written)
                    disturb()
                    whole_files._written(*given)
                    return
                status, said = copy.end()
                took = time.monotonic() - begun
                one = self._ended(status, said)
                ended.append([one.status, one.said, _hexed(one.files), one.left, took])
            if len(ended) == len(stops):
                answers.write_text(json.dumps(ended), "utf-8")
                os._exit(0)
            laid(self.folder, before)
            written(*given)

        _put_in_place(write)

    def two_at_once(self) -> tuple[list[int], Ended]:
        """Two of them, begun together."""
        laid(self.folder, self.old)
        copies = [doing(lambda: self.writer.run(self.folder)) for _ in range(2)]
        ended = [copy.end() for copy in copies]
        return [status for status, _ in ended], self._ended(*max(ended))

    def _ended(self, status: int, said: str) -> Ended:
        files, left = files_in(self.folder)
        return Ended(status, said, files, left)


def _put_in_place(written: Any) -> None:
    """What is called to write a file, from now on."""
    whole_files._written = written


def _counting(told: Path) -> None:
    """From now on count the lines of the writer, and tell how many are done when each write
    begins, and at last."""
    written, counted, begun = whole_files._written, [0], list[int]()

    def write(*given: Any) -> None:
        begun.append(counted[0])
        written(*given)

    _put_in_place(write)
    traced(counted, lambda: told.write_text(json.dumps([*begun, counted[0]]), "ascii"))


def _hexed(files: Files) -> dict[str, str]:
    return {name: data.hex() for name, data in files.items()}
