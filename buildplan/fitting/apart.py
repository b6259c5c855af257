"""Parts that press on one another where they are tied beside each other: a balloon between their
joints keeps them apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from buildplan.design.building import build_framework
from buildplan.design.reading import joined_data
from buildplan.evaluation.seating import seated
from buildplan.fitting.part_sizes import AT, Data, parts_of
from buildplan.language.messages import listing, message
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.seat_places import SIDES
from buildplan.source.suggestions import Put, Remedy, TakeOut


def tied_by_balloons(data: Data, folder: Path) -> Iterator[Remedy]:
    """Everything that is tied beside a part tied to it by balloons in place of knots: between the
    same joints, the piece's own usual link balloon."""
    beside = {
        part["name"]: (i, key)
        for i, part in enumerate(parts_of(data))
        for key in SIDES
        if part.get(key) is not None
    }
    if not beside:
        return
    design = joined_data(data, folder, CONSTANTS)
    found = seated(design).ties
    framework = build_framework(design)
    usual = Counter(link.balloon for link in framework.links).most_common(1)[0][0]
    added = [
        {"joints": list(pair), "balloon": usual}
        for name in beside
        for pair in found.get((name,), ())
    ]
    if not added:
        return
    written = (f"{{joints: [{', '.join(tie['joints'])}], balloon: {usual}}}" for tie in added)
    places = {name: f"{key}: {parts_of(data)[i][key]}" for name, (i, key) in beside.items()}
    words = message(
        "take out {places} and tie a balloon between the joints: {right}",
        places=listing([*dict.fromkeys(places.values())]),
        right=f"ties: [{', '.join(written)}]",
    )
    ties = [*(data["build"]["assembly"].get("ties") or ()), *added]
    out = (TakeOut((*AT, "parts", i, key)) for i, key in beside.values())
    yield Remedy(words, (*out, Put((*AT, "ties"), ties)))
