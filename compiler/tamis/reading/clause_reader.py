"""One clause: its role decided, its record read, and everything that is wrong with its words told once."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, get_args

from tamis.diagnostics import Diagnostic, Fix
from tamis.kitchen.house import Kitchen
from tamis.quantity.number import problem
from tamis.reading.clauses import Ingredient, Meanwhile, Read, Repeat
from tamis.reading.food import read_ingredient
from tamis.reading.phrase import Phrase
from tamis.reading.roles import Decision, decide
from tamis.reading.tables import Tables
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
        from tamis.reading.unknown import no_role

        no_role(phrase)
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
        long_form = phrase.kitchen.units.unclear.get(word.text)
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
        from tamis.reading.unknown import unknown_food

        return not _part_of_known(phrase, food) and unknown_food(phrase, food)
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
