"""What was printed of a design: the files of it that are there, newest first, with their covers."""

from __future__ import annotations

import asyncio
import hashlib
import stat
from pathlib import Path
from typing import Any
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from buildplan.desk.asking import language_of
from buildplan.desk.awaiting import awaited
from buildplan.desk.desk import Desk, looked_at
from buildplan.desk.folder import Folder
from buildplan.desk.page import PRINTED, printed_file
from buildplan.desk.print_task import COVER, CoverWork
from buildplan.desk.results import Results
from buildplan.desk.task import PICTURE
from buildplan.source.bounded import bytes_within

MOST_SHOWN = 24
MOST_BYTES = 64 * 2**20


def printed_of(folder: Folder, name: str) -> list[tuple[Path, int]]:
    """The files that were printed of a design and when, the newest first."""
    if not folder.output.is_dir():
        return []
    longer = tuple(f"{one}-" for one in folder.names() if one.startswith(f"{name}-"))
    found = [
        (-made, path.name, path)
        for path in folder.output.iterdir()
        if path.name.startswith(f"{name}-") and not path.name.startswith(longer)
        if path.suffix in PRINTED and (made := _made(path)) is not None
    ]
    return [(path, -made) for made, _, path in sorted(found)[:MOST_SHOWN]]


def _made(path: Path) -> int | None:
    """When a file was written, in seconds since 1970 (POSIX); None where it is none any more."""
    try:
        found = path.stat()
    except OSError:
        return None
    return int(found.st_mtime) if stat.S_ISREG(found.st_mode) else None


def printed(desk: Desk, request: Request, sent: Any) -> Response:
    """What was printed of a design, and its picture for where nothing was. `made` is in seconds
    since 1970 (POSIX)."""
    looked = looked_at(desk, request.path_params["name"], language_of(desk, request))
    drawn = looked.results.path(PICTURE).is_file()
    files = [
        {
            "name": path.name,
            "url": f"/output/{quote(path.name)}",
            "made": made,
            "cover": f"/api/printed/{quote(path.name)}.png" if path.suffix == ".pdf" else None,
        }
        for path, made in printed_of(desk.folder, looked.name)
    ]
    picture = f"/api/pictures/{looked.results.key}.png" if drawn else None
    return JSONResponse({"picture": picture, "files": files})


async def cover(request: Request) -> Response:
    """The first page of a PDF that was printed, small."""
    desk: Desk = request.app.state.desk
    name: str = request.path_params["file"]
    results = await asyncio.to_thread(_results, desk, name)
    work = CoverWork(desk.folder.root, name, results.key)
    drawn = await awaited(desk, results, COVER, f"cover {name}", work)
    return Response(drawn, media_type="image/png")


def _results(desk: Desk, name: str) -> Results:
    """Where the cover of a file is, by what is in the file."""
    data = bytes_within(printed_file(desk.folder.output, name), MOST_BYTES)
    return Results(desk.folder.results, hashlib.sha256(data).hexdigest()[:40])
