"""The safety of one recipe: hazards on their way to the dish, allergens, cautions, and what it hands on."""

from __future__ import annotations

from tamis.model.effects import Discards
from tamis.safety.allergens import Foods, lists_of, part_of
from tamis.safety.cautions import cautions
from tamis.safety.clearing import limit_of
from tamis.safety.doubts import doubts
from tamis.safety.hazards import item_of
from tamis.safety.missing import Coming, coming, missing_in_all
from tamis.safety.records import HazardKind, Item, Safety, Served
from tamis.safety.signs import verbs_of
from tamis.safety.spoiling import mixtures_of, spoils
from tamis.safety.state import State
from tamis.safety.tags import claims, contradictions
from tamis.safety.trace import Trace
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.settings import Authority
    from tamis.model.history import Hands
    from tamis.model.recipe import Component, Recipe, Supply
    from tamis.safety.allergens import Source

MATTERS: frozenset[HazardKind] = frozenset(
    ("poultry", "stuffing", "minced-meat", "whole-meat", "pork", "cured-pork", "fish", "shellfish", "egg", "raw-flour",
     "sprouts", "raw-milk", "kidney-beans", "poison-raw", "poison")
)  # fmt: skip
"""Hazards that must be cleared on the way to the plate; the others (rice, honey, garlic in oil) call for cautions."""


_NOTHING = Coming([], [])


def assess(recipe: Recipe, kitchen: Kitchen, used: Mapping[str, Supply], hands: Hands) -> Safety:
    """Everything about the safety of a recipe, by the house's authority; `used` are the dishes of used recipes, `hands`
    what each line has in hand."""
    verbs = verbs_of(recipe.actions)
    traced = Trace(recipe, kitchen, used, verbs, hands).walk()
    dish = _dish(recipe, traced.states)
    lists = lists_of(kitchen)
    all_foods = Foods(recipe, used, kitchen)
    strays = _strays(recipe, traced.states, dish)
    foods = [*all_foods.of_batch(dish), *_of_uses(all_foods, strays)]
    ends = [
        (component, end)
        for component, end in zip(recipe.components, recipe.history.components, strict=True)
        if end >= 0
    ]
    beside = coming(recipe, strays)
    parts = []
    for component, end in ends:
        if not _is_dish(component, recipe):
            there = beside.get(component.number, _NOTHING)
            within = [*all_foods.of_batch(traced.states[end]), *_of_uses(all_foods, there.uses)]
            parts.append(part_of(component.name, within, lists, tuple(dict.fromkeys(there.words))))
    items = tuple(item for item in (*dish.items.values(), *_lost(recipe, strays, kitchen)) if item.hazard in MATTERS)
    served = _served(recipe)
    mixtures = mixtures_of(traced.mixing, dish, traced.cooked)
    doubted = tuple(doubts(recipe, kitchen))
    spoiling = bool(doubted) or spoils(recipe, dish, used, mixtures, traced.cooked.candied)
    authority = kitchen.settings.safety.authority
    missing, broken = missing_in_all(recipe), tuple(contradictions(recipe, foods))
    return Safety(
        authority=authority,
        items=items,
        short_rest=tuple(_short_rest(recipe, items, authority)),
        waits=traced.waits,
        halves=tuple([half for half in traced.halves if any(i.use == half.use and i.cleared for i in items)]),
        tepid=tuple([i for i in dish.items.values() if i.hazard == "leftover" and i.heated and i.cleared is None]),
        oil_waits=traced.oil_waits,
        dish=part_of(recipe.title, foods, lists, missing),
        parts=tuple(parts) if len(ends) > 1 else (),
        contradictions=broken,
        claims=tuple(claims(recipe, foods, broken, missing)) if recipe.header.tags else (),
        cautions=cautions(traced.mixing, dish, served, mixtures, spoiling),
        served=served,
        animal=tuple(dict.fromkeys([food.animal for food in foods if food.animal and not food.instead])),
        words=tuple(dict.fromkeys([word for food in foods for word in food.allergens])),
        spoils=spoiling,
        doubts=doubted,
    )


def _is_dish(component: Component, recipe: Recipe) -> bool:
    """Whether it is the whole dish by its name, too: what goes into it is told once."""
    return component.number == recipe.dish and component.name.casefold() == recipe.title.casefold()


def supplied(supply: Supply, safety: Safety) -> Supply:
    """What a recipe gives to others, with what its dish brings along."""
    hazards = tuple(dict.fromkeys(f"{item.hazard}:{item.form}" for item in safety.open if item.form != "contact"))
    return supply._replace(
        hazards=hazards,
        allergens=safety.words,
        animal=safety.animal,
        unknown=safety.dish.not_known,
        spoils=safety.spoils,
    )


def _dish(recipe: Recipe, states: tuple[State, ...]) -> State:
    """The dish's batch, with those of components that nothing takes: they are eaten too, as far as anyone can tell."""
    ends = recipe.history.components
    taken = {taking.product for taking in recipe.takings}
    last = [
        end
        for component, end in zip(recipe.components, ends, strict=True)
        if end >= 0 and (component.number == recipe.dish or component.product not in taken)
    ]
    if len(last) == 1:
        return states[last[0]]
    together = State()
    for end in last or [end for end in ends if end >= 0]:
        together.take_in(states[end], "")
    return together


def _strays(recipe: Recipe, states: tuple[State, ...], dish: State) -> list[int]:
    """Foods of the recipe, by their uses, that no batch brings into the dish or into what a component makes, and that
    nobody threw away: the butter for a tin that is filled later, and what an error has lost."""
    gone = set(dish.uses)
    left = [at for at, use in enumerate(recipe.uses) if at not in gone and use.rest_of is None]
    if left:
        ends = [end for end in recipe.history.components if end >= 0]
        thrown = [entry.effect.batch for entry in recipe.log if isinstance(entry.effect, Discards)]
        gone = {use for number in (*ends, *thrown) for use in states[number].uses}
    return [at for at in left if at not in gone]


def _lost(recipe: Recipe, strays: list[int], kitchen: Kitchen) -> Iterator[Item]:
    """The hazards of food that should be in the dish, and of which nobody knows whether it is."""
    states = safety_words(kitchen.language).states
    for at in strays:
        goods = recipe.uses[at].ingredient.goods
        item = item_of(recipe.uses[at], at, goods, states) if goods is not None and recipe.uses[at].in_batch else None
        if item is not None:
            yield item


def _of_uses(foods: Foods, uses: list[int]) -> Iterator[Source]:
    for use in uses:
        yield from foods.of_use(use)


def _served(recipe: Recipe) -> Served:
    """`raw` or `uncooked` where the header says so in one of the words of the data."""
    words = safety_words(recipe.language)
    said = recipe.header.served.lower().replace(",", " ").split()
    if not words.served_raw.isdisjoint(said):
        return "raw"
    return "" if words.served_unfinished.isdisjoint(said) else "uncooked"


def _short_rest(recipe: Recipe, items: tuple[Item, ...], authority: Authority) -> Iterator[Item]:
    """Meat whose limit asks for a rest, and that is eaten sooner: counted are all the lines after its cue."""
    for item in items:
        limit = limit_of(item, authority)
        if limit is None or not limit.rest or item.cleared is None or item.cleared.by != "temperature":
            continue
        hotter = item.core is not None and item.core >= limit.pairs[0].celsius + 8
        later = [action for action in recipe.actions if action.number > item.cleared.action and not action.heats]
        spent = sum(action.work.handling + (int(action.work.wait.lo) if action.work.wait else 0) for action in later)
        if spent < limit.rest and not hotter:
            yield item
