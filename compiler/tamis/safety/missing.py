"""What comes to a component though no batch tells it: all that may be in what it takes from other components.

A clause that could not be read, or a name that nothing answers to, must not let its dish be called free of anything;
and the butter for a tin meets the batter that is poured into it later.
"""

from __future__ import annotations

from collections import defaultdict

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.recipe import Recipe


class Coming(NamedTuple):
    """What comes to a component beside its batch: foods by their uses, and the words of what could not be read."""

    uses: list[int]
    words: list[str]


def coming(recipe: Recipe, strays: Sequence[int]) -> dict[int, Coming]:
    """By component, what of the foods that met no batch, and of what could not be read, comes to it: its own, and that
    of all from which something comes to it. Most components have none of it, and are left out."""
    takers: defaultdict[int, set[int]] = defaultdict(set)
    for taking in recipe.takings:
        takers[recipe.products[taking.product].component].add(recipe.actions[taking.action].component)
    found: defaultdict[int, Coming] = defaultdict(lambda: Coming([], []))
    for use in strays:
        for at in _all_takers(takers, recipe.uses[use].component):
            found[at].uses.append(use)
    for one in recipe.unread:
        for at in _all_takers(takers, one.component):
            found[at].words.append(_said(one.text))
    return found


def missing_in_all(recipe: Recipe) -> tuple[str, ...]:
    """The words of what may be food in the recipe, and could not be read."""
    return tuple(dict.fromkeys(_said(one.text) for one in recipe.unread))


def _said(text: str) -> str:
    """Words of the recipe as a report shows them."""
    return f"“{' '.join(text.split())}”"


def _all_takers(takers: dict[int, set[int]], at: int) -> set[int]:
    """A component, and all to which something of it comes."""
    found, ahead = {at}, [at]
    while ahead:
        more = takers.get(ahead.pop(), set()) - found
        found |= more
        ahead += more
    return found
