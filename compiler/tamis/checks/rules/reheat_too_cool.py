"""Leftovers are to be heated less than the limit.

Cooked food that has stood is heated to 74 °C (165 °F) right through (USDA FSIS; US Food Code 3-403.11), be it what is
left of this dish or the cooked chicken that goes into it.

Say so: `keeps: 3 days, in the fridge; reheat to 74 °C (165 °F)`, `[until steaming hot]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Cue, Target
from tamis.reading.plain import plain_of
from tamis.safety.data import rules
from tamis.safety.degrees import core_temperature, temperatures
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.checks.view import View
    from tamis.reading.plain import Plain
    from tamis.source import Span

RULE = "reheat-too-cool"
LEVEL: Severity = "warning"
ABOUT = ("leftovers", "view safety.tepid")
BAD = """\
title: Braised chicken
serves: 4
keeps: 3 days, in the fridge; reheat to 63 °C

# Chicken

Put [8 chicken thighs] [in a casserole] with [300 ml water].
[Braise for 40–50 min] [over low heat] [until 74 °C (165 °F) at the bone].
"""
GOOD = """\
title: Braised chicken
serves: 4
keeps: 3 days, in the fridge; reheat to 74 °C (165 °F)

# Chicken

Put [8 chicken thighs] [in a casserole] with [300 ml water].
[Braise for 40–50 min] [over low heat] [until 74 °C (165 °F) at the bone].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """What the header says of leftovers, lines that reheat them, and cooked food that goes in and is heated again."""
    window = rules().windows[view.safety.authority]
    hint = f"reheat to {window.reheat_text}; local food codes prevail"
    for item in view.safety.tepid:
        hot = example(view.recipe.language, "until_steaming")
        message = f"reheated only until it is warm: {item.food}"
        yield Diagnostic(RULE, LEVEL, item.span, message, f"say until when, {hot}, or {hint}")
    if not any(caution.key == "leftovers" for caution in view.safety.cautions):
        return
    for degrees, place in _asked(view):
        if degrees < window.reheat:
            yield Diagnostic(RULE, LEVEL, place, "leftovers are reheated to less than the safe temperature here", hint)


def _asked(view: View) -> Iterator[tuple[Fraction, Span]]:
    header, language = view.recipe.header, view.recipe.language
    for said in plain_of(header.keeps, view.kitchen).ask(_heatings):
        degrees = temperatures(said, language)
        if degrees:
            yield max(degrees), header.span("keeps")
    reheats = check_words(language).keeping.reheats
    for action in view.recipe.actions if any([word in view.lower for word in reheats]) else ():
        if any([use.text.lower().startswith(reheats) for use in action.verbs]):
            for read in action.reads:
                core = core_temperature(read.clause.text, language) if isinstance(read, Cue | Target) else None
                if core is not None:
                    yield core, read.clause.span


def _heatings(plain: Plain) -> tuple[str, ...]:
    """How leftovers are heated, each up to the end of its sentence."""
    heats = check_words(plain.kitchen.language).keeping.heats
    found: list[str] = []
    start: int | None = None
    for at, word in enumerate((*plain.said, ".")):
        if start is None and word.startswith(heats):
            start = at
        elif start is not None and word in _ENDS:
            found.append(plain.slice(start, at))
            start = None
    return tuple(found)


_ENDS = frozenset((".", ";"))
