"""Where a hazard ends and what a dish declares, as the flow carries them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import get_args

import pytest

from tamis.cli.main import main
from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen, house_kitchen
from tamis.model.recipe import Supply
from tamis.publish.cautions import safety_view
from tamis.safety.data import rules
from tamis.safety.heatings import Heating
from tamis.safety.records import CautionKey, Safety
from tamis.source import Source


def compiled(body: str, used: dict[str, Supply] | None = None, header: str = "") -> Compiled:
    text = f"title: Trial\nserves: 4\n{header}\n{body}"
    return compile(Source("trial.tamis", text), default_kitchen("en"), used or {})


def safety(body: str, used: dict[str, Supply] | None = None, header: str = "") -> Safety:
    found = compiled(body, used, header).safety
    assert found is not None
    return found


def dish(found: Safety) -> dict[str, tuple[bool, bool]]:
    """The dish's allergens: whether each may be left out, whether only an alternative has it."""
    return {a.name: (a.optional, a.instead) for part in found.dish.declared for a in part.allergens}


def keys(found: Safety) -> set[str]:
    return {caution.key for caution in found.cautions}


def test_optional_and_alternative_sources() -> None:
    body = "# Dish\n\nStir [200 g rice flour] with [20 g butter or 20 ml sunflower oil] and [30 g almonds, optional].\n"
    assert dish(safety(body)) == {"milk": (False, False), "tree nuts": (True, False)}
    body = "# Dish\n\nStir [200 g rice flour] with [20 ml sunflower oil or 20 g butter].\n"
    assert dish(safety(body)) == {"milk": (False, True)}


def test_needed_source_is_not_optional() -> None:
    body = "# Dish\n\nStir [50 g ground almonds] with [30 g walnuts, optional] and [2 tbsp water].\n"
    assert dish(safety(body)) == {"tree nuts": (False, False)}


def test_strained_out_food_leaves_its_allergen() -> None:
    body = (
        "# Stock\n\nSimmer [2 stalks celery] [in a pot] with [1 l water] and [100 g prawn shells] [for 30 min].\n"
        "Strain [through a sieve] and discard [the prawn shells].\n"
    )
    assert "crustacean shellfish" in dish(safety(body))


def test_tin_is_greased_with_an_allergen() -> None:
    body = "# Dish\n\nGrease [a round tin] with [butter, for the tin].\nFill it with [400 g cooked rice].\n"
    assert "milk" in dish(safety(body))


def test_unmade_part_is_not_declared() -> None:
    """A by-product that never reaches the plate hands nothing on."""
    body = (
        "# Sauce\n\nWarm [200 ml double cream] [in a pan] [until steaming, 3 min].\n\n"
        "# Dish\n\nToss [400 g tomatoes, chopped] with [the sauce].\n"
    )
    found = safety(body)
    assert [part.name for part in found.parts] == ["Sauce", "Dish"]
    assert dish(found) == {"milk": (False, False)}


def test_unknown_food_is_said() -> None:
    assert safety("# Dish\n\nStir [200 g moonberry] with [2 tbsp sugar].\n").dish.unknown == ("moonberry",)


def test_used_recipe_hands_everything_on() -> None:
    base = compiled("# Base\n\nBeat [2 eggs] with [100 g moonberry] and [50 ml milk].\n", header="served: uncooked\n")
    assert base.supply.hazards == ("egg:piece",)
    assert set(base.supply.allergens) == {"egg", "milk"}
    assert set(base.supply.animal) == {"egg", "dairy"}
    assert base.supply.unknown == ("moonberry",)
    used = {"base": base.supply._replace(stem="base", title="Base")}
    body = "# Dish\n\nCook [the base] [in a pan] [over low heat] [until {}, 5 min].\n"
    thick = compiled(body.format("thick"), used, "uses: base\n")
    assert [f.rule for f in thick.findings if f.severity == "error"] == ["hazard-not-cleared"]
    hot = compiled(body.format("160 °F"), used, "uses: base\n")
    assert [f.rule for f in hot.findings if f.severity == "error"] == []
    assert hot.safety is not None
    assert dish(hot.safety).keys() == {"egg", "milk"}
    assert hot.safety.dish.unknown == ("moonberry",)


