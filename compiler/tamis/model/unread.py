"""Clauses that could not be read: what they say is told once, and what may be missing for it is not told again."""

from __future__ import annotations

from tamis.model.batch import Food, any_of
from tamis.model.mass import NOTHING
from tamis.model.recipe import Unread
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.syntax.items import Quantity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.model.called import Key
    from tamis.model.flow import Flow
    from tamis.syntax.document import Clause
    from tamis.syntax.items import QuantityKind

_WORD = pattern(r"[^\W\d_]+")
_AMOUNTS: tuple[QuantityKind, ...] = ("pieces", "mass", "volume")
_LONGEST = 4
"""Words in the name of a food."""


def unread_of(flow: Flow) -> Iterator[Unread]:
    """What may be food and is in nothing, in the order of the text."""
    for number, labour in enumerate(flow.labours):
        component = flow.actions[number].component
        for clause in labour.unread(flow.kitchen):
            if _may_be_food(clause, flow.kitchen):
                yield Unread(component, number, clause.text, clause.inner)
        for read in labour.references if flow.uncertain else ():
            if (number, read.clause.span) in flow.uncertain:
                yield Unread(component, number, read.name or read.clause.text, read.clause.inner)


def _may_be_food(clause: Clause, kitchen: Kitchen) -> bool:
    """Whether it begins with an amount, or names a food that is known."""
    first = next(iter(clause.items.items), None)
    if isinstance(first, Quantity) and first.kind in _AMOUNTS:
        return True
    one = nouns(kitchen.language).singular
    return any(foods_in([one(word) for word in _WORD.findall(clause.text.lower())], kitchen))


_ANYWHERE = -1
"""The number of no component: of all."""


def may_be_unread(flow: Flow, words: tuple[str, ...]) -> bool:
    """Whether a name that nothing answers to may be that of something in a clause that could not be read."""
    if flow.unread is None:
        flow.unread = {at: set() for at in range(len(flow.reading.components))}
        for at, keys in flow.unread.items():
            for clause in [clause for line in flow.lines_of(at) for clause in line.unread(flow.kitchen)]:
                keys.update(_keys(clause.text, flow.kitchen))
        flow.unread[_ANYWHERE] = {key for keys in flow.unread.values() for key in keys}
    if any(flow.unread[at] for at in flow.homes.get(words, ())):
        return True
    asked: list[Key] = any_of(words, flow.kitchen)
    asked += [("word", word) for word in words]
    return not flow.unread[_ANYWHERE].isdisjoint(asked)


def _keys(text: str, kitchen: Kitchen) -> Iterator[Key]:
    """The words of a clause, and all that the foods named in it may be called."""
    one = nouns(kitchen.language).singular
    words = [one(word) for word in _WORD.findall(text.lower())]
    yield from (("word", word) for word in words)
    for food in foods_in(words, kitchen):
        yield from food.keys()


def foods_in(words: list[str], kitchen: Kitchen) -> Iterator[Food]:
    """The known foods that some words name, the longest names first."""
    at = 0
    while at < len(words):
        for size in range(min(_LONGEST, len(words) - at), 0, -1):
            found = kitchen.larder.find(tuple(words[at : at + size]))
            if found is not None:
                yield Food.known_as(-1, tuple(words[at : at + size]), found.goods, NOTHING)
                at += size - 1
                break
        at += 1
