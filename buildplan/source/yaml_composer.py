"""The composing of a YAML text: PyYAML's events as a tree, read more strictly than YAML 1.1.

- Values are those of YAML 1.2 (see yaml_scalars).
- Keys are text, just as they are written. The one exception is the merge key `<<`
  (https://yaml.org/type/merge.html).
- Explicit tags (`!!set`, `!!python/...`) are refused, so nothing but text, numbers, truth
  values, lists and mappings can come of a file.
- Aliases share what they name and are never copied. What they would come to if they were
  is counted, and a file that would swell too far is refused.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import NoReturn

import yaml

from buildplan.language.messages import message
from buildplan.source import yaml_refusals as refusals
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mark, Mistake, Path
from buildplan.source.problems import Problem, UnreadableDesignError
from buildplan.source.suggestions import by_hand
from buildplan.source.yaml_nodes import Keys, Node, NodeItems, Scalar, extent
from buildplan.source.yaml_refusals import Refusal
from buildplan.source.yaml_scalars import has_leading_zero, resolved, unprintable_in
from buildplan.source.yaml_slips import slip_near, slips_of
from buildplan.source.yaml_words import at_column, parse_problem

MAX_NESTING = 40


MAX_NODES = 200_000  # a listed piece of 20,000 balloons has about 100,000


MAX_ALIASED_NODES = 20_000


MERGE = "<<"


_NODE_EVENTS = (yaml.ScalarEvent, yaml.SequenceStartEvent, yaml.MappingStartEvent)


@dataclass
class Composer:
    """Builds the tree out of PyYAML's events."""

    text: str
    file: str
    mistakes: list[Mistake] = field(default_factory=list)
    # a node that is still being built stands as None
    anchors: dict[str, Node | None] = field(default_factory=dict)
    composed: int = 0
    aliased: int = 0

    @cached_property
    def lines(self) -> list[str]:
        """The text by its lines."""
        return self.text.splitlines()

    def document(self) -> Node:
        root: Node | None = None
        events = self._events()
        for event in events:
            if not isinstance(event, yaml.DocumentStartEvent):
                continue
            if root is not None:
                self._refuse(event, refusals.two_documents())
            root = self._node(next(events), events, ())
        if root is None:
            problem = Problem(
                FileKind.EMPTY_FILE,
                message("the file is empty"),
                by_hand(message("begin with {right}", right="buildplan: 1")),
                line=1,
            )
            raise UnreadableDesignError(self.file, problem)
        return root

    def _events(self) -> Iterator[yaml.Event]:
        try:
            yield from yaml.parse(self.text, Loader=yaml.SafeLoader)
        except yaml.YAMLError as error:
            problem = parse_problem(error, self.text)
            slip = slip_near(self.lines, problem.line or 1)
            raise UnreadableDesignError(self.file, slip or problem) from None

    def _refuse(self, event: yaml.Event, refusal: Refusal) -> NoReturn:
        kind, said, suggestion = refusal
        line, column = _mark(event)
        problem = Problem(kind, at_column(column, said), suggestion, line=line)
        raise UnreadableDesignError(self.file, problem)

    def _node(self, event: yaml.Event, events: Iterator[yaml.Event], path: Path) -> Node:
        if isinstance(event, yaml.AliasEvent):
            return self._alias(event, path)
        if len(path) > MAX_NESTING:
            self._too_deep(event)
        assert isinstance(event, _NODE_EVENTS)
        self.composed += 1
        if self.composed > MAX_NODES:
            self._refuse(event, refusals.too_many_values(MAX_NODES))
        if event.anchor is not None:
            self.anchors[event.anchor] = None
        node: Node
        if isinstance(event, yaml.ScalarEvent):
            node = self._scalar(event, path)
        elif isinstance(event, yaml.SequenceStartEvent):
            node = self._items(event, events, path)
        else:
            node = self._keys(event, events, path)
        if event.anchor is not None:
            self.anchors[event.anchor] = node
        return node

    def _too_deep(self, event: yaml.Event) -> NoReturn:
        self._refuse(event, refusals.too_deep(MAX_NESTING))

    def _alias(self, event: yaml.AliasEvent, path: Path) -> Node:
        name = event.anchor or ""
        if name not in self.anchors:
            self._refuse(event, refusals.alias_of_nothing(name))
        node = self.anchors[name]
        if node is None:
            self._refuse(event, refusals.alias_of_itself(name))
        self.aliased += node.size
        if self.aliased > MAX_ALIASED_NODES:
            self._refuse(event, refusals.aliases_too_large(MAX_ALIASED_NODES))
        if len(path) + node.height > MAX_NESTING:
            self._too_deep(event)
        return node

    def _mistake(self, event: yaml.Event, path: Path, refusal: Refusal) -> None:
        kind, said, suggestion = refusal
        self.mistakes.append(Mistake(kind, path, said, suggestion, _mark(event)))

    def _refuse_tag(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent, path: Path) -> None:
        tag = event.tag
        if tag not in (None, "!"):
            name = tag.replace("tag:yaml.org,2002:", "!!")
            self._mistake(event, path, refusals.tagged(name))

    def _written(self, event: yaml.ScalarEvent, path: Path) -> str:
        self._refuse_tag(event, path)
        if lost := unprintable_in(event.value):
            self._mistake(event, path, refusals.unprintable(lost))
        return event.value

    def _scalar(self, event: yaml.ScalarEvent, path: Path) -> Scalar:
        written = self._written(event, path)
        for kind, said, right, at in slips_of(event, self.lines):
            self.mistakes.append(Mistake(kind, path, said, right, at))
        if event.style is not None or event.tag is not None:
            return Scalar(written, written, _mark(event), _end(event))
        if has_leading_zero(written):
            bare = written.lstrip("+-0") or "0"
            self._mistake(event, path, refusals.leading_zero(written, bare))
        return Scalar(resolved(written), written, _mark(event), _end(event))

    def _items(
        self, event: yaml.SequenceStartEvent, events: Iterator[yaml.Event], path: Path
    ) -> NodeItems:
        self._refuse_tag(event, path)
        nodes: list[Node] = []
        while not isinstance(item := next(events), yaml.SequenceEndEvent):
            nodes.append(self._node(item, events, (*path, len(nodes))))
        flow = bool(event.flow_style)
        end = _end(item) if flow or not nodes else nodes[-1].end
        return NodeItems(nodes, _mark(event), end, flow, *extent(nodes))

    def _keys(
        self, event: yaml.MappingStartEvent, events: Iterator[yaml.Event], path: Path
    ) -> Keys:
        self._refuse_tag(event, path)
        nodes: dict[str, Node] = {}
        marks: dict[str, Mark] = {}
        merged: list[Keys] = []
        last: Mark | None = None
        while not isinstance(start := next(events), yaml.MappingEndEvent):
            key = self._key(start, events, path)
            value_event = next(events)
            value = self._node(value_event, events, path if key is None else (*path, key))
            last = _end(value_event) if isinstance(value_event, yaml.AliasEvent) else value.end
            if key is None:
                self._mistake(start, path, refusals.key_no_text())
            elif key == MERGE and isinstance(start, yaml.ScalarEvent) and start.style is None:
                merged += self._merged(start, value, path)
            elif key in nodes:
                self._mistake(start, (*path, key), refusals.key_twice(key, marks[key][0]))
            else:
                nodes[key], marks[key] = value, _mark(start)
        for other in merged:
            for key, value in other.nodes.items():
                nodes.setdefault(key, value)
                marks.setdefault(key, other.key_marks[key])
        flow = bool(event.flow_style)
        end = _end(start) if flow or last is None else last
        return Keys(nodes, marks, _mark(event), end, flow, *extent(nodes.values()))

    def _key(self, event: yaml.Event, events: Iterator[yaml.Event], path: Path) -> str | None:
        """The text of a key, as written; None when it is no text."""
        if not isinstance(event, yaml.ScalarEvent):
            node = self._node(event, events, (*path, "?"))
            return node.written if isinstance(node, Scalar) else None
        key = self._written(event, (*path, event.value))
        if event.anchor is not None:
            self.anchors[event.anchor] = Scalar(key, key, _mark(event), _end(event))
        return key

    def _merged(self, event: yaml.Event, value: Node, path: Path) -> list[Keys]:
        """The mappings that a merge key brings in; what stands first in them wins."""
        given = value.nodes if isinstance(value, NodeItems) else [value]
        mappings = [node for node in given if isinstance(node, Keys)]
        if len(mappings) < len(given):
            self._mistake(event, (*path, MERGE), refusals.merge_of_no_mapping())
        return mappings


def _mark(event: yaml.Event) -> Mark:
    mark = event.start_mark
    assert mark is not None, "every event that is parsed from text has its place"
    return mark.line + 1, mark.column + 1


def _end(event: yaml.Event) -> Mark:
    mark = event.end_mark
    assert mark is not None, "every event that is parsed from text has its place"
    return mark.line + 1, mark.column + 1
