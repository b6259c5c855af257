"""Sold copies made wrong: objects changed by pikepdf (qpdf), signs changed where they stand, so
that places in the file stay right, and bytes. A copy that is called whole has to look as it was
printed to a reader that shares no code with what looks for changes: pdfium draws both."""

from __future__ import annotations

import io
import re
from collections.abc import Sequence
from contextlib import suppress
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

import pikepdf
import pypdfium2
from kinds import Kind
from mutating import MOST_CHANGES, mutated_bytes
from pikepdf import Array, Dictionary, Name, String
from reportlab.pdfgen.canvas import Canvas

from buildplan.business.copies.serial import NoSerialError, SoldCopy, seal, serial_of
from buildplan.business.copies.verified_words import verified_lines
from buildplan.business.copies.verifying import DamagedFileError, LockedFileError, verify
from buildplan.language.voice import Voice

SIDE = 200.0  # points, of a page
COPY = SoldCopy("Lamp", "0" * 64, "sale", "Ana Example", "Lantern", "A4", "in", "en", keyed=False)
# what stands in the place of a value: of each sort that PDF has (ISO 32000-1, 7.3)
VALUES: tuple[Any, ...] = (
    *(0, 1, -1, 2, 90, 3.5, 10**6, True, False, Name.Page, Name.Form, Name("/x")),
    *(String("another"), Array([]), Array([0, 0, 9, 9]), Dictionary(), Dictionary(S=Name.D)),
)
KEYS = (
    *("/Rotate", "/CropBox", "/MediaBox", "/UserUnit", "/Annots", "/Contents", "/Count", "/Kids"),
    *("/Parent", "/Type", "/Subtype", "/Resources", "/Matrix", "/BBox", "/F", "/Filter", "/OC"),
    *("/Dest", "/A", "/AA", "/Lang", "/PageLabels", "/AcroForm", "/OCProperties", "/BPLN_Number"),
)
SIGN = re.compile(rb"[0-9]|[A-Za-z]")


@cache
def sold() -> bytes:
    """Two pages with what pages of sold copies have, sealed without a key."""
    stream = io.BytesIO()
    drawn = Canvas(stream, pagesize=(SIDE, SIDE), invariant=1, pageCompression=0)
    drawn.setTitle("Lamp")
    drawn.beginForm("ring")
    drawn.circle(20, 20, 15)
    drawn.endForm()
    for number in (1, 2):
        drawn.bookmarkPage(f"page {number}")
        drawn.addOutlineEntry(f"Page {number}", f"page {number}")
        drawn.drawString(10, 150, serial_of(COPY))
        drawn.drawString(10, 130, COPY.buyer)
        drawn.linkRect("", f"page {3 - number}", (10, 90, 60, 110))
        drawn.translate(40 * number, 20)
        drawn.doForm("ring")
        drawn.showPage()
    drawn.save()
    with pikepdf.open(io.BytesIO(stream.getvalue())) as pdf:
        with pdf.open_metadata(set_pikepdf_as_editor=False) as meta:
            meta["dc:title"] = "Lamp"
        seal(pdf, COPY)
        out = io.BytesIO()
        pdf.save(out, compress_streams=False, deterministic_id=True)
    return out.getvalue()


def mutated_objects(random: Random, data: bytes) -> bytes:
    """Keys of dictionaries and streams changed for others, taken out, put in or exchanged."""
    with pikepdf.open(io.BytesIO(data)) as pdf:
        held = [one for one in pdf.objects if isinstance(one, Dictionary | pikepdf.Stream)]
        for _ in range(random.randint(1, MOST_CHANGES)):
            one, other = random.choice(held), random.choice(held)
            with suppress(KeyError):  # how long a stream is pikepdf says itself
                _change(random, one, other)
        out = io.BytesIO()
        try:
            pdf.save(out, compress_streams=False, static_id=True)
        except (pikepdf.PdfError, RuntimeError, ValueError):
            return mutated_in_place(random, data)  # no file has such objects
    return out.getvalue()


def _change(random: Random, one: Any, other: Any) -> None:
    key = random.choice(sorted(one.keys()) or ["/x"])
    from_ = random.choice(sorted(other.keys()) or ["/x"])
    match random.randrange(5):
        case 0:
            one[key] = random.choice(VALUES)
        case 1:
            del one[key]
        case 2:
            one[from_] = other[from_]
        case 3 if isinstance(one, pikepdf.Stream):
            one.write(mutated_bytes(random, one.read_raw_bytes()))
        case _:
            one[random.choice(KEYS)] = random.choice(VALUES)


def mutated_in_place(random: Random, data: bytes) -> bytes:
    """Digits changed for digits and letters for letters, anywhere but in the seal's own words."""
    signs = bytearray(data)
    places = [found.start() for found in SIGN.finditer(data)]
    for _ in range(random.randint(1, 3 * MOST_CHANGES)):
        at = random.choice(places)
        low, high = (48, 57) if data[at] < 58 else (65, 90) if data[at] < 97 else (97, 122)
        signs[at] = random.randint(low, high)
    return bytes(signs)


def seen(data: bytes) -> list[bytes]:
    """What a reader draws of each page."""
    document = pypdfium2.PdfDocument(data)
    try:
        return [document[n].render(scale=0.5).to_numpy().tobytes() for n in range(len(document))]
    finally:
        document.close()


def _verified(path: Path) -> Sequence[str]:
    try:
        found = verify(path)
    except (DamagedFileError, LockedFileError, NoSerialError):
        return ["it cannot be judged"]  # told by the command itself
    told = [line for line in verified_lines(found, Voice()) if line]
    if not found.whole:
        return told
    assert seen(path.read_bytes()) == seen(sold()), "called whole, and looks otherwise"
    return ()


SOLD = Kind(
    "sold copy",
    lambda: (sold(),),
    (mutated_objects, mutated_objects, mutated_in_place, mutated_bytes),
    ".pdf",
    _verified,
)
