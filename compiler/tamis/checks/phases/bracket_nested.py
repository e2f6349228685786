"""A bracket opens inside another.

A clause says one thing; which of the two is the ingredient cannot be told.

Close the outer bracket first, or put the inner words in parentheses: `[420 g (3 cups) bread
flour]`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats, [soaked]] with [200 ml milk].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats, soaked] with [200 ml milk].
"""
