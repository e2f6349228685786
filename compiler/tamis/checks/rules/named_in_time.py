"""Something made before is named inside the bracket of a time, where it is not used: *for 5 min in the butter*.

The words are printed, but the butter never comes to the food: the batch lacks its weight, allergens and hazards.

Give it a bracket of its own: `[in the butter] [for 5 min]`.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Reference, Time
from tamis.source import Span
from tamis.typed import TYPE_CHECKING
from tamis.words import word_lists

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "named-in-time"
LEVEL: Severity = "warning"
ABOUT = ("time",)
BAD = """\
title: Onions in brown butter
serves: 4

# Brown butter

[Simmer for 5 min] [80 g butter] [in a small pan] [until brown].

# Onions

Put [4 onions, sliced] [in a frying pan].
[Fry for 10 min in the brown butter], [stirring now and then], [until soft].

# Plates

Put [the onions] [on 4 plates] and pour over [the brown butter].
"""
GOOD = """\
title: Onions in brown butter
serves: 4

# Brown butter

[Simmer for 5 min] [80 g butter] [in a small pan] [until brown].

# Onions

Put [4 onions, sliced] [in a frying pan].
[Fry for 10 min] [in half of the brown butter], [stirring now and then], [until soft].

# Plates

Put [the onions] [on 4 plates] and pour over [the rest of the brown butter].
"""


@cache
def _prepositions(language: str) -> tuple[str, ...]:
    closed = word_lists(language, "clause")["closed"]
    return tuple(f" {word} {the} " for word in closed["PREP"] for the in closed["THE"])


@cache
def _the(language: str) -> frozenset[str]:
    return frozenset([the.split()[-1] for the in word_lists(language, "clause")["closed"]["THE"]])


def check(view: View) -> Iterator[Diagnostic]:
    """Names of products behind a preposition in a time, of products that are not in the batch by then."""
    language = view.recipe.language
    for action, read in view.each(Time):
        said = read.clause.text.lower()
        if _the(language).isdisjoint(said.split()):
            continue
        behind = [said.index(word) + len(word) for word in _prepositions(language) if word in said]
        for at in behind:
            name = next((name for name in _beside(view, action) if _begins(said[at:], name)), "")
            if name:
                start = read.clause.span.start + 1 + at
                message = f"“{name}” stands inside the bracket of a time, where it is not used"
                hint = f"close the bracket after the time, and give “{name}” one of its own"
                yield Diagnostic(RULE, LEVEL, Span(start, start + len(name)), message, hint)


def _begins(said: str, name: str) -> bool:
    return said.startswith(name) and not said[len(name) :][:1].isalpha()


def _beside(view: View, action: Action) -> list[str]:
    """The names of what is made before a line and not taken into its component by then, nor in the line: longest
    first."""
    recipe = view.recipe
    taken = {taking.product for taking in recipe.takings if recipe.actions[taking.action].component == action.component}
    called = {read.name.lower() for read in action.reads if isinstance(read, Reference)}
    names = [
        name.lower()
        for index, product in enumerate(recipe.products)
        if index not in taken and product.component != action.component and product.span.start < action.span.start
        for name in (product.name, *product.names)
    ]
    return sorted(set(names) - called, key=lambda name: (-len(name), name))
