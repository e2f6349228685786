"""Write the word lists of `grammar/reference.md` from the data files that the compiler reads.

A cook looks for a word in the reference; the compiler finds it in `grammar/`. Copied by hand, the two would soon
differ. So the page has a place for each list, between `<!-- list: NAME -->` and `<!-- end -->`, and this fills it.

Run ``python -m tamis.reading.make_reference`` in the checkout after every change of those files; a test fails on drift.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Iterable, Mapping
from fractions import Fraction
from pathlib import Path

from tamis.assets import asset_text
from tamis.generated import write
from tamis.kitchen.goods import Larder
from tamis.kitchen.house import default_kitchen
from tamis.kitchen.verbs import Verb, Verbs
from tamis.quantity.units import UnitKind
from tamis.typed import Any, Literal
from tamis.words import LANGUAGE_OF_DATA, word_lists, word_tables

TARGET = Path(__file__).resolve().parents[3] / "grammar" / "reference.md"

_LIST, _END = re.escape("<!-- list: "), re.escape("<!-- end -->")
_PLACE = re.compile(rf"({_LIST}([a-z-]+) -->\n).*?({_END})", re.DOTALL)
_BASES: dict[UnitKind, str] = {"mass": "g", "volume": "ml", "length": "mm", "time": "s", "nominal": ""}

# Keys of the data files that are no group of theirs and no fact to print.
_FORMS: Literal["forms"] = "forms"
_EVERY: Literal["every"] = "every"
_ALSO: Literal["also"] = "also"
_MARKS = {"adds": "+", "waits": "†", "attention": "○"}


def filled(page: str, made: Mapping[str, str]) -> str:
    """The page with each of its lists as it is made now. Raises KeyError for a place whose list nobody makes."""
    return _PLACE.sub(lambda found: found[1] + made[found[2]] + found[3], page)


def lists() -> dict[str, str]:
    """All the lists, by name, as Markdown."""
    verbs = tomllib.loads(asset_text("grammar/verbs.toml"))
    equipment = tomllib.loads(asset_text("grammar/equipment.toml"))
    return {
        "definition": _definition(),
        "classes": _classes(),
        "units": _table(("unit", "worth", "written"), _units()),
        **_working(verbs),
        "equipment": _table(("kind", "words"), _grouped(equipment, ("counts", "plurals"))),
        "counts": _plain(_counted(equipment["counts"])),
        "preparations": _preparations(tomllib.loads(asset_text("grammar/preparations.toml"))),
        **_housekeeping(),
    }


def _classes() -> str:
    """The closed classes of words, each with its words."""
    tables = word_lists(LANGUAGE_OF_DATA, "clause")
    rows = [(f"`{name}`", list(words)) for kind in ("closed", "open") for name, words in tables[kind].items()]
    return _table(("class", "words"), rows)


def _definition() -> str:
    """The grammar itself, as the reader is made from it."""
    return f"```\n{asset_text('grammar/clause.lark')}```\n"


def _working(raw: Mapping[str, Any]) -> dict[str, str]:
    """The verbs by what becomes of the food, each with its marks, and what else follows from a few of them."""
    verbs = default_kitchen(LANGUAGE_OF_DATA).verbs
    kinds = [_kind(kind, table, verbs) for kind, table in raw.items() if kind != _FORMS]
    purposes: dict[str, list[str]] = {}
    for verb in verbs:
        if verb.purpose:
            purposes.setdefault(verb.purpose, []).append(verb.base)
    follows = [
        ("food named with them leaves the batch", [verb.base for verb in verbs if verb.removes]),
        ("a range of time is yours to choose from", [verb.base for verb in verbs if verb.keeps]),
        *((f"food without a measure is *{purpose}*", words) for purpose, words in purposes.items()),
    ]
    return {"verbs": _table(("food is", "words"), kinds), "verb-marks": _table(("what follows", "words"), follows)}


def _kind(kind: str, table: Mapping[str, str], verbs: Verbs) -> tuple[str, list[str]]:
    """The verbs of a kind; a mark that all of them bear stands at the kind's name."""
    marks = {word: _marks(verbs.get(word)) for word in table if word != _EVERY}
    common = [mark for mark in _MARKS.values() if all(mark in own for own in marks.values())]
    words = []
    for word, own in marks.items():
        rest = "".join(mark for mark in own if mark not in common)
        words.append(_with_others(word + rest, table[word]))
    return word_tables(LANGUAGE_OF_DATA, "reference")["verbs"][kind] + "".join(common), words


def _marks(verb: Verb | None) -> list[str]:
    if verb is None:
        return []
    holds = {"adds": verb.adds, "waits": verb.waits, "attention": verb.attention == "unattended"}
    return [_MARKS[fact] for fact, held in holds.items() if held]


def _grouped(tables: Mapping[str, Mapping[str, str]], left_out: tuple[str, ...]) -> list[tuple[str, list[str]]]:
    """The words of each table of a data file, other words for the same thing beside them."""
    rows = []
    for kind, table in tables.items():
        if kind not in left_out:
            rows.append((kind, [_with_others(word, facts) for word, facts in table.items() if word != _EVERY]))
    return rows


def _with_others(word: str, facts: str) -> str:
    found = re.search(rf"\b{_ALSO} ([^,]*)", facts)
    return f"{word} ({found[1].replace(' / ', ', ')})" if found else word


def _counted(groups: Mapping[str, str]) -> list[str]:
    return [word for words in groups.values() for word in words.split(", ")]


def _preparations(tables: Mapping[str, Mapping[str, str]]) -> str:
    said = {
        "before": "done some time before the step",
        "just_before": "done right before the line",
        "boils": "heats by itself, right before the line",
        "waits": "a wait, before the line",
        "fats": "a wait, of a fat",
    }
    rows = [(said[kind], [f"{word} {time}" for word, time in tables[kind].items()]) for kind in said]
    return _table(("work", "words, and the time planned for each"), rows)


def _housekeeping() -> dict[str, str]:
    closed = Larder.load(LANGUAGE_OF_DATA).closed
    rows = [(key, [word for word in words if word]) for key, words in closed.items()]
    return {"goods-words": _table(("key", "may be"), rows)}


def _units() -> list[tuple[str, ...]]:
    """Every unit but the degrees; its worth to six digits (the compiler reckons with the exact fraction)."""
    rows: list[tuple[str, ...]] = []
    for unit in json.loads(asset_text("grammar/units.json")):
        if unit["kind"] in _BASES:
            base = _BASES[unit["kind"]]
            worth = f"{float(Fraction(unit['factor'])):.6g} {base}" if base else "no fixed size"
            rows.append((unit["id"].replace("_", " "), worth, ", ".join(unit["names"])))
    return rows


def _table(head: tuple[str, ...], rows: Iterable[tuple[str, list[str]] | tuple[str, ...]]) -> str:
    lines = [" | ".join(("", *head, "")).strip(), "|" + " --- |" * len(head)]
    for row in rows:
        cells = [cell if isinstance(cell, str) else ", ".join(cell) for cell in row]
        lines.append("| " + " | ".join(cells) + " |")
    return "\n".join(lines) + "\n"


def _plain(words: Iterable[str]) -> str:
    return ", ".join(words) + "\n"


if __name__ == "__main__":
    write({"grammar/reference.md": filled(TARGET.read_text("utf-8"), lists())})
