"""What must hold for every quantity, not only for the ones somebody thought of."""

from __future__ import annotations

import re
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from tamis.quantity import display, duration, measure, temperature
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.quantity.number import parse
from tamis.quantity.units import SPOONS, Units, shipped
from tamis.quantity.weights import OUNCE

HOUSES = st.builds(
    shipped, st.just("en"), st.sampled_from(["us", "metric", "label", "japanese"]), st.sampled_from(["", *SPOONS])
)
NUMBERS = st.fractions(min_value=0, max_value=20_000, max_denominator=1000)
AMOUNTS = st.tuples(NUMBERS, NUMBERS).map(lambda ends: Amount(min(ends), max(ends)))
BY_KIND = {
    kind: sorted({unit.id for name in shipped("en").names(kind) if (unit := shipped("en").get(name)) is not None})
    for kind in ("mass", "volume", "time", "length")
}
PAIRS = st.sampled_from(sorted(BY_KIND)).flatmap(lambda kind: st.tuples(*[st.sampled_from(BY_KIND[kind])] * 2))


def read_volume(text: str, units: Units) -> Fraction:
    """The millilitres that a shown volume says, read back independently of how it was made."""
    total = Fraction(0)
    for part in text.split(" plus "):
        number, name = part.rsplit(" ", 1)
        value, unit = parse(number, "en"), units.get(name)
        assert value is not None
        assert unit is not None
        total += value * unit.factor
    return total


@given(NUMBERS.filter(bool), HOUSES)
def test_shown_volume_is_within_tolerance_or_says_so(ml: Fraction, units: Units) -> None:
    teaspoon = units.get("tsp")
    assert teaspoon is not None
    shown = display.spoons(ml, units)
    tolerance = Fraction(5 if ml < teaspoon.factor else Fraction(5, 2)) / 100
    if shown.near:
        assert abs(read_volume(shown.text, units) - ml) <= tolerance * ml
    else:
        word, rest = re.fullmatch(r"(less than|scant|generous) (.+)", shown.text).groups()  # type: ignore[union-attr]
        assert (read_volume(rest, units) < ml) == (word == "generous")
        assert " plus " not in rest
        assert re.fullmatch(re.escape(shown.text) + r" \([0-9.]+ ml\)", display.kitchen_volume(ml, units))


@given(st.fractions(min_value=923, max_value=20_000, max_denominator=1000), HOUSES)
def test_quarts_are_within_tolerance(ml: Fraction, units: Units) -> None:
    shown, bracket, _ = display.quarts(ml, units).partition(" (")
    if not bracket:
        assert abs(read_volume(shown, units) - ml) <= ml * Fraction(25, 1000)


@given(NUMBERS, HOUSES)
def test_shown_volume_never_has_decimals(ml: Fraction, units: Units) -> None:
    assert "." not in display.spoons(ml, units).text


@given(
    st.integers(0, 15),
    st.sampled_from([0, *(Fraction(n, 8) for n in range(8)), Fraction(1, 3), Fraction(2, 3)]),
)
def test_kitchen_fractions_read_back(whole: int, part: Fraction) -> None:
    assert parse(display.number(whole + part), "en") == whole + part


@given(st.fractions(min_value=0, max_value=10_000, max_denominator=64))
def test_every_printed_number_reads_back_near(value: Fraction) -> None:
    shown = parse(display.number(value), "en")
    assert shown is not None
    assert abs(shown - value) <= value / 200


@given(AMOUNTS, PAIRS)
def test_there_and_back_is_exact(amount: Amount, pair: tuple[str, str]) -> None:
    here, there = pair
    start = Measure(amount, here)
    gone = measure.convert(start, there, shipped("en"))
    assert gone is not None
    assert measure.base(gone, shipped("en")) == measure.base(start, shipped("en"))
    assert measure.convert(gone, here, shipped("en")) == start


@given(AMOUNTS, PAIRS)
def test_doubling_is_adding(amount: Amount, pair: tuple[str, str]) -> None:
    one = Measure(amount, pair[0])
    same = measure.convert(one, pair[1], shipped("en"))
    assert same is not None
    assert measure.plus(one, same, shipped("en")) == one.times(2)


@given(NUMBERS)
def test_grams_are_within_one_per_cent_or_the_scale(g: Fraction) -> None:
    for shown, large in ((display.grams(g), "kg"), (display.millilitres(g), "l")):
        number, unit = shown.split(" ")
        value = Fraction(number) * (1000 if unit == large else 1)
        scale = Fraction(1, 20) if g < 10 else Fraction(1, 2)
        assert abs(value - g) <= max(g / 100, scale)
        assert value or not g


@given(NUMBERS)
def test_pounds_and_ounces_are_near(g: Fraction) -> None:
    shown = display.pounds_ounces(g)
    if shown.endswith(" g"):
        assert g < OUNCE / 8
        return
    parts = [shown.split(" ")[at : at + 2] for at in range(0, len(shown.split(" ")), 2)]
    ounces = sum((parse(number, "en") or 0) * (16 if unit == "lb" else 1) for number, unit in parts)
    assert abs(ounces * OUNCE - g) <= max(g / 60, OUNCE / 8)


@given(st.fractions(min_value=-273, max_value=1000, max_denominator=100))
def test_degrees_there_and_back(c: Fraction) -> None:
    assert temperature.c_from_f(temperature.f_from_c(c)) == c
    assert temperature.c_from_fan(temperature.fan_from_c(c)) == c


@given(st.fractions(min_value=0, max_value=500, max_denominator=90))
def test_limits_never_fall_below(degrees: Fraction) -> None:
    assert degrees <= Fraction(display.limit_c(degrees).split(" ")[0]) < degrees + 1
    assert display.limit_f(degrees).split(" ")[0] == display.limit_c(degrees).split(" ")[0]


@given(st.integers(0, 10_000_000))
def test_shown_duration_adds_up(seconds: int) -> None:
    words = display.duration(seconds).split(" ")
    total = Fraction(0)
    for number, name in zip(words[::2], words[1::2], strict=True):
        unit = shipped("en").get(name)
        assert unit is not None
        total += int(number) * unit.factor
    assert total == seconds


@given(st.integers(0, 600_000), st.integers(0, 600_000))
def test_durations_add_end_by_end(one: int, other: int) -> None:
    lo, hi = sorted((one, other))
    range_ = duration.between(lo, hi)
    assert range_.plus(range_) == range_.times(2)
    assert range_.plus(duration.at_least(one)).hi is None
    assert range_._replace(window=True).plus(duration.OVERNIGHT).window
    assert not range_.plus(duration.OVERNIGHT).window
