"""One of several, or those that are left of them: *the second layer*, *the chocolate layer*, *the other layers*.

So are called the pieces of what was divided, or was made in several pieces of equipment. Where nobody says how many
there are, *the other one* and *the last one* are what the shares before have left.
"""

from __future__ import annotations

from tamis.model.batch import answering
from tamis.model.lookup import look_up
from tamis.model.meaning import Meaning
from tamis.model.shares import shared_by_name
from tamis.model.words import model_words, piece_called, plain
from tamis.quantity.amount import exactly
from tamis.quantity.measure import Measure
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Reference, Share
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.hands import Hands
    from tamis.reading.clauses import Ingredient

_ONE = Share("measure", measure=Measure(exactly(1), ""), another=True)


def one_of_several(walker: Hands, reference: Reference) -> Reference:
    """With the share that its words mean."""
    number, _, rest = reference.name.lower().partition(" ")
    language = walker.flow.kitchen.language
    if not reference.share and not rest and nouns(language).singular(number) in model_words(language).others:
        return reference._replace(name="", share=Share("rest"))  # one piece …, and the other
    if reference.share or not rest:
        return reference
    words, single = model_words(language), _is_single(rest, language)
    counted = number in words.ordinals
    if not counted:
        return reference._replace(share=_ONE) if single and _several_shared(walker, reference) else reference
    there = (
        shared_by_name(walker, plain(rest, language)) or _several_shared(walker, reference) or _whole(walker, reference)
    )
    for batch in there:
        if batch.is_named(plain(reference.name, language)):
            continue
        several = batch.pieces is not None and batch.pieces[0].hi > 1
        if batch.shared and number in words.others and not (single and several):
            return reference._replace(share=Share("rest"))
        if several:
            return reference._replace(share=_ONE)
    if number in words.others and not there and walker.open.shared:  # the other slices, of bread of which some went in
        left = reference._replace(name=rest, share=Share("rest"))
        meaning = look_up(walker, left)
        if meaning and meaning.batch and meaning.batch.shared:
            return left
    return reference


def one_of_the_whole(walker: Hands, reference: Reference, meaning: Meaning) -> Reference:
    """*The chocolate layer* of *Layers*, of which nothing has been taken yet."""
    language = walker.flow.kitchen.language
    batch, name = meaning.batch, reference.name
    if batch is None or meaning.present or reference.share or " " not in name or not _is_single(name, language):
        return reference
    return reference._replace(share=_ONE) if _is_several(walker, batch, reference) else reference


def as_piece(walker: Hands, food: Ingredient) -> Reference | None:
    """*Another sponge*, *one sponge*: no food to buy, where sponges were made in several pieces."""
    measure = food.measures[0] if len(food.measures) == 1 else None
    if food.goods is not None or food.purpose or measure is None or measure.unit:
        return None
    flow = walker.flow
    words = plain(food.name, flow.kitchen.language)
    keys = answering(words[-1:], flow.kitchen)
    made = [
        *shared_by_name(walker, words[-1:]),
        *flow.named.called(keys, flow.index),
        *flow.made.called(keys, flow.index),
    ]
    cut = [walker.present, *walker.open, *flow.made.called([("pieces", words[-1])], flow.index)]
    if not any(batch.left > 0 and _is_plural(walker, batch, words) for batch in made) and not any(
        batch and batch.pieces and piece_called(batch.pieces[1], flow.kitchen.language) == words[-1] for batch in cut
    ):
        return None
    share = Share("measure", measure=measure, another=True)
    return Reference(food.clause, food.name, food.name_span, share, food.preposition)


def _is_plural(walker: Hands, batch: Batch, words: tuple[str, ...]) -> bool:
    """Whether it lies in pieces, and has a name of which this is the singular."""
    if batch.product is None or batch.pieces is None or batch.pieces[0].hi <= 1:
        return False
    name, language = walker.flow.products[batch.product].name, walker.flow.kitchen.language
    return plain(name, language)[-1:] == words[-1:] and not _is_single(name, language)


def _several_shared(walker: Hands, reference: Reference) -> list[Batch]:
    """Several things of which a share was taken, by the last word of a name: *the plain layer*."""
    if not walker.open.shared and not walker.flow.parted:
        return []
    last = plain(reference.name, walker.flow.kitchen.language)[-1:]
    return [batch for batch in shared_by_name(walker, last) if _is_several(walker, batch, reference)]


def _is_several(walker: Hands, batch: Batch, reference: Reference) -> bool:
    """Whether a batch lies in pieces and has its name in the plural: layers are several, a dough is one thing."""
    words = plain(reference.name, walker.flow.kitchen.language)
    return _is_plural(walker, batch, words) and not batch.is_named(words)


def _is_single(name: str, language: str) -> bool:
    last = name.lower().rpartition(" ")[2]
    return nouns(language).singular(last) == last


def _whole(walker: Hands, reference: Reference) -> list[Batch]:
    """What lies there whole, by its name."""
    meaning = look_up(walker, reference)
    return [meaning.batch] if meaning and meaning.batch and not meaning.present else []
