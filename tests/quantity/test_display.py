"""What a cook gets to read."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.quantity import display, duration
from tamis.quantity.amount import Amount, between, exactly
from tamis.quantity.measure import Measure
from tamis.quantity.units import shipped

US = shipped("en")
CUP, TBSP, TSP = Fraction("236.5882365"), Fraction("14.78676478125"), Fraction("4.92892159375")

NUMBERS = [
    ("19/8", "2⅜"), ("2/3", "⅔"), ("12", "12"), ("0", "0"), ("1/5", "⅕"), ("1/20", "0.05"), ("1/16", "1/16"),
    ("33/16", "2 1/16"), ("1/6", "⅙"), ("1000/999", "1"), ("0.123", "0.123"), ("22/101", "0.218"),
]  # fmt: skip


@pytest.mark.parametrize(("value", "text"), NUMBERS)
def test_number(value: str, text: str) -> None:
    assert display.number(Fraction(value)) == text


VOLUMES = [
    (CUP / 3, "⅓ cup"), (CUP * 9 / 8, "1 cup plus 2 tbsp"), (CUP * 3 / 8, "6 tbsp"),
    (CUP / 8, "2 tbsp"),
    (CUP, "1 cup"), (CUP * 3 / 2, "1½ cups"), (CUP * 10, "10 cups"), (CUP * 21 / 2, "10½ cups"),
    (TSP * 19 / 8, "2⅜ tsp"), (TSP * 3 / 2, "1½ tsp"), (TSP * 3, "1 tbsp"), (TSP * 4, "1 tbsp plus 1 tsp"),
    (TBSP * 3 / 2, "1½ tbsp"), (TBSP * 4, "¼ cup"), (TBSP * 5, "5 tbsp"), (TBSP * 16, "1 cup"),
    (TSP / 8, "⅛ tsp"), (TSP / 3, "⅓ tsp"), (TSP * 15 / 64, "scant ¼ tsp (1.2 ml)"),
    (TSP * 3 / 16, "generous ⅛ tsp (0.9 ml)"), (TSP / 16, "less than ⅛ tsp (0.3 ml)"),
    (Fraction(100), "⅓ cup plus 1½ tbsp"), (Fraction(120), "½ cup"), (Fraction(5), "1 tsp"),
    (Fraction(0), "0"),
    # what a cook would measure, though another pair of spoons came nearer
    (CUP * Fraction("0.409"), "6½ tbsp"), (CUP * Fraction("1.854"), "1¾ cups plus 2 tbsp"),
    (Fraction(28), "scant 2 tbsp (28 ml)"), (Fraction(260), "1 cup plus 2 tbsp"),
]  # fmt: skip


@pytest.mark.parametrize(("ml", "text"), VOLUMES)
def test_kitchen_volume(ml: Fraction, text: str) -> None:
    assert display.kitchen_volume(ml, US) == text


QUARTS = [
    (950, "1 quart"), (1000, "4¼ cups"), (1420, "1½ quarts"), (2000, "2 quarts plus ½ cup"),
    (2500, "2½ quarts plus ½ cup"), (3000, "3 quarts plus ⅔ cup"), (5000, "5¼ quarts"),
]  # fmt: skip


@pytest.mark.parametrize(("ml", "text"), QUARTS)
def test_quarts(ml: int, text: str) -> None:
    assert display.quarts(Fraction(ml), US) == text


@pytest.mark.parametrize(
    ("cup", "tbsp", "ml", "text"),
    [
        ("metric", "", 250, "1 cup"),
        ("metric", "australian", 40, "2 tbsp"),
        ("metric", "metric", 40, "2 tbsp plus 2 tsp"),
        ("label", "", 240, "1 cup"),
        ("japanese", "", 300, "1½ cups"),
    ],
)
def test_kitchen_volume_follows_the_house(cup: str, tbsp: str, ml: int, text: str) -> None:
    assert display.kitchen_volume(Fraction(ml), shipped("en", cup, tbsp)) == text


WEIGHTS = [
    ("510", "510 g"), ("1200", "1.2 kg"), ("1234", "1.23 kg"), ("12345", "12.3 kg"), ("0.4", "0.4 g"),
    ("7.5", "7.5 g"),
    ("12.5", "12.5 g"), ("136.9372", "137 g"), ("453.59237", "454 g"), ("566.99", "565 g"), ("502", "502 g"),
    ("999.9", "1 kg"), ("0.02", "0.02 g"), ("1/3", "0.3 g"), ("0.0004", "0.0004 g"), ("0", "0 g"),
]  # fmt: skip


@pytest.mark.parametrize(("g", "text"), WEIGHTS)
def test_grams(g: str, text: str) -> None:
    assert display.grams(Fraction(g)) == text


@pytest.mark.parametrize(
    ("ml", "text"),
    [("236.5882365", "237 ml"), ("4.92892159375", "4.9 ml"), ("1000", "1 l"), ("1250", "1.25 l")],
)
def test_millilitres(ml: str, text: str) -> None:
    assert display.millilitres(Fraction(ml)) == text


OUNCE = Fraction("28.349523125")


@pytest.mark.parametrize(
    ("ounces", "text"),
    [
        ("3/4", "¾ oz"),
        ("17/2", "8½ oz"),
        ("24", "1 lb 8 oz"),
        ("16", "1 lb"),
        ("15.99", "1 lb"),
        ("200", "12½ lb"),
    ],
)
def test_pounds_ounces(ounces: str, text: str) -> None:
    assert display.pounds_ounces(Fraction(ounces) * OUNCE) == text


def test_too_light_for_ounces() -> None:
    assert display.pounds_ounces(Fraction(1)) == "1 g"


@pytest.mark.parametrize(
    ("grams", "text"),
    [
        (225, "8 oz"),
        (450, "1 lb"),
        (680, "1 lb 8 oz"),
        (900, "2 lb"),
        (1350, "3 lb"),
        (700, "1 lb 8½ oz"),
        (9000, "20 lb"),
        (400, "14 oz"),
    ],
)
def test_grams_near_half_pounds(grams: int, text: str) -> None:
    assert display.pounds_ounces(Fraction(grams)) == text


WRITTEN = [
    ("480", "g", "480 g"), ("3/2", "kg", "1.5 kg"), ("3/2", "cup", "1½ cups"), ("1", "cup", "1 cup"),
    ("1/2", "cup", "½ cup"),
    ("2", "tbsp", "2 tbsp"), ("2", "fl_oz", "2 fl oz"), ("2", "imp_pint", "2 imperial pints"),
    ("2", "us_tbsp", "2 US tbsp"),
    ("3", "clove", "3 cloves"), ("1", "clove", "1 clove"), ("2", "bunch", "2 bunches"),
    ("2", "leaf", "2 leaves"),
    ("2", "pinch", "2 pinches"), ("2", "bay leaf", "2 bay leaves"), ("2", "day", "2 days"),
    ("6", "", "6"), ("2", "inch", "2 inches"),
    ("2", "handful", "2 handfuls"), ("2", "tray", "2 trays"), ("2", "berry", "2 berries"),
]  # fmt: skip


@pytest.mark.parametrize(("number", "unit", "text"), WRITTEN)
def test_written(number: str, unit: str, text: str) -> None:
    assert display.written(Measure(exactly(number), unit), "en") == text


@pytest.mark.parametrize(
    ("amount", "unit", "text"),
    [
        (between(2, 3), "clove", "2–3 cloves"),
        (between("1/2", 1), "cup", "½–1 cup"),
        (between("1/2", "3/2"), "kg", "0.5–1.5 kg"),
        (between(6, 24), "", "6–24"),
    ],
)
def test_written_range(amount: Amount, unit: str, text: str) -> None:
    assert display.written(Measure(amount, unit), "en") == text


DURATIONS = [
    (45, "45 s"), (60, "1 min"), (150, "2 min 30 s"), (5400, "1 h 30 min"), (3600, "1 h"),
    (86400, "1 day"), (129600, "36 h"),
    (187200, "2 days 4 h"), (172800, "2 days"), (1209600, "2 weeks"), (2629800, "1 month"), (0, "0 min"),
]  # fmt: skip


@pytest.mark.parametrize(("seconds", "text"), DURATIONS)
def test_duration(seconds: int, text: str) -> None:
    assert display.duration(seconds) == text


RANGES = [
    (3600, 5400, "60–90 min"), (14400, 64800, "4–18 h"), (45, 60, "45–60 s"), (5400, 9000, "1½–2½ h"),
    (1500, 1800, "25–30 min"),
    (172800, 259200, "2–3 days"), (1209600, 2419200, "2–4 weeks"), (1800, 86400, "30 min–1 day"),
    (600, 600, "10 min"),
    (6600, 7800, "1 h 50 min–2 h 10 min"),
]  # fmt: skip


@pytest.mark.parametrize(("lo", "hi", "text"), RANGES)
def test_duration_range(lo: int, hi: int, text: str) -> None:
    assert display.duration_range(lo, hi) == text


@pytest.mark.parametrize(
    ("length", "text"),
    [
        (duration.at_least(7200), "at least 2 h"),
        (duration.up_to(259200), "up to 3 days"),
        (duration.OVERNIGHT, "8–12 h"),
        (duration.exactly(1200), "20 min"),
    ],
)
def test_wait(length: duration.Duration, text: str) -> None:
    assert display.wait(length) == text


def test_temperatures() -> None:
    assert display.temperature_c(between(97, 99)) == "97–99 °C"
    assert display.temperature_c(Fraction(-18)) == "−18 °C"
    assert display.temperature_c(Fraction("62.8")) == "62.8 °C"
    assert display.temperature_c(Fraction(1590, 9)) == "177 °C"
    assert display.temperature_f(Fraction(350)) == "350 °F"
    assert display.oven_c(Fraction(1590, 9)) == "175 °C"
    # NIST's page on metric cooking pairs 180 °C with 350 °F and 190 with 375; the table of gas marks (sizes.com) pairs
    # 220 with 425 and 230 with 450.
    pairs = {150: 300, 160: 325, 165: 325, 170: 340, 180: 350, 190: 375, 200: 400, 220: 425, 230: 450}
    for celsius, said in pairs.items():
        assert display.oven_f(Fraction(celsius * 9, 5) + 32) == f"{said} °F"


def test_a_limit_is_never_rounded_below_itself() -> None:
    """145 °F is 62.78 °C: 62 would be unsafe, and 62.8 is above it."""
    assert display.limit_c(Fraction(565, 9)) == "63 °C"
    assert display.limit_c(Fraction(63)) == "63 °C"
    assert display.limit_f(Fraction("145.4")) == "145.4 °F"
    assert display.limit_f(Fraction(1454, 9)) == "162 °F"


@pytest.mark.parametrize(
    ("ml", "text"),
    [
        ("15", "1 cuillère à soupe"),
        ("30", "2 cuillères à soupe"),
        ("20", "1 cuillère à soupe plus 1 cuillère à café"),
        ("480", "2 tasses"),
        ("0.2", "moins de ⅛ cuillère à café (0.2 ml)"),
    ],
)
def test_cups_and_spoons_have_the_words_of_the_language(ml: str, text: str) -> None:
    assert display.kitchen_volume(Fraction(ml), shipped("fr")) == text
