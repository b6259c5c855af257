"""Files made wrong: changes of their structure and of their bytes, the same for the same seed.

What is put in is what programs are known to trip over: numbers at and past their ends (IEEE 754),
empty and endless texts, signs that turn the direction of reading (Unicode Standard Annex 9),
formulas of spreadsheets, paths that lead elsewhere.
"""

from __future__ import annotations

import copy
import re
import struct
import zlib
from collections.abc import Callable, Iterator
from random import Random
from typing import Any
from xml.etree import ElementTree

import yaml

ATOMS: tuple[Any, ...] = (
    *(0, -1, 1, 2, 7, 40, 41, 500, 10**6, 2**31, 2**63, 10**29, 10**40),
    *(0.0, -0.5, 0.1, 1e-300, 1e300, -1e300, float("inf"), float("nan")),
    *(None, True, False, "", " ", "x", "A1", "12 in", "20 cm", "1e999", "0x10", "07", "1,5", "yes"),
    *("#FFFFFF", "navy", "=1+1", "../x.yaml", "/dev/zero", "A" * 3000, "A.A1", "10:00", "-1"),
    *("\u202eevil", "\u0661\u0662", "山田", "\ud7ff", "e\u0301", "{name}", "%s", "<b>", "a\nb"),
    *([], {}, [[]], [1, 2], {"a": 1}, [None], ["straight"] * 30, {"repeat": 500, "cells": ["fan"]}),
)
TOKEN = re.compile(r"[A-Za-z_][\w-]*|-?\d+\.?\d*(?:[eE]-?\d+)?|\s+|.", re.DOTALL)
BYTES = (
    *(b"\0", b"\xff\xfe", b"\xef\xbb\xbf", b"\r", b"\n", b"\t", b'"', b"'", b"{", b"}", b"[", b"]"),
    *(b"&a ", b"*a", b"!!", b"- ", b": ", b"#", b"|", b">", b"%", b"@", b"---\n", b"<<: "),
)
MOST_CHANGES = 4
MOST_BYTES = 200_000

Mutate = Callable[[Random, bytes], bytes]


def mutated_bytes(random: Random, data: bytes) -> bytes:
    """Some bytes changed, put in, taken out, doubled or cut off."""
    for _ in range(random.randint(1, MOST_CHANGES)):
        at = random.randrange(len(data) + 1)
        end = min(len(data), at + random.choice((1, 1, 2, 8, 64, 512)))
        match random.randrange(6):
            case 0:
                data = data[:at] + random.randbytes(end - at) + data[end:]
            case 1:
                data = data[:at] + random.randbytes(random.randint(1, 6)) + data[at:]
            case 2:
                data = data[:at] + data[end:]
            case 3:
                data = data[:end] + data[at:]
            case 4:
                data = data[:at] + random.choice(BYTES) + data[at:]
            case _ if len(data) > 1 and at < len(data):
                data = data[:at] + bytes([data[at] ^ (1 << random.randrange(8))]) + data[at + 1 :]
    return data[:at] if random.random() < 0.05 else data[:MOST_BYTES]


def mutated_tokens(random: Random, data: bytes) -> bytes:
    """Words, numbers and signs of a text changed for others, taken out, doubled or moved."""
    tokens = TOKEN.findall(data.decode("utf-8", "replace"))
    for _ in range(random.randint(1, MOST_CHANGES)):
        at = random.randrange(len(tokens)) if tokens else 0
        end = min(len(tokens), at + random.choice((1, 1, 3, 9, 40)))
        match random.randrange(5):
            case 0:
                tokens[at : at + 1] = [str(random.choice(ATOMS))]
            case 1:
                del tokens[at:end]
            case 2:
                tokens[at:at] = tokens[at:end] * random.choice((1, 2, 50))
            case 3:
                tokens[at:at] = [random.choice(tokens or [""])]
            case _:
                there = random.randrange(len(tokens) + 1)
                tokens[there:there] = tokens[at:end]
    return "".join(tokens).encode("utf-8", "surrogatepass")[:MOST_BYTES]


