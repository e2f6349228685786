"""Each language has the words that the code asks for: the files, tables and keys of English, which came first, but for
those of the printed reference."""

import tomllib
from pathlib import Path

import pytest

from tamis.words import languages

WORDS = Path(__file__).parents[2] / "grammar" / "words"
# Tables whose keys are words of the language itself, or that a language has only where its words want it.
OWN = {
    "clause.fractions", "clause.closed", "clause.open", "convert.heats", "nouns.irregular", "numbers.ones",
    "numbers.parts", "numbers.parts-of-many", "numbers.groups", "preparations.said", "reading.kinds", "reading.hints",
    "units.misspelt", "units.unclear", "verbs.doubling", "verbs.forms",
}  # fmt: skip


def asked_for(language: str) -> set[str]:
    """`file.table`, and `file.table.key` for each key that the code asks for."""
    said: set[str] = set()
    for file in (WORDS / language).glob("*.toml"):
        for table, rows in tomllib.loads(file.read_text("utf-8")).items():
            name = f"{file.stem}.{table}"
            said |= {name} if name in OWN else {name, *(f"{name}.{key}" for key in rows)}
    return {name for name in said if name != "verbs.doubling" and not name.startswith("reference.")}


@pytest.mark.parametrize("language", languages())
def test_nothing_is_left_out(language: str) -> None:
    assert sorted(asked_for("en") - asked_for(language)) == []
