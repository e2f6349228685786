"""How much water a pan holds that nobody measures, from `grammar/preparations.toml`."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from tamis.kitchen.seconds import seconds
from tamis.string_tables import saved_tables
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


def water_in_pan(adjectives: Sequence[str] = ()) -> Fraction:
    """Grams in a pan of this size."""
    said = _pans()
    return Fraction(next((said[word] for word in adjectives if word in said), said["usual"])) * 1000


def pan_to_boil(adjectives: Sequence[str] = ()) -> int:
    """Seconds in which it comes to the boil."""
    said = _pans()
    return seconds(said["least"]) + int(seconds(said["per_kg"]) * water_in_pan(adjectives) / 1000)


@cache
def _pans() -> dict[str, str]:
    return saved_tables("", "preparations")["pan"]
