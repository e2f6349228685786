"""How much a vessel holds, and how much room food takes in it: what is beaten or boils up takes twice its own, and
between raw leaves and pieces is air."""

from __future__ import annotations

from fractions import Fraction

from tamis.checks.scaling._hand import sweet, whole
from tamis.checks.scaling._scene import practice
from tamis.checks.words import check_words
from tamis.reading.clauses import Cue
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._line import Line
    from tamis.checks.scaling._scene import Scene, Swells
    from tamis.kitchen.goods import Goods
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Ingredient, Tool


def holds(scene: Scene, tool: Tool) -> int:
    """What a vessel holds: as its size says, else by the rule of thumb for such a one, a small or a large one less or
    more; 0 where nobody tells, and of several."""
    nobody_says = tool.definite and tool.equipment.general and not tool.size
    if tool.several or tool.number > 1 or nobody_says:
        return 0
    if tool.size:
        from tamis.checks.scaling._pans import pan_of

        if tool.equipment.grows or tool.equipment.station == "oven":
            return 0  # its food has the shape of it

        pan = pan_of(tool, scene.kitchen)
        return whole((pan.volume if pan is not None else None) or Fraction(0))
    rules, words = practice(), check_words(scene.recipe.language).scaling
    said = set(tool.clause.text.lower().replace(",", " ").split())
    size = "small" if not said.isdisjoint(words.smalls) else "" if said.isdisjoint(words.larges) else "large"
    return whole(rules.holds.get(tool.equipment.id, Fraction(0)) * rules.amounts.get(size, Fraction(1)))


def swells(scene: Scene, said: Line) -> Swells:
    """What makes the food of a line take twice its room; "" where nothing does, or only a part of it is beaten."""
    from tamis.checks.scaling.scale_reducing import boils_down

    line = said.action
    if beats_up(scene, line):
        return "" if said.mixed else "beaten"
    if rises(scene, line):
        return "rising"
    recipe, hand = scene.recipe, scene.hands[line.number]
    return "boiling" if sweet(recipe, hand.uses) and boils_down(scene, line, hand) else ""


def beats_up(scene: Scene, line: Action) -> bool:
    """Whether a line beats air into its food: `whip`, or whisking until it is light."""
    verbs, words = practice().verbs, check_words(scene.recipe.language).scaling.airy
    done = {use.verb.base for use in line.verbs}
    light = any(isinstance(read, Cue) and any(word in read.text for word in words) for read in line.reads)
    return not done.isdisjoint(verbs["whipping"]) or (light and not done.isdisjoint(verbs["whisking"]))


def rises(scene: Scene, line: Action) -> bool:
    """Whether a line lets dough rise, by its verb or until it is *doubled*: what has no flour in it only ferments."""
    words, hand = check_words(scene.recipe.language).scaling.doubled, scene.hands[line.number]
    foods = (scene.recipe.uses[index].ingredient.goods for index in hand.uses)
    doubled = any(isinstance(read, Cue) and any(word in read.text for word in words) for read in line.reads)
    does = doubled or line.work.verb in practice().verbs["rising"]
    return does and any(food is not None and food.role == "flour" for food in foods)


def air(line: Line, food: Ingredient, size: int) -> int:
    """The room between pieces of raw vegetables, by their density; not of what goes in by handfuls."""
    if food.goods is None or food.goods.show != "vegetable" or line.says(line.words.scaling.handfuls):
        return 0
    words = [*food.preparation.lower().replace(",", " ").split(), *_cut_in(line, food.goods)]
    density = line.kitchen.larder.density(food.goods, (*food.states, *words))
    airy = density is not None and density.usual < practice().amounts["airy"]
    return whole(size / density.usual) - size if density and airy else 0


def _cut_in(line: Line, goods: Goods) -> list[str]:
    """How a line cuts what it names, in the words that tell of a density: *shred [1 cabbage]*."""
    done, verbs = {use.verb.base for use in line.action.verbs}, line.kitchen.verbs
    states = [(density.state, verbs.participle(density.state)) for density in goods.densities if density.state]
    return [state for state, verb in states if verb is not None and verb.base in done]
