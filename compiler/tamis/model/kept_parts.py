"""What is left of a food whose parts go their own ways: *take out [the yolks], [keeping the whites]*.

All that is left of an egg without its yolk is its white. Where a cook says that he keeps it, it is a by-product; where
only what nobody eats by itself is left, as of squeezed lemons, it is thrown away.
"""

from __future__ import annotations

from tamis.model.effects import Why
from tamis.model.own_parts import foods_of_part, is_alone, is_last, part_in, parts_left, weight_of
from tamis.model.recipe import Product
from tamis.model.words import model_words, plain
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.hands import Hands

Words = tuple[str, ...]

LEFT = Why("takes-over")


def all_left(walker: Hands, words: Words) -> Batch | None:
    """What lies open as the rest of a food that was parted, all of which is called so: the whites of the eggs whose
    yolks were taken out."""
    flow = walker.flow
    for batch in reversed(list(walker.open)):
        own = part_in(flow, batch, words) if batch.number in flow.own_parts and batch.left == 1 else None
        if own is not None and own.goods is not None and is_last(flow, batch, own.goods):
            return batch
    return None


def part_kept(walker: Hands, words: Words) -> Batch | None:
    """What is kept of the food in hand before its other part goes in: *separate [3 eggs], [keeping the whites]*."""
    flow, present = walker.flow, walker.present
    own = None if present is None else part_in(flow, present, words)
    if own is None or own.goods is None or not is_alone(flow, own):
        return None
    flow.own_parts.setdefault(own.source.number, set()).add(own.goods.id)
    foods = foods_of_part(flow, own, words)
    return walker.part("by-product", "by-product", foods, weight_of(foods), own.source, less=True)


def rest_told(walker: Hands, batch: Batch) -> tuple[str, str] | None:
    """What is said at the end of a component of what is left of a parted food, and what helps; None where nobody eats
    that by itself, as the zest of squeezed lemons: it is thrown away."""
    larder, language = walker.flow.kitchen.larder, walker.flow.kitchen.language
    left = [goods for goods in map(larder.get, sorted(parts_left(walker.flow, batch))) if goods is not None]
    thrown = model_words(language).thrown
    if all(not thrown.isdisjoint(goods.name.split()) for goods in left):
        walker.discard(batch, batch.span)
        return None
    if len(left) == 1 and _is_asked_elsewhere(walker, batch, plain(left[0].name, language)[-1:]):
        _put_by_for_others(walker, batch, left[0].name)
        return None
    name = " and ".join(goods.name for goods in left)
    message = f"nothing uses the {name} again before the end of “{walker.read.name}”"
    the, kept, gone = (example(language, key, name=name) for key in ("the", "leaving_named", "thrown"))
    return message, f"bring it back with {the}, say where it parts that it is kept, {kept}, or {gone}"


def _is_asked_elsewhere(walker: Hands, batch: Batch, name: Words) -> bool:
    """Whether a later component names it, and no line here, which would mean another."""
    flow, after = walker.flow, batch.span.end
    here = flow.is_named_after([("name", name)], after, within=walker.component)
    return not here and flow.is_named_after([("name", name)], after)


def _put_by_for_others(walker: Hands, batch: Batch, name: str) -> None:
    """Another component asks for it by its name."""
    present = walker.present
    walker.turn(batch, LEFT)
    batch.origin = "by-product"
    walker.name(batch, plain(name, walker.flow.kitchen.language))
    product = Product(name, (name,), "by-product", walker.component, batch.last, batch.span)
    walker.close(batch, product, opened=False)
    walker.turn(present, LEFT)
