"""Whether a recipe is faulty is known without its warnings: by the rules that find errors, and by a house's levels."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.checks import rules
from tamis.checks.echoes import IN_FILE, IN_LINE, WHOLE
from tamis.checks.registry import FAULTS, Files, names, page
from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.library.library import open_library
from tamis.source import Source

TEXT = "title: Oats\nserves: 2\n\n# Oats\n\n% allow missing-quantity: as it comes\nStir [oats].\n[Simmer for 20 min].\n"


def compiled(text: str, **levels: str) -> Compiled:
    kitchen = default_kitchen("en")
    checks = {rule.replace("_", "-"): level for rule, level in levels.items()}
    settings = kitchen.settings._replace(checks=checks)  # type: ignore[arg-type]  # levels come as plain words here
    return compile(Source("oats.tamis", text), kitchen._replace(settings=settings), {})


def has_error(recipe: Compiled) -> bool:
    return any(finding.severity == "error" for finding in recipe.findings)


def in_files() -> list[str]:
    """The rules that are run on a compiled recipe."""
    return [path.stem.replace("_", "-") for path in sorted(Path(*rules.__path__).glob("[a-z]*.py"))]


def written(files: Files, folder: Path) -> Path:
    for name, content in files.items():
        path = folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return folder


@pytest.mark.parametrize("name", names())
def test_an_example_is_faulty_if_it_has_an_error(name: str, tmp_path: Path) -> None:
    for entry in open_library(written(page(name).bad, tmp_path)).entries:
        faulty = entry.faulty
        assert faulty == has_error(entry.compiled) == entry.faulty


def test_the_rules_that_find_errors_are_known() -> None:
    assert [name for name in in_files() if page(name).level == "error"] == sorted(FAULTS)


def test_no_rule_that_only_warns_makes_an_echo_of_an_error() -> None:
    warn = set(in_files()) - set(FAULTS)
    causes = {cause for echoes in (IN_FILE, IN_LINE) for several in echoes.values() for cause in several}
    assert warn.isdisjoint(causes) and WHOLE in FAULTS


@pytest.mark.parametrize(
    ("text", "levels", "faulty"),
    [
        (TEXT, {}, False),
        (TEXT.replace("% allow", "% once"), {}, True),
        (TEXT.replace("% allow", "% once"), {"missing_quantity": "warning"}, False),
        (TEXT.replace("missing-quantity", "missing-quality"), {"missing_quantity": "off"}, True),
        (TEXT.replace("serves: 2\n", ""), {}, False),
        (TEXT.replace("serves: 2\n", ""), {"missing_yield": "error"}, True),
        (TEXT.replace("[oats]", "[1 kg oats]"), {"allow_unused": "error"}, True),
        (TEXT, {"allow_unused": "error"}, False),
    ],
)
def test_levels_and_allows_count(text: str, levels: dict[str, str], faulty: bool) -> None:
    recipe = compiled(text, **levels)
    assert recipe.faulty is faulty
    assert has_error(recipe) is faulty
    assert recipe.with_findings(()).faulty is False


def test_what_is_made_of_a_recipe_has_the_findings_of_the_recipe() -> None:
    recipe = compiled(TEXT.replace("serves: 2\n", ""))
    other = recipe.with_table(recipe.table._replace(rows=()))
    assert other.findings == recipe.findings
    assert [finding.rule for finding in recipe.findings] != []
