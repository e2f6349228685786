"""Clauses about time and heat: times, cues, tending, pauses, settings and targets."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tamis.quantity.amount import Amount
from tamis.quantity.temperature import c_from_f, c_from_gas
from tamis.reading.clauses import Cue, Pause, Setting, Target, Tending, Time
from tamis.reading.durations import DurationRead, find_duration
from tamis.reading.phrase import Phrase, measures_of
from tamis.reading.roles import Decision
from tamis.reading.tables import match
from tamis.syntax.items import Quantity

if TYPE_CHECKING:
    from tamis.kitchen.verbs import Verb


# What only a time can say: a rate, both sides, more of it, whose hands.
_TOLD_APART = frozenset(("per", "each", "both", "more", "another", "hands", "unattended"))


def read_time(phrase: Phrase, decision: Decision) -> Time | Cue | Pause | None:
    """`knead for 5 min`, `20 min per 500 g`, `3 min on each side`, `chill overnight`, `bake for 20 min at 200 °C`.

    What is done `1 h before roasting` needs nobody in that hour."""
    at = phrase.hedged(0) if phrase.key(0) not in ("at", "up") else 0
    found = phrase.kitchen.verbs.match(phrase.keys, at)
    read = decision.duration or find_duration(phrase, decision.start)
    if not read:
        _without_unit(phrase)
        return None
    verb = found[0] if found else None
    if phrase.key(read.start - 1) == "within":  # `serve within 2 hours` is no wait of 2 hours
        return Pause(phrase.clause, "within", read.duration)
    if found and _holds_food(phrase, at + found[1], read.start):
        return None
    if "than" in phrase.keys[read.end :]:
        _hangs_on_another(phrase)
        return None
    verb_text = phrase.text(at, at + found[1]) if found else ""
    setting = _setting_in(phrase, at + (found[1] if found else 0))
    if "until" in phrase.keys and setting is None and _TOLD_APART.isdisjoint(phrase.keys):
        return _until(phrase, read, verb, verb_text)
    setting = setting or _room_in(phrase)
    per = phrase.quantity(read.end + 1) if phrase.key(read.end) == "per" else None
    rest = phrase.keys[read.end :]
    return Time(
        phrase.clause,
        read.duration,
        verb,
        verb_text,
        measures_of(phrase, per)[0] if per and per.kind == "mass" else None,
        "each" in rest or "both" in rest,
        "another" in phrase.keys or "more" in rest,
        setting,
        False if rest[:1] == ("before",) else _attention(phrase, rest),
        phrase.clause.text,
    )


def _until(phrase: Phrase, read: DurationRead, verb: Verb | None, verb_text: str) -> Cue:
    """`simmer for 1 h, until tender` says the same as `simmer [until tender, 1 h]`."""
    start, end = phrase.index("until"), phrase.end
    if read.start > start:
        commas = [at for at in range(start, read.start) if phrase.key(at) == ","]
        end = commas[-1] if commas else read.start
    degrees = _degrees(phrase, start)
    return Cue(phrase.clause, phrase.text(start, end), degrees[0] if degrees else None, read.duration, verb, verb_text)


def _holds_food(phrase: Phrase, start: int, end: int) -> bool:
    """`fry 2 onions for 10 min`: nothing would measure the food, so it is told."""
    words = [at for at in range(start, min(end, phrase.end)) if phrase.key(at) not in ("for", ",", "another")]
    last = words[-1] if words else -1
    if last < 0 or not phrase.kitchen.larder.find((phrase.key(last),)):
        return False
    food, verb = phrase.text(words[0], last + 1), phrase.text(0, start)
    hint = f"part them: `{verb} [{food}] [{phrase.text(last + 1, phrase.end)}]`"
    span = phrase.span(words[0], last + 1)
    phrase.find("clause-role", "error", span, "a food inside a time: nothing measures it", hint)
    return True


def _hangs_on_another(phrase: Phrase) -> None:
    """`for 2 minutes less than the packet says`: no plan can be made from it."""
    message = "a time that hangs on another one cannot be planned"
    hint = "say how long in all: `[for 9 min]`, and the rest in plain words"
    phrase.find("clause-role", "error", phrase.clause.span, message, hint)


def _attention(phrase: Phrase, keys: tuple[str, ...]) -> bool | None:
    if not phrase.tables.hands.isdisjoint(keys):
        return True
    return None if phrase.tables.free.isdisjoint(keys) else False


def _without_unit(phrase: Phrase) -> None:
    """A number where a time should stand, with no unit of time."""
    for at, quantity in phrase.quantities("pieces"):
        text = phrase.text(at, at + 1)
        near = phrase.kitchen.units.near(phrase.key(at + 1)) if phrase.key(at + 1) else None
        hint = f"did you mean `{text} {near}`?" if near else f"write `{text} min`, `{text} h` or another unit of time"
        span = quantity.span.shifted(phrase.clause.inner)
        phrase.find("time-without-unit", "error", span, f"a time without a unit: “{text}” of what?", hint)
        return


def _setting_in(phrase: Phrase, start: int) -> Setting | None:
    """A setting at the end of a time: `at 200 °C`, `on low`, `over medium heat`."""
    for at, key in enumerate(phrase.keys[start:], start):
        if key in ("at", "@", "over", "on") and (
            not phrase.tables.setting_words.isdisjoint(phrase.keys[at:]) or _degrees(phrase, at)
        ):
            return _setting(phrase, at)
    return None


def _room_in(phrase: Phrase) -> Setting | None:
    """`leave for 2 h at room temperature`."""
    at = next((at for at in range(1, phrase.end) if match(phrase.tables.rooms, phrase.keys, at)), None)
    return None if at is None else Setting(phrase.clause, "room", word=phrase.text(at, phrase.end))


def _degrees(phrase: Phrase, start: int) -> tuple[Amount, bool] | None:
    """The first temperature from an index on, in °C, and whether it is a fan oven's. A fan's own figure, given
    beside the other, does not count."""
    for at, key in enumerate(phrase.keys[start:], start):
        item = phrase.items[at]
        if key == "#temperature" and isinstance(item, Quantity):
            return _celsius(item), phrase.key(at + 1) == "fan"
        if key == "#gas" and isinstance(item, Quantity):
            low, high = c_from_gas(item.amount.lo), c_from_gas(item.amount.hi)
            return (Amount(low, high), False) if low is not None and high is not None else None
    return None


def _celsius(item: Quantity) -> Amount:
    if item.unit.lower().endswith("f") or item.unit.lower().endswith("fahrenheit"):
        return Amount(c_from_f(item.amount.lo), c_from_f(item.amount.hi))
    return item.amount


def read_setting(phrase: Phrase, decision: Decision) -> Setting:
    """`at 180 °C / 160 °C fan`, `over medium heat`, `on low speed`, `off the heat`, `at room temperature`."""
    return _setting(phrase, decision.start)


def _setting(phrase: Phrase, start: int) -> Setting:
    text = phrase.clause.text
    if phrase.keys[:3] == ("off", "the", "heat"):
        return Setting(phrase.clause, "off", text=text)
    degrees = _degrees(phrase, start)
    if degrees:
        return Setting(phrase.clause, "temperature", degrees[0], degrees[1], text=text)
    if any(match(phrase.tables.rooms, phrase.keys, at) for at in range(start, phrase.end)):
        return Setting(phrase.clause, "room", word=phrase.text(start, phrase.end), text=text)
    words = [key for key in phrase.keys[start:] if key in phrase.tables.setting_words]
    kind = "speed" if "speed" in words or phrase.key(phrase.end - 1) == "speed" else "heat"
    level = next((word for word in words if word not in phrase.tables.heats), "")
    if not words:  # `at a bare simmer`
        level = phrase.text(start + (phrase.key(start) == "at"), phrase.end)
    return Setting(phrase.clause, "speed" if kind == "speed" else "heat", word=level, text=text)


def read_target(phrase: Phrase, decision: Decision) -> Target | None:
    """`to 230 °C`, `to the boil`, `to 200 ml`, `to 38 × 6 cm`, `4 mm thick`; a bare number is told."""
    text = phrase.clause.text
    _time_is_apart(phrase)
    degrees = _degrees(phrase, decision.start)
    if degrees:
        return Target(phrase.clause, "temperature", degrees[0], text=text)
    at = phrase.hedged(decision.start)
    quantity = phrase.quantity(at)
    if quantity and quantity.kind == "pieces" and at + 1 == phrase.end:
        number = phrase.text(at, at + 1)
        hint = f"write `{number} °C`, `{number} °F` or another unit"
        phrase.find("unit-unclear", "error", phrase.span(at, at + 1), f"“{number}” of what? A unit is missing", hint)
        return None
    if quantity and quantity.kind in ("mass", "volume"):
        return Target(phrase.clause, "measure", measure=measures_of(phrase, quantity)[0], text=text)
    if any(key in ("#length", "#product") for key in phrase.keys):
        return Target(phrase.clause, "size", text=text)
    return Target(phrase.clause, "state", word=phrase.text(decision.start, phrase.end), text=text)


def _time_is_apart(phrase: Phrase) -> None:
    """`to stand for 5 min`: the target would be reached by the kitchen's estimate, and the cook's own time be lost."""
    at = phrase.index("#time")
    if at >= phrase.end:
        return
    quantity = phrase.items[at]
    said = phrase.text(at, at + 1)
    message = f"a time inside a target: “{said}” is not read here"
    hint = f"give it a clause of its own: `[for {said}]`"
    phrase.find("clause-role", "error", quantity.span.shifted(phrase.clause.inner), message, hint)


def read_cue(phrase: Phrase, decision: Decision) -> Cue:
    """`until golden, about 5 min`: what to look for, a temperature in it, and the time after its comma."""
    degrees = _degrees(phrase, decision.start)
    comma = phrase.index(",")
    duration = None
    while comma < phrase.end:
        found = find_duration(phrase, phrase.hedged(comma + 1), only_here=True) or find_duration(
            phrase, comma + 1, True
        )
        if found:
            duration = found.duration
            break
        comma = phrase.index(",", comma + 1)
    text = phrase.text(0, comma if duration else phrase.end)
    return Cue(phrase.clause, text, degrees[0] if degrees else None, duration)


def read_tending(phrase: Phrase, _decision: Decision) -> Tending:
    """`stirring all the time`, `basting every 15 min`, `turning half-way`, `every 15 min`."""
    text = phrase.clause.text
    lower = " ".join(phrase.keys)
    every = find_duration(phrase, phrase.index("every") + 1) if "every" in phrase.keys else None
    if every:
        return Tending(phrase.clause, text, every=every.duration)
    if any(words in lower for words in phrase.tables.once):
        return Tending(phrase.clause, text, once=True)
    sometimes = any(words in lower for words in phrase.tables.sometimes) or "every" in phrase.keys
    verb = phrase.kitchen.verbs.participle(phrase.key(phrase.hedged(0)))
    sometimes = sometimes or (verb is not None and verb.occasional and not _says_constant(phrase, lower))
    return Tending(phrase.clause, text, constant=not sometimes)


def _says_constant(phrase: Phrase, lower: str) -> bool:
    return any(words in lower for words in phrase.tables.constant)


def read_pause(phrase: Phrase, _decision: Decision) -> Pause:
    """`at once`, `within 10 min`, `keep warm for 1 h at 65 °C`, `30 min before serving`."""
    found = find_duration(phrase, 0)
    duration = found.duration if found else None
    if phrase.keys[-2:] == ("before", "serving"):
        return Pause(phrase.clause, "before-serving", duration)
    if phrase.key(0) == "within":
        return Pause(phrase.clause, "within", duration)
    if "warm" in phrase.keys:
        verbs = phrase.kitchen.verbs
        said = verbs.match(phrase.keys, 0)
        verb = said[0] if said else verbs.participle(" ".join(phrase.keys[:2]))
        return Pause(phrase.clause, "keep-warm", duration, _setting_in(phrase, 0), verb, phrase.text(0, 2))
    return Pause(phrase.clause, "at-once")
