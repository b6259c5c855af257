"""The top of a design file to try patterns in: two link balloons and a round."""

HEAD = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  b: {kind: link,  nominal: 12, inflate_to: 8, colour: "#F7F3E8", label: ivory}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
"""
