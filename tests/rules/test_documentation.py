"""Every rule's file holds what `tamis explain` prints and what the other tests run."""

from __future__ import annotations

import ast
import inspect
import re
import tomllib
from pathlib import Path

import pytest

import tamis
from tamis.assets import asset
from tamis.checks.registry import check_of, names, page, rules
from tamis.diagnostics import RANK


@pytest.mark.parametrize("name", names())
def test_three_parts_and_two_examples(name: str) -> None:
    rule = page(name)
    assert len(rule.parts) == 3, "expected what it finds, why it matters, how to mend it, parted by empty lines"
    assert all(part.rstrip().endswith((".", "`")) for part in rule.parts)
    assert rule.level in RANK
    assert rule.bad and rule.good and rule.bad != rule.good


def said_in(tree: ast.AST) -> set[str]:
    """The rules that a module names: the first word given to a `Diagnostic`, or to a helper that makes one."""
    makers = ("Diagnostic", "_say", "_find", "_report", "_fault", "fault")
    return {
        call.args[0].value
        for call in ast.walk(tree)
        if isinstance(call, ast.Call) and call.args and isinstance(call.args[0], ast.Constant)
        if getattr(call.func, "id", getattr(call.func, "attr", "")) in makers
        if isinstance(call.args[0].value, str) and re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)+", call.args[0].value)
    }


def test_every_finding_has_a_page() -> None:
    """A phase that says something new must say in `grammar/rules/` what it means."""
    files = sorted(Path(tamis.__file__).parent.rglob("*.py"))
    said = {rule: file.name for file in files for rule in said_in(ast.parse(file.read_text(encoding="utf-8")))}
    assert len(said) > 25, "the search finds what it should"
    assert {rule: file for rule, file in said.items() if rule not in names()} == {}


def test_names_are_unique() -> None:
    assert len(set(names())) == len(names())


@pytest.mark.parametrize("check", [check_of(rule.name) for rule in rules()], ids=lambda check: check.__module__)
def test_a_rule_calls_itself_by_its_file(check: object) -> None:
    module = inspect.getmodule(check)
    assert module is not None
    assert module.__name__.rsplit(".", 1)[-1].replace("_", "-") == module.RULE


@pytest.mark.parametrize("file", sorted(Path(asset("grammar/rules")).iterdir()), ids=lambda file: file.name)
def test_a_page_of_a_phase_says_nothing_that_is_not_read(file: Path) -> None:
    keys = set(tomllib.loads(file.read_text(encoding="utf-8")))
    assert file.suffix == ".toml"
    assert keys - {"bad_encoding"} == {"level", "finds", "why", "mend", "bad", "good"}
