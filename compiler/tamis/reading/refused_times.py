"""What is surely meant in a refused clause where its time is at fault."""

from __future__ import annotations

from tamis.quantity.measure_words import unit_words
from tamis.quantity.near import nearest
from tamis.reading.apart import bracketed_end
from tamis.reading.parsers import parser_of
from tamis.reading.refusal import Refusal
from tamis.reading.unit_checks import clock
from tamis.syntax.items import Word
from tamis.words import example


def unit_of_time(refusal: Refusal) -> bool:
    """`for 20 mns`, `90'`, `1h30`, `rest for 20`: a number where a time should stand, with no unit that is known."""
    at = refusal.fault.token
    expects = parser_of(refusal.reading.kitchen).expected(refusal.fault.stack)
    if refusal.kind(at - 1) not in ("NUMBER", "RANGE") or not _TIME_ONLY.issuperset(expects) or "TIME" not in expects:
        return False
    first = at - 1
    number = refusal.text(first).strip()
    if refusal.kind(at) == "DEGREE":
        return _word_before_heat(refusal, f"{number} {refusal.text(at)}")
    if refusal.ended:
        hint = f"write `{number} min`, `{number} h` or another unit of time"
        message = f"a time without a unit: “{number}” of what?"
        return refusal.find("time-without-unit", refusal.span(first, first), message, hint)
    return _clock(refusal, first) or _misspelt_time(refusal, number)


def _clock(refusal: Refusal, first: int) -> bool:
    """`1h30`: an hour and so many minutes, written without their spaces."""
    at = refusal.fault.token
    found = clock(refusal.reading, refusal.text(first).strip(), refusal.text(at), refusal.span(first, at))
    if found:
        refusal.reading.findings.append(found.finding)
    return found is not None


def _misspelt_time(refusal: Refusal, number: str) -> bool:
    at = refusal.fault.token
    word = refusal.text(at)
    units = refusal.reading.kitchen.units
    near = units.misspelt(word) or units.unclear.get(word) or nearest(word.lower(), units.names("time"))
    unit = units.get(near) if near else None
    hint = f"write `{number} min`, `{number} h` or another unit of time"
    if unit is not None and unit.kind == "time":
        hint = f"did you mean `{number} {near}`?"
    return refusal.find("unit-unknown", refusal.span(at, at), f"no unit of time is called “{word}”", hint)


def minutes_behind_hours(refusal: Refusal) -> bool:
    """`1 hr 30`, `1 hr.30`: minutes without their unit."""
    at = refusal.fault.token
    if not refusal.ended or [refusal.kind(n) for n in range(at - 3, at)] != ["NUMBER", "TIME", "NUMBER"]:
        return False
    said = refusal.reading.text[refusal.cut.starts[at - 3] :].strip()
    written = f"{refusal.text(at - 3).strip()} {refusal.text(at - 2).rstrip('.')} {refusal.text(at - 1).strip()} min"
    message = f"“{said}”: the second number has no unit"
    return refusal.find("time-without-unit", refusal.span(at - 1, at - 1), message, f"write `{written}`")


def time_where_none_is(refusal: Refusal) -> bool:
    """A time inside a cue, a target, a preparation: the plan would lose it."""
    at = refusal.fault.token
    if refusal.kind(at) != "TIME" or refusal.kind(at - 1) != "NUMBER":
        return False
    said = f"{refusal.text(at - 1).strip()} {refusal.text(at)}"
    before = refusal.reading.text[: refusal.cut.starts[at - 1]].strip()
    message = f"“{said}”: a time among other words cannot be read here"
    alone = example(refusal.phrase.kitchen.language, "for", time=said)
    if refusal.phrase.key(0) == refusal.phrase.tables.until:
        hint = f"write the time after a comma: `[{before}, {said}]`, or in a bracket of its own: {alone}"
    else:
        hint = f"give it a bracket of its own: {alone}"
    return refusal.find("clause-role", refusal.span(at - 1, at), message, hint)


def hangs_on_another(refusal: Refusal) -> bool:
    """`for 2 minutes less than the packet says`: no plan can be made from it."""
    if refusal.text(refusal.fault.token).lower() not in refusal.phrase.tables.hangs:
        return False
    message = "a time that depends on another time cannot be planned"
    nine = example(refusal.phrase.kitchen.language, "for_nine")
    hint = f"say how long in all: {nine}, and the rest in plain words"
    return refusal.find("clause-role", refusal.reading.clause.span, message, hint)


def part_of_a_time(refusal: Refusal) -> bool:
    """`with steam for the first 10 min`: part of a time that another clause gives."""
    phrase = refusal.phrase
    timed = [at for at, _ in phrase.quantities("time")]
    if not timed or phrase.key(timed[0] - 1) not in phrase.tables.time_parts:
        return False
    message = f"“{phrase.text(timed[0] - 1, timed[0] + 1)}” is part of another time: the timeline would count it twice"
    alone = example(phrase.kitchen.language, "for", time=phrase.text(timed[0], timed[0] + 1))
    hint = f"give each part its own line and time: {alone}"
    return refusal.find("clause-role", phrase.span(timed[0] - 1, timed[0] + 1), message, hint)


