"""The figures of a piece as the desk shows them: those of `check`, as values and in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal
from pathlib import Path

from buildplan.business.buying.money import cost, money_words
from buildplan.design.measures import size_words
from buildplan.desk.cards import balloons_words, standing
from buildplan.desk.overlays import overlays_of
from buildplan.desk.painted import paint_as_data
from buildplan.desk.problem_data import problems_as_data, untried
from buildplan.desk.whole_file import WholeFile
from buildplan.evaluation.evaluating import Evaluation
from buildplan.evaluation.figures import air_words, minutes_words, weight_words
from buildplan.fitting.check_report import balloon_rows
from buildplan.fitting.checking import Checked, checked_as_json, file_data
from buildplan.fitting.standing_report import standing_rows
from buildplan.hands.model import HANDS_FILE
from buildplan.hands.words import height_lines
from buildplan.language.voice import Voice
from buildplan.source.problems import in_words


def piece_figures(
    checked: Checked, path: Path, voice: Voice, *, settled: bool
) -> dict[str, object]:
    """All that the desk says of a piece. `settled` says that what would mend it has been tried;
    `check` is what `check --json` prints."""
    piece = checked.piece
    facts, units = piece.facts, piece.units
    data = file_data(path)[1]
    size = {
        name: voice.tell(size_words(length, units))
        for name, length in (
            ("width", facts.width_m),
            ("height", facts.height_m),
            ("depth", facts.depth_m),
        )
    }
    stands, words = standing(piece, voice)
    height = list(height_lines(checked.known, piece, voice))
    return {
        "name": facts.name,
        "settled": settled,
        "check": checked_as_json(checked, voice),
        "rows": [list(row) for row in standing_rows(piece, height, voice, checked.stiffer)],
        "balloons": balloons_words(facts.total, voice),
        "counts": list(_counts(piece, voice)),
        "sizes": size,
        "weight": weight_words(facts.mass_kg, voice),
        "air": air_words(facts.air_m3, facts.pump_minutes, units, voice),
        "hours": minutes_words(facts.work_minutes, voice),
        "crew_hours": minutes_words(facts.crew_minutes, voice),
        "cost": material_words(piece, voice),
        "hands": _hands_words(checked, voice),
        "stands": {"state": stands, "words": words},
        "problems": problems_as_data(
            facts.problems if settled else untried(facts.problems), WholeFile(data, voice)
        ),
        "cautions": [in_words(one, voice) for one in piece.examination.cautions],
        "overlays": overlays_of(piece, voice),
        "paint": paint_as_data(piece.design, data, voice),
    }


def _hands_words(checked: Checked, voice: Voice) -> str | None:
    """Whose hands the figures are for, where theirs were measured."""
    if not checked.known.measurements:
        return None
    return voice.say(
        "These figures are for your own hands, as they are measured in {file}.", file=HANDS_FILE
    )


def _counts(piece: Evaluation, voice: Voice) -> Iterator[Mapping[str, object]]:
    """How many there are of each balloon, as a person says it."""
    rows = balloon_rows(piece.facts, piece.units, voice)
    for key, words in rows:
        balloon = piece.framework.balloons[key]
        yield {
            "key": key,
            "label": balloon.label,
            "colour": balloon.colour,
            "count": piece.facts.counts[key],
            "words": words,
        }


def material_words(piece: Evaluation, voice: Voice) -> str | None:
    """What the balloons cost at the design's own prices; None where it does not say them all."""
    currency = piece.design.currency
    if currency is None:
        return None
    costs = [cost(purchase, currency) for purchase in piece.facts.purchases]
    known = [one for one in costs if one is not None]
    if len(known) < len(costs) or not known:
        return None
    return money_words(sum(known, Decimal(0)), currency, voice)
