"""The goods: what names mean, and that every figure is its source's."""

from __future__ import annotations

import csv
import json
from fractions import Fraction
from pathlib import Path
from typing import Any, get_args

import pytest

from tamis.assets import json_of
from tamis.kitchen import make_goods
from tamis.kitchen.food import Animal, Hazard, Role, Show
from tamis.kitchen.goods import Foods, Found, Larder, key

GRAMMAR = Path(make_goods.ROOT)
TEXT = (GRAMMAR / "goods.json").read_text(encoding="utf-8")
LARDER = Larder.load("en")
ALL = [goods for id in LARDER.ids() if (goods := LARDER.get(id))]
CUP = Fraction("236.5882365")


def phrases() -> list[tuple[str, str]]:
    lines = (Path(__file__).parent / "goods.txt").read_text(encoding="utf-8").splitlines()
    pairs = (line.split(" -> ") for line in lines[2:] if " -> " in line)
    return [(phrase, wanted) for phrase, wanted in pairs]


def shown(found: Found | None) -> str:
    if found is None:
        return "-"
    states = f" [{', '.join(found.states)}]" if found.states else ""
    return found.goods.id + states + (f" ({found.piece_word})" if found.piece_word else "")


def test_shipped_json_is_read_as_any_reader_does() -> None:
    texts = [TEXT, (GRAMMAR / "units.json").read_text(encoding="utf-8")]
    assert [json_of(text) for text in texts] == [json.loads(text) for text in texts]


def test_the_code_names_what_the_closed_lists_hold() -> None:
    kinds = {"show": Show, "hazard": Hazard, "animal": Animal, "role": Role}
    assert {name: LARDER.closed[name] for name in kinds} == {name: list(get_args(kinds[name])) for name in kinds}


@pytest.mark.parametrize(("phrase", "wanted"), phrases())
def test_phrase(phrase: str, wanted: str) -> None:
    assert shown(LARDER.find(phrase.split())) == wanted


def test_generated_list_is_what_the_sources_make() -> None:
    assert make_goods.make() == TEXT, "run python -m tamis.kitchen.make_goods"


def test_every_name_finds_its_food() -> None:
    for goods in ALL:
        for name in filter(None, (goods.name, goods.plural, *goods.aliases)):
            found = LARDER.find(name.lower().split())
            assert found and found.goods.id == goods.id, name


def test_no_alias_hides_a_state() -> None:
    """An alias that is only a state before another name of the food would swallow the state."""
    for goods in ALL:
        keys = {key(name.split(), "en") for name in (goods.name, *goods.aliases)}
        for words in (alias.split() for alias in goods.aliases):
            for start in range(1, len(words)):
                if key(words[start:], "en") in keys:
                    assert " ".join(words[:start]).replace("-", " ") not in goods.states, words


def test_there_are_goods_enough() -> None:
    assert len(LARDER) >= 250


def figures(item: dict[str, Any]) -> list[list[Any]]:
    return [row for kind in ("densities", "pieces", "parts") for row in item.get(kind, [])]


KNOWN_SOURCES = (
    *("USDA SR28 ", "HERR 41", "from memory", "common practice", "by analogy to ", "definition"),
    "package labels",
)


def test_every_figure_has_a_source() -> None:
    for item in json.loads(TEXT)["items"]:
        for row in figures(item):
            assert row[4].startswith(KNOWN_SOURCES), (item["id"], row)
            assert row[5] == row[4].startswith("by analogy to "), (item["id"], row)
        for share in ("water", "refuse"):
            assert share not in item or item[share][1].startswith(KNOWN_SOURCES), item["id"]


def usda() -> dict[str, Fraction]:
    """Return grams of one measure by "NDB measure", read from the table without the generator's help."""
    with (GRAMMAR / "sources/usda_portions.csv").open(encoding="utf-8", newline="") as file:
        rows = reversed(list(csv.DictReader(file)))
    return {f"{r['ndb_no']} {r['measure']}": Fraction(r["grams_sr28"]) / Fraction(r["amount"]) for r in rows}


