"""Requests to the desk made wrong: asked as a page asks, with no work begun.

A request is plain data: what is asked of which address, and what is sent.
"""

from __future__ import annotations

import asyncio
import json
import shutil
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random
from typing import Any
from urllib.parse import quote

import httpx
from judging import FaultError
from kinds import DESIGNS, Kind
from mutating import mutated_bytes, mutated_data, mutated_tokens

from buildplan.desk.app import desk_app
from buildplan.desk.desk import Desk
from buildplan.desk.events import Hub, Seen
from buildplan.desk.folder import Folder
from buildplan.desk.safety import Entrance
from buildplan.desk.workers import Errand, Workers

PORT, TOKEN, NAME = 8000, "a-token-of-tests", "reading_star"
BASE = "0" * 64
EDITS: tuple[dict[str, Any], ...] = (
    {"op": "put", "path": ["balloons", "long", "colour"], "value": "navy"},
    {"op": "take_out", "path": ["crew"]},
    {"op": "insert", "path": ["build", "tube", "course", 0], "value": "straight"},
    {"op": "move", "path": ["build", "tube", "course", 0], "to": 0},
    {"op": "rename", "path": ["balloons", "long"], "key": "far"},
    {"op": "suggestion", "number": 0, "way": 0},
    {"op": "paint", "links": ["A1-A2"], "balloon": "cross"},
)
REQUESTS: tuple[dict[str, Any], ...] = (
    *(
        {"method": "POST", "to": f"/api/design/{NAME}/edit", "sent": {"base": BASE, "edits": [one]}}
        for one in EDITS
    ),
    {
        "method": "PUT",
        "to": f"/api/design/{NAME}",
        "sent": {"base": BASE, "text": "buildplan: 1\nname: X\nunits: in\n"},
    },
    *(
        {"method": "POST", "to": f"/api/design/{NAME}/{what}", "sent": {"base": BASE}}
        for what in ("undo", "redo", "away", "back")
    ),
    {"method": "POST", "to": f"/api/design/{NAME}/copy", "sent": {"name": "Another"}},
    {"method": "POST", "to": f"/api/design/{NAME}/rename", "sent": {"name": "Another"}},
    {"method": "GET", "to": f"/api/design/{NAME}", "sent": None},
    {"method": "GET", "to": f"/api/design/{NAME}/facts", "sent": None},
    {"method": "GET", "to": "/api/home", "sent": None},
    *(
        {"method": "POST", "to": "/api/new", "sent": {"name": "New", "from": begun}}
        for begun in (
            {"kind": "pattern", "key": "column"},
            {"kind": "words", "text": "HI", "height": "60in"},
            {"kind": "outline", "path": "M0 0h90v90z", "height": "150cm"},
            {"kind": "outline", "key": "star", "height": "150cm"},
        )
    ),
    {"method": "POST", "to": f"/api/design/{NAME}/print", "sent": {"what": "booklet"}},
    {"method": "DELETE", "to": "/api/jobs/1", "sent": None},
)


class NothingDone(Workers):
    """Begins no work at all."""

    def __init__(self) -> None:
        super().__init__(0)

    def ask(self, errand: Errand) -> None:
        """Leave an errand undone."""


@cache
def _root() -> Path:
    """A folder for a desk, of this process alone."""
    return Path(tempfile.mkdtemp(prefix="fuzzed-desk-"))


@dataclass(frozen=True)
class OnePage:
    """A page of a desk that is asked in this process, without a network."""

    http: httpx.AsyncClient
    loop: asyncio.AbstractEventLoop

    def ask(self, method: str, to: str, body: bytes = b"") -> httpx.Response:
        """What is answered."""
        return self.loop.run_until_complete(self.http.request(method, to, content=body))


@cache
def _page() -> OnePage:
    """A page that came in by the address that the desk prints."""
    folder = Folder(_root())
    entrance = Entrance(PORT, TOKEN)
    desk = Desk(folder, Hub(), Seen(folder), NothingDone(), "en")
    own = f"http://127.0.0.1:{PORT}"
    served = httpx.ASGITransport(desk_app(desk, entrance), raise_app_exceptions=False)
    http = httpx.AsyncClient(transport=served, base_url=own, headers={"origin": own})
    page = OnePage(http, asyncio.new_event_loop())
    page.ask("GET", f"/?token={TOKEN}")
    return page


def _asked(path: Path) -> Sequence[str]:
    """Ask what a case asks, as an edit of the design as it is."""
    page, request = _page(), json.loads(path.read_text("utf-8"))
    shutil.copy(DESIGNS / f"{NAME}.yaml", _root())  # as it was, whatever a case before has done
    design = page.ask("GET", f"/api/design/{NAME}")
    sent = request["sent"]
    if isinstance(sent, str):
        body = sent.encode("utf-8", "surrogatepass")
    else:
        body = json.dumps(sent).replace(BASE, str(design.json().get("version", BASE))).encode()
    answer = page.ask(request["method"], _address(request["to"]), body)
    if answer.status_code >= 500:
        raise FaultError(answer.text)
    return [str(answer.json()["message"])] if answer.status_code >= 400 else ()


def _address(text: str) -> str:
    """An address as a page would write it (RFC 3986)."""
    return "/" + quote(text.lstrip("/"), safe="/?=&.%")


def _mutated(random: Random, data: bytes) -> bytes:
    """What is sent made wrong: as data, or as text that is no JSON any more; or the address."""
    request = json.loads(data)
    match random.randrange(8):
        case 0:
            to = mutated_tokens(random, request["to"].encode())
            request["to"] = to.decode("utf-8", "replace")[:2000]
        case 1:
            sent = json.dumps(request["sent"]).encode()
            request["sent"] = mutated_bytes(random, sent).decode("utf-8", "replace")
        case _:
            request["sent"] = mutated_data(random, {"sent": request["sent"]}).get("sent")
    return json.dumps(request).encode()


DESK = Kind(
    "desk request",
    lambda: tuple(json.dumps(one).encode() for one in REQUESTS),
    (_mutated,),
    ".json",
    _asked,
)