def test_two_recipes_deep() -> None:
    """Raw poultry that goes through two used recipes is still raw poultry."""
    first = compiled("# A\n\nRub [4 chicken thighs] with [1 tsp salt].\n", header="served: uncooked\n").supply
    one = {"first": first._replace(stem="first", title="First")}
    second = compiled("# B\n\nTurn [the first] in [2 tbsp soy sauce].\n", one, "uses: first\nserved: uncooked\n").supply
    two = {"second": second._replace(stem="second", title="Second")}
    last = compiled("# C\n\nFry [the second] [in a frying pan] [until golden, 10 min].\n", two, "uses: second\n")
    assert [f.rule for f in last.findings if f.severity == "error"] == ["hazard-not-cleared"]


def test_path_is_named() -> None:
    body = (
        "# Wings\n\nTurn [1 kg chicken wings] in [100 ml soy sauce] [in a bowl].\n"
        "Lift them out [on to a tray], [leaving marinade].\n[Roast for 40 min at 200 °C] [until 74 °C].\n\n"
        "# Plates\n\nPour [the marinade] over [the wings].\n"
    )
    finding = next(f for f in compiled(body).findings if f.severity == "error")
    assert "chicken wings → marinade → Plates → Trial" in finding.message or (
        "chicken wings → marinade → Trial" in finding.message
    )
    assert finding.labels


def test_cautions_where_clauses_call_for_them() -> None:
    assert "honey" in keys(safety("# D\n\nStir [200 g yogurt] with [1 tbsp honey].\n"))
    assert "nuts" in keys(safety("# D\n\nStir [200 g yogurt] with [50 g hazelnuts].\n"))
    assert "nuts" not in keys(safety("# D\n\nStir [200 g yogurt] with [50 g hazelnuts, finely chopped].\n"))
    assert "hot-sugar" in keys(safety("# D\n\nBoil [200 g sugar] [in a pan] with [50 ml water] [to 118 °C].\n"))
    fry = "# D\n\nHeat [1 l sunflower oil, for frying] [in a pan] [to 180 °C].\nFry [400 g potatoes] [for 6 min].\n"
    assert "hot-oil" in keys(safety(fry))
    blend = "# D\n\nSimmer [400 g carrots] [in a pan] with [1 l water] [for 20 min].\nBlend [until smooth].\n"
    assert "blender" in keys(safety(blend))
    assert keys(safety("# D\n\nToss [2 carrots, grated] with [1 tbsp lemon juice].\n")) == set()


def test_much_lard_for_frying_is_hot_fat_and_a_spoon_of_sugar_beside_it_no_syrup() -> None:
    potatoes = "Mash [500 g cooked potatoes] with [1/2 tsp sugar] [in a bowl].\n"
    much = "Heat [{} for frying] [in a deep pan] [to 180 °C].\nFry [for 4 min] [until golden].\n"
    for fat in ("1 kg vegetable shortening,", "2 cups lard,"):
        found = keys(safety(potatoes + much.format(fat)))
        assert "hot-oil" in found and "hot-sugar" not in found
    for fat in ("60 g lard,", "3 tbsp butter,"):
        assert "hot-oil" not in keys(safety("Mash [500 g cooked potatoes] [in a bowl].\n" + much.format(fat)))


def test_allergens_of_a_house() -> None:
    kitchen, problems = house_kitchen('[safety]\nauthority = "uk"\n', None)
    assert problems == []
    text = "title: Trial\nserves: 2\n\n# D\n\nStir [100 g rolled oats] with [100 ml water].\n"
    found = compile(Source("trial.tamis", text), kitchen, {}).safety
    assert found is not None
    assert [part.list for part in found.dish.declared] == ["eu"]
    kitchen, _ = house_kitchen('[safety]\nauthority = "uk"\nallergens = "us"\n', None)
    found = compile(Source("trial.tamis", text), kitchen, {}).safety
    assert found is not None
    assert [part.list for part in found.dish.declared] == ["us"]


