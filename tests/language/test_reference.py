"""The language reference for cooks: every example in it is compiled, and its word lists are those of the data.

What a fence opens with says what must hold of it:

    ```tamis STEM            a whole recipe, in the file STEM.tamis of one library with all the others: clean
    ```tamis-lines           lines of one component (or components with their headings), wrapped in one recipe: clean
    ```tamis-lines finds=A,B the same, with exactly these findings (of level information only those named)
    ```header                header lines, wrapped the same way; finds=… too
    ```clause ROLE           clauses, one a line; each has that role and no fault
    ```toml FILE             `kitchen.toml` or `goods.toml` of that library: no finding
"""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import NamedTuple, get_args

import pytest

from tamis.assets import asset_text
from tamis.checks.registry import names
from tamis.compile import compile
from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import default_kitchen
from tamis.kitchen.settings import Settings
from tamis.library.library import Library, open_library
from tamis.reading.clause_reader import read_clause
from tamis.reading.clauses import Role
from tamis.reading.header import KEYS
from tamis.reading.make_reference import TARGET, filled, lists
from tamis.source import Source, Span
from tamis.syntax.document import Clause

REFERENCE = asset_text("grammar/reference.md")
_FENCE = re.compile(r"^```(\S+)(?: ([^\n]*))?\n(.*?)^```$", re.MULTILINE | re.DOTALL)
STEPS = "\n# Dish\n\nStir [10 g fine salt] into [1 l water].\n"
# Lines in the middle of a recipe leave flour, eggs and meat raw; the recipe around them doesn't.
COOKED = "\n[Bake for 30 min at 200 °C] [in the oven] [until 96 °C inside].\n"


class Fence(NamedTuple):
    """One example; `line` is where its text begins."""

    kind: str
    info: str
    text: str
    line: int


FENCES = [
    Fence(found[1], found[2] or "", found[3], REFERENCE.count("\n", 0, found.start()) + 2)
    for found in _FENCE.finditer(REFERENCE)
]


def fences(*kinds: str) -> list[object]:
    return [pytest.param(fence, id=f"line {fence.line}") for fence in FENCES if fence.kind in kinds]


def wrapped(fence: Fence) -> str:
    """A small recipe around an example: in the header what it doesn't say, and steps where it has none."""
    head = "".join(line for line in ("title: Example\n", "serves: 4\n") if line.split(":")[0] + ":" not in fence.text)
    if fence.kind == "header":
        return head + fence.text + STEPS
    return head + "\n" + ("" if re.search("^#", fence.text, re.MULTILINE) else "# Dish\n\n") + fence.text + COOKED


def wanted(fence: Fence) -> list[str]:
    return fence.info.removeprefix("finds=").split(",") if fence.info else []


def clause_of(text: str) -> Clause:
    return Clause(text, Span(0, len(text) + 2), "en")


@pytest.mark.parametrize("fence", fences("tamis-lines", "header"))
def test_lines(fence: Fence) -> None:
    found = compile(Source("example.tamis", wrapped(fence)), default_kitchen("en"), {}).findings
    rules = [each.rule for each in found if each.severity != "information" or each.rule in wanted(fence)]
    assert rules == wanted(fence), [each.message for each in found]


@pytest.mark.parametrize("fence", fences("clause"))
def test_clauses(fence: Fence) -> None:
    for text in fence.text.splitlines():
        findings: list[Diagnostic] = []
        roles = [
            record.role
            for record in read_clause(clause_of(text), default_kitchen("en"), findings)
            if hasattr(record, "role")
        ]
        assert (text, roles[-1:]) == (text, [fence.info])
        assert [finding.message for finding in findings] == []


@pytest.mark.parametrize("text", sorted(set(re.findall(r"`\[([^\]`…]+)\]`", _FENCE.sub("", REFERENCE)))))
def test_clauses_in_the_text(text: str) -> None:
    findings: list[Diagnostic] = []
    assert read_clause(clause_of(text), default_kitchen("en"), findings)
    assert findings == []


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> Library:
    """The whole recipes and settings of the reference, as one library."""
    folder: Path = tmp_path_factory.mktemp("library")
    for fence in FENCES:
        if fence.kind in ("tamis", "toml"):
            name = fence.info + ".tamis" if fence.kind == "tamis" else fence.info
            (folder / name).write_text(fence.text, encoding="utf-8")
    return open_library(folder)


def test_recipes(library: Library) -> None:
    """Each fence is a file of its own, and nothing is to be said about any of them."""
    assert [entry.stem for entry in library.entries] == sorted(fence.info for fence in FENCES if fence.kind == "tamis")
    assert [finding.message for _, finding in library.findings() if finding.severity != "information"] == []
    assert {fence.info for fence in FENCES if fence.kind == "toml"} == {"kitchen.toml", "goods.toml"}


def test_settings_shown_are_the_defaults(library: Library) -> None:
    """All but the house's name, its address and the level of a rule, which stand there as examples."""
    shown = library.kitchen.settings
    assert shown.publish.name and shown.publish.address and len(shown.checks) == 1
    assert shown._replace(checks={}, publish=shown.publish._replace(name="", address="")) == Settings()


def test_no_fence_is_left_out() -> None:
    known = {"tamis", "tamis-lines", "header", "clause", "toml"}
    assert {fence.kind for fence in FENCES} == known
    assert REFERENCE.count("\n```") == 2 * len(FENCES) + 2  # and the definition


def test_every_role_and_header_key_is_shown() -> None:
    assert {fence.info for fence in FENCES if fence.kind == "clause"} == set(get_args(Role))
    assert [key for key in KEYS if not re.search(rf"(^|`){key}: ", REFERENCE, re.MULTILINE)] == []


def test_rules_named_exist() -> None:
    assert {rule for fence in FENCES for rule in wanted(fence) if fence.info.startswith("finds=")} <= set(names())


def test_links_in_the_page_lead_somewhere() -> None:
    heads = re.findall(r"^#+ (.*)$", _FENCE.sub("", REFERENCE), re.MULTILINE)
    anchors = {re.sub(r"[^\w -]", "", head.lower()).replace(" ", "-") for head in heads}
    assert set(re.findall(r"\]\(#([^)]*)\)", _FENCE.sub("", REFERENCE))) <= anchors


@cache
def _lists() -> dict[str, str]:
    return lists()


def test_word_lists_are_those_of_the_data() -> None:
    """After a change of a data file: `python -m tamis.reading.make_reference`."""
    assert TARGET.read_text("utf-8") == filled(REFERENCE, _lists())


@pytest.mark.parametrize("name", sorted(_lists()))
def test_every_list_stands_in_the_page(name: str) -> None:
    assert f"<!-- list: {name} -->\n" in REFERENCE


def test_a_stale_list_is_noticed() -> None:
    stale = REFERENCE.replace("| tablespoon", "| tablespun", 1).replace("tbsp, tablespoon", "tbsp, tablespun", 1)
    assert stale != REFERENCE and filled(stale, _lists()) == REFERENCE
