"""How findings and pages speak of a hazard: its path, its limit, the words that would clear it."""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.numerals import decimal
from tamis.quantity.temperature import f_from_c
from tamis.safety.clearing import limit_of
from tamis.safety.data import rules
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.kitchen.settings import Authority
    from tamis.model.recipe import Recipe
    from tamis.safety.records import Doubt, HazardKind, Item


_UNTIL: dict[HazardKind, str] = {"stuffing": "until_stuffing", "egg": "until_degrees"}
"""Which clause offers the degrees, by where they are taken."""


def name_of(item: Item) -> str:
    """The hazard by its name: "raw poultry"."""
    return rules().names.get(item.hazard, item.hazard)


def hazard_name(kind: str) -> str:
    """A kind of hazard by its name."""
    return rules().names.get(kind, kind)


def doubt_words(doubt: Doubt) -> str:
    """What an unknown food may be, and that nothing then tells whether it is made safe."""
    name = hazard_name(doubt.hazard)
    if doubt.heat:
        return f"if “{doubt.food}” is {name}, nothing here checks whether “{doubt.heat}” cooks it enough"
    return f"if “{doubt.food}” is {name}, nothing here checks that it gets cooked"


def path_of(item: Item, recipe: Recipe) -> str:
    """The way to the dish, as "chicken thigh → marinade → glazed wings"."""
    steps = [item.food, *item.path]
    if recipe.title not in steps:
        steps.append(recipe.title)
    return " → ".join(dict.fromkeys(steps))


def limit_words(item: Item, authority: Authority, language: str) -> str:
    """What is asked for, with who asks: "74 °C (165 °F) in the middle (USDA FSIS …)"."""
    if item.hazard == "kidney-beans":
        return "a boil of at least 10 min (a simmer is not enough)"
    if item.hazard == "poison":
        return "none of it"
    limit = limit_of(item, authority)
    if limit is None:
        return "cooking through (10 min on the heat, or until it is soft)"
    if item.form == "juices":
        return f"a boil of its own, or {limit.text} ({rules().sources[authority]})"
    source = rules().sources.get(item.hazard, rules().sources[authority])
    accepted = safety_words(language).cues.accepted.get((authority, item.hazard))
    cues = f", or a sign such as “{accepted.example}”" if accepted else ""
    return f"{limit.text} in the middle{cues} ({source})"


def offer(item: Item, authority: Authority, language: str) -> str:
    """The wording that would clear it."""
    if item.hazard == "kidney-beans":
        return example(language, "boil_ten")
    if item.form == "juices":
        return f"give it a boil of its own: {example(language, 'to_the_boil')}, {example(language, 'boil_one')}"
    limit = limit_of(item, authority)
    if item.hazard == "poison":
        return "leave it out"
    if limit is None:
        return f"cook it through: {example(language, 'boil_ten')}"
    degrees = limit.text
    until = example(language, _UNTIL.get(item.hazard, "until_thickest"), degrees=degrees)
    return f"say it after the food goes in: {until}"


def hottest(item: Item) -> str:
    """The hottest temperature that the text asks of it, in both scales; empty if it asks none."""
    if item.core is None:
        return ""
    f = f_from_c(item.core)
    return f"{_one(item.core)} °C ({_one(f)} °F)"


def _one(value: Fraction) -> str:
    """With one decimal at most, cut off: a temperature just under a limit must not look as if it met it."""
    return decimal(Fraction(int(value * 10), 10))
