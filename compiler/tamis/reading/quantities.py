"""Numbers with their units, from the tree of a clause: amounts, measures, durations, temperatures.

What a sign between numbers may mean in two ways is asked about, never chosen: `1,5`, `20/30`, a range that runs
backwards.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from tamis.quantity.amount import Amount
from tamis.quantity.degrees import degree_words
from tamis.quantity.duration import OVERNIGHT, Duration, at_least, up_to, window
from tamis.quantity.measure import Measure, plus
from tamis.quantity.number import decimal, is_kitchen_fraction, problem
from tamis.quantity.temperature import c_from_f, c_from_gas
from tamis.reading.clause import child, end_of, leaves
from tamis.record import made
from tamis.source import Span
from tamis.typed import TYPE_CHECKING, Literal
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.quantity.units import Unit
    from tamis.reading.clause import Node, Reading

# Of an hour or a minute nobody says five eighths.
_OF_TIME = frozenset((2, 3, 4))

_Of = Literal["", "time", "degrees"]


def amount(reading: Reading, node: Node, of: _Of = "", unit: Node | None = None) -> Amount:
    """The amount of an `amount` or a `count`; `of` is "time" or "degrees" where that limits its fractions, `unit` what
    stands behind it."""
    numbers = node[1]
    if numbers[0][0] == "amount":
        return amount(reading, numbers[0], of, unit)
    first, last = numbers[0], numbers[-1]
    if first[0] == "NUMBER" and (plain := _plain(first[1], last[1])):
        reading.numbers.add(first[2])
        if last is not first:
            reading.numbers.add(last[2])
        return plain
    low = _number(reading, numbers[0], of)
    if len(numbers) == 1:
        return Amount(low, low)
    high = _number(reading, numbers[-1], of)
    if low > high:
        raise _reversed(reading, node, unit)
    return Amount(low, high)


def one_number(reading: Reading, node: Node) -> Fraction:
    """The number of an `amount` or a `count` where a range means nothing."""
    value = amount(reading, node)
    if not value.single:
        message = f"“{reading.said([node])}”: one number is wanted here"
        raise reading.fail("number-unclear", reading.span([node]), message, "write the number that is meant")
    return value.lo


@lru_cache(4096)
def _plain(low_text: str, high_text: str) -> Amount | None:
    """The amount of figures with one reading, `420` or `8–10`; most are."""
    low = decimal(low_text)
    if low is None or low_text == high_text:
        return None if low is None else made(Amount, (low, low))
    high = decimal(high_text)
    return None if high is None or low > high else Amount(low, high)


def _number(reading: Reading, leaf: Node, of: _Of) -> Fraction:
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
    said = leaf[1].strip("-‐‑.")
    return reading.kitchen.units.get("inch" if leaf[0] == "INCH" else said)


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
        hint = "the same amount in another measure stands in round brackets, more of it after *plus*"
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


# ---- time


def seconds_in(reading: Reading, unit: Node) -> Fraction:
    """The seconds of a unit of time."""
    found = unit_of(reading, unit)
    assert found is not None
    return found.factor


def _exact(reading: Reading, node: Node) -> Duration:
    """Numbers with units of time: `1 h 30 min`, `45 s–1 min`, `1 hour and a half`."""
    if len(node[1]) == 2 and node[1][1][0] == "TIME":
        return _of_unit(reading, *node[1])
    children = [part for part in node[1] if part[0] not in ("AND", "RANGE", "ARTICLE")]
    kinds = [part[0] for part in children]
    if kinds == ["amount", "TIME", "amount", "TIME"]:
        low = one_number(reading, children[0]) * seconds_in(reading, children[1])
        high = one_number(reading, children[2]) * seconds_in(reading, children[3])
        if low > high:
            raise _times_reversed(reading, node)
        return Duration(low, high)
    if kinds[-1] == "ANDHALF":
        return _and_half(reading, node)
    if kinds == ["exact", "FRACTION"]:
        unit = seconds_in(reading, [leaf for leaf in leaves(children[0][1]) if leaf[0] == "TIME"][-1])
        part = _fraction(reading, children[1]) * unit
        return _exact(reading, children[0]).plus(Duration(part, part))
    here = _of_unit(reading, children[-2], children[-1])
    return _exact(reading, children[0]).plus(here) if kinds[0] == "exact" else here


def _of_unit(reading: Reading, number: Node, unit_word: Node) -> Duration:
    """A number of one unit of time."""
    first, last = number[1][0], number[1][-1]
    if first[0] == "NUMBER" and _plain(first[1], last[1]):
        reading.numbers.update((first[2], last[2]))
        return _length(first[1], last[1], seconds_in(reading, unit_word).numerator)
    return Duration(*amount(reading, number, "time", unit_word).times(seconds_in(reading, unit_word)))


@lru_cache(1024)
def _length(low: str, high: str, seconds: int) -> Duration:
    """Numbers that `_plain` knows, of a unit of so many seconds: all units of time are whole ones."""
    plain = _plain(low, high)
    assert plain is not None
    return Duration(*plain.times(seconds))


def _and_half(reading: Reading, node: Node) -> Duration:
    """`1 h et demie`; behind a range it could mean both of its ends."""
    number, unit, _ = node[1]
    said = amount(reading, number, "time")
    if not said.single:
        message = f"“{reading.said([node])}”: half a unit more at which end of the range?"
        raise reading.fail("number-unclear", reading.span([node]), message, "write both ends out")
    length = (said.lo + Fraction(1, 2)) * seconds_in(reading, unit)
    return Duration(length, length)


def _times_reversed(reading: Reading, node: Node) -> Exception:
    said = reading.said([node])
    hint = "the shorter time comes first"
    return reading.fail("range-reversed", reading.span([node]), f"the range “{said}” runs the wrong way round", hint)


def _fraction(reading: Reading, leaf: Node) -> Fraction:
    return reading.words.fractions[leaf[1].lower()]


def stretch(reading: Reading, node: Node) -> Duration:
    """A length of time in figures or in words: `an hour`, `three quarters of an hour`, `overnight`."""
    children = node[1]
    if children[0][0] == "exact":
        return _exact(reading, children[0])
    kinds = [part[0] for part in children]
    if kinds == ["OVERNIGHT"]:
        reading.numbers.add(children[0][2])
        return OVERNIGHT
    if kinds == ["SPAN"]:
        reading.numbers.add(children[0][2])
        length = Fraction(reading.words.spans[" ".join(reading.keys(children))])
        return Duration(length, length)
    if kinds[-1] == "exact":  # `an hour and 10 minutes`
        return stretch(reading, ("stretch", children[:-2])).plus(_exact(reading, children[-1]))
    time = child(children, "TIME")
    assert time is not None
    unit = seconds_in(reading, time)
    if kinds[-2:] == ["FRACTION", "TIME"]:  # `two and a half hours`
        counted = child(children, "amount")
        whole = amount(reading, counted, "time") if counted else Amount(*2 * (_number(reading, children[0], "time"),))
        half = _fraction(reading, children[-2])
        return Duration((whole.lo + half) * unit, (whole.hi + half) * unit)
    if kinds[0] == "NUMWORD" or "MORE" in kinds:
        number = child(children, "amount")
        value = amount(reading, number, "time") if number else Amount(*2 * (_number(reading, children[0], "time"),))
        return Duration(*value.times(unit))
    if kinds[0] == "COUPLE":
        return Duration(2 * unit, 2 * unit)
    total = Fraction(0) if "AND" not in kinds else unit
    part = child(children, "FRACTION")
    if part is None:
        return Duration(unit, unit)
    number = child(children, "count")
    times = amount(reading, number) if number else Amount(Fraction(1), Fraction(1))
    of_unit = unit * _fraction(reading, part)
    return Duration(total + of_unit * times.lo, total + of_unit * times.hi)


def duration(reading: Reading, node: Node) -> Duration:
    """A duration with its bounds: `at least 2 h, up to a day`, `2 h or overnight`, `an hour or two`."""
    children = node[1]
    if len(children) == 1:
        return stretch(reading, children[0])
    stretches = [part for part in children if part[0] == "stretch"]
    first = stretch(reading, stretches[0])
    hedges = {leaf[0] for part in children if part[0] == "hedges" for leaf in part[1]}
    number = child(children, "count")
    bounds = len(stretches) - 1 + (children[-1][0] == "LONGER") + bool(number)
    bound = "ATLEAST" in hedges or "UPTO" in hedges
    if bounds + bound:
        if bounds + (bound and len(stretches) == 1) > 1:
            raise many_ends(reading, node)
        for part in stretches:
            _has_one_end(reading, node, part)
    if len(stretches) == 2:
        second = stretch(reading, stretches[1])
        if second.hi is None or first.hi is None or first.hi > second.hi:
            raise _times_reversed(reading, node)
        return window(first.lo, second.hi)
    if children[-1][0] == "LONGER" or "ATLEAST" in hedges:
        return at_least(first.lo)
    if number:  # `an hour or two`
        most = amount(reading, number)
        if not most.single:
            raise many_ends(reading, node)
        return Duration(first.lo, first.lo * most.hi)
    if "UPTO" in hedges and first.hi is not None:
        return up_to(first.hi)
    return first


def _has_one_end(reading: Reading, whole: Node, part: Node) -> None:
    """A bound is one length; of *overnight* everybody knows which end is meant."""
    if part[1][0][0] != "OVERNIGHT" and not stretch(reading, part).single:
        raise many_ends(reading, whole)


def many_ends(reading: Reading, node: Node) -> Exception:
    """What is said of a time whose bound is a range."""
    message = f"“{reading.said([node])}” has more ends than a time has"
    least, both = (example(reading.kitchen.language, key) for key in ("at_least", "both_bounds"))
    hint = f"a range by itself, `2–3 h`; a bound has one figure, {least}; or both bounds, {both}"
    return reading.fail("number-unclear", reading.span([node]), message, hint)


def is_more(reading: Reading, node: Node) -> bool:
    """Whether a duration adds to the cooking before: `another 5 min`, `10 more minutes`, `2 min more`."""
    for part in node[1]:
        if part[0] in ("hedges", "stretch") and any(leaf[0] in ("ANOTHER", "MORE") for leaf in part[1]):
            return True
        if part[0] == "stretch" and part[1][0][0] == "ARTICLE" and part[1][0][1].lower() in reading.words.another:
            return True
        if part[0] == "MORE":
            return True
    return False


# ---- heat


def scales(reading: Reading, node: Node) -> tuple[Amount, bool]:
    """The temperature in °C, and whether it is a fan oven's. The first scale counts; its neighbours say the same in
    another or give the fan's own figure."""
    children = node[1]
    if children[0][0] == "scales":
        first = scales(reading, children[0])
        others = children[1:]
        fan = any(part[0] == "FAN" for part in others) and child(others, "degrees") is None
        check_neighbours(reading, node, first, others)
        return first[0], first[1] or fan
    heat = child(children, "degrees")
    assert heat is not None
    return degrees(reading, heat), child(children, "FAN") is not None


