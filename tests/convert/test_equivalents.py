"""Substitutes: the data's form, and the arithmetic that takes them by the amount asked for."""

from __future__ import annotations

import pytest

from tamis.convert.asked import read_asked
from tamis.convert.measures import worths
from tamis.convert.substitutes import Instead, instead_of
from tamis.kitchen.equivalents import read_equivalents, shipped_equivalents
from tamis.kitchen.house import default_kitchen

KITCHEN = default_kitchen("en")
RULES = shipped_equivalents()


def instead(text: str) -> list[Instead]:
    asked = read_asked(text, KITCHEN)
    assert asked.item is not None
    return instead_of(asked.item, worths(asked, KITCHEN).grams, KITCHEN)


def names() -> list[str]:
    pairs = [name for pair in RULES.pairs for name in (pair.left, pair.right)]
    mixtures = [name for rule in RULES.mixtures for name in (rule.food, *(part.food for part in rule.parts))]
    return sorted({*pairs, *mixtures})


@pytest.mark.parametrize("name", names())
def test_every_food_is_known(name: str) -> None:
    assert KITCHEN.larder.find(name.split()) is not None


def test_every_figure_names_its_source() -> None:
    sources = [figure.source for pair in RULES.pairs for figure in pair.figures] + [
        rule.source for rule in RULES.mixtures
    ]
    assert all(len(source) > 8 for source in sources)


def test_every_unit_is_known_or_counts_pieces() -> None:
    measures = [pair.of for pair in RULES.pairs] + [figure.measure for pair in RULES.pairs for figure in pair.figures]
    measures += [part.measure for rule in RULES.mixtures for part in rule.parts]
    for measure in measures:
        assert measure.unit in ("", "clove") or KITCHEN.units.get(measure.unit) is not None, measure
        assert 0 < measure.amount.lo <= measure.amount.hi


def test_every_rule_answers_in_its_own_amount() -> None:
    """A rule that the arithmetic cannot reach, for want of a weight or density, would never be shown."""
    for pair in RULES.pairs:
        one = f"{pair.of.amount.lo} {pair.of.unit.removeprefix('us_')} {pair.left}".replace("  ", " ")
        assert any(pair.right.rpartition(" ")[2] in found.text for found in instead(one)), one
    for rule in RULES.mixtures:
        one = f"{rule.of.amount.lo} {rule.of.unit.removeprefix('us_')} {rule.food}"
        assert any(rule.parts[0].food in found.text for found in instead(one)), one


CASES = [
    ("1 tbsp basil", "1 tsp dried basil (0.7 g)"),
    ("2 tsp dried thyme", "2 tbsp thyme"),
    ("3 tbsp parsley", "1 tbsp dried parsley"),
    ("2 cloves garlic", "1–2⅛ tsp minced garlic (2.8–6 g)"),
    ("1 tsp garlic powder", "8 cloves garlic"),
    ("1 lemon", "2–3 tbsp lemon juice"),
    ("1 large lemon", "3–4½ tbsp lemon juice (44–70 g)"),
    ("6 tbsp lemon juice", "2–3 lemons"),
    ("100 g fresh yeast", "37.5–50 g active dry yeast"),
    ("10 g instant yeast", "30 g fresh yeast"),
    ("1 tsp salt", "1¼–2⅛ tsp kosher salt"),
    ("1 tsp kosher salt", "scant ½ tsp (2.3 ml) to generous ¾ tsp (3.9 ml) salt"),
    ("1 cup buttermilk", "¾ cup plus 3 tbsp milk and 1 tbsp lemon juice"),
    ("500 ml buttermilk", "1½ cups plus 1 tbsp yoghurt and ½ cup plus 1 tsp milk"),
    ("2 cups self-raising flour", "2 cups plain flour and 1 tbsp to 1 tbsp plus 1 tsp baking powder and ½–1 tsp salt"),
    ("125 g self-raising flour", "1 cup plain flour"),
    ("1 cup cake flour", "¾ cup plus 2 tbsp plain flour and 2 tbsp cornflour"),
    ("3 eggs", "beaten egg"),
    ("1 cup double cream", "2 cups whipped double cream"),
    ("1 cup whipped double cream", "½ cup double cream"),
    ("2 egg whites", "egg white"),
    ("4 tbsp egg white", "2 egg whites"),
]


@pytest.mark.parametrize(("text", "wanted"), CASES)
def test_amounts(text: str, wanted: str) -> None:
    assert any(wanted in found.text for found in instead(text)), [found.text for found in instead(text)]


def test_where_sources_disagree_all_are_named() -> None:
    found = next(found for found in instead("100 g fresh yeast") if "active dry" in found.text)
    assert len(found.sources) == 3


def test_salts_that_weigh_different_by_the_spoon_get_no_single_weight() -> None:
    found = next(found for found in instead("1 tsp salt") if "kosher" in found.text)
    assert " g" not in found.text
    assert "weigh salt" in found.note


def test_a_food_is_not_its_own_substitute() -> None:
    assert not any("minced garlic" in found.text for found in instead("1 tsp minced garlic"))
    assert any("garlic" in found.text for found in instead("1 tsp minced garlic"))


def test_a_substitute_s_allergens_are_told() -> None:
    """Arrowroot for flour brings none; flour for cornflour brings wheat."""
    flour = next(found for found in instead("1 tbsp cornflour") if "plain flour" in found.text)
    assert "wheat" in flour.brings
    assert next(found for found in instead("1 tbsp plain flour") if "arrowroot" in found.text).brings == ()


def test_another_language_calls_the_foods_of_the_rules_by_its_own_names() -> None:
    kitchen = default_kitchen("fr")
    asked = read_asked("2 œufs", kitchen)
    assert asked.item is not None
    found = instead_of(asked.item, worths(asked, kitchen).grams, kitchen)
    assert any("œuf battu" in one.text for one in found) and not any("egg" in one.text for one in found)


def test_nothing_for_what_is_only_taken_off_a_food() -> None:
    assert instead("juice of 1 lemon") == []


@pytest.mark.parametrize(
    "line",
    ['pairs = ["a = b"]\nof = "1 tsp"\nfigures = ["2 tsp"]', 'pairs = ["a = b"]\nof = "some"\nfigures = ["2 tsp: me"]'],
)
def test_a_line_out_of_form_is_told(line: str) -> None:
    with pytest.raises(ValueError, match=r"2 tsp|some"):
        read_equivalents(f"[[equivalent]]\n{line}\n")
