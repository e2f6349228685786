"""Food that spoils is thawed at room temperature.

Its outside is warm for hours while the middle is still frozen: never on the counter (USDA FSIS).

Thaw it in the fridge, or in cold water that is changed every 30 minutes: `[thaw overnight] in the fridge`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.plain import phrases, plain_of
from tamis.safety.signs import words_of
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.reading.plain import Plain

RULE = "thaw-at-room"
LEVEL: Severity = "warning"
ABOUT = ("leftovers",)
BAD = """\
title: Braised chicken
serves: 4

# Chicken

Put [8 chicken thighs] [in a casserole] with [300 ml water].
[Braise for 40–50 min] [over low heat] [until 74 °C (165 °F) at the bone].

Ahead: [freeze for up to 2 months]. [Thaw overnight] on the kitchen counter.
"""
GOOD = """\
title: Braised chicken
serves: 4

# Chicken

Put [8 chicken thighs] [in a casserole] with [300 ml water].
[Braise for 40–50 min] [over low heat] [until 74 °C (165 °F) at the bone].

Ahead: [freeze for up to 2 months]. [Thaw overnight] in the fridge.
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Lines and `Ahead:` paragraphs, where the dish has food that spoils."""
    if not any(caution.key == "leftovers" for caution in view.safety.cautions):
        return
    thaws = check_words(view.recipe.language).keeping.thaws
    if not any([word in view.lower for word in thaws]):
        return
    told = [(words_of(action), action.span) for action in view.recipe.actions]
    told += [(wait.text.lower(), wait.span) for component in view.recipe.components for wait in component.ahead]
    for text, span in told:
        if any(word in text for word in thaws) and plain_of(text, view.kitchen).ask(_at_room):
            hint = "thaw it in the fridge, or in cold water changed every 30 minutes; local food codes prevail"
            yield Diagnostic(RULE, LEVEL, span, "this thaws at room temperature", hint)


def _at_room(plain: Plain) -> bool:
    """Whether a place in the room stands behind a word for thawing, in the same sentence."""
    language = plain.kitchen.language
    words = check_words(language).keeping
    rooms = phrases(words.rooms, language)
    thawing = False
    for at, word in enumerate(plain.said):
        if thawing and plain.phrase(rooms, at):
            return True
        thawing = word[-1] != "." and (thawing or word.startswith(words.thaws))
    return False
