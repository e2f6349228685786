"""What a food is called: without the states before it, and in the plural."""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.clauses import Ingredient


def bare_name(item: Ingredient) -> str:
    """The name without the states before it: "butter" of "soft butter", "cheddar" of "finely grated cheddar"."""
    left = sum(len(state.split()) for state in item.states)
    if not left:
        return item.name
    states = {word for state in item.states for word in state.split()}
    words = item.name.split()
    for at, word in enumerate(words):
        if not left:
            return " ".join(words[at:])
        left -= sum(part in states for part in word.lower().rstrip(",").split("-"))
    return item.name


def several(name: str, item: Ingredient, language: str) -> str:
    """The plural of a food's name; the goods know the odd ones."""
    from tamis.quantity.nouns import nouns

    known = item.goods is not None and name.lower() == item.goods.name
    return (item.goods.plural if known and item.goods else "") or nouns(language).plural(name)


def with_part(food: Ingredient) -> str:
    """Its name, with the part of it that is taken as the cook wrote it: `zest of 2 lemons`."""
    return " ".join(food.clause.text[: food.name_span.end - food.clause.inner].split()) if food.part else food.name
