"""A percentage whose base is not there.

`72 %` alone is of the flour, `2 % of its weight` of what lies in the batch, and where neither flour nor batch
is, nobody can weigh it out.

Weigh the flour in the same component, or write `flour: 1 kg` (or `dough: 1.7 kg`) in the header; put the food
in before the line that salts it.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Flatbreads
makes: 4 flatbreads

# Dough

Mix [60 % water] with [2 % fine salt] [in a bowl].
Roll out and [bake for 8 min] [at 230 °C].
"""
GOOD = """\
title: Flatbreads
makes: 4 flatbreads

# Dough

Mix [400 g bread flour] with [60 % water] and [2 % fine salt] [in a bowl].
Roll out and [bake for 8 min] [at 230 °C].
"""
