"""A line has two times.

One line is one action; which of the two times it takes cannot be told.

Write two lines, or part them with `then`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10 min] and [chill for 1 h].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10 min], then [chill for 1 h].
"""
