"""Where the rules for breads begin and end; what a house may choose."""

from __future__ import annotations

import pytest

from tamis.kitchen.settings import Dough, read_settings

from .kneading import made, rules

BANDS = {"salt-band", "hydration-band", "yeast-band"}


def told(foods: str, settings: str = "", rest: str = "[Rise for 1 h].") -> set[str]:
    return BANDS & set(rules(made(f"Mix {foods} [in a bowl].\n{rest}", settings=settings)))


@pytest.mark.parametrize(
    ("foods", "wanted"),
    [
        ("[500 g bread flour], [300 g water], [7.5 g fine salt], [3 g instant yeast]", set()),
        ("[500 g bread flour], [300 g water], [12.5 g fine salt], [3 g instant yeast]", set()),
        ("[500 g bread flour], [300 g water], [13 g fine salt], [3 g instant yeast]", {"salt-band"}),
        ("[500 g bread flour], [300 g water], [4 g fine salt], [3 g instant yeast]", {"salt-band"}),
        ("[500 g bread flour], [280 g milk], [3.5 g fine salt], [75 g sugar], [5 g instant yeast]", set()),
        ("[500 g bread flour], [280 g milk], [2 g fine salt], [75 g sugar], [5 g instant yeast]", {"salt-band"}),
        ("[500 g bread flour], [300 g water], [3 g instant yeast]", {"salt-band"}),
        ("[500 g bread flour], [300 g water], [10–14 g fine salt], [3 g instant yeast]", set()),
        ("[500 g bread flour], [300 g water], [a pinch of salt], [3 g instant yeast]", set()),
        ("[500 g bread flour], [200 g water], [10 g fine salt], [3 g instant yeast]", {"hydration-band"}),
        ("[500 g bread flour], [500 g water], [10 g fine salt], [3 g instant yeast]", {"hydration-band"}),
        ("[500 g bread flour], [200 g beer], [10 g fine salt], [3 g instant yeast]", set()),
        ("[500 g bread flour], [200 g moon milk], [10 g fine salt], [3 g instant yeast]", set()),
        ("[500 g bread flour], [200 g water], [90 g lard], [10 g fine salt], [3 g instant yeast]", {"hydration-band"}),
        ("[500 g bread flour], [2 eggs], [200 g milk], [10 g fine salt], [3 g instant yeast]", set()),
        ("[500 g bread flour], [300 g water], [10 g fine salt], [15 g instant yeast]", {"yeast-band"}),
        ("[500 g bread flour], [300 g water], [10 g fine salt], [15 g fresh yeast]", set()),
        ("[500 g bread flour], [300 g water], [10 g fine salt], [60 g fresh yeast]", {"yeast-band"}),
        ("[500 g bread flour], [300 g water], [10 g fine salt], [100 g ripe starter]", set()),
        ("[500 g bread flour], [300 g water], [10 g fine salt], [100 g ripe starter], [0.1 g instant yeast]", set()),
    ],
)
def test_where_the_bands_end(foods: str, wanted: set[str]) -> None:
    assert told(foods) == wanted


@pytest.mark.parametrize(
    "foods",
    [
        "[200 g butter], [200 g caster sugar], [4 eggs], [200 g self-raising flour]",
        "[300 g plain flour], [150 g water]",
        "[100 g plain flour], [400 g butter], [1 tsp instant yeast], [200 g caster sugar]",
        "[50 g plain flour], [1 litre milk], [60 g butter], [40 g salt]",
    ],
)
def test_what_is_no_bread_is_left_alone(foods: str) -> None:
    assert told(foods) == set()


def test_a_preferments_flour_counts() -> None:
    """8 g are 1.6 % of 500 g, but 0.8 % of a kilo."""
    text = (
        "# Poolish\n\nStir [500 g bread flour], [350 g water] and [1 g instant yeast].\n[Leave "
        "overnight].\n\n# Dough\n\nMix [500 g bread flour], [300 g water], [8 g fine salt], [3 g "
        "instant yeast] and [the poolish].\n[Rise for 1 h]."
    )
    assert BANDS & set(rules(made(text))) == {"salt-band"}


def test_salt_is_pointed_at() -> None:
    text = "Mix [500 g bread flour], [300 g water], [30 g fine salt] and [3 g instant yeast].\n[Rise for 1 h]."
    done = made(text)
    (found,) = [f for f in done.findings if f.rule == "salt-band"]
    assert done.source.slice(found.span) == "[30 g fine salt]"
    assert "5 g to 12.5 g" in found.hint


def test_a_house_chooses_its_bands() -> None:
    foods = "[500 g bread flour], [300 g water], [5 g fine salt], [3 g instant yeast]"
    assert told(foods, "[dough]\nsalt = [0.8, 2]\n") == set()
    narrow = "[dough]\nsalt = [0.8, 2]\nhydration = [65, 80]\nyeast = [1, 2]\n"
    assert told(foods, narrow) == {"hydration-band", "yeast-band"}


@pytest.mark.parametrize("value", [1.5, [1], [2, 1], ["1", "2"], [1, 2, 3], [True, 2], [-1, 2], [float("nan"), 2]])
def test_a_band_of_the_wrong_form_is_told_and_the_default_holds(value: object) -> None:
    settings, findings = read_settings({"dough": {"salt": value}}, "[dough]\nsalt = ?\n")
    assert [finding.rule for finding in findings] == ["setting-value"]
    assert settings.dough == Dough()
