"""The rows in which the kitchen's words are saved."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tamis.saved import cell, facts, written


@given(st.dictionaries(st.sampled_from("abc"), st.integers(0, 900) | st.just(True) | st.sampled_from(["tin", "for 2"])))
def test_facts_fit_into_a_cell(said: dict[str, int | bool | str]) -> None:
    assert not said or facts(cell(said)) == said


@pytest.mark.parametrize("value", ["a, b", "7", "", False])
def test_what_fits_into_no_cell_is_refused(value: object) -> None:
    with pytest.raises(ValueError, match="fit into no cell"):
        cell({"name": value})  # type: ignore[dict-item]


@pytest.mark.parametrize("cells", [["a|b"], ["a", "b\tc"], ["a\n"], [""]])
def test_what_fits_into_no_row_is_refused(cells: list[str]) -> None:
    with pytest.raises(ValueError, match="names: "):
        written({"names": cells})
