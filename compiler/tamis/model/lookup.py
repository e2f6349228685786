"""What `[the X]` means: the order in which batches, products, components and equipment are asked.

First what a share of X left behind; then the present batch, other open batches of the component, named products
and by-products, components, the dishes of used recipes, and last equipment. Two hits in one place are an error
that lists both.
"""

from __future__ import annotations

from tamis.model.batch import Batch, Origin
from tamis.model.words import before_joint, plain
from tamis.quantity.nouns import nouns
from tamis.reading.tables import tables
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Equipment
    from tamis.model.flow import Flow
    from tamis.model.walker import Walker
    from tamis.reading.clauses import Reference, Share


# Of these a second share is one of the whole, and not of what a first share of it went into.
_NAMED: tuple[Origin, ...] = ("named", "by-product", "component", "used-recipe")


class Meaning(NamedTuple):
    """What a reference means: a batch (the present one or another), or equipment. `also` are other hits."""

    batch: Batch | None = None
    present: bool = False
    equipment: Equipment | None = None
    also: tuple[Batch, ...] = ()


def look_up(walker: Walker, reference: Reference) -> Meaning | None:
    """The meaning of a reference where it stands; None where nothing answers to its name."""
    words = plain(reference.name, walker.flow.kitchen.language)
    found = _food(walker, words, reference.share)
    if found:
        return found
    cupboard = walker.flow.kitchen.cupboard
    tool = cupboard.find(words) or cupboard.find(reference.name.split())
    if tool:
        return Meaning(equipment=tool.item)
    for start in range(1, len(words)):
        found = _food(walker, words[start:], reference.share)
        if found:
            return found
    found = _in_pieces(walker, words) or _of_kind(walker, words) or _tool_at_hand(walker, words)
    first = before_joint(words, walker.flow.kitchen.language)
    if found is None and first:
        found = _food(walker, first, reference.share)
    if found is None and words and words[-1] in tables(walker.flow.kitchen.language).made:
        return _made_of(walker, words[:-1], reference.share)
    if found is None and walker.present and words and words in _own_names(walker):
        return Meaning(walker.present, present=True)
    return found


def _own_names(walker: Walker) -> tuple[tuple[str, ...], ...]:
    """What the component that is being made will be called: *serve with the gravy*."""
    name = walker.flow.component_names[walker.component]
    return name, name[-1:]


