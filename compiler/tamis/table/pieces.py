"""What each piece of a division weighs: a cook who scales the dough wants the figure for the balance."""

from __future__ import annotations

from collections.abc import Iterator

from tamis.quantity.display import grams
from tamis.reading.clauses import Division
from tamis.table.words import amount_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.recipe import Recipe
    from tamis.source import Span


def piece_weights(recipe: Recipe) -> Iterator[tuple[Span, str]]:
    """The clauses that divide a batch of known mass without giving the weight, and that weight: `630 g each`."""
    for action in recipe.actions:
        mass = action.piece_mass
        if mass is None or not mass.hi:
            continue
        for read in action.reads:
            if isinstance(read, Division) and read.each is None and read.number is not None:
                weight = grams(mass.lo) if mass.lo == mass.hi else f"{grams(mass.lo)}–{grams(mass.hi)}"
                yield read.clause.span, f"{weight} each"


def pieces_text(recipe: Recipe, text: str) -> str:
    """The divisions as lines: `2 pieces, 630 g each`. `text` is the recipe's own."""
    lines, divided = [], amount_words(recipe.language).divided
    for span, weight in piece_weights(recipe):
        words = text[span.start + 1 : span.end - 1]
        opener = divided.match(words)
        lines.append(f"  {words[opener.end() if opener else 0 :]}, {weight}")
    return "\n".join(lines)
