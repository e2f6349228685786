"""Into how many pieces food is divided, and what each weighs: a cook who scales the dough wants the figure for the
balance. Nobody knows it of a paste that was boiled down or a cake that was baked: those weigh less than went in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from tamis.quantity.display import grams
from tamis.reading.clauses import Division
from tamis.reading.tables import tables
from tamis.table.words import amount_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.history import Hands
    from tamis.model.recipe import Action, Recipe
    from tamis.source import Span


_LITTLE = Fraction(1, 4)
"""Of what is divided: if no more of it was cooked before, the pieces weigh about what went in (common practice)."""


def piece_weights(recipe: Recipe, kitchen: Kitchen) -> Iterator[tuple[Span, str]]:
    """The clauses that divide a batch of known mass without giving the weight, and that weight: `630 g each`."""
    return ((read.clause.span, weight) for read, weight in _divisions(recipe, kitchen) if weight)


def _divisions(recipe: Recipe, kitchen: Kitchen) -> Iterator[tuple[Division, str]]:
    """What divides a batch into several, and what each piece weighs where that is known and not told."""
    divided = [(action, read) for action in recipe.actions for read in action.reads if isinstance(read, Division)]
    if not divided:
        return
    hands = recipe.history.hands(len(recipe.actions))
    for action, read in divided:
        if read.number is None or read.number.hi <= 1:
            continue
        mass, weight = action.piece_mass, ""
        known = mass is not None and mass.hi and read.each is None and not read.of_each
        if mass is not None and known and not _was_cooked(recipe, action, hands, kitchen):
            weight = f"{grams(mass.lo) if mass.lo == mass.hi else f'{grams(mass.lo)}–{grams(mass.hi)}'} each"
        yield read, weight


def _was_cooked(recipe: Recipe, action: Action, hands: Hands, kitchen: Kitchen) -> bool:
    """Whether more than a little of what a line divides, all in hand or the foods that it names behind the verb, was
    cooked for a while before."""
    named = frozenset(index for index in action.uses if recipe.uses[index].in_batch)
    first = min((recipe.uses[index].ingredient.clause.span.start for index in named), default=action.span.start)
    own = not action.takings and any(use.verb.divides and use.span.start < first for use in action.verbs)
    here = named if own else hands[action.number].uses
    cooked: set[int] = set()
    for line in recipe.actions[: action.number]:
        verb = kitchen.verbs.of_base(line.work.verb) if line.work.wait and not line.heats else None
        if verb is not None and verb.cooks:
            cooked |= hands[line.number].uses & here
    return _weight(recipe, cooked) > _weight(recipe, here) * _LITTLE


def _weight(recipe: Recipe, uses: Iterable[int]) -> Fraction:
    return sum((recipe.uses[index].mass.hi for index in uses), Fraction(0))


def pieces_text(recipe: Recipe, text: str, kitchen: Kitchen) -> str:
    """The divisions as lines: `2 pieces, 630 g each`, `3 strips of each`. `text` is the recipe's own."""
    lines, divided = [], amount_words(recipe.language).divided
    for read, weight in _divisions(recipe, kitchen):
        said = text[read.clause.span.start + 1 : read.clause.span.end - 1]
        opener = divided.match(said)
        said = said[opener.end() if opener else 0 :]
        if read.of_each and tables(recipe.language).each.isdisjoint(said.split()):
            said = f"{said} of each"
        lines.append(f"  {said}{', ' if weight else ''}{weight}")
    return "\n".join(lines)
