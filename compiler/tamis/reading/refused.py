"""What is said of a clause that the grammar refuses, and of a food that no list knows.

First what is surely meant (a unit misspelt, a measure where none can stand), then what the clause as a whole may have
been meant for, and at the least what could have stood at the place where it stops. One mistake is one finding.

Loaded only for such a clause: most recipes have none.
"""

from __future__ import annotations

from tamis.diagnostics import Diagnostic, Fix, Label
from tamis.lalr.table import END
from tamis.patterns import pattern
from tamis.quantity.near import nearest
from tamis.quantity.number import problem
from tamis.reading.clause_reader import parser_of
from tamis.reading.expected import expected_words
from tamis.reading.guesses import meant, no_clause, several_measured
from tamis.reading.phrase import Phrase
from tamis.reading.unit_checks import clock, misspelt
from tamis.source import Span
from tamis.syntax.items import Miswritten, Word
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.reading.clause import Reading
    from tamis.reading.parser import Fault
    from tamis.syntax.cutting import Cut

_SHOWN = 60


class _Refusal:
    """A refused clause: its tokens, the one that does not fit, its items."""

    def __init__(self, reading: Reading, fault: Fault) -> None:
        self.reading = reading
        self.fault = fault
        self.cut: Cut = parser_of(reading.kitchen).vocabulary.cutter.cut(reading.text)
        self.phrase = Phrase(reading)

    def kind(self, at: int) -> str:
        """The class of a token that is no word, "" of one that is, `$END` past the last."""
        if not 0 <= at < len(self.cut.words):
            return END
        choice = self.cut.fixed[at]
        return choice.ways[0][0] if choice else ""

    @property
    def ended(self) -> bool:
        """Whether the clause stops too early."""
        return self.fault.token >= len(self.cut.words)

    def text(self, at: int) -> str:
        """A token as written."""
        return self.reading.text[self.cut.starts[at] : self.cut.ends[at]] if 0 <= at < len(self.cut.words) else ""

    def span(self, first: int, last: int) -> Span:
        """Where the tokens from one to another stand in the file."""
        last = min(last, len(self.cut.words) - 1)
        inner = self.reading.inner
        return Span(inner + self.cut.starts[first], inner + self.cut.ends[last])

    def find(self, rule: str, span: Span, message: str, hint: str = "", fix: Fix | None = None) -> bool:
        """Keep an error, and say that the clause has been dealt with."""
        self.reading.find(rule, "error", span, message, hint, fix)
        return True


def refused(reading: Reading, fault: Fault) -> None:
    """Report one thing about a clause that the grammar refuses."""
    if not reading.text.strip():
        message, hint = "an empty clause", "take the brackets out, or write what goes in them"
        reading.find("clause-role", "error", reading.clause.span, message, hint)
        return
    refusal = _Refusal(reading, fault)
    for look in _SURE:
        if look(refusal):
            return
    if meant(refusal.phrase):
        return
    if fault.token == 0 or _starts_nothing(refusal):
        no_clause(refusal.phrase)
        return
    at_place(refusal)


def at_place(refusal: _Refusal) -> None:
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
    label = Label(reading.clause.span, "in this clause")
    reading.findings.append(Diagnostic("clause-role", "error", span, message, f"expected {expected}", (label,)))


def _starts_nothing(refusal: _Refusal) -> bool:
    """Whether the words up to the fault are just words: then the whole is no clause, and no place in it is to blame."""
    return all(refusal.kind(at) in ("", "COMMA") for at in range(min(refusal.fault.token + 1, len(refusal.cut.words))))


# ---- what is surely meant


def _brackets(refusal: _Refusal) -> bool:
    """Round brackets that do not pair, and signs with no number behind them."""
    fault = refusal.phrase.fault
    if fault is None:
        return False
    clause = refusal.reading.clause
    span = fault.span.shifted(clause.inner)
    span = span if span.end < clause.span.end else Span(clause.span.end - 1, clause.span.end)
    labels = (Label(clause.span, "in this clause"),)
    refusal.reading.findings.append(Diagnostic("clause-syntax", "error", span, fault.message, fault.hint, labels))
    return True


