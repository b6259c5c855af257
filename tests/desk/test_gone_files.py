"""A file that goes while the desk looks is not there, and no fault: between listing and reading it
another program, or another desk of the folder, may have taken it away."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from desks import Page, open_page

FRAME = Path(__file__).parents[2] / "designs" / "picture_frame.yaml"


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Page]:
    folder = tmp_path_factory.mktemp("gone")
    shutil.copy(FRAME, folder)
    (folder / "output").mkdir()
    with open_page(folder) as found:
        yield found


def test_what_goes_while_files_are_listed_is_left_out(
    page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Links to nothing are files that are listed and cannot be read."""
    output = page.root / "output"
    (output / "picture_frame-crew-a4.pdf").write_bytes(b"%PDF-")
    (output / "picture_frame-sale-a4.pdf").symlink_to(output / "gone.pdf")
    (page.root / "gone_too.yaml").symlink_to(page.root / "gone.txt")
    (page.root / "hands.yaml").symlink_to(page.root / "gone.yaml")
    monkeypatch.setattr(Path, "is_file", lambda _: True)  # as each was when it was looked at
    found = page.data("/api/design/picture_frame/printed")
    assert [one["name"] for one in found["files"]] == ["picture_frame-crew-a4.pdf"]
    assert page.get("/api/home").status_code == 200
    answer = page.get("/output/picture_frame-sale-a4.pdf")
    assert answer.status_code == 404
    assert "fault" not in answer.text
