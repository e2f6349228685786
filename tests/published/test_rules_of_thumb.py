"""Kitchen rules against what the goods' own figures give: each rule comes from another source than those figures.

SR28: USDA National Nutrient Database, release 28 (2015), where the goods' figures are from. The status of each rule
stands beside it: "confirmed" (a copy of the source was read), "secondary" (a page that states it).
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.convert.asked import read_asked
from tamis.convert.measures import worths
from tamis.kitchen.equivalents import Equivalent, shipped_equivalents
from tamis.kitchen.goods import Goods
from tamis.kitchen.house import default_kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.measure import base

KITCHEN = default_kitchen("en")
LARDER = KITCHEN.larder
CUP = Fraction("236.5882365")  # ml, exact: NIST Handbook 44, appendix C
TBSP, TSP = CUP / 16, CUP / 48


def goods(id: str) -> Goods:
    found = LARDER.get(id)
    assert found is not None
    return found


def grams(text: str) -> Fraction:
    found = worths(read_asked(text, KITCHEN), KITCHEN).grams
    assert found is not None, text
    return found.usual.lo


def ml(text: str) -> Fraction:
    found = worths(read_asked(text, KITCHEN), KITCHEN).ml
    assert found is not None, text
    return found.usual.lo


def rule(left: str, right: str) -> Equivalent:
    return next(pair for pair in shipped_equivalents().pairs if (pair.left, pair.right) == (left, right))


def span(pair: Equivalent) -> Amount:
    """All that a rule's sources say, from the least to the most, in the first figure's base unit."""
    bases = [base(figure.measure, KITCHEN.units) for figure in pair.figures]
    ends = [amount for amount in bases if amount is not None]
    return Amount(min(each.lo for each in ends), max(each.hi for each in ends))


def times(pair: Equivalent) -> Amount:
    """How much of the right food for one of the left, in the same kind."""
    of = base(pair.of, KITCHEN.units)
    assert of is not None
    return Amount(span(pair).lo / of.lo, span(pair).hi / of.hi)


@pytest.mark.parametrize(
    ("text", "low", "high", "source"),
    [
        ("juice of 1 lemon", "2", "3", "extension-service table; confirmed without address"),
        ("juice of 1 orange", "4", "16/3", "extension-service table, 1/4 to 1/3 cup; confirmed without address"),
    ],
)
def test_juice_of_a_fruit(text: str, low: str, high: str, source: str) -> None:
    """In tbsp. SR28's own fruit gives the upper end and a little over: 3.15 of a lemon, 5.55 of an orange."""
    ours = ml(text) / TBSP
    assert Fraction(low) <= ours <= Fraction(high) * Fraction(110, 100), source


@pytest.mark.parametrize(
    ("text", "tbsp", "fl_oz"),
    [("juice of 1 lemon", "3.15", "30.5"), ("juice of 1 lime", "2.86", "30.8"), ("juice of 1 orange", "5.55", "31.0")],
)
def test_juice_by_the_fluid_ounce(text: str, tbsp: str, fl_oz: str) -> None:
    """Worked out from SR28's juice of one fruit and its fl oz rows; ours come from its cup rows: equal within 2 %."""
    assert abs(ml(text) / TBSP / Fraction(tbsp) - 1) <= Fraction(2, 100), fl_oz


def test_an_onion_chopped() -> None:
    """A medium onion is 0.69 cup chopped (worked out from SR28 11282: 110 g each, 160 g a cup)."""
    chopped = LARDER.density(goods("onion"), ("chopped",))
    assert chopped is not None
    assert round(float(grams("1 medium onion") / (chopped.usual * CUP)), 2) == 0.69
    assert abs(span(rule("onion", "chopped onion")).lo / CUP - Fraction("0.69")) < Fraction(1, 200)


def test_cream_doubles() -> None:
    """A cup of cream whips to two (SR28 01053: 238 g fluid, 120 g whipped): what is in the bowl stays, within 2 %."""
    assert abs(grams("2 cups whipped double cream") / grams("1 cup double cream") - 1) <= Fraction(2, 100)
    assert times(rule("double cream", "whipped double cream")) == Amount(Fraction(2), Fraction(2))


