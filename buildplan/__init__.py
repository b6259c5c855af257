"""buildplan: from the design of a link-balloon piece to the booklet that builds it."""

__version__ = "0.1.0"
