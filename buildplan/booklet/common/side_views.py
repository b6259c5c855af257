"""What stands, from the side, before and after a course is set on it: where free knots and balloons
hang until they are brought to where they are tied."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.drawing.course_side import WorkMoment, course_side
from buildplan.drawing.marks import Picture
from buildplan.instructions.coming import coming, is_first
from buildplan.sequence.model import Kind, Step


def side_views(book: Book, step: Step) -> tuple[Picture, ...]:
    """How what hangs is brought together in a step that sets chains on what stands; none of a
    step that has no plan, or where nothing hangs."""
    if not is_planned(book, step) or is_first(book.context, step):
        return ()
    tied = [operation.joints[0] for operation in step.of_kind(Kind.JOIN)]
    before, after = (_moment(book, step, number) for number in (step.number - 1, step.number))
    hangs = [one for one in tied if before.links.intersection(book.framework.links_at[one])]
    if not hangs:
        return ()
    alt = book.voice.say(
        "Step {number}, from the side, cut through the middle. Before: the free knots of what"
        " stands hang outwards, a hand brings {joint} to its place. After: the first person holds"
        " the joint from outside, the second locks it from above.",
        number=step.number,
        joint=hangs[0],
    )
    own = book.framework
    return (course_side(own, book.shape, before, after, hangs[0], book.voice, alt),)


def _moment(book: Book, step: Step, number: int) -> WorkMoment:
    """What there is, once `number` steps are done, of the piece or part that a step works on."""
    own = book.framework.built_with(step.of_kind(Kind.JOIN)[0].joints[0])
    links, tied = set[str](), set[str]()
    for one in book.steps[:number]:
        joins = one.of_kind(Kind.JOIN)
        tied |= {joint for operation in joins for joint in operation.joints}
        links |= {id_ for operation in joins for id_ in operation.links}
        links |= {id_ for long in coming(book.context, one) for id_ in long.chain.links}
    return WorkMoment(frozenset(links & own.link.keys()), frozenset(tied & {*own.joints}))
