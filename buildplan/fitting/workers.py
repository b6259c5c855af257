"""Work in several processes, here or on a cluster, by joblib.

What is asked of each process depends on nothing but its arguments, and answers come back in
order: the result is the same whatever the number of workers.
"""

from __future__ import annotations

import os
import signal
import threading
import time
from collections.abc import Callable, Generator, Iterator, Sequence
from contextlib import contextmanager
from multiprocessing import resource_tracker
from typing import TypeVar
from warnings import catch_warnings, simplefilter

from joblib import Parallel, cpu_count, delayed, effective_n_jobs, parallel_config

# answers that may wait for those before them, for each core
AHEAD = 16
# how often a process looks whether the one that it works for is still there
LOOK_S = 0.5

Given = TypeVar("Given")
Answer = TypeVar("Answer")


class NoClusterError(Exception):
    """A cluster that cannot be worked on: what to install, or why it does not answer."""


@contextmanager
def working(workers: int | None = None, cluster: str | None = None) -> Iterator[None]:
    """Work in so many processes (None: as many as there are cores), or on the Dask cluster whose
    scheduler is at an address such as `tcp://127.0.0.1:8786`. Raises NoClusterError."""
    if cluster is None:
        ending = {"initializer": _end_with, "initargs": (os.getpid(),)}
        with parallel_config(backend="loky", n_jobs=workers or -1, **ending):
            yield
        return
    try:
        from distributed import Client
    except ImportError as error:
        raise NoClusterError(str(error)) from error
    try:
        client = Client(cluster, timeout=10, set_as_default=True)  # type: ignore[no-untyped-call]
    except (OSError, ValueError) as error:
        raise NoClusterError(str(error)) from error
    with client, parallel_config(backend="dask", n_jobs=-1):
        yield


def each_in_turn(
    work: Callable[[Given], Answer], given: Sequence[Given]
) -> Generator[Answer, None, None]:
    """As `each`, by all cores, each answer as soon as those before it are there. So few are worked
    on ahead of what is asked for that memory does not grow with their number."""
    ahead = AHEAD * cpu_count()
    with working():
        processes = Parallel(max_nbytes=None, return_as="generator")
    with processes as parallel:
        for start in range(0, len(given), ahead):
            with _out_of_reach():
                answers = parallel(delayed(work)(one) for one in given[start : start + ahead])
            try:
                for answer in answers:  # noqa: UP028 - it is closed here, not by whoever asks
                    yield answer
            finally:
                with catch_warnings():  # whoever asks no further has no use for the rest
                    simplefilter("ignore", UserWarning)
                    answers.close()


def each(work: Callable[[Given], Answer], given: Sequence[Given]) -> list[Answer]:
    """`work` done on each, in order; in the processes of the `working` round it, or here."""
    parallel = Parallel(max_nbytes=None, return_as="generator")
    with _out_of_reach():
        answers = parallel(delayed(work)(one) for one in given)
    try:
        return list(answers)
    except KeyboardInterrupt:
        _hear_no_more_of_what_is_given_up()
        raise


def _hear_no_more_of_what_is_given_up() -> None:
    """The thread of joblib's that hands work to processes may come upon work that was just given up
    (a KeyError); that is nothing to anybody, and would be printed."""
    heard = threading.excepthook

    def hook(args: threading.ExceptHookArgs) -> None:
        if not (args.exc_type is KeyError and type(args.thread).__module__.startswith("joblib.")):
            heard(args)

    threading.excepthook = hook


@contextmanager
def _out_of_reach() -> Iterator[None]:
    """Processes that are begun meanwhile are not reached by Ctrl-C, which a terminal sends to all
    of them: this one ends them. It is told afterwards of one that came meanwhile (the mask of
    signals is inherited: POSIX.1-2017, 2.4 and exec)."""
    if effective_n_jobs() == 1 or not hasattr(signal, "pthread_sigmask"):  # not on Windows
        yield
        return
    resource_tracker.ensure_running()  # begun meanwhile, it would take the mask away
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _end_with(parent: int) -> None:
    """End this process, which begins, when its parent is gone, however it went and also before it
    has asked for anything: a child that is left alone has another parent (POSIX.1-2017, _exit)."""

    def watch() -> None:
        while os.getppid() == parent:
            time.sleep(LOOK_S)
        os._exit(1)

    threading.Thread(target=watch, daemon=True).start()
