"""The desk as a person starts it: its processes, its pages, two of it on one folder."""

from __future__ import annotations

import json
import logging
import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import httpx
import pytest
from desks import DESIGNS, with_designs

from buildplan.desk.events import Hub
from buildplan.desk.serving import SERVER_LOG, NothingOnceEnded, listener

STAR = DESIGNS / "reading_star.yaml"
AT_STAR = "/api/design/reading_star"
PATIENCE_S = 90.0

pytestmark = pytest.mark.skipif(not Path("/proc/self").exists(), reason="reads /proc, of Linux")


@dataclass
class Started:
    """A desk that was started as a command, and what it tells its page."""

    process: subprocess.Popen[str]
    address: str
    http: httpx.Client
    heard: list[dict[str, Any]] = field(default_factory=list)

    @property
    def port(self) -> str:
        """Where it listens."""
        return self.address.split("/?")[0].rpartition(":")[2]

    def data(self, path: str) -> Any:
        """What stands at an address."""
        answer = self.http.get(path)
        assert answer.status_code in (200, 202), answer.text
        return answer.json()

    def edit(self, *edits: dict[str, object]) -> Any:
        """Changes of the star."""
        base = self.data(AT_STAR)["version"]
        answer = self.http.post(f"{AT_STAR}/edit", json={"base": base, "edits": list(edits)})
        assert answer.status_code == 200, answer.text
        return answer.json()


def until(found: Callable[[], Any]) -> Any:
    """What comes to be, waited for."""
    end = time.monotonic() + PATIENCE_S
    while time.monotonic() < end:
        value = found()
        if value:
            return value
        time.sleep(0.05)
    raise AssertionError("it did not come to be")


@contextmanager
def started(folder: Path, *options: str) -> Iterator[Started]:
    """A desk as a command, ended at the end if nobody ended it before."""
    process = subprocess.Popen(
        [sys.executable, "-m", "buildplan", "desk", str(folder), "--no-open", *options],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert process.stdout is not None
    address = process.stdout.readline().strip()
    assert address, process.communicate()
    own = address.split("/?")[0]
    try:
        with httpx.Client(base_url=own, headers={"origin": own}, timeout=PATIENCE_S) as http:
            assert http.get(address).status_code == 303
            yield Started(process, address, http)
    finally:
        process.kill()
        process.communicate()


def listen(desk: Started) -> None:
    """Hear what the desk says, in a thread, from now on."""

    def run() -> None:
        try:
            with desk.http.stream("GET", "/api/events") as stream:
                for line in stream.iter_lines():
                    if line.startswith("data: "):
                        desk.heard.append(json.loads(line.removeprefix("data: ")))
                    elif line.startswith(":"):
                        begun.set()
        except httpx.HTTPError:
            return

    begun = threading.Event()
    threading.Thread(target=run, daemon=True).start()
    assert begun.wait(PATIENCE_S)


def ask_for(desk: Started, path: str) -> None:
    """Ask, whatever comes of it."""
    with suppress(httpx.HTTPError):
        desk.http.get(path)


def children(pid: int) -> set[int]:
    """All processes that come from one."""
    parents = {}
    for entry in Path("/proc").iterdir():
        if entry.name.isdecimal():
            try:
                state = (entry / "stat").read_text("utf-8", "replace").rpartition(")")[2].split()
            except OSError:
                continue
            if state[0] != "Z":
                parents[int(entry.name)] = int(state[1])
    found, new = set[int](), {pid}
    while new:
        new = {one for one, parent in parents.items() if parent in new} - found
        found |= new
    return found


def alive(pids: set[int]) -> set[int]:
    """Those of some processes that are there and have not ended."""
    there = set()
    for pid in pids:
        try:
            state = Path(f"/proc/{pid}/stat").read_text("utf-8", "replace").rpartition(")")[2]
        except OSError:
            continue
        if state.split()[0] != "Z":
            there.add(pid)
    return there


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return with_designs(tmp_path / "designs", [STAR])


def test_pages_come_and_go_and_leave_nothing(folder: Path) -> None:
    """A hundred tabs: no process more, no connection left."""
    with started(folder) as desk:
        until(lambda: desk.data(f"{AT_STAR}/facts").get("settled"))
        before = children(desk.process.pid)
        fds = Path(f"/proc/{desk.process.pid}/fd")
        open_before = len(list(fds.iterdir()))
        with ExitStack() as tabs:
            for _ in range(100):
                tab = tabs.enter_context(
                    httpx.Client(base_url=desk.http.base_url, cookies=desk.http.cookies, timeout=60)
                )
                assert tab.get("/").status_code == 200
                tabs.enter_context(tab.stream("GET", "/api/events"))
            assert len(list(fds.iterdir())) >= open_before + 90
        until(lambda: len(list(fds.iterdir())) <= open_before + 5)
        assert children(desk.process.pid) <= before
        desk.edit({"op": "put", "path": ["name"], "value": "After a Hundred"})
        assert desk.data("/api/home")["designs"][0]["name"] == "reading_star"


@pytest.mark.parametrize("by", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL])
def test_however_it_ends_no_process_is_left(folder: Path, by: signal.Signals) -> None:
    """With work under way, and a page that listens."""
    with started(folder) as desk:
        listen(desk)
        ask_for(desk, "/api/beginnings")
        desk.edit({"op": "put", "path": ["name"], "value": "At Work"})
        for path in ("/api/beginnings/entrance.png", f"{AT_STAR}/step/20.svg"):
            threading.Thread(target=ask_for, args=(desk, path), daemon=True).start()
        desk.http.post(f"{AT_STAR}/print", json={"what": "booklet"})
        until(lambda: len(children(desk.process.pid)) >= 3)
        every = children(desk.process.pid)
        desk.process.send_signal(by)
        status = desk.process.wait(PATIENCE_S)
        if by is signal.SIGINT:
            assert status == 0
            assert desk.process.stderr is not None
            said = desk.process.stderr.read()
            assert said.splitlines() == ["The desk is open; Ctrl-C ends it."], said
        until(lambda: not alive(every))


