"""Make every generated file of `grammar/` anew, in the order in which they need each other.

Run ``python -m tamis.make_all`` in the checkout after every change in `grammar/`; tests fail on drift.
"""

from __future__ import annotations

import subprocess
import sys

GENERATORS = (
    "tamis.make_tables",
    "tamis.quantity.make_units",
    "tamis.kitchen.make_goods",
    "tamis.make_saved",
    "tamis.reading.make_reference",
)


def main() -> int:
    """Run them in order, each afresh: it reads what the one before it wrote. Stop at the first fault."""
    for name in GENERATORS:
        status = subprocess.run([sys.executable, "-m", name], check=False).returncode
        if status:
            return status
    return 0


if __name__ == "__main__":
    sys.exit(main())
