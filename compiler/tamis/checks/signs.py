"""What there is in a recipe that a rule may be about: a rule of whose signs a recipe shows none is neither asked nor
loaded, for it could find nothing.

A sign (`ABOUT` in a rule's file) is the role of a clause, a station, a hazard that reaches the dish or the key of a
caution; or it asks something of the recipe: `view amounts` whether it has any, `no recipe.components` whether it has
none, `said boil.states` whether plain words have a word of a list.
"""

from __future__ import annotations

from tamis.checks.registry import EVERY
from tamis.checks.words import word_set
from tamis.typed import TYPE_CHECKING, Any, Literal, cast

if TYPE_CHECKING:
    from tamis.checks.registry import Rule
    from tamis.checks.view import View


Asks = Literal["view", "no", "said"]


def signs_of(view: View, rules: tuple[Rule, ...]) -> set[str]:
    """All that a recipe shows of what some rules are about."""
    recipe, safety = view.recipe, view.safety
    signs: set[str] = {EVERY}
    for action in recipe.actions:
        signs.update([read.role for read in (*action.reads, *action.tools)])
        signs.update((action.heats, action.work.station))
    for here in recipe.places.lines:
        signs.update((here.heats, here.station))
    signs.update([item.hazard for item in safety.items])
    signs.update([caution.key for caution in safety.cautions])
    questions = {sign for rule in rules for sign in rule.about if " " in sign}
    signs.update([question for question in questions if _shows(view, question)])
    return signs


def _shows(view: View, question: str) -> bool:
    first, _, what = question.partition(" ")
    asks = cast("Asks", first)
    if asks == "said":
        return not word_set(view.recipe.language, what).isdisjoint(view.said)
    found: Any = view
    for name in what.split("."):
        found = getattr(found, name)
    return bool(found) is (asks == "view")