def _made_of(walker: Walker, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    """*The egg mixture* is what holds the eggs, *the mixture* what is worked on."""
    language = walker.flow.kitchen.language
    for name in (words, before_joint(words, language)):
        found = _food(walker, (*name[:-1], nouns(language).singular(name[-1])), share) if name else None
        if found:
            return found
    there = list(walker.open)
    if words and len(there) == 1:  # the dry ingredients
        return Meaning(there[0])
    return Meaning(walker.present, present=True) if walker.present and not words else None


def _in_pieces(walker: Walker, words: tuple[str, ...]) -> Meaning | None:
    """*One of the discs*, where something was divided into discs."""
    made = [batch for batch in walker.flow.component_batches.values() if batch]
    for tier in (walker.open, walker.flow.named(), made):
        named = (
            [
                batch
                for batch in tier
                if batch.pieces and nouns(walker.flow.kitchen.language).singular(batch.pieces[1]) == words[-1:][0]
            ]
            if words
            else []
        )
        if named:
            return _one(named, words)
    return None


def _of_kind(walker: Walker, words: tuple[str, ...]) -> Meaning | None:
    """*The meat*, *the pasta*: what holds food of that kind, the nearest first."""
    flow, kitchen = walker.flow, walker.flow.kitchen
    if walker.present and walker.present.holds_kind(words, kitchen):
        return Meaning(walker.present, present=True)
    made = [batch for batch in flow.component_batches.values() if batch]
    for tier in (walker.open, flow.named(), flow.byproducts(), made):
        found = _one([batch for batch in tier if batch.holds_kind(words, kitchen)], words)
        if found:
            return found
    return None


def _tool_at_hand(walker: Walker, words: tuple[str, ...]) -> Meaning | None:
    """*The beans*, where the component has used baking beans."""
    for tool in reversed(walker.tools):
        if len(words) == 1 and plain(tool.equipment.name, walker.flow.kitchen.language)[-1:] == words:
            return Meaning(equipment=tool.equipment)
    return None


def _food(walker: Walker, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    flow = walker.flow
    if share:
        left = [batch for batch in walker.open.shared() if _answers(batch, words, flow)]
        left += [batch for batch in flow.shared() if _answers(batch, words, flow)]
        if share.kind != "rest" and not share.another and walker.present is not None:
            left = [batch for batch in left if words in batch.names and batch.origin in _NAMED]
        if left:
            return _one(list(dict.fromkeys(left)), words)  # one that is named here is found in both places
    if not words:
        return None
    flow.make_named(words, walker.component)
    return _called_so(walker, words) or _answering(walker, words)


def _called_so(walker: Walker, words: tuple[str, ...]) -> Meaning | None:
    """By its whole name: *the sauce* is the component of that name before it is the soy sauce in the pan."""
    flow = walker.flow
    if walker.present and walker.present.is_called(words):
        return Meaning(walker.present, present=True)
    for tier in (walker.open, flow.named(), flow.byproducts()):
        found = _one([batch for batch in tier if batch.is_called(words)], words)
        if found:
            return found if tier is walker.open else _or_component(walker, words, found)
    return _component(walker, words) or _supply(flow, words)


def _or_component(walker: Walker, words: tuple[str, ...], found: Meaning) -> Meaning:
    """What was left or named so, and a component of the same name: where both are there, either may be meant; what has
    gone into something is not there any more."""
    flow = walker.flow
    batch = found.batch
    assert batch is not None
    here = batch.product is not None and flow.products[batch.product].component == walker.component
    homes = flow.homes.get(words, ())
    if words not in batch.names or (here and not any(at in flow.component_batches for at in homes)):
        return found
    component = _component(walker, words)
    if component is None or component.batch is None or component.batch is batch or component.batch.left == 0:
        return found
    return found._replace(also=(*found.also, component.batch)) if batch.left > 0 else component


def _answering(walker: Walker, words: tuple[str, ...]) -> Meaning | None:
    """By the last word of a name or food, or another name for the same goods."""
    flow, kitchen = walker.flow, walker.flow.kitchen
    if walker.present and walker.present.answers_to(words, kitchen):
        return Meaning(walker.present, present=True)
    for tier in (walker.open, flow.named(), flow.byproducts()):
        found = _one([batch for batch in tier if batch.answers_to(words, kitchen)], words)
        if found:
            return found
    return _like_component(walker, words)


def _answers(batch: Batch, words: tuple[str, ...], flow: Flow) -> bool:
    return not words or batch.answers_to(words, flow.kitchen)


def _one(batches: Sequence[Batch], words: tuple[str, ...]) -> Meaning | None:
    """One of the batches that answer: what is left before what is gone, a batch so called before one that holds it."""
    if not batches:
        return None
    there = [batch for batch in batches if batch.left > 0 and batch.taken_at is None] or [
        batch for batch in batches if batch.left > 0
    ]
    chosen = there or list(batches)
    if len(chosen) > 1:
        chosen = [batch for batch in chosen if words in batch.names] or chosen
    return Meaning(chosen[0], also=tuple(chosen[1:]))


def _component(walker: Walker, words: tuple[str, ...]) -> Meaning | None:
    """A component by its name; it is made first if it stands further down."""
    flow = walker.flow
    homes = flow.homes.get(words, ())
    named = [at for at in homes if at != walker.component and words == flow.component_names[at]]
    return _one([batch for batch in (flow.make(at, walker.component) for at in named) if batch], words)


def _like_component(walker: Walker, words: tuple[str, ...]) -> Meaning | None:
    """A component by the last word of its name, else by a food in one that is made already."""
    flow = walker.flow
    homes = flow.homes.get(words, ())
    like = [at for at in homes if at != walker.component and flow.component_names[at][-1:] == words]
    batches = [batch for batch in (flow.make(at, walker.component) for at in like) if batch]
    if not batches:
        made = flow.component_batches.values()
        batches = [batch for batch in made if batch and batch.answers_to(words, flow.kitchen)]
    return _one(batches, words)


def _supply(flow: Flow, words: tuple[str, ...]) -> Meaning | None:
    language = flow.kitchen.language
    for stem, supply in flow.used.items():
        if words in (plain(supply.title, language), plain(stem.replace("-", " "), language)):
            return Meaning(flow.supply_batch(stem, supply))
    return None


def nearest_name(walker: Walker, reference: Reference) -> str | None:
    """The name in reach whose spelling is nearest to one that nothing answers to."""
    from tamis.quantity.near import nearest

    flow = walker.flow
    batches = [*walker.open, *flow.named(), *flow.byproducts(), *([walker.present] if walker.present else [])]
    names = {" ".join(name) for batch in batches for name in batch.names}
    names |= {" ".join(food.words) for batch in batches for food in batch.foods}
    names |= {" ".join(name) for at, name in enumerate(flow.component_names) if at != walker.component}
    names |= {" ".join(plain(supply.title, walker.flow.kitchen.language)) for supply in flow.used.values()}
    return nearest(" ".join(plain(reference.name, walker.flow.kitchen.language)), sorted(names))