def few_of_a_time(refusal: Refusal) -> bool:
    """`for a few minutes`: no plan can be made from it."""
    phrase = refusal.phrase
    for at in range(1, phrase.end):
        unit = phrase.kitchen.units.get(phrase.key(at)) if len(phrase.key(at)) > 1 else None
        if phrase.key(at - 1) in phrase.tables.few and unit is not None and unit.kind == "time":
            said = phrase.text(at, at + 1)
            start = at - 2 if phrase.key(at - 2) in phrase.tables.articles else at - 1
            hint = f"say how many, as a range if it varies: `[{phrase.text(0, start)} 3–5 {said}]`"
            message = f"“{phrase.text(at - 1, at + 1)}” is not a time that can be planned"
            return refusal.find("clause-role", phrase.span(at - 1, at + 1), message, hint)
    return False


def two_times(refusal: Refusal) -> bool:
    """`on speed 2 for 4 min, then speed 4 for 6 min`: one record holds one time."""
    phrase = refusal.phrase
    timed = [at for at, _ in phrase.quantities("time")]
    bare = 0
    if timed:  # `for 10 min, then for 30`
        numbers = range(timed[-1] + 1, phrase.end)
        bare = next((at for at in numbers if phrase.quantity(at) and phrase.key(at - 1) in phrase.tables.for_), 0)
        timed += [bare] if bare else []
    comma = next((at for at in range(timed[0], timed[-1]) if phrase.key(at) == ","), 0) if timed else 0
    if not comma or phrase.index(phrase.tables.until) < timed[-1]:
        return False
    first, rest = phrase.text(0, comma), phrase.text(comma + 1, phrase.end)
    message = f"two times in one bracket: “{first}” and “{rest}”"
    quantity = phrase.quantity(timed[0])
    if bare and quantity:
        rest = f"{phrase.text(comma + 1, bare + 1)} {quantity.unit} {phrase.text(bare + 1, phrase.end)}".strip()
    hint = f"give each action a bracket with its time: {_two_works(refusal, first, rest)}"
    return refusal.find("clause-role", refusal.reading.clause.span, message, hint)


def _two_works(refusal: Refusal, first: str, rest: str) -> str:
    """The cook's own words as two clauses, or an example."""
    phrase = refusal.phrase
    words = rest.split()
    while words and words[0].lower() in phrase.tables.ands.union(phrase.tables.then):
        words.pop(0)
    one, other = bracketed_end(phrase, first), bracketed_end(phrase, " ".join(words))
    if not one or not other:
        return example(phrase.kitchen.language, "two_works")
    return f"`{one}, {phrase.tables.then[0]} {other}`"


def intervals(refusal: Refusal) -> bool:
    """`3 times, at 30-minute intervals`: how often, and how far apart."""
    phrase = refusal.phrase
    times = list(phrase.quantities("time"))
    gaps = ("", ",", phrase.tables.at, *phrase.tables.of, *phrase.tables.repeat_nouns)
    if len(times) != 1 or phrase.key(times[0][0] - 1) not in gaps:  # *3 times in an hour* is no gap
        return False
    count = phrase.quantity(0) if phrase.key(1) in phrase.tables.repeat_nouns else None
    many = count.amount.lo if count and count.amount.single else 2 if phrase.key(0) in phrase.tables.twice else 0
    language, gap = phrase.kitchen.language, times[0][1].amount
    unit = phrase.kitchen.units.get(times[0][1].unit)
    whole = gap.lo * many
    if not many or unit is None or not gap.single or whole.denominator * gap.lo.denominator > 1:
        return False
    said = [f"{number} {unit_words(unit.id, number > 1, language)}" for number in (gap.lo, whole)]
    offered = example(language, "every", gap=said[0], time=said[1])
    message = "how many times, and how far apart: the timeline needs to know how long in all"
    return refusal.find("clause-role", refusal.reading.clause.span, message, f"for example {offered}")


def stage_behind_time(refusal: Refusal) -> bool:
    """`2 h bulk`, `45 min proof`: what is done stands behind its time."""
    phrase = refusal.phrase
    time = phrase.quantity(0)
    if time is None or time.kind != "time" or not 1 < phrase.end <= _STAGE:
        return False
    if not all(key[:1].isalpha() for key in phrase.keys[1:]):
        return False
    said, words = phrase.text(0, 1), phrase.text(1, phrase.end)
    language = phrase.kitchen.language
    verb = phrase.kitchen.verbs.match(phrase.keys, 1)
    if verb is not None and 1 + verb[1] == phrase.end:
        offered = example(language, "wait", verb=words.lower(), time=said)
    else:
        offered = f"`{words} {example(language, 'for', time=said).strip('`')}`"
    message = f"what is done stands before its time: “{words}” does not fit here"
    return refusal.find("clause-role", phrase.span(1, phrase.end), message, f"write {offered}")


# A time and the two words of a stage: *2 h bulk ferment*.
_STAGE = 3


def _word_before_heat(refusal: Refusal, heat: str) -> bool:
    """`for 20 minutes 180 °C`: how hot is said with a word before it."""
    at = refusal.fault.token
    before = refusal.reading.text[: refusal.cut.starts[at - 1]].strip()
    word = refusal.phrase.tables.at
    message = f"a word is missing before “{heat}”"
    hint = f"an oven stands `{word} {heat}`: `[{before} {word} {heat}]`"
    return refusal.find("clause-role", refusal.span(at - 1, at), message, hint)


def food_in_a_time(refusal: Refusal) -> bool:
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


_TIME_ONLY = frozenset(("TIME", "AND", "RANGE", "FRACTION", "MORE", "NUMBER", "NUMWORD", "OF", "ARTICLE"))
