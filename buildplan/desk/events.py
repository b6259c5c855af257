"""What happens at the desk, told to every page that is open, and what happens outside of it.

Pages hear of it by server-sent events (HTML Living Standard, 9.2).
"""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator, Mapping
from pathlib import Path

from watchfiles import Change, awatch

from buildplan.desk.folder import SUFFIX, Folder, version_of
from buildplan.desk.refusals import RefusedError

MOST_WAITING = 1000  # events that a page may be behind; then it is told to look at everything anew
STILL_THERE_S = 15.0
EVERYTHING: Mapping[str, object] = {"kind": "folder"}


class Hub:
    """Passes events on to all who listen, from any thread."""

    def __init__(self) -> None:
        self._queues: set[asyncio.Queue[Mapping[str, object] | None]] = set()
        self._loop: asyncio.AbstractEventLoop | None = None
        self._closed = False

    def open(self) -> None:
        """Begin, in the loop that serves."""
        self._loop = asyncio.get_running_loop()

    @property
    def listening(self) -> int:
        """How many pages listen."""
        return len(self._queues)

    def tell(self, **event: object) -> None:
        """Tell an event to every page."""
        if self._loop is not None and not self._loop.is_closed():
            self._loop.call_soon_threadsafe(self._pass_on, event)

    @property
    def is_closed(self) -> bool:
        """Whether the desk ends: nobody is to wait for anything any more."""
        return self._closed

    def end_soon(self) -> None:
        """End every stream of events; may be called from anywhere, a signal's handler too."""
        if self._loop is not None and not self._loop.is_closed():
            self._loop.call_soon_threadsafe(self.close)

    def close(self) -> None:
        """End every stream of events."""
        self._closed = True
        for queue in self._queues:
            _put(queue, None)

    def _pass_on(self, event: Mapping[str, object]) -> None:
        for queue in self._queues:
            _put(queue, event)

    async def stream(self) -> AsyncIterator[bytes]:
        """The events from now on, as the bytes of a stream."""
        queue: asyncio.Queue[Mapping[str, object] | None] = asyncio.Queue(MOST_WAITING)
        self._queues.add(queue)
        try:
            yield b": the desk\n\n"
            while not self._closed:
                try:
                    event = await asyncio.wait_for(queue.get(), STILL_THERE_S)
                except TimeoutError:
                    yield b":\n\n"
                    continue
                if event is None:
                    return
                yield f"data: {json.dumps(event, ensure_ascii=False)}\n\n".encode()
        finally:
            self._queues.discard(queue)


def _put(
    queue: asyncio.Queue[Mapping[str, object] | None], event: Mapping[str, object] | None
) -> None:
    if queue.full():
        while not queue.empty():
            queue.get_nowait()
        queue.put_nowait(EVERYTHING)
    queue.put_nowait(event)


class Seen:
    """The version of each design that the pages have been told of."""

    def __init__(self, folder: Folder) -> None:
        self._folder = folder
        self._versions = {name: self._version(name) for name in folder.names()}

    def _version(self, name: str) -> str:
        try:
            return version_of(self._folder.read(name))
        except (RefusedError, OSError):
            return ""

    def told(self, name: str, version: str) -> None:
        """The pages know of this version."""
        self._versions[name] = version

    def gone(self, name: str) -> None:
        """The pages know that it is no longer there."""
        self._versions.pop(name, None)

    def changed(self, names: set[str]) -> list[tuple[str, str]]:
        """Those of the designs that have a version of which the pages do not know, with it."""
        found = []
        for name in sorted(names & self._versions.keys()):
            version = self._version(name)
            if version and version != self._versions[name]:
                self._versions[name] = version
                found.append((name, version))
        return found

    def came_or_went(self) -> bool:
        """Whether there are other designs than the pages know of."""
        names = set(self._folder.names())
        if names == self._versions.keys():
            return False
        self._versions = {
            name: self._versions.get(name) or self._version(name) for name in sorted(names)
        }
        return True


async def watch(folder: Folder, seen: Seen, hub: Hub, stop: asyncio.Event) -> None:
    """Tell of every change to the folder that is not of this desk's own making."""

    def of_designs(change: Change, path: str) -> bool:
        name = Path(path).name
        return name.endswith(SUFFIX) and not name.startswith(".")

    async for changes in awatch(
        folder.root, watch_filter=of_designs, stop_event=stop, recursive=False, debounce=50, step=20
    ):
        names = {Path(path).name.removesuffix(SUFFIX) for _, path in changes}
        if seen.came_or_went():
            hub.tell(**EVERYTHING)
        for name, version in seen.changed(names):
            hub.tell(kind="changed", name=name, version=version, by="outside")
