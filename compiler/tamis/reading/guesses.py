"""What a clause that is none may have been meant for: the nearest thing, and how to write it."""

from __future__ import annotations

from tamis.kitchen.likely import likely
from tamis.reading.apart import read_alone, two_clauses, words_before
from tamis.reading.clause import WORDS_ONLY
from tamis.reading.parsers import is_clause
from tamis.reading.tables import match
from tamis.reading.words_only import is_words_only
from tamis.syntax.clause import parse_clause
from tamis.syntax.items import Quantity
from tamis.typed import TYPE_CHECKING
from tamis.words import example, named, word_lists

if TYPE_CHECKING:
    from tamis.reading.phrase import Phrase
    from tamis.syntax.items import QuantityKind

_SHOWN = 60
_FEW_WORDS = 3
# Shorter words (both, warm) are near to too many others.
_LEAST_NAME = 5


def meant(phrase: Phrase) -> bool:
    """Report a clause with what it may have been meant for; False, and nothing, where that cannot be said."""
    if not phrase.keys:
        return False
    for look in _LOOKS:
        hint = look(phrase)
        if hint:
            _report(phrase, hint, "", look in _MEANT_FOR_MORE)
            return True
    return False


def no_clause(phrase: Phrase) -> None:
    """Report a clause whose words say nothing that is known."""
    text = phrase.clause.text.strip()
    if meant(phrase):
        return
    if phrase.end == 1 and isinstance(phrase.items[0], Quantity):
        message = f"“{text}” is an amount without a name"
        phrase.reading.find("clause-role", "error", phrase.clause.span, message, "write what it is an amount of")
        return
    _report(phrase, _no_brackets(phrase), _expected(phrase))


def _no_brackets(phrase: Phrase) -> str:
    text, language = phrase.clause.text.strip(), phrase.kitchen.language
    alone = bool(phrase.keys) and phrase.preposition() is None and phrase.end <= _FEW_WORDS
    if alone and all(key.isalpha() for key in phrase.keys):
        served = example(language, "as_needed", food=text)
        is_name = not phrase.kitchen.larder.describes(phrase.keys[-1]) and read_alone(phrase, served.strip("`[]"))
        served = served if is_name else example(language, "to_serve")
        return f"plain words need no brackets; a food gives its measure, or why it has none: {served}"
    return (
        f"plain words need no brackets; a bracket opens with a number, {named(language, 'the')}, a preposition, a "
        f"verb with its time, {named(language, 'until')} …"
    )


def words_only(phrase: Phrase) -> bool:
    """Report a clause of plain words that hold nothing the kitchen knows; False, and nothing, for any other."""
    if is_words_only(phrase):
        _report(phrase, _no_brackets(phrase))
        return True
    return False


def _report(phrase: Phrase, hint: str, expected: str = "", meant: bool = False) -> None:
    """Say that a clause is not understood: no error where nothing that counts can be meant by it."""
    text = phrase.clause.text.strip()
    if not meant and is_words_only(phrase):
        message = f"“{text[:_SHOWN]}” is only printed: it changes no table, timeline or check"
        phrase.reading.find(WORDS_ONLY, "warning", phrase.clause.span, message, hint)
        return
    message = f"“{text[:_SHOWN]}” is not recognised{expected}"
    phrase.reading.find("clause-role", "error", phrase.clause.span, message, hint)


def _expected(phrase: Phrase) -> str:
    """What could have stood here, where nothing near can be named."""
    preposition, the = phrase.preposition(), named(phrase.kitchen.language, "the_any")
    if preposition:
        return f": “{preposition[0]}” must be followed by equipment, a known food, or something made before ({the})"
    return (
        f": expected an ingredient, something made before ({the}), equipment, a time, a heat setting, or "
        "what to look for"
    )


