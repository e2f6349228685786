"""Laws of the keys that batches are found by: each has what came in, and no more, however they went into each other."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.model.batch import Batch
from tamis.model.called import Index, Key, Keys, all_keys
from tamis.model.opened import Shelf
from tamis.source import Source

BATCHES = 5
# Steps on some batches: (into, what), where what is a batch below BATCHES, else so many new keys; 0 new ones: entered.
STEPS = st.lists(st.tuples(st.integers(0, BATCHES - 1), st.integers(0, BATCHES + 40)), max_size=60)


def key(number: int) -> Key:
    return ("word", str(number))


@given(STEPS, st.integers(0, 8))
def test_a_batch_has_the_keys_that_a_set_would_have(steps: list[tuple[int, int]], most: int) -> None:
    keys: list[Keys[int]] = [Keys() for _ in range(BATCHES)]
    sets: list[set[Key]] = [set() for _ in range(BATCHES)]
    index: Index[int] = Index()
    entered: list[set[Key]] = []
    last = 0
    for into, what in steps:
        if what < BATCHES:
            keys[into].join(keys[what])
            sets[into] |= sets[what]
        elif what == BATCHES:
            index.enter(len(entered), keys[into])
            entered.append(set(sets[into]))
        else:
            new = [key(number) for number in range(last, last + what - BATCHES)]
            last += len(new)
            keys[into].add(new)
            sets[into] |= set(new)
    for number in range(last):
        asked = [key(number)]
        assert [each.has(asked) for each in keys] == [key(number) in each for each in sets]
        having = {at for at, each in enumerate(entered) if key(number) in each}
        assert set(index.having(asked, 10**6) or ()) == having
        few = index.having(asked, most)
        assert few is None or set(few) == having
    assert set(all_keys(keys)) == set().union(*sets)


def test_what_is_on_no_shelf_is_not_found_there() -> None:
    index: Index[Batch] = Index()
    batches = [Batch("named", at) for at in range(9)]
    shelf = Shelf()
    for at, batch in enumerate(batches):
        batch.call(("sauce",))
        index.enter(batch, batch.keys)
        if at % 4 == 0:
            shelf.put(batch, -at)
    assert shelf.called([("name", ("sauce",))], index) == [batches[8], batches[4], batches[0]]
    assert shelf.called([("name", ("gravy",))], index) == []


def test_a_batch_is_found_by_all_that_it_may_be_called() -> None:
    before = "title: Words\nserves: 4\n\n# Red sauce\n\nStir [2 chicken thighs] with [200 g fen quolb].\n"
    for name in ("red sauce", "sauce", "chicken thighs", "thighs", "fen quolb", "quolb", "fen", "meat", "chicken"):
        text = f"{before}\n# Dish\n\nWarm [the {name}] [until hot].\n"
        recipe = compile(Source("words.tamis", text), default_kitchen("en"), {}).recipe
        assert [taking.product for taking in recipe.takings] == [0], name
    for name in ("red", "quolb grits", "fish", "pasta"):
        text = f"{before}\n# Dish\n\nWarm [the {name}] [until hot].\n"
        compiled = compile(Source("words.tamis", text), default_kitchen("en"), {})
        assert any(finding.rule == "product-unknown" for finding in compiled.findings), name
