"""How temperatures are written: one place knows it, and pages, commands, settings, conversion and checks ask there."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.quantity.degrees import Degrees, Scale, Typed, degrees_in, typed_degrees, with_sign


@pytest.mark.parametrize(
    ("text", "language", "found"),
    [
        ("until 74 °C inside", "en", [(74, 74, "C")]),
        ("62.5 °C", "en", [(Fraction(125, 2), Fraction(125, 2), "C")]),
        ("180\u00a0°C (350\u00a0°F)", "en", [(180, 180, "C"), (350, 350, "F")]),
        ("165 degrees Fahrenheit", "en", [(165, 165, "F")]),
        ("140 to 150 °F", "en", [(140, 150, "F")]),
        ("140–150F", "en", [(140, 150, "F")]),
        ("200C, 400\u00a0F", "en", [(200, 200, "C"), (400, 400, "F")]),
        ("74℃ or 165℉", "en", [(74, 74, "C"), (165, 165, "F")]),
        ("74 degrés Celsius", "fr", [(74, 74, "C")]),
        ("80 à 85 °C", "fr", [(80, 85, "C")]),
        ("2 cups, 3 fingers, 2 c", "en", []),
    ],
)
def test_temperatures_of_a_text(text: str, language: str, found: list[tuple[int, int, Scale]]) -> None:
    assert [tuple(degrees) for degrees in degrees_in(text, language)] == found
    assert all(isinstance(degrees, Degrees) for degrees in degrees_in(text, language))


@pytest.mark.parametrize(
    ("text", "typed"),
    [
        ("24", Typed(Fraction(24), None, False)),
        ("24 °", Typed(Fraction(24), None, True)),
        (" 75 °f ", Typed(Fraction(75), "F", True)),
        ("75F", Typed(Fraction(75), "F", True)),
        ("−18 ºC", Typed(Fraction(-18), "C", True)),
        ("22.5 C", Typed(Fraction(45, 2), "C", True)),
        ("24 cups", None),
        ("warm", None),
        ("", None),
    ],
)
def test_a_temperature_by_itself(text: str, typed: Typed | None) -> None:
    assert typed_degrees(text) == typed


@pytest.mark.parametrize(
    ("text", "signed"),
    [("at 200C", "at 200 °C"), ("at 400\u00a0F", "at 400 °F"), ("at 200 °C", "at 200 °C"), ("200 Cakes", "200 Cakes")],
)
def test_degrees_get_their_sign(text: str, signed: str) -> None:
    assert with_sign(text) == signed
