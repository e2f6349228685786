"""Food is lifted out in plain words.

For the table and the timeline it stays with the rest: what is boiled down and named afterwards holds it too, and it
cannot be called back by its name alone.

Put the food in brackets, `Lift out [the pears]`: it goes its own way, and comes back by that name. Or name what stays
behind, as in `[leaving syrup]`, and go on with `[the syrup]`; the food is then what you have in hand.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile

from tamis.checks.words import check_words, word_set
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Naming
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action
    from tamis.reading.plain import Plain

RULE = "lifted-in-words"
LEVEL: Severity = "information"
ABOUT = ("said lifted.verbs",)
BAD = """\
title: Pears in syrup
serves: 4

# Pears

Put [4 pears, peeled] [in a pan] with [500 ml water] and [200 g caster sugar] and [simmer for 20 min] [until tender].
Lift out the pears with a slotted spoon.
Boil [over high heat] [to 150 ml].
"""
GOOD = """\
title: Pears in syrup
serves: 4

# Pears

Put [4 pears, peeled] [in a pan] with [500 ml water] and [200 g caster sugar] and [simmer for 20 min] [until tender].
Lift out [the pears] with a slotted spoon.
Boil [over high heat] [to 150 ml].
Pour over [the pears].
"""


# *The softened pears*: so many words at most.
_MOST_WORDS = 3


class _Lifted(NamedTuple):
    """Words that may lift a food out: the first of their tokens, the one behind them, and the food."""

    first: int
    end: int
    food: str


def check(view: View) -> Iterator[Diagnostic]:
    """`Lift out the X`, where X is a food of the component and the line names nothing that stays behind."""
    singular = nouns(view.recipe.language).singular
    for words in view.saying(word_set(view.recipe.language, "lifted.verbs")):
        lifted = words.plain.ask(_lifted)
        if not lifted or any(isinstance(read, Naming) for read in words.action.reads):
            continue
        foods = _foods_before(view, words.action)
        found = next((one for one in lifted if singular(one.food) in foods), None)
        if found is not None:
            said = words.plain.slice(found.first, found.end)
            message = f"“{said}” stands outside brackets: the table and timeline leave the food with the rest"
            left = example(view.recipe.language, "leaving_syrup")
            the = example(view.recipe.language, "the", name=found.food)
            hint = f"put it in brackets, {the}, here and where it comes back; or name what stays behind, as in {left}"
            yield Diagnostic(RULE, LEVEL, words.span(found.first, found.end), message, hint)


def _foods_before(view: View, action: Action) -> set[str]:
    """The last words of what has gone into a component before an action."""
    singular, uses = nouns(view.recipe.language).singular, view.recipe.uses
    before = takewhile(lambda earlier: earlier is not action, view.recipe.actions)
    return {
        singular(uses[use].ingredient.name.lower().split()[-1])
        for earlier in before
        if earlier.component == action.component
        for use in earlier.uses
    }


def _lifted(plain: Plain) -> tuple[_Lifted, ...]:
    return tuple(_candidates(plain)) if len(plain) > 3 else ()


def _candidates(plain: Plain) -> Iterator[_Lifted]:
    """`Lift out the X`, and `lift the X out`; what comes out *of* something is in no hurry."""
    said, language = plain.said, plain.kitchen.language
    words, the, of = check_words(language).lifted, nouns(language).definite, check_words(language).small.between
    for at in range(len(said) - 3):
        if said[at] not in words.verbs:
            continue
        if said[at + 1] in words.outward and said[at + 2] in the:
            for end in range(at + 4, min(at + 4 + _MOST_WORDS, len(said) + 1)):
                if not plain.is_word(end - 1):
                    break
                if said[end : end + 1] == [] or said[end] not in of:
                    yield _Lifted(at, end, said[end - 1])
        elif said[at + 1] in the:
            for end in range(at + 4, min(at + 4 + _MOST_WORDS, len(said) + 1)):
                if not plain.is_word(end - 2):
                    break
                if said[end - 1] in words.outward and (said[end : end + 1] == [] or said[end] not in of):
                    yield _Lifted(at, end, said[end - 2])
