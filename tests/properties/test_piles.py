"""Laws of piles: what goes in is there as it was, once, in the order in which it came, however deep it lies."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.model.pile import Pile
from tamis.source import Source

# Steps on some piles: (into, what), where what is a pile below 4 and else a new thing.
STEPS = st.lists(st.tuples(st.integers(0, 3), st.integers(0, 7)), max_size=30)


@given(STEPS)
def test_a_pile_holds_what_a_list_would_hold(steps: list[tuple[int, int]]) -> None:
    piles: list[Pile[int]] = [Pile() for _ in range(4)]
    lists: list[dict[int, None]] = [{} for _ in range(4)]
    for thing, (into, what) in enumerate(steps):
        if what >= 4:
            piles[into].add(thing)
            lists[into][thing] = None
        elif what != into:
            piles[into].join(piles[what])
            lists[into].update(lists[what])
    for pile, wanted in zip(piles, lists, strict=True):
        assert list(pile) == list(wanted)
        assert all(thing in pile for thing in wanted)
        assert -1 not in pile


def test_what_comes_later_stays_out() -> None:
    one, other = Pile([1]), Pile([2])
    one.join(other)
    other.add(3)
    assert list(one) == [1, 2]


def test_the_way_is_told_from_the_inside() -> None:
    inner, middle, outer = Pile(["flour"]), Pile[str](), Pile(["salt"])
    middle.join(inner, "dough")
    outer.join(middle, "loaf")
    assert list(outer.walk()) == [("salt", ()), ("flour", ("dough", "loaf"))]


def test_halves_that_come_together_again_and_again_are_one_food() -> None:
    start = "title: Halves\nserves: 4\n\n# C0\n\nStir [1 kg flour] and [2 eggs].\n\n"
    again = (f"# C{at + 1}\n\nStir [half the C{at}].\nAdd [the rest of the C{at}].\n\n" for at in range(60))
    recipe = compile(Source("halves.tamis", start + "".join(again)), default_kitchen("en"), {}).recipe
    assert recipe.products[-1].uses == (0, 1)
