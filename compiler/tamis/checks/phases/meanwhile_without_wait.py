"""`[Meanwhile]` stands where nothing is being waited for.

It says that work runs beside a wait; without one, the plan cannot place it.

Put it after a line with a time, or take the word out.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "warning"
BAD = """\
title: Oats
serves: 2

# Oats

[Meanwhile], whip [200 ml double cream] [in a bowl] [until thick].

Fold [the cream] with [50 g rolled oats].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10 min].

[Meanwhile], whip [100 ml double cream] [in a cup] [until thick].

Fold in [the cream].
"""
