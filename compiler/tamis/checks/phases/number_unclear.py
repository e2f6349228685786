"""A number that can be read in two ways: `1,5` or `1,000`.

One and a half litres or one thousand five hundred: a comma means either, by country.

Write `1.5` with a point, and thousands without a mark: `1000`.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [1,5 l milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [1.5 l milk] [in a bowl].
"""
