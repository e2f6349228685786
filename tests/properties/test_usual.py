"""The short way to the record of a usual clause gives what the long way gives."""

from __future__ import annotations

import random
from typing import Any

import pytest
from clause_makers import made
from clause_numbers import clauses, read

from tamis.reading import clause_reader
from tamis.reading.usual import usual

_ROLES = ("ingredient", "time", "cue", "equipment", "reference")


def _numbered(text: str, draw: random.Random) -> str:
    """The clause as a food that is weighed, so that most are usual ones."""
    return f"{draw.choice(('200 g', '1.5 kg', '1 lb 8 oz', '2–3 tbsp', '½ cup'))} {text.lstrip('0123456789.½–- ')}"


def test_both_ways_give_the_same_record(monkeypatch: pytest.MonkeyPatch) -> None:
    draw = random.Random(7)
    texts = [*clauses(), *(made(random.Random(seed)) for seed in range(1_500))]
    texts += [_numbered(text, draw) for text in texts]
    for text in texts:  # a shape is looked at when it is met again
        read(text)
    short = [read(text) for text in texts]
    taken = dict.fromkeys(_ROLES, 0)

    def counted(*asked: Any) -> None:
        record = usual(*asked)
        if record is not None:
            taken[record.role] += 1

    monkeypatch.setattr(clause_reader, "usual", counted)
    for text, expected in zip(texts, short, strict=True):
        assert read(text) == expected, text
    assert min(taken.values()) > 50, taken
    assert taken["ingredient"] > 300


@pytest.mark.parametrize(
    "text",
    [
        "200 g flour",
        "200 g flour, sifted",
        "15 g oil, for the tins",
        "bake for 20 min",
        "bake for 20–25 min at 180 °C",
        "simmer for 1 h 30 min",
        "until golden",
        "until golden, 3–4 min",
        "in a bowl",
        "in a 24 cm round tin",
        "the dough",
        "with the milk",
    ],
)
def test_the_short_way_is_taken(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A production that is called otherwise would turn it off without a word."""
    found: list[Any] = []
    monkeypatch.setattr(clause_reader, "usual", lambda *asked: found.append(usual(*asked)))
    read(text)
    read(text)
    assert found[-1] is not None
