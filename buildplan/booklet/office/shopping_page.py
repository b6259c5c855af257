"""The shopping list as a page: to tick off in the shop."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.business.buying.money import balloon_words, money_words
from buildplan.business.buying.shopping import ShoppingList, packs_words, pieces_words, total_words
from buildplan.document.blocks import Words
from buildplan.document.paper import Paper
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, plain, strong
from buildplan.evaluation.figures import air_words
from buildplan.language.speaking import say, spoken_voice, whole


def shopping_section(shopping: ShoppingList) -> Section:
    """The list on pages of its own."""
    return Section(say("Shopping list"), shopping_blocks(shopping), titled=True)


def print_shopping(shopping: ShoppingList, paper: Paper) -> bytes:
    """The list as a tagged PDF. The same list gives the same bytes."""
    pieces = pieces_words(shopping.pieces, spoken_voice())
    title = say("Shopping list for {pieces}", pieces=pieces)
    sections = [shopping_section(shopping)]
    return print_document(Document(sections, paper, spoken_voice(), title, foot=pieces))


def shopping_blocks(shopping: ShoppingList) -> list[Flowable]:
    """What it is for, a row for each balloon with a box to tick, what it costs, the air."""
    priced = shopping.total is not None
    head = [
        say("Got"),
        say("Buy"),
        say("Balloon"),
        say("Needed"),
        say("Spare"),
        say("Left over"),
    ]
    rows = []
    for purchase, amount in zip(shopping.purchases, shopping.costs(), strict=True):
        row = [
            "☐",
            strong(packs_words(purchase, spoken_voice())),
            plain(balloon_words(purchase, shopping.units, spoken_voice())),
            whole(purchase.needed),
            whole(purchase.spare),
            whole(purchase.to_buy - purchase.needed - purchase.spare),
        ]
        if priced and amount is not None and shopping.currency is not None:
            row.append(money_words(amount, shopping.currency, spoken_voice()))
        rows.append(tuple(row))
    sums = [
        "",
        "",
        strong(say("all together")),
        strong(whole(sum(p.needed for p in shopping.purchases))),
        strong(whole(sum(p.spare for p in shopping.purchases))),
        strong(whole(sum(p.to_buy - p.needed - p.spare for p in shopping.purchases))),
    ]
    shares = [28.0, 92.0, 150.0, 50.0, 46.0, 56.0]
    if priced and shopping.total is not None and shopping.currency is not None:
        head.append(say("Cost"))
        sums.append(strong(money_words(shopping.total, shopping.currency, spoken_voice())))
        shares.append(60.0)
    air = air_words(shopping.air_m3, shopping.pump_minutes, shopping.units, spoken_voice())
    blocks: list[Flowable] = [
        Words(
            say("For {pieces}.", pieces=strong(pieces_words(shopping.pieces, spoken_voice()))),
            after=8,
        ),
        Grid(
            tuple(head),
            (*rows, tuple(sums)),
            tuple(shares),
            frozenset(range(3, len(head))),
        ),
        Words(
            say("Whole packs, spares included. Left over is what the packs hold beyond that."),
            SMALL,
        ),
        Words(say("Air: {air} (estimates). Air only, no helium.", air=plain(air))),
    ]
    if not priced:
        blocks.insert(2, Words(plain(total_words(shopping, spoken_voice()))))
    return blocks
