"""Print how well hands are learned: `.venv/bin/python tests/hands/figures.py`."""

from __future__ import annotations

from test_learning import SHIPPED, WHAT, height_off, share_inside


def main() -> None:
    """The shares of 200 people inside the range of nine in ten, and how far heights are off."""
    for what, shares in WHAT.items():
        print(f"{share_inside(shares):6.1%}  of 200 people inside the range of 90 %: {what}")
    for name in SHIPPED:
        print(f"{height_off(name):6.2%}  off the height in 19 of 20 hands: {name}")


if __name__ == "__main__":
    main()
