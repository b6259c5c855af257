"""The tree of a YAML text: values, lists and mappings, each with its place in the text."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from buildplan.source.mistake import Mark, Path
from buildplan.source.yaml_scalars import Value


@dataclass(frozen=True)
class Scalar:
    """One value; `written` is its text in the file, which stands from `mark` up to `end`."""

    value: Value
    written: str
    mark: Mark
    end: Mark
    size: int = 1
    height: int = 0


@dataclass(frozen=True)
class NodeItems:
    """A list. `size` counts the nodes in it and `height` its levels, aliases laid out; `flow`
    says that it stands in brackets."""

    nodes: Sequence[Node]
    mark: Mark
    end: Mark
    flow: bool
    size: int
    height: int


@dataclass(frozen=True)
class Keys:
    """A mapping: the node under each key, and where each key stands."""

    nodes: Mapping[str, Node]
    key_marks: Mapping[str, Mark]
    mark: Mark
    end: Mark
    flow: bool
    size: int
    height: int


Node = Scalar | NodeItems | Keys


def plain(node: Node) -> object:
    """`node` as dicts, lists and plain values."""
    match node:
        case Scalar():
            return node.value
        case NodeItems():
            return [plain(item) for item in node.nodes]
        case Keys():
            return {key: plain(value) for key, value in node.nodes.items()}


def mark_of(node: Node, path: Path) -> Mark:
    """Where the thing at `path` under `node` stands, or the nearest thing around it."""
    mark = node.mark
    for step in path:
        if isinstance(node, Keys) and isinstance(step, str) and step in node.nodes:
            mark, node = node.key_marks[step], node.nodes[step]
        elif isinstance(node, NodeItems) and isinstance(step, int) and step < len(node.nodes):
            node = node.nodes[step]
            mark = node.mark
        else:
            break
    return mark


def node_at(root: Node, path: Path) -> Node | None:
    """The node at `path` under `root`; None where there is none."""
    node: Node | None = root
    for step in path:
        if isinstance(node, Keys) and isinstance(step, str):
            node = node.nodes.get(step)
        elif isinstance(node, NodeItems) and isinstance(step, int) and 0 <= step < len(node.nodes):
            node = node.nodes[step]
        else:
            return None
    return node


def extent(children: Collection[Node]) -> tuple[int, int]:
    """Size and height of a list or mapping of `children`."""
    return 1 + sum(n.size for n in children), 1 + max((n.height for n in children), default=0)
