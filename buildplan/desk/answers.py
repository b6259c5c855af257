"""What is answered to each call about designs."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from http import HTTPStatus
from pathlib import Path
from typing import Any

from babel import Locale
from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from buildplan.desk import saving
from buildplan.desk.asking import language_of
from buildplan.desk.calls import BaseCall, EditCall, PutCall, SeenCall, TitleCall
from buildplan.desk.cards import blank_card
from buildplan.desk.desk import (
    Desk,
    Looked,
    at_version,
    card_in,
    card_lane,
    facts_in,
    facts_now,
    have_card_made,
    have_worked_out,
    looked_at,
    piece_now,
    saved_as_data,
    saved_by_desk,
)
from buildplan.desk.editing import edited_file
from buildplan.desk.events import EVERYTHING
from buildplan.desk.folder import read_design_file, version_of
from buildplan.desk.outline import outline_of
from buildplan.desk.problem_data import file_as_data, title_of
from buildplan.desk.refusals import RefusedError
from buildplan.desk.results import Results, is_key, results_of
from buildplan.desk.task import PICTURE
from buildplan.desk.words import desk_words
from buildplan.language.messages import message
from buildplan.language.voice import LOCALES, Voice

_Card = Mapping[str, object]


def _name(request: Request) -> str:
    name: str = request.path_params["name"]
    return name


def words(desk: Desk, request: Request, sent: Any) -> Response:
    """Every text of the page."""
    language = language_of(desk, request)
    own = {code: Locale.parse(code).get_display_name() or code for code in LOCALES}
    return JSONResponse(
        {
            "language": language,
            "tag": Voice(language).tag,
            "languages": {code: name[:1].upper() + name[1:] for code, name in own.items()},
            "words": desk_words(Voice(language)),
        }
    )


def home(desk: Desk, request: Request, sent: Any) -> Response:
    """The designs of the folder as cards; what is not worked out yet is ordered."""
    language = language_of(desk, request)
    folder = desk.folder
    here, away = folder.names(), folder.names_away()
    return JSONResponse(
        {
            "folder": str(folder.root),
            "read_only": folder.read_only,
            "designs": list(_cards(here, lambda name: _card_here(desk, name, language))),
            "away": list(_cards(away, lambda name: _card_away(desk, name, language))),
        }
    )


def _cards(names: Iterable[str], card: Callable[[str], _Card]) -> Iterator[_Card]:
    """The cards of designs, but of those that have gone since their names were listed."""
    for name in names:
        try:
            yield card(name)
        except RefusedError as refused:
            if refused.status != HTTPStatus.NOT_FOUND:
                raise


def _card_here(desk: Desk, name: str, language: str) -> _Card:
    looked = looked_at(desk, name, language)
    have_card_made(desk, looked)
    return _card(desk, looked, desk.folder.file(name))


def _card_away(desk: Desk, name: str, language: str) -> _Card:
    file = desk.folder.away_file(name)
    data = read_design_file(file, name)
    results = results_of(desk.folder, data, language)
    looked = Looked(name, version_of(data), language, results)
    return {**_card(desk, looked, file), "title": title_of(data) or name}


def _card(desk: Desk, looked: Looked, file: Path) -> _Card:
    drawn = looked.results.path(PICTURE).is_file()
    picture = f"/api/pictures/{looked.results.key}.png" if drawn else None
    head = {
        "name": looked.name,
        "file": f"{looked.name}.yaml",
        "version": looked.version,
        "picture": picture,
    }
    known = card_in(looked.results)
    failed = desk.failed.get(looked.results.key)
    if known is not None and (failed is None or known["state"] != "working"):
        return {**head, **known, "title": known["title"] or looked.name}
    title = title_of(read_design_file(file, looked.name)) or looked.name
    if failed is None:
        return {**head, **blank_card(title, "working", "")}
    told = failed.error if failed.told is None else Voice(looked.language).tell(failed.told)
    return {**head, **blank_card(title, "broken", told)}


def seen(desk: Desk, request: Request, sent: Any) -> Response:
    """What is in sight at home is worked out before what is not."""
    names = SeenCall.model_validate_json(sent).names
    desk.workers.first([card_lane(name) for name in names])
    return JSONResponse({})


def design(desk: Desk, request: Request, sent: Any) -> Response:
    """A design: its text, and what it is made of."""
    with desk.lock:
        saved = saving.design_now(desk.folder, _name(request))
    have_worked_out(desk, looked_at(desk, saved.name, language_of(desk, request)))
    return JSONResponse(_with_outline(desk, request, saved))


def _with_outline(desk: Desk, request: Request, saved: saving.Saved) -> Mapping[str, object]:
    voice = Voice(language_of(desk, request))
    looked = looked_at(desk, saved.name, voice.language)
    facts = facts_in(looked.results) if looked.version == saved.version else None
    return {
        **saved_as_data(saved),
        "read_only": desk.folder.read_only,
        **outline_of(saved.text, voice),
        **file_as_data(saved.text, facts, voice),
    }


def _changed(desk: Desk, request: Request, change: Callable[[], saving.Saved]) -> Response:
    """A design after a change, of which every page is told."""
    with desk.lock:
        saved = change()
        saved_by_desk(desk, saved)
    have_worked_out(desk, looked_at(desk, saved.name, language_of(desk, request)))
    return JSONResponse(_with_outline(desk, request, saved))


def put(desk: Desk, request: Request, sent: Any) -> Response:
    """The design with another text."""
    call = PutCall.model_validate_json(sent)
    return _changed(
        desk, request, lambda: saving.save(desk.folder, _name(request), call.base, call.text)
    )


def edit(desk: Desk, request: Request, sent: Any) -> Response:
    """The design with changes made in its text."""
    call = EditCall.model_validate_json(sent)
    name = _name(request)

    def change() -> saving.Saved:
        looked = looked_at(desk, name, language_of(desk, request))
        facts = facts_in(looked.results) if looked.version == call.base else None
        made = edited_file(desk.folder.file(name), call.edits, facts or {})
        return saving.save(desk.folder, name, call.base, made)

    return _changed(desk, request, change)


def undo(desk: Desk, request: Request, sent: Any) -> Response:
    """The design as it was before."""
    call = BaseCall.model_validate_json(sent)
    return _changed(desk, request, lambda: saving.undo(desk.folder, _name(request), call.base))


def redo(desk: Desk, request: Request, sent: Any) -> Response:
    """The design as it was before the last undo."""
    call = BaseCall.model_validate_json(sent)
    return _changed(desk, request, lambda: saving.redo(desk.folder, _name(request), call.base))


def copy(desk: Desk, request: Request, sent: Any) -> Response:
    """The design once more."""
    title = TitleCall.model_validate_json(sent or b"{}").name.strip()
    return _renamed(desk, lambda: saving.copy(desk.folder, _name(request), title))


def rename(desk: Desk, request: Request, sent: Any) -> Response:
    """The design under another title."""
    title = TitleCall.model_validate_json(sent).name.strip()
    if not title:
        raise RefusedError(400, message("type the name that it is to have"))
    return _renamed(desk, lambda: saving.rename(desk.folder, _name(request), title))


def away(desk: Desk, request: Request, sent: Any) -> Response:
    """The design out of sight."""
    return _renamed(desk, lambda: saving.put_away(desk.folder, _name(request)))


def back(desk: Desk, request: Request, sent: Any) -> Response:
    """A design that was put away, back on the desk."""
    return _renamed(desk, lambda: saving.bring_back(desk.folder, _name(request)))


def _renamed(desk: Desk, change: Callable[[], str]) -> Response:
    with desk.lock:
        name = change()
        desk.seen.came_or_went()
    desk.hub.tell(**EVERYTHING)
    return JSONResponse({"name": name})


def _looked(desk: Desk, request: Request) -> Looked:
    version = request.query_params.get("version", "")
    return at_version(desk, _name(request), version, language_of(desk, request))


def picture(desk: Desk, request: Request, sent: Any) -> Response:
    """The picture of a card, by what it shows: it is there though its design has gone since."""
    found = Results(desk.folder.results, request.path_params["key"])
    data = found.get(PICTURE) if is_key(found.key) else None
    if data is None:
        raise RefusedError(404, message("this picture is not drawn yet"))
    return Response(data, media_type="image/png")


def piece(desk: Desk, request: Request, sent: Any) -> Response:
    """The piece in space."""
    status, data = piece_now(desk, _looked(desk, request))
    return Response(data, status, media_type="application/json")


def facts(desk: Desk, request: Request, sent: Any) -> Response:
    """The figures of a design, and what is wrong with it."""
    status, data = facts_now(desk, _looked(desk, request))
    return JSONResponse(data, status)
