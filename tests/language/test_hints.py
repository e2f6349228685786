"""The clauses that hints offer are in the words of the recipe's language, and can be read there."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

import pytest

from tamis.compile import compile
from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import default_kitchen
from tamis.reading.clause_reader import read_clause
from tamis.source import Source, Span
from tamis.syntax.document import Clause
from tamis.words import word_tables
from tests.language.word_literals import trees

# What hints put in, in each language.
PARTS: dict[str, dict[str, str]] = {
    "en": {"clause": "leave for 2 h", "food": "onions", "foods": "[butter, for the pan]", "said": "fresh",
           "into": "into",
           "name": "stock", "of": "1 lemon", "part": "juice", "pieces": "20 balls",
           "purpose": "to taste", "share": "half", "the": "the", "tool": "pan", "verb": "simmer",
           "what": "meat roasts"},
    "fr": {"clause": "garder au chaud", "food": "oignons", "foods": "[beurre, pour le moule]", "said": "fraîches",
           "into": "en",
           "name": "bouillon", "of": "1 citron", "part": "jus", "pieces": "20 boules",
           "purpose": "au goût", "share": "1/2", "the": "la", "tool": "four", "verb": "laisser mijoter",
           "what": "viande cuit"},
}  # fmt: skip
COMMON = {"count": 3, "gap": "30 min", "fan": "180", "oven": "200",
          "degrees": "74 °C (165 °F)", "measure": "200 g", "percent": "2 %", "setting": "180 °C",
          "time": "10 min", "unit": "min"}  # fmt: skip
OFFERED = [(language, key) for language in PARTS for key in word_tables(language, "hints")["clauses"]]


@pytest.mark.parametrize(("language", "key"), OFFERED)
def test_an_offered_clause_can_be_read(language: str, key: str) -> None:
    parts = COMMON | PARTS[language]
    offered = word_tables(language, "hints")["clauses"][key].format(**parts).replace("…", parts["name"])
    for text in re.findall(r"\[([^\]]+)\]", offered):
        findings: list[Diagnostic] = []
        records = read_clause(Clause(text, Span(0, len(text) + 2), language), default_kitchen(language), findings)
        assert records and [finding.message for finding in findings if finding.severity == "error"] == []


@pytest.mark.parametrize(
    ("language", "line"), {"en": "Add [a bunch of mixed herbs].", "fr": "Ajouter [1 botte d'herbes mélangées]."}.items()
)
def test_herbs_that_a_hint_names_are_known(language: str, line: str) -> None:
    kitchen = default_kitchen(language)
    findings = compile(Source("d.tamis", f"title: D\nserves: 4\n\n{line}\n"), kitchen, {}).findings
    (hint,) = [finding.hint for finding in findings if finding.rule == "fresh-or-dried"]
    offered = re.findall(r"`([^`]+)`", hint)
    assert len(offered) == 2 and all(kitchen.larder.find(name.split()) for name in offered), hint


FRENCH = {
    "Ajouter [la sauce].": "`[comme …]`, `[en laissant …]`",
    "Laisser mijoter.": "`[laisser mijoter pendant 20 min]`, or what to look for: `[jusqu'à …]`",
    "Verser [du lait].": "`[lait, si besoin]`",
    "Ajouter [de l'huile d'olive].": "`[2 cuillères à soupe huile d'olive]`",
    "Verser [1 boîte de 400 g de tomates].": "`[400 g de tomates]`",
    "Cuire [pendant 10 min moins].": "`",
    "Cuire [au four pendant 40 min].": "`préchauffer [le four] [à 180 °C]`",
    "Ajouter [4 cuisses de poulet] et servir.": "`[jusqu'à 74 °C (165 °F) à cœur]`",
}


@pytest.mark.parametrize("line", FRENCH)
def test_hints_speak_the_language_of_the_recipe(line: str) -> None:
    text = f"title: Soupe\nserves: 4\n\nMélanger [1 l d'eau] [dans une casserole].\n{line}\n"
    hints = [finding.hint for finding in compile(Source("soupe.tamis", text), default_kitchen("fr"), {}).findings]
    assert any(FRENCH[line] in hint for hint in hints), hints
    offered = [clause for hint in hints for clause in re.findall(r"`([^`]*)`", hint)]
    assert [clause for clause in offered if re.search(r"\b(?:the|until|leaving|for|with)\b", clause)] == []


_WORDS_IN_CODE = re.compile(r"`[^`{}]*\[[^\]`{}]*[a-z]{3,}[^\]`]*\]")


def _strings(tree: ast.AST) -> Iterator[str]:
    """The strings of a module that are no documentation; of one that is put together, each part of its own."""
    told = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    documented = {"BAD", "GOOD"}
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign) and {getattr(target, "id", "") for target in node.targets} & documented:
            told.add(id(node.value))
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in told:
            yield node.value


def test_no_clause_of_a_hint_stands_in_the_code() -> None:
    code = (tree for file, tree in trees().items() if not file.startswith("kitchen/"))  # there a table is `[name]`
    shown = [text for tree in code for text in _strings(tree) if _WORDS_IN_CODE.search(text)]
    assert shown == []


def test_a_clause_in_the_code_is_found() -> None:
    tree = ast.parse('"""`[for 10 min]`"""\nhint = "write `[knead for 4 min]`"\nother = f"write `[{said}]`"\n')
    assert [text for text in _strings(tree) if _WORDS_IN_CODE.search(text)] == ["write `[knead for 4 min]`"]
