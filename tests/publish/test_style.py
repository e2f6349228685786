"""The style sheet's colours can be read by people with weak eyes: 4.5 to 1, by the formula of WCAG 2.1."""

from __future__ import annotations

import re

import pytest

from tamis.assets import asset_text


def schemes() -> dict[str, dict[str, str]]:
    """The colours of the light, the dark and the printed sheet, each with what it takes from the light one."""
    blocks = re.findall(r":root \{(.*?)\}", asset_text("site/static/style.css"), re.DOTALL)
    colours = [dict(re.findall(r"--(\w+): (#[0-9a-f]+);", block)) for block in blocks]
    return {name: {**colours[0], **own} for name, own in zip(("light", "dark", "print"), colours, strict=True)}


def luminance(colour: str) -> float:
    """Relative luminance of sRGB (WCAG 2.1)."""
    digits = colour[1:] if len(colour) == 7 else "".join(digit * 2 for digit in colour[1:])
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def test_the_formula_gives_what_the_standard_says() -> None:
    # WCAG 2.1: black on white is 21 to 1; #767676 is the lightest grey that reaches 4.5 on white (4.54).
    assert contrast("#000", "#fff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize("scheme", ["light", "dark", "print"])
@pytest.mark.parametrize("ink", ["ink", "soft", "sea", "rust"])
@pytest.mark.parametrize("ground", ["paper", "card"])
def test_words_stand_out_from_their_ground(scheme: str, ink: str, ground: str) -> None:
    colours = schemes()[scheme]
    assert contrast(colours[ink], colours[ground]) >= 4.5