def _miswritten(refusal: _Refusal) -> bool:
    """A number with a comma in it, which two countries read in two ways."""
    for item in refusal.phrase.items:
        if isinstance(item, Miswritten):
            message = problem(item.text) or f"“{item.text[:24]}” is not a number that can be used here"
            return refusal.find("number-unclear", item.span.shifted(refusal.reading.inner), message)
    return False


def _sign_between_numbers(refusal: _Refusal) -> bool:
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


def _unit_of_time(refusal: _Refusal) -> bool:
    """`for 20 mns`, `90'`, `1h30`, `rest for 20`: a number where a time should stand, with no unit that is known."""
    at = refusal.fault.token
    expects = parser_of(refusal.reading.kitchen).expected(refusal.fault.stack)
    if refusal.kind(at - 1) not in ("NUMBER", "RANGE") or not _TIME_ONLY.issuperset(expects) or "TIME" not in expects:
        return False
    first = at - 1
    number = refusal.text(first).strip()
    if refusal.ended:
        hint = f"write `{number} min`, `{number} h` or another unit of time"
        message = f"a time without a unit: “{number}” of what?"
        return refusal.find("time-without-unit", refusal.span(first, first), message, hint)
    return _clock(refusal, first) or _misspelt_time(refusal, number)


_TIME_ONLY = frozenset(("TIME", "RANGE", "FRACTION", "MORE", "NUMBER", "OF", "ARTICLE"))
_OVEN = pattern(r"[1-5]\d\d")


def _clock(refusal: _Refusal, first: int) -> bool:
    """`1h30`: an hour and so many minutes, written without their spaces."""
    at = refusal.fault.token
    found = clock(refusal.reading, refusal.text(first).strip(), refusal.text(at), refusal.span(first, at))
    if found:
        refusal.reading.findings.append(found.finding)
    return found is not None


def _misspelt_time(refusal: _Refusal, number: str) -> bool:
    at = refusal.fault.token
    word = refusal.text(at)
    units = refusal.reading.kitchen.units
    near = units.misspelt(word) or units.unclear.get(word) or nearest(word.lower(), units.names("time"))
    unit = units.get(near) if near else None
    hint = f"write `{number} min`, `{number} h` or another unit of time"
    if unit is not None and unit.kind == "time":
        hint = f"did you mean `{number} {near}`?"
    return refusal.find("unit-unknown", refusal.span(at, at), f"no unit of time is called “{word}”", hint)


def _minutes_behind_hours(refusal: _Refusal) -> bool:
    """`1 hr 30`, `1 hr.30`: minutes without their unit."""
    at = refusal.fault.token
    if not refusal.ended or [refusal.kind(n) for n in range(at - 3, at)] != ["NUMBER", "TIME", "NUMBER"]:
        return False
    said = refusal.reading.text[refusal.cut.starts[at - 3] :].strip()
    written = f"{refusal.text(at - 3).strip()} {refusal.text(at - 2).rstrip('.')} {refusal.text(at - 1).strip()} min"
    message = f"“{said}”: the second number has no unit"
    return refusal.find("time-without-unit", refusal.span(at - 1, at - 1), message, f"write `{written}`")


def _slip(refusal: _Refusal) -> bool:
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


def _no_name(refusal: _Refusal) -> bool:
    """`100 g`: an amount of nothing."""
    if not refusal.ended or len(refusal.phrase.items) != 1:
        return False
    if refusal.phrase.keys[0] not in ("#mass", "#volume"):
        return False
    clause = refusal.reading.clause
    message = f"“{clause.text.strip()}” is an amount without a name"
    return refusal.find("clause-role", clause.span, message, "write what it is an amount of")


def _degrees(refusal: _Refusal) -> bool:
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


