"""What makes raw food safe does so from the very second that the guidance names, and not one before."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source

SIMMERED = "Simmer [{food}] [in 2 l water] [in a saucepan] [for {time}].\nServe.\n"
IN_A_CUE = "Simmer [{food}] [in 2 l water] [in a saucepan] [until soft, {time}].\nServe.\n"
SOAKED = "Soak [400 g dried kidney beans] [in 2 l water] [for 12 h]; drain.\n"
BOILED = SOAKED + "Boil the beans [in 2 l water] [in a saucepan] [for {time}].\nServe.\n"


def hazards(body: str) -> list[str]:
    text = f"title: Trial\nserves: 2\n\n# Trial\n\n{body}"
    findings = compile(Source("trial.tamis", text), default_kitchen("en"), {}).findings
    return [finding.rule for finding in findings if finding.rule in ("hazard-not-cleared", "soft-egg")]


def clears_from(body: str, minutes: int) -> None:
    assert hazards(body.replace("{time}", f"{minutes} min")) == []
    assert len(hazards(body.replace("{time}", f"{minutes - 1} min 59 s"))) == 1


@pytest.mark.parametrize("body", [SIMMERED, IN_A_CUE])
@pytest.mark.parametrize(
    ("food", "minutes"),
    [
        ("600 g chicken thighs", 45),
        ("1 chicken", 90),
        ("400 g pork mince", 20),
        ("400 g cod fillet", 10),
        ("4 eggs", 9),
    ],
)
def test_simmering(body: str, food: str, minutes: int) -> None:
    clears_from(body.replace("{food}", food), minutes)


def test_a_bird_that_is_stirred_into_its_water_is_still_whole() -> None:
    clears_from("Stir [1 whole chicken (1.5 kg)] [into 3 l water] [in a pot].\n[Simmer for {time}].\n", 90)


def test_boiling_beans() -> None:
    clears_from(BOILED, 10)


@pytest.mark.parametrize(("cue", "clears"), [("165 °F (73 °C)", True), ("165 °F (72 °C)", False)])
def test_a_pair_of_degrees_rounded_down_is_one_and_another_is_two(cue: str, clears: bool) -> None:
    assert hazards(f"Fry [4 chicken thighs] [in a frying pan] [until {cue} inside, 20 min].\n") == (
        [] if clears else ["hazard-not-cleared"]
    )
