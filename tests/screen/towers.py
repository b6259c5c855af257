"""A small open tube to be changed on the desk's page, as a file of its folder."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml
from playwright.sync_api import Locator, Page

LINK = {"kind": "link", "nominal": 12, "inflate_to": 8}
TOWER: dict[str, Any] = {
    "buildplan": 1,
    "name": "Reading Tower",
    "units": "in",
    "balloons": {
        "blue": {**LINK, "colour": "deep blue", "label": "deep blue"},
        "ivory": {**LINK, "colour": "ivory", "label": "ivory"},
        "pink": {**LINK, "colour": "pink", "label": "pink"},
        "lock": {
            "kind": "round",
            "nominal": 5,
            "inflate_to": 3.5,
            "colour": "gold",
            "label": "gold",
        },
    },
    "stand_on": "start",
    "build": {
        "tube": {
            "closed": False,
            "chains": 4,
            "long": "blue",
            "brace": "ivory",
            "single": "ivory",
            "lock": "lock",
            "course": ["straight", "straight", "fan", "straight"],
        }
    },
}


def write(folder: Path, data: Any, name: str = "tower") -> Path:
    file = folder / f"{name}.yaml"
    file.write_text(yaml.safe_dump(data, sort_keys=False), "utf-8")
    return file


def told(page: Page) -> Locator:
    """What the page says for those who do not see it."""
    return page.locator("main > [role=status]")
