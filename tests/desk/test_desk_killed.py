"""A desk that is killed while changes arrive: the file is one of the versions, whole."""

from __future__ import annotations

import multiprocessing
import random
import threading
import time
from pathlib import Path

import httpx
import pytest
from desks import DESIGNS, TOKEN, serve_until_killed, with_designs

from buildplan.desk.folder import Folder, version_of
from buildplan.desk.saving import design_now, redo, undo

TIMES, LONGEST_S, PATIENCE_S = 50, 0.06, 60.0
NAME = "reading_star"

pytestmark = pytest.mark.skipif(
    "forkserver" not in multiprocessing.get_all_start_methods(), reason="there is no fork here"
)


def text_of(number: int) -> str:
    """Versions of other lengths, so that one written over another would show."""
    star = (DESIGNS / f"{NAME}.yaml").read_text("utf-8")
    return f"{star}# change {number}\n" + "# filled up\n" * (number % 7 * 400)


class Changes(threading.Thread):
    """Sends one change after another, until nobody answers."""

    def __init__(self, port: int, base: str, first: int) -> None:
        super().__init__(daemon=True)
        self.number, self.answered = first, 0
        self._port, self._base = port, base

    def run(self) -> None:
        """Change the design."""
        own = f"http://127.0.0.1:{self._port}"
        try:
            with httpx.Client(base_url=own, headers={"origin": own}, timeout=PATIENCE_S) as http:
                http.get(f"/?token={TOKEN}")
                while True:
                    self.number += 1
                    body = {"base": self._base, "text": text_of(self.number)}
                    answer = http.put(f"/api/design/{NAME}", json=body)
                    assert answer.status_code == 200, answer.text
                    self._base = answer.json()["version"]
                    self.answered += 1
        except httpx.HTTPError:
            return


def test_a_killed_desk_leaves_a_whole_version(tmp_path: Path) -> None:
    root = with_designs(tmp_path, [DESIGNS / f"{NAME}.yaml"])
    folder, file = Folder(root), root / f"{NAME}.yaml"
    known = {file.read_text("utf-8")}
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(["buildplan.desk.serving", "httpx"])
    moments, number, answered = random.Random(8642), 0, 0
    for _ in range(TIMES):
        ours, theirs = context.Pipe()
        process = context.Process(target=serve_until_killed, args=(root, 0, theirs), daemon=True)
        process.start()
        assert ours.poll(PATIENCE_S)
        changes = Changes(ours.recv(), version_of(file.read_bytes()), number)
        changes.start()
        deadline = time.monotonic() + PATIENCE_S
        while not changes.answered and changes.is_alive() and time.monotonic() < deadline:
            time.sleep(0.002)
        time.sleep(moments.uniform(0, LONGEST_S))
        process.kill()
        process.join(PATIENCE_S)
        changes.join(PATIENCE_S)
        known |= {text_of(one) for one in range(number, changes.number + 1)}
        number, answered = changes.number, answered + changes.answered
        left = file.read_text("utf-8")
        assert left in known
        history = design_now(folder, NAME).history
        assert history.at(history.position).decode() == left or history.position > history.last - 1
    assert answered >= TIMES
    # and what was before can be had again, and what is now after it
    now = design_now(folder, NAME)
    before = undo(folder, NAME, now.version)
    assert before.text in known
    assert redo(folder, NAME, before.version).text == now.text
    leftovers = [one.name for one in root.iterdir() if one.suffix == ".part"]
    assert len(leftovers) <= 1  # of the last: the others went when the next one wrote
