"""Processes that work on designs: warm, few, and none of them left when the desk ends.

An errand belongs to a lane. A newer one of the same lane takes the place of one that waits; one
that is at work for the lane is ended at once, its process with it: what is no longer wanted holds
nobody up. A new process is forked, where the system has that, from one that has loaded all that
the work needs.
"""

from __future__ import annotations

import gc
import multiprocessing
import os
import signal
import sys
import threading
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing import forkserver, resource_tracker
from multiprocessing.connection import Connection, wait
from multiprocessing.context import BaseContext, ForkServerContext
from multiprocessing.process import BaseProcess
from typing import Any

from buildplan.desk.outcome import Failed
from buildplan.desk.refusals import not_written
from buildplan.source.whole_files import NotWrittenError

Report = Callable[[object], None]
Work = Callable[[Report], None]
"""What is done in another process; it reports what it has done so far, as plain data."""

WARM = "buildplan.desk.working"
MOST_WORKERS = 4
# what somebody waits for, what somebody has ordered, what may be wanted later
NOW, ORDERED, LATER = range(3)
ENDING_S = 2.0


@dataclass(frozen=True)
class Errand:
    """Work to be done; `key` says what it is worked out from. `told` hears what it reports, and
    `ended` whether it came to its end (else it was superseded, or has failed); both in a thread of
    their own. What is of a smaller `rank` is done first, and one process is always free for what is
    of rank NOW."""

    lane: str
    key: str
    work: Work
    told: Callable[[object], None]
    ended: Callable[[bool], None]
    rank: int = NOW


class Workers:
    """So many processes at work at a time."""

    def __init__(self, count: int | None = None) -> None:
        self._context = _context()
        self._waiting: list[Errand] = []
        self._changed = threading.Condition()
        self._closed = False
        # one more than processors: it is free for what somebody waits for
        number = count if count is not None else 1 + max(1, min(MOST_WORKERS, os.cpu_count() or 2))
        self._hands = [_Hand(self, LATER if at else NOW) for at in range(number)]
        for hand in self._hands:
            hand.thread.start()

    @property
    def processes(self) -> list[int]:
        """The ids of the processes that are there."""
        return [pid for hand in self._hands if (pid := hand.pid) is not None]

    @property
    def waiting(self) -> list[str]:
        """The lanes of what waits, in the order in which it is done."""
        with self._changed:
            return [one.lane for one in sorted(self._waiting, key=lambda one: one.rank)]

    @property
    def idle(self) -> bool:
        """Whether nothing is waiting or at work."""
        with self._changed:
            return not self._waiting and all(hand.errand is None for hand in self._hands)

    def ask(self, errand: Errand) -> None:
        """Have work done; what the same lane has waiting or at work is dropped."""
        dropped = []
        with self._changed:
            if self._closed:
                return
            dropped = [one for one in self._waiting if one.lane == errand.lane]
            self._waiting = [one for one in self._waiting if one.lane != errand.lane]
            self._waiting.append(errand)
            for hand in self._hands:
                if hand.errand is not None and hand.errand.lane == errand.lane:
                    hand.drop()
            self._changed.notify_all()
        for one in dropped:
            one.ended(False)

    def busy_with(self, lane: str, key: str) -> bool:
        """Whether such work of a lane waits or is being done."""
        with self._changed:
            at_work = [hand.errand for hand in self._hands if hand.errand and not hand.dropped]
            return any((one.lane, one.key) == (lane, key) for one in (*self._waiting, *at_work))

    def first(self, lanes: Sequence[str]) -> None:
        """What waits of these lanes is done, in their order, before all else of its rank."""
        place = {lane: at for at, lane in enumerate(lanes)}
        with self._changed:
            self._waiting.sort(key=lambda one: place.get(one.lane, len(place)))

    def drop(self, lane: str) -> None:
        """What a lane has waiting or at work is not wanted any more."""
        with self._changed:
            dropped = [one for one in self._waiting if one.lane == lane]
            self._waiting = [one for one in self._waiting if one.lane != lane]
            for hand in self._hands:
                if hand.errand is not None and hand.errand.lane == lane:
                    hand.drop()
        for one in dropped:
            one.ended(False)

    def close(self) -> None:
        """End every process, whatever it is at."""
        with self._changed:
            self._closed = True
            self._waiting.clear()
            for hand in self._hands:
                hand.drop()
            self._changed.notify_all()
        for hand in self._hands:
            hand.thread.join(ENDING_S)

    def next_for(self, hand: _Hand) -> Errand | None:
        """The next errand that a hand may take, waited for; None at the end."""
        with self._changed:
            while not self._closed:
                takes = [one for one in self._waiting if one.rank <= hand.takes]
                if takes:
                    errand = min(takes, key=lambda one: one.rank)
                    self._waiting.remove(errand)
                    hand.errand = errand
                    hand.dropped = False
                    return errand
                self._changed.wait()
            return None

    def done(self, hand: _Hand) -> bool:
        """A hand is free again; whether what it did is still wanted."""
        with self._changed:
            hand.errand = None
            self._changed.notify_all()
            return not hand.dropped

    def started(self) -> tuple[BaseProcess, Connection]:
        """A new process, and the way to talk with it."""
        ours, theirs = self._context.Pipe()
        process = self._context.Process(  # type: ignore[attr-defined]  # of every context
            target=_serve, args=(theirs, gc.get_threshold()), daemon=True
        )
        process.start()
        theirs.close()
        return process, ours


