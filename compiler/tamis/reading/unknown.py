"""What is said of a clause that no table knows, and of a food that the goods do not know.

The nearest thing that may have been meant, and how to write it.

Loaded only for such a clause: most recipes have none.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from tamis.reading.tables import match
from tamis.syntax.items import Quantity

if TYPE_CHECKING:
    from tamis.reading.clauses import Ingredient
    from tamis.reading.phrase import Phrase


def unknown_food(phrase: Phrase, food: Ingredient) -> bool:
    """A food that the goods do not know stays, and is said; what cannot be a food at all is an error."""
    name = food.name.lower()
    words = name.split()
    if any(word in phrase.tables.repeat_nouns or _is_time(phrase, word) for word in words):
        message = f"“{phrase.clause.text.strip()[:60]}” is neither an ingredient nor a time or repeat that can be read"
        hint = "a time is a number with its unit: `[for 10 min]`; a repeat is `[twice]` or `[3 times]`"
        phrase.find("clause-role", "error", phrase.clause.span, message, hint)
        return False
    if "with" in words and phrase.kitchen.larder.find(words[:1]):
        message = f"“{phrase.clause.text.strip()[:60]}” are two foods in one clause"
        first, _, second = phrase.clause.text.strip().partition(" with ")
        phrase.find(
            "unknown-ingredient", "warning", food.name_span, message, f"part them: `[{first}]` with `[{second}]`"
        )
        return True
    if " and " in name or "," in name:
        hint = _one_each(phrase, food)
        if hint:
            message = f"“{food.name}” are two foods in one clause"
            phrase.find("unknown-ingredient", "warning", food.name_span, message, hint)
            return True
    near_tool = phrase.kitchen.cupboard.near(name)
    near = phrase.kitchen.larder.near(name) or near_tool
    if near and near != name:
        message = f"the goods know no “{food.name}”"
        hint = f"did you mean “{near}”? Else enter it in goods.toml"
        phrase.find("unknown-ingredient", "warning", food.name_span, message, hint)
        return True
    message = f"the goods know no “{food.name}”: no weight, allergens or hazards are taken for it"
    phrase.find("unknown-ingredient", "information", food.name_span, message, "enter it in goods.toml if they matter")
    return True


def _is_time(phrase: Phrase, word: str) -> bool:
    unit = phrase.kitchen.units.get(word) if len(word) > 1 else None
    return (unit is not None and unit.kind == "time") or bool(_FUSED_TIME.fullmatch(word))


_FEW_WORDS = 3


def no_role(phrase: Phrase) -> None:
    """Say what a clause may be, and the nearest thing that it might have meant."""
    text = phrase.clause.text.strip()
    if not text:
        phrase.find(
            "clause-role",
            "error",
            phrase.clause.span,
            "an empty clause",
            "take the brackets out, or write what goes in them",
        )
        return
    hints = (_several_foods, _purpose_alone, _what_verb_wants, _hot_tool, _known_at_end, _nearest)
    hint = next(filter(None, (give(phrase) for give in hints)), "")
    if phrase.end == 1 and isinstance(phrase.items[0], Quantity):
        message = f"“{text}” is an amount without a name"
        phrase.find("clause-role", "error", phrase.clause.span, message, "write what it is an amount of")
        return
    preposition = match(phrase.tables.prepositions, phrase.keys, 0)
    expected = (
        f"after “{preposition[0]}” stands equipment, food that is known, or something made before (`the …`)"
        if preposition
        else "expected an ingredient, a thing made before (`the …`), equipment, a time, a heat or a cue"
    )
    message = f"“{text[:60]}” is no clause that is known: {expected}"
    if not hint and preposition is None and all(key.isalpha() for key in phrase.keys) and phrase.end <= _FEW_WORDS:
        hint = "plain words need no brackets; a food gives its measure, or why it has none: `[…, to serve]`"
    if not hint:
        hint = (
            "plain words need no brackets; a clause opens with a number, `the`, a preposition, a work verb with its "
            "time, `until` …"
        )
    phrase.find("clause-role", "error", phrase.clause.span, message, hint)


_FUSED_TIME = re.compile(r"\d*h\d+(min)?")


def _what_verb_wants(phrase: Phrase) -> str:
    found = phrase.kitchen.verbs.match(phrase.keys, 0)
    if not found:
        meant = phrase.kitchen.verbs.participle(phrase.key(0))
        timed = meant is not None and "#time" in phrase.keys
        if meant is None or not timed:
            return ""
        return f"a work verb stands in its plain form: `[{meant.base} {phrase.text(1, phrase.end)}]`"
    verb = phrase.text(0, found[1])
    if phrase.key(found[1]) == "#pieces" and match(phrase.tables.openers, (*phrase.keys[: found[1]], "of"), 0):
        return f"write `[{verb} of {phrase.text(found[1], phrase.end)}]`"
    until = phrase.index("until")
    if until < phrase.end:
        return f"`until …` is a clause of its own: write `{verb} [{phrase.text(until, phrase.end)}]`"
    if "few" in phrase.keys or "some" in phrase.keys:
        unit = next((key for key in phrase.keys if _is_time(phrase, key)), "min")
        return f"say how many, as a range if it varies: `[{verb} for 3–5 {unit}]`"
    if not found[0].waits:
        return f"“{verb}” without a time needs no brackets; with one it is `[{verb} for 5 min]`"
    return f"a clause that opens with “{verb}” gives its time: `[{verb} for 30 min]`; what to look for is `[until …]`"


def _purpose_alone(phrase: Phrase) -> str:
    """`Season [to taste] with [salt]`: a purpose stands after the comma of its food."""
    found = match(phrase.tables.purposes, phrase.keys, 0)
    if not found or found[1] < phrase.end:
        return ""
    return f"it belongs to the food, after a comma: `[salt, {found[0]}]`; alone it needs no brackets"


def _known_at_end(phrase: Phrase) -> str:
    """`with buttered peas`: a food that is known, described by words that are not."""
    preposition = match(phrase.tables.prepositions, phrase.keys, 0)
    start = preposition[1] if preposition else 0
    for at in range(start + 1, phrase.end):
        if all(key[:1].isalpha() for key in phrase.keys[start:]) and phrase.kitchen.larder.find(phrase.keys[at:]):
            food, words = phrase.text(at, phrase.end), phrase.text(start, at)
            before = f"{preposition[0]} " if preposition else ""
            return f"the goods know “{food}”: write how much, and the rest after a comma, `[{before}… {food}, {words}]`"
    return ""


def _hot_tool(phrase: Phrase) -> str:
    """How to say `[a 200 °F oven]`, which is two clauses."""
    degrees = next((item for item in phrase.items if isinstance(item, Quantity) and item.kind == "temperature"), None)
    tool = phrase.kitchen.cupboard.find(phrase.keys[-1:])
    if degrees is None or tool is None:
        return ""
    setting = phrase.clause.text[degrees.span.start : degrees.span.end].strip()
    return f"part them: `[in the {tool.item.name}] [at {setting}]`"


_PARTED = re.compile(r"\band\b|&|\+|,")
_TO_TASTE = re.compile(r",?\s*\bto taste\s*\Z")


def _several_foods(phrase: Phrase) -> str:
    """How to say `[salt and pepper to taste]`, which is two clauses."""
    text = phrase.clause.text.lower()
    preposition = match(phrase.tables.prepositions, phrase.keys, 0)
    if preposition:
        text = text.removeprefix(preposition[0]).lstrip()
    taste = _TO_TASTE.search(text)
    return _apart(phrase, text[: taste.start()] if taste else text, "", ", to taste" if taste else "")


def _one_each(phrase: Phrase, food: Ingredient) -> str:
    """How to say `[1 tsp each of cumin and coriander]`: each food with its measure, if that is what was meant."""
    name = food.name.lower()
    each = name.startswith(("each ", "each of "))
    measure = f"{food.measure_text} " if each and food.measure_text else ""
    after = ", to taste" if food.purpose == "to taste" else ""
    return _apart(phrase, name.removeprefix("each ").removeprefix("of "), measure, after)


def _apart(phrase: Phrase, text: str, before: str, after: str) -> str:
    foods = [part.strip() for part in _PARTED.split(text) if part.strip()]
    known = [part for part in foods if phrase.kitchen.larder.find(tuple(part.split()))]
    if len(known) < 2:
        return ""
    return "one food to a clause: " + " and ".join(f"`[{before}{part}{after}]`" for part in known)


# Shorter words (both, warm) are near to too many others.
_LEAST_NAME = 5


def _nearest(phrase: Phrase) -> str:
    from tamis.quantity.near import nearest

    tried = match(phrase.tables.hints, phrase.keys, 0)
    if tried:
        return f"did you mean `[{tried[0]} …]`?" if tried[0] in ("until",) else f"did you mean `[{tried[0]}]`?"
    openers = [" ".join(words) for lengths in phrase.tables.openers.values() for _, known in lengths for words in known]
    head = " ".join(phrase.keys[:2])
    for words in (head, phrase.keys[0]):
        near = nearest(words, openers)
        preposition = match(phrase.tables.prepositions, phrase.keys, 0)
        if (
            near and near != words and not preposition and near[0] == words[0]
        ):  # hardly anybody mistypes the first letter
            return f"did you mean `[{near} …]`?"
    name = " ".join(key for key in phrase.keys if key[:1].isalpha())
    if len(name) < _LEAST_NAME or phrase.kitchen.verbs.participle(name):
        return ""
    near = phrase.kitchen.larder.near(name) or phrase.kitchen.cupboard.near(name)
    return f"did you mean “{near}”?" if near and near != name else ""
