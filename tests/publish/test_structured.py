"""schema.org Recipe as JSON-LD: properties of release 30.0 (its schema.ttl, confirmed: read), and exact durations."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from tamis.publish.page import recipe_page

from .samples import CUSTARD, Writer

# Properties of Recipe, and of HowTo, CreativeWork and Thing, from which it inherits.
KNOWN = {
    "@context", "@type", "name", "url", "image", "description", "author", "publisher", "datePublished", "totalTime",
    "recipeYield", "recipeCategory", "recipeCuisine", "keywords", "suitableForDiet", "recipeIngredient", "supply",
    "tool", "recipeInstructions",
}  # fmt: skip
DIETS = {"VeganDiet", "VegetarianDiet", "GlutenFreeDiet", "HalalDiet", "KosherDiet"}
DURATION = re.compile(r"P(?=.)(\d+D)?(T(?=.)(\d+H)?(\d+M)?(\d+S)?)?")


def data_of(html: str) -> dict[str, Any]:
    found = re.search(r'<script type="application/ld\+json">(.*?)</script>', html, re.DOTALL)
    assert found
    loaded: dict[str, Any] = json.loads(found[1])
    return loaded


def custard(library: Writer, text: str = CUSTARD) -> dict[str, Any]:
    opened = library(custard=text)
    return data_of(recipe_page(opened.entries[0].compiled, opened.kitchen, set()))


def test_every_demo_page_carries_sound_data(demo_site: Path) -> None:
    pages = sorted((demo_site / "recipes").glob("*.html"))
    assert len(pages) > 10
    for page in pages:
        data = data_of(page.read_text(encoding="utf-8"))
        assert data["@context"] == "https://schema.org" and data["@type"] == "Recipe"
        assert set(data) <= KNOWN
        assert data["name"] and data["recipeIngredient"] and data["recipeYield"]
        assert DURATION.fullmatch(data["totalTime"])
        for part in data["recipeInstructions"]:
            steps = part["itemListElement"] if part["@type"] == "HowToSection" else [part]
            assert steps and all(step["@type"] == "HowToStep" and step["text"] for step in steps)


def test_what_the_custard_says(library: Writer) -> None:
    data = custard(library)
    assert data["name"] == "Poured custard"
    assert data["url"] == "https://example.org/recipes/custard.html"
    assert data["description"] == "Warm over a crumble, cold over plums."
    assert data["recipeYield"] == ["600 ml", "4–6 servings"]
    assert data["keywords"] == "sauce, vegetarian"
    assert data["recipeCategory"] == "pudding"
    assert data["suitableForDiet"] == ["https://schema.org/VegetarianDiet"]
    assert data["publisher"] == {"@type": "Organization", "name": "Tern Quay"}
    assert "400 ml whole milk" in data["recipeIngredient"]
    assert "70 g (1/3 cup) caster sugar, sifted" in [line.replace("⅓", "1/3") for line in data["recipeIngredient"]]
    assert {"@type": "HowToTool", "name": "saucepan"} in data["tool"]


@pytest.mark.parametrize(
    ("tags", "diets"),
    [
        ("sauce", None),
        ("vegan", None),
        ("plant-based", None),
        ("halal", None),
        ("Gluten-Free", ["GlutenFreeDiet"]),
        ("coeliac-safe, vegetarian", ["VegetarianDiet", "GlutenFreeDiet"]),
    ],
)
def test_a_diet_only_where_a_tag_claims_it_and_the_foods_agree(
    library: Writer, tags: str, diets: list[str] | None
) -> None:
    data = custard(library, CUSTARD.replace("sauce, vegetarian", tags))
    assert data.get("suitableForDiet") == (diets and [f"https://schema.org/{diet}" for diet in diets])
    assert {*(diets or ())} <= DIETS


def test_a_script_cannot_be_closed_from_inside(library: Writer) -> None:
    title = "Custard</script><script>alert(1)</script><!--"
    data = custard(library, CUSTARD.replace("Poured custard", title))
    assert data["name"] == title
