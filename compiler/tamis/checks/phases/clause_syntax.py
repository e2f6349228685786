"""What stands in a bracket cannot be read as a measure, a time or a name.

An amount that is half understood would go wrong into the table.

Write what the message expected. One bracket holds one thing.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml (] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
