"""How a sold copy is changed and saved again: by pikepdf (qpdf), which shares no code with what
looks for changes but the reading of the file."""

from __future__ import annotations

import io
import warnings
from collections.abc import Callable
from typing import Any

import pikepdf
from pikepdf import Dictionary, Name, String

Pdf = pikepdf.Pdf
Forgery = Callable[[bytes], bytes]


def opened(change: Callable[[Pdf], None], **how: Any) -> Forgery:
    """A change of the opened file, saved again."""

    def forged(data: bytes) -> bytes:
        with pikepdf.open(io.BytesIO(data)) as pdf, warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of fields that are in no form
            change(pdf)
            out = io.BytesIO()
            pdf.save(out, **how)
        return out.getvalue()

    return forged


def on_page(key: str, value: Callable[[Pdf], Any]) -> Callable[[Pdf], None]:
    def change(pdf: Pdf) -> None:
        pdf.pages[3].obj[key] = value(pdf)

    return change


def in_catalogue(key: str, value: Callable[[Pdf], Any]) -> Callable[[Pdf], None]:
    def change(pdf: Pdf) -> None:
        pdf.Root[key] = value(pdf)

    return change


def script(pdf: Pdf) -> Dictionary:
    return Dictionary(S=Name.JavaScript, JS=String("app.alert(1)"))


def nothing(_: Pdf) -> None:
    return
