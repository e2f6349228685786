"""What is surely meant in a refused clause where an amount is at fault: what it is of, or what it is for."""

from __future__ import annotations

from tamis.patterns import pattern
from tamis.quantity.number import is_kitchen_fraction
from tamis.reading.apart import read_alone
from tamis.reading.refusal import Refusal
from tamis.words import example, word_lists

_RATIO = pattern(r"(\d+) ?([:/]) ?(\d+) [^\W\d_]")


def strength(refusal: Refusal) -> bool:
    """`in a 10 % brine`, `2 % salt by weight`: a percentage where none can stand, or whose whole comes too late."""
    at, phrase = refusal.fault.token, refusal.phrase
    language = phrase.kitchen.language
    if refusal.kind(0) == "NUMBER" and refusal.kind(1) == "PERCENT":
        said = phrase.text(0, 1)
        ends = range(phrase.end, 1, -1)
        food = next((phrase.text(1, end) for end in ends if phrase.kitchen.larder.find(phrase.keys[1:end])), "…")
        hint = f"what it is a share of comes first: {example(language, 'its_weight', percent=said, food=food)}"
        return refusal.find("clause-role", refusal.span(0, 1), f"“{said}” of what?", hint)
    if refusal.kind(at) != "PERCENT":
        return False
    said = refusal.reading.text[refusal.cut.starts[at - 1] : refusal.cut.ends[at]].strip()
    hint = f"weigh what makes it so strong, in a line before: {example(language, 'strong')}"
    return refusal.find("clause-role", refusal.span(at - 1, at), f"a strength cannot be read here: “{said}”", hint)


def ratio(refusal: Refusal) -> bool:
    """`70/30 lean to fat`, `1:1 flour and butter`: parts of nothing that is measured."""
    found = _RATIO.match(refusal.reading.text.strip())
    if not found or any(item.kind != "pieces" for _, item in refusal.phrase.all_quantities()):
        return False
    if found[2] == "/" and is_kitchen_fraction(int(found[1]), int(found[3])):
        return False
    said = found[0][:-1].strip()
    hint = "weigh each part in a bracket of its own, or take the brackets away: plain words may say it"
    return refusal.find("clause-role", refusal.reading.clause.span, f"“{said}” is a ratio, not an amount", hint)


def remaining_measured(refusal: Refusal) -> bool:
    """`the remaining 100 g butter, melted`: more of the butter, or what is left of it?"""
    phrase = refusal.phrase
    lists = word_lists(phrase.kitchen.language, "clause")["closed"]
    rest = [words for words in (tuple(said.split(" ")) for said in lists["REST"]) if phrase.keys[: len(words)] == words]
    at = max(map(len, rest), default=0)
    while rest and phrase.key(at) in phrase.tables.of | phrase.tables.the:
        at += 1
    measure = phrase.quantity(at)
    if not rest or measure is None or at + 1 >= phrase.end:
        return False
    food, alone = phrase.text(at + 1, phrase.end), phrase.text(at, phrase.end)
    left = example(phrase.kitchen.language, "the_rest", name=food)
    message = f"“{phrase.text(at, at + 1)}” that remains: was it measured earlier, or is it measured here?"
    hint = f"what was measured before is {left}; what was not is measured here: `[{alone}]`"
    return refusal.find("clause-role", phrase.span(0, at + 1), message, hint)


def measure_in_words(refusal: Refusal) -> bool:
    """`1 egg, beaten with 1 tbsp milk`: what is measured there is bought by nobody."""
    at = refusal.fault.token
    if refusal.kind(at) not in ("MASS", "VOLUME") or refusal.kind(at - 1) != "NUMBER":
        return False
    message = "a measure among other words: this food would not be counted"
    offered = _with_its_food(refusal, refusal.reading.text[refusal.cut.starts[at - 1] :].strip())
    hint = f"give it a bracket of its own: `[{offered}]`" if offered else "give it a bracket of its own, with its food"
    return refusal.find("clause-role", refusal.span(at - 1, at), message, hint)


def _with_its_food(refusal: Refusal, tail: str) -> str:
    """The words from a measure on as a clause; where they name no food, with that of the clause."""
    phrase = refusal.phrase
    if read_alone(phrase, tail):
        return tail
    first = 1 if phrase.quantity(0) else 0
    end = next((end for end in range(phrase.end, first, -1) if phrase.kitchen.larder.find(phrase.keys[first:end])), 0)
    at = refusal.fault.token
    measure = refusal.reading.text[refusal.cut.starts[at - 1] : refusal.cut.ends[at]].strip()
    offered = f"{measure} {phrase.text(first, end)}, {tail.removeprefix(measure).strip(' ,')}"
    return offered if end and read_alone(phrase, offered) else ""
