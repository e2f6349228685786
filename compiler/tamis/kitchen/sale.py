"""How a food is sold: the words of `pack` and `price` in the house's goods, read into exact figures.

A grocer sells half-kilo packs, a butcher weighs out, eggs come by the dozen and thyme by the bunch. A cost needs one
thing of all of them: what one gram, millilitre or piece costs, and the least that can be bought. So every form is
brought to that, and a form that cannot be is told, since a price that quietly counts as nothing makes a cheap dish.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import cache

from tamis.kitchen.house_goods import Fault
from tamis.patterns import pattern
from tamis.quantity.measure import BASES
from tamis.quantity.nouns import nouns
from tamis.quantity.number import parse
from tamis.quantity.number_words import number_words
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Any
from tamis.words import one_of, word_lists

if TYPE_CHECKING:
    from tamis.quantity.units import Units

STEPS = {"kg": Fraction(50), "l": Fraction(50)}
"""What is weighed out by the kilo or the litre goes up to the next 50 g or ml; by another unit to its quarter."""
PACK_FORM = 'expected a pack such as "500 g", "6", "bunch" or "can of 400 g"'
PRICE_FORM = 'expected a price such as 1.20, "1.20 per kg", "0.35 each" or "4.50 per dozen"'

_FIGURES = "0123456789./½¼¾⅓⅔⅛ "


class SaleWords(NamedTuple):
    """How a house says what it buys and pays: `packs` are what packs are called, `any` of them, a single `piece`;
    `holds` stands before what a pack holds. `price` is one, with what it is for."""

    packs: frozenset[str]
    any: str
    piece: str
    holds: re.Pattern[str]
    price: re.Pattern[str]


@cache
def sale_words(language: str) -> SaleWords:
    """The words of a language, read once."""
    lists = word_lists(language, "sale")
    packs, prices = lists["packs"], lists["prices"]
    per = rf"(?:\b{one_of(prices['for'])}\b|/)"
    return SaleWords(
        packs=frozenset(packs["names"]),
        any=packs["any"][0],
        piece=packs["piece"][0],
        holds=pattern(rf" {one_of(packs['holds'])} "),
        price=pattern(rf"(\d{{1,9}}(?:\.\d{{1,6}})?)(?:\s+({one_of(prices['each'])})|\s*{per}\s*(\S.*))?"),
    )


class Sold(NamedTuple):
    """So much of a unit: `unit` is g, ml, a count word or "" for pieces; `spelling` is the unit as written."""

    amount: Fraction
    unit: str
    spelling: str = ""


class Sale(NamedTuple):
    """How a food is sold.

    `unit` is what it is counted in: g, ml, a count word or "" for pieces. `step` is the least that can be bought, in
    that unit; `packed` tells packs (two of 500 g) from goods weighed out in such steps (450 g). `label` names a pack
    ("500 g", "can of 400 g", "" for single pieces), `word` what a pack is called. `price` is that of one unit, exact,
    None where the house gives none.
    """

    unit: str
    step: Fraction
    packed: bool
    label: str = ""
    word: str = ""
    price: Fraction | None = None


class Unsaleable(ValueError):
    """A pack or a price that cannot be read; `key` is which, the text tells what was expected."""

    def __init__(self, key: str, why: str) -> None:
        super().__init__(why)
        self.key = key


def sale_of(pack: str, price: str, units: Units) -> Sale | None:
    """How a food with this pack and this price is sold; None where the house says neither. Raises Unsaleable."""
    if not pack.strip() and not price.strip():
        return None
    word, held = _pack(pack, units) if pack.strip() else ("", None)
    if not price.strip():
        assert held is not None, "one of the two is there"
        return Sale(held.unit, held.amount, True, _label(pack, held), word)
    cost, per = _price(price, units)
    any_pack = sale_words(units.language).any
    if per is None or (held is not None and per.amount == 1 and per.unit in (any_pack, word or any_pack)):
        return _by_pack(held, cost, pack, word)
    if held is None:
        return _loose(per, cost)
    if held.unit != per.unit:
        raise Unsaleable("price", f"“{price}” does not fit the pack “{pack}”: expected one for the pack or its unit")
    return Sale(held.unit, held.amount, True, _label(pack, held), word, cost / per.amount)


def sale_problems(house: Mapping[str, Any], units: Units) -> list[Fault]:
    """What is wrong with the packs and prices of a house's goods."""
    problems = []
    for id, said in house.items():
        if not isinstance(said, Mapping):
            continue
        pack, price = said.get("pack", ""), str(said.get("price", ""))
        try:
            sale_of(pack if isinstance(pack, str) else "", price, units)
        except Unsaleable as wrong:
            problems.append(Fault(id, wrong.key, f"{wrong.key}: {wrong}"))
    return problems


