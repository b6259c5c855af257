"""The last pages: standing the piece up, placing and carrying it, taking it down."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import balloon_words, joints_words
from buildplan.design.measures import size_words
from buildplan.document.renderer import HEADING, SMALL, Leaf, Press, plain, strong
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.evaluation.figures import speed_words, weight_words
from buildplan.language.grammar import decimal
from buildplan.language.speaking import say, say_count, whole
from buildplan.sequence.reach import lifters

VIEW_HEIGHT, SIDE_HEIGHT = 250.0, 170.0


def standing(book: Book) -> Leaf:
    """Standing it up, placing it, ballast, doors."""

    def draw(press: Press) -> None:
        paper, facts = book.paper, book.facts
        feet = joints_words(book.shape.standing.feet)
        gust = speed_words(book.examination.wind.tips_at.value, book.units)
        top = press.title(say("Stand it up, place it, hold it down"))
        half = (paper.measure - 20) / 2
        right = paper.left + half + 20
        y = press.paragraph(say("Before you lift"), paper.left, top, half, HEADING, "H2") - 4
        y = press.tick_list(
            (
                say_count(
                    "{locks} lock is on, one at each joint that is held",
                    "{locks} locks are on, one at each joint that is held",
                    facts.locks,
                    locks=strong(whole(facts.locks)),
                ),
                say("The back looks exactly like the front"),
                say("The way to its place is clear, and so are exits and sockets"),
                say(
                    "{people} people or more are there, shoes on, hands free",
                    people=strong(whole(lifters(book.shape))),
                ),
            ),
            paper.left,
            y,
            half,
        )
        y = press.paragraph(say("Stand it up"), paper.left, y - 6, half, HEADING, "H2") - 4
        y = press.bullets(
            (
                say(
                    "It stands on joints {joints}. Turn it on the floor until that side points to "
                    "where its foot will be.",
                    joints=strong(feet),
                ),
                say(
                    "One person holds the foot, the others walk the far side up together. Hold "
                    "the braced tube, never a single balloon."
                ),
                say(
                    "Let it settle on its foot for a minute. Turn any joint that has twisted back "
                    "until its lock faces out."
                ),
            ),
            paper.left,
            y,
            half,
        )
        y = press.paragraph(say("Hold it down"), paper.left, y - 6, half, HEADING, "H2") - 4
        y = press.bullets(
            (
                say(
                    "It weighs about {weight} and goes over when it leans {angle} in its worst "
                    "direction (estimates). People brush against it: add ballast indoors too.",
                    weight=strong(weight_words(facts.mass_kg)),
                    angle=strong(say("{angle} degrees", angle=decimal(facts.tip_angle_deg, 1))),
                ),
                say(
                    "Tie ballast low, at {joints}: water weights or sand bags, the same on each "
                    "foot, front and back.",
                    joints=strong(feet),
                ),
                say(
                    "With nothing to hold it, a gust of {gust} tips it (estimate). Where doors "
                    "make a draught, tie it to something that will hold as well; in more than a "
                    "light breeze keep it indoors.",
                    gust=strong(gust),
                ),
            ),
            paper.left,
            y,
            half,
        )
        picture = finished_picture(
            book.framework,
            book.shape,
            CAMERAS["corner"],
            half,
            VIEW_HEIGHT,
            alt=say("{piece} standing, seen from a corner.", piece=facts.name),
        )
        press.picture(picture, right, top - VIEW_HEIGHT)
        y = press.paragraph(
            say("How it stands, seen from a corner."), right, top - VIEW_HEIGHT - 6, half, SMALL
        )
        side = finished_picture(
            book.framework,
            book.shape,
            CAMERAS["side"],
            half,
            SIDE_HEIGHT,
            alt=say("{piece} standing, seen from the side.", piece=facts.name),
        )
        y -= SIDE_HEIGHT + 8
        press.picture(side, right, y)
        y = press.paragraph(say("From the side."), right, y - 4, half, SMALL)
        y = press.paragraph(say("Carry it"), right, y - 10, half, HEADING, "H2") - 4
        press.bullets(
            (
                say(
                    "Upright it is {height} high, {width} wide and {depth} deep. Measure each "
                    "door, lift and vehicle before you build; flat on its side it needs a door as "
                    "high as its least side.",
                    height=strong(size_words(facts.height_m, book.units)),
                    width=strong(size_words(facts.width_m, book.units)),
                    depth=strong(size_words(facts.depth_m, book.units)),
                ),
                say("If it does not fit, build it in the room where it will stand."),
                say("Cover door frames and hinges; look out for thorns, screws and hot lamps."),
            ),
            right,
            y,
            half,
        )

    return Leaf(say("Stand it up, place it, hold it down"), draw)


def taking_down(book: Book) -> Leaf:
    """While it stands, taking down, waste; and a place for notes."""

    def draw(press: Press) -> None:
        paper = book.paper
        top = press.title(say("While it stands, and taking it down"))
        y = (
            press.paragraph(say("While it stands"), paper.left, top, paper.measure, HEADING, "H2")
            - 4
        )
        spare = "; ".join(
            say("{count} {balloons}", count=p.spare, balloons=balloon_words(book, p.balloon.key))
            for p in book.facts.purchases
            if p.spare
        )
        y = press.bullets(
            (
                say(
                    "Keep the spares ({spares}) and a hand pump near: a burst balloon is replaced "
                    "by a new one sized to the same gauge and tied between the same two joints.",
                    spares=plain(spare),
                ),
                say(
                    "Look it over each morning: locks on, feet down, ballast in place, exits clear."
                ),
                say("Pick up every piece of a broken balloon at once."),
            ),
            paper.left,
            y,
            paper.measure,
        )
        y = (
            press.paragraph(say("Take it down"), paper.left, y - 6, paper.measure, HEADING, "H2")
            - 4
        )
        y = press.tick_list(
            (
                say("Clear people away, lay the piece flat, put on safety glasses"),
                say("Untie the ballast last of the feet, after the piece lies flat"),
                say(
                    "Let the air out: snip each neck beside its knot with blunt scissors. Do not "
                    "stamp or burst balloons near people"
                ),
                say(
                    "Count what goes into the bags: {balloons} balloons were in the piece",
                    balloons=strong(whole(book.facts.total)),
                ),
                say(
                    "Tie the bags shut and keep them from children and animals until they are gone"
                ),
                say("Never let balloons go outdoors. Latex waste goes where local rules say"),
            ),
            paper.left,
            y,
            paper.measure,
        )
        y = press.paragraph(say("Notes"), paper.left, y - 8, paper.measure, HEADING, "H2") - 22
        with press.decoration() as canvas:
            canvas.setStrokeColor("#9A9A9A")
            canvas.setLineWidth(0.5)
            while y > paper.bottom + 6:
                canvas.line(paper.left, y, paper.right, y)
                y -= 24

    return Leaf(say("While it stands, and taking it down"), draw)
