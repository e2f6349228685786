"""Numbers with their units, from the tree of a clause: amounts and measures.

What a sign between numbers may mean in two ways is asked about, never chosen: `1,5`, `20/30`, a range that runs
backwards.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure, plus
from tamis.quantity.number import decimal, is_kitchen_fraction, problem
from tamis.quantity.number_words import number_words
from tamis.reading.clause import end_of
from tamis.record import made
from tamis.source import Span
from tamis.typed import TYPE_CHECKING, Literal
from tamis.words import example

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.quantity.units import Unit
    from tamis.reading.clause import Node, Reading

# Of an hour or a minute nobody says five eighths.
_OF_TIME = frozenset((2, 3, 4))

_Of = Literal["", "time", "degrees"]


def amount(reading: Reading, node: Node, of: _Of = "", unit: Node | None = None) -> Amount:
    """The amount of an `amount` or a `count`; `of` is "time" or "degrees" where that limits its fractions, `unit` what
    stands behind it."""
    numbers = node[1]
    if numbers[-1][0] == "NUMWORD" and len(numbers) == 2:
        return _of_groups(reading, node)
    if numbers[0][0] == "amount":
        return amount(reading, numbers[0], of, unit)
    first, last = numbers[0], numbers[-1]
    if first[0] == "NUMBER" and (plain := plain_amount(first[1], last[1])):
        reading.numbers.add(first[2])
        if last is not first:
            reading.numbers.add(last[2])
        return plain
    low = read_number(reading, numbers[0], of)
    if len(numbers) == 1:
        return Amount(low, low)
    high = read_number(reading, numbers[-1], of)
    if low > high:
        raise _reversed(reading, node, unit)
    return Amount(low, high)


def _of_groups(reading: Reading, node: Node) -> Amount:
    """`3 dozen`, `two dozen`: so many of a group."""
    first, group = node[1]
    many = number_words(reading.kitchen.language).groups.get(group[1].lower())
    if many is None:
        message = f"“{reading.said([node])}”: two numbers, one after the other"
        raise reading.fail("number-unclear", reading.span([node]), message, "write the number that is meant")
    reading.numbers.add(group[2])
    whole = amount(reading, first) if first[0] == "amount" else Amount(*2 * (read_number(reading, first, ""),))
    return whole.times(many)


def one_number(reading: Reading, node: Node) -> Fraction:
    """The number of an `amount` or a `count` where a range means nothing."""
    value = amount(reading, node)
    if not value.single:
        message = f"“{reading.said([node])}”: one number is needed here"
        raise reading.fail("number-unclear", reading.span([node]), message, "write the number that is meant")
    return value.lo


@lru_cache(4096)
def plain_amount(low_text: str, high_text: str) -> Amount | None:
    """The amount of figures with one reading, `420` or `8–10`; most are."""
    low = decimal(low_text)
    if low is None or low_text == high_text:
        return None if low is None else made(Amount, (low, low))
    high = decimal(high_text)
    return None if high is None or low > high else Amount(low, high)


def read_number(reading: Reading, leaf: Node, of: _Of) -> Fraction:
    """The number that a word or figures say; one that can be read in two ways is asked about."""
    found = reading.number(leaf) if leaf[0] != "MISWRITTEN" else None
    said = leaf[1]
    reading.numbers.add(leaf[2])
    if found is None:
        message = problem(said) or f"“{said[:24]}” is not a number that can be used here"
        raise reading.fail("number-unclear", reading.span([leaf]), message)
    if "/" in said or "⁄" in said:
        _is_kitchen_fraction(reading, leaf, of)
    return found


def _is_kitchen_fraction(reading: Reading, leaf: Node, of: _Of) -> None:
    """`20/30` may be a range, a fraction, an oven and its fan: no guess is made."""
    whole, _, below = leaf[1].replace("⁄", "/").partition("/")
    top, bottom = int(whole.replace("-", " ").split()[-1]), int(below)
    if len(whole.replace("-", " ").split()) > 1 and of != "degrees":  # `1 1/2` is one number
        return
    if of != "degrees" and is_kitchen_fraction(top, bottom) and (of != "time" or bottom in _OF_TIME):
        return
    said = leaf[1]
    if of == "degrees":
        fan = example(reading.kitchen.language, "fan", oven=whole, fan=below)
        hint = f"an oven and its fan: {fan}; a range: `{whole}–{below} °C`"
    else:
        hint = f"a range is `{whole.split()[-1]}–{below}`; a fraction has the halves, thirds, quarters … of a kitchen"
    raise reading.fail(
        "number-unclear", reading.span([leaf]), f"“{said}” can be read as a range or as a fraction", hint
    )


def _reversed(reading: Reading, node: Node, unit: Node | None) -> Exception:
    low, high = node[1][0], node[1][2]
    nodes = [node, unit] if unit else [node]
    said, between = reading.said(nodes), reading.text[low[3] : high[2]]
    hint = f"did you mean `{high[1].strip()}{between}{low[1].strip()}{reading.text[high[3] : end_of(nodes[-1])]}`?"
    return reading.fail("range-reversed", reading.span(nodes), f"the range “{said}” runs the wrong way round", hint)


def unit_of(reading: Reading, leaf: Node) -> Unit | None:
    """The unit that a word names."""
    return unit_called(reading.kitchen, "inch" if leaf[0] == "INCH" else leaf[1])


def unit_called(kitchen: Kitchen, said: str) -> Unit | None:
    """The unit of a spelling, with the hyphen or the full stop that may stand at it."""
    return kitchen.units.get(said.strip("-‐‑."))


def measures(reading: Reading, weight: Node) -> tuple[Measure, ...]:
    """A weight or volume, its parts to be added up: `1 lb 8 oz`."""
    parts = weight[1]
    before, number, unit = parts[:-2], parts[-2], parts[-1]
    found = unit_of(reading, unit)
    measure = made(Measure, (amount(reading, number, "", unit), found.id if found else unit[1]))
    if not before:
        return (measure,)
    earlier = measures(reading, before[0])
    last = reading.kitchen.units.get(earlier[-1].unit)
    if last is None or found is None or last.kind != found.kind or last.id == found.id:
        message = f"“{reading.said([weight])}” are two measures with nothing between them"
        hint = "the same amount in another measure stands in parentheses, more of it after *plus*"
        raise reading.fail("measures-unclear", reading.span([weight]), message, hint)
    return (*earlier, measure)


def one_measure(reading: Reading, weight: Node) -> Measure:
    """A weight or volume as one measure, in the unit that it begins with."""
    return as_one(reading, measures(reading, weight))


def as_one(reading: Reading, parts: tuple[Measure, ...]) -> Measure:
    """The sum of measures, for a record that has place for one."""
    total = parts[0]
    for part in parts[1:]:
        both = plus(total, part, reading.kitchen.units)
        if both is None:
            message = f"“{reading.text.strip()}”: measures of different kinds have no sum"
            raise reading.fail("measures-unclear", reading.clause.span, message, "write one measure")
        total = both
    return total


def length(reading: Reading, node: Node) -> Measure:
    """A length as a measure: `5 cm`."""
    unit = unit_of(reading, node[1][1])
    return Measure(amount(reading, node[1][0], "", node[1][1]), unit.id if unit else node[1][1][1])


def check_size(reading: Reading, node: Node) -> None:
    """Read the numbers of a size, for what may be wrong with them: a size itself stays as it is written."""
    for part in node[1]:
        if part[0] == "amount":
            amount(reading, part)
        elif part[1].__class__ is list:
            check_size(reading, part)


def factors(reading: Reading, product: Node) -> tuple[Amount, ...]:
    """The numbers of a product: `3 × 20 cm`, `20 × 30 × 4`."""
    found: list[Amount] = []
    for part in product[1]:
        if part[0] == "product":
            found += factors(reading, part)
        elif part[0] == "amount":
            found.append(amount(reading, part))
        elif part[0] == "length":
            found.append(amount(reading, part[1][0]))
    return tuple(found)


def place(reading: Reading, start: int, end: int) -> Span:
    """A span of the clause's text as one of the file."""
    return Span(reading.inner + start, reading.inner + end)
