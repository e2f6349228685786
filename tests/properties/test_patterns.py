"""A pattern that is compiled late does what one does that was compiled at once."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tamis.patterns import Whole, pattern
from tamis.words import one_of


def test_it_is_compiled_when_first_used() -> None:
    broken = pattern("(")
    with pytest.raises(re.error):
        broken.match("a")


def test_it_has_all_that_a_pattern_has() -> None:
    late, at_once = pattern(r"(?P<word>\w+) (\d+)", re.IGNORECASE), re.compile(r"(?P<word>\w+) (\d+)", re.IGNORECASE)
    for text in ("Salt 3, oil 4", "salt"):
        for name in ("match", "fullmatch", "search"):
            one, other = getattr(late, name)(text), getattr(at_once, name)(text)
            assert (one and one.groupdict()) == (other and other.groupdict())
        assert late.findall(text) == at_once.findall(text)
        assert late.sub(r"\2 \1", text) == at_once.sub(r"\2 \1", text)
    assert (late.pattern, late.flags, late.groups) == (at_once.pattern, at_once.flags, at_once.groups)


WORDS = st.lists(st.sampled_from(["not less than", "less than", "less", "at most", "œufs", "no", "a_b"]), min_size=1)
TEXTS = st.lists(st.sampled_from([*"abeno_ ,-", "less", "than", "not", "at most", "œufs", " "]), max_size=12).map(
    "".join
)


@given(WORDS, TEXTS)
def test_whole_words_are_those_of_a_regular_expression(words: list[str], text: str) -> None:
    expected = re.compile(rf"\b{one_of(words)}\b")
    assert Whole(words).search(text) == bool(expected.search(text))


@pytest.mark.parametrize(
    ("text", "left"),
    [("not less than 5", " 5"), ("unless 5, less, less", "unless 5, , "), ("", ""), ("priceless", "priceless")],
)
def test_text_without_them(text: str, left: str) -> None:
    assert Whole(["less", "less than", "not less than"]).without(text) == left
