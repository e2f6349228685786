"""A pattern that is compiled late does what one does that was compiled at once."""

from __future__ import annotations

import re

import pytest

from tamis.patterns import pattern


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
