"""Liquid that is to boil down, in a scaled recipe.

Twice as much water does not boil away in the same time from the same pan, and half as much burns. What only simmers
until it is done takes as long as before, once it boils.

Go by the sign or by the measure left, not by the minutes; a wider pan shortens the wait.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._hand import grams, liquid, sweet, tended
from tamis.checks.scaling._scene import practice, times_text
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.reading.clauses import Cue, Ingredient, Reference, Target, Time
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.history import Hand
    from tamis.model.recipe import Action
    from tamis.source import Span

BOILS = 100
"""°C at which water boils; what is hotter has lost some."""

RULE = "scale-reducing"
LEVEL: Severity = "warning"
FACTOR = Fraction(2)
BAD = """\
title: Wine syrup
makes: 100 ml

# Syrup

Bring [300 ml red wine] and [50 g sugar] [to the boil] [in a saucepan].
[Boil for 10–15 min] [until it coats a spoon].
"""
GOOD = """\
title: Wine and honey
makes: 350 ml

# Wine

Bring [300 ml red wine] and [50 g honey] [to the boil] [in a saucepan].
[Boil for 2 min].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Where a recipe says that liquid boils down, told once, if the factor is beyond the limit."""
    limit = practice().limits["reducing"]
    if 1 / limit < scene.factor < limit:
        return
    told = ((action, boils_down(scene, action, scene.hands[action.number])) for action in scene.recipe.actions)
    found = [(action, signs) for action, signs in told if signs]
    if found:
        longer = "longer" if scene.factor > 1 else "less time"
        message = f"{times_text(scene.factor)}: what boils down takes {longer} than stated"
        place, *more = [_place(action, signs) for action, signs in found]
        labels = tuple(Label(other, "and here") for other in more)
        yield Diagnostic(RULE, LEVEL, place, message, _hint([sign for _, signs in found for sign in signs]), labels)


def _hint(signs: list[Cue | Target | Time]) -> str:
    """What to go by: what the recipe tells of it."""
    told = ["the sign"] * any(isinstance(sign, Cue) for sign in signs)
    told += ["what is left"] * any(isinstance(sign, Target) for sign in signs)
    by = " and ".join(told) or "how thick it is and how much is left"
    return f"go by {by}, not by the minutes"


def _place(action: Action, signs: list[Cue | Target | Time]) -> Span:
    """The minutes beside it, where there are some."""
    times = (read for read in action.reads if isinstance(read, Time) and read.verb is not None)
    return next(times, signs[0]).clause.span


def boils_down(scene: Scene, action: Action, hand: Hand) -> list[Cue | Target | Time]:
    """The clauses of a line that say that liquid boils away: a measure or a part that is to be left, a thickness, or
    `reduce` itself. What stands under a lid or is topped up does not."""
    verbs = practice().verbs
    done = {use.verb.base for use in action.verbs} | {action.work.verb}
    boils = any([not done.isdisjoint(verbs[name]) for name in ("boiling", "cooking", "reducing")]) or _lingers(action)
    signs: list[Cue | Target | Time] = []
    for read in action.reads:
        if isinstance(read, Target):
            says = read.kind == "measure" and (boils or action.work.station == "ring")
        elif isinstance(read, Cue):
            says = _is_less(scene, read, boils) or (boils and _thickens(scene, action, hand, read))
        elif isinstance(read, Time):
            says = read.verb is not None and read.verb.base in verbs["reducing"]
        else:
            continue
        if says and not _covered(scene, action, read.clause.span.start):
            signs.append(read)
    return [] if tended(action, verbs["replenishing"], scene.kitchen) else signs


def _lingers(action: Action) -> bool:
    """Whether it is stirred on the hob for so long that it boils down, whatever the verb."""
    rules, work = practice(), action.work
    long = work.wait is not None and (work.wait.hi or work.wait.lo) > rules.amounts["thickens"]
    return long and work.station == "ring" and work.verb in rules.verbs["lingering"]


def _is_less(scene: Scene, cue: Cue, boils: bool) -> bool:
    """Whether a cue tells how little is left of the liquid: so much, or a part."""
    from tamis.reading.tables import tables

    words = check_words(scene.recipe.language).scaling
    if any(word in cue.text for word in words.reducing):
        return True
    amounts = {"#mass", "#volume", *tables(scene.recipe.language).fractions}
    left = any(word in cue.text for word in words.left)
    return boils and left and not amounts.isdisjoint(cue.clause.items.keys)


def _thickens(scene: Scene, action: Action, hand: Hand, cue: Cue) -> bool:
    """Whether a cue tells that it boils until it is thick, or hotter than water boils. What egg thickens loses nothing;
    what flour thickens, or perhaps a food that nobody knows, is thick after a few minutes, and only what goes on
    boiling is less by then, if there is too little of it to thicken by itself."""
    words = check_words(scene.recipe.language).scaling
    if cue.celsius is not None and cue.celsius.hi > BOILS:
        return True
    said = cue.text
    for place in words.thickest:
        said = said.replace(place, "")
    if not any(word in said for word in words.thick):
        return False
    recipe, rules, wait = scene.recipe, practice(), action.work.wait
    foods = [(index, recipe.uses[index].ingredient.goods) for index in hand.uses]
    if any(food is not None and food.role == "egg" for _, food in foods):
        return False
    binders = [index for index, food in foods if food is None or food.role == "flour" or food.id in rules.thickeners]
    if not binders:
        return True
    if (
        not sweet(recipe, hand.uses)
        and grams(recipe, binders) >= liquid(recipe, hand.uses) * rules.amounts["thickened"]
    ):
        return False
    long = wait is not None and (wait.hi or wait.lo) > rules.amounts["binds"]
    return long and action.work.verb in rules.verbs["boiling"]


def _covered(scene: Scene, action: Action, before: int) -> bool:
    """Whether a lid is put on before a place of the text: a `cover` with no food of its own behind it, or a time spent
    covered."""
    times = (key for read in action.reads if isinstance(read, Time) for key in read.clause.items.keys)
    said = (verb for key in times if (verb := scene.kitchen.verbs.participle(key)) is not None)
    lid = any(tool.equipment.kind == "lid" for tool in action.tools)
    if lid or any(verb.base in practice().verbs["covering"] for verb in said):
        return True
    ends = [use.span.start for use in action.verbs[1:]] + [before]
    for use, end in zip(action.verbs, ends, strict=True):
        foods = (read for read in action.reads if isinstance(read, Ingredient | Reference))
        over = any(use.span.end <= food.clause.span.start < end for food in foods)
        if use.verb.base in practice().verbs["covering"] and use.span.start < before and not over:
            return True
    return False
