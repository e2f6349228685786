"""Plain command lines, read without argparse.

To import argparse and to set a parser up takes a tenth of a cold check. This takes the same declarations and reads the
command lines that are written as the help shows them. For all others (help itself, an option that is wrong, cut short
or given twice) it gives None, and argparse, which alone tells what is wrong, reads them.
"""

from __future__ import annotations

from types import SimpleNamespace

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.typed import Any

Action = Literal["store", "store_true", "append"]


class _Declared(NamedTuple):
    """An option, or a place for words without one."""

    name: str
    action: Action
    nargs: str
    choices: Sequence[str]
    default: Any
    required: bool
    group: int

    def value(self, given: list[str] | None) -> Any:
        """What stands for the words that were given, or for none."""
        if given is None:
            return [] if self.nargs == "*" else self.default
        if self.action == "store_true":
            return True
        return given if self.nargs in ("*", "+") or self.action == "append" else given[0]


class Plain:
    """Stands where a command declares its arguments, as `argparse.ArgumentParser` does."""

    def __init__(self) -> None:
        self._options: dict[str, _Declared] = {}
        self._every: list[_Declared] = []
        self._groups: list[bool] = [False]
        self._group = 0

    def add_mutually_exclusive_group(self, required: bool = False) -> Plain:
        """A place to declare options of which one is given at most, or exactly one."""
        group = Plain()
        group._options, group._every, group._groups = self._options, self._every, self._groups
        group._group = len(self._groups)
        self._groups.append(required)
        return group

    def add_argument(
        self,
        *names: str,
        action: Action = "store",
        nargs: str = "",
        choices: Sequence[str] = (),
        default: Any = None,
        required: bool = False,
        metavar: str = "",
        help: str = "",
    ) -> None:
        """Declare an option by its spellings, or a place by its name."""
        name = next((name for name in names if name.startswith("--")), names[0]).lstrip("-").replace("-", "_")
        default = False if action == "store_true" else default
        declared = _Declared(name, action, nargs, choices, default, required, self._group)
        self._every.append(declared)
        self._options.update((spelling, declared) for spelling in names if spelling.startswith("-"))

    def read(self, words: Sequence[str]) -> SimpleNamespace | None:
        """What the words give to each name; None where they are not plain."""
        given: dict[str, list[str]] = {}
        runs: list[list[str]] = [[]]
        left = list(reversed(words))
        while left:
            word = left.pop()
            option = self._options.get(word)
            if option is None:
                runs[-1].append(word)
                continue
            if option.action != "store_true" and not left:
                return None
            if option.name in given and option.action != "append":
                return None
            given.setdefault(option.name, []).extend([] if option.action == "store_true" else [left.pop()])
            runs.append([])
        loose = [run for run in runs if run]
        if len(loose) > 1 or not self._placed(loose[0] if loose else [], given):
            return None
        return self._complete(given)

    def _placed(self, words: list[str], given: dict[str, list[str]]) -> bool:
        """Give the words without an option to the only place there is."""
        places = [one for one in self._every if one not in self._options.values()]
        if len(places) != 1:
            return not words and not places
        place = places[0]
        least, most = {"": (1, 1), "?": (0, 1), "*": (0, len(words)), "+": (1, len(words))}[place.nargs]
        if words:
            given[place.name] = words
        return least <= len(words) <= most

    def _complete(self, given: dict[str, list[str]]) -> SimpleNamespace | None:
        """A value for each name; None if one is wrong or wanting, or if two exclude each other."""
        every = self._every
        groups = [one.group for one in every if one.group and one.name in given]
        wanted = [group for group, required in enumerate(self._groups) if required]
        if len(groups) > len(set(groups)) or not set(wanted) <= set(groups):
            return None
        for one in every:
            values = given.get(one.name)
            if values is None and one.required:
                return None
            if any(value.startswith("-") or (one.choices and value not in one.choices) for value in values or ()):
                return None
        return SimpleNamespace(**{one.name: one.value(given.get(one.name)) for one in every})