def _by_pack(held: Sold | None, cost: Fraction, pack: str, word: str) -> Sale:
    """A price for the whole pack; without one, for a piece."""
    if held is None:
        return Sale("", Fraction(1), True, "", "", cost)
    return Sale(held.unit, held.amount, True, _label(pack, held), word, cost / held.amount)


def _loose(per: Sold, cost: Fraction) -> Sale:
    """A price for a measure of something that comes in no packs; so many pieces for a price are a pack."""
    if per.unit not in ("g", "ml"):
        label = " ".join(word for word in ("" if per.amount == 1 else str(per.amount), per.spelling) if word)
        return Sale(per.unit, per.amount, True, label, "", cost / per.amount)
    step = STEPS.get(per.spelling) or per.amount / 4
    return Sale(per.unit, step, False, "", "", cost / per.amount)


def _label(pack: str, held: Sold) -> str:
    return "" if held.unit == "" and held.amount == 1 else " ".join(pack.split())


def _pack(text: str, units: Units) -> tuple[str, Sold]:
    """What a pack is called, and what it holds."""
    words = sale_words(units.language)
    said, *rest = words.holds.split(text.strip(), maxsplit=1)
    held = _measure(rest[0] if rest else text, units)
    word = nouns(units.language).singular(said.lower()) if rest else ""
    if held is None or (rest and (word not in words.packs or (held.unit == "" and held.amount == 0))):
        raise Unsaleable("pack", f"“{text}” cannot be read: {PACK_FORM}")
    return word, held


def _price(text: str, units: Units) -> tuple[Fraction, Sold | None]:
    """The figure and what it is for: None for `each` or nothing said."""
    found = sale_words(units.language).price.fullmatch(text.strip())
    if not found:
        raise Unsaleable("price", f"“{text}” cannot be read: {PRICE_FORM}")
    if not found[3]:
        return Fraction(found[1]), None
    per = _measure(found[3], units)
    if per is None:
        raise Unsaleable("price", f"“{text}” is for nothing that can be measured: {PRICE_FORM}")
    return Fraction(found[1]), per


def _measure(text: str, units: Units) -> Sold | None:
    """`500 g`, `kg`, `12`, `dozen`, `bunch`; None if it is none of these."""
    spelling = text.strip().lstrip(_FIGURES).strip()
    said = text.strip().removesuffix(spelling).strip()
    number = parse(said, units.language) if said else Fraction(1)
    if not text.strip() or not number or any(map(str.isdecimal, spelling)):
        return None
    group = number_words(units.language).groups.get(spelling.lower())
    if group:
        return Sold(number * group, "", "")
    unit = units.get(spelling) if spelling else None
    if unit is not None and unit.kind in ("mass", "volume"):
        return Sold(number * unit.factor, BASES[unit.kind], unit.id)
    words = sale_words(units.language)
    word = nouns(units.language).singular(spelling.lower())
    if word and word not in words.packs:
        return None
    return Sold(number, "", "") if word == words.piece else Sold(number, word, word)