def test_the_cautions_of_the_code_are_those_of_the_data() -> None:
    assert set(get_args(CautionKey)) == set(rules().cautions)


def test_every_page_says_what_prevails() -> None:
    view = safety_view(safety("# D\n\nToss [2 carrots, grated] with [1 tbsp lemon juice].\n"), "en")
    assert view.notice == "Local food codes and licensed practice prevail."
    assert view.cautions == ()


RAW = "title: Trial\nserves: 2\n\n# D\n\nFry [4 chicken breasts] [in a frying pan] [until golden, 10 min].\n"


def test_command_tells_where_hazards_end(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "trial.tamis"
    path.write_text(RAW.replace("golden", "74 °C inside"))
    assert main(["safety", str(path)]) == 0
    text = capsys.readouterr().out
    assert "made safe in D by “until 74 °C inside, 10 min”" in text
    assert text.rstrip().endswith("Local food codes and licensed practice prevail.")


def test_command_as_data(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "trial.tamis"
    path.write_text(RAW)
    assert main(["safety", str(path), "--format", "json"]) == 1
    data = json.loads(capsys.readouterr().out)
    assert data["partial"] is True
    assert [(item["hazard"], item["cleared"]) for item in data["hazards"]] == [("poultry", None)]
    assert data["notice"]


SOUP = "# Soup\n\nSimmer [500 g carrots] [in 1 l water] [in a saucepan] [for 20 min] [until tender].\n"
SAUCE = "\n# Sauce\n\nBlend [200 g yogurt] with [20 g mint leaves] [in a blender] [for 1 min].\nPour over [the soup].\n"


@pytest.mark.parametrize(
    ("body", "line"),
    [
        (SOUP + SAUCE, None),
        (SOUP.replace("Simmer", "Boil") + SAUCE.replace("Blend", "Process"), None),
        (
            SOUP
            + "[Meanwhile], blend [200 g yogurt] [in a blender] [for 1 min] [as sauce].\nSpoon over [the sauce].\n",
            None,
        ),
        (SOUP + "Blend [in a blender] [until smooth].\n", 1),
        (SOUP + "Ladle it into a jug.\nBlend it smooth.\n", 2),
        (SOUP + "\n# Bowls\n\nBlend [the soup] with [200 g yogurt] [in a blender] [for 1 min].\n", 1),
        ("# Bowls\n\nBlend [the soup] with [200 g yogurt] [in a blender] [for 1 min].\n\n" + SOUP, 0),
        (SOUP + "Strain [through a sieve], [leaving broth].\nBlend [the broth] [in a blender] [for 1 min].\n", 2),
        (
            SOUP + "\n# Dip\n\nBlend [400 g cooked chickpeas] with [2 tbsp of the soup] [in a blender] [for 1 min].\n",
            None,
        ),
        (
            SOUP + "\n# Dip\n\nBlend [400 g cooked chickpeas] with [a third of the soup] [in a blender] [for 1 min].\n",
            1,
        ),
        (SOUP + "[Cool for 1 h].\nBlend [in a blender] [until smooth].\n", None),
        (SOUP + "[Chill for 8 h].\n\n# Bowls\n\nBlend [the soup] [in a blender] [for 1 min].\n", None),
    ],
)
def test_hot_food_is_blended_where_that_batch_is_hot(body: str, line: int | None) -> None:
    found = safety(body)
    assert next((caution.action for caution in found.cautions if caution.key == "blender"), None) == line


def test_a_rest_on_the_worktop_does_nothing_to_food() -> None:
    assert not Heating("rest for 10 min").acts
    assert Heating("soak overnight", soaked=8 * 3600).acts
