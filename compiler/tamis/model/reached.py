"""A batch that is boiled down until so much is left: from there on it weighs that, and no more what went in."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.mass import Mass, measure_grams
from tamis.model.words import model_words
from tamis.quantity.measure import Measure, grams, kind
from tamis.quantity.number_words import number_words
from tamis.reading.clauses import Cue, Target
from tamis.syntax.items import Quantity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.model.batch import Batch

_FAR = 3
"""So many words after *by* or *to* stands the part at most: `by almost two thirds`."""


def reached(
    read: Target | Cue,
    batch: Batch,
    verb: Verb | None,
    names: Callable[[], Sequence[tuple[str, ...]]],
    kitchen: Kitchen,
) -> tuple[Mass, Measure | None] | None:
    """What a batch weighs and measures once a clause is met: `to 2 l`, `until reduced to 300 ml`, `by half`; None for
    any other clause. It may be called by its own names and by these."""
    if not batch.foods or batch.pieces:  # of pieces it is the measure of each
        return None
    measure = _measure(read, kitchen)
    if measure is not None:
        return _weight(batch, measure, names, kitchen), measure
    share = _share_left(read, kitchen.language) if verb and verb.cooks else None  # dough that rises weighs the same
    return None if share is None else (_reduced(batch, share, kitchen), None)


def _measure(read: Target | Cue, kitchen: Kitchen) -> Measure | None:
    """The weight or the volume that is to be left."""
    found: Measure | None = None
    if isinstance(read, Target):
        found = read.measure if read.kind == "measure" else None
    elif model_words(kitchen.language).left.search(read.text.lower()):
        said = (item for item in read.clause.items.items if isinstance(item, Quantity))
        measures = (Measure(item.amount, item.unit) for item in said if item.kind in ("mass", "volume"))
        found = next(measures, None)
    return found if found and kind(found, kitchen.units) in ("mass", "volume") else None


def _weight(batch: Batch, measure: Measure, names: Callable[[], Sequence[tuple[str, ...]]], kitchen: Kitchen) -> Mass:
    """What so much of it weighs: a volume by what it is called, else by the liquids in it; else nobody knows."""
    known = [grams(measure, kitchen.units)]
    if known[0] is None:
        called = _called(batch, names, kitchen)
        goods = [called] if called else _all_liquid(batch, kitchen)
        known = [measure_grams(measure, one, (), kitchen) for one in goods]
    weights = [weight for weight in known if weight]
    if not weights or len(weights) < len(known):
        return _not_known(batch)
    lo, hi = min(one.lo for one in weights), max(one.hi for one in weights)
    return Mass(lo, hi, (), batch.mass.uncounted)


def _all_liquid(batch: Batch, kitchen: Kitchen) -> list[Goods]:
    """The goods in it, if they all are liquids; none else."""
    goods = [kitchen.larder.get(food.goods) if food.goods else None for food in batch.foods if food.mass.hi]
    liquid = [one for one in goods if one and one.liquid]
    return liquid if len(liquid) == len(goods) else []


def _called(batch: Batch, names: Callable[[], Sequence[tuple[str, ...]]], kitchen: Kitchen) -> Goods | None:
    """The first liquid among its names."""
    found = (kitchen.larder.find(name) for name in (*reversed(list(batch.names)), *names()) if name)
    return next((one.goods for one in found if one and one.goods.liquid), None)


def _share_left(read: Target | Cue, language: str) -> Fraction | None:
    """What part is left: half after `by half`, a third after `until reduced to a third`."""
    said = model_words(language)
    if isinstance(read, Cue) and not said.left.search(read.text.lower()):
        return None
    words = read.text.lower().split()
    for at, word in enumerate(words):
        if word in said.by or word in said.to:
            part = _part(words[at + 1 :], language)
            if part is not None:
                return 1 - part if word in said.by else part
    return None


def _part(words: list[str], language: str) -> Fraction | None:
    """The part that the first of these words say."""
    for start in range(min(_FAR, len(words))):
        for end in (start + 2, start + 1):
            part = number_words(language).parse(" ".join(words[start:end]))
            if part is not None and 0 < part < 1:
                return part
    return None


def _reduced(batch: Batch, share: Fraction, kitchen: Kitchen) -> Mass:
    """What is left of it, if it is all liquid; of what solids lie in it nobody knows the share."""
    if not batch.mass.known or not _all_liquid(batch, kitchen):
        return _not_known(batch)
    return batch.mass._replace(lo=batch.mass.lo * share, hi=batch.mass.hi * share)


def _not_known(batch: Batch) -> Mass:
    return Mass(unknown=(" ".join(batch.label),), uncounted=batch.mass.uncounted)
