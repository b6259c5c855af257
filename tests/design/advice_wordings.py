"""The wordings of all advice that names a change of a file, found in the code itself."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import buildplan

ROOT = Path(buildplan.__file__).parent
# what makes a way of mending, its words first; what makes words
MAKERS, SAYS = ("Remedy", "change"), ("message", "message_count")


def wordings_of_changes() -> set[str]:
    """The message that each way of mending in the code is said with, its first form where it has
    two; words that are handed on (a course's, another way's) are found where they are made."""
    texts = (file.read_text("utf-8") for file in sorted(ROOT.rglob("*.py")))
    makers = (text for text in texts if any(f"{one}(" in text for one in MAKERS))
    return {wording for text in makers for wording in _in(ast.parse(text))}


def _in(module: ast.Module) -> Iterator[str]:
    functions = {one.name: one for one in ast.walk(module) if isinstance(one, ast.FunctionDef)}
    for function in functions.values():
        for call in ast.walk(function):
            if isinstance(call, ast.Call) and _name(call) in MAKERS and call.args:
                yield from _said(call.args[0], function, functions)


def _name(call: ast.Call) -> str:
    return call.func.id if isinstance(call.func, ast.Name) else ""


def _said(
    words: ast.expr, function: ast.FunctionDef, functions: dict[str, ast.FunctionDef]
) -> Iterator[str]:
    """The messages that an expression within a function may be."""
    match words:
        case ast.Call(args=[ast.Constant(value=str() as text), *_]) if _name(words) in SAYS:
            yield text
        case ast.Call() if _name(words) in functions:
            made = functions[_name(words)]
            for one in ast.walk(made):
                if isinstance(one, ast.Return) and one.value is not None:
                    yield from _said(one.value, made, functions)
        case ast.IfExp(body=one, orelse=other):
            yield from _said(one, function, functions)
            yield from _said(other, function, functions)
        case ast.Name(id=name):
            for one in ast.walk(function):
                if isinstance(one, ast.Assign) and name in _names(one):
                    yield from _said(one.value, function, functions)


def _names(assigned: ast.Assign) -> list[str]:
    return [one.id for one in assigned.targets if isinstance(one, ast.Name)]
