"""Signs that no font has, as the desk tells them: where they were written, by their names."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from desks import Page, open_page

from buildplan.design.starting import design_text
from buildplan.design.wishes import Wish
from buildplan.language.voice import Voice

# U+0378 is a sign that Unicode has not assigned
EVENT = """\
event: 1
name: Our \u0378 Day
designs:
  - {design: small.yaml}
crew: 2
opening: "10:00"
"""


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    root = tmp_path_factory.mktemp("signs") / "desk"
    root.mkdir()
    text = design_text(Wish("Small Frame", "frame", size=50), Voice())
    (root / "small.yaml").write_text(text, "utf-8")
    (root / "odd.yaml").write_text(text.replace("Small Frame", "Odd \u0378"), "utf-8")
    (root / "brand.yaml").write_text("name: Lamps\ncontact: A\u0378\n", "utf-8")
    (root / "day.event.yaml").write_text(EVENT, "utf-8")
    with open_page(root) as page:
        yield page


@pytest.mark.parametrize(
    ("design", "asked", "told"),
    [
        ("small", {"edition": "sale", "buyers": "Ana\nB\u0378"}, "Buyers: "),
        ("small", {"edition": "crew", "doors": "\u0378=1x2m"}, "Doors on the way in: "),
        ("small", {"edition": "sale", "brand": "brand.yaml"}, "brand.yaml:2: contact: "),
        ("small", {"what": "event day"}, "day.event.yaml:2: name: "),
        ("odd", {"edition": "crew"}, "line "),
    ],
)
def test_it_is_told_where_it_was_written(
    page: Page, design: str, asked: dict[str, str], told: str
) -> None:
    answer = page.send(f"/api/design/{design}/print", {"what": "booklet", **asked})
    assert answer.status_code == 200, answer.text
    job = page.data(f"/api/jobs/{answer.json()['job']}")
    assert job["state"] == "failed"
    assert job["message"].startswith(told)
    assert "no font has U+0378 of " in job["message"]
