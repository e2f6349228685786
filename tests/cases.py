"""Readable test cases: a text file of inputs, each with what is expected under it.

    === a name
    the input
    ---
    what is expected

`pytest --rewrite` writes what came out in place of what was expected; read the change before you keep it.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple


class Case(NamedTuple):
    """One case of a file; `comment` is the prose between the name and the input, if it begins with `>`."""

    file: Path
    name: str
    given: str
    expected: str


def read_cases(file: Path) -> list[Case]:
    """The cases of a file, in order."""
    cases = []
    for block in file.read_text("utf-8").split("=== ")[1:]:
        name, _, rest = block.partition("\n")
        given, _, expected = rest.partition("\n---\n")
        cases.append(Case(file, name.strip(), given + "\n", expected.strip("\n")))
    return cases


def find_cases(folder: Path, pattern: str = "*.case") -> list[Case]:
    """All cases of all files below a folder."""
    return [case for file in sorted(folder.rglob(pattern)) for case in read_cases(file)]


def rewrite(file: Path, run: Callable[[str], str]) -> None:
    """Write what comes out now as what is expected."""
    head = file.read_text("utf-8").split("=== ")[0]
    blocks = [f"=== {case.name}\n{case.given}---\n{run(case.given)}\n\n" for case in read_cases(file)]
    file.write_text(head + "".join(blocks), encoding="utf-8")
