"""Times out of all proportion to what is in the pot or in the oven, by the figures of `grammar/limits.toml`."""

from __future__ import annotations

from fractions import Fraction

from tamis.checks.limits import SOURCE, limits
from tamis.quantity.amount import exactly, total
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.checks.view import View
    from tamis.kitchen.food import Hazard, Role, Show
    from tamis.model.recipe import Action, Use

_HOUR, _KILO = 3600, 1000
_MOST_LINES = 500
"""Among so many it is looked at what lies in a pot: no recipe has more."""
_PULSES: frozenset[Hazard] = frozenset(("pulses", "kidney-beans"))
_MEAT: Show = "meat"
_SUGAR: Role = "sugar"
_BATHS: frozenset[Role] = frozenset(("water", "fat", "milk"))


def out_of_proportion(view: View, action: Action) -> str:
    """What speaks against the time of a line that heats food; "" if nothing does."""
    here, wait = view.recipe.places.lines[action.number], action.work.wait
    verb = view.kitchen.verbs.of_base(action.work.verb)
    if wait is None or verb is None or not verb.heat or here.rank == "guess" or here.heats:
        return ""
    if action.number > _MOST_LINES:
        return ""
    hours = wait.lo / _HOUR
    uses = [view.recipe.uses[index] for index in _in_hand(view, action)]
    if here.station == "ring":
        return _on_the_hob(view, action, uses, hours)
    if here.station == "oven" and here.celsius is not None:
        return _in_the_oven(uses, hours, here.celsius.lo)
    return ""


def _in_hand(view: View, action: Action) -> set[int]:
    return {*view.hands[action.number].uses, *action.uses}


def _on_the_hob(view: View, action: Action, uses: Sequence[Use], hours: Fraction) -> str:
    known = limits()
    lines = [line for line in view.recipe.actions[: action.number + 1] if line.component == action.component]
    tools = {tool.equipment.id for line in lines for tool in line.tools if tool.equipment}
    if not uses or not known.spared.isdisjoint(tools):
        return ""
    mass = total([use.mass.hi for use in uses])
    most = _most_hours(uses, mass)
    if hours > most:
        return f"longer than expected: more than {_number(most)} h on the hob for what is in it ({SOURCE})"
    if mass and mass < known.hob["dry"] * hours and not _lies_in_more(view, action, uses):
        from tamis.quantity.display import grams

        return f"so long on the hob, and there are {grams(mass)} in it: it boils dry ({SOURCE})"
    return ""


def _most_hours(uses: Sequence[Use], mass: Fraction) -> Fraction:
    """The hours that what is in a pot may take: the longest of all that is in it. Of what is unknown, all."""
    most, foods = limits().hob, [use.ingredient.goods for use in uses]
    if None in foods or any([goods is not None and goods.id in limits().bones for goods in foods]):
        return most["bones"]
    known = [(use.mass.hi, goods) for use, goods in zip(uses, foods, strict=True) if goods is not None]
    found = [most["other"]]
    if any([goods.show == _MEAT for _, goods in known]):
        found.append(most["meat"])
    if any([goods.hazard in _PULSES for _, goods in known]):
        found.append(most["pulses"])
    if total([grams for grams, goods in known if goods.flour]) * 100 >= most["flour-share"] * mass:
        found.append(most["pudding"])
    if total([grams for grams, goods in known if goods.role == _SUGAR]) * 100 >= most["sugar-share"] * mass:
        found.append(most["sugar"])
    return max(found)


def _lies_in_more(view: View, action: Action, uses: Sequence[Use]) -> bool:
    """Whether it lies in water or fat that is no part of it, or in something that nobody has weighed."""
    if any([use.mass.unknown or use.mass.uncounted for use in uses]):
        return True
    beside = [use for use in view.recipe.uses if use.component == action.component and not use.in_batch]
    return any([use.ingredient.goods is None or use.ingredient.goods.role in _BATHS for use in beside])


def _in_the_oven(uses: Sequence[Use], hours: Fraction, celsius: Fraction) -> str:
    if not uses or any([use.mass.unknown for use in uses]):
        return ""
    known = limits().oven_mass
    bare = min([most for degrees, most in known.items() if degrees.isdigit() and celsius >= int(degrees)], default=None)
    mass = total([use.mass.hi for use in uses])
    if bare is None or not mass or hours <= bare + known["kilo"] * mass / _KILO:
        return ""
    from tamis.quantity.display import grams

    return f"so long in so hot an oven, for {grams(mass)}: nothing is left of it ({SOURCE})"


def _number(value: Fraction) -> str:
    from tamis.quantity.display import amount

    return amount(exactly(value))