def several_measured(phrase: Phrase) -> str:
    """How to say `[10 g salt and 5 g sugar]`, which is two clauses: each part an amount of a food that is known."""
    parts: list[str] = []
    for part in filter(None, map(str.strip, phrase.tables.parted.split(phrase.clause.text))):
        if _is_amount(part, phrase):
            parts.append(part)
        elif parts:  # `2 cloves of garlic, chopped`
            parts[-1] += f", {part}"
        else:
            return ""
    if len(parts) < 2:
        return ""
    return "one food to a bracket: " + " and ".join(f"`[{part}]`" for part in parts)


def _is_amount(text: str, phrase: Phrase) -> bool:
    items = parse_clause(text, phrase.kitchen.language)
    first = items.items[0] if items.items else None
    named = items.keys[1:]
    while named and (named[0] in phrase.tables.of or phrase.kitchen.cupboard.count_word(named[0])):
        named = named[1:]
    if not isinstance(first, Quantity) or first.kind not in _AMOUNTS:
        return False
    ends = [at for at in range(1, len(named)) if match(phrase.tables.purposes, named, at)]  # 2 tbsp flour for dusting
    return phrase.kitchen.larder.find(named[: ends[0]] if ends else named) is not None


def _several_foods(phrase: Phrase) -> str:
    """How to say `[salt and pepper to taste]`, which is two clauses."""
    preposition = phrase.preposition()
    start = preposition[1] if preposition else 0
    purpose = next(
        (at for at in range(start, phrase.end) if match(phrase.tables.purposes, phrase.keys, at)), phrase.end
    )
    after = f", {phrase.text(purpose, phrase.end)}" if purpose < phrase.end else ""
    end = purpose - (phrase.key(purpose - 1) == ",")
    measure = phrase.quantity(start)
    if measure is None:
        return apart(phrase, phrase.text(start, end).lower(), "", after)
    each = next((at for at in range(start, end) if phrase.key(at) in phrase.tables.each), end)
    first = each + 1 + (phrase.key(each + 1) in phrase.tables.of)  # `1 tsp each of cumin and coriander`
    return apart(phrase, phrase.text(first, end).lower(), f"{phrase.text(start, each)} ", after) if each < end else ""


def _each_of(phrase: Phrase) -> str:
    """`half a teaspoon each of cumin and coriander`: the amount in words, for each food."""
    each = next((at for at in range(phrase.end) if phrase.key(at) in phrase.tables.each), 0)
    if not each or phrase.key(each + 1) not in phrase.tables.of:
        return ""
    return apart(phrase, phrase.text(each + 2, phrase.end).lower(), f"{phrase.text(0, each)} ", "")


def apart(phrase: Phrase, text: str, before: str, after: str) -> str:
    """Each food of a list in a clause of its own, if two of them are known."""
    foods = [part for part in phrase.tables.parted.split(text) if part and part.strip()]
    named = [food.strip() for food in foods]
    known = [food for food in named if phrase.kitchen.larder.find(tuple(food.split()))]
    if len(known) < 2:
        return ""
    return "one food to a bracket: " + " and ".join(f"`[{before}{food}{after}]`" for food in known)


def _purpose_alone(phrase: Phrase) -> str:
    """`Season [to taste] with [salt]`: a purpose stands after the comma of its food."""
    found = match(phrase.tables.purposes, phrase.keys, 0)
    if not found or found[1] < phrase.end:
        return ""
    said = example(phrase.kitchen.language, "purpose", purpose=found[0])
    return f"it belongs to the food, after a comma: {said}; alone it needs no brackets"


