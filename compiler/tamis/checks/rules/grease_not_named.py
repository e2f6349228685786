"""A tin is greased or floured, and no bracket names what with.

The market list and the table lack it, and so do the allergens: butter on a tin is milk on the cake.

Name it: `grease [2 round tins] with [butter, for the tins]`, and instead of `[into buttered pans]` write
`[into pans] brushed with [butter, for the pans]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Ingredient, Tool
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.food import Goods

RULE = "grease-not-named"
LEVEL: Severity = "information"
ABOUT = ("equipment",)
BAD = """\
title: Baked oats
serves: 4

# Oats

Butter [a baking dish].
Tip in [200 g rolled oats] with [500 ml whole milk] and [bake for 30 min at 180 °C] [until set].
"""
GOOD = """\
title: Baked oats
serves: 4

# Oats

Grease [a baking dish] with [butter, for the dish].
Tip in [200 g rolled oats] with [500 ml whole milk] and [bake for 30 min at 180 °C] [until set].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Lines that grease a piece of equipment and name no food at all, and pieces that are called buttered."""
    language = view.recipe.language
    if not any([_said(tool, view) for _, tool in view.each(Tool)]) and not any(
        [use.verb.greases for action in view.recipe.actions for use in action.verbs]
    ):
        return
    named: set[str] = set()  # what some bracket puts on a tin or a board, so far
    for action in view.recipe.actions:
        foods = [read for read in action.reads if type(read) is Ingredient]
        named.update([_coat(food.goods) for food in foods if food.purpose and food.goods])
        uses = [use for use in action.verbs if use.verb.greases]
        tools = [read for read in action.reads if type(read) is Tool]
        tool = next((tool for tool in tools if not tool.preposition), None) if uses and not foods else None
        if tool is not None:
            message = f"“{uses[0].text}”: no bracket says what to grease the {tool.name} with"
            hint = example(language, "grease", tool=tool.clause.text)
            yield Diagnostic(RULE, LEVEL, uses[0].span, message, hint)
            named.add("fat")
        for tool in tools:
            said = _said(tool, view)
            if not named.issuperset(said):
                yield _finding(tool, said, view)
                named.update(said)


def _coat(goods: Goods) -> str:
    """What a food is on a tin: fat, flour, sugar."""
    return "flour" if goods.flour else goods.role


def _said(tool: Tool, view: View) -> dict[str, str]:
    """The foods that are on a piece, by what they are there: of `well-buttered`, `greased with lard`."""
    if not (tool.adjectives or tool.words):
        return {}
    words, larder = check_words(view.recipe.language), view.kitchen.larder
    adjectives = {word for adjective in tool.adjectives for word in adjective.split("-")}
    found = [larder.get(id) for id, said in words.coated.items() if not adjectives.isdisjoint(said)]
    if tool.words.lower().startswith(words.coats):
        named = tool.words.lower().replace(",", " ").split()
        for at in range(len(named)):
            one = next(filter(None, (larder.find(named[at:end]) for end in (at + 2, at + 1))), None)
            found += [one.goods] if one else []
    said: dict[str, str] = {}
    for goods in filter(None, found):
        if _coat(goods):
            said.setdefault(_coat(goods), goods.name)
    return said


def _finding(tool: Tool, said: dict[str, str], view: View) -> Diagnostic:
    language = view.recipe.language
    noun = " ".join(word for word in tool.name.split() if word.lower() not in tool.adjectives)
    joint = f" {check_words(language).food.joints[0]} "
    foods = joint.join(example(language, "coat", food=food, tool=noun).strip("`") for food in said.values())
    dry = {"flour", "sugar"}.issuperset(said)
    message = f"“{tool.clause.text.strip()}”: no bracket says what is on the {noun}"
    hint = f"give it a bracket of its own: {example(language, 'dusted' if dry else 'coated', tool=noun, foods=foods)}"
    return Diagnostic(RULE, LEVEL, tool.clause.span, message, hint)
