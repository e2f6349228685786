"""Centimetres beside inches; an inch is exactly 25.4 mm (NIST Handbook 44, Appendix C)."""

from __future__ import annotations

import pytest

from tamis.quantity.inches import with_centimetres


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("two 9-inch round tins", "two 9-inch (23 cm) round tins"),
        ("a 9 x 13-inch dish", "a 9 x 13-inch (23 × 33 cm) dish"),
        ("1/4 inch thick", "1/4 inch (6 mm) thick"),
        ("½-inch cubes", "½-inch (13 mm) cubes"),
        ("1 1/2-inch pieces", "1 1/2-inch (4 cm) pieces"),
        ("1–2 inches deep", "1–2 inches (2.5–5 cm) deep"),
        ("a 9-inch (23 cm) tin", "a 9-inch (23 cm) tin"),
        ("inch by inch", "inch by inch"),
    ],
)
def test_with_centimetres(text: str, shown: str) -> None:
    assert with_centimetres(text, "en") == shown
