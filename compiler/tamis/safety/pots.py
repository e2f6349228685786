"""Pieces that lie in liquid in a pot: when it is as hot as at a simmer, though nobody says that it boils."""

from __future__ import annotations

from tamis.quantity.amount import total
from tamis.safety.data import rules
from tamis.safety.hazards import FLESH
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.food import Role
    from tamis.model.recipe import Action, Recipe, Use
    from tamis.safety.heatings import Heating
    from tamis.safety.state import State

_MELTS: Role = "fat"
_COVERED = 2
"""Of what part of the meat's weight the liquid of a stew is; a joint that is roasted has less round it
(common practice)."""


def in_pot(recipe: Recipe, action: Action, done: Heating, state: State) -> Heating:
    """The heating, with the seconds at a simmer of flesh that lies in liquid, in an oven or on the hob."""
    verbs, verb = rules().verbs, action.work.verb
    if done.oven and verb not in verbs["roasts"]:
        degrees, lasts = done.oven
    elif done.fried and verb in verbs["stays"] and not done.oven:
        degrees, lasts = rules().pot.pairs[0].celsius, done.fried
    else:
        return done
    least = min([pair.hold for pair in rules().pot.pairs if pair.celsius <= degrees], default=lasts)
    if lasts <= least or not _covered(recipe, state):
        return done
    mass = total([recipe.uses[index].mass.hi for index in state.uses])
    come_up = max(least, int(least * mass / rules().potful))
    return done._replace(wet=max(done.wet, lasts - come_up))


def _covered(recipe: Recipe, state: State) -> bool:
    """Whether so much liquid, or fat that melts, went in with the flesh that this lies in it."""
    flesh = {item.use for item in state.items.values() if item.hazard in FLESH and item.use >= 0}
    masses = [recipe.uses[index].mass for index in flesh]
    if any([mass.unknown for mass in masses]):
        return False
    uses = [recipe.uses[index] for index in state.uses]
    juicy = rules().goods["juicy"]
    poured = [
        use
        for use in uses
        if (goods := use.ingredient.goods) and (goods.liquid or goods.role == _MELTS or goods.id in juicy)
    ]
    if any([_covers(recipe, use) for use in poured if not use.in_batch]):
        return True
    return total([use.mass.lo for use in poured]) * _COVERED >= total([mass.hi for mass in masses])


def _covers(recipe: Recipe, use: Use) -> bool:
    """Whether liquid that nobody measures covers what is there: *cover with [water, to cover]*."""
    if use.ingredient.purpose in safety_words(recipe.language).purposes.covering:
        return True
    done = [one.verb.base for one in recipe.actions[use.action].verbs]
    return use.ingredient.role == "medium" and not use.ingredient.vague and not rules().verbs["covers"].isdisjoint(done)
