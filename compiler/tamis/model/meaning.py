"""What a name means where it stands: a batch by its name or by its food, a component, a dish of another recipe."""

from __future__ import annotations

from tamis.model.batch import answering, called_so
from tamis.model.rest_of import rest_called
from tamis.model.wanted import make, make_named, supply_batch
from tamis.model.words import piece_called
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Equipment
    from tamis.model.batch import Batch
    from tamis.model.called import Key
    from tamis.model.effects import Rule
    from tamis.model.flow import Flow
    from tamis.model.hands import Hands
    from tamis.reading.clauses import Share


class Meaning(NamedTuple):
    """What a reference means: a batch (the present one or another), or equipment. `also` are other hits,
    `unborne` the words of the name that nothing there bears out: *resting* of the pan juices. `rule` is how it was
    found, by which `words`."""

    batch: Batch | None = None
    present: bool = False
    equipment: Equipment | None = None
    also: tuple[Batch, ...] = ()
    unborne: tuple[str, ...] = ()
    rule: Rule = "named"
    words: tuple[str, ...] = ()


def by_name(walker: Hands, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    """What answers to a name as it stands, or of which a share is left; None where nothing does."""
    flow = walker.flow
    if share:
        # Of a whole product a second share is one of the whole, and not of what a first share of it went into.
        of_rest = share.kind == "rest" or share.another or share.of_rest
        whole = not of_rest and walker.present is not None
        keys = [("name", words)] if whole else answering(words, flow.kitchen)
        opened = walker.open.shared_whole if whole else walker.open.shared
        if words or whole:
            left = [*opened.called(keys, flow.index), *flow.shared(keys)]
        else:
            left = [*opened, *flow.all_shared()]
        if whole and not left:  # of 500 g of which half went in before: it is of those 500 g, too
            left = walker.open.rests.called(answering(words, flow.kitchen), flow.index)
        if left:
            both = list(dict.fromkeys(left))  # one that is named here is found in both places
            return one_meant(both, words, "share-left")
    if not words:
        return None
    if _lies_in(walker, words):
        return Meaning(walker.present, present=True, rule="pieces", words=words)
    make_named(words, walker)
    found = _called_so(walker, words)
    if found is None:
        return _answering(walker, words)
    if found.batch is not None and found.batch.left == 0:  # gone into a braise, and lifted out of it again
        there = nearest_of(walker, words, answering(words, flow.kitchen))
        return there if there is not None and there.batch is not None and there.batch.left > 0 else found
    return found


def nearest_of(walker: Hands, words: tuple[str, ...], keys: Sequence[Key], rule: Rule = "named") -> Meaning | None:
    """What is in hand, lies open, was named or left, by one of these keys."""
    flow = walker.flow
    if walker.present and walker.present.keys.has(keys):
        return Meaning(walker.present, present=True, rule=rule, words=words)
    tiers = (walker.open, flow.named, flow.byproducts)
    return next((found for tier in tiers if (found := one_meant(tier.called(keys, flow.index), words, rule))), None)


def one_meant(batches: Sequence[Batch], words: tuple[str, ...], rule: Rule = "named") -> Meaning | None:
    """One of the batches that answer: what is left before what is gone, a batch so called before one that holds it."""
    if not batches:
        return None
    there = [batch for batch in batches if batch.left > 0 and batch.taken_at is None] or [
        batch for batch in batches if batch.left > 0
    ]
    chosen = there or list(batches)
    if len(chosen) > 1:
        chosen = [batch for batch in chosen if batch.is_named(words)] or chosen
    if len(chosen) > 1:  # the seasoning, and a sauce that holds some of it
        chosen = [batch for batch in chosen if batch.label == words] or chosen
    return Meaning(chosen[0], also=tuple(chosen[1:]), rule=rule, words=words)


def _lies_in(walker: Hands, words: tuple[str, ...]) -> bool:
    """Whether the batch in hand lies in pieces so called: *the fillets* are those just cut, before any that stand
    further down. What it lies in may be a vessel: *the ramekins* are those."""
    kitchen, batch = walker.flow.kitchen, walker.present
    if batch is None or batch.pieces is None or kitchen.cupboard.find(words):
        return False
    return len(words) == 1 and piece_called(batch.pieces[1], kitchen.language) == words[0]


def _called_so(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """By its whole name: *the sauce* is the component of that name before it is the soy sauce in the pan."""
    flow = walker.flow
    keys = called_so(words)
    if walker.present and walker.present.keys.has(keys):
        return Meaning(walker.present, present=True, words=words)
    for tier in (walker.open, flow.named, flow.byproducts):
        found = one_meant(tier.called(keys, flow.index), words)
        if found:
            return found if tier is walker.open else _or_component(walker, words, found)
    return _component(walker, words) or _supply(walker, words)


def _or_component(walker: Hands, words: tuple[str, ...], found: Meaning) -> Meaning:
    """What was left or named so, and a component of the same name: where both are there, either may be meant; what has
    gone into something is not there any more."""
    flow = walker.flow
    batch = found.batch
    assert batch is not None
    here = batch.product is not None and flow.products[batch.product].component == walker.component
    homes = flow.homes.get(words, ())
    if not batch.is_named(words) or (here and not any(at in flow.component_batches for at in homes)):
        return found
    component = _component(walker, words)
    if component is None or component.batch is None or component.batch is batch or component.batch.left == 0:
        return found
    return found._replace(also=(*found.also, component.batch)) if batch.left > 0 else component


def _answering(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """By the last word of a name or food, or another name for the same goods."""
    keys = answering(words, walker.flow.kitchen)
    return nearest_of(walker, words, keys) or _like_component(walker, words, keys)


def _component(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """A component by its name; it is made first if it stands further down."""
    flow = walker.flow
    homes = flow.homes.get(words, ())
    named = [at for at in homes if at != walker.component and words == flow.component_names[at]]
    return one_meant([batch for batch in (make(flow, at, walker) for at in named) if batch], words)


def _like_component(walker: Hands, words: tuple[str, ...], keys: Sequence[Key]) -> Meaning | None:
    """A component by the last word of its name, else by a food in one that is made already. Where the one in hand is
    called so as well, it is that, but for one that nothing else asks for."""
    flow = walker.flow
    homes = flow.homes.get(words, ())
    like = [at for at in homes if at != walker.component]
    own = flow.component_names[walker.component]
    if walker.present is not None and own[-1:] == words:
        like = [at for at in like if not _is_apart(flow, at, own)]
        if not like:
            rest = rest_called(walker, words)  # the meat goes back into the soup that it was lifted out of
            if rest is not None and rest is not walker.present:
                return Meaning(rest, rule="left-behind", words=words)
            return Meaning(walker.present, present=True, rule="own-name", words=words)
    batches = [batch for batch in (make(flow, at, walker) for at in like) if batch]
    if not batches:
        batches = flow.made.called(keys, flow.index)
    return one_meant(batches, words)


def _is_apart(flow: Flow, at: int, own: tuple[str, ...]) -> bool:
    """Within *basic batter*, whether *the batter* is not a cocoa batter: that asks for the basic one, or is asked for
    by its own name."""
    askers = flow.askers()
    return at in askers.get(own, ()) or flow.component_names[at] in askers


def _supply(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    flow = walker.flow
    stem = flow.used_by_name.get(words) if flow.used else None
    if stem is None:
        return None
    return Meaning(supply_batch(stem, flow.used[stem], walker), rule="used-recipe", words=words)
