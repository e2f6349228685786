"""Nothing tells what a bracket means: no word that opens a clause, no unit, no food or tool that the
kitchen knows.

A bracket that is not understood takes no part in the table, the plan or the checks.

Use one of the words that the message names, or write it without brackets.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10 min] [between times].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Leave for 10 min].
"""
