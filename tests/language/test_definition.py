"""The head of `grammar/clause.lark`: each class has words or examples, and the examples are of that class."""

from __future__ import annotations

import re
from itertools import chain

import pytest

from tamis.assets import asset_text
from tamis.kitchen.house import default_kitchen
from tamis.lalr.table import load
from tamis.reading.parsers import parser_of
from tamis.reading.vocabulary import Choices
from tamis.words import word_lists

DEFINITION = asset_text("grammar/clause.lark")
DECLARED = list(chain.from_iterable(line.split() for line in re.findall(r"^%declare (.*)", DEFINITION, re.MULTILINE)))
# `// GAS  before its number: gas mark 4`: classes, then what they are, then examples.
GLOSSARY = [
    (names.split(), examples.split(", "))
    for names, examples in re.findall(r"^// ((?:[A-Z]{3,} )+) *\S.*?: (.*)$", DEFINITION, re.MULTILINE)
]


def classes_of(text: str, language: str) -> set[str]:
    vocabulary = parser_of(default_kitchen(language)).vocabulary
    cut = vocabulary.cutter.cut(text)
    choices = Choices(cut, vocabulary)
    return {name for at in range(len(cut.words)) for name, _ in choices.at(at).ways}


def test_each_class_stands_in_a_production() -> None:
    symbols = set(load(asset_text("grammar/saved/clause.txt")).symbols)
    assert [name for name in DECLARED if name not in symbols] == []
    assert len(DECLARED) == len(set(DECLARED))


def test_each_class_has_words_or_examples() -> None:
    explained = {name for names, _ in GLOSSARY for name in names}
    english = {name for part in ("closed", "open") for name in word_lists("en", "clause")[part]}
    assert set(DECLARED) == english | explained
    assert explained & english == {"INCH", "PLUS"}  # which are told from what stands before them, or are signs too


@pytest.mark.parametrize(("names", "examples"), GLOSSARY, ids=[" ".join(names) for names, _ in GLOSSARY])
def test_the_examples_are_of_the_class(names: list[str], examples: list[str]) -> None:
    found = []
    for said in [", ".join(examples)] if "COMMA" in names or "ADJCOMMA" in names else examples:
        language, text = ("fr", said[3:]) if said.startswith("fr ") else ("en", said)
        found.append(classes_of(text, language))
    missing = [name for name in names if not any(name in each for each in found)]
    assert missing == []
    assert len(names) > 1 or all(names[0] in each for each in found)


@pytest.mark.parametrize(
    ("word", "name"),
    [("until", "WORD"), ("of", "WORD"), ("chopped", "PARTICIPLE"), ("litre", "VOLUME"), ("pan", "FOOD")],
)
def test_and_what_is_not(word: str, name: str) -> None:
    assert name not in classes_of(word, "en")
