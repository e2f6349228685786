"""Plain words are cut once, and whoever asks something of them asks the same cut."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.checks import rules
from tamis.kitchen.house import default_kitchen
from tamis.reading.plain import plain_of
from tamis.reading.plain_amounts import amounts
from tamis.reading.prose import cold_place, commands, done_before, next_work, preposition_before, waited

KITCHEN = default_kitchen("en")


def test_equal_words_are_cut_once_and_asked_once() -> None:
    first, again = plain_of(", then whisk in ", KITCHEN), plain_of(", then whisk in ", KITCHEN)
    assert first is again
    assert first.ask(commands) is again.ask(commands)


def test_what_is_kept_does_not_grow_for_ever() -> None:
    for number in range(10_000):
        plain_of(f" and then take {number} away", KITCHEN)
    assert len(plain_of("", KITCHEN).vocabulary.plain) <= 8_000


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Add and whisk", ["Add", "whisk"]),
        ("then, very slowly, fold in", ["fold in"]),
        ("the dough in a warm place", []),
        ("Mix to 500 g. Knead and leave it to rise", ["Mix", "Knead", "leave it to rise"]),
        ("let 4 pieces rest", ["let 4 pieces rest"]),
        (" 20 g. Butter the tin", ["Butter"]),
    ],
)
def test_verbs_stand_where_a_command_may(text: str, found: list[str]) -> None:
    assert [command.said for command in plain_of(text, KITCHEN).ask(commands)] == found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("for 10 min. Then", ["time 10 min"]),
        ("for half an hour or 1 1/2–2 hours", ["time half an hour", "time 1 1/2–2 hours"]),
        ("a few minutes, two to three days", ["time a few minutes", "time two to three days"]),
        ("with 10 oz. butter and a cup of milk", ["mass 10 oz.", "volume a cup"]),
        ("to 180–200 °C or gas mark 6", ["degrees 180–200 °C", "degrees gas mark 6"]),
        ("turn by 90 degrees", []),
        ("heat to about 200 degrees", ["degrees 200 degrees"]),
        ("3 eggs, 20 × 30 cm", []),
    ],
)
def test_amounts_are_numbers_with_their_units(text: str, found: list[str]) -> None:
    plain = plain_of(text, KITCHEN)
    said = [f"{amount.kind} {plain.slice(amount.first, amount.end)}" for amount in plain.ask(amounts)]
    assert said == found


def test_what_stands_round_a_bracket() -> None:
    done = plain_of("a bench dusted lightly with ", KITCHEN).ask(done_before)
    assert done is not None and done.purpose.startswith("for ")
    assert plain_of("set it on top of ", KITCHEN).ask(preposition_before) == "on top of"
    place = plain_of(" in the fridge", KITCHEN).ask(cold_place)
    assert place is not None and place.said == "fridge"
    wait = plain_of("Carry it to the table to cool completely ", KITCHEN).ask(waited)
    assert wait is not None and wait.said == "cool"


@pytest.mark.parametrize(
    ("text", "at"),
    [
        (", then ", 2),
        (". Turn it ", 2),
        (". turn it ", None),
        ("; 2 more ", 2),
        (". ", 2),
        (" and ", None),
        (" for 2 min. Turn ", 12),
    ],
)
def test_where_other_work_begins(text: str, at: int | None) -> None:
    assert plain_of(text, KITCHEN).ask(next_work) == at


FOLDER = Path(rules.__path__[0])
ABOUT_PLAIN_WORDS = [
    *(file.stem for file in sorted(FOLDER.glob("*_outside_brackets.py"))),
    "food_not_bracketed",
    "jar_untested",
    "lifted_in_words",
    "missing_cue",
    "new_vessel",
    "reheat_too_cool",
    "thaw_at_room",
    "work_unknown",
]


@pytest.mark.parametrize("rule", ABOUT_PLAIN_WORDS)
def test_no_rule_about_plain_words_has_patterns_of_its_own(rule: str) -> None:
    text = (FOLDER / f"{rule}.py").read_text("utf-8")
    assert "tamis.patterns" not in text and "import re\n" not in text