def test_figures_are_the_tables_figures() -> None:
    """Each figure named after a USDA row has that row's grams, to the digits that the table gives."""
    table, seen = usda(), 0
    volumes = {"cup": CUP, "tbsp": CUP / 16, "tablespoon": CUP / 16, "tsp": CUP / 48, "fl oz": CUP / 8}
    for goods in ALL:
        for density in goods.densities:
            source = density.source.split("; ")[0].removeprefix("USDA SR28 ")
            if source in table and not density.analogy:
                measure = source[6:]
                volume = next(ml for word, ml in volumes.items() if word in measure)
                assert abs(density.usual - table[source] / volume) * volume <= Fraction(1, 200), goods.id
                seen += 1
        for piece in goods.pieces:
            source = piece.source.split("; ")[0].removeprefix("USDA SR28 ")
            if source in table and not piece.analogy:
                assert abs(piece.usual - table[source]) <= Fraction(1, 200), goods.id
                seen += 1
    assert seen > 400


def test_ranges_hold_their_usual_figure() -> None:
    for goods in ALL:
        for figure in (*goods.densities, *goods.pieces):
            assert 0 < figure.lo <= figure.usual <= figure.hi, goods.id


def test_densities_are_possible() -> None:
    """Lighter than puffed greens or heavier than honey is a slip of the pen."""
    for goods in ALL:
        for density in goods.densities:
            assert Fraction(3, 100) < density.lo and density.hi < Fraction(3, 2), (goods.id, density)


@pytest.mark.parametrize(
    ("id", "states", "grams_a_cup"),
    [
        ("plain-flour", (), (125, 126)),
        ("plain-flour", ("sifted",), (116, 116)),
        ("bread-flour", (), (123, 137)),
        ("icing-sugar", ("sifted",), (95, 100)),
        ("brown-sugar", ("packed",), (211, 220)),
        ("treacle", (), (309, 337)),
        ("butter", ("soft",), (227, 227)),
    ],
)
def test_where_sources_differ_the_range_is_kept(id: str, states: tuple[str, ...], grams_a_cup: tuple[int, int]) -> None:
    goods = LARDER.get(id)
    assert goods
    density = LARDER.density(goods, states)
    assert density and (density.lo * CUP, density.hi * CUP) == grams_a_cup


def test_water_weighs_one() -> None:
    goods = LARDER.get("water")
    assert goods and goods.liquid
    density = LARDER.density(goods)
    assert density and density.usual == 1 and density.source == "definition: at 4 °C"


@pytest.mark.parametrize(
    ("phrase", "grams"),
    [
        ("eggs", 50),
        ("large eggs", 50),
        ("medium eggs", 44),
        ("egg yolks", 17),
        ("egg whites", 33),
        ("garlic cloves", 3),
        ("celery stalks", 40),
        ("large celery stalks", 64),
        ("butter sticks", 113),
        ("onions", 110),
        ("large onions", 150),
    ],
)
def test_piece_weights(phrase: str, grams: int) -> None:
    found = LARDER.find(phrase.split())
    assert found
    piece = LARDER.piece(found.goods, found.piece_word, found.states)
    assert piece and piece.usual == grams


def test_an_unknown_piece_has_no_weight() -> None:
    goods = LARDER.get("egg")
    assert goods and LARDER.piece(goods, "clove") is None


def test_an_egg_parts_into_yolk_and_white() -> None:
    egg = LARDER.get("egg")
    assert egg and [(p.id, p.lo) for p in egg.parts] == [("egg-yolk", 17), ("egg-white", 33)]
    assert sum(p.lo for p in egg.parts) == 50


def test_parts_are_goods() -> None:
    assert all(LARDER.get(part.id) for goods in ALL for part in goods.parts)


