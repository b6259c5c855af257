"""Who may ask the desk, and what its page may do.

The desk is for the person at this machine. It listens on the loopback address alone; whoever has
the token that its address carries gets a cookie (RFC 6265, SameSite=Strict), and nothing is
answered without it. The name it is asked by must be its own, so that a name of the web that is led
to this machine (DNS rebinding) is refused; a page of another origin is refused too. It allows no
other origin (no header of CORS), and its page may load and ask for nothing from elsewhere
(Content Security Policy Level 3).
"""

from __future__ import annotations

import json
import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from http.cookies import CookieError, SimpleCookie
from urllib.parse import parse_qs

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from buildplan.language.messages import Message as Told
from buildplan.language.messages import message
from buildplan.language.voice import Voice

COOKIE = "buildplan-desk"
MOST_SENT = 2 * 1024 * 1024  # bytes of a call, but for pictures
MOST_PICTURE = 16 * 1024 * 1024
PICTURES = "/api/new/picture"
POLICY = "; ".join(
    [
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "connect-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
    ]
)
HEADERS: Mapping[str, str] = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
}
# what is printed opens by itself: a companion page has a policy of its own in it, and no origin;
# a PDF in a sandbox is shown by no browser
PRINTED = "frame-ancestors 'none'"
PRINTED_PAGE = f"sandbox allow-scripts allow-downloads allow-modals; {PRINTED}"


@dataclass(frozen=True)
class Entrance:
    """Where the desk is asked, and the token that whoever asks must have."""

    port: int
    token: str

    @property
    def hosts(self) -> frozenset[str]:
        """The names it is asked by."""
        return frozenset(f"{name}:{self.port}" for name in ("127.0.0.1", "localhost"))

    @property
    def cookie(self) -> str:
        """The name of its cookie: cookies know no ports, and there may be several desks."""
        return f"{COOKIE}-{self.port}"

    @property
    def address(self) -> str:
        """What is opened first."""
        return f"http://127.0.0.1:{self.port}/?token={self.token}"


def new_token() -> str:
    """A token that nobody guesses: 256 bits."""
    return secrets.token_urlsafe(32)


class Guard:
    """Lets through to the application only what comes from the page of this desk."""

    def __init__(self, app: ASGIApp, entrance: Entrance, voice: Voice) -> None:
        self.app = app
        self.entrance = entrance
        self.voice = voice

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer, or pass on (ASGI 3.0)."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        refused = self._refused(scope, headers)
        if refused is not None:
            await _answer(send, refused[0], self.voice.tell(refused[1]))
            return
        if self._has_token(scope):
            await _enter(send, self.entrance)
            return
        if not self._has_cookie(headers):
            told = message("open the desk by the address that buildplan desk printed")
            await _answer(send, 403, self.voice.tell(told))
            return
        limit = MOST_PICTURE if scope["path"] == PICTURES else MOST_SENT
        await self.app(scope, _limited(receive, limit), _with_headers(send, scope["path"]))

    def _refused(self, scope: Scope, headers: Headers) -> tuple[int, Told] | None:
        """Why a call is refused before anything of it is looked at; None where it is not."""
        if headers.get("host", "") not in self.entrance.hosts:
            return 403, message("the desk answers on this machine alone, by its own address")
        origin = headers.get("origin")
        own = {f"http://{host}" for host in self.entrance.hosts}
        writes = scope["method"] not in ("GET", "HEAD")
        if (origin is not None and origin not in own) or (writes and origin is None):
            return 403, message("the desk answers its own page alone")
        near = headers.get("sec-fetch-site", "same-origin") in ("same-origin", "none")
        # to be opened from elsewhere it must at least be opened as a page, with its token
        opened = self._has_token(scope) and headers.get("sec-fetch-mode") == "navigate"
        if not near and not opened:
            return 403, message("the desk answers its own page alone")
        limit = MOST_PICTURE if scope["path"] == PICTURES else MOST_SENT
        length = headers.get("content-length", "0")
        if not length.isdecimal() or int(length) > limit:
            return 413, too_large(limit)
        return None

    def _has_token(self, scope: Scope) -> bool:
        given = parse_qs(scope["query_string"].decode("latin-1")).get("token", [""])[0]
        opened = scope["path"] == "/" and scope["method"] == "GET"
        return opened and secrets.compare_digest(given.encode(), self.entrance.token.encode())

    def _has_cookie(self, headers: Headers) -> bool:
        cookies = SimpleCookie()
        try:
            cookies.load(headers.get("cookie", ""))
        except CookieError:
            return False
        given = cookies.get(self.entrance.cookie)
        return given is not None and secrets.compare_digest(
            given.value.encode(), self.entrance.token.encode()
        )


def too_large(limit: int) -> Told:
    """More was sent than is taken."""
    return message("this is too large: {size} MB at most", size=limit // 1024**2)


class TooLargeError(Exception):
    """More was sent than was announced, or than is taken."""

    def __init__(self, limit: int) -> None:
        super().__init__(limit)
        self.limit = limit


def _limited(receive: Receive, limit: int) -> Receive:
    """What comes in, up to a limit: not every call says beforehand how large it is."""
    taken = 0

    async def counted() -> Message:
        nonlocal taken
        part = await receive()
        taken += len(part.get("body", b""))
        if taken > limit:
            raise TooLargeError(limit)
        return part

    return counted


def _with_headers(send: Send, path: str) -> Send:
    """What goes out, with the headers that keep the page to itself."""

    async def sent(part: Message) -> None:
        if part["type"] == "http.response.start":
            headers = MutableHeaders(scope=part)
            for name, value in HEADERS.items():
                headers[name] = value
            if path.startswith("/output/"):
                runs = path.endswith((".html", ".svg"))
                headers["content-security-policy"] = PRINTED_PAGE if runs else PRINTED
            headers.setdefault("cache-control", "no-store")
        await send(part)

    return sent


async def _enter(send: Send, entrance: Entrance) -> None:
    """The token for a cookie, and out of the address."""
    cookie = f"{entrance.cookie}={entrance.token}; Path=/; HttpOnly; SameSite=Strict"
    headers = [("location", "/"), ("set-cookie", cookie), *HEADERS.items()]
    await _start(send, 303, headers)
    await send({"type": "http.response.body", "body": b""})


async def _answer(send: Send, status: int, words: str) -> None:
    body = json.dumps({"message": words}, ensure_ascii=False).encode()
    headers = [("content-type", "application/json"), *HEADERS.items()]
    await _start(send, status, headers)
    await send({"type": "http.response.body", "body": body})


async def _start(send: Send, status: int, headers: list[tuple[str, str]]) -> None:
    raw = [(name.encode(), value.encode("latin-1")) for name, value in headers]
    await send({"type": "http.response.start", "status": status, "headers": raw})
