"""Which role a clause has: the tables of `words/en/reading.toml`, asked in order.

Each recogniser looks at one thing (the opener, the preposition, a share, the verb, the first unit, the noun) and
either decides or leaves it to the next. What none of them knows is an error: nothing falls through to a role that
takes everything.
"""

from __future__ import annotations

from tamis.quantity.measure import Measure
from tamis.reading.clauses import Role
from tamis.reading.durations import DurationRead, find_duration
from tamis.reading.measured import ONE, Measured, read_measure
from tamis.reading.nouns import Noun, read_noun
from tamis.reading.phrase import Phrase
from tamis.reading.shares import ShareRead, read_share
from tamis.reading.tables import match
from tamis.record import NamedTuple
from tamis.syntax.items import Item, Miswritten, Product, Quantity, Word


class Decision(NamedTuple):
    """A role, and what was read on the way to it: where the rest begins, preposition, share, measure, noun, time."""

    role: Role
    start: int = 0
    preposition: str = ""
    share: ShareRead | None = None
    measured: Measured | None = None
    noun: Noun | None = None
    duration: DurationRead | None = None


def decide(phrase: Phrase) -> Decision | None:
    """The role of a clause, or None where no table knows it."""
    if phrase.end == 0:
        return None
    at = phrase.hedged(0)
    for recogniser in _OF_NUMBERS if phrase.key(at)[:1] == "#" else _RECOGNISERS:
        decision = recogniser(phrase, at)
        if decision:
            return decision
    return None


def _by_opener(phrase: Phrase, at: int) -> Decision | None:
    for start in (0, at) if at else (0,):
        found = match(phrase.tables.openers, phrase.keys, start)
        if found and not (found[0] == "naming" and phrase.key(start + 1) in phrase.tables.no_name):
            role: Role = found[0]  # type: ignore[assignment]  # the table names roles
            return Decision(role, start + found[1] if role == "cue" else start)
    for words, role_name in phrase.tables.endings:
        if phrase.keys[-len(words) :] == words:
            return Decision(role_name)  # type: ignore[arg-type]  # the table names roles
    return None


def _by_small_word(phrase: Phrase, at: int) -> Decision | None:
    """`for` a time, `to` a target, `at` a setting."""
    key = phrase.key(at)
    if key == "for":
        duration = find_duration(phrase, at + 1)
        return Decision("time", at, duration=duration) if duration or _bare_number_last(phrase) else None
    if key == "to":
        return _to(phrase, at)
    if key == "at" and (
        _degrees(phrase, at)
        or _setting_words(phrase, at + 1, phrase.end)
        or match(phrase.tables.rooms, phrase.keys, at + 1)
        or phrase.keys[-1] in phrase.tables.states
    ):
        return Decision("setting", at)
    return None


def _to(phrase: Phrase, at: int) -> Decision | None:
    if match(phrase.tables.purposes, phrase.keys, at):
        return None
    after = at + 1
    if phrase.key(after) in ("the", "another") or match(phrase.tables.rest, phrase.keys, after):
        share = read_share(phrase, after)
        noun = read_noun(phrase, share.end if share else after + 1)
        if noun.equipment:
            return Decision("equipment", after + 1, "to", noun=noun)
        if share is None and phrase.keys[-1] in phrase.tables.heats:
            return Decision("setting", after)
        if not phrase.tables.states.intersection(phrase.keys[after:]):
            return Decision("reference", after, "to", share)
    return Decision("target", after)


def _degrees(phrase: Phrase, start: int) -> bool:
    return "#temperature" in phrase.keys[start:] or "#gas" in phrase.keys[start:]


def _bare_number_last(phrase: Phrase) -> bool:
    return phrase.keys[-1] == "#pieces"


def _setting_words(phrase: Phrase, start: int, end: int) -> bool:
    return not phrase.tables.setting_words.isdisjoint(phrase.keys[start:end])


def _by_preposition(phrase: Phrase, at: int) -> Decision | None:
    found = match(phrase.tables.prepositions, phrase.keys, at)
    if not found:
        return None
    preposition, length = found
    start = at + length
    if preposition == "in" and _repetition(phrase, start):
        return Decision("repeat", start)
    opener = match(phrase.tables.openers, phrase.keys, start)
    if opener and opener[0] == "ingredient":
        return Decision("ingredient", start, preposition)
    share = read_share(phrase, start)
    if share and share.of in ("the", "measure"):
        role: Role = "reference" if share.of == "the" else "ingredient"
        return Decision(role, start, preposition, share)
    if phrase.key(start) == "the" and phrase.key(start + 1) != "same":
        noun = read_noun(phrase, start + 1)
        if not noun.equipment and _setting_words(phrase, start, phrase.end):
            return Decision("setting", start, preposition)
        role = "equipment" if noun.equipment else "reference"
        return Decision(role, start, preposition, noun=noun if noun.equipment else None)
    return _after_preposition(phrase, preposition, start)


def _after_preposition(phrase: Phrase, preposition: str, start: int) -> Decision | None:
    start = phrase.hedged(start)
    measured = read_measure(phrase, start)
    weighed = phrase.quantity(start)
    plain_weight = weighed is not None and weighed.kind in ("mass", "volume") and not measured.pieces
    if plain_weight and preposition not in phrase.tables.dividing:
        return Decision("ingredient", start, preposition, None, measured)
    noun = read_noun(phrase, measured.end + (1 if phrase.key(measured.end) == "same" else 0))
    numbered = weighed is not None and weighed.kind in ("pieces", "length", "mass")
    if noun.equipment:
        return Decision("equipment", start, preposition, None, measured, noun)
    if preposition in phrase.tables.dividing and not (noun.goods and not numbered) and not _into_food(weighed, noun):
        known = numbered or preposition == "into"
        return Decision("division", start, preposition, None, measured, noun) if known else None
    if _setting_words(phrase, start, noun.end) and not noun.goods:
        return Decision("setting", start, preposition)
    if measured.counted_or_weighed and (noun.goods or weighed):
        return Decision("ingredient", start, preposition, None, measured, noun)
    if noun.goods:
        return Decision("unmeasured", start, preposition, None, measured, noun)
    return None