class _Hand:
    """A thread that has one process, and gives it one errand after another."""

    def __init__(self, workers: Workers, takes: int) -> None:
        self.workers = workers
        self.takes = takes  # up to this rank
        self.errand: Errand | None = None
        self.dropped = False
        self._process: BaseProcess | None = None
        self._way: Connection | None = None
        self.thread = threading.Thread(target=self._run, daemon=True)

    @property
    def pid(self) -> int | None:
        process = self._process
        return None if process is None or not process.is_alive() else process.pid

    def drop(self) -> None:
        """End what is at work; its process goes with it."""
        self.dropped = True
        if self._process is not None and (self.errand is not None or self.workers_closed):
            self._process.kill()

    @property
    def workers_closed(self) -> bool:
        return self.workers._closed

    def _run(self) -> None:
        with suppress(OSError):
            self._ready()  # warm by the time that somebody asks
        while (errand := self.workers.next_for(self)) is not None:
            ended = self._work(errand)
            ended = self.workers.done(self) and ended
            errand.ended(ended)
        self._end()

    def _work(self, errand: Errand) -> bool:
        """Whether the process came to the end of an errand."""
        try:
            way = self._ready()
            way.send(errand.work)
            while (part := way.recv()) is not None:
                if self.dropped:
                    break
                errand.told(part)
            else:
                return True
        except (EOFError, OSError):
            pass
        self._end()
        if not self.dropped:
            errand.told(Failed("EOFError"))
        return False

    def _ready(self) -> Connection:
        if self._way is None or self._process is None or not self._process.is_alive():
            self._end()
            self._process, self._way = self.workers.started()
        return self._way

    def _end(self) -> None:
        if self._process is not None:
            self._process.kill()
            self._process.join(ENDING_S)
        if self._way is not None:
            self._way.close()
        self._process = self._way = None


def warm_up() -> None:
    """Begin to load what the work needs, in the process that others are forked from: it is ready
    sooner when the desk asks for them.

    Ctrl-C, which a terminal sends to all processes, does not reach it, also not while it loads: the
    desk ends it (the mask of signals is inherited: POSIX.1-2017, 2.4 and exec)."""
    if not isinstance(_context(), ForkServerContext):
        return
    resource_tracker.ensure_running()  # begun meanwhile, it would take the mask away
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        forkserver.ensure_running()
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _context() -> BaseContext:
    """How processes are started: forked from one that is warm, where there is such a thing."""
    if sys.platform == "win32":
        return multiprocessing.get_context("spawn")
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload([WARM])
    return context


def _serve(way: Connection, collect_at: tuple[int, int, int]) -> None:
    """What a process does: one errand after another, until nobody is there any more. It looks for
    garbage as seldom as its desk (`buildplan.__main__`)."""
    gc.set_threshold(*collect_at)
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the desk ends it
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    while True:
        try:
            work: Any = way.recv()
        except (EOFError, OSError):
            return
        try:
            work(way.send)
        except (BrokenPipeError, ConnectionResetError):
            return
        except Exception as error:  # noqa: BLE001 - it is told on the page
            way.send(failed_by(error))
        way.send(None)


def failed_by(error: Exception) -> Failed:
    """What is told of work that ended in an error."""
    told = not_written(error).told if isinstance(error, NotWrittenError) else None
    return Failed(f"{type(error).__name__}: {error}", told)


def _end_with_parent() -> None:
    """When the desk is gone, however it went, this process goes too."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        wait([parent.sentinel])
        os._exit(1)
