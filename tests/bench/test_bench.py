"""The stop-watch itself: its recipes are what they claim to be, and it runs. No test asserts a time."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from corpus import UNKNOWN, clause_texts, drafts, recipes
from nasty import FAMILIES

_HERE = Path(__file__).parent


def test_the_same_recipes_are_made_each_time() -> None:
    code = "import hashlib, corpus; print(hashlib.sha256(''.join(corpus.recipes(30)).encode()).hexdigest())"
    hashes = {
        subprocess.run(
            [sys.executable, "-c", code],
            cwd=_HERE,
            env={"PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(hashes) == 1
    assert recipes(30)[:9] == recipes(9)


def test_recipes_are_of_the_size_and_variety_that_they_should_be() -> None:
    texts = recipes(300)
    clauses = [clause for text in texts for clause in clause_texts(text)]
    assert 3000 < sum(len(text.encode()) for text in texts) / len(texts) < 3400
    assert 49 < len(clauses) / len(texts) < 54
    assert 0.08 < 1 - len(set(clauses)) / len(clauses) < 0.12
    assert not any("{" in text or "}" in text for text in texts)


def test_recipes_compile_clean() -> None:
    from tamis.compile import compile
    from tamis.kitchen.house import default_kitchen
    from tamis.source import Source

    for text in recipes(30):
        findings = compile(Source("bench.tamis", text), default_kitchen("en"), {}).findings
        assert [finding for finding in findings if finding.severity != "information"] == []


def test_drafts_have_unknown_foods_and_are_compiled_all_the_same() -> None:
    from tamis.compile import compile
    from tamis.kitchen.house import default_kitchen
    from tamis.source import Source

    for text in drafts(recipes(6)):
        findings = compile(Source("bench.tamis", text), default_kitchen("en"), {}).findings
        unknown = [finding for finding in findings if finding.rule == "unknown-ingredient"]
        assert len(unknown) == UNKNOWN
        assert any(finding.hint.startswith("did you mean") for finding in unknown)


def test_thousands_of_batches_are_no_depth_of_calls() -> None:
    from tamis.compile import compile
    from tamis.kitchen.house import default_kitchen
    from tamis.source import Source

    result = compile(Source("nasty.tamis", FAMILIES["shares"](100_000)), default_kitchen("en"), {})
    assert result.formula is None and len(result.recipe.products) > 1000


@pytest.mark.parametrize("family", FAMILIES)
def test_nasty_texts_have_the_size_asked_for_and_compile(family: str) -> None:
    from tamis.compile import compile
    from tamis.kitchen.house import default_kitchen
    from tamis.source import Source

    text = FAMILIES[family](8192)
    assert len(text.encode()) == 8192
    result = compile(Source("nasty.tamis", text), default_kitchen("en"), {})
    assert result.document.print() == text
    assert result.timeline.most >= 0


def test_the_bench_runs(tmp_path: Path) -> None:
    out = tmp_path / "figures.json"
    few = ["--recipes", "3", "--rounds", "1", "--starts", "1", "--largest", "16"]
    command = [sys.executable, str(_HERE / "run.py"), *few, "--json", str(out)]
    ran = subprocess.run(command, capture_output=True, text=True, check=True)
    figures = json.loads(out.read_text())["figures"]
    assert [figure["what"] in ran.stdout for figure in figures] == [True] * len(figures)
    assert len(figures) == 8 + 13 + 1 + len(FAMILIES)
    assert all(figure["measured"] > 0 for figure in figures)
