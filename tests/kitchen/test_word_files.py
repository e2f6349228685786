"""Each language has the words that the code asks for: the files, tables and keys of English, which came first, but for
those of the printed reference."""

import tomllib
from pathlib import Path

import pytest

from tamis import words
from tamis.words import languages, word_lists

WORDS = Path(__file__).parents[2] / "grammar" / "words"
# Tables whose keys are words of the language itself, or that a language has only where its words want it.
OWN = {
    "clause.fractions", "clause.closed", "clause.open", "clause.spans", "convert.heats", "nouns.irregular",
    "numbers.ones", "numbers.parts", "numbers.parts-of-many", "numbers.groups", "preparations.said",
    "preparations.tastes", "checks.coated", "model.made-of", "model.made-without",
    "reading.kinds", "reading.hints", "units.misspelt", "units.unclear", "verbs.doubling", "verbs.forms",
}  # fmt: skip


def asked_for(language: str) -> set[str]:
    """`file.table`, and `file.table.key` for each key that the code asks for."""
    said: set[str] = set()
    for file in (WORDS / language).glob("*.toml"):
        for table, rows in tomllib.loads(file.read_text("utf-8")).items():
            name = f"{file.stem}.{table}"
            said |= {name} if name in OWN else {name, *(f"{name}.{key}" for key in rows)}
    return {name for name in said if name != "verbs.doubling" and not name.startswith("reference.")}


@pytest.mark.parametrize("language", languages())
def test_nothing_is_left_out(language: str) -> None:
    assert sorted(asked_for("en") - asked_for(language)) == []


@pytest.mark.parametrize("language", languages())
def test_a_preposition_of_place_is_one_entry(language: str) -> None:
    clause = word_lists(language, "clause")
    places = set(clause["lists"]["places"])
    food, lets = word_lists(language, "checks")["food"], word_lists(language, "verbs")["lets"]
    takers = {
        "PREP": clause["closed"]["PREP"],
        "places": word_lists(language, "timeline")["titles"]["places"],
        "before": food["before"],
        "after": food["after"],
        "lets": lets["after"],
    }
    assert {name: places.difference(words) for name, words in takers.items() if not places.issubset(words)} == {}


def test_a_list_takes_up_another() -> None:
    clause = word_lists("en", "clause")
    assert {"set atop", "set in", "wrapped in"} <= set(clause["open"]["DONEWITH"])
    assert {"with", "into", "till"} <= set(word_lists("en", "checks")["food"]["after"])


def test_a_list_that_is_not_there_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    tables = {"clause": {"lists": {}}, "other": {"some": {"words": "a, by {nowhere}"}}}
    monkeypatch.setattr(words, "word_tables", lambda _language, name: tables[name])
    with pytest.raises(ValueError, match=r"words/xx/clause\.toml has no list 'nowhere'"):
        words.word_lists("xx", "other")
