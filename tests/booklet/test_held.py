"""What holds a piece is on every paper that somebody needs to have read before it is let go."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest
from page_words import words_of

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.holding import while_it_grows
from buildplan.booklet.editions import print_booklet
from buildplan.booklet.office.event_load import shared_lists
from buildplan.booklet.office.quote_page import print_quote
from buildplan.business.buying.money import quote
from buildplan.business.buying.shopping import ShoppedFor, shopping_list
from buildplan.business.events.event_plan import EventPlan, plan_event
from buildplan.business.events.loading import load_of
from buildplan.business.quoting.offer import Offer, Party, PricedPiece, QuotedPiece
from buildplan.design.event import Event, EventPiece
from buildplan.design.model import Rates
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind

DESIGNS = Path(__file__).parents[2] / "designs"
VOICE = Voice()
HELD = {
    "base: {width: 16, depth: 12, weight: 6}": (
        "base 16 in wide and 12 in deep",
        "A base, 16 in wide",
    ),
    "pole: true": ("held up by a pole", "A pole that stands by itself"),
    "hung: true": ("hangs from above", "Lines to hang it from above"),
    "tied_to_wall: true": ("tied to a wall behind it", "Ties to the wall behind it"),
}


@pytest.fixture(scope="module", params=HELD, ids=lambda held: held.partition(":")[0])
def held(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Book:
    text = (DESIGNS / "gallery" / "slim_column.yaml").read_text("utf-8")
    file = tmp_path_factory.mktemp("held") / "held.yaml"
    key = str(request.param)
    file.write_text(text.replace("\nbuild:", f"\n{key}\nbuild:"), "utf-8")
    design = read_design(file)
    return gather_book(design, PAPERS["a4"], design.units, "crew")


def said(book: Book) -> tuple[str, str]:
    holding = book.shape.holding
    for key, words in HELD.items():
        if getattr(holding, key.partition(":")[0]):
            return words
    raise AssertionError(holding)


def test_the_crew_reads_it_first_brings_it_and_checks_it(held: Book) -> None:
    condition, brought = said(held)
    text = words_of(print_booklet(held))
    assert text.count(condition) >= 3, "on the cover, at its place, in the last step"
    assert brought in text
    assert not re.search(r"\bsteps? \d", text), "a crew has jobs"
    free = not held.shape.holding.fixed
    assert ("Ballast low at" in text) == ("Ballast: " in text) == free


def planned(held: Book) -> EventPlan:
    pieces = [EventPiece(design="held.yaml")]
    event = Event(event=1, name="E", designs=pieces, crew=2, opening="10:00")
    shopping = shopping_list([ShoppedFor("held.yaml", held.design, held.framework, 1)])
    return plan_event(event, [held], shopping, VOICE)


def test_chains_that_come_in_with_courses_are_loaded_in_their_bags(held: Book) -> None:
    """A column has more rings than bags: none is packed by its letter."""
    bags = [one.bag for one in load_of(planned(held), VOICE).items if one.bag is not None]
    assert sum(bag.balloons for bag in bags) == held.facts.total
    assert 0 < len(bags) < len(held.framework.chains)
    assert not any(bag.chain for bag in bags)


def test_an_event_brings_it(held: Book) -> None:
    plan = planned(held)
    lists = dict(shared_lists(plan, VOICE))
    down = " ".join(lists["To hold it down"])
    assert said(held)[1] in down
    assert ("dry sand" in down) == (not held.shape.holding.fixed)


def test_a_customer_is_not_told_that_it_stands_by_itself(held: Book) -> None:
    rates = Rates(hour=Decimal(20), margin=Decimal("0.3"))
    priced = [replace(one, price=Decimal(10), pack_size=50) for one in held.facts.purchases]
    made = quote(priced, held.facts.work_minutes, "EUR", rates)
    piece = PricedPiece(QuotedPiece("held.yaml", held), made.price)
    text = words_of(print_quote(Offer(made, (piece,), Party("C")), PAPERS["a4"], None, VOICE))
    assert said(held)[0] in text
    assert "by itself on the floor" not in text


def test_what_holds_it_is_made_fast_before_it_can_fall(held: Book) -> None:
    """Common practice, no source: a pole stands before a column grows round it, and the foot is
    tied to its base as soon as it lies."""
    grown = [[one.said for one in while_it_grows(held, step)] for step in held.steps]
    told = [number for number, said in enumerate(grown) if said]
    holding, first = held.shape.holding, next(s for s in held.steps if s.of_kind(Kind.JOIN))
    if holding.pole:
        assert told == [first.number - 1]
        assert grown[told[0]][0].startswith("Set the pole up first")
    elif holding.base is not None:
        assert told == [first.number]
        assert grown[told[0]][0].startswith("Tie its foot to the middle of the base")
    else:
        assert not told


def test_what_hangs_is_lifted_to_where_it_hangs_and_not_onto_a_foot(held: Book) -> None:
    (step,) = (step for step in held.steps if step.kind is Kind.STAND_UP)
    told = held.told(step)
    hangs = held.shape.holding.hung
    assert ("Hang" in told.title) == ("to where it hangs" in told.text) == hangs
    assert not (hangs and "foot" in told.text)