def _time_where_none_is(refusal: _Refusal) -> bool:
    """A time inside a cue, a target, a preparation: the plan would lose it."""
    at = refusal.fault.token
    if refusal.kind(at) != "TIME" or refusal.kind(at - 1) != "NUMBER":
        return False
    said = f"{refusal.text(at - 1).strip()} {refusal.text(at)}"
    before = refusal.reading.text[: refusal.cut.starts[at - 1]].strip()
    message = f"a time inside other words: “{said}” is not read here"
    alone = example(refusal.phrase.kitchen.language, "for", time=said)
    if refusal.phrase.key(0) == refusal.phrase.tables.until:
        hint = f"the time stands after a comma: `[{before}, {said}]`, or in a clause of its own: {alone}"
    else:
        hint = f"give it a clause of its own: {alone}"
    return refusal.find("clause-role", refusal.span(at - 1, at), message, hint)


def _verb_before_food(refusal: _Refusal) -> bool:
    """`[Add 200 g plain flour]`: the work stands before its bracket."""
    at = refusal.fault.token
    found = refusal.phrase.kitchen.verbs.match(refusal.phrase.keys, 0)
    if found is None or refusal.phrase.quantity(found[1]) is None or refusal.kind(at) not in ("MASS", "VOLUME"):
        return False
    verb, rest = refusal.phrase.text(0, found[1]), refusal.phrase.text(found[1], refusal.phrase.end)
    message = "work and food in one bracket: only the food belongs there"
    return refusal.find("clause-role", refusal.reading.clause.span, message, f"write `{verb} [{rest}]`")


def _measure_in_words(refusal: _Refusal) -> bool:
    """`1 egg, beaten with 1 tbsp milk`: what is measured there is bought by nobody."""
    at = refusal.fault.token
    if refusal.kind(at) not in ("MASS", "VOLUME") or refusal.kind(at - 1) != "NUMBER":
        return False
    tail = refusal.reading.text[refusal.cut.starts[at - 1] :].strip()
    message = "a measure inside other words: nothing would take this food into account"
    hint = f"give it a clause of its own: `[{tail}]`"
    return refusal.find("clause-role", refusal.span(at - 1, at), message, hint)


def _hangs_on_another(refusal: _Refusal) -> bool:
    """`for 2 minutes less than the packet says`: no plan can be made from it."""
    if refusal.text(refusal.fault.token).lower() not in refusal.phrase.tables.hangs:
        return False
    message = "a time that hangs on another one cannot be planned"
    nine = example(refusal.phrase.kitchen.language, "for_nine")
    hint = f"say how long in all: {nine}, and the rest in plain words"
    return refusal.find("clause-role", refusal.reading.clause.span, message, hint)


def _food_in_a_time(refusal: _Refusal) -> bool:
    """`fry 2 onions for 10 min`: nothing would measure the food."""
    phrase = refusal.phrase
    found = phrase.kitchen.verbs.match(phrase.keys, 0)
    times = [at for at, _ in phrase.quantities("time")]
    if not found or not times:
        return False
    words = [at for at in range(found[1], times[0]) if isinstance(phrase.items[at], Word)]
    for end in reversed(words):
        if phrase.kitchen.larder.find((phrase.keys[end],)):
            food, verb = phrase.text(found[1], end + 1), phrase.text(0, found[1])
            hint = f"part them: `{verb} [{food}] [{phrase.text(end + 1, phrase.end)}]`"
            span = phrase.span(found[1], end + 1)
            return refusal.find("clause-role", span, "a food inside a time: nothing measures it", hint)
    return False


def _several(refusal: _Refusal) -> bool:
    """`2 onions and 3 carrots`: two foods, each with its amount."""
    hint = several_measured(refusal.phrase)
    clause = refusal.reading.clause
    message = f"“{clause.text.strip()[:_SHOWN]}” are several foods in one clause"
    return bool(hint) and refusal.find("clause-role", clause.span, message, hint)


_SURE: tuple[Callable[[_Refusal], bool], ...] = (
    _brackets,
    _miswritten,
    _several,
    _sign_between_numbers,
    _hangs_on_another,
    _food_in_a_time,
    _verb_before_food,
    _minutes_behind_hours,
    _unit_of_time,
    _slip,
    _no_name,
    _time_where_none_is,
    _measure_in_words,
    _degrees,
)
