"""Which recipe is compiled before which."""

from __future__ import annotations

import pytest

from tamis.library.order import order_of, uses_of


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("title: a\nuses: stock, brown-roux\n\nuses: none", ("stock", "brown-roux")),
        ("\ufeff% note\n\ntitle: a\r\nUses : stock\r\n\r\n", ("stock",)),
        ("title: a\n\n# uses: x", ()),
        ("uses:\n", ()),
        ("", ()),
    ],
)
def test_uses_of(text: str, expected: tuple[str, ...]) -> None:
    assert uses_of(text) == expected


def test_used_recipes_come_first() -> None:
    order = order_of({"braise": ["stock", "roux"], "roux": ["stock"], "stock": [], "tart": ["nowhere"]})
    assert order.stems == ("stock", "roux", "braise", "tart")
    assert order.circles == {}


def test_a_circle_is_told_for_each_of_its_recipes_and_no_other() -> None:
    order = order_of({"a": ["b"], "b": ["c"], "c": ["b"], "d": ["d"]})
    assert sorted(order.stems) == ["a", "b", "c", "d"]
    assert order.circles == {"b": ("b", "c", "b"), "c": ("c", "b", "c"), "d": ("d", "d")}


def test_a_long_chain_overflows_nothing() -> None:
    chain = {str(at): [str(at + 1)] for at in range(20_000)}
    assert order_of(chain).stems[-1] == "0"
