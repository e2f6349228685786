"""A food that a line adds in plain words, and that no bracket of the recipe measures.

It is on no list, so it is not bought, weighed, or searched for allergens; the reader meets it when the
pan is hot. Where another line measures that food, for water from the tap, and for what seasons or is served beside,
it is mere information.

Put it in a bracket with its measure where it is added: `add [1 tsp fine salt]`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import Words, check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.kitchen.likely import likely
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.verbs import Verb
    from tamis.model.recipe import Action

RULE = "food-not-bracketed"
LEVEL: Severity = "warning"
BAD = """\
title: Buttered peas
serves: 4

# Peas

Boil [400 g peas] [in 1 l water] [in a saucepan] [for 4 min].
Add the butter and toss.
"""
GOOD = """\
title: Buttered peas
serves: 4

# Peas

Boil [400 g peas] [in 1 l water] [in a saucepan] [for 4 min].
Add [20 g butter] and toss.
"""

# The first words after the verb, up to the next mark.
_PHRASE = pattern(r"\s*((?:[^\W\d_][\w'’-]*\s+){0,5}[^\W\d_][\w'’-]*)")
_NEXT_WORD = pattern(r"\s+([^\W\d_]+)")


class _Words(NamedTuple):
    """What may stand before a food and after it; `ends`: after any other word it may be half of a name (butter
    paper)."""

    after_clause: re.Pattern[str]
    next_food: re.Pattern[str]
    definite: frozenset[str]
    vague: frozenset[str]
    fillers: frozenset[str]
    joints: frozenset[str]
    ends: frozenset[str]
    adverbs: Words


@cache
def _words(language: str) -> _Words:
    small, food = check_words(language).small, check_words(language).food
    return _Words(
        after_clause=pattern(rf"\s*,?\s*(?={one_of(food.after_clause)}\s+[^\W\d_])"),
        next_food=pattern(rf"\s*,?\s*{one_of(food.next)}\s+"),
        definite=nouns(language).definite,
        vague=frozenset(food.vague),
        fillers=frozenset((*food.vague, *food.before, *nouns(language).articles)),
        joints=frozenset(food.joints),
        ends=frozenset((*food.joints, *food.after)),
        adverbs=small.adverbs,
    )


class Named(NamedTuple):
    """A food in plain words. `definite` is said with *the*, `vague` with *some* and its like; `ends` tells that the
    name is surely over."""

    food: str
    span: Span
    definite: bool
    vague: bool
    ends: bool


def check(view: View) -> Iterator[Diagnostic]:
    """What follows an adding or cooking verb in plain words, or a bracket after one, if it is a food."""
    known: set[str] | None = None
    words, singular = _words(view.recipe.language), nouns(view.recipe.language).singular
    for action in view.recipe.actions:
        for verb, part, phrase in _places(action, words):
            for named in _foods_at(view, action, part, phrase):
                if known is None:
                    known = _known_words(view)
                measured = singular(named.food.split(" ")[-1]) in known or named.food in known
                if not measured or (named.vague and not named.definite):
                    yield _said(view, named, verb, measured)


def _said(view: View, named: Named, verb: Verb, measured: bool) -> Diagnostic:
    food = named.food
    found = view.kitchen.larder.find(food.split(" "))
    tap = found is not None and found.goods.role == "water"
    light = measured or verb.purpose or not named.ends or tap
    where = "this line does not say how much" if measured else "no bracket of the recipe measures it"
    measure = likely(found.goods if found else None, food, view.recipe.language)
    hint = f"write `[{measure} {food}]`, with the measure it needs"
    message = f"“{food}” is added here, and {where}"
    return Diagnostic(RULE, "information" if light else "warning", named.span, message, hint)


def _places(action: Action, words: _Words) -> Iterator[tuple[Verb, Text, re.Match[str]]]:
    """The plain words after each verb that adds or cooks, and those that go on after a bracket (`[2 onions] in
    butter`); verbs and parts both go left to right."""
    uses = action.verbs
    next_use = 0
    working: Verb | None = None
    for index, part in enumerate(action.parts):
        text = part if isinstance(part, Text) else None
        if text and working and index and (match := words.after_clause.match(text.text)):
            phrase = _PHRASE.match(text.text, match.end())
            assert phrase is not None, "two words at least follow"
            yield working, text, phrase
        start, end = part.span
        while next_use < len(uses) and uses[next_use].span.start < end:
            use = uses[next_use]
            next_use += 1
            working = use.verb if use.verb.adds or use.verb.cooks or use.verb.heat else None
            if text and working and use.span.end > start:
                phrase = _PHRASE.match(text.text, use.span.end - start)
                if phrase:
                    yield working, text, phrase


def _foods_at(view: View, action: Action, part: Text, phrase: re.Match[str] | None) -> Iterator[Named]:
    """The foods that a phrase names, if it begins with one; *and* may join more."""
    words = _words(view.recipe.language)
    verbs = {use.span.start - part.span.start for use in action.verbs}
    while phrase and (named := _food_at(view, part, phrase, words)) and named.span.start - part.span.start not in verbs:
        yield named
        match = words.next_food.match(part.text, named.span.end - part.span.start)
        if match is None or match.end() in verbs:
            return
        phrase = _PHRASE.match(part.text, match.end())


def _food_at(view: View, part: Text, phrase: re.Match[str], words: _Words) -> Named | None:
    """The food that a phrase begins with."""
    all_words = phrase[1].split()
    name = _until_joint(all_words, words)
    for end in range(len(name), 0, -1):
        food = " ".join(name[:end]).lower()
        if view.kitchen.larder.find(food.split(" ")):
            before = {word.lower() for word in all_words[: all_words.index(name[0])]}
            start = part.text.index(name[0], phrase.start(1) + _length(all_words, name[0]))
            stop = part.text.index(name[end - 1], start) + len(name[end - 1])
            span = Span(start, stop).shifted(part.span.start)
            definite, vague = not before.isdisjoint(words.definite), not before.isdisjoint(words.vague)
            return Named(food, span, definite, vague, _is_over(part.text, stop, words))
    return None


def _length(words: list[str], word: str) -> int:
    """How many letters at least stand before a word: so that *a* is not found inside *add*."""
    return sum(map(len, words[: words.index(word)]))


def _is_over(text: str, at: int, words: _Words) -> bool:
    match = _NEXT_WORD.match(text, at)
    return match is None or match[1].lower() in words.ends or match[1].endswith(words.adverbs)


def _until_joint(said: list[str], words: _Words) -> list[str]:
    """The words between what may stand before a food and what may follow it."""
    start = 0
    while start < len(said) and said[start].lower() in words.fillers:
        start += 1
    stop = start
    while stop < len(said) and said[stop].lower() not in words.joints:
        stop += 1
    return said[start:stop]


def _known_words(view: View) -> set[str]:
    """Whatever the recipe measures or makes, by its last word, by its goods' names, and by their parts'."""
    known: set[str] = set()
    singular = nouns(view.recipe.language).singular
    for food in view.ingredients:
        goods = food.goods
        known.add(singular(food.name.lower().split(" ")[-1]))
        known.update(food.part.split(" "))
        if goods:
            known.update((goods.name, singular(goods.name.split(" ")[-1]), *goods.aliases))
            known.update(part.id.replace("-", " ") for part in goods.parts)
            known.update(part.id.split("-")[-1] for part in goods.parts)
    for product in view.recipe.products:
        known.update(singular(name.lower().split(" ")[-1]) for name in product.names if name)
    return known
