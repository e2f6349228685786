"""A second language is data alone: a folder beside `grammar/words/en`. Here a scrap of German is made up."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest

from tamis import assets, make_saved, make_tables, words
from tamis.kitchen.house import Kitchen, default_kitchen, house_kitchen
from tamis.quantity.amount import exactly
from tamis.quantity.display import written
from tamis.quantity.measure import Measure
from tamis.quantity.nouns import nouns
from tamis.quantity.number import parse

ROOT = Path(__file__).parents[2]
LANGUAGE = "zz"

FILES = {
    "nouns": """
[phrases]
adjectives = "before, after"
plural = "last"
singular = "every"
[articles]
definite = "der, die, das"
indefinite = "ein, eine"
[irregular]
topf = "töpfe"
[plural]
endings = "-e -en, - -e"
[singular]
endings = "-en -e"
least = "4"
unchanged = "rahmen"
""",
    "verbs": """
[names]
boil = "kochen, aufkochen"
whisk = "schlagen"
leave = "lassen"
rise = "aufgehen"
dust = "bestäuben"
[purposes]
"for dusting" = "zum Bestäuben"
[lets]
articles = "der, die, das"
before = "zu"
after = "bis"
[participles]
present = "-en -end"
past = "-en -t"
[forms]
schlagen = "schlagend, geschlagen"
""",
    "equipment": """
[names]
saucepan = "topf"
"baking tray" = "blech, backblech"
[plurals]
blech = "bleche"
[counts]
clove = "zehe"
""",
    "goods": """
[names]
plain-flour = "weizenmehl"
garlic = "knoblauch"
butter = "butter"
[plurals]
garlic = "knoblauche"
[states]
soft = "weiche, weich"
sifted = "gesiebtes"
clove = "zehe"
[adverbs]
words = "fein"
""",
    "units": """
[names]
tbsp = "el, esslöffel"
pinch = "prise"
[plurals]
prise = "prisen"
[unclear]
L = "liter"
[inches]
names = "zoll"
range = "bis"
by = "mal"
""",
    "numbers": """
[ones]
zwei = "2"
[parts]
halb = "1/2"
[parts-of-many]
viertel = "1/4"
[groups]
dutzend = "12"
""",
}


@pytest.fixture(scope="module")
def kitchen(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Kitchen]:
    root = tmp_path_factory.mktemp("checkout")
    shutil.copytree(ROOT / "grammar", root / "grammar")
    folder = root / "grammar" / "words" / LANGUAGE
    shutil.copytree(ROOT / "grammar" / "words" / "en", folder)
    for name, text in FILES.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(assets, "_CHECKOUT", root)
        words.languages.cache_clear()
        (root / "grammar" / "saved" / LANGUAGE).mkdir()
        for maker in (make_tables, make_saved):
            for name, text in maker.files().items():
                (root / "grammar" / "saved" / name).write_text(text, encoding="utf-8")
        kitchen, problems = house_kitchen(f'[kitchen]\nlanguage = "{LANGUAGE}"\n', None)
        assert problems == [] and kitchen.language == LANGUAGE
        yield kitchen
    words.languages.cache_clear()


def test_verbs_have_the_words_of_the_language(kitchen: Kitchen) -> None:
    boil = kitchen.verbs.get("aufkochen")
    assert boil and (boil.base, boil.name) == ("boil", "kochen")
    assert kitchen.verbs.get("boil") is None and kitchen.verbs.of_base("boil") == boil
    assert kitchen.verbs.participle("geschlagen") == kitchen.verbs.get("schlagen")
    assert kitchen.verbs.participle("gekocht") is None and kitchen.verbs.participle("kocht") == boil
    found = kitchen.verbs.match(["lassen", "den", "teig", "zu", "aufgehen"], 0)
    assert found and found[0].base == "rise"
    dust = kitchen.verbs.get("bestäuben")
    assert dust and dust.purpose == "zum Bestäuben"


def test_equipment_has_the_words_of_the_language(kitchen: Kitchen) -> None:
    found = kitchen.cupboard.find(["Große", "Töpfe"])
    assert found and (found.item.id, found.item.name, found.several) == ("saucepan", "topf", True)
    after = kitchen.cupboard.find(["Blech", "gefettet"])
    assert after and (after.item.id, after.adjectives) == ("baking tray", ("gefettet",))
    assert kitchen.cupboard.find(["saucepan"]) is None
    assert kitchen.cupboard.count_word("zehe") == "clove" and kitchen.cupboard.count_word("clove") is None


def test_foods_have_the_words_of_the_language(kitchen: Kitchen) -> None:
    flour = kitchen.larder.find(["weizenmehl"])
    ours = default_kitchen("en").larder.get("plain-flour")
    assert flour and ours and flour.goods == ours._replace(name="weizenmehl", aliases=())
    butter = kitchen.larder.find(["fein", "weiche", "butter"])
    assert butter and (butter.goods.id, butter.states) == ("butter", ("weiche",))
    sifted = kitchen.larder.density(flour.goods, ["gesiebtes"])
    assert sifted == default_kitchen("en").larder.density(ours, ["sifted"]) != kitchen.larder.density(flour.goods)
    cloves = kitchen.larder.find(["knoblauch", "zehen"])
    assert cloves and (cloves.goods.id, cloves.goods.plural, cloves.piece_word) == ("garlic", "knoblauche", "clove")
    assert kitchen.larder.find(["butter", "weich"]) == butter._replace(states=("weich",))
    assert kitchen.larder.find(["flour"]) is None and kitchen.larder.near("weizemehl") == "weizenmehl"


def test_units_and_numbers_have_the_words_of_the_language(kitchen: Kitchen) -> None:
    spoon, pinch = kitchen.units.get("EL"), kitchen.units.get("Prise")
    assert spoon and pinch and (spoon.id, pinch.id) == ("tbsp", "pinch")
    assert kitchen.units.get("tablespoons") is None and kitchen.units.get("kg")
    assert kitchen.units.near("L") == "liter" and kitchen.units.near("T") is None
    assert parse("zwei dutzend", LANGUAGE) == 24 and parse("zwei viertel", LANGUAGE) == Fraction(1, 2)
    assert parse("two", LANGUAGE) is None
    assert written(Measure(exactly(2), "pinch"), LANGUAGE) == "2 prisen"
    assert written(Measure(exactly(2), "clove"), LANGUAGE) == "2 zehen"
    assert written(Measure(exactly(2), "tbsp"), LANGUAGE) == "2 el"
    assert nouns(LANGUAGE).singular("sahnen") == "sahne" and nouns(LANGUAGE).plural("topf") == "töpfe"


def test_a_language_that_is_not_there_is_told() -> None:
    _, problems = house_kitchen('[kitchen]\nlanguage = "tlh"\n', None)
    known = ", ".join(f'"{language}"' for language in words.languages())
    assert [problem.finding.message for problem in problems] == [
        f"“language” is not in a form that can be read: expected one of {known}"
    ]
