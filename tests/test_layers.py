"""The one-way rule: a package imports only itself and the packages before it."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

ORDER = [
    "language",
    "framework",
    "source",
    "patterns",
    "design",
    "shape",
    "sequence",
    "instructions",
    "evaluation",
    "hands",
    "drawing",
    "fitting",
    "document",
    "business",
    "booklet",
    "screen",
    "desk",
    "commands",
    "cli",
]
PACKAGE = Path(__file__).parent.parent / "buildplan"
MODULES = sorted(PACKAGE.rglob("*.py"))


def imported_parts(module: Path) -> set[str]:
    """First names below `buildplan` that a module imports, wherever in it the import stands."""
    parts = set()
    for node in ast.walk(ast.parse(module.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{module}: imports are absolute here"
            names = [node.module or ""]
            if node.module == "buildplan":
                names = [f"buildplan.{alias.name}" for alias in node.names]
        elif isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        else:
            continue
        parts |= {n.split(".")[1] for n in names if n.startswith("buildplan.")}
    return parts & set(ORDER)


@pytest.mark.parametrize("module", MODULES, ids=lambda m: str(m.relative_to(PACKAGE)))
def test_module_imports_only_what_comes_before(module: Path) -> None:
    own = module.relative_to(PACKAGE).parts[0].removesuffix(".py")
    if own == "__init__":
        assert not imported_parts(module)
        return
    if own == "__main__":
        assert imported_parts(module) <= {"cli"}
        return
    allowed = ORDER[: ORDER.index(own) + 1]
    assert imported_parts(module) <= set(allowed)


def test_every_package_is_in_the_order() -> None:
    found = {p.name for p in PACKAGE.iterdir() if p.is_dir() and p.name != "__pycache__"}
    assert found == set(ORDER) - {"cli"}
