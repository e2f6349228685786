"""A range of time on a cooking verb, without anything to look for.

Ovens, pans and vegetables differ: between the first minute of a range and the last, only a sign such as
a colour or a core temperature tells the cook when to stop.

Add what to look for: `[bake for 25–30 min] [until golden and hollow when tapped]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.plain import phrases
from tamis.reading.prose import STOPS
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.verbs import Verb
    from tamis.model.history import Hands
    from tamis.model.recipe import Action
    from tamis.reading.plain import Plain

RULE = "missing-cue"
LEVEL: Severity = "information"
BAD = """\
title: Fried onions
serves: 2

# Onions

Fry [2 onions, sliced] [in 20 g butter] [in a frying pan] [over medium heat] [for 8–12 min].
"""
GOOD = """\
title: Fried onions
serves: 2

# Onions

Fry [2 onions, sliced] [in 20 g butter] [in a frying pan] [over medium heat] [for 8–12 min] [until golden].
"""

_SYRUP = 3
"""What is a third of sugar, or more, boils to a syrup (common practice)."""


def check(view: View) -> Iterator[Diagnostic]:
    """Actions whose length the food decides, with nothing that tells when it has."""
    hands: Hands | None = None
    asked = False
    for action in view.recipe.actions:
        work = action.work
        wait = work.wait
        if wait is None or work.given != "text" or work.window or wait.hi is None or wait.single:
            continue
        verb = view.kitchen.verbs.of_base(work.verb)
        if verb is None or not verb.cooks or _tells_when(action, view.recipe.language):
            continue
        message = "a range of time: expected what to look for, to tell when it is done"
        if not asked and any(_flows(use.ingredient.goods) for use in view.recipe.uses):
            hands = view.hands
        asked = True
        yield Diagnostic(RULE, LEVEL, action.time_span, message, _hint(view, action, verb, hands))


def _hint(view: View, action: Action, verb: Verb, hands: Hands | None) -> str:
    said = (words.plain.ask(_cue) for words in view.plain_in(action))
    found = next(filter(None, said), "")
    there = hands[action.number].uses if hands is not None else frozenset()
    offered = f"`[{found}]`" if found else example(view.recipe.language, _done(view, there, verb))
    return f"put it in brackets: {offered}" if found else f"add a bracket such as {offered}"


def _cue(plain: Plain) -> str:
    """What to look for in plain words, up to the next stop."""
    language = plain.kitchen.language
    cues = phrases(check_words(language).cues, language)
    for at in range(len(plain)):
        if size := plain.phrase(cues, at):
            end = next((stop for stop in range(at, len(plain)) if plain.said[stop] in STOPS), len(plain))
            return plain.slice(at, end) if end > at + size else ""
    return ""


def _done(view: View, there: frozenset[int], verb: Verb) -> str:
    """What is often looked for: of a syrup or a sauce that it is thick, of what simmers that it is tender."""
    if verb.station != "ring" or verb.outside:
        return "until_golden"
    uses = [view.recipe.uses[use] for use in sorted(there)]
    foods = [(use.mass.hi, use.ingredient.goods) for use in uses if use.ingredient.goods]
    sugar = sum(mass for mass, goods in foods if goods.role == "sugar")
    flows = all(_flows(goods) for _, goods in foods)
    if foods and (flows or sugar * _SYRUP >= sum(mass for mass, _ in foods)) and not verb.fries:
        return "until_thick"
    return "until_tender" if verb.attention == "unattended" else "until_golden"


def _flows(goods: Goods | None) -> bool:
    """Whether a food may be of a syrup or a sauce, and nothing in it is cooked until it is tender."""
    return goods is not None and (goods.liquid or goods.role in ("sugar", "fat"))


def _tells_when(action: Action, language: str) -> bool:
    if action.work.cue or any(read.role == "cue" or read.role == "target" for read in action.reads):
        return True
    cues = check_words(language).cues
    return any(read.role == "time" and any(word in read.clause.items.keys for word in cues) for read in action.reads)
