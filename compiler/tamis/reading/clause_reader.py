"""One clause: its role decided, its record read, and everything that is wrong with its words told once."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, get_args

from tamis.diagnostics import Diagnostic, Fix
from tamis.kitchen.house import Kitchen
from tamis.quantity.number import problem
from tamis.quantity.units import LONG_FORMS
from tamis.reading.clauses import Ingredient, Meanwhile, Read, Repeat
from tamis.reading.food import read_ingredient
from tamis.reading.phrase import Phrase
from tamis.reading.roles import Decision, decide
from tamis.reading.tables import Tables, match
from tamis.reading.things import read_division, read_naming, read_reference, read_repeat, read_tool
from tamis.reading.timing import read_cue, read_pause, read_setting, read_target, read_tending, read_time
from tamis.syntax.items import Miswritten, Quantity, QuantityKind, Word

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from tamis.syntax.document import Clause


def _read_meanwhile(phrase: Phrase, _decision: Decision) -> Meanwhile:
    return Meanwhile(phrase.clause)


_READERS: Mapping[str, Callable[[Phrase, Decision], Read | None]] = {
    "ingredient": read_ingredient,
    "unmeasured": read_ingredient,
    "reference": read_reference,
    "equipment": read_tool,
    "setting": read_setting,
    "target": read_target,
    "time": read_time,
    "cue": read_cue,
    "tending": read_tending,
    "pause": read_pause,
    "naming": read_naming,
    "division": read_division,
    "repeat": read_repeat,
    "meanwhile": _read_meanwhile,
}


def read_clause(clause: Clause, kitchen: Kitchen, tables: Tables, findings: list[Diagnostic]) -> Read | None:
    """The record of a clause; None, and one finding, where it cannot be read."""
    if clause.items.fault:
        return None
    phrase = Phrase(clause, kitchen, tables, findings)
    if not _numbers_are_sound(phrase):
        return None
    decision = decide(phrase)
    if decision is None:
        _no_role(phrase)
        return None
    record = _READERS[decision.role](phrase, decision)
    if isinstance(record, Ingredient):
        return record if _food_is_sound(phrase, record, decision) else None
    if isinstance(record, Repeat) and (record.number < 1 or record.number.denominator > 1):
        message = f"“{clause.text.strip()}”: a line is done a whole number of times, at least once"
        phrase.find("number-unclear", "error", clause.span, message, "write `[twice]`, `[3 times]` or `[in 2 batches]`")
        return None
    return record


_NUMBERS = frozenset(("#miswritten", *(f"#{kind}" for kind in get_args(QuantityKind))))


def _numbers_are_sound(phrase: Phrase) -> bool:
    """Numbers that cannot be read, and ranges the wrong way round."""
    if _NUMBERS.isdisjoint(phrase.keys):
        return True
    for item in phrase.items:
        if isinstance(item, Miswritten):
            span = item.span.shifted(phrase.clause.inner)
            message = problem(item.text) or f"“{item.text[:24]}” is not a number that can be used here"
            phrase.find("number-unclear", "error", span, message)
            return False
        if isinstance(item, Quantity) and _is_reversed(phrase, item):
            span = item.span.shifted(phrase.clause.inner)
            text = phrase.clause.text[item.span.start : item.span.end]
            message = f"the range “{text}” runs the wrong way round"
            phrase.find("range-reversed", "error", span, message, _right_way_round(text))
            return False
    return _units_are_sound(phrase)


def _right_way_round(text: str) -> str:
    found = re.match(r"(\S+?)(\s*[–—−-]\s*|\s+to\s+)(\S+)(.*)", text)
    return f"did you mean `{found[3]}{found[2]}{found[1]}{found[4]}`?" if found else "the smaller number comes first"


def _is_reversed(phrase: Phrase, item: Quantity) -> bool:
    low_end, high_end = item.amount
    if low_end is not high_end and low_end > high_end:
        return True
    if item.upper is None:
        return False
    low, high = phrase.kitchen.units.get(item.unit), phrase.kitchen.units.get(item.upper.unit)
    return bool(low and high and item.amount.lo * low.factor > item.upper.amount.hi * high.factor)


def _units_are_sound(phrase: Phrase) -> bool:
    """Letters that are no unit (`1 T oil`) and misspelt units (`2 tbps sugar`)."""
    if "#pieces" not in phrase.keys:
        return True
    sound = True
    for at, item in phrase.quantities("pieces"):
        word = phrase.items[at + 1] if at + 1 < phrase.end else None
        if not isinstance(word, Word):
            continue
        span = word.span.shifted(phrase.clause.inner)
        if word.text in ("C", "F", "c") and item.amount.lo >= _LEAST_DEGREES:
            text, sign = phrase.text(at, at + 1), word.text.upper()
            written = f"{text} °{sign}"
            mend = Fix(span, f"°{sign}", f"write `{written}`")
            phrase.find("unit-unclear", "error", span, f"“{word.text}” alone is no unit", f"write `{written}`", mend)
            sound = False
            continue
        long_form = LONG_FORMS.get(word.text)
        if long_form and (word.text != "in" or at + 2 == phrase.end or not _opens_place(phrase, at + 2)):
            fix = Fix(span, long_form, f"write `{long_form}`") if word.text in ("T", "t") else None
            message = f"“{word.text}” alone is no unit"
            phrase.find("unit-unclear", "error", span, message, f"write `{long_form}` if that is meant", fix)
            return False
        if _misspelt(phrase, at + 1, word):
            near = _unit_meant(phrase, word.lower)
            fix = Fix(span, near, f"write `{near}`")
            message = f"no unit is called “{word.text}”"
            phrase.find("unit-unknown", "error", span, message, f"did you mean `{near}`?", fix)
            return False
    return sound


def _unit_meant(phrase: Phrase, word: str) -> str:
    """The unit that a misspelt one is near to, as cooks write it."""
    near = phrase.kitchen.units.near(word) or ""
    unit = phrase.kitchen.units.get(near)
    return unit.id if unit and unit.id.isalpha() else near


# Nobody counts so many cups; it is a temperature.
_LEAST_DEGREES = 30


def _opens_place(phrase: Phrase, at: int) -> bool:
    return phrase.key(at) in ("the", "a", "an", "one", "each")


def _misspelt(phrase: Phrase, at: int, word: Word) -> bool:
    """A word before a known food that is nothing itself, but is spelt nearly like a unit."""
    kitchen = phrase.kitchen
    if at + 1 >= phrase.end or len(word.lower) < 3 or not isinstance(phrase.items[at + 1], Word):
        return False
    if kitchen.units.get(word.lower) or kitchen.cupboard.count_word(word.lower) or word.lower in phrase.tables.how:
        return False
    rest = phrase.keys[at + 1 :] if phrase.key(at + 1) != "of" else phrase.keys[at + 2 :]
    rest = rest[: next((n for n, key in enumerate(rest) if not key[:1].isalpha()), len(rest))]
    if (
        not kitchen.larder.find(rest)
        or kitchen.larder.find((word.lower, *rest))
        or kitchen.cupboard.find((word.lower, *rest))
    ):
        return False
    return kitchen.units.near(word.lower) is not None


def _food_is_sound(phrase: Phrase, food: Ingredient, decision: Decision) -> bool:
    """A food needs a name; one that the goods do not know is kept, and said."""
    if food.name_span == phrase.clause.span and not food.piece_word:
        text = phrase.clause.text.strip()
        message = f"“{text}” is an amount without a name"
        oven = f"; an oven’s setting is `[{text} °F]`, `[{text} °C]`" if re.fullmatch(r"[1-5]\d\d", text) else ""
        phrase.find("clause-role", "error", phrase.clause.span, message, f"write what it is an amount of{oven}")
        return False
    if food.goods is None:
        return not _part_of_known(phrase, food) and _unknown(phrase, food)
    return True


def _part_of_known(phrase: Phrase, food: Ingredient) -> bool:
    """`juice of half the orange`: a share of something there cannot be juiced, a piece can."""
    words = food.name.lower().split()
    if not food.part or len(words) < len(("half", "the", "orange")) or words[1] != "the":
        return False
    if words[0] not in phrase.tables.fractions:
        return False
    rest = " ".join(words[2:])
    article = "an" if rest[:1] in "aeiou" else "a"
    hint = f"count it here too: `[{food.part} of {words[0]} {article} {rest}]`; the table takes both parts from one"
    phrase.find("clause-role", "error", food.name_span, f"a part of “the {rest}” cannot be measured", hint)
    return True


def _unknown(phrase: Phrase, food: Ingredient) -> bool:
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


def _no_role(phrase: Phrase) -> None:
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
        if near and near != words and near[0] == words[0]:  # hardly anybody mistypes the first letter
            return f"did you mean `[{near} …]`?"
    name = " ".join(key for key in phrase.keys if key[:1].isalpha())
    if len(name) < _LEAST_NAME or phrase.kitchen.verbs.participle(name):
        return ""
    near = phrase.kitchen.larder.near(name) or phrase.kitchen.cupboard.near(name)
    return f"did you mean “{near}”?" if near and near != name else ""
