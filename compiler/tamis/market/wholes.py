"""Parts that are not sold as such: who needs six yolks buys six eggs.

Yolks in the custard and whites in the meringue of one dish come from the same eggs, so the larger number counts, as it
does for zest and juice of a lemon. Between dishes nothing is shared: nobody keeps whites for a dish of another day.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from tamis.market.words import market_words
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.table.worth import in_grams
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.table.rows import Row


def as_sold(rows: Sequence[Row], kitchen: Kitchen) -> list[Row]:
    """The rows of a dish, parts of a food replaced by the whole that is bought for them."""
    kept: list[Row] = []
    largest: dict[str, int] = {}
    for row in rows:
        whole = _whole(row, kitchen)
        turned = _turned(row, whole, kitchen) if whole is not None else None
        if turned is None:
            kept.append(row)
            continue
        at = largest.setdefault(turned.id, len(kept))
        if at == len(kept):
            kept.append(turned)
        elif turned.total[0].amount.hi > kept[at].total[0].amount.hi:
            kept[at] = turned
    return kept


def _whole(row: Row, kitchen: Kitchen) -> Goods | None:
    if row.goods is None or row.goods.pack or row.goods.price:
        return None
    return kitchen.larder.get(market_words(kitchen.language).wholes.get(row.goods.id, ""))


def _turned(row: Row, whole: Goods, kitchen: Kitchen) -> Row | None:
    """The row in pieces of the whole; None where its measure tells no number of them."""
    part = next((part for part in whole.parts if row.goods is not None and part.id == row.goods.id), None)
    lo = hi = Fraction(0)
    for measure in row.total:
        each = measure.amount
        if measure.unit:
            worth = in_grams(measure, row.first, kitchen)
            if worth is None or part is None:
                return None
            each = worth.measure.amount.times(1 / part.hi)
        lo, hi = lo + each.lo, hi + each.hi
    if not hi:
        return None
    first = row.first._replace(name=whole.name, goods=whole, states=(), alternatives=())
    return row._replace(
        name=whole.name, goods=whole, first=first, total=(Measure(Amount(lo, hi), ""),), also=(), parts=("part",)
    )
