"""The numbers of a clause, and whether its records know them: a number is known if another in its place makes another
record, or is told of."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import default_kitchen
from tamis.quantity.number_words import number_words
from tamis.reading.clause_reader import read_clause
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.words import word_lists, word_tables

_ROOT = Path(__file__).parents[2]
_PLACES = ("recipes/**/*.tamis", "tests/**/*.tamis", "tests/**/*.case", "grammar/reference.md")
_BRACKET = re.compile(r"\[([^\[\]\n]+)\](?!\()")
_FIGURES = re.compile(r"\d+(?:\.\d+)?")
_WORD = re.compile(r"[\s-]*([^\W\d_]+)?")

# The fields of words in which a number may stand, by record. A time in words is lost all the same: somebody waits.
_WORDS_THAT_COUNT = {
    "Ingredient": ("name", "size", "preparation", "purpose"),
    "Reference": ("name", "preparation"),
    "Tool": ("name", "size", "words", "contains"),
    "Cue": ("text",),
    "Target": ("text", "word"),
    "Division": ("text",),
    "Naming": ("name",),
    "Tending": ("text",),
}
_AGED = " old"
_NEVER = ("clause", "name_span", "span", "goods", "equipment", "measure_text", "verb_text")


class Number(NamedTuple):
    """A number of a text with its place, what may stand there instead, and the kind of the unit that follows it."""

    start: int
    end: int
    others: tuple[str, ...]
    unit: str = ""


def clauses() -> tuple[str, ...]:
    """Every clause of the repository, once, in order."""
    found: dict[str, None] = {}
    for place in _PLACES:
        for path in sorted(_ROOT.glob(place)):
            found.update(dict.fromkeys(_BRACKET.findall(path.read_text("utf-8"))))
    rows = (_ROOT / "tests" / "language" / "clauses.tsv").read_text("utf-8").splitlines()
    found.update(dict.fromkeys(row.split("\t")[0] for row in rows if row and row[0] != "#"))
    return tuple(found)


def numbers(text: str) -> Iterator[Number]:
    """The numbers of a text: figures, and words for numbers and for shares."""
    for found in _FIGURES.finditer(text):
        after = _WORD.match(text, found.end())
        assert after is not None
        unit = default_kitchen("en").units.get(after[1] or "")
        kind = unit.kind if unit is not None else ""
        if text.startswith(_AGED, after.end()):  # a loaf, 3 days old: nobody waits for that
            kind = ""
        yield Number(found.start(), found.end(), tuple(_others(found[0])), kind)
    for word in re.finditer(r"[^\W\d_]+(?:-[^\W\d_]+)*", text):
        other = _other_words().get(word[0].lower())
        if other:
            yield Number(word.start(), word.end(), (other,))


def _others(figures: str) -> Iterator[str]:
    """A number that is larger, and one that is smaller: far enough off for what is rounded."""
    value = float(figures)
    step = max(3, value // 4)
    for other in (value + step, value - step):
        if other > 0:
            yield str(int(other)) if value == int(value) else f"{other:.2f}"


@cache
def _other_words() -> dict[str, str]:
    ones = [word for word, value in number_words("en").ones.items() if 1 < value < 12]
    shares = list(word_tables("en", "clause")["fractions"])
    return {word: ones[ones.index(word) - 1] for word in ones} | {
        word: "half" if word != "half" else "quarter" for word in shares if not word.endswith("s")
    }


def read(text: str) -> tuple[tuple[Any, ...], list[Diagnostic]]:
    """The records of a clause, and its findings."""
    findings: list[Diagnostic] = []
    return read_clause(Clause(text, Span(0, len(text) + 2), "en"), default_kitchen("en"), findings), findings


def values(record: Any, unit: str) -> Any:
    """What a record knows: its fields without the words, but for those that may hold a number."""
    if isinstance(record, tuple) and hasattr(record, "_fields"):
        kind = record.__class__.__name__
        counted = () if unit == "time" else _WORDS_THAT_COUNT.get(kind, ())
        if unit == "length" and kind == "Time":  # `grill for 5 min, 10 cm below the heat`
            counted = ("text",)
        return kind, tuple(
            values(value, unit)
            for name, value in zip(record._fields, record, strict=True)
            if name not in _NEVER and (name in counted or not _is_words(kind, name))
        )
    return tuple(values(part, unit) for part in record) if isinstance(record, tuple | list) else record


def _is_words(kind: str, name: str) -> bool:
    return name in ("text", "words", "contains", "preparation", "purpose", "size", "noun") or (
        kind in _WORDS_THAT_COUNT and name in ("name", "word")
    )


def _told(findings: list[Diagnostic]) -> list[tuple[str, str]]:
    return [(finding.rule, finding.message) for finding in findings]


def lost(text: str) -> list[str]:
    """The numbers of a clause that neither its records nor a finding know."""
    records, findings = read(text)
    if any(finding.severity == "error" for finding in findings):
        return []
    return [text[n.start : n.end] for n in numbers(text) if not _known(text, n, records, findings)]


def _known(text: str, number: Number, records: tuple[Any, ...], findings: list[Diagnostic]) -> bool:
    known = values(records, number.unit)
    for other in number.others:
        changed, said = read(text[: number.start] + other + text[number.end :])
        if values(changed, number.unit) == known and _told(said) == _told(findings):
            return False
    return True


def unused(text: str) -> list[str]:
    """The words that change what a clause means, and may go without its records or a finding taking notice."""
    records, findings = read(text)
    if any(finding.severity == "error" for finding in findings):
        return []
    return [
        text[start:end]
        for start, end in _telling(text)
        if _same((records, findings), read((text[:start].rstrip() + text[end:]).strip()))
    ]


def _same(one: tuple[Any, list[Diagnostic]], other: tuple[Any, list[Diagnostic]]) -> bool:
    return bool(values(one[0], "") == values(other[0], "")) and _told(one[1]) == _told(other[1])


_TELLING = ("EACH", "MORE", "ANOTHER", "ATLEAST", "UPTO", "PER", "SIDE", "FAN", "ALLBUT", "OPTIONAL", "LONGER", "ROOM")


# What stands before such a word and goes with it.
_WITH = r"(?:,\s*|\bon (?:each |the )?|\bper )?"


def _telling(text: str) -> Iterator[tuple[int, int]]:
    lists = word_lists("en", "clause")
    both = {**lists["closed"], **lists["open"]}
    bounded = any(phrase in text for phrase in both["UPTO"])  # `at least 2 h, up to 4 h` is 2–4 h without it, too
    for phrase in sorted({phrase for name in _TELLING for phrase in both[name]}):
        if bounded and phrase in both["ATLEAST"]:
            continue
        for found in re.finditer(rf"{_WITH}(?<![\w-]){re.escape(phrase)}(?![\w-])", text):
            yield found.start(), found.end()
