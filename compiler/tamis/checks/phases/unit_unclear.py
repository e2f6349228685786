"""A letter that could be two units: `T`, `t`, `c`, `C`, `in`.

A teaspoon of salt and a tablespoon of salt are different soups.

Write the unit out: `tbsp`, `tsp`, `cup`, `inch`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [2 T milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [2 tbsp milk] [in a bowl].
"""
