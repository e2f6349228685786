"""The stop-watch itself: its recipes are what they claim to be, and it runs. No test asserts a time."""

from __future__ import annotations

import json
import subprocess
import sys
from collections import Counter
from collections.abc import Callable
from dis import get_instructions
from functools import cache
from pathlib import Path
from types import CodeType, FrameType
from typing import Any

import pytest
from nasty import FAMILIES

from corpus import UNKNOWN, clause_texts, drafts, recipes
from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source

TraceFunction = Callable[[FrameType, str, Any], Any]
_THOROUGH = ("plain words", "empty components", "list")
"""Families of which every line is thought about at length."""
_FEW = 400
"""Calls, or lines of a function with a loop, that may have some other reason than the length of the text."""
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

    for text in recipes(30):
        findings = compile(Source("bench.tamis", text), default_kitchen("en"), {}).findings
        assert [finding for finding in findings if finding.severity != "information"] == []


def test_drafts_have_unknown_foods_and_are_compiled_all_the_same() -> None:

    for text in drafts(recipes(6)):
        findings = compile(Source("bench.tamis", text), default_kitchen("en"), {}).findings
        unknown = [finding for finding in findings if finding.rule == "unknown-ingredient"]
        assert len(unknown) == UNKNOWN
        assert any(finding.hint.startswith("did you mean") for finding in unknown)


def test_thousands_of_batches_are_no_depth_of_calls() -> None:

    result = compile(Source("nasty.tamis", FAMILIES["shares"](100_000)), default_kitchen("en"), {})
    assert result.formula is None and len(result.recipe.products) > 1000


@pytest.mark.parametrize("family", FAMILIES)
def test_no_function_looks_at_everything_for_everything(family: str) -> None:
    """Counted is what each function runs through: of a text twice as long, about twice as much."""
    size = 700 if family in _THOROUGH else 2000
    half, whole = (_uncut(FAMILIES[family](times * size)) for times in (1, 2))
    _compiled(whole)  # what is worked out once for each word is worked out here
    before, after = _steps_of(half), _steps_of(whole)
    begun = {code: steps for code, steps in before.items() if steps > _FEW}
    worse = {code.co_qualname: after[code] for code, steps in begun.items() if after[code] > 3 * steps}
    assert worse == {}


def _uncut(text: str) -> str:
    """The text up to the end of its last sentence: what is cut off is an error, and other functions run."""
    head, end, _ = text.rpartition(".\n")
    return head + end or text


def test_there_is_work_enough_to_be_counted() -> None:
    counted = _steps_of(FAMILIES["headings"](2000))
    assert sum(steps > _FEW for steps in counted.values()) > 10


def _steps_of(text: str) -> Counter[CodeType]:
    """How often each function of the compiler is called, or how many lines it runs through if it has a loop."""
    counted: Counter[CodeType] = Counter()

    def line(frame: FrameType, event: str, _: object) -> TraceFunction:
        if event == "line":
            counted[frame.f_code] += 1
        return line

    def call(frame: FrameType, _: str, __: object) -> TraceFunction | None:
        code = frame.f_code
        if "tamis" not in code.co_filename or code.co_filename.endswith("near.py") or "nearest" in code.co_qualname:
            return None  # a misspelt name is compared with all others, but only the first hundred are
        counted[code] += 1
        return line if _has_loop(code) else None

    traced = sys.gettrace()
    sys.settrace(call)
    try:
        _compiled(text)
    finally:
        sys.settrace(traced)
    return counted


def _compiled(text: str) -> None:
    result = compile(Source("nasty.tamis", text), default_kitchen("en"), {})
    assert result.findings is not None and result.timeline.most >= 0


@cache
def _has_loop(code: CodeType) -> bool:
    return any("BACKWARD" in instruction.opname for instruction in get_instructions(code))


@pytest.mark.parametrize("family", FAMILIES)
def test_nasty_texts_have_the_size_asked_for_and_compile(family: str) -> None:

    text = FAMILIES[family](8192)
    assert len(text.encode()) == 8192
    result = compile(Source("nasty.tamis", text), default_kitchen("en"), {})
    assert result.document.print() == text
    assert result.timeline.most >= 0


def test_the_bench_runs(tmp_path: Path) -> None:
    out = tmp_path / "figures.json"
    few = ["--recipes", "3", "--rounds", "1", "--starts", "1", "--largest", "4"]
    command = [sys.executable, str(_HERE / "run.py"), *few, "--json", str(out)]
    ran = subprocess.run(command, capture_output=True, text=True, check=True)
    figures = json.loads(out.read_text())["figures"]
    assert [figure["what"] in ran.stdout for figure in figures] == [True] * len(figures)
    assert len(figures) == 12 + 13 + 1 + len(FAMILIES)
    assert all(figure["measured"] > 0 for figure in figures)
