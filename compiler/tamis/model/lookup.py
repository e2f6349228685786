"""What `[the X]` means: the order in which batches, products, components and equipment are asked.

First what a share of X left behind; then the present batch, other open batches of the component, named products
and by-products, components, the dishes of used recipes, and last equipment. Two hits in one place are an error
that lists both.
"""

from __future__ import annotations

from tamis.model.batch import answering, called_so, of_kind
from tamis.model.called import all_keys
from tamis.model.described import unborne
from tamis.model.rest_of import dish_names, own_names, rest_called
from tamis.model.wanted import make, make_named, supply_batch
from tamis.model.words import before_joint, model_words, plain
from tamis.quantity.nouns import nouns
from tamis.reading.tables import tables
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
    from tamis.reading.clauses import Reference, Share


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


def look_up(walker: Hands, reference: Reference) -> Meaning | None:
    """The meaning of a reference where it stands; None where nothing answers to its name."""
    words = plain(reference.name, walker.flow.kitchen.language)
    found = _food(walker, words, reference.share)
    cut = _food_and_piece(words, walker.flow.kitchen.language)
    if found and not (cut and found.batch and not found.batch.is_named(words)):
        return found  # a food that is known in such pieces need not be cut here: that is asked next
    whole = _food(walker, cut[0], reference.share) if cut else None
    found = _cut_up(walker, cut, whole) if cut else None
    if found:
        return found
    kitchen = walker.flow.kitchen
    tool = kitchen.cupboard.find(words) or kitchen.cupboard.find(reference.name.split())
    if tool and not (cut and kitchen.larder.find(cut[0])):  # onion rings are no ring of the stove
        return Meaning(equipment=tool.item, rule="equipment", words=words)
    found = _loosely(walker, words, reference.share)
    if found is None and cut and whole and whole.batch:
        return whole._replace(unborne=(cut[1],))
    return found


