"""A command should feel instant: what it may not do before it knows that it has to."""

from __future__ import annotations

import subprocess
import sys

# These are still read before a clause is.
_AT_ONCE = ("tamis.reading.", "tamis.syntax.clause", "tamis.syntax.tokens")


def test_no_pattern_is_compiled_before_it_is_used() -> None:
    program = (
        "import re, sys, tamis.compile, tamis.library.library; from tamis.checks.registry import checks; checks();"
        "print(*(f'{name}.{key}' for name, module in sys.modules.items() if name.startswith('tamis.')"
        " for key, value in vars(module).items() if isinstance(value, re.Pattern)))"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert [name for name in done.stdout.split() if not name.startswith(_AT_ONCE)] == []