def test_fresh_and_dried_herbs() -> None:
    """3 to 1 by volume (extension-service table; confirmed without address). By weight SR28's basil is 3.8 to 1."""
    assert times(rule("basil", "dried basil")) == Amount(Fraction(1, 3), Fraction(1, 3))
    weighed = grams("1 tbsp chopped basil") / grams("1 tsp dried basil")
    assert round(float(weighed), 1) == 3.8
    assert weighed != 3


def test_powdered_herbs() -> None:
    """1 tbsp fresh = 1 tsp dried = ¼ tsp powdered, 3 : 1 : ¼ (the same table)."""
    powder = times(rule("basil", "ground dried basil"))
    assert powder == Amount(Fraction(1, 12), Fraction(1, 12))
    assert powder.lo * 4 == times(rule("basil", "dried basil")).lo


def test_a_clove_of_garlic_keeps_both_answers() -> None:
    """SR28 11215: 3 g at 2.8 g/tsp is 1.07 tsp; "1 clove = ½ tsp minced" (reference.com; secondary) conflicts."""
    both = span(rule("garlic", "minced garlic"))
    assert both.lo / TSP == Fraction(1, 2)
    assert round(float(both.hi / TSP), 2) == 1.07
    assert round(float(grams("1 clove garlic") / grams("1 tsp minced garlic")), 2) == 1.07


def test_garlic_powder() -> None:
    """1 clove = ⅛ tsp powder (West Virginia University Extension; secondary): 0.4 g by SR28's 3.1 g a teaspoon."""
    powder = span(rule("garlic", "garlic powder")).lo
    assert powder == TSP / 8
    assert Fraction(3, 10) < powder / TSP * grams("1 tsp garlic powder") < Fraction(1, 2)


@pytest.mark.parametrize(("end", "factor", "flakes"), [(0, "1.25", "4.8"), (1, "2.14", "2.8")])
def test_salts_by_volume(end: int, factor: str, flakes: str) -> None:
    """Salt 6 g/tsp (SR28 02047): × 1.25 of flakes at 4.8 g, × 2.14 of those at 2.8 g (labels in GNU units 3.15)."""
    said = times(rule("salt", "kosher salt"))[end]
    assert round(float(said), 2) == float(factor)
    assert abs(grams("1 tsp salt") / Fraction(flakes) - said) < Fraction(1, 1000)


@pytest.mark.parametrize(
    ("factor", "source"),
    [
        ("0.4", "trade rule on a how-to page; secondary"),
        ("0.5", "a pizza forum; secondary"),
        ("0.375", "2/3 oz of cake for 1/4 oz of dry, a post of the 1990s; secondary"),
    ],
)
def test_fresh_to_active_dry_yeast(factor: str, source: str) -> None:
    """The published factors disagree, so the answer is a range that holds each."""
    said = times(rule("fresh yeast", "active dry yeast"))
    assert said.lo <= Fraction(factor) <= said.hi, source
    assert said.lo < said.hi


def test_a_cake_of_yeast_against_its_packet() -> None:
    """A cake of 17 g and a packet of 7.2 g (SR28 18374, 18375) stand for each other: 0.42 is in the range."""
    said, cake = times(rule("fresh yeast", "active dry yeast")), LARDER.piece(goods("fresh-yeast"), "cake")
    assert cake is not None
    assert cake.usual == 17
    assert said.lo <= grams("1 packet active dry yeast") / cake.usual <= said.hi


@pytest.mark.parametrize(("factor", "source"), [("0.33", "trade rule, fresh to instant; secondary")])
def test_fresh_to_instant_yeast(factor: str, source: str) -> None:
    assert times(rule("fresh yeast", "instant yeast")) == Amount(Fraction(factor), Fraction(factor)), source


def test_active_dry_to_instant_yeast() -> None:
    """Three quarters (a bread page; secondary) and 0.33/0.40 (the trade rules) are both kept."""
    assert times(rule("active dry yeast", "instant yeast")) == Amount(Fraction(3, 4), Fraction(33, 40))


def test_lemon_zest() -> None:
    """2 g/tsp and 6 g/tbsp (SR28 09156) agree with each other; from them a lemon's zest is 2 to 4 tsp."""
    assert grams("1 tbsp lemon zest") == 6
    part = next(part for part in goods("lemon").parts if part.id == "lemon-zest")
    assert 2 <= part.lo / 2 <= part.hi / 2 <= 4
