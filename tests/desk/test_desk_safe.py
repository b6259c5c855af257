"""The desk answers its own page and nobody else, of its own folder and nothing else."""

from __future__ import annotations

import errno
import os
import re
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest
from desks import DESIGNS, TOKEN, AtOnce, Page, open_page, with_designs
from starlette.routing import Route

from buildplan.desk.app import desk_app
from buildplan.desk.folder import Folder
from buildplan.desk.safety import MOST_SENT
from buildplan.source import whole_files

STAR = DESIGNS / "reading_star.yaml"
AT_STAR = "/api/design/reading_star"


@pytest.fixture
def page(tmp_path: Path) -> Iterator[Page]:
    with open_page(with_designs(tmp_path / "desk", [STAR]), AtOnce(waits=True)) as page:
        yield page


def asked(page: Page, method: str, path: str, **headers: str) -> httpx.Response:
    """A call by somebody who knows the token, with other headers than the page's."""
    cookie = f"{page.entrance.cookie}={TOKEN}"
    with httpx.Client(base_url=f"http://127.0.0.1:{page.entrance.port}") as http:
        return http.request(method, path, headers={"cookie": cookie, **headers})


def every_call(page: Page) -> Iterator[tuple[str, str]]:
    """Every way of asking that the desk has."""
    fill = {"name": "reading_star", "file": "desk.js", "step": 1, "key": "star", "job": "x"}
    for route in desk_app(page.desk, page.entrance).routes:
        assert isinstance(route, Route)
        path = re.sub(r"\{(\w+):\w+\}", r"{\1}", route.path)
        for method in sorted(route.methods or ()):
            yield method, path.format(**fill)


def test_nothing_is_answered_without_the_token(page: Page) -> None:
    """RFC 6265: a cookie that scripts do not read and other sites do not send."""
    calls = list(every_call(page))
    assert len(calls) > 30
    own = f"http://127.0.0.1:{page.entrance.port}"
    with httpx.Client(base_url=own, headers={"origin": own}) as stranger:
        for method, path in calls:
            assert stranger.request(method, path).status_code == 403, (method, path)
        for token in ("", "wrong", f"{TOKEN}x"):
            answer = stranger.get(f"/?token={token}")
            assert answer.status_code == 403
            assert "set-cookie" not in answer.headers
        entered = stranger.get(f"/?token={TOKEN}")
    assert (entered.status_code, entered.headers["location"]) == (303, "/")
    assert "SameSite=Strict" in entered.headers["set-cookie"]
    assert "HttpOnly" in entered.headers["set-cookie"]


@pytest.mark.parametrize(
    "host", ["desk.example", "127.0.0.1", "127.0.0.1.desk.example:{port}", "[::1]:{port}", ""]
)
def test_a_name_that_is_led_to_this_machine_is_refused(page: Page, host: str) -> None:
    """DNS rebinding: the browser asks by the name of the page that it believes to be on."""
    answer = asked(page, "GET", "/api/home", host=host.format(port=page.entrance.port))
    assert answer.status_code in (400, 403)


@pytest.mark.parametrize("origin", ["https://desk.example", "null", "http://127.0.0.1:1"])
def test_a_page_of_another_origin_is_refused(page: Page, origin: str) -> None:
    """The Fetch standard: a browser says of which origin the page is that asks."""
    before = page.text("reading_star")
    for method, path in every_call(page):
        assert asked(page, method, path, origin=origin).status_code == 403
    assert page.text("reading_star") == before


def test_what_writes_must_say_where_it_is_from(page: Page) -> None:
    for method, path in every_call(page):
        if method not in ("GET", "HEAD"):
            assert asked(page, method, path).status_code == 403


def test_what_another_site_has_the_browser_load_is_refused(page: Page) -> None:
    """Fetch Metadata (W3C): `Sec-Fetch-Site` cannot be set by a page."""
    for site in ("cross-site", "same-site"):
        assert asked(page, "GET", AT_STAR, **{"sec-fetch-site": site}).status_code == 403


def test_no_other_origin_is_let_in(page: Page) -> None:
    """No header of CORS (the Fetch standard, 3.2), whatever is asked."""
    preflight = {
        "origin": "https://desk.example",
        "access-control-request-method": "PUT",
    }
    answers = [asked(page, "OPTIONS", AT_STAR, **preflight), page.get("/"), page.get(AT_STAR)]
    for answer in answers:
        assert not [one for one in answer.headers if one.startswith("access-control")]
    assert answers[0].status_code == 403


def test_the_page_may_load_and_ask_nothing_from_elsewhere(page: Page) -> None:
    """Content Security Policy Level 3."""
    for path in ("/", "/page/desk.js", "/api/home"):
        headers = page.get(path).headers
        policy = dict(
            part.strip().split(" ", 1) for part in headers["content-security-policy"].split(";")
        )
        assert policy["default-src"] == "'none'"
        assert policy["script-src"] == policy["connect-src"] == "'self'"
        assert "unsafe" not in headers["content-security-policy"]
        assert "http" not in headers["content-security-policy"]
        assert headers["x-content-type-options"] == "nosniff"
        assert headers["referrer-policy"] == "no-referrer"


