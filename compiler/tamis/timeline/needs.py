"""What other recipes make and this one takes: when it must be there, and how long its own recipe takes.

A stock is made on another day, so its time is no part of the whole; but a cook who starts by this recipe's clock must
know that it was to be there, and by when its own recipe must be begun. Each used recipe is planned by itself: whether
its oven or its cook is wanted elsewhere at that time is not asked.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.recipe import Recipe, Supply
    from tamis.timeline.rows import Entry


class Need(NamedTuple):
    """One of them: the stem of its recipe, and the cook's words for what is taken.

    `start` and `most_start` are when it is first taken, in seconds from the first start of the least and of the most
    plan; `least` and `most` the seconds that its recipe takes, None where that is not known.
    """

    recipe: str
    text: str
    start: int
    most_start: int
    least: int | None = None
    most: int | None = None

    @property
    def begin(self) -> int | None:
        """When its recipe must be begun at the latest, in seconds from the first start (mostly before it)."""
        return None if self.most is None else self.start - self.most


def needs_of(recipe: Recipe, entries: Sequence[Entry], used: Mapping[str, Supply]) -> tuple[Need, ...]:
    """What the recipe takes of others, in the order of the text."""
    needs = []
    for taking in recipe.takings:
        product = recipe.products[taking.product]
        if product.kind != "used-recipe":
            continue
        rows = [entry for entry in entries if entry.action == taking.action and entry.part == "work"]
        start = min((entry.start for entry in rows), default=0)
        most_start = min((entry.most_start for entry in rows), default=0)
        supply = used.get(product.recipe)
        lengths = supply.takes() if supply and supply.takes else (None, None)
        needs.append(Need(product.recipe, taking.text, start, most_start, *lengths))
    return tuple(needs)
