"""A line begins with a number or a dash, as in a list.

Steps and lines are numbered by the page; a number that stands in the text would be there twice, and
wrong when a line is put in between.

Take the mark out.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "information"
BAD = """\
title: Oats
serves: 2

# Oats

1. Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
