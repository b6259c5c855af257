"""The first file of a design: from a few wishes to a commented file that passes the check."""

from __future__ import annotations

import json
import math
import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence

from buildplan.design.beginnings import PIECES
from buildplan.design.measures import Units
from buildplan.design.wishes import USUAL_GAUGE, BuildLines, Wish, WishError, a_piece, to_gauge
from buildplan.language.isolates import without_isolates
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.source.colour_names import HEX, OFFERED, hex_of
from buildplan.source.lengths import TIE_TO_TIE_PER_GAUGE

# Link balloons and rounds by the size printed on their bags, and what a round of a lock is
# sized to (common practice, no source): inches, centimetres.
LINK_SIZES: Mapping[Units, tuple[float, ...]] = {"in": (6, 12), "cm": (15, 30)}
LOCK: Mapping[Units, tuple[float, float]] = {"in": (5, 3.5), "cm": (12, 9)}
# A lock's round over the gauge of the links that it holds.
LOCK_PER_GAUGE = 3.5 / 8


def design_text(wish: Wish, voice: Voice) -> str:
    """The file that `wish` asks for, with comments in the reader's language. Raises WishError, with
    a message that says what can be had, when it asks for something else."""
    _check(wish)
    gauge = _gauge(wish)
    link = gauge * TIE_TO_TIE_PER_GAUGE
    plan = PIECES[wish.piece](wish, None if wish.size is None else wish.size / link, voice)
    lines = [
        *_head(wish, voice),
        "balloons:",
        *_balloons(wish, plan, voice),
        "",
        "build:",
        *(f"  {line}" for line in plan.build),
        *_way_up(plan, voice),
        "",
        *_left_out(plan, voice),
        "",
    ]
    return without_isolates("\n".join(lines))


def _check(wish: Wish) -> None:
    if wish.piece not in PIECES:
        raise WishError(
            message(
                "there is no {piece} to start from: {names}",
                piece=wish.piece,
                names=", ".join(PIECES),
            ),
            "piece",
        )
    if not wish.name.strip() or len(wish.name) > 80 or not wish.name.isprintable():
        raise WishError(message("a name is one line of 1 to 80 characters"), "name")
    if wish.size is not None and not 0 < wish.size < math.inf:
        raise WishError(message("a size is a number more than 0"), "size")


def _gauge(wish: Wish) -> float:
    return USUAL_GAUGE[wish.units] if wish.gauge is None else wish.gauge


def _head(wish: Wish, voice: Voice) -> list[str]:
    """What the file is, and what its lines until the balloons say."""
    begun = voice.say(
        "{name}: {a_piece}, begun with buildplan new. Change what you like, and see what it does:",
        name=wish.name,
        a_piece=a_piece(wish.piece),
    )
    one_entry = voice.say(
        "One entry for each kind of balloon; the rest of the file calls them by these keys."
    )
    sizes = voice.say(
        "nominal is printed on the bag, inflate_to is the gauge that it is sized against."
    )
    return [
        f"# {begun}",
        f"# buildplan check --watch {voice.say('THIS_FILE')}",
        "buildplan: 1",
        f"name: {json.dumps(wish.name, ensure_ascii=False)}",
        f"units: {wish.units}           # {voice.say('of every length below')}",
        "",
        f"# {one_entry}",
        f"# {sizes}",
    ]


def _balloons(wish: Wish, plan: BuildLines, voice: Voice) -> Iterator[str]:
    """An entry for each kind of balloon."""
    gauge = _gauge(wish)
    nominal = _nominal(gauge, wish.units)
    long, cross, lock = (_colour(name, voice) for name in _three(wish.colours))
    yield f"  long:  {_balloon('link', nominal, gauge, long)}"
    if plan.inner_gauge is not None:
        smaller = voice.say("sized smaller, so that straight cells bend into a round course")
        yield f"  # {smaller}"
        yield f"  inner: {_balloon('link', nominal, plan.inner_gauge, long)}"
    yield f"  cross: {_balloon('link', nominal, plan.cross_gauge or gauge, cross)}"
    lock_nominal, lock_gauge = LOCK[wish.units]
    if gauge != USUAL_GAUGE[wish.units]:
        lock_gauge = min(lock_nominal, to_gauge(gauge * LOCK_PER_GAUGE, wish.units))
    yield f"  lock:  {_balloon('round', lock_nominal, lock_gauge, lock)}"


