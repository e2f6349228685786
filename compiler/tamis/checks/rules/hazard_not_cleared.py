"""Raw food reaches the plate, and nothing on its own way there makes it safe.

Poultry, meat, fish, egg and kidney beans hurt people when they are not cooked through. A sign in the roast says
nothing of the marinade that was poured off before it: each batch, share and by-product must be made safe by itself.

Name the temperature in the middle, after the food goes in: `[until 74 °C (165 °F) at the bone]`. Give a
marinade its own boil. A dish that is meant raw says so in the header (`served: raw`), and one that another recipe
cooks says `served: uncooked`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.safety.data import rules
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.settings import Authority
    from tamis.safety.records import Item

RULE = "hazard-not-cleared"
LEVEL: Severity = "error"
ABOUT = ("view safety.open",)
BAD = """\
title: Glazed chicken thighs
serves: 4

# Thighs

Turn [8 chicken thighs] in [100 ml soy sauce] and [2 tbsp sugar] [in a bowl].
[Chill for at least 1 h, up to 12 h].
Lift the thighs [on to a baking tray], [leaving marinade] in the bowl.
[Roast for 35–40 min at 200 °C] [until 74 °C (165 °F) at the bone].

Brush with [the marinade] and serve.
"""
GOOD = """\
title: Glazed chicken thighs
serves: 4

# Thighs

Turn [8 chicken thighs] in [100 ml soy sauce] and [2 tbsp sugar] [in a bowl].
[Chill for at least 1 h, up to 12 h].
Lift the thighs [on to a baking tray], [leaving marinade] in the bowl.
[Roast for 35–40 min at 200 °C] [until 74 °C (165 °F) at the bone].

[Meanwhile], bring [the marinade] [to the boil] [in a small pan] and [boil for 2–3 min] [until syrupy].

Brush with [the marinade] and serve.
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each hazard that is open in the dish, but what is meant raw or cooked elsewhere."""
    safety = view.safety
    if safety.served == "uncooked":
        return
    for item in safety.open:
        if item.form == "contact" or item.hazard in ("raw-flour", "sprouts", "raw-milk") or _soft(item):
            continue
        if safety.served == "raw" and item.hazard in rules().goods["may_be_raw"]:
            continue
        yield _finding(view, item, safety.authority)


def _soft(item: Item) -> bool:
    """A whole egg that was cooked, by time or by look: told on its own, and no error."""
    return item.hazard == "egg" and item.form == "whole" and item.heated


def _finding(view: View, item: Item, authority: Authority) -> Diagnostic:
    from tamis.safety.wording import hottest, limit_words, offer, path_of

    path, asked = path_of(item, view.recipe), limit_words(item, authority, view.recipe.language)
    message = f"nothing makes {_what(item, view)} safe on its way to the dish: {path}; needed: {asked}"
    reached = hottest(item)
    hint = f"{offer(item, authority, view.recipe.language)}; local food codes prevail"
    if reached and item.form != "stuffing":  # the meat's temperature says nothing of the stuffing
        hint = f"{reached} is the hottest that the recipe asks for, and not enough; {hint}"
    parted = view.recipe.products if item.form == "juices" else ()
    labels = tuple(
        Label(product.span, "parted here, before it was made safe")
        for product in parted
        if product.kind == "by-product" and product.name in item.path
    )
    return Diagnostic(RULE, LEVEL, item.span, message, hint, labels)


def _what(item: Item, view: View) -> str:
    """The hazard by its name; a by-product by its own."""
    from tamis.safety.wording import name_of

    if item.form == "juices":
        names = [product.name for product in view.recipe.products if product.kind == "by-product"]
        name = next((f"the {step}" for step in item.path if step in names), "the juices")
        return f"{name} of {name_of(item)}"
    return name_of(item)