def test_a_change_made_outside_is_heard_and_what_was_superseded_is_dropped(folder: Path) -> None:
    with started(folder) as desk:
        listen(desk)
        for number in range(12):  # faster than any of them is worked out
            last = desk.edit({"op": "put", "path": ["name"], "value": f"Star {number}"})
        until(lambda: desk.data(f"{AT_STAR}/facts?version={last['version']}").get("settled"))
        cards = {one["version"] for one in desk.heard if one["kind"] == "card"}
        made = [one for one in desk.heard if one["kind"] == "worked" and one["what"] == "piece"]
        assert last["version"] in cards
        assert len(made) < 12
        assert made[-1]["version"] == last["version"]
        text = (folder / "reading_star.yaml").read_text("utf-8") + "# by an editor\n"
        (folder / "reading_star.yaml").write_text(text, "utf-8")
        until(lambda: [one for one in desk.heard if one.get("by") == "outside"])
        assert desk.data(AT_STAR)["text"] == text
        (folder / "another.yaml").write_text(text, "utf-8")
        until(lambda: len(desk.data("/api/home")["designs"]) == 2)
        until(lambda: [one for one in desk.heard if one["kind"] == "folder"])


def test_a_second_desk_on_the_folder_shows_the_same(folder: Path) -> None:
    with started(folder) as one, started(folder) as other:
        assert one.port != other.port
        listen(other)
        made = one.edit({"op": "put", "path": ["name"], "value": "Of Both"})
        until(lambda: [e for e in other.heard if e.get("version") == made["version"]])
        same = other.data(AT_STAR)
        assert {**same, "problems": []} == {**made, "problems": []}
        base = {"base": same["version"]}
        assert other.http.post(f"{AT_STAR}/undo", json=base).status_code == 200
        assert one.data(AT_STAR)["text"] == STAR.read_text("utf-8")
        # and a change of the first that was made from what it saw before is not written over
        late = {**base, "edits": [{"op": "put", "path": ["name"], "value": "Late"}]}
        assert one.http.post(f"{AT_STAR}/edit", json=late).status_code == 409


def a_free_port() -> str:
    """One that the system gives to nobody by itself (IANA: those from 49152, Linux from 32768)."""
    for port in range(20_000 + os.getpid() % 10_000, 32_000):
        try:
            listener(port).close()
        except OSError:
            continue
        return str(port)
    raise AssertionError("no port is free")


def test_a_port_that_is_taken_is_said(folder: Path) -> None:
    with started(folder, "--port", a_free_port()) as desk:
        call = [sys.executable, "-m", "buildplan", "desk", str(folder), "--no-open"]
        again = subprocess.run(
            [*call, "--port", desk.port],
            capture_output=True,
            text=True,
            timeout=PATIENCE_S,
            check=False,
        )
        assert again.returncode == 2
        assert f"port {desk.port} is taken" in again.stderr
        port = desk.port
        desk.process.send_signal(signal.SIGINT)
        desk.process.wait(PATIENCE_S)
        with started(folder, "--port", port) as once_more:  # at once, and where it was
            assert once_more.port == port
        assert os.listdir(folder)


def test_who_still_waits_when_it_ends_is_no_fault() -> None:
    """uvicorn logs every call that it cuts off as a fault, with its lines of code."""
    hub = Hub()
    quiet = NothingOnceEnded(hub)
    record = logging.LogRecord(SERVER_LOG, logging.ERROR, "", 0, "cut off", None, None)
    assert quiet.filter(record)
    hub.close()
    assert not quiet.filter(record)
