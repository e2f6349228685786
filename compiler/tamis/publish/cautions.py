"""What a page and a card say of safety: cautions, allergens, and that local food codes prevail.

The page must not drown in warnings, so it shows what the recipe's own clauses call for, once each, and the sources
in small print.
"""

from __future__ import annotations

from tamis.publish.words import page_words
from tamis.record import NamedTuple
from tamis.safety.data import AllergenList, rules
from tamis.safety.report import LISTS, PREVAIL, allergen_words, claim_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.safety.records import Part, Safety


class CautionView(NamedTuple):
    """One caution; `source` is empty where it is common practice."""

    key: str
    text: str
    source: str


class AllergenView(NamedTuple):
    """One list's allergens of the dish, and of each component where there are several."""

    list: str
    dish: tuple[str, ...]
    parts: tuple[tuple[str, tuple[str, ...]], ...]


class SafetyView(NamedTuple):
    """`unknown` names foods of which nothing is known; `claims` tells what comes of tags that promise something;
    `served` is set for a dish meant raw or not yet cooked."""

    cautions: tuple[CautionView, ...]
    allergens: tuple[AllergenView, ...]
    unknown: tuple[str, ...]
    claims: tuple[str, ...]
    served: str
    authority: str
    notice: str = PREVAIL


def safety_view(safety: Safety, language: str) -> SafetyView:
    """The data of the partial `safety.html`."""
    unchecked = page_words(language).unchecked
    return SafetyView(
        cautions=tuple(CautionView(c.key, c.text, unchecked.sub("", c.source)) for c in safety.cautions),
        allergens=tuple(_list(safety, declared.list) for declared in safety.dish.declared),
        unknown=safety.dish.not_known,
        claims=tuple(map(claim_words, safety.claims)),
        served=safety.served,
        authority=rules().sources[safety.authority],
    )


def _list(safety: Safety, list_: AllergenList) -> AllergenView:
    parts = tuple((part.name, _of(part, list_)) for part in safety.parts)
    return AllergenView(LISTS[list_], _of(safety.dish, list_), parts)


def _of(part: Part, list_: AllergenList) -> tuple[str, ...]:
    return tuple(
        allergen_words(allergen)
        for declared in part.declared
        if declared.list == list_
        for allergen in declared.allergens
    )
