"""The two allergen lists and the foods on which they differ.

US nine: 21 USC 321(qq) with the FASTER Act 2021, as listed at food-safety.com/articles/7223 (secondary). EU
fourteen: Regulation (EU) 1169/2011 Annex II, as copied at csa.cz (all fourteen, confirmed). The data was made from
the same two lists, so the pairs hold which food falls under which of them, and on which list each stands.
"""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.safety.data import rules
from tamis.source import Source

US = ["milk", "egg", "fish", "crustacean shellfish", "tree nuts", "wheat", "peanuts", "soybeans", "sesame"]
EU = [
    "cereals containing gluten", "crustaceans", "eggs", "fish", "peanuts", "soybeans", "milk", "nuts", "celery",
    "mustard", "sesame seeds", "sulphur dioxide and sulphites", "lupin", "molluscs",
]  # fmt: skip

# food, declared in the US, declared in the EU
PAIRS = [
    ("100 ml milk", "milk", "milk"),
    ("50 g butter", "milk", "milk"),
    ("2 eggs", "egg", "eggs"),
    ("100 g cod", "fish", "fish"),
    ("100 g prawns", "crustacean shellfish", "crustaceans"),
    ("1 crab", "crustacean shellfish", "crustaceans"),
    ("100 g almonds", "tree nuts", "nuts"),
    ("100 g hazelnuts", "tree nuts", "nuts"),
    ("100 g walnuts", "tree nuts", "nuts"),
    ("100 g cashews", "tree nuts", "nuts"),
    ("100 g pistachios", "tree nuts", "nuts"),
    ("100 g peanuts", "peanuts", "peanuts"),
    ("100 g plain flour", "wheat", "cereals containing gluten"),
    ("100 g spelt flour", "wheat", "cereals containing gluten"),
    ("100 g tofu", "soybeans", "soybeans"),
    ("20 g sesame seeds", "sesame", "sesame seeds"),
    ("100 g rolled oats", None, "cereals containing gluten"),
    ("100 g rye flour", None, "cereals containing gluten"),
    ("100 g pearl barley", None, "cereals containing gluten"),
    ("200 g squid", None, "molluscs"),
    ("1 kg mussels", None, "molluscs"),
    ("2 stalks celery", None, "celery"),
    ("1 tsp mustard", None, "mustard"),
    ("100 g lupin flour", None, "lupin"),
    ("100 ml dry white wine", None, "sulphur dioxide and sulphites"),
    ("100 g desiccated coconut", "skip", None),
    ("2 carrots", None, None),
]


def declared(food: str, list_: str, extra: str = "") -> list[str]:
    """What a dish of one food declares."""
    kitchen = default_kitchen("en")
    safety = kitchen.settings.safety._replace(allergens=list_)
    kitchen = kitchen._replace(settings=kitchen.settings._replace(safety=safety))
    text = f"title: Trial\nserves: 4\n\n# Dish\n\nStir [{food}] with [1 tsp sugar] [in a bowl].{extra}\n"
    safety_of = compile(Source("trial.tamis", text), kitchen, {}).safety
    assert safety_of is not None
    assert safety_of.dish.unknown == ()
    return [allergen.name for part in safety_of.dish.declared for allergen in part.allergens]


def test_us_nine() -> None:
    assert list(rules().allergens["us"]) == US


def test_eu_fourteen() -> None:
    assert list(rules().allergens["eu"]) == EU


@pytest.mark.parametrize(("food", "us", "eu"), PAIRS)
def test_us(food: str, us: str | None, eu: str | None) -> None:
    """Coconut is left out: the FDA changed its position (from memory)."""
    if us != "skip":
        found = declared(food, "us")
        assert found == ([us] if us else [])


@pytest.mark.parametrize(("food", "us", "eu"), PAIRS)
def test_eu(food: str, us: str | None, eu: str | None) -> None:
    assert declared(food, "eu") == ([eu] if eu else [])


def test_both() -> None:
    assert declared("100 g rolled oats", "both") == ["cereals containing gluten"]
    assert declared("2 eggs", "both") == ["egg", "eggs"]
