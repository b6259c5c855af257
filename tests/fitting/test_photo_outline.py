"""Outlines from pictures: what is taken of them, checked against the shapes that were drawn."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from PIL import Image, ImageDraw
from shapely import Polygon, affinity, box
from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.fitting.outline import OutlineError, enclosed
from buildplan.fitting.photo_outline import (
    photo_outline,
    photo_outlines,
    silhouettes_in,
    taken_picture,
)
from buildplan.fitting.sources import piece_by_number, read_outlines
from buildplan.language.voice import Voice

WIDE, HIGH = 300, 200
KITE = [(150, 20), (230, 90), (150, 185), (60, 90)]
PAPER, INK = (248, 245, 238), (40, 52, 70)


def picture(
    file: Path, paper: tuple[int, ...], draw: Callable[[ImageDraw.ImageDraw], None]
) -> Path:
    made = Image.new("RGBA" if len(paper) == 4 else "RGB", (WIDE, HIGH), paper)
    draw(ImageDraw.Draw(made))
    made.save(file)
    return file


def overlap(file: Path, drawn: Polygon) -> float:
    """Area of the intersection over that of the union, of what was taken and what was drawn: rows
    of a picture run down, and what is taken has no place of its own."""
    found = enclosed(photo_outline(file).points).buffer(0)
    wanted = affinity.scale(drawn, 1, -1)
    found = affinity.translate(
        found,
        wanted.centroid.x - found.centroid.x,
        wanted.centroid.y - found.centroid.y,
    )
    return float(found.intersection(wanted).area / found.union(wanted).area)


@pytest.mark.parametrize("ending", ["png", "jpg"])
def test_a_dark_drawing_on_light_paper(tmp_path: Path, ending: str) -> None:
    file = picture(tmp_path / f"kite.{ending}", PAPER, lambda d: d.polygon(KITE, fill=INK))
    assert overlap(file, Polygon(KITE)) > 0.96


def test_a_light_one_on_dark_paper_a_noisy_photo_and_a_line_drawing(tmp_path: Path) -> None:
    light = picture(tmp_path / "light.png", INK, lambda d: d.polygon(KITE, fill=PAPER))
    assert overlap(light, Polygon(KITE)) > 0.96
    noisy = tmp_path / "noisy.jpg"
    grey = np.asarray(Image.open(light).convert("L"), dtype=float)
    shade = np.linspace(-15, 15, WIDE)[None]
    grain = np.random.default_rng(1).normal(0, 12, grey.shape)
    Image.fromarray(np.clip(grey + shade + grain, 0, 255).astype(np.uint8)).save(noisy, quality=60)
    assert overlap(noisy, Polygon(KITE)) > 0.94
    line = picture(
        tmp_path / "line.png", PAPER, lambda d: d.line([*KITE, KITE[0]], fill=INK, width=5)
    )
    assert overlap(line, Polygon(KITE)) > 0.9


def test_a_cut_out_is_told_by_its_alpha_whatever_its_colours(tmp_path: Path) -> None:
    def cut(d: ImageDraw.ImageDraw) -> None:
        d.polygon(KITE, fill=(255, 255, 255, 255))
        d.polygon([(140, 60), (160, 60), (150, 150)], fill=(0, 0, 0, 255))

    file = picture(tmp_path / "cut.png", (255, 255, 255, 0), cut)
    assert overlap(file, Polygon(KITE)) > 0.96


def test_a_hole_stays_a_hole(tmp_path: Path) -> None:
    def ring(d: ImageDraw.ImageDraw) -> None:
        d.rectangle((60, 20, 240, 180), fill=INK)
        d.rectangle((120, 70, 180, 130), fill=PAPER)

    found = photo_outline(picture(tmp_path / "ring.png", PAPER, ring))
    assert len(found.holes) == 1
    shares = enclosed(found.holes[0]).area / enclosed(found.points).area
    assert shares == pytest.approx(60 * 60 / (180 * 160), abs=0.02)


def two(d: ImageDraw.ImageDraw) -> None:
    d.rectangle((30, 40, 120, 160), fill=INK)
    d.rectangle((170, 60, 260, 170), fill=INK)


def test_several_pieces_are_taken_from_the_left_and_keep_their_sizes(tmp_path: Path) -> None:
    file = picture(tmp_path / "two.png", PAPER, two)
    left, right = photo_outlines(file)
    assert photo_outline(file).left_out == 1
    assert enclosed(left.points).bounds[0] < enclosed(right.points).bounds[0]
    # drawn 120 and 110 high, from row 40 to row 170: together as high as was asked for
    first, second = read_outlines(str(file), 1.3)
    assert (first.height_m, second.height_m) == pytest.approx((1.2, 1.1), abs=0.02)
    assert first.name != second.name
    assert piece_by_number(str(file), 2, 1.3).height_m == pytest.approx(1.3, abs=0.01)
    with pytest.raises(OutlineError) as told:
        piece_by_number(str(file), 3, 1.3)
    assert "shows 2 outlines" in Voice().tell(told.value.told)


def test_the_picture_of_several_numbers_them(tmp_path: Path) -> None:
    file = picture(tmp_path / "two.png", PAPER, two)
    found = silhouettes_in(file)
    (tmp_path / "taken.png").write_bytes(taken_picture(found))
    shown = np.asarray(Image.open(tmp_path / "taken.png").convert("L"), dtype=int)
    for piece in found.pieces:
        assert (shown[piece] > 240).any(), "a white number stands on each"
    assert taken_picture(found) == taken_picture(found)


@pytest.mark.parametrize(
    ("draw", "says"),
    [
        (lambda d: None, "no piece stands out from the ground"),
        (lambda d: d.point([(4, 4), (90, 90)], fill=INK), "no piece stands out"),
    ],
    ids=["empty", "specks"],
)
def test_that_there_is_no_piece_is_told(
    tmp_path: Path, draw: Callable[[ImageDraw.ImageDraw], None], says: str
) -> None:
    file = picture(tmp_path / "x.png", PAPER, draw)
    with pytest.raises(OutlineError) as told:
        photo_outline(file)
    assert says in Voice().tell(told.value.told)


def test_what_is_no_picture_is_told_in_one_line_and_status_2(tmp_path: Path) -> None:
    file = tmp_path / "no.png"
    file.write_bytes(b"not a picture")
    ended = CliRunner().invoke(app, ["fit", str(file)])
    assert ended.exit_code == 2
    assert "cannot be read as a picture" in " ".join(ended.output.replace("│", " ").split())


def test_the_picture_of_what_was_taken_colours_the_piece_alone(tmp_path: Path) -> None:
    file = picture(tmp_path / "kite.png", PAPER, lambda d: d.polygon(KITE, fill=INK))
    shown = tmp_path / "taken.png"
    shown.write_bytes(taken_picture(silhouettes_in(file)))
    taken = np.asarray(Image.open(shown).convert("RGB"), dtype=int)
    blue = taken[..., 2] - taken[..., 0] > 40
    assert blue.sum() / blue.size == pytest.approx(Polygon(KITE).area / (WIDE * HIGH), rel=0.03)
    inside = box(100, 70, 190, 110).bounds
    assert blue[int(inside[1]) : int(inside[3]), int(inside[0]) : int(inside[2])].all()
