"""What is said of a clause that the grammar refuses, and of a food that no list knows.

First what is surely meant (a unit misspelt, a measure where none can stand), then what the clause as a whole may have
been meant for, and at the least what could have stood at the place where it stops. One mistake is one finding.

Loaded only for such a clause: most recipes have none.
"""

from __future__ import annotations

from tamis.diagnostics import Diagnostic, Label
from tamis.patterns import pattern
from tamis.quantity.number import problem
from tamis.reading.expected import expected_words
from tamis.reading.guesses import meant, no_clause, several_measured, words_only
from tamis.reading.parsers import parser_of
from tamis.reading.refusal import Refusal
from tamis.reading.refused_amounts import measure_in_words, ratio, remaining_measured, strength
from tamis.reading.refused_times import (
    few_of_a_time,
    food_in_a_time,
    hangs_on_another,
    intervals,
    minutes_behind_hours,
    part_of_a_time,
    stage_behind_time,
    time_where_none_is,
    two_times,
    unit_of_time,
)
from tamis.reading.unit_checks import misspelt
from tamis.source import Span
from tamis.syntax.items import Miswritten
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.reading.clause import Reading
    from tamis.reading.parser import Fault
    from tamis.reading.phrase import Alone

_SHOWN = 60


def refused(reading: Reading, fault: Fault, alone: Alone) -> None:
    """Report one thing about a clause that the grammar refuses."""
    if not reading.text.strip():
        message, hint = "an empty bracket", "take the brackets out, or write what goes in them"
        reading.find("clause-role", "error", reading.clause.span, message, hint)
        return
    refusal = Refusal(reading, fault, alone)
    for look in _SURE:
        if look(refusal):
            return
    if meant(refusal.phrase):
        return
    if fault.token == 0 or _starts_nothing(refusal):
        no_clause(refusal.phrase)
        return
    if not words_only(refusal.phrase):
        at_place(refusal)


def at_place(refusal: Refusal) -> None:
    """What could have stood at the place where the clause stops being one."""
    fault, reading = refusal.fault, refusal.reading
    expected = expected_words(parser_of(reading.kitchen).expected(fault.stack), reading.kitchen.language)
    if fault.token >= len(refusal.cut.words):
        span = Span(reading.clause.span.end - 1, reading.clause.span.end)
        message = f"“{reading.text.strip()[:_SHOWN]}” is not finished"
        reading.find("clause-role", "error", span, message, f"expected {expected}")
        return
    span = refusal.span(fault.token, fault.token)
    message = f"“{refusal.text(fault.token)}” does not fit here"
    label = Label(reading.clause.span, "in this bracket")
    reading.findings.append(Diagnostic("clause-role", "error", span, message, f"expected {expected}", (label,)))


def _starts_nothing(refusal: Refusal) -> bool:
    """Whether the words up to the fault are just words: then the whole is no clause, and no place in it is to blame."""
    return all(refusal.kind(at) in ("", "COMMA") for at in range(min(refusal.fault.token + 1, len(refusal.cut.words))))


# ---- what is surely meant


def _brackets(refusal: Refusal) -> bool:
    """Round brackets that do not pair, and signs with no number behind them."""
    fault = refusal.phrase.fault
    if fault is None:
        return False
    clause = refusal.reading.clause
    span = fault.span.shifted(clause.inner)
    span = span if span.end < clause.span.end else Span(clause.span.end - 1, clause.span.end)
    labels = (Label(clause.span, "in this bracket"),)
    refusal.reading.findings.append(Diagnostic("clause-syntax", "error", span, fault.message, fault.hint, labels))
    return True


def _miswritten(refusal: Refusal) -> bool:
    """A number with a comma in it, which two countries read in two ways."""
    for item in refusal.phrase.items:
        if isinstance(item, Miswritten):
            message = problem(item.text) or f"“{item.text[:24]}” is not a number that can be used here"
            return refusal.find("number-unclear", item.span.shifted(refusal.reading.inner), message)
    return False


def _sign_between_numbers(refusal: Refusal) -> bool:
    """`1:30`, `20..60`, `20 + 60`: a sign that is no range makes no number of two."""
    at = refusal.fault.token
    if refusal.kind(at) not in ("ODD", "COMMA", "SLASH", "PLUS") or refusal.kind(at - 1) != "NUMBER":
        return False
    after = at + 1
    while refusal.kind(after) == "ODD":
        after += 1
    if refusal.kind(after) != "NUMBER":
        return False
    first, last = refusal.text(at - 1).strip(), refusal.text(after).strip()
    said = refusal.reading.text[refusal.cut.starts[at - 1] : refusal.cut.ends[after]].strip()
    hint = f"a range is `{first}–{last}`; a sum is written out"
    if refusal.text(at) == ":":
        hint = f"a time is `{first} h {last} min`; a range is `{first}–{last}`"
    message = f"“{said}”: the sign between the numbers can mean several things"
    return refusal.find("number-unclear", refusal.span(at - 1, after), message, hint)


