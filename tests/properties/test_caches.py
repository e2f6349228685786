"""Whoever stays open for a day and compiles at every keystroke must not grow: what is kept of a text has a limit."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from collections.abc import Iterator
from typing import Any

import pytest

import tamis
from tamis.kitchen.house import default_kitchen
from tamis.quantity.nouns import nouns

# What there are few of, whatever anybody writes: languages, files of words, roles of clauses, choices of the house.
FEW = {"language", "name", "cup", "tbsp", "fat", "cold", "size", "role"}


def kept_for_ever() -> Iterator[tuple[str, Any]]:
    for module in pkgutil.walk_packages(tamis.__path__, "tamis."):
        if not module.name.endswith("__main__"):
            for key, value in vars(importlib.import_module(module.name)).items():
                if hasattr(value, "cache_parameters") and value.cache_parameters()["maxsize"] is None:
                    yield f"{value.__module__}.{key}", value


@pytest.mark.parametrize(("name", "function"), dict(kept_for_ever()).items())
def test_only_what_there_is_little_of_is_kept_for_ever(name: str, function: Any) -> None:
    asked = set(inspect.signature(function).parameters)
    assert asked <= FEW, name


def test_what_a_kitchen_keeps_of_names_has_a_limit() -> None:
    larder, words = default_kitchen("en").larder, nouns("en")
    for at in range(21_000):
        larder.find((f"thing-{at}",))
        words.singular(f"things{at}")
    for kept in (larder._find, words.singular):
        info = kept.cache_info()  # type: ignore[attr-defined]
        assert info.currsize == info.maxsize == 20_000
