"""A food that a line adds in plain words, and that no bracket of the recipe measures.

It is on no list, so it is not bought, weighed, or searched for allergens; the reader meets it when the
pan is hot.

Put it in a bracket with its measure where it is added: `add [1 tsp fine salt]`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from tamis.diagnostics import Diagnostic, Severity
from tamis.kitchen.words import singular
from tamis.source import Span
from tamis.syntax.document import Text

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "food-not-bracketed"
LEVEL: Severity = "information"
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

# The first words after the verb, up to the next mark; *and* may join a second food.
_PHRASE = re.compile(r"\s*((?:[^\W\d_][\w'’-]*\s+){0,4}[^\W\d_][\w'’-]*)")
_FILLERS = ("the", "a", "an", "some", "more", "of", "in", "with", "to", "over", "on", "into", "all", "little")
_JOINTS = ("and", "or", "then", "until", "for")


def check(view: View) -> Iterator[Diagnostic]:
    """What follows an adding verb in plain words, if it is a food that nothing in the recipe measures."""
    known: set[str] | None = None
    for action in view.recipe.actions:
        for part, at in _after_adding(action):
            found = _food_at(view, part, at)
            if found is None:
                continue
            if known is None:
                known = _known_words(view)
            food, span = found
            if singular(food.split(" ")[-1]) in known or food in known:
                continue
            message = f"“{food}” is added here, and no bracket of the recipe measures it"
            yield Diagnostic(RULE, LEVEL, span, message, f"write `[20 g {food}]`, with the measure it needs")


def _after_adding(action: Action) -> Iterator[tuple[Text, int]]:
    """The plain words after each adding verb, and where in them it ends; verbs and parts both go left to right."""
    parts = iter(action.parts)
    part = next(parts, None)
    for use in action.verbs:
        while part is not None and part.span.end <= use.span.end:
            part = next(parts, None)
        if isinstance(part, Text) and use.verb.adds and use.span.end > part.span.start:
            yield part, use.span.end - part.span.start


def _food_at(view: View, part: Text, at: int) -> tuple[str, Span] | None:
    """The food that the plain words from an offset on name, if they begin with one."""
    match = _PHRASE.match(part.text, at)
    words = _until_joint(match[1].split()) if match else []
    for end in range(len(words), 0, -1):
        food = " ".join(words[:end]).lower()
        if match and view.kitchen.larder.find(food.split(" ")):
            start = part.text.index(words[0], match.start(1))
            stop = part.text.index(words[end - 1], start) + len(words[end - 1])
            return food, Span(start, stop).shifted(part.span.start)
    return None


def _until_joint(words: list[str]) -> list[str]:
    while words and words[0].lower() in _FILLERS:
        words = words[1:]
    stop = next((index for index, word in enumerate(words) if word.lower() in _JOINTS), len(words))
    return words[:stop]


def _known_words(view: View) -> set[str]:
    """Whatever the recipe measures or makes, by its last word, by its goods' names, and by their parts'."""
    known: set[str] = set()
    for _, food in view.ingredients():
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
