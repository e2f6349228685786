"""A rule is asked only of a recipe that shows what it is about: it must find nothing in any other."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from tamis.checks.registry import EVERY, abouts, check_of, names, page, rules, scaling_rules
from tamis.checks.signs import scaling_signs, signs_of
from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.scaling.misleads import scene_of
from tamis.source import Source

CORPUS = sorted(Path(__file__).parents[1].glob("corpus/**/*.tamis"))


def found_without_a_sign(text: str) -> list[str]:
    """The rules that find something in a recipe, and would not be asked."""
    view = compile(Source("signs.tamis", text), default_kitchen("en"), {})
    signs = signs_of(view, rules())
    return [rule.name for rule in rules() if rule.about.isdisjoint(signs) and any(check_of(rule.name)(view))]


def found_in_scaling_without_a_sign(text: str, factor: str) -> list[str]:
    """The same of the rules of scaling, at a factor."""
    recipe, kitchen = compile(Source("signs.tamis", text), default_kitchen("en"), {}).recipe, default_kitchen("en")
    scene = scene_of(recipe, Fraction(factor), kitchen)
    signs = scaling_signs(scene, scaling_rules())
    unasked = [rule.name for rule in scaling_rules() if rule.about.isdisjoint(signs)]
    return [name for name in unasked if any(check_of(name)(scene))]


@pytest.mark.parametrize("name", names())
def test_what_is_wrong_shows(name: str) -> None:
    texts = [text for files in (page(name).bad, page(name).good) for text in files.values() if isinstance(text, str)]
    assert [found_without_a_sign(text) for text in texts] == [[]] * len(texts)


@pytest.mark.parametrize("file", CORPUS, ids=lambda file: f"{file.parent.name}/{file.stem}")
def test_it_shows_in_a_recipe_of_anyone(file: Path) -> None:
    assert found_without_a_sign(file.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("factor", ["1/4", "3/2", "3", "8"])
@pytest.mark.parametrize("file", CORPUS, ids=lambda file: f"{file.parent.name}/{file.stem}")
def test_what_misleads_shows(file: Path, factor: str) -> None:
    assert found_in_scaling_without_a_sign(file.read_text(encoding="utf-8"), factor) == []


def test_a_rule_that_says_nothing_is_about_every_recipe() -> None:
    assert all(rule.about == {EVERY} for rule in (*rules(), *scaling_rules()) if rule.name not in abouts())
