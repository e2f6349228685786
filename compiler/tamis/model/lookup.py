"""What `[the X]` means: the order in which batches, products, components and equipment are asked.

First what a share of X left behind; then the present batch, other open batches of the component, named products
and by-products, components, the dishes of used recipes, and last equipment. Two hits in one place are an error
that lists both.
"""

from __future__ import annotations

from tamis.model.meaning import Meaning, by_name, one_meant
from tamis.model.words import model_words, plain
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.hands import Hands
    from tamis.reading.clauses import Reference


def look_up(walker: Hands, reference: Reference) -> Meaning | None:
    """The meaning of a reference where it stands; None where nothing answers to its name."""
    words = plain(reference.name, walker.flow.kitchen.language)
    found = by_name(walker, words, reference.share)
    cut = _food_and_piece(words, walker.flow.kitchen.language)
    if found and not (cut and found.batch and not found.batch.is_named(words)):
        return found  # a food that is known in such pieces need not be cut here: that is asked next
    whole = by_name(walker, cut[0], reference.share) if cut else None
    found = _cut_up(walker, cut, whole) if cut else None
    if found:
        return found
    kitchen = walker.flow.kitchen
    tool = kitchen.cupboard.find(words) or kitchen.cupboard.find(reference.name.split())
    if tool and not (cut and kitchen.larder.find(cut[0])):  # onion rings are no ring of the stove
        return Meaning(equipment=tool.item, rule="equipment", words=words)
    from tamis.model.loosely import loosely

    found = loosely(walker, words, reference.share)
    if found is None and cut and whole and whole.batch:
        return whole._replace(unborne=(cut[1],))
    return found


def _food_and_piece(words: tuple[str, ...], language: str) -> tuple[tuple[str, ...], str] | None:
    """The food and the noun of *egg slices*; None where no piece is named."""
    return (words[:-1], words[-1]) if len(words) > 1 and words[-1] in model_words(language).pieces else None


def _cut_up(walker: Hands, cut: tuple[tuple[str, ...], str], whole: Meaning | None) -> Meaning | None:
    """*The egg slices*: eggs that the text says to be sliced, or what was divided into slices and holds eggs."""
    from tamis.model.cut_up import cut_so

    batches = cut_so(walker, *cut)
    if whole and whole.batch in batches:
        return whole._replace(also=tuple(batch for batch in whole.also if batch in batches), rule="pieces")
    found = one_meant(batches, cut[0], "pieces")
    return found and found._replace(present=found.batch is walker.present)