@pytest.mark.parametrize(
    "name",
    ["..%2fsecret", "%2e%2e%2fsecret", "a..b", "a%2f..%2f..%2fsecret", "%2fetc%2fpasswd", ".hid"],
)
def test_no_name_leads_out_of_the_folder(page: Page, name: str) -> None:
    secret = page.root.parent / "secret.yaml"
    secret.write_text("buildplan: 1\nname: not yours\n", "utf-8")
    for path in (f"/api/design/{name}", f"/output/{name}.yaml", f"/page/{name}"):
        answer = page.get(path)
        assert answer.status_code in (400, 403, 404)
        assert "not yours" not in answer.text
    assert page.send(f"/api/design/{name}/away", {}).status_code in (400, 403, 404)
    assert secret.exists()


def test_no_link_leads_out_of_the_folder(page: Page) -> None:
    secret = page.root.parent / "secret.yaml"
    secret.write_text("buildplan: 1\nname: not yours\n", "utf-8")
    (page.root / "mine.yaml").symlink_to(secret)
    (page.root / "output").mkdir()
    (page.root / "output" / "mine.pdf").symlink_to(secret)
    assert page.get("/api/design/mine").status_code == 403
    assert page.get("/output/mine.pdf").status_code == 404
    assert [one["name"] for one in page.data("/api/home")["designs"]] == ["reading_star"]


def test_more_is_not_taken_than_a_design_needs(page: Page) -> None:
    """Announced or not: a body in parts (RFC 9112, 7.1) says nothing of its length."""
    much = b"x" * (MOST_SENT + 1)
    assert page.http.put(AT_STAR, content=much).status_code == 413
    parts = (much[at : at + 65536] for at in range(0, len(much), 65536))
    assert page.http.put(AT_STAR, content=parts).status_code == 413
    base = page.data(AT_STAR)["version"]
    answer = page.send(AT_STAR, {"base": base, "text": "#" * (1024**2 + 1)}, "PUT")
    assert answer.status_code == 413
    assert page.text("reading_star") == STAR.read_text("utf-8")


def test_calls_that_are_not_understood_say_where(page: Page) -> None:
    for body in (b"", b"{", b"[]", b'{"base": 1}', b'{"base": "x", "edits": []}'):
        answer = page.http.post(f"{AT_STAR}/edit", content=body)
        assert answer.status_code == 400
        assert "does not understand" in answer.json()["message"]
    assert page.get("/api/nothing").status_code == 404
    assert page.get("/api/nothing").json()["message"]


def test_a_file_broken_by_hand_is_a_card_like_the_others(page: Page) -> None:
    (page.root / "broken.yaml").write_bytes(b"buildplan: 1\nname: \xff\xfe [half\n")
    with open_page(page.root) as desk:
        desk.get("/api/home")
        cards = {one["name"]: one for one in desk.data("/api/home")["designs"]}
        assert cards["reading_star"]["state"] == "ready"
        assert (cards["broken"]["state"], cards["broken"]["problems"]) == ("broken", 1)
        assert cards["broken"]["message"]
        said = desk.data("/api/design/broken")
        assert said["unreadable"] or said["problems"]
        answer = desk.edit("broken", {"op": "put", "path": ["name"], "value": "x"})
        assert answer.status_code == 422
    assert (page.root / "broken.yaml").read_bytes() == b"buildplan: 1\nname: \xff\xfe [half\n"


def test_a_full_disk_is_said_and_nothing_is_lost(
    page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As the system says it: ENOSPC (POSIX.1-2017, errno.h)."""
    before, version = page.text("reading_star"), page.data(AT_STAR)["version"]

    def full(*given: object) -> tuple[int, Path]:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(whole_files, "_begun", full)
    edit = {"op": "put", "path": ["name"], "value": "New"}
    for answer in (
        page.edit("reading_star", edit),
        page.send(f"{AT_STAR}/copy", {"name": "x"}),
        page.send("/api/new", {"name": "x", "from": {"kind": "pattern", "key": "ring"}}),
    ):
        assert answer.status_code == 507
        assert "disk is full" in answer.json()["message"]
    assert page.text("reading_star") == before
    monkeypatch.undo()
    assert page.data(AT_STAR)["version"] == version
    assert page.edit("reading_star", edit).status_code == 200


def test_a_folder_that_may_only_be_read_shows_all_and_takes_nothing(
    page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What is worked out is kept elsewhere then."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(page.root.parent / "cache"))
    monkeypatch.setattr("buildplan.desk.folder.may_write", lambda folder: folder != page.root)
    put = whole_files._put

    def only_elsewhere(path: Path, data: bytes) -> None:
        if path.is_relative_to(page.root):
            raise OSError(errno.EROFS, os.strerror(errno.EROFS))
        put(path, data)

    monkeypatch.setattr(whole_files, "_put", only_elsewhere)
    with open_page(page.root) as desk:
        assert desk.data("/api/home")["read_only"] is True
        assert desk.data(AT_STAR)["read_only"] is True
        assert desk.data(f"{AT_STAR}/facts")["settled"]
        answer = desk.edit("reading_star", {"op": "put", "path": ["name"], "value": "New"})
        assert answer.status_code == 403
        assert "may not be written" in answer.json()["message"]
        asked = {"what": "shopping"}
        assert desk.send(f"{AT_STAR}/print", asked).status_code == 403
    assert sorted(one.name for one in page.root.iterdir()) == ["reading_star.yaml"]
    assert Folder(page.root).read_only
