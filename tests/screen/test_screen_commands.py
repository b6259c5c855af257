"""The two commands that put a piece on a screen, called as a user calls them."""

from __future__ import annotations

import base64
import json
import re
import zlib
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from conftest import Call

import buildplan.screen
from buildplan.language.voice import LOCALES

SCHEMA = Path(buildplan.screen.__file__).parent / "piece.schema.json"
SCRIPT = '"><script>window.ran=1</script>'
POST = """\
buildplan: 1
name: {name}
units: in
balloons:
  long: {{kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: deep blue}}
  lock: {{kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}}
build:
  tube:
    {{closed: false, chains: {chains}, long: long, brace: long, lock: lock,
     course: [{{repeat: {cells}, cells: [straight]}}]}}
"""


def design(name: str = "Short Post", chains: int = 4) -> str:
    """Write the design of a post; it returns what its file is called. Of two chains it is a
    long strip, which does not hold itself up."""
    told = json.dumps(name, ensure_ascii=False)
    text = POST.format(name=told, chains=chains, cells=9 if chains == 2 else 1)
    Path("post.yaml").write_text(text, encoding="utf-8")
    return "post.yaml"


def problems(messages: str) -> list[str]:
    """The lines of a listing that tell a problem, without what a command adds."""
    joined = re.sub(r"\s+", " ", messages)
    return [part for part in joined.split("post.yaml: ") if part and "--draft" not in part]


def piece_in(page: str) -> dict[str, Any]:
    """The piece that lies packed in a page."""
    packed = re.search(r'<script type="text/plain" id="piece">([^<]*)</script>', page)
    assert packed is not None
    piece: dict[str, Any] = json.loads(zlib.decompress(base64.b64decode(packed[1])))
    return piece


def test_problems_are_refused_as_the_booklet_refuses_them(call: Call) -> None:
    file = design(chains=2)
    told = []
    for command in ("booklet", "companion", "export"):
        status, out, messages = call(command, file)
        assert status == 1
        assert out == ""
        assert "--draft" in messages
        told.append(problems(messages))
    assert told[0] == told[1] == told[2] != []
    assert [path.name for path in Path().iterdir()] == ["post.yaml"]


def test_a_draft_is_written_with_the_same_mark_as_the_booklets(call: Call) -> None:
    file = design(chains=2)
    status, out, messages = call("companion", file, "--draft")
    assert status == 0
    assert messages
    page = Path(out.strip()).read_text("utf-8")
    assert piece_in(page)["draft"] is True
    assert '"draft":"DRAFT: this piece has problems"' in page
    status, out, _ = call("export", file, "--draft")
    assert status == 0
    assert json.loads(Path(out.strip()).read_text("utf-8"))["draft"] is True


def test_the_page_is_written_whole_and_the_same_again(call: Call) -> None:
    assert call("companion", design()) == (0, "output/post-crew.html\n", "")
    first = Path("output/post-crew.html").read_bytes()
    assert call("companion", "post.yaml", "--out", "again.html")[0] == 0
    assert Path("again.html").read_bytes() == first
    assert call("companion", "post.yaml", "--language", "es", "--out", "es.html")[0] == 0
    assert b'<html lang="es">' in Path("es.html").read_bytes()


def test_data_and_model_are_written_by_their_endings(call: Call) -> None:
    assert call("export", design(), "--out", "post.json") == (0, "post.json\n", "")
    data = json.loads(Path("post.json").read_text("utf-8"))
    jsonschema.validate(data, json.loads(SCHEMA.read_text("utf-8")))
    assert call("export", "post.yaml", "--out", "post.glb") == (0, "post.glb\n", "")
    assert Path("post.glb").read_bytes()[:4] == b"glTF"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("export", "post.yaml", "--out", "post.obj"), ".json or .glb"),
        (("companion", "post.yaml", "--out", "post.pdf"), ".html"),
        (("companion", "post.yaml", "--for", "Ana"), "--edition sale"),
        (("companion", "none.yaml"), "no such file"),
    ],
)
def test_wrong_calls_are_told_and_write_nothing(
    call: Call, arguments: tuple[str, ...], said: str
) -> None:
    design()
    status, out, messages = call(*arguments)
    assert status == 2
    assert out == ""
    assert said in re.sub(r"[\s│]+", " ", messages)
    assert [path.name for path in Path().iterdir()] == ["post.yaml"]


@pytest.mark.parametrize(
    "name", ["עמוד קצר", "عمود قصير", "A\u0301 post \U0001f388", "x" * 80, SCRIPT]
)
def test_names_of_any_letters_are_kept_and_are_never_markup(call: Call, name: str) -> None:
    assert call("companion", design(name), "--out", "post.html")[0] == 0
    page = Path("post.html").read_text("utf-8")
    assert piece_in(page)["name"] == dict.fromkeys(LOCALES, name)
    assert "window.ran=1</script>" not in page


def test_a_name_of_ten_thousand_letters_is_refused_with_its_line(call: Call) -> None:
    status, out, messages = call("companion", design("x" * 10_000))
    assert status == 1
    assert out == ""
    assert "post.yaml:2: name" in messages
    status, out, messages = call("companion", design(), "--edition", "sale", "--for", "x" * 10_000)
    assert status == 2
    assert "longer than" in re.sub(r"[\s│]+", " ", messages)


def test_a_sold_page_names_its_buyer_and_verifies(call: Call) -> None:
    buyer = 'Ana "Ex" </script><b>'
    Path("brand.yaml").write_text(f"name: {json.dumps(SCRIPT)}\n", encoding="utf-8")
    sale = ("--edition", "sale", "--brand", "brand.yaml", "--for", buyer)
    status, out, _ = call("companion", design(), *sale)
    assert status == 0
    page = Path(out.strip()).read_text("utf-8")
    assert "</script><b>" not in page
    assert "window.ran=1</script>" not in page
    status, told, _ = call("verify", out.strip(), "--json")
    assert status == 0
    assert json.loads(told)["copy"]["buyer"] == buyer
    Path("changed.html").write_text(page.replace("Short Post", "Long Post"), encoding="utf-8")
    assert call("verify", "changed.html")[0] == 1
