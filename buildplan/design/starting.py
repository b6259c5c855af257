"""The first file of a design: from a few wishes to a commented file that passes the check."""

from __future__ import annotations

import json
import math
import re
import unicodedata
from collections.abc import Mapping, Sequence

from buildplan.design.beginnings import PIECES
from buildplan.design.measures import Units
from buildplan.design.wishes import USUAL_GAUGE, BuildLines, Wish, WishError, a_piece, to_gauge
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
    """The file that `wish` asks for. Raises WishError, with a sentence that says what can be
    had, when it asks for something else."""
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
    gauge = USUAL_GAUGE[wish.units] if wish.gauge is None else wish.gauge
    nominal = _nominal(gauge, wish.units)
    link = gauge * TIE_TO_TIE_PER_GAUGE
    if wish.size is not None and not 0 < wish.size < math.inf:
        raise WishError(message("a size is a number more than 0"), "size")
    plan = PIECES[wish.piece](wish, None if wish.size is None else wish.size / link, voice)
    long, cross, lock = (_colour(name, voice) for name in _three(wish.colours))
    lock_nominal, lock_gauge = LOCK[wish.units]
    if gauge != USUAL_GAUGE[wish.units]:
        lock_gauge = min(lock_nominal, to_gauge(gauge * LOCK_PER_GAUGE, wish.units))

    def balloon(kind: str, size: float, to: float, colour: tuple[str, str]) -> str:
        return (
            f"{{kind: {kind}, nominal: {size:g}, inflate_to: {to:g}, "
            f"colour: {json.dumps(colour[1])}, "
            f"label: {json.dumps(colour[0], ensure_ascii=False)}}}"
        )

    balloons = [f"  long:  {balloon('link', nominal, gauge, long)}"]
    if plan.inner_gauge is not None:
        smaller = voice.say("sized smaller, so that straight cells bend into a round course")
        balloons.append(f"  # {smaller}")
        balloons.append(f"  inner: {balloon('link', nominal, plan.inner_gauge, long)}")
    balloons.append(f"  cross: {balloon('link', nominal, plan.cross_gauge or gauge, cross)}")
    balloons.append(f"  lock:  {balloon('round', lock_nominal, lock_gauge, lock)}")
    ends = voice.say("The joints that it stands on: the ends of its chains.")
    stand_on = f"\n# {ends}\nstand_on: [{', '.join(plan.stand_on)}]\n" if plan.stand_on else ""
    if plan.top:
        stand_on = f"\n# {voice.say('What is at the top when it stands.')}\ntop: {plan.top}\n"
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
    left_out = voice.say("All that follows can be left out: take away the # before what you want.")
    return (
        f"# {begun}\n"
        f"# buildplan check --watch {voice.say('THIS_FILE')}\n"
        "buildplan: 1\n"
        f"name: {json.dumps(wish.name, ensure_ascii=False)}\n"
        f"units: {wish.units}           # {voice.say('of every length below')}\n"
        "\n"
        f"# {one_entry}\n"
        f"# {sizes}\n"
        "balloons:\n" + "\n".join(balloons) + "\n"
        "\n"
        "build:\n" + "".join(f"  {line}\n" for line in plan.build) + stand_on + "\n"
        f"# {left_out}\n"
        f"{_colour_line(plan, voice)}"
        f"# crew: 2                    # {voice.say('how many people build it')}\n"
        f"spare: 0.05                  # {voice.say('extra balloons to take: 5 in a hundred')}\n"
        "# pack_sizes: {long: 50, cross: 50, lock: 100}\n"
        "# prices: {long: 0.00, cross: 0.00, lock: 0.00}      # "
        f"{voice.say('what you pay for one balloon')}\n"
        "# currency: GBP\n"
        f"# rates: {{hour: 0.00, margin: 0.0}}      # {voice.say('for buildplan quote')}\n"
    )


def _colour_line(plan: BuildLines, voice: Voice) -> str:
    """A colour pattern to begin with, for pieces that have parts to lay one along."""
    patterns = {
        "tube": "long: {fade: [long, cross]}",
        "column": "ring: {fade: [long, cross]}",
        "wall": "row: {fade: [long, cross]}",
    }
    # balloons of another size would change how a round course bends
    bends = plan.inner_gauge is not None
    key = plan.build[0].partition(":")[0]
    pattern = "brace: {stripes: {cross: 2, long: 1}}" if bends else patterns.get(key)
    others = voice.say("or stripes, or a spiral")
    return f"# colour_pattern: {{{pattern}}}      # {others}\n" if pattern else ""


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
        if name.lower() in (colour, voice.say(colour)):
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
