"""What comes of tags that promise something (`claims.case`), and the lists of foods that they go by."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.compile import compile
from tamis.kitchen.food import Goods
from tamis.kitchen.house import default_kitchen
from tamis.safety.data import rules
from tamis.safety.report import claim_words
from tamis.safety.words import safety_words
from tamis.source import Source
from tests.cases import Case, read_cases, rewrite

CASES = read_cases(Path(__file__).with_name("claims.case"))


def said(text: str) -> str:
    compiled = compile(Source("trial.tamis", text), default_kitchen("en"), {})
    return "\n".join(map(claim_words, compiled.safety.claims))


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_claims(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, said)
        return
    assert said(case.given) == case.expected


def everything() -> list[Goods]:
    larder = default_kitchen("en").larder
    return [goods for id in larder.ids() if (goods := larder.get(id))]


def test_what_a_wine_merchant_sells_is_drink() -> None:
    drinks = {goods.id for goods in everything() if goods.merchant == "wine merchant"}
    assert drinks - rules().goods["alcohol"] == set()


def test_raw_pork_is_of_the_pig() -> None:
    pork = {goods.id for goods in everything() if goods.hazard == "pork"}
    assert pork - rules().goods["pig"] == set()


@pytest.mark.parametrize("language", ["en", "fr"])
def test_every_promise_has_its_words(language: str) -> None:
    words = safety_words(language).tags
    assert set(words.values()) == set(rules().tags)
    assert all(word == "-".join(word.lower().split()) for word in words), "as tags are looked up"
