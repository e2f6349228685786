"""Write `tables.txt` of `grammar/saved/`: the data files that are tables of strings, without what is said of them.

Run ``python -m tamis.make_tables`` in the checkout, before all that reads words; a test fails on drift.
"""

from __future__ import annotations

from pathlib import Path

from tamis.assets import asset
from tamis.generated import write
from tamis.saved import written
from tamis.string_tables import tables

FACTS = ("limits", "preparations", "safety", "scaling")
"""The files that hold for every language."""


def files() -> dict[str, str]:
    """The text of each, by its path in `grammar/saved/`."""
    grammar = Path(asset("grammar"))
    made = {"tables.txt": _made([grammar / f"{name}.toml" for name in FACTS])}
    for folder in sorted((grammar / "words").iterdir()):
        made[f"{folder.name}/tables.txt"] = _made(sorted(folder.glob("*.toml")))
    return made


def _made(paths: list[Path]) -> str:
    return written({path.stem: list(_cells(path)) for path in paths})


def _cells(path: Path) -> list[str]:
    cells = []
    for table, rows in tables(path.read_text("utf-8")).items():
        words = [word for row in rows.items() for word in row]
        if "=" in "".join(words):
            raise ValueError(f"{path}: an equals sign in [{table}]")
        cells += [table, "=".join(words)]
    return cells


if __name__ == "__main__":
    write({f"grammar/saved/{name}": text for name, text in files().items()})
