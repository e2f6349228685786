"""What stands in a kitchen, as tables that a cook can check."""

from __future__ import annotations

import re

import pytest

from tamis.assets import asset_text
from tamis.kitchen.equipment import LONGEST, Cupboard, Equipment
from tamis.kitchen.make_equipment import made
from tamis.quantity.nouns import nouns

TEXT = asset_text("grammar/equipment.toml")
CUPBOARD = Cupboard.load("en")
STATIONS = {"", "oven", "grill", "ring", "mixer", "fridge", "freezer", "bath"}
KINDS = {"vessel", "tool", "surface", "lining", "lid", "station"}

# said · the piece · the adjectives · how many
FOUND = """
cold bowl                  · bowl           · cold             · one
mixer bowl                 · mixer bowl     ·                  · one
large baker's cloth        · baker's cloth  · large            · one
large baker’s cloth        · baker's cloth  · large            · one
2-litre jar                · jar            · 2-litre          · one
heavy 3-litre pan          · pan            · heavy, 3-litre   · one
lined baking trays         · baking tray    · lined            · several
small sharp knives         · knife          · small, sharp     · several
tart dishes                · dish           · tart             · several
round tins                 · round tin      ·                  · several
shallow steel tray         · steel tray     · shallow          · one
old iron pot               · iron pot       · old              · one
large cast-iron skillet    · frying pan     · large, cast-iron · one
Dutch oven                 · casserole      ·                  · one
sheet pans                 · baking tray    ·                  · several
plastic wrap               · cling film     ·                  · one
refrigerator               · fridge         ·                  · one
stand mixer                · mixer          ·                  · one
chopsticks                 · chopstick      ·                  · several
water bath                 · water bath     ·                  · one
ramekins                   · ramekin        ·                  · several
"""


@pytest.mark.parametrize("line", FOUND.strip().splitlines())
def test_a_piece_is_found_at_the_end_of_a_phrase(line: str) -> None:
    said, name, adjectives, number = (part.strip() for part in line.split("·"))
    found = CUPBOARD.find(said.split())
    assert found is not None
    assert found.item.name == name
    assert ", ".join(found.adjectives) == adjectives
    assert found.several == (number == "several")


@pytest.mark.parametrize("said", ["", "egg yolks", "bowl ice", "pan juices", "oven chips", "low speed", "2 pieces"])
def test_what_is_no_equipment_is_not_found(said: str) -> None:
    assert CUPBOARD.find(said.split()) is None


@pytest.mark.parametrize(
    ("name", "kind", "station"),
    [
        ("saucepan", "vessel", "ring"),
        ("wok", "vessel", "ring"),
        ("roasting tin", "vessel", "oven"),
        ("loaf tin", "vessel", "oven"),
        ("mixer bowl", "vessel", "mixer"),
        ("bowl", "vessel", ""),
        ("oven", "station", "oven"),
        ("grill", "station", "grill"),
        ("hob", "station", "ring"),
        ("ring", "station", "ring"),
        ("mixer", "station", "mixer"),
        ("fridge", "station", "fridge"),
        ("freezer", "station", "freezer"),
        ("water bath", "station", "bath"),
        ("whisk", "tool", ""),
        ("board", "surface", ""),
        ("wire rack", "surface", ""),
        ("baking paper", "lining", ""),
        ("lid", "lid", ""),
    ],
)
def test_kind_and_station(name: str, kind: str, station: str) -> None:
    item = CUPBOARD.get(name)
    assert item is not None
    assert (item.kind, item.station) == (kind, station)


def test_what_stores_heat_takes_longer() -> None:
    slow = {item.name: item.heats for item in CUPBOARD if item.heats}
    assert slow == dict.fromkeys(["iron pot", "baking stone", "baking steel", "cloche"], 20 * 60)


@pytest.mark.parametrize(
    ("word", "singular"),
    [
        ("clove", "clove"),
        ("cloves", "clove"),
        ("leaves", "leaf"),
        ("halves", "half"),
        ("bunches", "bunch"),
        ("patties", "patty"),
        ("cans", "can"),
        ("tins", "tin"),
        ("jars", "jar"),
        ("sheets", "sheet"),
        ("sticks", "stick"),
        ("rashers", "rasher"),
        ("handful", "handful"),
        ("knob", "knob"),
        ("bowl", None),
        ("pan", None),
        ("eggs", None),
        ("ring", None),
    ],
)
def test_count_words(word: str, singular: str | None) -> None:
    assert CUPBOARD.count_word(word) == singular


def test_what_is_both_a_piece_and_a_count_says_so() -> None:
    both = {item.name for item in CUPBOARD if item.count_unit}
    assert {"tin", "jar", "tub", "cup", "glass", "bottle"} <= both
    assert not {"bowl", "pan", "saucepan", "oven", "ring"} & both


def test_a_misspelt_piece_finds_its_neighbour() -> None:
    assert CUPBOARD.near("saucpan") == "saucepan"
    assert CUPBOARD.near("Coulander") == "colander"
    assert CUPBOARD.near("accordion") is None


@pytest.mark.parametrize(
    ("one", "many"),
    [
        ("dish", "dishes"),
        ("box", "boxes"),
        ("patty", "patties"),
        ("tray", "trays"),
        ("round tin", "round tins"),
    ],
)
def test_plurals(one: str, many: str) -> None:
    assert nouns("en").plural(one) == many


# Laws of the whole list.


def test_there_is_enough_and_each_piece_is_found_in_singular_and_plural() -> None:
    assert len(list(CUPBOARD)) >= 150
    for item in CUPBOARD:
        assert CUPBOARD.get(item.name) == item
        assert CUPBOARD.get(item.plural) == item


def test_no_name_is_longer_than_is_looked_for() -> None:
    assert max(len(name.split()) for name in CUPBOARD.names) == LONGEST


@pytest.mark.parametrize("item", list(CUPBOARD), ids=lambda item: item.name)
def test_the_facts_of_a_piece_agree(item: Equipment) -> None:
    assert item.kind in KINDS
    assert item.station in STATIONS
    assert not item.part_of or CUPBOARD.get(item.part_of)
    assert not item.heats or item.station == "oven"


def test_the_head_of_the_file_explains_each_fact() -> None:
    used = {
        fact.split()[0]
        for line in re.findall(r'^\S.* = "(.*)"$', TEXT.partition("# The trade's")[0], re.M)
        if line
        for fact in line.split(", ")
    }
    assert used <= set(re.findall(r"^#   ([a-z_]+)", TEXT, re.M))


@pytest.mark.parametrize(
    "text",
    [
        '[tool]\nfork = ""\n[vessel]\nfork = ""\n',
        '[tool]\nfork = "also spoon"\nspoon = ""\n',
        '[tool]\nfork = "sharp yes"\n',
        '[tool]\nfork = "heats soon"\n',
    ],
)
def test_a_faulty_file_is_refused(text: str) -> None:
    with pytest.raises((ValueError, KeyError)):
        made(text, "en")


@pytest.mark.parametrize("language", ["en", "fr"])
def test_a_piece_may_be_in_any_text_that_names_it(language: str) -> None:
    cupboard = Cupboard.load(language)
    assert [name for name in cupboard.names if not cupboard.may_be_in(f"2 LARGE {name.upper()}, warm")] == []
    assert not cupboard.may_be_in("42")
