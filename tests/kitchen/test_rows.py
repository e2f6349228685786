"""The rows in which the kitchen's words are saved."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tamis.saved import Saved, cell, facts, written


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


NAMES = {"bacon": "bacon", "bacon bit": "bacon", "b": "letter", "egg": "", "beet": "root", "ox": "beef"}


def test_names_lead_where_they_led() -> None:
    names = Saved(written({"order": ["b", "a"], "none": [], "names": NAMES})).names("names")
    assert all(names[name] == names.get(name) == leads and name in names for name, leads in NAMES.items())
    for other in ("", "x", "ba", "bac", "bacon b", "ox=", "|"):
        assert other not in names and names.get(other) is None
        with pytest.raises(KeyError):
            names[other]


@given(st.dictionaries(st.text("abé' -", min_size=1, max_size=5), st.text("ab ", max_size=3), max_size=12))
def test_all_names_are_saved(said: dict[str, str]) -> None:
    saved = Saved(written({"names": said, "order": list(said)}))
    assert saved.names("names").everything() == said and (saved.row("order") == list(said))


def test_other_names_go_before() -> None:
    shipped = Saved(written({"names": NAMES})).names("names")
    house = shipped.with_more({"bacon": "ours", "bap": "bun"})
    house.add("beet", "sugar beet")
    assert [house[name] for name in ("bacon", "bap", "bacon bit", "beet")] == ["ours", "bun", "bacon", "sugar beet"]
    assert house.everything() == NAMES | {"bacon": "ours", "bap": "bun", "beet": "sugar beet"}
    assert shipped["bacon"] == "bacon" and "bap" not in shipped and shipped.everything() == NAMES


@pytest.mark.parametrize("names", [{"a=b": "c"}, {"a": "b=c"}, {"a>b": "c"}, {"": "a"}, {"a|b": "c"}, {"a": "b\tc"}])
def test_names_that_fit_into_no_row_are_refused(names: dict[str, str]) -> None:
    with pytest.raises(ValueError, match=r"sign that parts|names: "):
        written({"names": names})
