"""A key of the header has a value that cannot be read.

Yield, portions and dates are used for scaling and on the page, and must be numbers and dates.

Write it in the form that the message shows.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: many

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
