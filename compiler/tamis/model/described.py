"""Words before the name of a batch: those that describe it, and those that nothing in it bears out.

*The drained pasta* is the pasta, and *the chicken juices* are those of the chicken; *the parsley juices* are no juices
that anybody left.
"""

from __future__ import annotations

from tamis.model.batch import of_kind
from tamis.model.words import model_words, plain
from tamis.quantity.nouns import nouns
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.batch import Batch
    from tamis.model.flow import Flow
    from tamis.model.hands import Hands


def unborne(walker: Hands, words: tuple[str, ...], batch: Batch | None) -> tuple[str, ...]:
    """Those of the words that neither describe food in general nor stand for something in the batch or the dish."""
    if batch is None:
        return ()
    return tuple([word for word in words if not _describes(walker.flow, word) and not _is_in(walker, word, batch)])


def _describes(flow: Flow, word: str) -> bool:
    """Whether any food may be called so: hot, second, drained."""
    kitchen = flow.kitchen
    describing = model_words(kitchen.language).describing
    if word in describing or kitchen.larder.is_state(word) or kitchen.larder.describes(word):
        return True
    return kitchen.verbs.participle(word) is not None and kitchen.verbs.present(word) is None


def _is_in(walker: Hands, word: str, batch: Batch) -> bool:
    """Whether the batch, or the dish, is called by the word, holds it, or was in it."""
    flow, language = walker.flow, walker.flow.kitchen.language
    forms = {word, nouns(language).singular(word)}
    if any(batch.keys.has([("word", form), *of_kind((form,), flow.kitchen)]) for form in forms):
        return True
    titles = [flow.reading.header.title, *(component.name for component in flow.reading.components)]
    called = (*batch.names, *(food.words for food in batch.foods), *(plain(title, language) for title in titles))
    tools = (plain(tool.name, language) for tool in walker.tools)
    return any(not forms.isdisjoint(name) for name in (*called, *tools, *_foods_before(flow, batch)))


def _foods_before(flow: Flow, batch: Batch) -> Iterator[set[str]]:
    """What went into the components that it comes from: the gravy of a chicken's juices is a chicken gravy."""
    at = {flow.products[product].component for product in (batch.product, *batch.products) if product is not None}
    return (flow.uses_in[component] for component in sorted(at) if component in flow.uses_in)
