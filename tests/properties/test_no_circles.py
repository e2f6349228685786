"""No modules import each other in a circle, imports for annotations alone (`if TYPE_CHECKING`) included.

Of such modules none can be read, tested or taken away without the others.
"""

from __future__ import annotations

import ast
from collections.abc import Mapping
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import tamis

HOME = Path(tamis.__file__).parent


def modules() -> dict[str, Path]:
    """Every file of the compiler, by its name in it; a package is called like its folder."""
    parts = {file: file.relative_to(HOME).with_suffix("").parts for file in sorted(HOME.rglob("*.py"))}
    return {".".join(part for part in names if part != "__init__"): file for file, names in parts.items()}


def imported(name: str, tree: ast.AST, known: Mapping[str, object]) -> set[str]:
    """The modules of the compiler that a file imports, anywhere in it. A relative import is one from the folder."""
    found: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found.update(each.name for each in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level < 2, "the folder above: this test does not know it"
            folder = f"tamis.{name}".rpartition(".")[0] if node.level else ""
            module = ".".join(filter(None, (folder, node.module)))
            whole = (f"{module}.{each.name}" for each in node.names)
            found.update(each if each.removeprefix("tamis.") in known else module for each in whole)
    return {each.removeprefix("tamis.") for each in found} & set(known)


def graph() -> dict[str, set[str]]:
    files = modules()
    return {name: imported(name, ast.parse(file.read_text("utf-8")), files) - {name} for name, file in files.items()}


def circle(needs: Mapping[str, set[str]]) -> list[str]:
    """A row of modules of which each imports the next, the last the first; none where there is none."""
    try:
        TopologicalSorter(needs).prepare()
    except CycleError as error:
        return list(reversed(error.args[1]))
    return []


def test_the_graph_is_seen() -> None:
    needs = graph()
    assert len(needs) > 300
    assert "reading.clause_reader" in needs["reading.refused"] | needs["reading.reader"], "a plain import"
    assert "reading.refused" in needs["reading.clause_reader"], "an import in a function"
    assert "diagnostics" in needs["reading.reader"], "an import for annotations alone"
    assert circle({"a": {"b"}, "b": {"c"}, "c": {"a"}, "d": {"a"}})[0] in ("a", "b", "c")


def test_no_modules_import_each_other() -> None:
    found = circle(graph())
    assert not found, "these import each other in a circle: " + " → ".join(found)
