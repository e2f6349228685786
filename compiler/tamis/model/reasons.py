"""Why a name means what it means: by which rule, and the entry of the log that said so."""

from __future__ import annotations

from itertools import islice

from tamis.model.effects import Refers, Why
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.hands import Hands
    from tamis.model.meaning import Meaning

_MOST_ALIKE = 50
"""Foods of one name among which the one meant is looked for: no recipe has so many."""


def refers(meaning: Meaning) -> Refers:
    """What a reference means, as the log tells it."""
    if meaning.batch is None:
        return Refers(-1, meaning.equipment.name if meaning.equipment else "")
    return Refers(meaning.batch.number, "", tuple([batch.number for batch in meaning.also]))


def why_meant(walker: Hands, meaning: Meaning) -> Why:
    """The rule by which it means that, and who said so."""
    batch, words, flow = meaning.batch, meaning.words, walker.flow
    if batch is None or not words:
        return Why(meaning.rule)
    named = flow.named_at(words, batch)
    if named >= 0 or batch.is_named(words):
        return Why(meaning.rule, named)
    rule = "holds" if meaning.rule == "named" else meaning.rule
    return Why(rule, _gave(walker, words, batch))


def _gave(walker: Hands, words: tuple[str, ...], batch: Batch) -> int:
    """The entry by which the food that is meant went in; -1 where that cannot be told for certain."""
    flow = walker.flow
    alike = list(islice(reversed(flow.uses_of.get(words[-1], ())), _MOST_ALIKE))
    given = [flow.gave[use] for use in alike if use in flow.gave]
    if len(given) == 1:
        return given[0]
    return next((entry for entry in given if flow.log[entry].effect.batch == batch.number), -1)  # type: ignore[union-attr]
