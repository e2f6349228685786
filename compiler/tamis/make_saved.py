"""Write `grammar/saved/`: what the compiler would otherwise work out from `grammar/` at each start.

Run ``python -m tamis.make_saved`` in the checkout after every change of a grammar, of the words of a language, of the
verbs, the equipment or the goods; a test fails on drift.
"""

from __future__ import annotations

import sys
from collections.abc import Mapping
from pathlib import Path

from tamis.assets import asset_text
from tamis.checks.registry import abouts
from tamis.generated import write
from tamis.kitchen import make_equipment, make_goods, make_verbs
from tamis.lalr.build import made
from tamis.lalr.table import load
from tamis.quantity.units import shipped
from tamis.reading.vocabulary import reaches
from tamis.saved import Written, written
from tamis.words import languages, word_lists

FOLDER = Path(__file__).resolve().parents[2] / "grammar" / "saved"


def files() -> dict[str, str]:
    """The text of each file of `grammar/saved/`, by its path there."""
    saved = {
        "outline.txt": made(asset_text("grammar/outline.lark"), "document"),
        "clause.txt": made(asset_text("grammar/clause.lark"), "clause"),
        "checks.txt": written(abouts()),
    }
    for language in languages():
        _check_classes(saved["clause.txt"], language)
        verbs = make_verbs.made(asset_text("grammar/verbs.toml"), language)
        goods = make_goods.names(asset_text("grammar/goods.json"), language)
        parts: dict[str, dict[str, Written]] = {
            "equipment": make_equipment.made(asset_text("grammar/equipment.toml"), language),
            "goods": {**goods, "prepared": make_verbs.prepared(verbs, language)},
            "verbs": verbs,
        }
        parts["phrases"] = _phrases(language, parts)
        saved |= {f"{language}/{name}.txt": written(rows) for name, rows in parts.items()}
    return saved


def _check_classes(table: str, language: str) -> None:
    """Every class of words stands in a production: the words of another one would never be read."""
    known, lists = frozenset(load(table).symbols), word_lists(language, "clause")
    unknown = [name for part in ("closed", "open") for name in lists[part] if name not in known]
    if unknown:
        where = f"grammar/words/{language}/clause.toml"
        raise ValueError(f"no production of grammar/clause.lark has {', '.join(unknown)}, which {where} gives words")


def _phrases(language: str, parts: Mapping[str, Mapping[str, Written]]) -> dict[str, Written]:
    """How many words the longest phrase has that begins with a word, of all that are looked up in a clause."""
    goods, equipment, verbs = parts["goods"], parts["equipment"], parts["verbs"]
    names = (goods["keys"], equipment["names"], equipment["counts"], verbs["phrases"], verbs["forms"])
    reach = reaches(language, (*names, shipped(language).spellings))
    return {"reach": {head: str(words) for head, words in reach.items()}}


def main() -> None:
    """Write those that are new."""
    try:
        made_files = files()
    except ValueError as fault:
        sys.exit(str(fault))
    write({f"grammar/saved/{name}": text for name, text in made_files.items()})


if __name__ == "__main__":
    main()
