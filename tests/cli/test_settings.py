"""`kitchen.toml`: what it may say, and what is said about what it may not."""

from __future__ import annotations

import tomllib
from fractions import Fraction

import pytest

from tamis.kitchen.house import UNREADABLE, default_kitchen, house_kitchen
from tamis.kitchen.settings import Settings, read_settings

WHOLE = """\
[kitchen]
cooks = 2
ovens = 1
racks = 3
rings = 6
mixers = 0
awake = ["06:30", "22:00"]
heat = "10 °C/min"
stone = "30 min"
handling = "90 s"
language = "en"
[publish]
units = "us"
cup = "metric"
name = "Tern Quay"
address = "https://example.org/"
currency = "£"
[safety]
authority = "uk"
[checks]
missing-cue = "off"
"""


def test_everything_is_read() -> None:
    settings, findings = read_settings(tomllib.loads(WHOLE), WHOLE)
    assert findings == []
    assert settings.kitchen == (2, 1, 3, 6, 0, (390, 1320), Fraction(10), 1800, 90, "en")
    assert settings.publish == ("us", "metric", "Tern Quay", "https://example.org/", "£")
    assert (settings.safety.authority, settings.checks) == ("uk", {"missing-cue": "off"})


def test_no_file_means_defaults() -> None:
    kitchen, problems = house_kitchen(None, None)
    assert problems == [] and kitchen.settings == Settings()


@pytest.mark.parametrize(
    ("text", "rule", "words"),
    [
        ("[kitchen]\ncoks = 2\n", "setting-unknown", "coks"),
        ("[kichen]\ncooks = 2\n", "setting-unknown", "kichen"),
        ("[kitchen]\ncooks = 0\n", "setting-value", "cooks"),
        ("[kitchen]\ncooks = true\n", "setting-value", "cooks"),
        ('[kitchen]\nawake = ["23:00", "07:00"]\n', "setting-value", "awake"),
        ('[kitchen]\nheat = "8"\n', "setting-value", "heat"),
        ('[kitchen]\nheat = "0 °C/min"\n', "setting-value", "heat"),
        ("[kitchen]\nstone = 20\n", "setting-value", "stone"),
        ('[kitchen]\nstone = "-2 min"\n', "setting-value", "stone"),
        ('[kitchen]\nlanguage = "tlh"\n', "setting-value", "language"),
        ('[publish]\nunits = "metrc"\n', "setting-value", "units"),
        ("[publish]\nname = 3\n", "setting-value", "name"),
        ('[checks]\nmissing-cue = "loud"\n', "setting-value", "missing-cue"),
        ("kitchen = 3\n", "setting-value", "kitchen"),
    ],
)
def test_faults_point_at_the_key(text: str, rule: str, words: str) -> None:
    settings, findings = read_settings(tomllib.loads(text), text)
    assert [(finding.rule, text[slice(*finding.span)]) for finding in findings] == [(rule, words)]
    assert settings == Settings()


def test_the_house_chooses_its_cup() -> None:
    kitchen, _ = house_kitchen('[publish]\ncup = "metric"\n', None)
    cup, usual = kitchen.units.get("cup"), default_kitchen("en").units.get("cup")
    assert cup and usual and cup.factor == 250 and usual.factor != 250


def test_what_is_no_toml_is_told_with_its_place() -> None:
    _, problems = house_kitchen("[kitchen]\ncooks = \n", None)
    assert [(problem.file, problem.finding.rule) for problem in problems] == [("kitchen.toml", UNREADABLE)]
    assert problems[0].finding.span.start == len("[kitchen]\ncooks = ")


def test_goods_are_told_with_their_place() -> None:
    text = '[tern-quay-oats]\nlike = "rolled-oat"\nalergens = ["oats"]\n'
    _, problems = house_kitchen(None, text)
    assert [text[slice(*problem.finding.span)] for problem in problems] == ["alergens"]
