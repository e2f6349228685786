"""The short way to the record of a usual food clause gives what the long way gives."""

from __future__ import annotations

import random

import pytest
from clause_makers import made
from clause_numbers import clauses, read

from tamis.reading import head_noun


def _numbered(text: str, draw: random.Random) -> str:
    """The clause as a food that is weighed, so that most are usual ones."""
    return f"{draw.choice(('200 g', '1.5 kg', '1 lb 8 oz', '2–3 tbsp', '½ cup'))} {text.lstrip('0123456789.½–- ')}"


def test_both_ways_give_the_same_record(monkeypatch: pytest.MonkeyPatch) -> None:
    draw = random.Random(7)
    texts = [*clauses(), *(made(random.Random(seed)) for seed in range(1_500))]
    texts += [_numbered(text, draw) for text in texts]
    short = [read(text) for text in texts]
    way, taken = head_noun.usual_food, 0

    def counted(*asked: object) -> None:
        nonlocal taken
        taken += way(*asked) is not None  # type: ignore[arg-type]

    monkeypatch.setattr(head_noun, "usual_food", counted)
    for text, expected in zip(texts, short, strict=True):
        assert read(text) == expected, text
    assert taken > 300
