"""Pieces that are cut again without a word for *each*: of all of them together, or of each?"""

from __future__ import annotations

from tamis.model.effects import Splits
from tamis.reading.clauses import Division
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.recipe import Recipe
    from tamis.quantity.amount import Amount
    from tamis.source import Span


def cut_again(recipe: Recipe) -> Iterator[tuple[Span, bool | None]]:
    """The divisions of a batch that lies in several pieces already; whether each piece is cut so, by what the header
    makes; None where it does not tell."""
    from tamis.checks.scaling._kept import kept

    stay = {one.read.clause.span for one in kept(recipe)}
    lie: dict[int, Amount] = {}
    for entry in recipe.log:
        if not isinstance(entry.effect, Splits):
            continue
        batch, number = entry.effect.batch, entry.effect.number
        before = lie.pop(batch, None)
        if number is not None and number.hi > 1 and entry.clause not in stay:
            lie[batch] = number
        read = recipe.actions[entry.action].reads[entry.read] if entry.read >= 0 else None
        if before is not None and number is not None and isinstance(read, Division) and not read.of_each:
            yield entry.clause, _of_each(recipe, before, number)


def _of_each(recipe: Recipe, pieces: Amount, number: Amount) -> bool | None:
    makes = recipe.header.makes
    if makes is None or makes.measure is not None:
        return None
    if makes.amount == number:
        return False
    return True if makes.amount == number.times(pieces.lo) and pieces.single else None
