"""Write the files of `grammar/` that are made from others there: all generators write by this, and print alike."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from tamis.assets import asset
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping


def write(files: Mapping[str, str]) -> None:
    """Write the texts that are new, each by its path (`grammar/units.json`), and print which those were."""
    paths = {name: Path(asset(name)) for name in files}
    new = [name for name, path in paths.items() if not path.exists() or path.read_text("utf-8") != files[name]]
    for name in new:
        paths[name].parent.mkdir(parents=True, exist_ok=True)
        paths[name].write_text(files[name], encoding="utf-8", newline="\n")
        sys.stdout.write(f"wrote {name}\n")
    if not new:
        sys.stdout.write(f"nothing new in {os.path.commonpath(files)}\n")
