"""`[Repeat twice]` stands before the end of its paragraph.

It does the whole paragraph again; with more lines after it nobody can say which of them were meant, and it counts for
nothing.

End the paragraph with it, or write `[3 times]` in the one line that is done again.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Flat loaves
serves: 4

# Dough

Mix [500 g bread flour] and [320 g water] [in a bowl].

Fold the dough. [Repeat twice].
[Leave for 20 min].

[Bake for 40 min] [at 220 °C] [in the oven] [until brown].
"""
GOOD = """\
title: Flat loaves
serves: 4

# Dough

Mix [500 g bread flour] and [320 g water] [in a bowl].

Fold the dough.
[Leave for 20 min].
[Repeat twice].

[Bake for 40 min] [at 220 °C] [in the oven] [until brown].
"""
