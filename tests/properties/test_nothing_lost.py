"""Every number of a clause is a value of its record, or something is said of it; so is every word that changes what a
clause means.

The law is tried on each clause of the repository, on clauses made from the grammar's productions, and on both with a
number or a sign put in that hardly fits. A number counts as known if another in its place makes another record:
words that are only kept as they are written do not count, but for sizes, preparations and what to look for. Then the
law itself is tried: a reader that drops something must break it.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable
from typing import Any

import pytest
from clause_makers import SIGNS, damaged, made
from clause_numbers import clauses, lost, unused
from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.reading import clause_reader, quantities, temperatures
from tamis.reading.clauses import Ingredient, Repeat, Time

_SIGNS = (*SIGNS, ";")
_FRAMES = (
    "for {} min", "at {} °C", "until {} °C inside", "to {} °C", "{} eggs", "{} g flour", "bake for {} h",
    "until golden, {} min", "into {} pieces", "in {} batches", "{} chicken thighs (150 g each)", "every {} min",
    "{} min per 500 g", "on speed {}", "{} times", "in {} tins", "{} g of the dough", "keep warm for {} min",
    "as {} doughs", "leaving {} ml stock", "within {} min", "stirring for {} min", "in the oven for {} min",
)  # fmt: skip


def failing(texts: Iterable[str], law: Callable[[str], list[str]] = lost) -> dict[str, list[str]]:
    """The clauses that break the law, with what was lost."""
    return {text: found for text in texts if (found := law(text))}


def generated(seeds: Iterable[int]) -> Iterable[str]:
    """Clauses of the productions, and damaged ones."""
    for seed in seeds:
        draw = random.Random(seed)
        clause = made(draw)
        yield clause
        yield damaged(clause, draw)


def test_no_number_of_the_repository_is_lost() -> None:
    assert len(clauses()) > 1_000
    assert failing(clauses()) == _PRINTED


def test_no_number_of_a_damaged_clause_is_lost() -> None:
    """A clause is always damaged in the same ways, whichever others there are."""
    assert failing(damaged(text, random.Random(f"{text} {n}")) for text in clauses() for n in range(2)) == {}


# How far a thing is turned is the way that the work is done: printed as it is written.
_PRINTED = {"giving it a quarter turn": ["quarter"]}

# The same is meant without the word: overnight is longer anyway, and alone in its line `twice more` is twice. How
# many hands it takes is printed only. That another bowl is not the one before is a word that nothing reads yet.
_LEFT = {
    "Leave for at least 4 h, or overnight": ["at least"],
    "Cool for at least 3 h or overnight": ["at least"],
    "chill for at least 4 h, or overnight": ["at least"],
    "leave for at least 6 h, or overnight": ["at least"],
    "Soak for at least 3 h, or overnight": ["at least"],
    "in a second pan": ["a second"],
    "in a second frying pan": ["a second"],
    "into a second saucepan": ["a second"],
    "in another pan": ["another"],
    "into a second bowl": ["a second"],
    "in a second bowl": ["a second"],
    "in a second saucepan": ["a second"],
    "in a second small dish": ["a second"],
    "on the coarse side of a box grater": ["side"],
    "into another bowl": ["another"],
    "in another casserole": ["another"],
    "In another saucepan": ["another"],
    "twice more": ["more"],
    "repeat 3 times more": ["more"],
    "for 2 min on one side": ["side"],
    "for 3 min on one side only": ["side"],
    "fry for 2 min on one side": ["side"],
    "for 2–3 min on the first side, 1–2 min on the second": ["side"],
    "fry for 3–4 min on the first side, 2 min on the second": ["side"],
    "with both hands": ["both"],
}


def test_no_word_of_the_repository_that_tells_something_is_lost() -> None:
    assert failing(clauses(), unused) == _LEFT


@settings(max_examples=400)
@given(st.integers(0, 2**32))
def test_no_number_of_a_made_clause_is_lost(seed: int) -> None:
    assert failing(generated([seed])) == {}


@pytest.mark.parametrize("sign", _SIGNS)
@pytest.mark.parametrize("numbers", [("20", "60"), ("2", "3"), ("1", "30"), ("180", "200")])
def test_no_number_beside_a_sign_is_lost(sign: str, numbers: tuple[str, str]) -> None:
    assert failing(frame.format(sign.join(numbers)) for frame in _FRAMES) == {}


# ---- the law itself


def _changed(role: str, change: Callable[[Any], Any]) -> Callable[[pytest.MonkeyPatch], None]:
    """A reader of a role whose records are changed; None takes a record away."""

    def patch(monkeypatch: pytest.MonkeyPatch) -> None:
        sound: Any = clause_reader.read_named if role == "food" else clause_reader._READERS[role]

        def reader(*given: Any) -> Any:
            return tuple(kept for record in sound(*given) or () if (kept := change(record)) is not None) or None

        if role == "food":
            monkeypatch.setattr(clause_reader, "read_named", reader)
        else:
            monkeypatch.setitem(clause_reader._READERS, role, reader)  # type: ignore[arg-type]

    return patch


def _without(kind: type, **fields: Any) -> Callable[[Any], Any]:
    return lambda record: record._replace(**fields) if isinstance(record, kind) else record


def _no_time(record: Any) -> Any:
    return None if isinstance(record, Time) else record


def _one_measure(record: Any) -> Any:
    return record._replace(measures=record.measures[:1]) if isinstance(record, Ingredient) else record


def _only_the_last_number(monkeypatch: pytest.MonkeyPatch) -> None:
    plain = quantities.plain_amount
    monkeypatch.setattr(quantities, "plain_amount", lambda low, high: plain(high, high))


def _nothing_is_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clause_reader, "check_all_read", lambda *_: None)


def _neighbours_say_anything(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(temperatures, "_same", lambda *given: True)


FAULTS = {
    "the weight of a piece": _changed("food", _without(Ingredient, each=None)),
    "the other measure": _changed("food", _without(Ingredient, also=())),
    "a second measure": _changed("food", _one_measure),
    "how long it is soaked": _changed("food", _without(Ingredient, wait=None)),
    "a preparation": _changed("food", _without(Ingredient, preparation="")),
    "a time beside a tool": _changed("equipment", _no_time),
    "a time beside work": _changed("tending", _no_time),
    "a rate": _changed("time", _without(Time, per=None)),
    "what a batch holds": _changed("repeat", _without(Repeat, of=None)),
    "the first of two numbers": _only_the_last_number,
    "the other scale": _neighbours_say_anything,
    "a number at a strange place": _nothing_is_asked_for,
}
WORDS = {
    "each side": _changed("time", _without(Time, sides=False)),
    "each": _changed("time", _without(Time, each=False)),
    "more": _changed("time", _without(Time, more=False)),
    "optional": _changed("food", _without(Ingredient, optional=False)),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_a_reader_that_drops_a_number_breaks_the_law(fault: str, monkeypatch: pytest.MonkeyPatch) -> None:
    FAULTS[fault](monkeypatch)
    assert failing(clauses()) or failing(generated(range(300)))


@pytest.mark.parametrize("fault", WORDS)
def test_a_reader_that_drops_a_word_breaks_the_law(fault: str, monkeypatch: pytest.MonkeyPatch) -> None:
    WORDS[fault](monkeypatch)
    assert failing(clauses(), unused)
