"""Where the work of a meanwhile meets what the work before it has left standing.

A line that takes up food of that goes on with it: *drain [the potatoes]*. A line that puts what the meanwhile has made
into that, in brackets or in plain words (*and whisk it into the pan*, *stir into [the gravy]*), does so from there on.
So does a line that puts what is in hand to what was left when the work turned to that.
"""

from __future__ import annotations

from itertools import islice

from tamis.model.batch import any_of
from tamis.model.called import all_keys
from tamis.model.rest_of import is_rest_word, own_names
from tamis.model.words import plain, vessel_noun
from tamis.reading.clauses import Ingredient, Reference, Tool
from tamis.reading.prose import prose_words
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.model.batch import Batch
    from tamis.model.hands import Hands
    from tamis.reading.reading import ActionRead

Words = tuple[str, ...]

_MOST_OPEN = 20
"""Batches among which the one that was left is looked for: no recipe has more lying open."""


def goes_back(walker: Hands, action: ActionRead, before: Batch) -> bool:
    """Whether a line of a meanwhile takes up the work before it: its first food is one of that."""
    first = next((event for event in action.events if isinstance(event, Ingredient | Reference)), None)
    if not isinstance(first, Reference):
        return False
    words = plain(first.name, walker.flow.kitchen.language)
    return _is_its(walker, before, words) and not _is_of(walker, walker.present, words)


def _is_its(walker: Hands, before: Batch, words: Words) -> bool:
    """Whether a name is of a batch, be it that it is made of what makes one."""
    if _is_of(walker, before, words):
        return True
    from tamis.model.made_of import is_made_of

    return is_made_of(walker.flow, before, words[-1] if words else "")


class Joins(NamedTuple):
    """Where in the file a meanwhile puts what it has made into the work before it, and by which words. `made` is what
    goes in, where that is not what is in hand."""

    place: int
    said: Span
    before: Batch
    made: Batch | None = None


def joins_at(walker: Hands, action: ActionRead, before: Batch | None, begun: bool) -> Joins | None:
    """Where a line of a meanwhile does so; None if it does not. `begun`: something has been made in the lines
    before."""
    kitchen = walker.flow.kitchen
    foods = [event for event in action.events if isinstance(event, Ingredient)]
    if before is None or not (begun or foods):
        return None
    begins = 0 if begun else foods[0].clause.span.end
    mine = {plain(food.name, kitchen.language)[-1:] for food in foods}
    tools = [event for event in action.events if isinstance(event, Tool) and not event.definite]
    own = {vessel_noun(tool.equipment.name, kitchen.language) for tool in tools}
    for place, names in sorted(_named(action, kitchen)):
        for words, span in names if place >= begins else ():
            if words not in mine and _lies_there(walker, before, words, own):
                return Joins(place, span, before)
    return None


def joins_left(walker: Hands, action: ActionRead, joins: Joins | None, apart: bool) -> Joins | None:
    """Where plain words of a line put what is in hand to the one thing that was left when that was taken up: *lay the
    strips across the tart*; not where the line `joins` something already, or works on something of its own, `apart`."""
    if joins is not None or apart or walker.present is None:
        return joins
    left = [batch for batch in islice(walker.open, _MOST_OPEN) if batch.origin == "left" and batch.left > 0]
    if len(left) != 1:
        return _taken_up(walker, action, walker.present)
    from tamis.reading.plain_names import put_to

    before = left[0]
    for place, names in put_to(action.parts, walker.flow.kitchen):
        for words, span in names:
            if _is_of(walker, walker.present, words):
                break
            named = words in own_names(walker) and not _is_named_later(walker, before, action)
            if named or _is_of(walker, before, words):
                return Joins(place, span, before)
    return None


def _taken_up(walker: Hands, action: ActionRead, present: Batch) -> Joins | None:
    """What a meanwhile has made, where plain words put it to what is in hand: *stir the browned flour into* …"""
    open_now = [batch for batch in islice(walker.open, _MOST_OPEN) if batch.origin == "meanwhile" and batch.left == 1]
    if not open_now:
        return None
    from tamis.reading.plain_names import put_in

    for place, names in put_in(action.parts, walker.flow.kitchen):
        for words, span in names:
            if _is_of(walker, present, words):
                break
            called = [batch for batch in open_now if _is_of(walker, batch, words[-1:])]
            if len(called) == 1 and not _is_named_later(walker, called[0], action):
                return Joins(place, span, present, called[0])
    return None


def _is_named_later(walker: Hands, batch: Batch, action: ActionRead) -> bool:
    return walker.flow.is_named_after(all_keys([batch.keys]), action.span.start, within=walker.component)


def _named(action: ActionRead, kitchen: Kitchen) -> Iterator[tuple[int, tuple[tuple[Words, Span], ...]]]:
    """The places at which a line puts food to something that is there, and by which names."""
    from tamis.reading.plain_names import put_to

    puts = prose_words(kitchen.language).puts
    yield from put_to(action.parts, kitchen)
    for event in [event for event in action.events if isinstance(event, Reference | Tool)]:
        is_there = isinstance(event, Reference) or event.definite
        if is_there and event.preposition.partition(" ")[0] in puts:
            inner = Span(event.clause.inner, event.clause.inner + len(event.clause.text))
            yield event.clause.span.start, ((plain(event.name, kitchen.language), inner),)


def _lies_there(walker: Hands, before: Batch, words: Words, own: set[str]) -> bool:
    """Whether a name is that of the work before, of what stayed behind in it, or of the vessel that it lies in."""
    if before.vessel and words[-1:] == (before.vessel,):
        return before.vessel not in own and (walker.present is None or walker.present.vessel != before.vessel)
    if _is_of(walker, walker.present, words):
        return False
    if before.lifted_out is not None and is_rest_word(words, walker.flow):
        return True
    return _is_of(walker, before, words) or words in own_names(walker)


def _is_of(walker: Hands, batch: Batch | None, words: Words) -> bool:
    kitchen = walker.flow.kitchen
    return batch is not None and batch.keys.has(any_of(words, kitchen))
