"""*The laminated dough* was read as the dough, and there is a component called Lamination.

A name is looked for at the end of what is written; the words before it are read as a description. Here one of them
sounds like another component, which may have been meant.

Call the component by its name, `[the lamination]`; or leave the describing word out, if the first one was meant.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Reference
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "other-meant"
LEVEL: Severity = "information"
ABOUT = ("reference",)
BAD = """\
title: Spirals
makes: 12 spirals

# Dough

Mix [500 g bread flour], [300 ml whole milk], [10 g fine salt] and [7 g instant yeast] [in a bowl] [for 4 min].
[Rise for 1 h] [until doubled].

# Lamination

Roll out [half the dough] and spread with [200 g soft butter].
Fold in three and [chill for 45 min].

# Spirals

Roll [the laminated dough] round [the lamination] and cut [into 12 slices].
[Bake for 20 min at 200 °C] [in the oven] [until golden].
"""
GOOD = """\
title: Spirals
makes: 12 spirals

# Dough

Mix [500 g bread flour], [300 ml whole milk], [10 g fine salt] and [7 g instant yeast] [in a bowl] [for 4 min].
[Rise for 1 h] [until doubled].

# Lamination

Roll out [half the dough] and spread with [200 g soft butter].
Fold in three and [chill for 45 min].

# Spirals

Roll [the rest of the dough] round [the lamination] and cut [into 12 slices].
[Bake for 20 min at 200 °C] [in the oven] [until golden].
"""

_SOUNDS = 5
"""Letters at the head of a word that make it sound like another one."""


def check(view: View) -> Iterator[Diagnostic]:
    """References with more words than the name they were taken for, one of which begins like another component."""
    recipe = view.recipe
    names = list(dict.fromkeys(component.name for component in recipe.components if component.name))
    if len(names) < 2:
        return
    sounding: dict[str, list[int]] = {}
    for at, name in enumerate(names):
        for word in name.lower().split():
            sounding.setdefault(word[:_SOUNDS], []).append(at)
    taken = {taking.span: recipe.products[taking.product] for taking in recipe.takings}
    for _, read in view.each(Reference):
        product = taken.get(read.clause.span) if " " in read.name else None
        if product is None:
            continue
        found = product.name.lower()
        own = (found, recipe.components[product.component].name.lower())  # the broth of the mutton
        more = [word for word in read.name.lower().split() if word not in found.split() and len(word) > _SOUNDS]
        heads = {word[:_SOUNDS] for word in more}
        alike = sorted(at for head in heads for at in sounding.get(head, ()))
        other = next((names[at] for at in alike if names[at].lower() not in own), None)
        if other:
            message = f"“{read.name}” is read as “{found}”; there is a component “{other}” too"
            hint = f"did you mean {example(recipe.language, 'the', name=other.lower())}?"
            yield Diagnostic(RULE, LEVEL, read.clause.span, message, hint)
