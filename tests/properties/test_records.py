"""Records are what named tuples of the standard library are."""

from __future__ import annotations

import copy
import pickle
from typing import NamedTuple as Standard

import pytest

from tamis.record import NamedTuple


class Spoon(NamedTuple):
    """A spoon of ours."""

    name: str
    size: int = 5
    heaped: bool = False

    @property
    def large(self) -> bool:
        """Whether it is no teaspoon."""
        return self.size > 5

    def __str__(self) -> str:
        return f"a {self.name}"


class Ladle(Standard):
    """The same by the standard library."""

    name: str
    size: int = 5
    heaped: bool = False


BOTH = (Spoon, Ladle)


@pytest.mark.parametrize("kind", BOTH)
def test_fields_have_names_places_and_defaults(kind: type[Spoon]) -> None:
    spoon = kind("tbsp", size=15)
    assert spoon == ("tbsp", 15, False) and hash(spoon) == hash(("tbsp", 15, False))
    assert (spoon.name, spoon[1], spoon.heaped) == ("tbsp", 15, False)
    assert kind._fields == kind.__match_args__ == ("name", "size", "heaped")
    assert kind._field_defaults == {"size": 5, "heaped": False}
    assert repr(spoon) == f"{kind.__name__}(name='tbsp', size=15, heaped=False)"
    assert spoon._asdict() == {"name": "tbsp", "size": 15, "heaped": False}
    assert kind._make(["tsp", 5, True]) == spoon._replace(name="tsp", size=5, heaped=True)
    assert not hasattr(spoon, "__dict__")
    match spoon:
        case kind(name, size):
            assert (name, size) == ("tbsp", 15)


@pytest.mark.parametrize("kind", BOTH)
def test_what_does_not_fit_is_refused(kind: type[Spoon]) -> None:
    with pytest.raises(TypeError, match="missing 1 required positional argument: 'name'"):
        kind()  # type: ignore[call-arg]
    with pytest.raises(TypeError, match="unexpected keyword argument 'colour'"):
        kind("tsp", colour="red")  # type: ignore[call-arg]
    with pytest.raises(ValueError, match=r"unexpected field names: \['colour'\]"):
        kind("tsp")._replace(colour="red")  # type: ignore[call-arg]
    with pytest.raises(TypeError, match="Expected 3 arguments, got 2"):
        kind._make(["tsp", 5])
    with pytest.raises(AttributeError):
        kind("tsp").name = "tbsp"  # type: ignore[misc]


@pytest.mark.parametrize("kind", BOTH)
def test_it_can_be_copied_and_sent(kind: type[Spoon]) -> None:
    spoon = kind("tbsp", 15)
    for other in (copy.copy(spoon), copy.deepcopy(spoon), pickle.loads(pickle.dumps(spoon))):
        assert other == spoon and type(other) is kind


@pytest.mark.parametrize("many", range(40))
def test_any_number_of_fields(many: int) -> None:
    names = [f"field_{at}" for at in range(many)]
    body = {"__annotations__": dict.fromkeys(names, "int"), "__module__": __name__}
    kind = type(NamedTuple)("Drawer", (NamedTuple,), body)
    assert kind(*range(many)) == kind(**{name: at for at, name in enumerate(names)}) == tuple(range(many))
    assert [getattr(kind(*range(many)), name) for name in names] == list(range(many))
    with pytest.raises(TypeError, match=f"takes {many + 1} positional arguments? but {many + 2} were given"):
        kind(*range(many + 1))


def test_methods_and_properties_are_kept() -> None:
    assert Spoon("tbsp", 15).large and str(Spoon("tbsp")) == "a tbsp"
    assert Spoon.__doc__ == "A spoon of ours." and Spoon.__module__ == __name__


def test_a_field_without_a_default_after_one_with_it_is_refused() -> None:
    with pytest.raises(TypeError, match="come last"):
        type(NamedTuple)("Odd", (NamedTuple,), {"__annotations__": {"a": "int", "b": "int"}, "a": 1})
