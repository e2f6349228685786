"""Whatever a file holds, the compiler answers with findings.

A cook saves half a sentence, merges two files badly, or drops a picture on the editor; none of that may end in a
traceback. A law of this kind is only as good as its input, so there are several kinds: scraps of the language in any
order, damaged bytes of real recipes, and real recipes without one of their lines (`test_deletions.py` takes single
brackets out). `TAMIS_EDITS` asks for more edits than the everyday run makes.
"""

from __future__ import annotations

import os
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from kitchen_table import (
    compiled_bytes,
    demo_texts,
    edited,
    scraps,
    wholly_compiled,
    without_one_line,
)

_EDITS = int(os.environ.get("TAMIS_EDITS", "3000"))
_EDITS_A_TEXT = (1, 1, 2, 4, 8, 48)

_SCRAPS = scraps()
_GLUE = [" ", ", ", " and ", " with ", " into ", ". ", ".", ""]

_SENTENCE = st.builds(
    lambda start, pairs: start + "".join(glue + clause for glue, clause in pairs),
    st.sampled_from(_SCRAPS["starts"]),
    st.lists(st.tuples(st.sampled_from(_GLUE), st.sampled_from(_SCRAPS["clauses"])), max_size=5),
)
_BODY = st.lists(st.one_of(_SENTENCE, _SENTENCE, st.sampled_from(_SCRAPS["lines"])), max_size=14).map("\n".join)
_HEADED = _BODY.map(lambda body: f"title: A\nserves: 4\n\n# Dough\n\n{body}\n")


@settings(deadline=None, max_examples=250)
@given(st.one_of(_HEADED, _HEADED, _BODY))
def test_scraps_of_the_language_compile(text: str) -> None:
    result = wholly_compiled("scraps", text)
    assert result.document.print() == text
    assert all(0 <= finding.span.start <= finding.span.end <= len(text) for finding in result.findings)


@settings(deadline=None, max_examples=100)
@given(st.one_of(st.binary(max_size=300), st.text(max_size=200).map(str.encode)))
def test_any_bytes_compile(data: bytes) -> None:
    assert compiled_bytes("bytes", data).findings, "a text that is no recipe is told so"


@pytest.mark.parametrize("stem", demo_texts())
def test_damaged_recipes_compile(stem: str) -> None:
    draw = random.Random(f"damage {stem}")
    data = demo_texts()[stem].encode()
    left = _EDITS // len(demo_texts()) + 1
    while left > 0:
        edits = draw.choice(_EDITS_A_TEXT)
        damaged = edited(data, edits, draw)
        _compiles(stem, damaged)
        left -= edits


@pytest.mark.parametrize("stem", demo_texts())
def test_recipes_without_one_line_compile(stem: str) -> None:
    text = demo_texts()[stem]
    for cut in without_one_line(text):
        _compiles(stem, cut.text.encode())


def _compiles(stem: str, data: bytes) -> None:
    """The bytes compile; if not, they are shown, for the traceback alone says little."""
    try:
        compiled_bytes(stem, data)
    except Exception as error:
        pytest.fail(f"{type(error).__name__}: {error}\n{data!r}")
