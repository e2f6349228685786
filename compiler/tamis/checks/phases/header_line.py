"""A line of the header is not `key: value`.

The header ends at the first empty line, so a headnote without one is taken for a part of it.

Leave an empty line before the headnote.
"""

from __future__ import annotations

from tamis.diagnostics import Severity

LEVEL: Severity = "error"
BAD = """\
title: Oats
serves: 2
Porridge, cold.

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Oats
serves: 2

Porridge, cold.

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
