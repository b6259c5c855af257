"""Serving the desk on this machine until it is ended."""

from __future__ import annotations

import logging
import os
import socket
import threading
import webbrowser
from collections.abc import Callable
from pathlib import Path
from types import FrameType

import uvicorn
from starlette.applications import Starlette

from buildplan.desk.app import desk_app
from buildplan.desk.desk import Desk
from buildplan.desk.events import Hub, Seen
from buildplan.desk.folder import Folder
from buildplan.desk.results import prune
from buildplan.desk.safety import Entrance, new_token
from buildplan.desk.workers import Workers

LOOPBACK = "127.0.0.1"
ENDING_S = 1
SOON_S = 0.3
SERVER_LOG = "uvicorn.error"


def listener(port: int) -> socket.socket:
    """A socket on the loopback address; port 0 takes one that is free. Raises OSError where the
    port is taken."""
    found = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    if os.name == "posix":  # a desk begun again at once has its port again; elsewhere two could
        found.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        found.bind((LOOPBACK, port))
        found.listen()
    except OSError:
        found.close()
        raise
    return found


def desk_of(root: Path, language: str, workers: int | None = None) -> Desk:
    """The desk of a folder."""
    folder = Folder(root.resolve())
    prune(folder)
    return Desk(folder, Hub(), Seen(folder), Workers(workers), language)


def settings_of(application: Starlette) -> uvicorn.Config:
    """How the desk is served."""
    return uvicorn.Config(
        application,
        log_level="error",
        access_log=False,
        server_header=False,
        date_header=False,
        timeout_graceful_shutdown=ENDING_S,
        lifespan="on",
    )


def serve(
    root: Path, listening: socket.socket, language: str, begun: Callable[[str], None], opens: bool
) -> None:
    """Serve until Ctrl-C; `begun` hears the address, and `opens` shows it in the browser.

    Raises KeyboardInterrupt when it was ended so; no process of it is left then.
    """
    entrance = Entrance(listening.getsockname()[1], new_token())
    desk = desk_of(root, language)
    logging.getLogger(SERVER_LOG).addFilter(NothingOnceEnded(desk.hub))
    begun(entrance.address)
    if opens:
        threading.Timer(SOON_S, webbrowser.open, [entrance.address]).start()
    try:
        _Server(desk, settings_of(desk_app(desk, entrance))).run(sockets=[listening])
    finally:
        desk.workers.close()


class NothingOnceEnded(logging.Filter):
    """Lets nothing be logged once the desk is to end: who still waited for something is not told
    anything any more, and that is no fault."""

    def __init__(self, hub: Hub) -> None:
        super().__init__()
        self._hub = hub

    def filter(self, record: logging.LogRecord) -> bool:
        """Whether a record is logged."""
        return not self._hub.is_closed


class _Server(uvicorn.Server):
    """Ends the streams of events as soon as it is to end: else it would wait for the pages."""

    def __init__(self, desk: Desk, config: uvicorn.Config) -> None:
        super().__init__(config)
        self._desk = desk

    def handle_exit(self, sig: int, frame: FrameType | None) -> None:
        self._desk.hub.end_soon()
        super().handle_exit(sig, frame)
