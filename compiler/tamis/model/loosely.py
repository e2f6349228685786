"""What a name means to which nothing answers as it stands: by fewer words than were said, or by other ones."""

from __future__ import annotations

from tamis.model.batch import answering, called_so, of_kind
from tamis.model.described import unborne
from tamis.model.meaning import Meaning, by_name, nearest_of, one_meant
from tamis.model.rest_of import dish_names, own_names, rest_called
from tamis.model.words import before_joint, piece_called, plain
from tamis.quantity.nouns import nouns
from tamis.reading.tables import tables
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.batch import Batch
    from tamis.model.hands import Hands
    from tamis.reading.clauses import Share


def loosely(walker: Hands, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    """By fewer words than were said, or by other ones."""
    if here := _open_mixture(walker, words):
        return here
    for start in range(1, len(words)):
        found = by_name(walker, words[start:], share)
        if found:
            return found._replace(unborne=unborne(walker, words[:start], found.batch))
    found = _in_pieces(walker, words) or _of_kind(walker, words) or _tool_at_hand(walker, words)
    found = found or _cut_alone(walker, words, share)
    first = before_joint(words, walker.flow.kitchen.language)
    if found is None and first:
        found = by_name(walker, first, share)
    if found is None and words and words[-1] in tables(walker.flow.kitchen.language).made:
        return _made_of(walker, words[:-1], share)
    rest = rest_called(walker, words) if found is None else None
    if rest is not None:
        return Meaning(rest, present=rest is walker.present, rule="left-behind", words=words)
    if found is None and walker.present and words and words in own_names(walker):
        return Meaning(walker.present, present=True, rule="own-name", words=words)
    return found or _made_so(walker, words, share) or _dish(walker, words)


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
    return one_meant([batch for batch in made if batch is not None and batch.left > 0], words, "own-name")


def _open_mixture(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The flour paste* is the flour that was put by here, before it is a choux paste that stands elsewhere."""
    flow = walker.flow
    if len(words) < 2 or words[-1] not in tables(flow.kitchen.language).made or not walker.open:
        return None
    called = called_so(words[-1:])
    if (walker.present and walker.present.keys.has(called)) or walker.open.called(called, flow.index):
        return None
    return one_meant(walker.open.called(answering(words[:-1], flow.kitchen), flow.index), words[:-1])


def _made_of(walker: Hands, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    """*The egg mixture* is what holds the eggs, *the mixture* what is worked on."""
    language = walker.flow.kitchen.language
    for name in (words, before_joint(words, language)):
        found = by_name(walker, (*name[:-1], nouns(language).singular(name[-1])), share) if name else None
        if found:
            return found
    for part in _parts_of(walker, words):  # of eggs that were separated
        found = nearest_of(walker, part, answering(part, walker.flow.kitchen))
        if found:
            return found
    if words and len(walker.open) == 1:  # the dry ingredients
        return Meaning(next(iter(walker.open)), rule="only-open", words=words)
    return Meaning(walker.present, present=True, rule="in-hand") if walker.present and not words else None


def _parts_of(walker: Hands, words: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """The names of the parts of a food: those of the yolk and the white of an egg."""
    larder = walker.flow.kitchen.larder
    found = larder.find(words) if words else None
    for part in found.goods.parts if found else ():
        goods = larder.get(part.id)
        if goods is not None:
            yield plain(goods.name, walker.flow.kitchen.language)


def _in_pieces(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*One of the discs*, where something was divided into discs."""
    if not words:
        return None
    flow = walker.flow
    language = flow.kitchen.language
    for tier in (walker.open, flow.named, flow.made):
        divided = tier.called([("pieces", words[-1])], flow.index)
        found = one_meant(
            [batch for batch in divided if batch.pieces and piece_called(batch.pieces[1], language) == words[-1]],
            words,
            "pieces",
        )
        if found:
            return found._replace(unborne=unborne(walker, words[:-1], found.batch))
    return None


def _cut_alone(walker: Hands, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    """*The slices*, *the fried slices*: the one thing that was cut so, with or without a number."""
    from tamis.model.cut_up import all_cut_so

    cut = all_cut_so(walker, words[-1]) if words else []
    if len(cut) > 1:  # the soaked slices, beside those that are dry
        cut = [batch for batch in cut if _was_so(walker, words[:-1], batch)] or cut
    return _borne_out(walker, words, one_meant(_left_of(walker, cut, share), words, "pieces"))


def _was_so(walker: Hands, words: tuple[str, ...], batch: Batch) -> bool:
    """Whether the last line that worked on a batch did what one of the words says: *soaked*."""
    verbs = {verb.base for word in words if (verb := walker.flow.kitchen.verbs.participle(word))}
    last = None if batch.last is None else walker.flow.actions[batch.last]
    return last is not None and any(use.verb.base in verbs for use in last.verbs)


def _left_of(walker: Hands, batches: list[Batch], share: Share | None) -> list[Batch]:
    """Those of which a share has left something, where that is asked for: *the rest of the slices*."""
    if len(batches) < 2 or share is None or share.kind != "rest":
        return batches
    left = {*walker.open.shared, *walker.flow.all_shared()}
    return [batch for batch in batches if batch in left] or batches


def _made_so(walker: Hands, words: tuple[str, ...], share: Share | None) -> Meaning | None:
    """*The syrup*: the one thing that is made of what makes a syrup; *the other half of the pastry*, what is left of
    it."""
    from tamis.model.made_of import all_made_of

    made = _left_of(walker, all_made_of(walker, words[-1]) if words else [], share)
    return _borne_out(walker, words, one_meant(made, words, "made-of"))


def _borne_out(walker: Hands, words: tuple[str, ...], found: Meaning | None) -> Meaning | None:
    """What was found by its last word, if it bears out the words before."""
    if found is None or unborne(walker, words[:-1], found.batch):
        return None
    return found._replace(present=found.batch is walker.present)


def _of_kind(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The meat*, *the pasta*: what holds food of that kind, the nearest first."""
    flow, keys = walker.flow, of_kind(words, walker.flow.kitchen)
    return nearest_of(walker, words, keys, "kind") or one_meant(flow.made.called(keys, flow.index), words, "kind")


def _tool_at_hand(walker: Hands, words: tuple[str, ...]) -> Meaning | None:
    """*The beans*, where the component has used baking beans."""
    tool = walker.tool_called(words[0]) if len(words) == 1 else None
    return Meaning(equipment=tool.equipment, rule="equipment-here", words=words) if tool else None
