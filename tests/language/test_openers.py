"""Which words open a clause is told by the grammar."""

from __future__ import annotations

import pytest

from tamis.kitchen.house import default_kitchen
from tamis.lalr.first import first_symbols
from tamis.lalr.table import Rule
from tamis.reading.bracketed import bracketed_text
from tamis.reading.openers import sole_openers, step_openers
from tamis.words import word_lists


def test_the_first_symbols_of_a_production() -> None:
    rules = [Rule("a", "a", ("b", "X")), Rule("b", "b", ("a", "Y")), Rule("b", "b", ("Z",)), Rule("c", "c", ("C", "a"))]
    assert first_symbols(rules) == {"a": {"Z"}, "b": {"Z"}, "c": {"C"}}


def test_an_empty_production_is_refused() -> None:
    with pytest.raises(ValueError, match="the production a may be empty"):
        first_symbols([Rule("a", "a", ())])


@pytest.mark.parametrize("name", ["UNTIL", "PAUSE", "LEAVING", "EVERYOTHER", "WHILE", "BELOWBOIL"])
def test_what_begins_one_role_opens_it(name: str) -> None:
    assert set(word_lists("en", "clause")["closed"][name]) <= set(sole_openers("en"))


@pytest.mark.parametrize("word", ["in", "about", "an", "or", "per"])
def test_what_begins_several_or_none_does_not(word: str) -> None:
    assert word not in sole_openers("en")


@pytest.mark.parametrize(("language", "word"), [("en", "every"), ("en", "off"), ("fr", "pendant"), ("fr", "toutes")])
def test_what_is_said_of_a_step(language: str, word: str) -> None:
    assert word in step_openers(language)
    assert not {"about", "an", "environ"} & step_openers(language)


@pytest.mark.parametrize(
    ("plain", "said"),
    [
        ("turn over every other day for 2 weeks", "turn over [every other day] [for 2 weeks]"),
        ("simmer for about an hour until thick", "simmer [for about an hour] [until thick]"),
        ("take it off the heat for 5 min", "take it [off the heat] [for 5 min]"),
    ],
)
def test_a_plain_line_gets_its_brackets(plain: str, said: str) -> None:
    assert bracketed_text(plain, default_kitchen("en")) == said