_OVEN = pattern(r"[1-5]\d\d")


def _slip(refusal: Refusal) -> bool:
    """`500 gr. onions`, `90'`: a usual slip behind a number, with a full stop or of signs alone."""
    at = refusal.fault.token
    dotted = refusal.text(at) == "." and refusal.kind(at - 2) == "NUMBER"
    first = at - 1 if dotted else at
    if not dotted and refusal.kind(at - 1) not in ("NUMBER", "RANGE"):
        return False
    said = refusal.text(first)
    units = refusal.reading.kitchen.units
    meant = units.misspelt(said) or (units.unclear.get(said) if dotted else None)
    if not meant:
        return False
    said = refusal.reading.text[refusal.cut.starts[first] : refusal.cut.ends[at]]
    refusal.reading.findings.append(misspelt(refusal.reading, refusal.span(first, at), said, meant).finding)
    return True


def _letter(refusal: Refusal) -> bool:
    """`2 T of oil`: a letter that is no unit, where one is sure to stand."""
    at = refusal.fault.token
    said = refusal.text(at - 1)
    long_form = refusal.reading.kitchen.units.unclear.get(said)
    if not long_form or refusal.kind(at - 2) != "NUMBER" or refusal.text(at) not in refusal.reading.words.of:
        return False
    message = f"“{said}” is not clear as a unit"
    return refusal.find("unit-unclear", refusal.span(at - 1, at - 1), message, f"write `{long_form}` if that is meant")


def _no_name(refusal: Refusal) -> bool:
    """`100 g`: an amount of nothing."""
    if not refusal.ended or len(refusal.phrase.items) != 1:
        return False
    if refusal.phrase.keys[0] not in ("#mass", "#volume"):
        return False
    clause = refusal.reading.clause
    message = f"“{clause.text.strip()}” is an amount without a name"
    return refusal.find("clause-role", clause.span, message, "write what it is an amount of")


def _degrees(refusal: Refusal) -> bool:
    """`at 200`, `to 63`: a temperature without its scale."""
    at = refusal.fault.token
    if not refusal.ended or refusal.kind(at - 1) != "NUMBER":
        return False
    number = refusal.text(at - 1).strip()
    first = refusal.phrase.key(0)
    expects = parser_of(refusal.reading.kitchen).expected(refusal.fault.stack)
    if "DEGREE" not in expects:
        return False
    if len(refusal.cut.words) == 1:
        oven = f"; an oven’s setting is `[{number} °F]`, `[{number} °C]`" if _OVEN.fullmatch(number) else ""
        message = f"“{number}” is an amount without a name"
        return refusal.find("clause-role", refusal.reading.clause.span, message, f"write what it is an amount of{oven}")
    if not first.isalpha() or ("MASS" in expects and "COUNT" in expects):
        return False
    hint = f"write `{number} °C`, `{number} °F` or another unit"
    message = f"“{number}” of what? A unit is missing"
    return refusal.find("unit-unclear", refusal.span(at - 1, at - 1), message, hint)


def _verb_before_food(refusal: Refusal) -> bool:
    """`[Add 200 g plain flour]`: the work stands before its bracket."""
    at = refusal.fault.token
    found = refusal.phrase.kitchen.verbs.match(refusal.phrase.keys, 0)
    if found is None or refusal.phrase.quantity(found[1]) is None or refusal.kind(at) not in ("MASS", "VOLUME"):
        return False
    verb, rest = refusal.phrase.text(0, found[1]), refusal.phrase.text(found[1], refusal.phrase.end)
    message = "work and food in one bracket: only the food belongs there"
    return refusal.find("clause-role", refusal.reading.clause.span, message, f"write `{verb} [{rest}]`")


def _several(refusal: Refusal) -> bool:
    """`2 onions and 3 carrots`: two foods, each with its amount."""
    hint = several_measured(refusal.phrase)
    clause = refusal.reading.clause
    message = f"“{clause.text.strip()[:_SHOWN]}” names several foods in one bracket"
    return bool(hint) and refusal.find("clause-role", clause.span, message, hint)


_SURE: tuple[Callable[[Refusal], bool], ...] = (
    _brackets,
    ratio,
    _miswritten,
    _several,
    _sign_between_numbers,
    hangs_on_another,
    part_of_a_time,
    few_of_a_time,
    two_times,
    intervals,
    stage_behind_time,
    food_in_a_time,
    _verb_before_food,
    minutes_behind_hours,
    unit_of_time,
    _slip,
    _letter,
    strength,
    remaining_measured,
    _no_name,
    time_where_none_is,
    measure_in_words,
    _degrees,
)
