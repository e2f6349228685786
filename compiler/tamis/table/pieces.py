"""Into how many pieces food is divided, and what each weighs: a cook who scales the dough wants the figure for the
balance."""

from __future__ import annotations

from collections.abc import Iterator

from tamis.quantity.display import grams
from tamis.reading.clauses import Division
from tamis.reading.tables import tables
from tamis.table.words import amount_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.recipe import Recipe
    from tamis.source import Span


def piece_weights(recipe: Recipe) -> Iterator[tuple[Span, str]]:
    """The clauses that divide a batch of known mass without giving the weight, and that weight: `630 g each`."""
    return ((read.clause.span, weight) for read, weight in _divisions(recipe) if weight)


def _divisions(recipe: Recipe) -> Iterator[tuple[Division, str]]:
    """What divides a batch into several, and what each piece weighs where that is known and not told."""
    for action in recipe.actions:
        mass = action.piece_mass
        for read in action.reads:
            if not isinstance(read, Division) or read.number is None or read.number.hi <= 1:
                continue
            weight = ""
            if mass is not None and mass.hi and read.each is None and not read.of_each:
                weight = f"{grams(mass.lo) if mass.lo == mass.hi else f'{grams(mass.lo)}–{grams(mass.hi)}'} each"
            yield read, weight


def pieces_text(recipe: Recipe, text: str) -> str:
    """The divisions as lines: `2 pieces, 630 g each`, `3 strips of each`. `text` is the recipe's own."""
    lines, divided = [], amount_words(recipe.language).divided
    for read, weight in _divisions(recipe):
        said = text[read.clause.span.start + 1 : read.clause.span.end - 1]
        opener = divided.match(said)
        said = said[opener.end() if opener else 0 :]
        if read.of_each and tables(recipe.language).each.isdisjoint(said.split()):
            said = f"{said} of each"
        lines.append(f"  {said}{', ' if weight else ''}{weight}")
    return "\n".join(lines)
