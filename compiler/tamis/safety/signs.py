"""By what a recipe's clauses show that something burns, scalds, spoils in a jar or chokes."""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import total
from tamis.quantity.measure import grams
from tamis.quantity.units import shipped
from tamis.reading.clauses import Cue, Target
from tamis.safety.data import rules
from tamis.safety.degrees import temperatures
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Station
    from tamis.kitchen.food import Hazard, Role
    from tamis.model.history import Hands
    from tamis.model.recipe import Action, Recipe, Use
    from tamis.reading.clauses import Read
    from tamis.safety.state import State

_DEEP = Fraction(200)
"""Grams of oil from which a pan of it counts as deep (common practice)."""
_RING: tuple[Station, ...] = ("ring", "")
_SIGNS = frozenset((Cue, Target))
_SUGAR_HOT = Fraction(104)
"""°C from which a boiling syrup is far hotter than water: jam sets at 105 (common practice)."""


def verbs_of(actions: Sequence[Action]) -> list[frozenset[str]]:
    """The verbs of each action in their plain form: looked up once for all who ask."""
    return [frozenset([use.verb.base for use in action.verbs]) for action in actions]


def words_of(action: Action) -> str:
    """The plain words and clauses of an action, in small letters."""
    return " ".join([part.text for part in action.parts]).lower()


def scalding_steam(recipe: Recipe, action: Action) -> bool:
    """Water for steam in an oven, or water on a hot tray or stone: what steams in a pot on the hob has its water in it
    before it is hot, and so has a tin that is filled before it goes into the oven."""
    words, here = safety_words(recipe.language), recipe.places.lines[action.number]
    uses = [recipe.uses[use] for use in action.uses]
    if any([use.ingredient.purpose in words.purposes.steam for use in uses if use.ingredient.purpose]):
        if any([tool.equipment.station == "ring" for tool in action.tools]):
            return False
        return "oven" in (here.station, here.came_from) or bool(words.signs.hot_metal.search(words_of(action)))
    if action.work.station != "oven" or not any([role_of(use) == "water" for use in uses]):
        return False
    return bool(words.signs.hot_metal.search(words_of(action)))


def hot_oil(recipe: Recipe, action: Action, verbs: frozenset[str]) -> bool:
    """Deep frying, much oil in a pan, or oil until it smokes."""
    ids, words = rules().verbs, safety_words(recipe.language)
    if not verbs.isdisjoint(ids["deep-fries"]):
        return True
    frying = words.purposes.frying
    if not verbs.isdisjoint(ids["heats-oil"]) and any(
        [_deep_oil(recipe.uses[use], recipe, frying) for use in action.uses]
    ):
        return True
    if action.work.station != "ring":
        return False
    cues = [read.text for read in action.reads if type(read) is Cue]
    return bool(cues) and any([word in cue for cue in cues for word in words.signs.smokes])


def _deep_oil(use: Use, recipe: Recipe, frying: frozenset[str]) -> bool:
    """Much oil, or oil for frying; of lard and the like only what is both, for a little of it greases the pan."""
    goods, fries = use.ingredient.goods, use.ingredient.purpose in frying
    if goods is None or goods.role != "fat":
        return False
    if goods.liquid:
        return fries or use.mass.hi >= _DEEP
    spoons, units = rules().goods["spoons"], shipped(recipe.language)
    weighed = [(measure.unit, grams(measure, units)) for measure in use.ingredient.measures]
    return fries and any(unit not in spoons and (g is None or g.hi >= _DEEP) for unit, g in weighed)


def with_sugar(recipe: Recipe) -> set[int]:
    """The components that sugar goes into."""
    return {use.component for use in recipe.uses if (goods := use.ingredient.goods) and goods.role == "sugar"}


def hot_sugar(recipe: Recipe, action: Action) -> bool:
    """Sugar, if there is any, boiled to more than the boiling point of water: on the hob, or just taken off it."""
    here = recipe.places.lines[action.number]
    if action.work.station not in _RING or "ring" not in (here.station, here.came_from):
        return False
    return any([syrup_heat(action, read, recipe.language) for read in action.reads if type(read) in _SIGNS])


def syrup_heat(action: Action, read: Read, language: str) -> bool:
    """Whether a clause asks for what only a boiled syrup shows."""
    if type(read) not in _SIGNS or action.work.station not in _RING:
        return False
    said = read.clause.text.lower()
    if any([word in said for word in safety_words(language).signs.caramel]):
        return True
    return any([t >= _SUGAR_HOT for t in temperatures(said, language)])


