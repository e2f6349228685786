"""The short way to the record of a usual clause gives what the long way gives."""

from __future__ import annotations

import random

import pytest
from clause_makers import made
from clause_numbers import clauses, read

from tamis.reading import head_noun, things, timing

_WAYS = {"usual_food": head_noun, "usual_time": timing, "usual_cue": timing, "usual_tool": things}


def _numbered(text: str, draw: random.Random) -> str:
    """The clause as a food that is weighed, so that most are usual ones."""
    return f"{draw.choice(('200 g', '1.5 kg', '1 lb 8 oz', '2–3 tbsp', '½ cup'))} {text.lstrip('0123456789.½–- ')}"


def test_both_ways_give_the_same_record(monkeypatch: pytest.MonkeyPatch) -> None:
    draw = random.Random(7)
    texts = [*clauses(), *(made(random.Random(seed)) for seed in range(1_500))]
    texts += [_numbered(text, draw) for text in texts]
    short = [read(text) for text in texts]
    taken = dict.fromkeys(_WAYS, 0)

    def never(name: str) -> None:
        way = getattr(_WAYS[name], name)

        def counted(*asked: object) -> None:
            taken[name] += way(*asked) is not None

        monkeypatch.setattr(_WAYS[name], name, counted)

    for name in _WAYS:
        never(name)
    for text, expected in zip(texts, short, strict=True):
        assert read(text) == expected, text
    assert min(taken.values()) > 50, taken
    assert taken["usual_food"] > 300


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("200 g flour", "usual_food"),
        ("200 g flour, sifted", "usual_food"),
        ("bake for 20 min", "usual_time"),
        ("until golden", "usual_cue"),
        ("in a bowl", "usual_tool"),
    ],
)
def test_the_short_way_is_taken(text: str, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A production that is called otherwise would turn it off without a word."""
    way, found = getattr(_WAYS[name], name), []

    def watched(*asked: object) -> object:
        found.append(way(*asked))
        return found[-1]

    monkeypatch.setattr(_WAYS[name], name, watched)
    read(text)
    assert any(record is not None for record in found)
