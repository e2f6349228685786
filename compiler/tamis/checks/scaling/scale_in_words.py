"""A number in plain words, in a recipe that is scaled.

*Lay the tomato on ten of them* and *it makes about 42* stand outside brackets: nobody multiplies them, and they
contradict the rest. What is told of each piece, a size, a time and *six at a time* stay true.

Work it out again where it counts or measures the whole; or say it without a number: *half of them*.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import times_text
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.checks.words import Scaling
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Ingredient
    from tamis.reading.plain import Plain

RULE = "scale-in-words"
LEVEL: Severity = "warning"
FACTOR = Fraction(3)
BAD = """\
title: Tomato sandwiches
serves: 5

# Sandwiches

Spread [10 slices white bread] with [40 g soft butter].
Lay [5 tomatoes, sliced] on five of them, and close with the other five.
"""
GOOD = """\
title: Tomato sandwiches
serves: 5

# Sandwiches

Spread [10 slices white bread] with [40 g soft butter].
Lay [5 tomatoes, sliced] on half of them, 2 or 3 slices to each, and close with the others.
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """The numbers of plain words that count or measure the whole, told once."""
    from tamis.reading.plain import plain_of
    from tamis.syntax.document import Text

    words, found = check_words(scene.recipe.language).scaling, list[tuple[str, Span]]()
    for action in scene.recipe.actions:
        for part in action.parts:
            if isinstance(part, Text) and not part.text.isspace():
                plain = plain_of(part.text, scene.kitchen)
                found += [
                    (plain.slice(first, end), Span(plain.starts[first], plain.ends[end - 1]).shifted(part.span.start))
                    for first, end in _of_the_whole(plain, words)
                ]
        found += [(food.preparation, food.clause.span) for food in _likened(scene, action, words)]
    if not found:
        return
    (said, span), *others = found
    message = f"{times_text(scene.factor)}: “{said}” stands in plain words, and stays as it is"
    hint = "work it out again if it counts or measures the whole"
    yield Diagnostic(RULE, LEVEL, span, message, hint, tuple(Label(other, "and this") for _, other in others))


def _likened(scene: Scene, action: Action, words: Scaling) -> Iterator[Ingredient]:
    """What is weighed or measured, and told over again in words that no factor changes: *8 g yeast (half a cake)*,
    *30 g butter, the size of a walnut*."""
    from tamis.reading.plain import plain_of

    for food in (scene.recipe.uses[index].ingredient for index in action.uses):
        unit = scene.kitchen.units.get(food.measures[0].unit) if len(food.measures) == 1 and food.preparation else None
        if unit is None or unit.kind not in ("mass", "volume"):
            continue
        likeness = any(food.preparation.lower().startswith(said) for said in words.likened)
        if likeness or (_is_in_brackets(food) and _counts(plain_of(food.preparation, scene.kitchen))):
            yield food


def _is_in_brackets(food: Ingredient) -> bool:
    return f"({food.preparation})" in food.clause.text


def _counts(plain: Plain) -> bool:
    """*Half a cake*, *3 large*, *a heaped cupful*: not *2 days old*, *2 cm thick* or *a strong one*."""
    from tamis.quantity.nouns import nouns
    from tamis.reading.plain_amounts import amount_words, amounts

    kitchen, said = plain.kitchen, plain.said
    first = said[0] in amount_words(kitchen.language).hedges
    measured = any(amount.first <= first < amount.end for amount in plain.ask(amounts))
    if plain.is_count(first):
        counts = len(plain) == first + 1 or (plain.is_word(first + 1) and kitchen.units.get(said[first + 1]) is None)
        return counts and not measured
    some = said[first : first + 2]
    articles = nouns(kitchen.language).indefinite
    part = len(some) == 2 and some[1] in articles
    return part or (some[0] in articles and any(map(kitchen.cupboard.count_word, said[first + 1 : first + 4])))