def mutated_yaml(random: Random, data: bytes) -> bytes:
    """Keys and values of a file in YAML changed for others, taken out, renamed, moved, repeated."""
    return str(
        yaml.dump(
            mutated_data(random, yaml.load(data, yaml.CSafeLoader)),
            Dumper=yaml.CSafeDumper,
            sort_keys=False,
            allow_unicode=random.random() < 0.5,
        )
    ).encode("utf-8", "surrogatepass")


def mutated_data(random: Random, whole: Any) -> Any:
    """Plain data with some of its keys and values made wrong."""
    whole = copy.deepcopy(whole)
    for _ in range(random.randint(1, MOST_CHANGES)):
        places = list(places_in(whole))
        if not places:
            break
        holder, key = random.choice(places)
        other, from_ = random.choice(places)
        match random.randrange(6):
            case 0 | 1:
                holder[key] = copy.deepcopy(random.choice(ATOMS))
            case 2:
                del holder[key]
            case 3:
                holder[key] = copy.deepcopy(other[from_])
            case 4 if isinstance(holder, dict):
                holder[random.choice((str(from_), "name", "x", ""))] = holder.pop(key)
            case _ if isinstance(holder, list):
                holder[key:key] = [copy.deepcopy(holder[key]) for _ in range(random.choice((1, 9)))]
    return whole


def places_in(value: Any) -> Iterator[tuple[Any, Any]]:
    """Every place of plain data, as what holds it and its key there."""
    inside = value.items() if isinstance(value, dict) else enumerate(value)
    for key, one in list(inside):
        yield value, key
        if isinstance(one, dict | list):
            yield from places_in(one)


def mutated_xml(random: Random, data: bytes) -> bytes:
    """Elements and attributes of a file in XML changed, taken out, doubled or moved."""
    root = ElementTree.fromstring(data)
    for _ in range(random.randint(1, MOST_CHANGES)):
        elements = list(root.iter())
        one, other = random.choice(elements), random.choice(elements)
        key = random.choice(list(one.attrib) or ["d"])
        match random.randrange(6):
            case 0 | 1:
                text = mutated_tokens(random, one.get(key, "0").encode())
                one.set(key, text.decode("utf-8", "replace"))
            case 2:
                one.set(key, str(random.choice(ATOMS)))
            case 3:
                one.attrib.pop(key, None)
            case 4:
                one.attrib.update(other.attrib)
            case _:
                other.extend(copy.deepcopy(one) for _ in range(random.choice((1, 1, 30))))
        if random.random() < 0.1:
            one.clear()
    return bytes(ElementTree.tostring(root))[: 4 * MOST_BYTES]


def mutated_png(random: Random, data: bytes) -> bytes:
    """Chunks of a PNG (PNG Third Edition, 5.3) changed, taken out, doubled or moved, their sums
    right more often than not, so that what is in them is looked at."""
    chunks = list(chunks_of(data))
    for _ in range(random.randint(1, 3)):
        at = random.randrange(len(chunks))
        kind, held = chunks[at]
        match random.randrange(5):
            case 0:
                chunks[at] = (kind, mutated_bytes(random, held))
            case 1 if kind == b"IHDR":
                sides = [random.choice((0, 1, 2**15, 2**31 - 1, 2**32 - 1)) for _ in range(2)]
                chunks[at] = (kind, struct.pack(">II", *sides) + held[8:])
            case 2 if len(chunks) > 1:
                del chunks[at]
            case 3:
                chunks.insert(at, random.choice(chunks))
            case _:
                word = random.choice(
                    (b"zTXt", b"iCCP", b"PLTE", b"tRNS", b"acTL", b"eXIf", b"IEND")
                )
                chunks.insert(at, (word, random.randbytes(random.choice((0, 3, 90)))))
    right = random.random() < 0.8
    return data[:8] + b"".join(packed(kind, held, right=right) for kind, held in chunks)


def chunks_of(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    """The chunks of a PNG: their kinds, and what they hold."""
    at = 8
    while at + 8 <= len(data):
        (size,) = struct.unpack(">I", data[at : at + 4])
        yield data[at + 4 : at + 8], data[at + 8 : at + 8 + size]
        at += 12 + size


def packed(kind: bytes, held: bytes, *, right: bool) -> bytes:
    """A chunk, with the sum of it or another."""
    check = zlib.crc32(kind + held) ^ (0 if right else 1)
    return struct.pack(">I", len(held)) + kind + held + struct.pack(">I", check)
