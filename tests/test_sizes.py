"""Modules and functions stay short enough to be read at a sitting."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
MODULES = sorted([*(ROOT / "buildplan").rglob("*.py"), *(ROOT / "tests").rglob("*.py")])
MODULES = [path for path in MODULES if "node_modules" not in path.parts]
MODULE_LINES, FUNCTION_LINES = 300, 60
REASON = f"Longer than {MODULE_LINES} lines for "  # in the docstring of a module that is longer


def too_long(path: Path) -> list[str]:
    """What of a module is too long, without a reason beside it."""
    text = path.read_text("utf-8")
    tree = ast.parse(text)
    found = [
        f"{node.name}: {node.end_lineno - node.lineno + 1} lines"
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef)
        and node.end_lineno is not None
        and node.end_lineno - node.lineno >= FUNCTION_LINES
    ]
    lines = len(text.splitlines())
    if lines > MODULE_LINES and REASON not in (ast.get_docstring(tree) or ""):
        found.append(f"{lines} lines")
    return found


@pytest.mark.parametrize("package", ["buildplan", "tests"])
def test_no_module_or_function_is_too_long(package: str) -> None:
    found = {
        str(path.relative_to(ROOT)): told
        for path in MODULES
        if path.is_relative_to(ROOT / package) and (told := too_long(path))
    }
    assert not found


def test_a_class_name_means_one_thing() -> None:
    """Two classes of one name in different rooms would be taken for one another."""
    places: dict[str, list[str]] = {}
    for path in (ROOT / "buildplan").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ClassDef):
                places.setdefault(node.name, []).append(str(path.relative_to(ROOT)))
    assert not {name: found for name, found in places.items() if len(found) > 1}
