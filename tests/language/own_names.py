"""The names of the code's own: what the compiler's annotations, options, rules, records and grammars name.

A string that is one of them, where it is compared to what may hold it, is no word of a cook's.
"""

from __future__ import annotations

import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from tamis.checks.registry import names, scaling_names

GRAMMAR = Path(__file__).parents[2] / "grammar"
_SAME_KIND = frozenset(("get", "pop", "lower", "strip", "values", "keys"))
"""Methods of a text or a table, after which it is known by the same name."""
_TERMINAL = re.compile(r"\b[A-Z][A-Z_]+\b")
_PRODUCTION = re.compile(r"^([a-z][a-z_]*):", re.MULTILINE)


class Names(NamedTuple):
    """The names of the code's own: by what each is the value of, and those that are whole sets."""

    of: dict[str, frozenset[str]]
    """What an argument, field, function, constant or option may hold, by its name."""
    aliases: dict[str, frozenset[str]]
    """The members of each `Kind = Literal[…]`."""
    sets: tuple[frozenset[str], ...]
    """The fields of each record, the modules of each package, the ids of all units, the names of all rules."""
    beside: dict[str, frozenset[str]]
    """Those of the data, by what a variable that holds one is called."""
    terminals: frozenset[str]
    """Of the grammars, in capitals."""
    productions: frozenset[str]
    """Of the grammars, in small letters: what a node of a clause's tree is."""


def own_names(modules: dict[str, ast.Module]) -> Names:
    """What the code's annotations, options, rules and records name."""
    grammars = [file.read_text("utf-8") for file in sorted(GRAMMAR.glob("*.lark"))]
    terminals = frozenset(found for text in grammars for found in _TERMINAL.findall(text))
    productions = frozenset(found for text in grammars for found in _PRODUCTION.findall(text))
    aliases: dict[str, frozenset[str]] = {"NodeKind": terminals | productions}
    nodes = [node for tree in modules.values() for node in ast.walk(tree)]
    for node in nodes:
        if isinstance(node, ast.Assign) and _names_literals(node.value):
            name = last(node.targets[0])
            aliases[name] = aliases.get(name, frozenset()) | members_of(node.value, aliases)
    of: dict[str, frozenset[str]] = {}
    sets: list[frozenset[str]] = []
    for node in nodes:
        for name, members in _annotated(node, aliases):
            of[name] = of.get(name, frozenset()) | members
        if isinstance(node, ast.ClassDef):
            fields = (item.target for item in node.body if isinstance(item, ast.AnnAssign))
            sets.append(frozenset(field.id for field in fields if isinstance(field, ast.Name)))
    sets += _modules(modules)
    units = json.loads((GRAMMAR / "units.json").read_text("utf-8"))
    beside = {"unit": frozenset(unit["id"] for unit in units), "rule": frozenset((*names(), *scaling_names()))}
    return Names(of, aliases, (*sets, *beside.values()), beside, terminals, productions)


def _names_literals(value: ast.expr) -> bool:
    """Whether this is a `Literal[…]`, or a union with one."""
    if isinstance(value, ast.BinOp):
        return _names_literals(value.left) or _names_literals(value.right)
    return isinstance(value, ast.Subscript) and last(value) == "Literal"


def _modules(modules: dict[str, ast.Module]) -> list[frozenset[str]]:
    """The names of what lies in each package: modules, and packages in it."""
    inside: dict[str, set[str]] = {}
    for file in modules:
        for path in (Path(file), *Path(file).parents):
            inside.setdefault(path.parent.as_posix(), set()).add(path.stem)
    return [frozenset(names) for names in inside.values()]


def _annotated(node: ast.AST, aliases: dict[str, frozenset[str]]) -> Iterator[tuple[str, frozenset[str]]]:
    """What this node says that something of a name may hold."""
    if isinstance(node, ast.AnnAssign):
        yield last(node.target), members_of(node.annotation, aliases)
    elif isinstance(node, ast.FunctionDef):
        if node.returns:
            yield node.name, members_of(node.returns, aliases)
        for arg in (*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs):
            if arg.annotation:
                yield arg.arg, members_of(arg.annotation, aliases)
    elif isinstance(node, ast.Call) and last(node.func) == "add_argument" and node.args:
        choices = next((keyword.value for keyword in node.keywords if keyword.arg == "choices"), None)
        option = node.args[-1]
        if choices is not None and isinstance(option, ast.Constant):
            yield str(option.value).lstrip("-").replace("-", "_"), frozenset(strings(choices))


def members_of(annotation: ast.expr, aliases: dict[str, frozenset[str]]) -> frozenset[str]:
    """The members of every `Literal` that an annotation mentions."""
    if isinstance(annotation, ast.Constant) and isinstance(annotation.value, str):
        annotation = ast.parse(annotation.value, mode="eval").body
    members: set[str] = set()
    for node in ast.walk(annotation):
        if isinstance(node, ast.Subscript) and last(node.value) == "Literal":
            members.update(strings(node.slice))
        elif isinstance(node, ast.Name | ast.Attribute):
            members |= aliases.get(last(node), frozenset())
    return frozenset(members)


def strings(node: ast.AST) -> list[str]:
    return [n.value for n in ast.walk(node) if isinstance(n, ast.Constant) and isinstance(n.value, str)]


def last(node: ast.AST | None) -> str:
    """The name by which an expression is known: `action.work.station` by `station`, `kinds[0]` by `kinds`."""
    if isinstance(node, ast.Name):
        return node.id
    if isinstance(node, ast.Attribute):
        return node.attr
    if isinstance(node, ast.Call):
        inside = isinstance(node.func, ast.Attribute) and node.func.attr in _SAME_KIND
        return last(node.func.value if inside else node.func)  # type: ignore[attr-defined]
    if isinstance(node, ast.Subscript):
        return last(node.value)
    return ""
