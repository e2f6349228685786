"""Lengths of time from the tree of a clause: `1 h 30 min`, `an hour or two`, `at least 2 h, up to a day`."""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import Amount
from tamis.quantity.duration import OVERNIGHT, Duration, at_least, up_to, window
from tamis.reading.clause import child, leaves
from tamis.reading.quantities import amount, one_number, read_number, unit_of
from tamis.record import made
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.reading.clause import Node, Reading


def seconds_in(reading: Reading, unit: Node) -> Fraction:
    """The seconds of a unit of time."""
    found = unit_of(reading, unit)
    assert found is not None
    return found.factor


def _exact(reading: Reading, node: Node) -> Duration:
    """Numbers with units of time: `1 h 30 min`, `45 s–1 min`, `1 hour and a half`."""
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
    return lasting(amount(reading, number, "time", unit_word), seconds_in(reading, unit_word))


def lasting(said: Amount, unit: Fraction) -> Duration:
    """So much of a unit of time."""
    low, high = said
    (least, of_low), (most, of_high) = low.as_integer_ratio(), high.as_integer_ratio()
    seconds, of_unit = unit.as_integer_ratio()
    if of_low == of_high == of_unit == 1:  # as most are: no common divisor is to be sought
        shortest = Fraction(least * seconds)
        return made(Duration, (shortest, shortest if high is low else Fraction(most * seconds), False))
    return Duration(*said.times(unit))


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
        whole = (
            amount(reading, counted, "time") if counted else Amount(*2 * (read_number(reading, children[0], "time"),))
        )
        half = _fraction(reading, children[-2])
        return Duration((whole.lo + half) * unit, (whole.hi + half) * unit)
    if kinds[0] == "NUMWORD" or "MORE" in kinds:
        number = child(children, "amount")
        value = amount(reading, number, "time") if number else Amount(*2 * (read_number(reading, children[0], "time"),))
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
