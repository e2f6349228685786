"""A food that a line adds in plain words, and that no bracket of the recipe measures.

It is on no list, so it is not bought, weighed, or searched for allergens; the reader meets it when the
pan is hot. Where another line measures that food, for water from the tap, and for what seasons or is served beside,
it is mere information.

Put it in a bracket with its measure where it is added: `add [1 tsp fine salt]`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache

from tamis.checks.words import Words, check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.nouns import nouns
from tamis.reading.prose import commands
from tamis.reading.tables import tables
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import Stretch, View
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.verbs import Verb
    from tamis.reading.plain import Plain

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

# A food stands among so many words behind the verb.
_MOST_WORDS = 6
_PREPOSITION = frozenset(("PREP",))


class _Words(NamedTuple):
    """What may stand before a food and after it; `ends`: after any other word it may be half of a name (butter
    paper)."""

    after_clause: frozenset[str]
    next_food: frozenset[str]
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
        after_clause=frozenset(food.after_clause),
        next_food=frozenset(food.next),
        definite=nouns(language).definite,
        vague=frozenset(food.vague),
        fillers=frozenset((*food.vague, *food.before, *nouns(language).articles)),
        joints=frozenset(food.joints),
        ends=frozenset((*food.joints, *food.after)),
        adverbs=small.adverbs,
    )


class Named(NamedTuple):
    """A food in plain words: its tokens. `definite` is said with *the*, `vague` with *some* and its like; `ends` tells
    that the name is surely over."""

    food: str
    first: int
    end: int
    definite: bool
    vague: bool
    ends: bool


def check(view: View) -> Iterator[Diagnostic]:
    """What follows an adding or cooking verb in plain words, or a bracket after one, if it is a food."""
    known: set[str] | None = None
    singular = nouns(view.recipe.language).singular
    working = [action for action in view.recipe.actions if any([_works(use.verb) for use in action.verbs])]
    for words in [words for action in working for words in view.plain_in(action) if len(words.plain.said) > 1]:
        for verb, named in _added(words):
            if known is None:
                known = _known_words(view)
            measured = singular(named.food.split(" ")[-1]) in known or named.food in known
            if not measured or (named.vague and not named.definite):
                yield _said(view, named, words, verb, measured)


def _works(verb: Verb) -> bool:
    return verb.adds or verb.cooks or verb.heat


def _added(words: Stretch) -> Iterator[tuple[Verb, Named]]:
    """The foods behind each verb that adds or cooks; and where plain words go on after a bracket, those of such a verb
    before them: `Add [2 onions] and butter`."""
    plain, start, verbs = words.plain, words.start, words.action.verbs
    if not _words(plain.kitchen.language).after_clause.isdisjoint(plain.said[:2]):
        last = next((use.verb for use in reversed(verbs) if use.span.start < start), None)
        if last is not None and _works(last):
            yield from [(last, named) for named in plain.ask(_foods_first)]
    ends = {use.span.end - start: use.verb for use in verbs if start < use.span.end <= start + len(plain.text)}
    if any([_works(verb) for verb in ends.values()]):
        found = [(ends.get(end), foods) for end, foods in plain.ask(_foods_behind)]
        yield from [(verb, named) for verb, foods in found if verb and _works(verb) for named in foods]


def _said(view: View, named: Named, words: Stretch, verb: Verb, measured: bool) -> Diagnostic:
    from tamis.kitchen.likely import likely

    food, span, plain = named.food, words.span(named.first, named.end), words.plain
    found = view.kitchen.larder.find(food.split(" "))
    tap = found is not None and found.goods.role == "water"
    light = measured or verb.purpose or not named.ends or tap
    where = "this line does not say how much" if measured else "no bracket of the recipe measures it"
    measure = likely(found.goods if found else None, food, view.recipe.language)
    hint = f"write `[{measure} {food}]`, with the measure it needs"
    if tap and named.first and plain.is_a(named.first - 1, _PREPOSITION):  # to boil or cool in: nobody asks how much
        hint = f"write `[{plain.said[named.first - 1]} {food}]`, so that the timeline includes it"
    message = f"“{food}” is added here, and {where}"
    return Diagnostic(RULE, "information" if light else "warning", span, message, hint)


def _foods_behind(plain: Plain) -> list[tuple[int, tuple[Named, ...]]]:
    """The foods behind each verb, with the place where the verb ends."""
    return [(plain.ends[command.end - 1], _foods_at(plain, command.end)) for command in plain.ask(commands)]


def _foods_first(plain: Plain) -> tuple[Named, ...]:
    """The foods with which plain words go on after a bracket: `[2 onions] in butter`."""
    at = int(plain.said[0] == ",")
    return _foods_at(plain, at) if plain.said[at] in _words(plain.kitchen.language).after_clause else ()


def _foods_at(plain: Plain, at: int) -> tuple[Named, ...]:
    """The foods that are named from a place on, if one is; *and* may join more."""
    asked, verbs = _words(plain.kitchen.language), plain.ask(_verbs)
    found: list[Named] = []
    while (named := _food_at(plain, at, asked)) and named.first not in verbs:
        found.append(named)
        at = named.end + (plain.said[named.end : named.end + 1] == [","])
        if at + 1 >= len(plain) or plain.said[at] not in asked.next_food or at + 1 in verbs:
            break
        at += 1
    return tuple(found)


def _verbs(plain: Plain) -> frozenset[int]:
    """Where the verbs stand."""
    return frozenset(command.first for command in plain.ask(commands))


def _food_at(plain: Plain, at: int, asked: _Words) -> Named | None:
    """The food that is named at a place, behind the small words that may stand before it."""
    said, stop = plain.said, at
    while stop < at + _MOST_WORDS and plain.is_word(stop):
        stop += 1
    first = at
    while first < stop and said[first] in asked.fillers:
        first += 1
    last = next((end for end in range(first, stop) if said[end] in asked.joints), stop)
    for end in range(last, first, -1):
        if plain.kitchen.larder.find(said[first:end]):
            if end < stop and plain.kitchen.cupboard.find(said[end : end + 1]):
                return None  # a tea towel, a soup plate
            before = said[at:first]
            definite, vague = not asked.definite.isdisjoint(before), not asked.vague.isdisjoint(before)
            return Named(" ".join(said[first:end]), first, end, definite, vague, _is_over(plain, end, asked))
    return None


def _is_over(plain: Plain, at: int, asked: _Words) -> bool:
    return not plain.is_word(at) or plain.said[at] in asked.ends or plain.said[at].endswith(asked.adverbs)


def _kinds_of(goods: Goods | None, kinds: Mapping[str, frozenset[str]]) -> list[str]:
    """What food is called in general: *the fish*, *the meat*."""
    own = {goods.show, goods.id} if goods else set()
    return [word for word, of_kind in kinds.items() if not of_kind.isdisjoint(own)]


def _known_words(view: View) -> set[str]:
    """Whatever the recipe measures or makes, by its last word, by its goods' names, and by their parts'."""
    known: set[str] = set()
    language = view.recipe.language
    singular, kinds = nouns(language).singular, tables(language).kinds
    for food in view.ingredients:
        goods = food.goods
        like = None if goods else view.kitchen.larder.find(food.name.lower().split(" ")[-1:])  # a lake trout is a fish
        known.update(_kinds_of(like.goods if like else goods, kinds))
        known.add(singular(food.name.lower().split(" ")[-1]))
        known.update(food.part.split(" "))
        if goods:
            known.update((goods.name, singular(goods.name.split(" ")[-1]), *goods.aliases))
            known.update(part.id.replace("-", " ") for part in goods.parts)
            known.update(part.id.split("-")[-1] for part in goods.parts)
    for product in view.recipe.products:
        known.update(singular(name.lower().split(" ")[-1]) for name in product.names if name)
    return known
