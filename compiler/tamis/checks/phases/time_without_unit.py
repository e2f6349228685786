"""A time has a number and no unit.

Ten seconds, minutes or hours: the plan cannot be made.

Write the unit: `[rest for 10 min]`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10 min].
"""
