"""What is answered to calls about new designs."""

from __future__ import annotations

import asyncio
import secrets
from dataclasses import replace
from pathlib import Path
from typing import Any

from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from buildplan.desk import saving
from buildplan.desk.asking import language_of, tell_of_job
from buildplan.desk.beginnings import (
    CALLED,
    beginnings,
    drawn_from,
    pattern_design,
    piece_design,
    sign_design,
)
from buildplan.desk.begun_pieces import begun_piece
from buildplan.desk.calls import FromOutline, FromPattern, FromPiece, FromWords, NewCall
from buildplan.desk.desk import Desk
from buildplan.desk.events import EVERYTHING
from buildplan.desk.fit_task import BeginningsWork, FitWork
from buildplan.desk.jobs import Ordered, order
from buildplan.desk.refusals import RefusedError, may_not_be_written
from buildplan.desk.safety import MOST_PICTURE
from buildplan.desk.titles import stem_of
from buildplan.desk.workers import ORDERED, Errand
from buildplan.fitting.sources import parse_height, units_of
from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.source.bounded import bytes_within
from buildplan.source.whole_files import write_whole

# how each kind of picture begins: PNG (ISO/IEC 15948, 5.2), JPEG (ISO/IEC 10918-1, B.1.1.3)
BEGUN_SO = {".png": b"\x89PNG\r\n\x1a\n", ".jpg": b"\xff\xd8\xff"}
SVG_BEGUN = (b"<svg", b"<?xml", b"<!--", b"<!DOCTYPE svg")


def listed(desk: Desk, request: Request, sent: Any) -> Response:
    """What a new design can be begun with; pictures that are not there are ordered, and every page
    is told of each: none waits for one, for a browser asks for few things at a time."""
    folder = pictures(desk)
    missing = [key for key in CALLED if not (folder / f"{key}.png").exists()]
    lane = "beginnings"

    def heard(part: object) -> None:
        desk.hub.tell(kind=lane)

    if missing and not desk.workers.busy_with(lane, lane):
        errand = Errand(lane, lane, BeginningsWork(folder), heard, lambda whole: None, ORDERED)
        desk.workers.ask(errand)
    drawn = frozenset(key for key in CALLED if (folder / f"{key}.png").exists())
    return JSONResponse(beginnings(desk.folder, drawn, Voice(language_of(desk, request))))


def pictures(desk: Desk) -> Path:
    """Where the pictures of beginnings are."""
    return desk.folder.kept / "beginnings" / drawn_from()


def picture(desk: Desk, request: Request, sent: Any) -> Response:
    """What a new design can be begun with, as PNG: a pattern drawn, or the picture that is kept
    beside a whole piece."""
    key: str = request.path_params["key"]
    if "/" in key:
        piece = begun_piece(desk.folder, key)
        file = None if piece is None else piece.picture
    else:
        file = pictures(desk) / f"{key}.png" if key in CALLED else None
    if file is not None and file.is_file():
        drawn = bytes_within(file, MOST_PICTURE)
        if drawn.startswith(BEGUN_SO[".png"]):
            return Response(drawn, media_type="image/png")
    raise RefusedError(404, message("this picture is not drawn yet"))


def new(desk: Desk, request: Request, sent: Any) -> Response:
    """A new design: at once, or as a job that begins it."""
    call = NewCall.model_validate_json(sent)
    voice, title = Voice(language_of(desk, request)), call.name.strip()
    if not title:
        raise RefusedError(400, message("type the name that it is to have"))
    match call.beginning:
        case FromPattern(key=key):
            return _begun(desk, title, pattern_design(key, title, voice))
        case FromPiece(key=key):
            return _begun(desk, title, piece_design(desk.folder, key, title))
        case FromWords(text=text, height=height):
            return _begun(desk, title, sign_design(title, text, height, voice))
        case FromOutline(key=key, path=path, height=height):
            work = _work(desk, title, height, voice)
            return _fitted(desk, replace(work, named=key, drawn=path))


def _begun(desk: Desk, title: str, data: bytes) -> Response:
    with desk.lock:
        name = saving.begin(desk.folder, stem_of(title), data)
        desk.seen.came_or_went()
    desk.hub.tell(**EVERYTHING)
    return JSONResponse({"name": name})


def _fitted(desk: Desk, work: FitWork) -> Response:
    if desk.folder.read_only:
        raise may_not_be_written()
    voice = Voice(work.language)
    job = order(desk.jobs, desk.workers, Ordered("new", "", work), voice, tell_of_job(desk))
    return JSONResponse({"job": job.id})


def _work(desk: Desk, title: str, height: str, voice: Voice) -> FitWork:
    """What is to be fitted, its outline left open."""
    try:
        height_m = parse_height(height)
    except ToldError as error:
        raise RefusedError(422, error.told) from error
    return FitWork(desk.folder.root, title, height_m, units_of(height), voice.language)


async def from_picture(request: Request) -> Response:
    """A new design from a picture that is sent: looked at by a process of its own."""
    desk: Desk = request.app.state.desk
    form = await request.form(max_files=1, max_fields=4, max_part_size=MOST_PICTURE)
    try:
        file = form.get("file")
        if not isinstance(file, UploadFile):
            raise RefusedError(400, message("choose a picture"))
        data = await file.read()
    finally:
        await form.close()
    title, height = (str(form.get(key, ""))[:200].strip() for key in ("name", "height"))
    return await asyncio.to_thread(_from_picture, desk, request, title, height, data)


def _from_picture(desk: Desk, request: Request, title: str, height: str, data: bytes) -> Response:
    kind, voice = kind_of(data), Voice(language_of(desk, request))
    work = _work(desk, title or voice.say("New piece"), height, voice)
    with saving.writing():
        sent = desk.folder.sent / f"{secrets.token_hex(8)}{kind}"
        write_whole(sent, data)
    return _fitted(desk, replace(work, sent=sent))


def kind_of(data: bytes) -> str:
    """The kind of a picture, as files of it end, by how it begins. Raises RefusedError for all but
    those that are read: a name says nothing of what is in a file."""
    for kind, begun in BEGUN_SO.items():
        if data.startswith(begun):
            return kind
    if data.removeprefix(b"\xef\xbb\xbf").lstrip().startswith(SVG_BEGUN):
        return ".svg"
    raise RefusedError(415, message("this is no picture that is read: give PNG, JPEG or SVG"))
