"""The last pages: standing the piece up, placing and carrying it, taking it down."""

from __future__ import annotations

from buildplan.booklet.book import Book
from buildplan.booklet.crew_words import joints_words
from buildplan.booklet.press import HEADING, SMALL, Leaf, Press, plain, strong
from buildplan.booklet.words import speed_words, weight_words
from buildplan.design.measures import size_words
from buildplan.drawing.camera import CAMERAS
from buildplan.drawing.scene import finished_picture
from buildplan.sequence.reach import lifters

VIEW_HEIGHT, SIDE_HEIGHT = 250.0, 170.0


def standing(book: Book) -> Leaf:
    """Standing it up, placing it, ballast, doors."""

    def draw(press: Press) -> None:
        paper, facts = book.paper, book.facts
        feet = joints_words(book.shape.standing.feet)
        gust = speed_words(book.examination.wind.tips_at.value, book.units)
        top = press.title("Stand it up, place it, hold it down")
        half = (paper.measure - 20) / 2
        right = paper.left + half + 20
        y = press.paragraph("Before you lift", paper.left, top, half, HEADING, "H2") - 4
        y = press.tick_list(
            (
                f"{strong(str(facts.locks))} locks are on, one at each joint that is held",
                "The back looks exactly like the front",
                "The way to its place is clear, and so are exits and sockets",
                f"{strong(str(lifters(book.shape)))} people or more are there, shoes on, hands "
                "free",
            ),
            paper.left,
            y,
            half,
        )
        y = press.paragraph("Stand it up", paper.left, y - 6, half, HEADING, "H2") - 4
        y = press.bullets(
            (
                f"It stands on joints {strong(feet)}. Turn it on the floor until that side points "
                "to where its foot will be.",
                "One person holds the foot, the others walk the far side up together. Hold the "
                "braced tube, never a single balloon.",
                "Let it settle on its foot for a minute. Turn any joint that has twisted back "
                "until its lock faces out.",
            ),
            paper.left,
            y,
            half,
        )
        y = press.paragraph("Hold it down", paper.left, y - 6, half, HEADING, "H2") - 4
        y = press.bullets(
            (
                f"It weighs about {strong(weight_words(facts.mass_kg))} and goes over when it "
                f"leans {strong(f'{facts.tip_angle_deg:.1f} degrees')} in its worst direction "
                "(estimates). People brush against it: add ballast indoors too.",
                f"Tie ballast low, at {strong(feet)}: water weights or sand bags, the same on "
                "each foot, front and back.",
                f"With nothing to hold it, a gust of {strong(gust)} tips it (estimate). Where "
                "doors make a draught, tie it to something that will hold as well; in more than "
                "a light breeze keep it indoors.",
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
            alt=f"{facts.name} standing, seen from a corner.",
        )
        press.picture(picture, right, top - VIEW_HEIGHT)
        y = press.paragraph(
            "How it stands, seen from a corner.", right, top - VIEW_HEIGHT - 6, half, SMALL
        )
        side = finished_picture(
            book.framework,
            book.shape,
            CAMERAS["side"],
            half,
            SIDE_HEIGHT,
            alt=f"{facts.name} standing, seen from the side.",
        )
        y -= SIDE_HEIGHT + 8
        press.picture(side, right, y)
        y = press.paragraph("From the side.", right, y - 4, half, SMALL)
        y = press.paragraph("Carry it", right, y - 10, half, HEADING, "H2") - 4
        press.bullets(
            (
                f"Upright it is {strong(size_words(facts.height_m, book.units))} high, "
                f"{strong(size_words(facts.width_m, book.units))} wide and "
                f"{strong(size_words(facts.depth_m, book.units))} deep. Measure each door, lift "
                "and vehicle before you build; flat on its side it needs a door as high as its "
                "least side.",
                "If it does not fit, build it in the room where it will stand.",
                "Cover door frames and hinges; look out for thorns, screws and hot lamps.",
            ),
            right,
            y,
            half,
        )

    return Leaf("Stand it up, place it, hold it down", draw)


def taking_down(book: Book) -> Leaf:
    """While it stands, taking down, waste; and a place for notes."""

    def draw(press: Press) -> None:
        paper = book.paper
        top = press.title("While it stands, and taking it down")
        y = press.paragraph("While it stands", paper.left, top, paper.measure, HEADING, "H2") - 4
        spare = ", ".join(f"{p.spare} {p.balloon.label}" for p in book.facts.purchases)
        y = press.bullets(
            (
                f"Keep the spares ({plain(spare)}) and a hand pump near: a burst balloon is "
                "replaced by a new one sized to the same gauge and tied between the same two "
                "joints.",
                "Look it over each morning: locks on, feet down, ballast in place, exits clear.",
                "Pick up every piece of a broken balloon at once.",
            ),
            paper.left,
            y,
            paper.measure,
        )
        y = press.paragraph("Take it down", paper.left, y - 6, paper.measure, HEADING, "H2") - 4
        y = press.tick_list(
            (
                "Clear people away, lay the piece flat, put on safety glasses",
                "Untie the ballast last of the feet, after the piece lies flat",
                "Let the air out: snip each neck beside its knot with blunt scissors. Do not "
                "stamp or burst balloons near people",
                f"Count what goes into the bags: {strong(str(book.facts.total))} balloons were in "
                "the piece",
                "Tie the bags shut and keep them from children and animals until they are gone",
                "Never let balloons go outdoors. Latex waste goes where local rules say",
            ),
            paper.left,
            y,
            paper.measure,
        )
        y = press.paragraph("Notes", paper.left, y - 8, paper.measure, HEADING, "H2") - 22
        with press.decoration() as canvas:
            canvas.setStrokeColor("#9A9A9A")
            canvas.setLineWidth(0.5)
            while y > paper.bottom + 6:
                canvas.line(paper.left, y, paper.right, y)
                y -= 24

    return Leaf("While it stands, and taking it down", draw)
