"""What there is in a recipe that a rule may be about: a rule of whose signs a recipe shows none is neither asked nor
loaded, for it could find nothing.

A sign (`ABOUT` in a rule's file) is the role of a clause, a station, a hazard that reaches the dish or the key of a
caution; or it asks something of the recipe: `view amounts` whether it has any, `no recipe.components` whether it has
none, `said boil.states` whether plain words have a word of a list. For a rule of scaling it is a role, a station, the
role or the kind of a food instead, and `view` asks the scene.
"""

from __future__ import annotations

from tamis.checks.registry import EVERY
from tamis.checks.words import word_set
from tamis.typed import TYPE_CHECKING, Any, Literal, cast

if TYPE_CHECKING:
    from tamis.checks.registry import Rule
    from tamis.checks.scaling._scene import Scene
    from tamis.checks.view import View
    from tamis.model.recipe import Recipe


Asks = Literal["view", "no", "said"]


def signs_of(view: View, rules: tuple[Rule, ...]) -> set[str]:
    """All that a recipe shows of what some rules are about."""
    signs, safety = _lines(view.recipe), view.safety
    signs.update([item.hazard for item in safety.items])
    signs.update([caution.key for caution in safety.cautions])
    signs.update([question for question in _questions(rules) if _shows(view, question)])
    return signs


def scaling_signs(scene: Scene, rules: tuple[Rule, ...]) -> set[str]:
    """All that a recipe and its factor show of what some rules of scaling are about."""
    signs = _lines(scene.recipe)
    foods = [food for use in scene.recipe.uses if (food := use.ingredient.goods) is not None]
    signs.update([food.role for food in foods], [food.show for food in foods])
    signs.update([question for question in _questions(rules) if _shows(scene, question)])
    return signs


def _lines(recipe: Recipe) -> set[str]:
    """What its lines show: the roles of their clauses, and where their food is."""
    signs: set[str] = {EVERY}
    for action in recipe.actions:
        signs.update([read.role for read in (*action.reads, *action.tools)])
        signs.update((action.heats, action.work.station))
    for here in recipe.places.lines:
        signs.update((here.heats, here.station))
    return signs


def _questions(rules: tuple[Rule, ...]) -> set[str]:
    return {sign for rule in rules for sign in rule.about if " " in sign}


def _shows(view: View | Scene, question: str) -> bool:
    first, _, what = question.partition(" ")
    asks = cast("Asks", first)
    found: Any = view
    if asks == "said":
        return not word_set(found.recipe.language, what).isdisjoint(found.said)
    for name in what.split("."):
        found = getattr(found, name)
    return bool(found) is (asks == "view")
