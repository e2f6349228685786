"""What comes to a component though no batch tells it: all that may be in what it takes from other components.

A clause that could not be read, or a name that nothing answers to, must not let its dish be called free of anything;
and the butter for a tin meets the batter that is poured into it later.
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.model.recipe import Recipe


def reached(recipe: Recipe) -> dict[int, set[int]]:
    """By component, itself and all from which something comes to it."""
    takes: dict[int, set[int]] = {component.number: {component.number} for component in recipe.components}
    for taking in recipe.takings:
        source = recipe.products[taking.product].component
        if source >= 0:
            takes[recipe.actions[taking.action].component].add(source)
    return {at: _closure(takes, at) for at in takes}


def _closure(takes: dict[int, set[int]], at: int) -> set[int]:
    found, ahead = {at}, [at]
    while ahead:
        more = takes[ahead.pop()] - found
        found |= more
        ahead += more
    return found


def missing_in(recipe: Recipe, components: Iterable[int]) -> tuple[str, ...]:
    """The words of what may be food in some components, and could not be read."""
    there = set(components)
    words = (f"“{' '.join(one.text.split())}”" for one in recipe.unread if one.component in there)
    return tuple(dict.fromkeys(words))
