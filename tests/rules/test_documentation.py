"""Every rule's file holds what `tamis explain` prints and what the other tests run."""

from __future__ import annotations

import inspect
from importlib import import_module

import pytest

from tamis.checks.registry import checks, names, page
from tamis.diagnostics import RANK


@pytest.mark.parametrize("name", names())
def test_three_parts_and_two_examples(name: str) -> None:
    rule = page(name)
    assert len(rule.parts) == 3, "expected what it finds, why it matters, how to mend it, parted by empty lines"
    assert all(part.rstrip().endswith((".", "`")) for part in rule.parts)
    assert rule.level in RANK
    assert rule.bad and rule.good and rule.bad != rule.good


def test_names_are_unique() -> None:
    assert len(set(names())) == len(names())


@pytest.mark.parametrize("check", checks(), ids=lambda check: check.__module__)
def test_a_rule_calls_itself_by_its_file(check: object) -> None:
    module = inspect.getmodule(check)
    assert module is not None
    assert module.__name__.rsplit(".", 1)[-1].replace("_", "-") == module.RULE


def test_documentation_of_phases_is_not_imported_by_a_check() -> None:
    import subprocess
    import sys

    program = "import sys, tamis.checks.run as r; r.checks(); print([m for m in sys.modules if '.phases.' in m])"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
    assert import_module("tamis.checks.phases.not_utf8").LEVEL == "error"