@pytest.mark.parametrize(
    ("id", "allergens", "hazard", "animal"),
    [
        ("egg-yolk", {"egg"}, "egg", "egg"),
        ("rye-flour", {"rye", "gluten"}, "raw-flour", ""),
        ("butter", {"milk"}, "", "dairy"),
        ("prawn", {"crustacean"}, "shellfish", "fish"),
        ("mussel", {"mollusc"}, "shellfish", "fish"),
        ("walnut", {"tree-nut", "walnut"}, "", ""),
        ("soy-sauce", {"soya", "wheat", "gluten"}, "", ""),
        ("chicken-thigh", set(), "poultry", "meat"),
        ("white-wine", {"sulphites"}, "", ""),
        ("gelatine", set(), "", "gelatine"),
        ("honey", set(), "honey", "honey"),
        ("kidney-bean", set(), "kidney-beans", ""),
        ("celeriac", {"celery"}, "", ""),
        ("tahini", {"sesame"}, "", ""),
        ("groundnut-oil", {"peanut"}, "", ""),
        ("lupin-flour", {"lupin"}, "raw-flour", ""),
        ("mustard", {"mustard"}, "", ""),
        ("worcester-sauce", {"fish", "barley", "gluten"}, "", "fish"),
        ("fish-stock", {"fish"}, "", "fish"),
    ],
)
def test_facts_that_keep_people_well(id: str, allergens: set[str], hazard: str, animal: str) -> None:
    goods = LARDER.get(id)
    assert goods and (set(goods.allergens), goods.hazard, goods.animal) == (allergens, hazard, animal)


@pytest.mark.parametrize(
    ("wrong", "near"),
    [
        ("strnog flour", "strong flour"),
        ("buttre", "butter"),
        ("spilt peas", "split pea"),
        ("cinamon", "cinnamon"),
        ("almond milk", None),
        ("xyzzy", None),
        ("dragon steak", None),
    ],
)
def test_near_names(wrong: str, near: str | None) -> None:
    assert LARDER.near(wrong) == near


def test_a_sort_has_the_facts_of_its_food_and_a_name_of_its_own() -> None:
    belly, pork = LARDER.get("pork-belly"), LARDER.get("pork")
    assert belly and pork and belly.name == "pork belly" and belly.aliases == ("belly pork", "belly of pork")
    own = {"id": pork.id, "name": pork.name, "plural": pork.plural, "aliases": pork.aliases}
    assert belly._replace(**own) == pork


def test_each_food_is_read_from_its_place() -> None:
    list_of_all = json.loads(TEXT)["items"]
    assert [LARDER.foods[item["id"]] for item in list_of_all] == list_of_all
    assert LARDER.ids() == [item["id"] for item in list_of_all] and len(LARDER) == len(list_of_all)


def test_a_food_is_read_when_it_is_asked_for() -> None:
    lines = {"salt": b'{"id": "salt", "name": "salt"}', "oil": b"no JSON"}
    foods = Foods(lines, {"salt": "salt;table salt", "oil": "oil"})
    assert list(foods) == ["salt", "oil"] and "oil" in foods and len(foods) == 2
    assert foods["salt"]["name"] == "salt"
    with pytest.raises(ValueError, match="Expecting value"):
        foods["oil"]


def test_a_food_takes_the_place_of_another_or_the_last() -> None:
    foods = Foods({"salt": b"", "oil": b""}, {"salt": "salt;table salt", "oil": "oil"})
    more = foods.copy()
    more.add("salt", {"name": "sea salt", "aliases": ["flakes"]})
    more.add("leek", {"name": "leek"})
    assert list(more.names()) == ["sea salt", "flakes", "oil", "leek"]
    assert list(foods.names()) == ["salt", "table salt", "oil"]


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("spatchcocked chicken", "chicken"),
        ("butterflied chicken breasts", "chicken-breast"),
        ("trussed guinea fowl", "guinea-fowl"),
        ("finely pricked sausages", "sausage"),
        ("podded broad beans", "broad-bean"),
        ("scored duck breasts", "duck-breast"),
        ("stuffed chicken", None),
        ("ground chicken thighs", None),
        ("whisking chicken", None),
        ("crushed honey", None),
        ("scrubbed cinnamon", None),
    ],
)
def test_a_participle_before_a_food_tells_how_it_was_cut_tied_or_cleaned(name: str, food: str | None) -> None:
    found = LARDER.find(name.split())
    assert (found.goods.id if found else None) == food


@pytest.mark.parametrize(("name", "known"), [("poulet piqué", True), ("poulets rincés", True), ("veau haché", False)])
def test_so_does_one_behind_it_but_for_one_that_makes_another_food(name: str, known: bool) -> None:
    assert (Larder.load("fr").find(name.split()) is not None) is known
