"""How a house may write packs and prices, and what it is told of those that cannot be read."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.kitchen.house import default_kitchen, house_kitchen, price_problems
from tamis.kitchen.sale import Sale, Unsaleable, sale_of

UNITS = default_kitchen("en").units
F = Fraction
POUND = F("453.59237")

FORMS = [
    ("500 g", "2.40", Sale("g", F(500), True, "500 g", "", F("2.4") / 500)),
    ("1 l", "1.15", Sale("ml", F(1000), True, "1 l", "", F("1.15") / 1000)),
    ("6", "1.80", Sale("", F(6), True, "6", "", F("0.3"))),
    ("", "0.35 each", Sale("", F(1), True, "", "", F("0.35"))),
    ("", "0.35", Sale("", F(1), True, "", "", F("0.35"))),
    ("", "0.35 per piece", Sale("", F(1), True, "", "", F("0.35"))),
    ("", "4.50 per dozen", Sale("", F(12), True, "12", "", F("0.375"))),
    ("", "1.20 per kg", Sale("g", F(50), False, "", "", F("0.0012"))),
    ("", "1.20/kg", Sale("g", F(50), False, "", "", F("0.0012"))),
    ("", "1.20 a kilo", Sale("g", F(50), False, "", "", F("0.0012"))),
    ("", "1.55 per lb", Sale("g", POUND / 4, False, "", "", F("1.55") / POUND)),
    ("", "3.20 per 100 g", Sale("g", F(25), False, "", "", F("0.032"))),
    ("", "0.90 per bunch", Sale("bunch", F(1), True, "bunch", "", F("0.9"))),
    ("bunch", "0.90", Sale("bunch", F(1), True, "bunch", "", F("0.9"))),
    ("bunch of 20 g", "0.90", Sale("g", F(20), True, "bunch of 20 g", "bunch", F("0.045"))),
    ("can of 400 g", "0.85 each", Sale("g", F(400), True, "can of 400 g", "can", F("0.85") / 400)),
    ("can of 400 g", "0.85 per can", Sale("g", F(400), True, "can of 400 g", "can", F("0.85") / 400)),
    ("500 g", "2 per kg", Sale("g", F(500), True, "500 g", "", F("0.002"))),
    ("500 g", "", Sale("g", F(500), True, "500 g")),
]


@pytest.mark.parametrize(("pack", "price", "sale"), FORMS)
def test_forms(pack: str, price: str, sale: Sale) -> None:
    assert sale_of(pack, price, UNITS) == sale


def test_nothing_said() -> None:
    assert sale_of("", " ", UNITS) is None


@pytest.mark.parametrize(
    ("pack", "price", "key"),
    [
        ("a few", "1.20", "pack"),
        ("500 grms", "1.20", "pack"),
        ("0 g", "1.20", "pack"),
        ("heap of 500 g", "1", "pack"),
        ("", "cheap", "price"),
        ("", "£1.20", "price"),
        ("", "1,20", "price"),
        ("", "1.20 per kgg", "price"),
        ("", "-1.20", "price"),
        ("", "1.20 per 0 g", "price"),
        ("500 g", "1.20 per l", "price"),
        ("", "1" * 400, "price"),
    ],
)
def test_what_cannot_be_read(pack: str, price: str, key: str) -> None:
    with pytest.raises(Unsaleable) as wrong:
        sale_of(pack, price, UNITS)
    assert wrong.value.key == key and "expected" in str(wrong.value)


def test_a_house_is_told_where_it_stands() -> None:
    text = '[onion]\npack = "heaps"\n\n[carrot]\nprice = "1.20 per kgg"\n'
    kitchen, problems = house_kitchen(None, text)
    assert problems == []
    said = {text[slice(*problem.finding.span)]: problem.finding for problem in price_problems(text, kitchen)}
    assert set(said) == {"pack", "price"}
    assert all(finding.rule == "house-goods" and finding.severity == "error" for finding in said.values())
    assert said["price"].message.startswith("[carrot] price: “1.20 per kgg” is for nothing that can be measured")


def test_a_number_alone_is_a_price() -> None:
    kitchen, problems = house_kitchen(None, "[onion]\nprice = 0.35\n")
    onion = kitchen.larder.get("onion")
    assert not problems and onion and sale_of(onion.pack, onion.price, kitchen.units) == FORMS[3][2]
