"""What is wrong with a design, as the page lists it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from buildplan.desk.mend_words import mend_words
from buildplan.desk.whole_file import WholeFile
from buildplan.fitting.mending import ON_THE_PIECE
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.source.file_text import text_of
from buildplan.source.partial_validation import mapping_in
from buildplan.source.problems import Problem, UnreadableDesignError, problem_as_data
from buildplan.source.suggestions import by_hand
from buildplan.source.yaml_nodes import Keys, Node, Scalar, plain
from buildplan.source.yaml_source import load


def file_as_data(text: str, facts: Mapping[str, Any] | None, voice: Voice) -> dict[str, object]:
    """The title of a design, and what is wrong with its file, as far as that is known: `facts` are
    its figures, if they are worked out."""
    try:
        root = load(text, "").root
    except UnreadableDesignError as error:
        return {"title": "", "problems": problems_as_data([error.problem], WholeFile({}, voice))}
    known = [] if facts is None or facts["check"] is not None else facts["problems"]
    return {"title": _title(root), "problems": known}


def readable_data(path: Path) -> Mapping[str, Any]:
    """The content of a file that may be wrong, as plain data; nothing where it cannot be read."""
    try:
        return mapping_in(plain(load(text_of(path), "").root))
    except UnreadableDesignError:
        return {}


def title_of(data: bytes) -> str:
    """The name that a design has in its file; nothing where that cannot be read."""
    try:
        return _title(load(data.decode("utf-8-sig"), "").root)
    except (UnreadableDesignError, UnicodeDecodeError):
        return ""


def _title(root: Node) -> str:
    name = root.nodes.get("name") if isinstance(root, Keys) else None
    return str(name.value) if isinstance(name, Scalar) else ""


# one step of a place in words, as `source.mistake.path_in_words` writes it
_STEP = re.compile(r'\[(?P<item>[0-9]+)\]|\["(?P<quoted>(?:[^"\\]|\\.)*)"\]|(?P<key>[^.\[\]]+)')


def place_in(words: str) -> list[str | int]:
    """A place in words, `build.tube.course[3]`, step by step: `["build", "tube", "course", 3]`."""
    return [
        int(step["item"])
        if step["item"]
        else step["key"] or re.sub(r"\\(.)", r"\1", step["quoted"])
        for step in _STEP.finditer(words)
    ]


def untried(problems: Sequence[Problem]) -> list[Problem]:
    """Problems without what is to be tried on the piece first: nothing is advised untried."""
    meanwhile = by_hand(message("Trying what would mend it ..."))
    return [
        replace(one, suggestion=meanwhile) if one.kind in ON_THE_PIECE else one for one in problems
    ]


def problems_as_data(problems: Sequence[Problem], whole: WholeFile) -> list[dict[str, object]]:
    """Problems of a file as the page lists them. A way to be applied is told by its number."""
    voice = whole.voice
    found: list[dict[str, object]] = []
    for number, problem in enumerate(problems):
        data = problem_as_data(problem, voice)
        ways = problem.suggestion.ways
        found.append(
            {
                "number": number,
                "kind": data["kind"],
                "text": data["text"],
                "message": data["message"],
                "path": place_in(problem.path),
                "line": data["line"],
                "joints": data["joints"],
                "suggestion": {
                    "words": data["suggestion"],
                    "can_apply": bool(ways),
                    "ways": [
                        {"way": way, "words": mend_words(one, whole)}
                        for way, one in enumerate(ways)
                    ],
                },
                "changes": data["changes"],
            }
        )
    return found