def _balloon(kind: str, nominal: float, gauge: float, colour: tuple[str, str]) -> str:
    label, value = colour
    return (
        f"{{kind: {kind}, nominal: {nominal:g}, inflate_to: {gauge:g}, "
        f"colour: {json.dumps(value)}, label: {json.dumps(label, ensure_ascii=False)}}}"
    )


def _way_up(plan: BuildLines, voice: Voice) -> list[str]:
    """What it stands on, or what is at its top, where its pattern does not say."""
    if plan.top:
        return ["", f"# {voice.say('What is at the top when it stands.')}", f"top: {plan.top}"]
    if plan.stand_on:
        ends = voice.say("The joints that it stands on: the ends of its chains.")
        return ["", f"# {ends}", f"stand_on: [{', '.join(plan.stand_on)}]"]
    return []


def _left_out(plan: BuildLines, voice: Voice) -> Iterator[str]:
    """Keys that can be left out, most of them as comments."""
    left_out = voice.say("All that follows can be left out: take away the # before what you want.")
    yield f"# {left_out}"
    yield from _colour_line(plan, voice)
    yield f"# crew: 2                    # {voice.say('how many people build it')}"
    extra = voice.say("extra balloons to take: 5 in a hundred")
    yield f"spare: 0.05                  # {extra}"
    yield "# pack_sizes: {long: 50, cross: 50, lock: 100}"
    pay = voice.say("what you pay for one balloon")
    yield f"# prices: {{long: 0.00, cross: 0.00, lock: 0.00}}      # {pay}"
    yield "# currency: GBP"
    quote = voice.say("for buildplan quote")
    yield f"# rates: {{hour: 0.00, margin: 0.0}}      # {quote}"


def _colour_line(plan: BuildLines, voice: Voice) -> Iterator[str]:
    """A colour pattern to begin with, for pieces that have parts to lay one along."""
    patterns = {
        "tube": "long: {fade: [long, cross]}",
        "column": "ring: {fade: [long, cross]}",
        "wall": "row: {fade: [long, cross]}",
    }
    # balloons of another size would change how a round course bends
    bends = plan.inner_gauge is not None
    key = plan.build[0].partition(":")[0]
    if key == "letters":
        yield f"# colour_pattern: {{letter: [long, cross]}}      # {voice.say('letter by letter')}"
    pattern = "brace: {stripes: {cross: 2, long: 1}}" if bends else patterns.get(key)
    if pattern:
        yield f"# colour_pattern: {{{pattern}}}      # {voice.say('or stripes, or a spiral')}"


def file_stem(name: str) -> str:
    """A file's name for a piece: `Reading Star` goes into reading_star.yaml."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return "_".join(re.findall(r"[a-z0-9]+", plain)) or "design"


def _nominal(gauge: float, units: Units) -> float:
    """The smallest link that is sized to `gauge`: to about two thirds of what it could be."""
    sizes = LINK_SIZES[units]
    if not sizes[0] / 3 <= gauge <= sizes[-1]:
        raise WishError(
            message(
                "links are sized to between {least} and {most} {units}, not {gauge}",
                least=f"{sizes[0] / 3:g}",
                most=f"{sizes[-1]:g}",
                units=units,
                gauge=f"{gauge:g}",
            ),
            "gauge",
        )
    return next((size for size in sizes if gauge <= 0.75 * size), sizes[-1])


def _three(colours: tuple[str, ...]) -> tuple[str, str, str]:
    """Colours of long chains, braces and locks: what is left out is as the one before."""
    if not 1 <= len(colours) <= 3:
        raise WishError(message("give one to three colours: long chains, braces, locks"), "colours")
    filled = (*colours, colours[-1], colours[-1])
    return filled[0], filled[1], filled[2]


def _colour(name: str, voice: Voice) -> tuple[str, str]:
    """A colour's label and its hexadecimal value."""
    name = name.strip()
    if re.fullmatch(HEX, name):
        return name, name
    for colour in OFFERED:  # in English, or as it is said
        if name.casefold() in (colour, voice.say(colour).casefold()):
            return voice.say(colour), hex_of(colour) or name
    value = hex_of(name)
    if value is not None:
        return name, value
    raise WishError(
        message(
            "there is no colour {name} here: # and six hex digits, one of {names}, or any name of "
            "CSS",
            name=json.dumps(name, ensure_ascii=False),
            names=colour_names(OFFERED, voice),
        ),
        "colours",
    )


def colour_names(colours: Sequence[str], voice: Voice) -> str:
    """Colours of OFFERED as they are called, with commas between them."""
    return ", ".join(voice.say(colour) for colour in colours)