def _into_food(weighed: Quantity | None, noun: Noun) -> bool:
    """`into 300 g flour` is no division."""
    return weighed is not None and weighed.kind in ("mass", "volume") and noun.goods is not None


def _repetition(phrase: Phrase, start: int) -> bool:
    """`3 times`, `4 batches`, `batches of 10`, `small batches`."""
    key, nouns = phrase.key(start), phrase.tables.repeat_nouns
    if key == "#pieces" or key in phrase.tables.how:
        return phrase.key(start + 1) in nouns
    return key in nouns and key != "times"


def _by_share(phrase: Phrase, at: int) -> Decision | None:
    for start in (0, at) if at else (0,):
        share = read_share(phrase, start)
        if not share:
            continue
        if share.of == "time":
            return Decision("time", start)
        role: Role = "reference" if share.of == "the" else "ingredient"
        return Decision(role, start, "", share)
    if phrase.key(at) == "the":
        return Decision("reference", at)
    return None


def _by_verb(phrase: Phrase, at: int) -> Decision | None:
    """A work verb and a duration is a time; a participle without food is tending."""
    found = phrase.kitchen.verbs.match(phrase.keys, at)
    if found:
        duration = find_duration(phrase, at + found[1])
        if duration or ("for" in phrase.keys and _bare_number_last(phrase)):
            return Decision("time", at, duration=duration)
    first = phrase.key(at)
    if first.endswith("ing") and phrase.kitchen.verbs.participle(first):
        noun = read_noun(phrase, at)
        if not noun.goods and not noun.equipment:
            return Decision("tending", at)
    return None


def _by_quantity(phrase: Phrase, at: int) -> Decision | None:
    item = phrase.items[at] if at < phrase.end else None
    if isinstance(item, Quantity) and item.kind in ("temperature", "gas"):
        return Decision("setting", at)
    by_weight = isinstance(item, Quantity) and item.kind in ("mass", "volume")
    duration = None if by_weight else find_duration(phrase, at, only_here=True)
    if duration:
        return Decision("time", at, duration=duration)
    if _repetition(phrase, at):
        return Decision("repeat", at)
    if isinstance(item, Miswritten) or (isinstance(item, Quantity) and item.kind == "percent"):
        return Decision("ingredient", at)
    measured = read_measure(phrase, at)
    if measured.end == at or measured.vague:
        return None
    return _measured_thing(phrase, at, item, measured, by_weight)


def _measured_thing(phrase: Phrase, at: int, item: Item | None, measured: Measured, by_weight: bool) -> Decision | None:
    """`2 eggs`, `2 tins`, `300 g flour`, `4 pint jars`, `4 mm thick`."""
    noun = read_noun(phrase, measured.end, equipment_too=not by_weight)
    if noun.equipment:
        return Decision("equipment", at, "", None, measured, noun)
    held = _held_in(phrase, at, measured) if by_weight and not noun.goods else None
    if held:
        return held
    sized = isinstance(item, Product) or bool(measured.size)
    if sized and not noun.goods and all(key in phrase.tables.size_words for key in phrase.keys[noun.start : noun.end]):
        return Decision("target", at)
    if noun.end > noun.start:
        return Decision("ingredient", at, "", None, measured, noun)
    return None


def _held_in(phrase: Phrase, at: int, measured: Measured) -> Decision | None:
    """`4 pint jars`, `a 2 litre jug`: what it holds is the size of a vessel."""
    noun = read_noun(phrase, measured.end)
    found = noun.equipment
    if found is None or found.item.kind != "vessel" or len(measured.measures) != 1:
        return None
    unit = measured.measures[0].unit
    size = phrase.text(at + (phrase.key(at) in phrase.tables.articles), measured.end)
    held = Measured(measured.start, measured.end, (Measure(ONE, ""),), size=size, pieces=ONE)
    if found.several:
        count = measured.measures[0].amount
        held = held._replace(measures=(Measure(count, ""),), size=unit, pieces=count)
    return Decision("equipment", at, "", None, held, noun)


def _by_name(phrase: Phrase, at: int) -> Decision | None:
    measured = read_measure(phrase, at)
    noun = read_noun(phrase, measured.end)
    if noun.equipment:
        return Decision("equipment", at, "", None, measured, noun)
    if noun.goods:
        measures = measured.measures or phrase.keys[at : at + 2] == ("a", "few")
        role: Role = "ingredient" if measures else "unmeasured"
        return Decision(role, at, "", None, measured, noun)
    if noun.end > noun.start and match(phrase.tables.purposes, phrase.keys, phrase.index(",", noun.end) + 1):
        return Decision("unmeasured", at, "", None, measured, noun)
    if isinstance(phrase.items[-1], Word) and phrase.keys[-1] in phrase.tables.heats:
        return Decision("setting", at)
    return None


_RECOGNISERS = (_by_opener, _by_small_word, _by_preposition, _by_share, _by_verb, _by_quantity, _by_name)
# Where a number stands first, no small word, preposition or verb does.
_OF_NUMBERS = (_by_opener, _by_share, _by_quantity, _by_name)
