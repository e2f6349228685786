"""Write `grammar/saved/`: what the compiler would otherwise work out from `grammar/` at each start.

Run ``python -m tamis.make_saved`` in the checkout after every change of a grammar, of the words of a language, of the
verbs, the equipment or the goods; a test fails on drift.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tamis.assets import asset_text
from tamis.kitchen import make_equipment, make_goods, make_verbs
from tamis.lalr.build import made
from tamis.words import languages

FOLDER = Path(__file__).resolve().parents[2] / "grammar" / "saved"


def files() -> dict[str, str]:
    """The text of each file of `grammar/saved/`, by its path there."""
    saved = {"outline.json": made(asset_text("grammar/outline.lark"), "document")}
    for language in languages():
        parts = {
            "equipment": make_equipment.made(asset_text("grammar/equipment.toml"), language),
            "goods": make_goods.names(asset_text("grammar/goods.json"), language),
            "verbs": make_verbs.made(asset_text("grammar/verbs.toml"), language),
        }
        saved |= {f"{language}/{name}.json": _in_lines(part) for name, part in parts.items()}
    return saved


def _in_lines(data: Mapping[str, Any]) -> str:
    """JSON in which a difference can be read: a line for each entry of each table."""
    parts = []
    for key, part in data.items():
        rows = [f"{_json(name)}:{_json(value)}" for name, value in part.items()] if isinstance(part, Mapping) else []
        parts.append(f"{_json(key)}:" + ("{\n" + ",\n".join(rows) + "\n}" if rows else _json(part)))
    return "{\n" + ",\n".join(parts) + "\n}\n"


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def main() -> None:
    """Write them all, and say which are new."""
    for name, text in files().items():
        path = FOLDER / name
        path.parent.mkdir(exist_ok=True)
        if not path.exists() or path.read_text(encoding="utf-8") != text:
            path.write_text(text, encoding="utf-8")
            sys.stdout.write(f"wrote {path}\n")


if __name__ == "__main__":
    main()