def _what_verb_wants(phrase: Phrase) -> str:
    found = phrase.kitchen.verbs.match(phrase.keys, 0)
    if not found:
        verb = phrase.kitchen.verbs.participle(phrase.key(0))
        timed = verb is not None and "#time" in phrase.keys
        if verb is None or not timed:
            return ""
        return f"a verb stands in its plain form: `[{verb.name} {phrase.text(1, phrase.end)}]`"
    verb_text = phrase.text(0, found[1])
    if phrase.key(found[1]) == "#pieces" and any(part.split()[0] == phrase.key(0) for part in phrase.tables.parts):
        of = phrase.text(found[1], phrase.end)
        return f"write {example(phrase.kitchen.language, 'part_of', part=verb_text, of=of)}"
    if phrase.end == found[1] or "#time" in phrase.keys:
        return "" if "#time" in phrase.keys else _untimed(verb_text, found[0].waits, phrase.kitchen.language)
    if not phrase.tables.few.isdisjoint(phrase.keys):
        unit = next((key for key in phrase.keys[found[1] :] if _is_time(phrase, key)), "min")
        few = example(phrase.kitchen.language, "few", verb=verb_text, unit=unit)
        return f"say how many, as a range if it varies: {few}"
    rest = phrase.text(found[1], phrase.end)
    if not found[0].waits and rest and _is_named(phrase, found[1]):
        return f"work stands before the brackets, with what it is done to in them: `{verb_text} [{rest}]`"
    return _untimed(verb_text, found[0].waits, phrase.kitchen.language)


def _is_named(phrase: Phrase, start: int) -> bool:
    """Whether the words from a place on are a food that was measured before, or an amount of one."""
    the = phrase.keys[start] in phrase.tables.the and phrase.kitchen.larder.find(phrase.keys[start + 1 :]) is not None
    return the or _is_amount(phrase.text(start, phrase.end), phrase)


def _is_time(phrase: Phrase, word: str) -> bool:
    unit = phrase.kitchen.units.get(word) if len(word) > 1 else None
    return unit is not None and unit.kind == "time"


def _untimed(verb: str, waits: bool, language: str) -> str:
    if not waits:
        return f"“{verb}” without a time needs no brackets"
    wait, until = example(language, "wait", verb=verb, time="30 min"), example(language, "until_any")
    return f"a bracket that opens with “{verb}” gives its time: {wait}; what to look for is {until}"


def _hot_tool(phrase: Phrase) -> str:
    """How to say `[a 200 °F oven]`, which is two clauses."""
    degrees = next((item for item in phrase.items if isinstance(item, Quantity) and item.kind == "temperature"), None)
    tool = phrase.kitchen.cupboard.find(phrase.keys[-1:])
    if degrees is None or tool is None:
        return ""
    setting = phrase.clause.text[degrees.span.start : degrees.span.end].strip()
    return f"part them: {example(phrase.kitchen.language, 'in_at', tool=tool.item.name, setting=setting)}"


def _amount_last(phrase: Phrase) -> str:
    """`[bread flour 500 g]`, `[onions 2, sliced]`, `[sugar: 100 g]`: the amount comes first."""
    at = next((at for at in range(1, phrase.end) if phrase.quantity(at)), 0)
    last = phrase.quantity(at)
    name = at - (not phrase.key(at - 1)[:1].isalnum())
    if last is None or last.kind not in _AMOUNTS or phrase.key(at + 1) not in ("", ","):
        return ""
    if not phrase.kitchen.larder.find(phrase.keys[:name]):
        return ""
    food, amount, rest = phrase.text(0, name), phrase.text(at, at + 1), phrase.text(at + 2, phrase.end)
    return f"the amount comes first: `[{amount} {food}{', ' if rest else ''}{rest}]`"


def _known_at_end(phrase: Phrase) -> str:
    """`with buttered peas`: a food that is known, described by words that are not."""
    preposition = phrase.preposition()
    start = preposition[1] if preposition else 0
    for at in range(start + 1, phrase.end):
        if all(key[:1].isalpha() for key in phrase.keys[start:]) and phrase.kitchen.larder.find(phrase.keys[at:]):
            found = phrase.kitchen.larder.find(phrase.keys[at:])
            food, words = phrase.text(at, phrase.end), phrase.text(start, at)
            said = f"{likely(found.goods if found else None, food, phrase.kitchen.language)} {food}"
            before = f"{preposition[0]} " if preposition else ""
            if phrase.keys[at - 1] in phrase.tables.the:  # `the green parts of the leeks`
                return ""
            if phrase.keys[at - 1] in phrase.tables.of:  # `a few grains of`
                return f"“{words}” is not a known measure: write how much, such as `[{before}{said}]`"
            return f"“{food}” is known: write how much, and the rest after a comma, such as `[{before}{said}, {words}]`"
    return ""


