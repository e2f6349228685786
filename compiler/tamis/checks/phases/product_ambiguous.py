"""`[the …]` could be two things.

The reader has two bowls of that name.

Call it by its whole name, or name one of them with `[as …]`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Milks
serves: 2

# Milks

Stir [200 ml whole milk] with [100 ml coconut milk] [in a jug].
Strain [a third of the milk] [into a bowl].
Add [the rest of the milk].
"""
GOOD = """\
title: Milks
serves: 2

# Milks

Stir [200 ml whole milk] with [100 ml coconut milk] [in a jug].
"""