def _loosely(walker: Hands, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    """By fewer words than were said, or by other ones."""
    if here := _open_mixture(walker, words):
        return here
    for start in range(1, len(words)):
        found = _food(walker, words[start:], share)
        if found:
            return found._replace(unborne=unborne(walker, words[:start], found.batch))
    found = _in_pieces(walker, words) or _of_kind(walker, words) or _tool_at_hand(walker, words)
    found = found or _cut_alone(walker, words)
    first = before_joint(words, walker.flow.kitchen.language)
    if found is None and first:
        found = _food(walker, first, share)
    if found is None and words and words[-1] in tables(walker.flow.kitchen.language).made:
        return _made_of(walker, words[:-1], share)
    rest = rest_called(walker, words) if found is None else None
    if rest is not None:
        return Meaning(rest, present=rest is walker.present, rule="left-behind", words=words)
    if found is None and walker.present and words and words in own_names(walker):
        return Meaning(walker.present, present=True, rule="own-name", words=words)
    return found or _made_so(walker, words) or _dish(walker, words)


def _dish(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The fritters*, as the title or `makes:` calls the dish: what was made and no line asks for by a name of its
    own."""
    flow = walker.flow
    if not words or words not in dish_names(flow):
        return None
    asked = flow.askers()
    names = flow.component_names
    unasked = [at for at in flow.component_batches if asked.keys().isdisjoint((names[at], names[at][-1:]))]
    made = [flow.component_batches[at] for at in unasked]
    return _one([batch for batch in made if batch is not None and batch.left > 0], words, "own-name")


def _food_and_piece(words: tuple[str, ...], language: str) -> tuple[tuple[str, ...], str] | None:
    """The food and the noun of *egg slices*; None where no piece is named."""
    return (words[:-1], words[-1]) if len(words) > 1 and words[-1] in model_words(language).pieces else None


def _cut_up(walker: Hands, cut: tuple[tuple[str, ...], str], whole: Meaning | None) -> Meaning | None:
    """*The egg slices*: eggs that the text says to be sliced, or what was divided into slices and holds eggs."""
    from tamis.model.cut_up import cut_so

    batches = cut_so(walker, *cut)
    if whole and whole.batch in batches:
        return whole._replace(also=tuple(batch for batch in whole.also if batch in batches), rule="pieces")
    found = _one(batches, cut[0], "pieces")
    return found and found._replace(present=found.batch is walker.present)


def _open_mixture(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The flour paste* is the flour that was put by here, before it is a choux paste that stands elsewhere."""
    flow = walker.flow
    if len(words) < 2 or words[-1] not in tables(flow.kitchen.language).made or not walker.open:
        return None
    called = called_so(words[-1:])
    if (walker.present and walker.present.keys.has(called)) or walker.open.called(called, flow.index):
        return None
    return _one(walker.open.called(answering(words[:-1], flow.kitchen), flow.index), words[:-1])


def _made_of(walker: Hands, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    """*The egg mixture* is what holds the eggs, *the mixture* what is worked on."""
    language = walker.flow.kitchen.language
    for name in (words, before_joint(words, language)):
        found = _food(walker, (*name[:-1], nouns(language).singular(name[-1])), share) if name else None
        if found:
            return found
    if words and len(walker.open) == 1:  # the dry ingredients
        return Meaning(next(iter(walker.open)), rule="only-open", words=words)
    return Meaning(walker.present, present=True, rule="in-hand") if walker.present and not words else None


def _in_pieces(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*One of the discs*, where something was divided into discs."""
    if not words:
        return None
    flow = walker.flow
    one = nouns(flow.kitchen.language).singular
    for tier in (walker.open, flow.named, flow.made):
        divided = tier.called([("pieces", words[-1])], flow.index)
        found = _one(
            [batch for batch in divided if batch.pieces and one(batch.pieces[1]) == words[-1]], words, "pieces"
        )
        if found:
            return found._replace(unborne=unborne(walker, words[:-1], found.batch))
    return None


def _cut_alone(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The slices*, *the fried slices*: the one thing that was cut so, with or without a number."""
    from tamis.model.cut_up import all_cut_so

    return _borne_out(walker, words, _one(all_cut_so(walker, words[-1]) if words else [], words, "pieces"))


def _made_so(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The syrup*: the one thing that is made of what makes a syrup."""
    from tamis.model.made_of import all_made_of

    return _borne_out(walker, words, _one(all_made_of(walker, words[-1]) if words else [], words, "made-of"))


def _borne_out(walker: Hands, words: tuple[str, ...], found: Meaning | None) -> Meaning | None:
    """What was found by its last word, if it bears out the words before."""
    if found is None or unborne(walker, words[:-1], found.batch):
        return None
    return found._replace(present=found.batch is walker.present)


def _of_kind(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The meat*, *the pasta*: what holds food of that kind, the nearest first."""
    flow, keys = walker.flow, of_kind(words, walker.flow.kitchen)
    return _nearest(walker, words, keys, "kind") or _one(flow.made.called(keys, flow.index), words, "kind")


def _nearest(walker: Hands, words: tuple[str, ...], keys: Sequence[Key], rule: Rule = "named") -> Meaning | None:
    """What is in hand, lies open, was named or left, by one of these keys."""
    flow = walker.flow
    if walker.present and walker.present.keys.has(keys):
        return Meaning(walker.present, present=True, rule=rule, words=words)
    tiers = (walker.open, flow.named, flow.byproducts)
    return next((found for tier in tiers if (found := _one(tier.called(keys, flow.index), words, rule))), None)


def _tool_at_hand(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The beans*, where the component has used baking beans."""
    tool = walker.tool_called(words[0]) if len(words) == 1 else None
    return Meaning(equipment=tool.equipment, rule="equipment-here", words=words) if tool else None


def _food(walker: Hands, words: tuple[str, ...], share: Share | None) -> Meaning | None:
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
            return _one(both, words, "share-left")
    if not words:
        return None
    if _lies_in(walker, words):
        return Meaning(walker.present, present=True, rule="pieces", words=words)
    make_named(words, walker)
    return _called_so(walker, words) or _answering(walker, words)


def _lies_in(walker: Hands, words: tuple[str, ...]) -> bool:
    """Whether the batch in hand lies in pieces so called: *the fillets* are those just cut, before any that stand
    further down. What it lies in may be a vessel: *the ramekins* are those."""
    kitchen, batch = walker.flow.kitchen, walker.present
    if batch is None or batch.pieces is None or batch.pieces[1] == "" or kitchen.cupboard.find(words):
        return False
    return len(words) == 1 and nouns(kitchen.language).singular(batch.pieces[1]) == words[0]


def _called_so(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """By its whole name: *the sauce* is the component of that name before it is the soy sauce in the pan."""
    flow = walker.flow
    keys = called_so(words)
    if walker.present and walker.present.keys.has(keys):
        return Meaning(walker.present, present=True, words=words)
    for tier in (walker.open, flow.named, flow.byproducts):
        found = _one(tier.called(keys, flow.index), words)
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
    return _nearest(walker, words, keys) or _like_component(walker, words, keys)


def _one(batches: Sequence[Batch], words: tuple[str, ...], rule: Rule = "named") -> Meaning | None:
    """One of the batches that answer: what is left before what is gone, a batch so called before one that holds it."""
    if not batches:
        return None
    there = [batch for batch in batches if batch.left > 0 and batch.taken_at is None] or [
        batch for batch in batches if batch.left > 0
    ]
    chosen = there or list(batches)
    if len(chosen) > 1:
        chosen = [batch for batch in chosen if batch.is_named(words)] or chosen
    return Meaning(chosen[0], also=tuple(chosen[1:]), rule=rule, words=words)


def _component(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """A component by its name; it is made first if it stands further down."""
    flow = walker.flow
    homes = flow.homes.get(words, ())
    named = [at for at in homes if at != walker.component and words == flow.component_names[at]]
    return _one([batch for batch in (make(flow, at, walker) for at in named) if batch], words)


def _like_component(walker: Hands, words: tuple[str, ...], keys: Sequence[Key]) -> Meaning | None:
    """A component by the last word of its name, else by a food in one that is made already. Where the one in hand is
    called so as well, it is that, but for one that nothing else asks for."""
    flow = walker.flow
    homes = flow.homes.get(words, ())
    like = [at for at in homes if at != walker.component and flow.component_names[at][-1:] == words]
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
    return _one(batches, words)


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


def nearest_name(walker: Hands, reference: Reference) -> str | None:
    """The name in reach whose spelling is nearest to one that nothing answers to."""
    from tamis.quantity.near import nearest

    flow = walker.flow
    batches = [*walker.open, *flow.named, *flow.byproducts, *([walker.present] if walker.present else [])]
    names = {" ".join(words) for kind, words in all_keys(batch.keys for batch in batches) if kind in ("name", "food")}
    names |= {" ".join(name) for at, name in enumerate(flow.component_names) if at != walker.component}
    names |= {" ".join(plain(supply.title, walker.flow.kitchen.language)) for supply in flow.used.values()}
    return nearest(" ".join(plain(reference.name, walker.flow.kitchen.language)), sorted(names))
