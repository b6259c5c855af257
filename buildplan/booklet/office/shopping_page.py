"""The shopping list as a page: to tick off in the shop."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.business.buying.money import money_words
from buildplan.business.buying.shopping import ShoppingList, packs_words, pieces_words, total_words
from buildplan.document.blocks import Words
from buildplan.document.paper import Paper
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, plain, strong
from buildplan.evaluation import balloon_words
from buildplan.evaluation.figures import air_words
from buildplan.language.voice import Voice

SHARES = (28.0, 92.0, 150.0, 50.0, 46.0, 56.0)
COST_SHARE = 60.0


def print_shopping(shopping: ShoppingList, paper: Paper, voice: Voice) -> bytes:
    """The list as a tagged PDF. The same list gives the same bytes."""
    pieces = pieces_words(shopping.pieces, voice)
    title = voice.say("Shopping list for {pieces}", pieces=pieces)
    sections = [Section(voice.say("Shopping list"), priced_blocks(shopping, voice), titled=True)]
    return print_document(Document(sections, paper, voice, title, foot=pieces))


def priced_blocks(shopping: ShoppingList, voice: Voice) -> list[Flowable]:
    """What it is for, a row for each balloon with a box to tick, what it costs, the air. Where
    prices are missing, what is missing."""
    if shopping.total is None or shopping.currency is None:
        counted = counted_blocks(shopping, voice)
        return [*counted[:2], Words(plain(total_words(shopping, voice))), *counted[2:]]
    costs = [
        "" if amount is None else money_words(amount, shopping.currency, voice)
        for amount in shopping.costs()
    ]
    column = [
        voice.say("Cost"),
        *costs,
        strong(money_words(shopping.total, shopping.currency, voice)),
    ]
    rows = [(*row, cost) for row, cost in zip(_rows(shopping, voice), column, strict=True)]
    return _blocks(shopping, rows, (*SHARES, COST_SHARE), voice)


def counted_blocks(shopping: ShoppingList, voice: Voice) -> list[Flowable]:
    """The same without any cost, for pages that others see."""
    return _blocks(shopping, _rows(shopping, voice), SHARES, voice)


def _blocks(
    shopping: ShoppingList,
    rows: Sequence[Sequence[str]],
    shares: Sequence[float],
    voice: Voice,
) -> list[Flowable]:
    air = air_words(shopping.air_m3, shopping.pump_minutes, shopping.units, voice)
    return [
        Words(
            voice.say("For {pieces}.", pieces=strong(pieces_words(shopping.pieces, voice))), after=8
        ),
        Grid(rows[0], rows[1:], shares, frozenset(range(3, len(rows[0])))),
        Words(
            voice.say(
                "Whole packs, spares included. Left over is what the packs hold beyond that."
            ),
            SMALL,
        ),
        Words(voice.say("Air: {air} (estimates). Air only, no helium.", air=plain(air))),
    ]


def _rows(shopping: ShoppingList, voice: Voice) -> list[tuple[str, ...]]:
    """The head, a row for each balloon, and the sums, without costs."""
    head = (
        voice.say("Got"),
        voice.say("Buy"),
        voice.say("Balloon"),
        voice.say("Needed"),
        voice.say("Spare"),
        voice.say("Left over"),
    )
    rows = [
        (
            "☐",
            strong(packs_words(purchase, voice)),
            plain(voice.tell(balloon_words.bought(purchase, shopping.units))),
            voice.whole(purchase.needed),
            voice.whole(purchase.spare),
            voice.whole(purchase.to_buy - purchase.needed - purchase.spare),
        )
        for purchase in shopping.purchases
    ]
    bought = shopping.purchases
    sums = (
        "",
        "",
        strong(voice.say("all together")),
        strong(voice.whole(sum(p.needed for p in bought))),
        strong(voice.whole(sum(p.spare for p in bought))),
        strong(voice.whole(sum(p.to_buy - p.needed - p.spare for p in bought))),
    )
    return [head, *rows, sums]