def _of_the_whole(plain: Plain, words: Scaling) -> Iterator[tuple[int, int]]:
    """Where such a number stands, with the words that show it: those of an amount, else *of them* and its like behind
    it or *the other* before it, or what it counts."""
    from tamis.reading.plain_amounts import amount_words, amounts

    measured = {at for amount in plain.ask(amounts) for at in range(amount.first, amount.end)}
    for amount in plain.ask(amounts):
        measures = amount.kind in ("mass", "volume") and not _is_size(plain, amount.end)
        tool = not plain.is_count(amount.first) and not _is_of(plain, amount.end)  # with a teaspoon
        if measures and not tool and not _singly(plain, amount.first, words):
            yield amount.first, amount.end
    for at in range(len(plain) - 3):
        if at not in measured and _is_a_spoonful(plain, at) and not _singly(plain, at, words):
            yield at, at + 2
    for at in filter(plain.is_count, range(len(plain))):
        first = at - (plain.said[at - 1] in amount_words(plain.kitchen.language).hedges) if at else 0
        before, singly = plain.said[max(0, first - 2) : first], _singly(plain, at, words)
        if " ".join(plain.said[at + 1 : at + 3]) in words.of_them:
            yield at, at + 3
        elif not singly and plain.said[at + 1 : at + 2] and plain.said[at + 1] in words.lots:
            yield at, at + 2
        elif " ".join(before) in words.the_others or (before[-1:] and before[-1] in words.yields and not singly):
            yield at, at + 1
        elif not singly and (end := _counted(plain, at, bool(before) and before[-1] in words.into)):
            yield at, end


def _is_a_spoonful(plain: Plain, at: int) -> bool:
    """*A glass of wine*, *a handful of raisins*: a word that counts, with a food behind it."""
    from tamis.quantity.nouns import nouns

    kitchen = plain.kitchen
    counts = plain.said[at] in nouns(kitchen.language).indefinite and kitchen.cupboard.count_word(plain.said[at + 1])
    return bool(counts) and _is_of(plain, at + 2)


def _is_of(plain: Plain, at: int) -> bool:
    """*Of raisins* at a place: not of what is there already, as *of the flour*."""
    of = at < len(plain) and plain.said[at] in check_words(plain.kitchen.language).vessels.of
    return of and any(plain.kitchen.larder.find(plain.said[at + 1 : at + size]) for size in (2, 3))


def _singly(plain: Plain, at: int, words: Scaling) -> bool:
    """Whether the words round a place, from comma to comma, tell of one piece, or of a turn."""
    start = plain.text.rfind(",", 0, plain.starts[at]) + 1
    end = plain.text.find(",", plain.starts[at])
    said = plain.said[plain.after(start) : len(plain) if end < 0 else plain.after(end)]
    return not set(words.singly).isdisjoint(said)


def _counted(plain: Plain, at: int, into: bool) -> int:
    """The end of the food, the vessels or (behind *into*) the pieces that a number counts; 0 for anything else."""
    from tamis.quantity.nouns import nouns

    kitchen = plain.kitchen
    for end in range(min(at + 4, len(plain)), at + 1, -1):
        said = plain.said[at + 1 : end]
        if not all(map(plain.is_word, range(at + 1, end))):
            continue
        if kitchen.larder.find(said):
            return end
        if nouns(kitchen.language).one(said[-1]) == said[-1]:
            continue  # an adjective, or a single thing
        piece = kitchen.cupboard.get(" ".join(said[-1:]))
        vessel = piece is not None and piece.kind == "vessel"
        if vessel or (into and piece is None):
            return end
    return 0


def _is_size(plain: Plain, end: int) -> bool:
    """Whether an amount tells of what size a tool is: *a 2 litre dish*, *a 500 g loaf tin*."""
    behind = plain.said[end : end + 2]
    return any(plain.kitchen.cupboard.get(" ".join(behind[:n])) for n in (1, 2))
