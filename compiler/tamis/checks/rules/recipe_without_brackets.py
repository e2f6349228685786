"""A recipe without brackets, as it stands in a letter or on a page: a list of ingredients, then the method.

Only what stands in brackets is read, so there is no table, no timeline and no check; and a list beside the method says
everything twice.

Take the list out. Write each amount in brackets in the method, where the food goes in, and put brackets round times,
heats, equipment and what to look for.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "recipe-without-brackets"
LEVEL: Severity = "error"
ABOUT = ("no ingredients",)
BAD = """\
title: Tomato soup
serves: 4

Ingredients

- 2 tbsp olive oil
- 1 onion, chopped
- 800 g tinned tomatoes
- 500 ml vegetable stock

Method

1. Heat the oil in a large pan and fry the onion for 5 minutes until soft.
2. Add the tomatoes and the stock and simmer for 20 minutes.
"""
GOOD = """\
title: Tomato soup
serves: 4

# Soup

Heat [2 tbsp olive oil] [in a large pan] and fry [1 onion, chopped] [for 5 minutes] [until soft].
Add [800 g tinned tomatoes] and [500 ml vegetable stock] and [simmer for 20 minutes].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """A text without a bracket in which two lines are an amount of a food, or would have clauses."""
    if "[" in view.source.text:
        return
    from tamis.checks.pasted import pasted

    found = pasted(view)
    if found is None:
        return
    title = "" if view.recipe.title else f"begin with `title: {found.title}`; "
    where = "the list goes; each amount moves into the method, where its food goes in" if found.listed else "write"
    hint = f"{title}{where}: `{found.example}`" if found.example else f"{title}{where}"
    message = "this recipe has no brackets: only what stands in brackets is read"
    yield Diagnostic(RULE, LEVEL, found.span, message, hint)