def _nearest(phrase: Phrase) -> str:
    from tamis.quantity.near import nearest
    from tamis.reading.openers import sole_openers

    tried = match(phrase.tables.hints, phrase.keys, 0)
    if tried:
        rest = phrase.text(tried[1], phrase.end)
        more = f" {rest}" if rest and tried[0] == phrase.tables.until else ""
        return f"did you mean `[{tried[0]}{more}]`?"
    head, openers = " ".join(phrase.keys[:2]), sole_openers(phrase.kitchen.language)
    opens = any(" ".join(phrase.keys[:end]) in openers for end in range(1, 4))  # off the heat
    for words in () if opens else (head, phrase.keys[0]):
        near = nearest(words, openers)
        # Hardly anybody mistypes the first letter.
        if near and near != words and not phrase.preposition() and near[0] == words[0]:
            return f"did you mean `[{near} …]`?"
    name = " ".join(key for key in phrase.keys if key[:1].isalpha())
    if len(name) < _LEAST_NAME or phrase.kitchen.verbs.participle(name):
        return ""
    near = phrase.kitchen.larder.near(name) or phrase.kitchen.cupboard.near(name)
    return f"did you mean “{near}”?" if near and near != name else ""


def _unit_of_a_letter(phrase: Phrase) -> str:
    """`60 g salt per l`: a letter is a unit only behind a number."""
    per, units = word_lists(phrase.kitchen.language, "clause")["closed"].get("PER", ()), phrase.kitchen.units
    at = next((at for at in range(1, phrase.end) if len(phrase.keys[at]) == 1 and phrase.keys[at - 1] in per), 0)
    if not at or units.get(phrase.keys[at]) is None:
        return ""
    return f"write the unit in full after “{phrase.text(at - 1, at)}”: {example(phrase.kitchen.language, 'per_unit')}"


def _plain_words(phrase: Phrase) -> str:
    """`[carefully]`, `[the next day]`: what says how, and changes nothing in the plan."""
    found = match(phrase.tables.plain, phrase.keys, 0)
    return f"take its brackets away: “{found[0]}” says how, in plain words" if found else ""


def _and_first(phrase: Phrase) -> str:
    """`[and set aside]`: the word that joins stands before the bracket."""
    if phrase.key(0) not in phrase.tables.ands or phrase.end == 1:
        return ""
    rest = phrase.text(1, phrase.end)
    return f"write `{phrase.text(0, 1)} [{rest}]`" if is_clause(rest, phrase.kitchen) else ""


def _unknown_tool(phrase: Phrase) -> str:
    """`in a flurb`: after a preposition and an article, a name that nothing has."""
    preposition = phrase.preposition()
    if preposition is None or phrase.key(preposition[1]) not in phrase.tables.articles:
        return ""
    words = phrase.keys[preposition[1] + 1 : phrase.end]
    if not 0 < len(words) <= _FEW_WORDS or not all(key[:1].isalpha() for key in words):
        return ""
    return f"no equipment is called “{' '.join(words)}”: give it another name, or take the brackets away"


_AMOUNTS: frozenset[QuantityKind] = frozenset(("mass", "volume", "pieces"))
_LOOKS = (
    _plain_words,
    _unit_of_a_letter,
    _and_first,
    several_measured,
    _several_foods,
    _amount_last,
    _purpose_alone,
    _what_verb_wants,
    _hot_tool,
    _each_of,
    two_clauses,
    words_before,
    _known_at_end,
    _nearest,
    _unknown_tool,
)
# A slip of something, or a clause behind a word too many.
_MEANT_FOR_MORE = (_nearest, _and_first)
