"""Design files, and what to change in each so that it is wrong in one way."""

from __future__ import annotations

RING = """\
buildplan: 1
name: Ring
units: in
balloons:
  long:  {kind: link,  nominal: 12, inflate_to: 8,   colour: "#1F5F8B", label: blue}
  cross: {kind: link,  nominal: 12, inflate_to: 8,   colour: "#F7F3E8", label: ivory}
  lock:  {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  tube:
    closed: true
    chains: 4
    long: long
    brace: cross
    lock: lock
    course:
      - repeat: 6
        cells: [straight, fan]
spare: 0.05
"""
GRAPH = """\
buildplan: 1
name: Triangle
units: in
balloons:
  edge: {kind: link,  nominal: 12, inflate_to: 8,   colour: "#1F5F8B", label: blue}
build:
  graph:
    joints: [P, Q, R]
    balloons:
      - {from: P, to: Q, balloon: edge}
      - {from: Q, to: R, balloon: edge}
      - {from: R, to: P, balloon: edge}
"""
ASSEMBLY = """\
buildplan: 1
name: Two
units: in
balloons:
  edge: {kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  lock: {kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  assembly:
    lock: lock
    parts:
      - {name: L, build: {solid: {shape: cube, edge: edge, lock: lock}}}
      - {name: T, build: {solid: {shape: cube, edge: edge, lock: lock}}}
    ties: [[L.P1, T.P1]]
"""
WALL = """\
  wall: {across: 4, up: 4, layers: 2, row: long, upright: long, lock: lock,
    openings: [{along: 0, up: 1, wide: 1, high: 1}]}
"""
FIGURE = "  figure: {{long: long, brace: cross, lock: lock, strokes: [{{cells: [{}]}}]}}\n"
TUBE = RING[RING.index("  tube:") : RING.index("spare")]
COURSE = "      - repeat: 6\n        cells: [straight, fan]\n"
BROKEN = [
    *(
        (RING, old, new)
        for old, new in [
            ("name: Ring", "nmae: Ring"),
            ("units: in\n", ""),
            ("buildplan: 1", "buildplan: true"),
            ("name: Ring", "name: 12"),
            ("name: Ring", "name:"),
            ("name: Ring", 'name: "  "'),
            ("name: Ring", 'name: "Ring\\ntwo"'),
            ("name: Ring", f"name: {'x' * 81}"),
            ("units: in", "units: inhc"),
            ("nominal: 12", "nominal: 12 cm"),
            ("nominal: 12", "nominal: true"),
            ("nominal: 12", "nominal: .inf"),
            ("nominal: 12", "nominal: -12"),
            ("nominal: 12", "nominal: 6"),
            ("nominal: 12", "tie_to_tie: 9, chain_of_ten: 90, nominal: 12"),
            ("nominal: 12", "tie_to_tie: 90, nominal: 12"),
            ("nominal: 5", "tie_to_tie: 5, nominal: 5"),
            ('"#1F5F8B"', "navvy"),
            ('"#1F5F8B"', "#1F5F8B"),
            ("closed: true", "closed: yes"),
            ("closed: true", "closed: 1"),
            ("chains: 4", "chains: 5"),
            ("chains: 4\n    long: long", "chains: 2\n    long: {A: long, B: long, C: long}"),
            ("long: long", "long: [long]"),
            ("long: long", "long: {A: long, B: long}"),
            ("long: long", "long: lock"),
            ("long: long", "long: lnog"),
            ("lock: lock", "lock: cross"),
            ("fan]", "fann]"),
            ("fan]", "[1]]"),
            ("fan]", "[1, -1]]"),
            ("fan]", "[0, 0]]"),
            ("fan]", "tip]"),
            ("fan]", "fan, fan]"),
            ("fan]", "fan_in]"),
            ("repeat: 6", "repeat: 5"),
            ("repeat: 6", "repeat: 9000"),
            ("repeat: 6", "repeat: 6.5"),
            (COURSE, "      - [5, 0]\n"),
            (COURSE, "      - [9, 9]\n"),
            (COURSE, "      []\n"),
            (TUBE, ""),
            (TUBE, WALL),
            (TUBE, WALL + TUBE),
            (TUBE, "  column: {around: 99, rings: 99, ring: long, between: long, lock: lock}\n"),
            (TUBE, "  letters: {text: A, long: long, brace: cross, lock: lock}\n"),
            (TUBE, "  letters: {text: M, cells: 5, long: long, brace: cross, lock: lock}\n"),
            (TUBE, "  letters: {text: Ñu, cells: 5, long: long, brace: cross, lock: lock}\n"),
            (TUBE, FIGURE.format("straight, corner_left, corner_left, corner_left, straight")),
            (TUBE, FIGURE.format("straight]}, {stroke: 1, cell: 2, side: left, cells: [straight")),
            (TUBE, FIGURE.format("straight]}, {cells: [straight")),
            (TUBE, FIGURE.format("{repeat: 200, cells: [" + "straight, " * 10 + "]}")),
            ("spare: 0.05", "spare: 5"),
            ("spare: 0.05", "prices: {long: -0.3}"),
            ("spare: 0.05", "prices: {long: 1, cross: 2}\npack_prices: {long: 3}"),
            ("spare: 0.05", "currency: XXQ"),
            ("spare: 0.05", "currency: pounds"),
            ("spare: 0.05", "constants: {Drag: 1, darg: 1}"),
            ("spare: 0.05", "stand_on: [A99, A1, A1]"),
            ("spare: 0.05", "stand_on: []"),
            ("spare: 0.05", "colour_pattern: {E: [long]}"),
            ("spare: 0.05", "colour_pattern: {row: [long]}"),
            ("spare: 0.05", "colour_pattern: {A: {pitch: 3}}"),
            ("spare: 0.05", "colour_pattern: {A: {stripes: {long: 1}, fade: [long, cross]}}"),
            ("spare: 0.05", "colour_pattern: {A: {stripes: {long: 7}, pitch: 3}}"),
            ("spare: 0.05", "colour_pattern: {A: {stripes: {long: 7}}}"),
            ("spare: 0.05", "colour_pattern: {A: {spiral: {long: 7}}}"),
            ("spare: 0.05", "colour_pattern: {brace: {spiral: {long: 7}}}"),
            ("spare: 0.05", "colour_pattern: {long: {spiral: {long: 7}, pitch: 8}}"),
            ("spare: 0.05", "translations: {es: {labels: {lnog: azul}}}"),
            ("spare: 0.05", "a: *b"),
            ("spare: 0.05", "a: &b [*b]"),
            ("spare: 0.05", "? [a]\n: b"),
            ("spare: 0.05", "<<: a"),
            ("spare: 0.05", "---\na: b"),
            ("spare: 0.05", "spare: 0.05\nspare: 0.05"),
            ("spare: 0.05", "spare: !!float 0.05"),
            ("spare: 0.05", "spare: 007"),
            ("spare: 0.05", "spare: \t5"),
            ("spare: 0.05", "spare: 5: 6"),
            ("spare: 0.05", "spare: @5"),
            ("spare: 0.05", "spare: [5"),
            ("spare: 0.05", 'spare: "5'),
            ("spare: 0.05", "spare 5"),
            (RING, ""),
            (RING, "[]"),
            (RING, "event: 1"),
            (RING, "a: " + "[" * 50 + "]" * 50),
        ]
    ),
    *(
        (GRAPH, old, new)
        for old, new in [
            ("[P, Q, R]", "[P, Q, R, R, S-1]"),
            ("from: P", "from: T"),
            ("from: P, to: Q", "from: Q, to: Q"),
            ("      - {from: Q", "      - {from: T, to: U, balloon: edge}\n      - {from: Q"),
            ("[P, Q, R]", "[P, Q, R, T, U]\n    lock: edge"),
            ("build:", "colour_pattern: {A: [edge]}\nbuild:"),
        ]
    ),
    *(
        (ASSEMBLY, old, new)
        for old, new in [
            ("name: T,", "name: L,"),
            ("name: T, ", "name: T, repeat: 2, to_next: [[P1]], "),
            ("name: T, ", "name: T, to_next: [[P1, P2]], "),
            ("name: T, ", "name: T, design: a.yaml, "),
            ("{name: T, build: {solid: {shape: cube, edge: edge, lock: lock}}}", "{name: T}"),
            ("build: {solid: {shape: cube, edge: edge, lock: lock}}", "design: none.yaml"),
            ("T.P1]", "T.P9]"),
            ("T.P1]", "U.P1]"),
            ("T.P1]", "L.P2]"),
            ("[[L.P1, T.P1]]", "[]"),
            ("[[L.P1, T.P1]]", "[[L.P1, T.P1], [L.P1, T.P2]]"),
            ("[[L.P1, T.P1]]", "[{joints: [L.P1, T.P1], balloon: egde}]"),
            ("build:\n", "stand_on: [L.P9]\nbuild:\n"),
        ]
    ),
]
