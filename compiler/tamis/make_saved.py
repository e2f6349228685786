"""Write `grammar/saved/`: what the compiler would otherwise work out from `grammar/` at each start.

Run ``python -m tamis.make_saved`` in the checkout after every change of a grammar; a test fails on drift.
"""

from __future__ import annotations

import sys
from pathlib import Path

from tamis.assets import asset_text
from tamis.lalr.build import made

FOLDER = Path(__file__).resolve().parents[2] / "grammar" / "saved"


def files() -> dict[str, str]:
    """The text of each file of `grammar/saved/`, by name."""
    return {"outline.json": made(asset_text("grammar/outline.lark"), "document")}


def main() -> None:
    """Write them all, and say which are new."""
    for name, text in files().items():
        path = FOLDER / name
        if not path.exists() or path.read_text(encoding="utf-8") != text:
            path.write_text(text, encoding="utf-8")
            sys.stdout.write(f"wrote {path}\n")


if __name__ == "__main__":
    main()
