"""Money: exact inside, cents where it is shown.

Seven eggs at 4.50 a dozen are 2.625. Published costings round half up at every line and add the rounded lines, so that
a reader who adds up the column finds the total printed under it; rounding half to even gives 2.62 and another total.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.numerals import rounded

CENT = Fraction(1, 100)


def cents(value: Fraction) -> Fraction:
    """An amount of money to the cent, half a cent up."""
    return rounded(value, CENT)


def money(value: Fraction, currency: str = "") -> str:
    """An amount to the cent with the house's currency: "£2.63", "2.63 EUR", "2.63"."""
    whole, rest = divmod(int(cents(value) * 100), 100)
    figure = f"{whole}.{rest:02}"
    if not currency:
        return figure
    return f"{figure} {currency}" if currency[-1].isalpha() else f"{currency}{figure}"


def selling_price(cost: Fraction, share: Fraction) -> Fraction:
    """What a portion must sell for so that its food costs this share of the price; from the cost to the cent."""
    return cents(cents(cost) / share)
