"""Clauses that could not be read: what they say is told once, and what may be missing for it is not told again."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.model.batch import Food, answering, of_kind
from tamis.model.mass import NOTHING
from tamis.model.recipe import Unread
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Reference, VerbUse
from tamis.syntax.document import Clause
from tamis.syntax.items import Quantity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.model.called import Key
    from tamis.model.effects import Entry
    from tamis.model.flow import Flow
    from tamis.model.recipe import Action
    from tamis.reading.reading import ActionRead, ComponentRead, Event
    from tamis.syntax.document import Part
    from tamis.syntax.items import QuantityKind

_WORD = pattern(r"[^\W\d_]+")
_AMOUNTS: tuple[QuantityKind, ...] = ("pieces", "mass", "volume")
_NOT_CERTAIN = ("product-unknown", "product-ambiguous")
"""What is found of a name of which nobody knows what it brings along."""
_LONGEST = 4
"""Words in the name of a food."""


def unread(parts: Iterable[Part], events: Iterable[Event]) -> list[Clause]:
    """The brackets of a line that gave no event."""
    read = {event.clause.inner for event in events if not isinstance(event, VerbUse)}
    return [part for part in parts if isinstance(part, Clause) and part.inner not in read]


def lines_of(component: ComponentRead) -> Iterator[ActionRead]:
    """The lines of its steps."""
    for step in component.steps:
        yield from step.actions


def unread_of(actions: Iterable[Action], log: Iterable[Entry], kitchen: Kitchen) -> Iterator[Unread]:
    """What may be food and is in nothing, in the order of the text."""
    unknown = {
        (entry.action, entry.effect.span)
        for entry in log
        if isinstance(entry.effect, Diagnostic) and entry.effect.rule in _NOT_CERTAIN
    }
    for action in actions:
        for clause in unread(action.parts, action.reads):
            if _may_be_food(clause, kitchen):
                yield Unread(action.component, action.number, clause.text, clause.inner)
        for read in action.reads if unknown else ():
            if isinstance(read, Reference) and (action.number, read.clause.span) in unknown:
                yield Unread(action.component, action.number, read.name or read.clause.text, read.clause.inner)


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
        flow.unread = {
            at: {key for line in lines_of(component) for clause in unread(line.parts, line.events)
                 for key in _keys(clause.text, flow.kitchen)}
            for at, component in enumerate(flow.reading.components)
        }  # fmt: skip
        flow.unread[_ANYWHERE] = {key for keys in flow.unread.values() for key in keys}
    if any(flow.unread[at] for at in flow.homes.get(words, ())):
        return True
    asked: list[Key] = [*answering(words, flow.kitchen), *of_kind(words, flow.kitchen)]
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
