"""Which dishes a list is for, and those that they use.

A braise takes 300 ml of a stock that is a recipe of its own; who shops for the braise shops for that much of the stock.
So a used recipe joins the list with the share of it that is taken, unless it stands ready: because the cook says so,
because nothing tells how much is taken, or because the stock is on the list itself and makes enough for both.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from fractions import Fraction

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.recipe import Recipe
    from tamis.table.rows import Supplied, Table


ON_LIST = "on this list"


class Dish(NamedTuple):
    """A recipe, so many times. `used_by` is the title of the dish that takes it; empty for one that was asked for."""

    recipe: Recipe
    table: Table
    factor: Fraction = Fraction(1)
    used_by: str = ""

    @property
    def title(self) -> str:
        """What the dish is called."""
        return self.recipe.title or self.recipe.stem

    @property
    def portions(self) -> Fraction | None:
        """How many it serves; of a range the smaller number. None where the recipe does not say."""
        serves = self.recipe.header.serves
        return serves.lo * self.factor if serves is not None else None


class Ready(NamedTuple):
    """A used dish that is not shopped for: what the recipe takes of it (`times` over), for which dish, and why not."""

    words: str
    dish: str
    why: str
    times: Fraction = Fraction(1)


class Spread(NamedTuple):
    """All dishes whose ingredients are wanted, those asked for first, and what must stand ready."""

    dishes: tuple[Dish, ...]
    ready: tuple[Ready, ...]


def spread(asked: Sequence[Dish], known: Mapping[str, Dish], ready: Collection[str] = ()) -> Spread:
    """The dishes with those that they use; `known` are recipes by file stem, `ready` the stems that are made already.

    What is asked for and used as well is made once, as much as is asked for or as the others take, whichever is more.
    """
    for _ in asked:  # a used dish that is made larger may itself use one that was asked for
        _, wanted = _once(asked, known, ready)
        larger = [dish._replace(factor=max(dish.factor, wanted.get(dish.recipe.stem, dish.factor))) for dish in asked]
        if larger == list(asked):
            break
        asked = larger
    return _once(asked, known, ready)[0]


def _once(
    asked: Sequence[Dish], known: Mapping[str, Dish], ready: Collection[str]
) -> tuple[Spread, dict[str, Fraction]]:
    """The dishes as they are asked for, and how much the others take of each."""
    own = {dish.recipe.stem for dish in asked}
    wanted: dict[str, Fraction] = {}
    found = list(asked)
    aside: list[Ready] = []
    queue: list[tuple[Dish, tuple[str, ...]]] = [(dish, (dish.recipe.stem,)) for dish in asked]
    for dish, path in queue:
        for supplied in dish.table.supplied:
            stem, share = supplied.recipe, supplied.fraction
            why = _why_not(stem, share, path, known, ready)
            if why or share is None:
                aside.append(_ready(supplied, dish, why))
            elif stem in own:
                wanted[stem] = wanted.get(stem, Fraction(0)) + share * dish.factor
                aside.append(_ready(supplied, dish, ON_LIST))
            else:
                found.append(known[stem]._replace(factor=share * dish.factor, used_by=dish.title))
                queue.append((found[-1], (*path, stem)))
    return Spread(tuple(found), tuple(aside)), wanted


def _why_not(
    stem: str, share: Fraction | None, path: tuple[str, ...], known: Mapping[str, Dish], ready: Collection[str]
) -> str:
    """Why a used recipe is not shopped for; empty if it is."""
    if stem in ready:
        return "made already"
    if stem not in known or stem in path:
        return "its recipe is not there"
    return "how much is taken is not known" if share is None else ""


def _ready(supplied: Supplied, dish: Dish, why: str) -> Ready:
    words = supplied.text or supplied.name
    return Ready(words, dish.title, why, dish.factor)
