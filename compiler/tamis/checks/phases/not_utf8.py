"""The file holds a byte that is not UTF-8.

The fraction or the degree sign that it stood for is guessed, and a guess may be wrong.

Save the file again as UTF-8, and look at the place that the message names.
"""

from __future__ import annotations

from tamis.checks.registry import Files
from tamis.diagnostics import Severity

LEVEL: Severity = "error"
_TEXT = "title: Oats\nserves: 2\n\n# Oats\n\nGently, à la ferme, stir [100 g rolled oats] with [200 ml milk].\n"
BAD: Files = {"example.tamis": _TEXT.encode("latin-1")}
GOOD: Files = {"example.tamis": _TEXT.encode()}
