"""A bracket holds more than 2,000 characters.

No ingredient, time or tool is that long; most likely a `]` is missing.

Close the bracket where the clause ends.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
_LONG = "very " * 410
BAD = f"""\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats, {_LONG}dry] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