# Scales are rounded to what an oven's knob shows; a fan's figure lies some 20 °C lower.
_ROUNDED = 12
_FAN_LOWER = (5, 35)


def check_neighbours(reading: Reading, whole: Node, first: tuple[Amount, bool], nodes: Sequence[Node]) -> None:
    """Look whether the figures beside a temperature say the same."""
    fan = False
    for at, part in enumerate(nodes):
        if part[0] in ("SLASH", "COMMA", "OR", "OPEN"):
            fan = False
        elif part[0] == "FAN":
            fan = True
        elif part[0] == "degrees":
            here = degrees(reading, part)
            fan = fan or (nodes[at + 1 : at + 2] != [] and nodes[at + 1][0] == "FAN")
            if not (_same(first[0].lo, here.lo, fan - first[1]) and _same(first[0].hi, here.hi, fan - first[1])):
                message = f"“{reading.said([part])}” is not what stands before it in another scale"
                fan_oven = example(reading.kitchen.language, "fan", oven=180, fan=160)
                hint = f"an oven and its fan: {fan_oven}; two scales: `180 °C / 350 °F`; a range: `160–180 °C`"
                raise reading.fail("number-unclear", reading.span([whole]), message, hint)


def damp(reading: Reading, nodes: Sequence[Node]) -> Amount | None:
    """How moist the air is, behind the temperature."""
    said = child(nodes, "HUMIDITY")
    return amount(reading, nodes[nodes.index(said) - 2]) if said else None


