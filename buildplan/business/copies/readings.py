"""Whether a sold copy can be read, and in one way alone.

Readers of PDF mend broken files, each in its own way: one shows what was sealed, another what
somebody put beside it. Such a file is not judged, nor one that would fill the memory when it is
read. References are to ISO 32000-1.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pikepdf
from pikepdf.settings import set_qpdf_limits

HEADER = b"%PDF-"
UNNAMED = (0, 0)  # an object within another has no name in the file
# where a reader looks for the place of the table of objects (annex H, notes 13 and 18)
LAST_BYTES = 1024
# of what one stream holds unpacked: ours have less than 2 MB
MOST_UNPACKED = 256 * 1024 * 1024
MOST_METADATA = 2 * 1024 * 1024  # bytes; ours are 33 for each page
# of drawings within drawings (8.10), however often each is drawn again; ours draw some thousands
MOST_DRAWN = 1_000_000
# how qpdf names an object in what it warns of; the rest (how many objects a table tells) is read
# alike by all
OF_OBJECT = "(object "
# ways of packing a stream (7.4) of which it is known how much they unpack
UNPACKED = frozenset(
    ("/FlateDecode", "/ASCIIHexDecode", "/ASCII85Decode", "/RunLengthDecode", "/Crypt")
)


class UnsoundFileError(Exception):
    """A file that readers may take for different ones, or that has no end."""


def refuse_two_ways(data: bytes) -> None:
    """Raise UnsoundFileError where the file does not begin with its header (7.5.2), from which
    places in it are counted, or the place of its table does not stand near its end (7.5.5)."""
    if not data.startswith(HEADER) or b"startxref" not in data[-LAST_BYTES:]:
        raise UnsoundFileError


def refuse_mended(pdf: pikepdf.Pdf) -> None:
    """Raise UnsoundFileError where the reader of an open file had to mend an object: a key that
    stands twice, a stream without an end."""
    if any(OF_OBJECT in warning for warning in pdf.get_warnings()):
        raise UnsoundFileError


def refuse_endless(pdf: pikepdf.Pdf) -> None:
    """Raise UnsoundFileError where the metadata, or what a page draws, is more than can be read:
    twenty drawings of which each draws the next ten times have no end."""
    about = pdf.Root.get("/Metadata")
    if isinstance(about, pikepdf.Stream) and len(about.read_bytes()) > MOST_METADATA:
        raise UnsoundFileError
    known: dict[tuple[int, int], int] = {}
    for page in pdf.pages:
        contents = page.obj.get("/Contents")
        parts = list(contents) if isinstance(contents, pikepdf.Array) else [contents]
        streams = [part for part in parts if isinstance(part, pikepdf.Stream)]
        if _drawn(page.obj, streams, known) > MOST_DRAWN:
            raise UnsoundFileError


def _drawn(
    thing: pikepdf.Object, parts: Sequence[pikepdf.Object], known: dict[tuple[int, int], int]
) -> int:
    """How much a page or a drawing draws at most, if all of its drawings are the largest of them.
    What is drawn within itself (readers leave it out) counts as one."""
    known[thing.objgen] = 1
    often = sum(part.read_bytes().count(b"Do") for part in parts if can_be_unpacked(part))
    resources = thing.get("/Resources") if often else None
    drawings = resources.get("/XObject") if isinstance(resources, pikepdf.Dictionary) else None
    most = 1
    for _, drawing in drawings.items() if isinstance(drawings, pikepdf.Dictionary) else ():
        if isinstance(drawing, pikepdf.Stream) and drawing.get("/Subtype") == pikepdf.Name.Form:
            if drawing.objgen not in known:
                _drawn(drawing, [drawing], known)
            most = max(most, known[drawing.objgen])
    known[thing.objgen] = 1 + often * most
    return known[thing.objgen]


def limit_unpacking() -> None:
    """Let no stream be unpacked that would fill the memory, for this process."""
    set_qpdf_limits(
        flate_max_memory=MOST_UNPACKED,
        run_length_max_memory=MOST_UNPACKED,
        png_max_memory=MOST_UNPACKED,
        tiff_max_memory=MOST_UNPACKED,
    )


def can_be_unpacked(stream: pikepdf.Object) -> bool:
    """Whether it is known how much a stream unpacks to at most."""
    packed = stream.get("/Filter")
    if packed is None:
        return True
    each = list(packed) if isinstance(packed, pikepdf.Array) else [packed]
    return all(str(one) in UNPACKED for one in each)


def tree_is_sound(pdf: pikepdf.Pdf) -> bool:
    """Whether the tree of pages (7.7.3) says of itself what is there: how many pages lie below each
    of its nodes, and what each is part of. Some readers go by the one, others by the other."""
    root = pdf.Root.get("/Pages")
    if not isinstance(root, pikepdf.Dictionary):
        return False
    below: dict[tuple[int, int], int] = {}
    for node, above in _nodes(root):
        kids = node.get("/Kids")
        if node.objgen == UNNAMED or (above is not None and _parent(node) != above.objgen):
            return False
        if node.get("/Type") == pikepdf.Name.Page:
            if kids is not None:
                return False
            below[node.objgen] = 1
        elif node.get("/Type") != pikepdf.Name.Pages or not isinstance(kids, pikepdf.Array):
            return False
        else:
            # kids come before what they are part of
            counted = sum(below.get(kid.objgen, 0) for kid in list(kids))
            if node.get("/Count") != counted:
                return False
            below[node.objgen] = counted
    return True


def _parent(node: pikepdf.Object) -> tuple[int, int]:
    above = node.get("/Parent")
    return above.objgen if isinstance(above, pikepdf.Dictionary) else UNNAMED


def _nodes(root: pikepdf.Object) -> Iterator[tuple[pikepdf.Object, pikepdf.Object | None]]:
    """The nodes of the tree with those above them, from the pages up."""
    found: list[tuple[pikepdf.Object, pikepdf.Object | None]] = []
    waiting: list[tuple[pikepdf.Object, pikepdf.Object | None]] = [(root, None)]
    seen: set[tuple[int, int]] = set()
    while waiting:
        node, above = waiting.pop()
        if not isinstance(node, pikepdf.Dictionary) or node.objgen in seen:
            continue
        seen.add(node.objgen)
        found.append((node, above))
        waiting += [(kid, node) for kid in list(node.get("/Kids", []))]
    return reversed(found)
