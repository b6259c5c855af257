"""The sizes of type on a printed page."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pikepdf


def type_sizes(page: pikepdf.Page) -> Iterator[tuple[bool, float]]:
    """Of every text-showing operator: whether it is in a picture, and the size of its type in
    points, as the text and transformation matrices make it (ISO 32000-1, 9.4.4)."""
    matrix, stack, figure, size, text = np.eye(3), [], False, 0.0, np.eye(3)
    for instruction in pikepdf.parse_content_stream(page, "q Q cm Tm BT Tf BDC EMC Tj TJ"):
        operator, operands = str(instruction.operator), instruction.operands
        if operator == "q":
            stack.append((matrix, size))
        elif operator == "Q":
            matrix, size = stack.pop()
        elif operator in ("cm", "Tm"):
            a, b, c, d, e, f = (float(v) for v in operands)
            made = np.array([[a, b, 0], [c, d, 0], [e, f, 1]])
            if operator == "cm":
                matrix = made @ matrix
            else:
                text = made
        elif operator == "BT":
            text = np.eye(3)
        elif operator == "Tf":
            size = float(operands[1])
        elif operator == "BDC":
            figure = str(operands[0]) == "/Figure"
        elif operator == "EMC":
            figure = False
        elif operator in ("Tj", "TJ"):
            yield figure, size * float(np.hypot(*(text @ matrix)[1, :2]))