def _same(one: Fraction, other: Fraction, fan: int) -> bool:
    """Whether two figures mean one heat; `fan` is 1 where only the other is a fan's, -1 where only the first is."""
    lower = (one - other) * fan
    return abs(one - other) <= _ROUNDED if not fan else _FAN_LOWER[0] <= lower <= _FAN_LOWER[1]


def degrees(reading: Reading, node: Node) -> Amount:
    """One temperature in °C."""
    one, other = node[1]
    if one[0] == "GAS":
        mark = amount(reading, other)
        low, high = c_from_gas(mark.lo), c_from_gas(mark.hi)
        if low is None or high is None:
            message = f"there is no gas mark {other[1][0][1]}"
            raise reading.fail("number-unclear", reading.span([node]), message, "gas marks run from 1/4 to 10")
        return Amount(low, high)
    value = amount(reading, one, "degrees", other)
    if other[1].rstrip().lower().endswith((*degree_words(reading.kitchen.language).fahrenheit, "℉")):
        return Amount(c_from_f(value.lo), c_from_f(value.hi))
    return value


def temperatures(nodes: Sequence[Node]) -> list[Node]:
    """The `scales` among nodes and in their round brackets."""
    found: list[Node] = []
    for node in nodes:
        if node[0] == "scales":
            found.append(node)
        elif node[1].__class__ is list and node[0] in ("sight", "note"):
            found += temperatures(node[1])
    return found


def place(reading: Reading, start: int, end: int) -> Span:
    """A span of the clause's text as one of the file."""
    return Span(reading.inner + start, reading.inner + end)
