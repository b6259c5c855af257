"""Charts of what a piece does when something changes: its height with the gauge, the ballast that
a gust asks for. Each with the range of its estimate.
"""

from __future__ import annotations

import io
from collections.abc import Sequence

import matplotlib as mpl
import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.transforms import Affine2D

from buildplan.design.building import METRES_PER_UNIT
from buildplan.drawing.lettering import line_outline
from buildplan.evaluation.evaluating import Evaluation
from buildplan.language.voice import Voice
from buildplan.shape.calibration import at_gauge_step
from buildplan.shape.model import FloatArray

FORMS = {".svg": "svg", ".pdf": "pdf", ".png": "png"}
SIZE_IN = (9.0, 4.0)
TITLE_PT, TITLE_BELOW_IN, TITLE_EDGE_IN = 12.0, 0.16, 0.1
GAUGE_STEPS = np.linspace(-2.0, 2.0, 33)  # finest steps of a gauge, either way
STEP_M = {"in": 0.00635, "cm": 0.005}  # a quarter inch or half a centimetre
# a gentle breeze ends here (WMO Beaufort scale, force 3): light pieces are taken down well before
MOST_GUST_M_PER_S = 5.4
PER_HOUR = {"in": 3600 / 1609.344, "cm": 3.6}  # miles (international, 1959) or kilometres
LINE, BAND = "#1A1A1A", "#C9CDD2"


def heights_m(piece: Evaluation) -> tuple[FloatArray, FloatArray, FloatArray]:
    """The piece's height when every link is sized by `GAUGE_STEPS` larger: likely, low and high."""
    step, tall = STEP_M[piece.units], piece.standing_height_m
    likely = np.array(
        [at_gauge_step(piece.framework, tall, n * step).height_m for n in GAUGE_STEPS]
    )
    within = max(piece.framework.balloons[one.balloon].tie_within for one in piece.framework.links)
    return likely, likely * (1 - within), likely * (1 + within)


def ballast_kg(mass_kg: float, tips_at_m_per_s: float, gusts_m_per_s: FloatArray) -> FloatArray:
    """The ballast below its centre of mass that holds a piece in gusts, given its mass and the gust
    that tips it without any: drag grows with the square of the speed, so it is
    m (v^2 / v0^2 - 1)."""
    return np.asarray(
        np.maximum(mass_kg * ((gusts_m_per_s / tips_at_m_per_s) ** 2 - 1), 0.0), float
    )


def check_chart(piece: Evaluation, form: str, voice: Voice) -> bytes:
    """Both charts side by side, as the bytes of a file of one of `FORMS`. The same piece gives the
    same bytes. Raises NoSignError."""
    with mpl.rc_context({"svg.hashsalt": "buildplan", "font.family": "DejaVu Sans"}):
        figure = Figure(figsize=SIZE_IN, layout="constrained")
        first, second = figure.subplots(1, 2)
        _gauge_chart(first, piece, voice)
        _gust_chart(second, piece, voice)
        _titled(figure, piece.facts.name)
        data = io.BytesIO()
        stamp = {"svg": {"Date": None}, "pdf": {"CreationDate": None}, "png": {"Software": None}}
        figure.savefig(data, format=form, dpi=150, metadata=stamp[form])
    return data.getvalue()


def _titled(figure: Figure, name: str) -> None:
    """A name above the charts, which is no formula, in whatever script it is written."""
    figure.suptitle(" ")  # keeps the room
    line, wide = line_outline(name, TITLE_PT)
    room = SIZE_IN[0] - 2 * TITLE_EDGE_IN
    inches = min(1 / 72, room / wide) if wide else 1 / 72
    left = (SIZE_IN[0] - wide * inches) / 2
    place = Affine2D().scale(inches).translate(left, SIZE_IN[1] - TITLE_BELOW_IN)
    title = PathPatch(line, facecolor="black", edgecolor="none")
    title.set_transform(place + figure.dpi_scale_trans)
    figure.add_artist(title)


def _gauge_chart(axes: Axes, piece: Evaluation, voice: Voice) -> None:
    units = METRES_PER_UNIT[piece.units]
    steps = GAUGE_STEPS * STEP_M[piece.units] / units
    _banded(axes, steps, [height / units for height in heights_m(piece)])
    axes.set_xlabel(voice.say("every link sized larger or smaller by ({unit})", unit=piece.units))
    axes.set_ylabel(voice.say("height ({unit}), estimate", unit=piece.units))


def _gust_chart(axes: Axes, piece: Evaluation, voice: Voice) -> None:
    gusts = np.linspace(0.0, MOST_GUST_M_PER_S, 60)
    mass, wind = piece.examination.mass, piece.examination.wind
    tips, factor = wind.tips_at, wind.ballast_factor
    cases = [(mass.value, tips.value), (mass.low, tips.high), (mass.high, tips.low)]
    held = [factor * ballast_kg(m, v, gusts) for m, v in cases]
    _banded(axes, gusts * PER_HOUR[piece.units], held)
    unit = "mph" if piece.units == "in" else "km/h"
    axes.set_xlabel(voice.say("gust ({unit})", unit=unit))
    axes.set_ylabel(voice.say("ballast on its foot ({unit}), estimate", unit="kg"))


def _banded(axes: Axes, x: FloatArray, cases: Sequence[FloatArray]) -> None:
    """A line of likely values in the band of their range."""
    likely, one, other = cases
    axes.fill_between(x, np.minimum(one, other), np.maximum(one, other), color=BAND)
    axes.plot(x, likely, color=LINE)
    axes.grid(color="#E4E4E4")
    axes.set_axisbelow(True)
