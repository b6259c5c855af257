"""The same file gives the same bytes, whatever the process, the time zone or the locale.

Here in two that are as unlike as can be; every output of every design in all of them by
`environments.py`.
"""

from __future__ import annotations

from environments import ALL, DESIGNS, PLAIN, SURROUNDINGS, sums_in, unlike


def test_every_design_gives_the_same_bytes_in_any_surroundings() -> None:
    far_apart = (SURROUNDINGS[0], SURROUNDINGS[-1])
    told = [sums_in(one, ("crewed",), DESIGNS) for one in far_apart]
    assert unlike(told) == ()
    assert len(told[0]) == len(DESIGNS) >= 24


def test_all_that_is_printed_of_a_design_is_the_same_in_any_surroundings() -> None:
    designs = [one for one in DESIGNS if one.stem == "lamp_octahedron"]
    outputs = [one for one in ALL if one not in PLAIN]
    found = [sums_in(one, outputs, designs) for one in SURROUNDINGS[1:3]]
    assert unlike(found) == ()
