"""Amounts that hang on another weight: so much per cent of it, so much per kilo or litre."""

from __future__ import annotations

from tamis.quantity.measure import Measure
from tamis.reading.clause import child, start_of
from tamis.reading.clauses import Ingredient, Percent
from tamis.reading.measured import NAMES, ONE
from tamis.reading.quantities import amount, as_one, one_measure
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.reading.clause import Node, Reading


def read_percent(reading: Reading, food: Ingredient, node: Node) -> Ingredient:
    """`72 % water` is of the flour; `2 % of its weight in fine salt` of what it names."""
    value = amount(reading, node[1][0])
    weight = child(node[1], "WEIGHTOF")
    if weight is None and food.preparation.partition(" ")[0].lower() in reading.words.of:
        base = food.preparation.removesuffix(".")
        message = f"“{base}” is not read after the name: the percentage would be of the flour"
        said = f"{reading.said([node])} {base} in {food.name}"
        raise reading.fail("clause-role", food.name_span, message, f"write `[{said}]`")
    if weight is None:
        return food._replace(percent=Percent(value, "flour"))
    if node[1][-1][0] in NAMES:  # of the weight of the meat
        return food._replace(percent=Percent(value, reading.said([node[1][-1]])))
    said = reading.text[node[1][2][3] if node[1][2][0] == "OF" else start_of(node[1][2]) : weight[2]].strip()
    for ending in reading.words.possessive:
        said = said.replace("’", "'").removesuffix(ending)
    first, _, rest = said.partition(" ")
    return food._replace(percent=Percent(value, rest if first.lower() in reading.words.the and rest else said))


def read_rate(reading: Reading, food: Ingredient, node: Node) -> Ingredient:
    """`18 g salt per kg of the duck`, `10 g salt per litre of water`: the amount is that of what it names."""
    named = [part for part in node[1] if part[0] in NAMES]
    unit = child(node[1], "COUNT")
    of = reading.said(named) if named else "its"
    if not food.measures:
        message = f"“{reading.said([node])}”: so much of what? A measure is missing before it"
        hint = f"write for example {example(reading.kitchen.language, 'rate')}"
        raise reading.fail("clause-role", reading.span([node]), message, hint)
    base = _rate_base(reading, node, unit)
    rate = as_one(reading, food.measures)
    return food._replace(percent=Percent(rate.amount, of, rate, base))


def _rate_base(reading: Reading, node: Node, unit: Node | None) -> Measure:
    """What the rate is of: a kilo, a litre, 100 g."""
    weight = child(node[1], "weight")
    if weight:
        return one_measure(reading, weight)
    assert unit is not None
    found = reading.kitchen.units.get(unit[1].lower())
    if found is None or found.kind not in ("mass", "volume"):
        message = f"“per {unit[1]}” is not a rate that can be calculated"
        kilo, litre = (example(reading.kitchen.language, key) for key in ("rate_kg", "rate_litre"))
        raise reading.fail("clause-role", reading.span([unit]), message, f"write {kilo} or {litre}")
    return Measure(ONE, found.id)
