"""Work in several processes, here or on a cluster, by joblib.

What is asked of each process depends on nothing but its arguments, and answers come back in
order: the result is the same whatever the number of workers.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import TypeVar

from joblib import Parallel, delayed, parallel_config

Given = TypeVar("Given")
Answer = TypeVar("Answer")


class NoClusterError(Exception):
    """A cluster that cannot be worked on: what to install, or why it does not answer."""


@contextmanager
def working(workers: int | None = None, cluster: str | None = None) -> Iterator[None]:
    """Work in so many processes (None: as many as there are cores), or on the Dask cluster whose
    scheduler is at an address such as `tcp://127.0.0.1:8786`. Raises NoClusterError."""
    if cluster is None:
        with parallel_config(n_jobs=workers or -1):
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


def each(work: Callable[[Given], Answer], given: Sequence[Given]) -> list[Answer]:
    """`work` done on each, in order; in the processes of the `working` round it, or here."""
    return list(Parallel(max_nbytes=None)(delayed(work)(one) for one in given))
