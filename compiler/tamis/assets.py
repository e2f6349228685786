"""Where the data files lie that ship with the compiler: `grammar/` and `site/`.

In a wheel they are folders of the package; in a checkout they stand at its top, beside `compiler/`.
"""

from __future__ import annotations

from pathlib import Path

_HERE = Path(__file__).resolve().parent
_CHECKOUT = _HERE.parent.parent


def asset(name: str) -> Path:
    """The path of a shipped file or folder, such as `grammar/verbs.toml`."""
    packed = _HERE / name
    return packed if packed.exists() else _CHECKOUT / name


def asset_text(name: str) -> str:
    """The text of a shipped file."""
    return asset(name).read_text(encoding="utf-8")
