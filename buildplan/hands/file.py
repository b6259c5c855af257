"""The file in which measurements of one person's hands gather: `hands.yaml`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Annotated, Literal

import yaml
from pydantic import Field

from buildplan.design.form_reading import read_as
from buildplan.hands.model import (
    ChainOfTen,
    Measurement,
    RingAcross,
    Size,
    StandingHeight,
    TimedWork,
)
from buildplan.language.messages import mark
from buildplan.sequence.model import Kind
from buildplan.source.values import FileModel, LabourKind, Minutes, Version

METRES_PER_CM = 0.01
HEAD = """\
# Measurements of one pair of hands, in centimetres and minutes. `buildplan learn LOG` adds to them;
# designs in this folder are worked out with them.
"""

Centimetres = Annotated[float, Field(gt=0, le=100_000, allow_inf_nan=False)]
Sag = Annotated[float, Field(ge=0, le=100_000, allow_inf_nan=False)]
Count = Annotated[int, Field(ge=1, le=1_000_000)]


class Links(FileModel):
    """Links of one size; without a size, links whose length the design itself knows."""

    nominal: Centimetres | None = Field(None, description=mark("the size printed on the bag"))
    gauge: Centimetres | None = Field(None, description=mark("the gauge that they are sized to"))
    count: Count = Field(description=mark("how many links"))


class ChainEntry(FileModel):
    """A chain of ten links."""

    nominal: Centimetres = Field(description=mark("the size printed on the bag"))
    gauge: Centimetres = Field(description=mark("the gauge that they are sized to"))
    length: Centimetres = Field(description=mark("from the first knot to the last"))


class RingEntry(FileModel):
    """A ring laid round on the floor."""

    links: list[Links] = Field(description=mark("its links, by size"), min_length=1)
    across: Centimetres = Field(description=mark("over the balloons, through the middle"))


class HeightEntry(FileModel):
    """A finished piece as it stands, with what the program worked out for it."""

    links: list[Links] = Field(description=mark("its links, by size"), min_length=1)
    span: Centimetres = Field(description=mark("how far its joints reach up, as worked out"))
    body: Centimetres = Field(description=mark("what its balloons add to that, as worked out"))
    sag: Sag = Field(description=mark("how far it sinks, as worked out"))
    height: Centimetres = Field(description=mark("how high it stands"))


class WorkEntry(FileModel):
    """Work of one kind that was timed."""

    kind: LabourKind = Field(description=mark("the kind of work"))
    count: Annotated[float, Field(gt=0, le=1_000_000)] = Field(
        description=mark("how many of it were done")
    )
    minutes: Minutes = Field(description=mark("the minutes that they took one pair of hands"))


class HandsFile(FileModel):
    """A whole file of measurements."""

    buildplan_hands: Version = Field(description=mark("the version of this form of file: 1"))
    units: Literal["cm"] = Field("cm", description=mark("the units of its lengths: cm"))
    chains_of_ten: list[ChainEntry] = Field(
        default_factory=list, description=mark("chains of ten links")
    )
    rings: list[RingEntry] = Field(
        default_factory=list, description=mark("rings laid round on the floor")
    )
    heights: list[HeightEntry] = Field(default_factory=list, description=mark("finished pieces"))
    work: list[WorkEntry] = Field(default_factory=list, description=mark("work that was timed"))


def _sizes(links: Sequence[Links]) -> Iterator[tuple[Size | None, int]]:
    for one in links:
        known = one.nominal is None or one.gauge is None
        size = None if known else _size(one.nominal, one.gauge)
        yield size, one.count


def _size(nominal: float | None, gauge: float | None) -> Size:
    assert nominal is not None, "a size has both"
    assert gauge is not None, "a size has both"
    return Size(nominal * METRES_PER_CM, gauge * METRES_PER_CM)


def measurements_of(file: HandsFile) -> tuple[Measurement, ...]:
    """What the file has measured, in metres and minutes."""
    found: list[Measurement] = [
        ChainOfTen(_size(one.nominal, one.gauge), one.length * METRES_PER_CM)
        for one in file.chains_of_ten
    ]
    for ring in file.rings:
        sizes = tuple((size, count) for size, count in _sizes(ring.links) if size is not None)
        found.append(RingAcross(sizes, ring.across * METRES_PER_CM))
    for piece in file.heights:
        worked_out = (piece.span, piece.body, piece.sag, piece.height)
        found.append(
            StandingHeight(
                tuple(_sizes(piece.links)), *(METRES_PER_CM * length for length in worked_out)
            )
        )
    found += [TimedWork(Kind(one.kind), one.count, one.minutes) for one in file.work]
    return tuple(found)


def read_hands(path: Path) -> tuple[Measurement, ...]:
    """The measurements of a hands file. Raises as `read_design` does."""
    return measurements_of(read_as(HandsFile, path, lambda data: ()))


def _cm(length_m: float) -> float:
    return round(length_m / METRES_PER_CM, 3)


def _plain(number: float) -> float:
    return int(number) if number == int(number) else round(number, 3)


def _links(size: Size | None, count: int) -> dict[str, float]:
    if size is None:
        return {"count": count}
    return {"nominal": _cm(size.nominal_m), "gauge": _cm(size.gauge_m), "count": count}


def _entry(one: Measurement) -> tuple[str, dict[str, object]]:
    match one:
        case ChainOfTen(size=size, length_m=length):
            sizes = {"nominal": _cm(size.nominal_m), "gauge": _cm(size.gauge_m)}
            return "chains_of_ten", {**sizes, "length": _cm(length)}
        case RingAcross(sizes=links, across_m=across):
            return "rings", {"links": [_links(*one) for one in links], "across": _cm(across)}
        case StandingHeight():
            return "heights", {
                "links": [_links(*one) for one in one.sizes],
                "span": _cm(one.span_m),
                "body": _cm(one.body_m),
                "sag": _cm(one.sag_m),
                "height": _cm(one.height_m),
            }
        case TimedWork(kind=kind, count=count, minutes=minutes):
            return "work", {"kind": str(kind), "count": _plain(count), "minutes": _plain(minutes)}


def gathered(before: Sequence[Measurement], new: Sequence[Measurement]) -> list[Measurement]:
    """The measurements of before and those that are new: none is counted twice."""
    known = [_entry(one) for one in before]
    return [*before, *(one for one in new if _entry(one) not in known)]


def hands_text(measurements: Sequence[Measurement]) -> str:
    """A hands file of these measurements."""
    data: dict[str, object] = {"buildplan_hands": 1, "units": "cm"}
    lists: dict[str, list[dict[str, object]]] = {}
    for one in measurements:
        name, entry = _entry(one)
        lists.setdefault(name, []).append(entry)
    text = yaml.safe_dump(data | lists, sort_keys=False, default_flow_style=None, width=100)
    return HEAD + str(text)