def syrup_lines(recipe: Recipe, verbs: Sequence[frozenset[str]], hands: Hands) -> set[int]:
    """The lines that boil a syrup so strong that it is far hotter than water."""
    found: set[int] = set()
    if not any([role_of(use) == "sugar" for use in recipe.uses]):
        return found
    for action in recipe.actions:
        if verbs[action.number].isdisjoint(rules().verbs["boils"]) or action.work.station not in _RING:
            continue
        uses = [recipe.uses[index] for index in hands[action.number].uses]
        sugar = total([use.mass.hi for use in uses if role_of(use) == "sugar"])
        if sugar and sugar >= total([use.mass.hi for use in uses]) * rules().keeping["syrup"]:
            found.add(action.number)
    return found


def plain_nuts(recipe: Recipe, dish: State, hands: Hands) -> bool:
    """Nuts that nobody chops, grinds or blends."""
    nuts, small = rules().goods["nuts"], safety_words(recipe.language).states
    for index in dish.uses:
        use = recipe.uses[index]
        food = use.ingredient
        if food.goods is None or food.goods.show != "nut" or nuts.isdisjoint(food.goods.allergens):
            continue
        said = f"{' '.join(food.states)} {food.preparation} {food.name}"
        if not any(word in said for word in small.no_whole_nuts) and not _is_cut(recipe, index, hands):
            return True
    return False


def _is_cut(recipe: Recipe, nut: int, hands: Hands) -> bool:
    """Whether the line of a nut, or a later one with nothing else in hand, grinds it or cuts it into slivers, or one
    blends it, or puts it through a mill, with what it went into."""
    words = safety_words(recipe.language)
    ids, small, mills = rules().verbs, words.states.no_whole_nuts, words.signs.mills
    use, held, grinders = recipe.uses[nut], frozenset[int](), rules().equipment["grinders"]
    for action in recipe.actions[use.action :]:
        here = action.number == use.action
        held = hands[action.number].uses or (held if action.component == use.component else frozenset())
        if not here and nut not in held:
            continue
        said = words_of(action)
        if any([tool.equipment.id in grinders for tool in action.tools]) or mills.search(said):
            return True
        done = {one.verb.base for one in action.verbs}
        if nut in held and not ids["blends"].isdisjoint(done):
            return True
        alone = not here and held == {nut}
        if (here or alone) and not ids["grinds"].isdisjoint(done):
            return True
        if alone and not ids["cuts"].isdisjoint(done) and any(word in said for word in small):
            return True
    return False


def has_garlic(recipe: Recipe) -> bool:
    """Whether there is anything in it that must not stand in oil."""
    foods = [use.ingredient.goods for use in recipe.uses]
    return any([goods.hazard == "garlic-in-oil" for goods in foods if goods is not None])


def oil_with_garlic(recipe: Recipe, dish: State) -> bool:
    """A dish that is mostly oil, with garlic or herbs in it, as something to keep."""
    uses = [recipe.uses[use] for use in dish.uses] if has_garlic(recipe) else []
    if not any([_hazard(use) == "garlic-in-oil" for use in uses]):
        return False
    oil = total([use.mass.hi for use in uses if _is_oil(use)])
    return oil > 0 and total([use.mass.hi for use in uses if not _is_oil(use)]) <= oil


def shelf_jars(recipe: Recipe, spoils: bool) -> bool:
    """Food put into jars that are closed, or that spoils and is to be kept in them."""
    signs, jars = safety_words(recipe.language).signs, rules().equipment["jars"]
    preserve = not signs.preserves.isdisjoint((*recipe.header.tags, recipe.header.course))
    preserve = preserve or (spoils and bool(recipe.header.keeps))
    for action in recipe.actions:
        for tool in action.tools:
            if tool.equipment.id in jars and (preserve or signs.closed.search(words_of(action))):
                return True
    return False


def _is_oil(use: Use) -> bool:
    goods = use.ingredient.goods
    return goods is not None and goods.role == "fat" and goods.liquid


def _hazard(use: Use) -> Hazard:
    goods = use.ingredient.goods
    return goods.hazard if goods else ""


def role_of(use: Use) -> Role:
    goods = use.ingredient.goods
    return goods.role if goods else ""
