"""A desk for tests, asked as its page asks it: in this process, its work done at once."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

import httpx
import uvicorn
from httpx import Response

from buildplan.desk.app import desk_app
from buildplan.desk.desk import Desk
from buildplan.desk.events import Hub, Seen
from buildplan.desk.folder import Folder
from buildplan.desk.safety import Entrance
from buildplan.desk.serving import listener, settings_of
from buildplan.desk.workers import Errand, Workers, failed_by

DESIGNS = Path(__file__).parents[2] / "designs"
EVERY_DESIGN = sorted(p for p in DESIGNS.rglob("*.yaml") if b"\nbuild:" in p.read_bytes())
FILES = Path(__file__).parents[1] / "design" / "files"
TOKEN = "a-token-of-tests"
PATIENCE_S = 600  # work is done before an answer is given, by a processor that others use too


class AtOnce(Workers):
    """Does in this process, before it answers, what is ordered; `waits` has it never begun."""

    def __init__(self, *, waits: bool = False) -> None:
        super().__init__(0)
        self.asked: list[Errand] = []
        self.waits = waits

    def ask(self, errand: Errand) -> None:
        """Do an errand."""
        self.asked.append(errand)
        if not self.waits:
            try:
                errand.work(errand.told)
            except Exception as error:  # noqa: BLE001 - told, as a process does
                errand.told(failed_by(error))
            errand.ended(True)


@dataclass(frozen=True)
class Page:
    """Asks a desk as the page of it does."""

    desk: Desk
    http: httpx.Client
    entrance: Entrance

    @property
    def root(self) -> Path:
        """The folder of the designs."""
        return self.desk.folder.root

    def get(self, address: str) -> Response:
        """What stands at an address."""
        return self.http.get(address)

    def data(self, address: str) -> Any:
        """What stands at an address, as data."""
        answer = self.http.get(address)
        assert answer.status_code == 200, answer.text
        return answer.json()

    def send(self, address: str, body: Mapping[str, object], method: str = "POST") -> Response:
        """A call that changes something."""
        return self.http.request(method, address, json=dict(body))

    def edit(self, name: str, *edits: Mapping[str, object], base: str = "") -> Response:
        """Changes of a design as it is now, or as it was in a version."""
        version = base or self.data(f"/api/design/{name}")["version"]
        return self.send(f"/api/design/{name}/edit", {"base": version, "edits": list(edits)})

    def text(self, name: str) -> str:
        """What the file of a design says."""
        return (self.root / f"{name}.yaml").read_text("utf-8")


@contextmanager
def open_page(root: Path, workers: Workers | None = None, language: str = "en") -> Iterator[Page]:
    """The page of a desk on a folder, served as the command serves it."""
    folder = Folder(root.resolve())
    desk = Desk(folder, Hub(), Seen(folder), workers or AtOnce(), language)
    with served(desk) as entrance, page_of(desk, entrance) as page:
        yield page


@contextmanager
def served(desk: Desk) -> Iterator[Entrance]:
    """A desk served on a port of its own."""
    listening = listener(0)
    entrance = Entrance(listening.getsockname()[1], TOKEN)
    server = uvicorn.Server(settings_of(desk_app(desk, entrance)))
    thread = threading.Thread(target=server.run, args=([listening],), daemon=True)
    thread.start()
    try:
        yield entrance
    finally:
        server.should_exit = True
        thread.join(10)
        listening.close()


@contextmanager
def page_of(desk: Desk, entrance: Entrance) -> Iterator[Page]:
    """A page that came in by the address that the desk printed."""
    own = f"http://127.0.0.1:{entrance.port}"
    with httpx.Client(base_url=own, headers={"origin": own}, timeout=PATIENCE_S) as http:
        assert http.get(entrance.address).status_code == 303
        yield Page(desk, http, entrance)


def with_designs(folder: Path, designs: Sequence[Path]) -> Path:
    """A folder with copies of designs."""
    folder.mkdir(exist_ok=True)
    for design in designs:
        shutil.copy(design, folder)
    return folder


def serve_until_killed(root: Path, port: int, told: Connection) -> None:
    """A desk in a process that somebody kills: says when it can be asked."""
    folder = Folder(root)
    desk = Desk(folder, Hub(), Seen(folder), AtOnce(waits=True), "en")
    listening = listener(port)
    entrance = Entrance(listening.getsockname()[1], TOKEN)
    told.send(entrance.port)
    uvicorn.Server(settings_of(desk_app(desk, entrance))).run(sockets=[listening])
